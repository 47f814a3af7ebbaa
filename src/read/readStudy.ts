import { stat } from "node:fs/promises";
import type { InputFile } from "../study/DataReport.js";
import { dayNumber } from "../study/dayNumber.js";
import { fileTables } from "../study/fileTables.js";
import type { FootVisit } from "../study/FootVisit.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { NeedsAwait } from "../study/NeedsAwait.js";
import type { OutlinePoint } from "../study/OutlinePoint.js";
import type { Source } from "../study/Source.js";
import type { TableKind } from "../study/TableKind.js";
import type { Study } from "../study/Study.js";
import type { Yard } from "../study/Yard.js";
import type { YardChange } from "../study/YardChange.js";
import { tableSources } from "./mapping/tableSources.js";
import { type ReadAgain, toldLate } from "./otherAnimals/toldLate.js";
import { withoutOtherAnimals } from "./otherAnimals/withoutOtherAnimals.js";
import { issueLog } from "./report/issueLog.js";
import { messages } from "./report/messages.js";
import { refusals } from "./report/refusals.js";
import { warnOfOutlines } from "./outlines/warnOfOutlines.js";
import { changeRule } from "./rules/changeRule.js";
import { firstLines } from "./rules/firstLines.js";
import { horseRule } from "./rules/horseRule.js";
import { outlineRule } from "./rules/outlineRule.js";
import { visitRule } from "./rules/visitRule.js";
import { weatherRule } from "./rules/weatherRule.js";
import { yardRule } from "./rules/yardRule.js";
import { readStudyJson } from "./readStudyJson.js";
import type { SetAsideSink } from "./SetAsideRow.js";
import { settingsOf } from "./settingsOf.js";
import type { RowRule } from "./table/RowRule.js";
import { readTable } from "./table/readTable.js";
import { studyPath } from "./text/studyPath.js";
import { systemCode } from "./text/systemCode.js";
import { readWeatherFiles } from "./weather/readWeatherFiles.js";
import { warnOfFilesNotRead } from "./rules/warnOfFilesNotRead.js";
import { warnOfUnknownGauges } from "./rules/warnOfUnknownGauges.js";

/** Options of `readStudy`. */
export interface ReadOptions {
  /**
   * The day on which the study is read, `YYYY-MM-DD`; later visits are set aside. When left out, the day it is now in the time zone that is
   * farthest ahead, so that no visit of today is refused anywhere.
   */
  readonly today?: string;
  /** Told of every row that is set aside, as it stands in its file, while the files are read. */
  readonly setAside?: SetAsideSink;
}

const whatIsLost: Readonly<Record<TableKind, string>> = {
  visits: "nothing can be answered",
  horses: "horses have no yard, type, age or planned interval, and names in visits.csv cannot be checked",
  yards: "yards have no ground or rain gauge",
  changes: "whether a change at a yard went with better feet cannot be asked",
  weather: "wet and dry weather cannot be set beside the feet",
  outlines: "the shape of the foot is known from its measures only",
};

const FARTHEST_AHEAD_MS = 14 * 3_600_000;

/**
 * Reads a study folder: `study.json`, the CSV files beside it and the weather files it names.
 *
 * Every row of every file ends accepted or set aside, with the reason in `report`; missing cells are null. Only `study.json` and `visits.csv`
 * are needed; of any other file that is not there the report says what cannot be answered. A horses.csv or yards.csv without rows
 * is taken as not given, so that names are not checked against it. Rows that do not look like the feet of a horse, by two signs or more, are set
 * aside when all is read. The same folder gives the same study.
 *
 * @throws StudyError when the folder, `study.json` or a file as a whole cannot be used; the message says where, the hint what to do.
 */
export function readStudy(folder: string, options: ReadOptions = {}): NeedsAwait<Study> {
  return readFolder(folder, options);
}

async function readFolder(folder: string, options: ReadOptions): Promise<Study> {
  const today = options.today ?? new Date(Date.now() + FARTHEST_AHEAD_MS).toISOString().slice(0, 10);
  if (dayNumber(today) === null) throw refusals.badToday(today);
  await checkFolder(folder);
  const zod = await import("zod");
  const { json, input: studyInput } = await readStudyJson(zod, folder);
  const log = issueLog();
  const inputs: InputFile[] = [studyInput];
  const files: ReadAgain[] = [];

  const table = async <Row extends Source>(kind: TableKind, rule: RowRule<Row>): Promise<readonly Row[]> => {
    const entry = tableOf(kind);
    let all: Row[] = [];
    for (const source of tableSources(entry, json.files)) {
      const path = await studyPath(folder, source.file, source.named || kind === "visits");
      if (path === null) {
        if (kind !== "weather" || json.weather === undefined) {
          log.add(messages.fileAbsent(whatIsLost[kind]), { file: source.file, line: null, row: null, column: null, value: null });
        }
        continue;
      }
      const file = { path, source, kind, row: entry.row };
      const { records, input } = await readTable<Row>(zod, { ...file, rule, setAside: options.setAside }, log);
      files.push({
        file: source.file,
        again: (rule, setAside) => readTable<Source>(zod, { ...file, rule, setAside }, issueLog()),
      });
      inputs.push(input);
      // A million records are no arguments of one call.
      if (all.length === 0) all = records;
      else for (const record of records) all.push(record);
    }
    return all;
  };
  const hasRows = (kind: TableKind) => inputs.some((input) => input.kind === kind && input.rowsRead > 0);

  const yards = await table<Yard>("yards", yardRule());
  const yardNames = hasRows("yards") ? new Set(yards.map(({ yardId }) => yardId)) : null;
  const ofHorses = horseRule(yardNames, today);
  const horses = await table<HorseStay>("horses", ofHorses);
  const knownHorses = hasRows("horses") ? ofHorses.known : null;
  const changes = await table<YardChange>("changes", changeRule(yardNames));

  const firstOf = firstLines();
  const rows = await table<GaugeDay>("weather", weatherRule(firstOf, json.settings?.dailyRainLimitMm ?? null));
  const { weather, gauges, inputs: weatherInputs } = await readWeatherFiles(folder, json, rows, firstOf, log);
  inputs.push(...weatherInputs);
  warnOfUnknownGauges(yards, weather, log);

  const ofVisits = visitRule(knownHorses, today);
  const visits = await table<FootVisit>("visits", ofVisits);
  const outlines = await table<OutlinePoint>("outlines", outlineRule(knownHorses, today));
  warnOfOutlines(outlines, log);

  const settings = settingsOf(json, weather.length > 0, log);
  const fileOrder = [
    "study.json",
    ...fileTables.flatMap((entry) => tableSources(entry, json.files).map(({ file }) => file)),
    ...(json.weather ?? []).map(({ file }) => file),
  ];
  if (json.stationList !== undefined) fileOrder.push(json.stationList);
  inputs.sort((a, b) => fileOrder.indexOf(a.file) - fileOrder.indexOf(b.file));
  await warnOfFilesNotRead(folder, fileOrder, log);
  const visitFiles = inputs.filter(({ kind }) => kind === "visits");
  const rowsRead = visitFiles.reduce((sum, input) => sum + input.rowsRead, 0);
  const flow = ofVisits.tally.flow({ read: rowsRead, accepted: visits.length, setAside: rowsRead - visits.length }, knownHorses);
  const report = { inputs, flow, counts: log.counts(), issues: log.issues(fileOrder) };
  const read: Study = {
    name: json.name,
    settings,
    visits,
    horses,
    yards,
    changes,
    weather,
    ...(gauges.length > 0 && { gauges }),
    outlines,
    report,
  };
  const study = withoutOtherAnimals(read);
  if (options.setAside !== undefined && study !== read) await toldLate(read, study, files, options.setAside);
  return study;
}

async function checkFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch((error: unknown) => {
    const code = systemCode(error);
    throw code === "ENOENT" || code === "ENOTDIR" ? refusals.folderMissing(folder) : refusals.unreadable(folder, code);
  });
  if (!found.isDirectory()) throw refusals.notAFolder(folder);
}

function tableOf(kind: TableKind): (typeof fileTables)[number] {
  const table = fileTables.find((entry) => entry.kind === kind);
  if (table === undefined) throw new Error(`no table of ${kind}`);
  return table;
}
