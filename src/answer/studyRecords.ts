import { type FlowStep, recordFlowChart } from "../chart/recordFlowChart.js";
import type { Table } from "../chart/Table.js";
import { describe } from "../estimate/describe.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./climate/asked.js";
import type { ClimateRow } from "./climate/ClimateRow.js";
import { climateRows } from "./climate/climateRows.js";
import { valueOf } from "./climate/valueOf.js";
import { exposureWords } from "./climate/exposureWords.js";
import { counted } from "./words/counted.js";
import { certain } from "./climate/certain.js";

const { id, question, notEnough } = asked("study-records");

/** Who is in the climate study: record flow, missing by reason, follow-up, linkage of visits to gauges. Unit: a foot at a visit. */
export function studyRecords(study: Study): Answer | NotEnoughData {
  if (study.visits.length === 0) return notEnough("There are no visits.");
  const rows = climateRows(study);
  const { flow } = study.report;
  const { primaryExposure } = study.settings;
  const graded = rows.filter((row) => row.case !== null);
  const placed = graded.filter((row) => row.yardId !== null);
  const used = placed.filter((row) => valueOf(row, primaryExposure) !== null);
  const read = flow.footVisits.read === 0 ? study.visits.length : flow.footVisits.read;
  const accepted = flow.footVisits.read === 0 ? study.visits.length : flow.footVisits.accepted;
  const step = (name: string, before: number, left: number, why: string): FlowStep => ({
    step: name,
    left,
    lost: before - left,
    why: before === left ? "" : why,
  });
  const steps = [
    step("Rows read", read, read, ""),
    step("Accepted", read, accepted, "set aside on reading"),
    step("Feet at visits", accepted, rows.length, "second rows of one look, and specimens"),
    step("Graded", rows.length, graded.length, "not looked at or not graded"),
    step("Yard known", graded.length, placed.length, "yard not known"),
    step("Exposure known", placed.length, used.length, `no ${exposureWords(primaryExposure).replace(/ \(mm\)$/, "")}`),
  ];
  const tables = [levels(flow, rows, used), missing(rows), linkage(rows), followUp(study)];
  return {
    kind: "answer",
    id,
    question,
    sentence:
      used.length === 0
        ? `None of ${counted(rows.length, "foot", "feet")} at visits has a grade, a known yard and its ${exposureWords(primaryExposure)}.`
        : `${counted(used.length, "foot", "feet")} at visits of ${counted(new Set(used.map((row) => row.horseId)).size, "horse")} at ${counted(new Set(used.map((row) => row.yardId)).size, "yard")} have a grade and their ${exposureWords(primaryExposure)}; ${rows.length - used.length} of ${rows.length} have not.`,
    tables,
    charts: [
      recordFlowChart(steps, {
        title: `Of ${counted(read, "row")} read, ${counted(used.length, "foot at a visit is", "feet at visits are")} used`,
        unit: "rows of feet at visits",
      }),
    ],
    cautions: [
      "A foot that was not seen is not a sound foot.",
      "Who brings horses to be seen, and which yards keep records, is a selection of its own.",
    ],
    method: {
      unit: "a foot at a visit",
      n: used.length,
      missing: rows.length - used.length,
      text: "Counts; nothing is estimated. Each row is lost at the first step that it fails.",
      links: ["thrushCases", "exposureBeforeVisits", "visitGauges"],
    },
  };
}

function levels(flow: Study["report"]["flow"], rows: readonly ClimateRow[], used: readonly ClimateRow[]): Table {
  const count = (list: readonly ClimateRow[], keyOf: (row: ClimateRow) => string | null) =>
    new Set(list.flatMap((row) => keyOf(row) ?? [])).size;
  const keys = {
    footVisits: (row: ClimateRow) => `${row.horseId} ${row.visitDate} ${row.foot}`,
    visits: (row: ClimateRow) => `${row.horseId} ${row.visitDate}`,
    horses: (row: ClimateRow) => row.horseId,
    yards: (row: ClimateRow) => row.yardId,
  };
  const names = { footVisits: "feet at visits (rows)", visits: "visits to a horse", horses: "horses", yards: "yards" };
  return {
    caption: "Records by level",
    columns: [
      { name: "level", title: "Level" },
      { name: "read", title: "Read" },
      { name: "accepted", title: "Accepted" },
      { name: "setAside", title: "Set aside" },
      { name: "inStudy", title: "In the study" },
      { name: "used", title: "Used in the declared analysis" },
    ],
    rows: (["footVisits", "visits", "horses", "yards"] as const).map((level) => ({
      level: names[level],
      ...{ read: flow[level].read, accepted: flow[level].accepted, setAside: flow[level].setAside },
      inStudy: count(rows, keys[level]),
      used: count(used, keys[level]),
    })),
  };
}

function missing(rows: readonly ClimateRow[]): Table {
  const reasons = {
    not_examined: "not looked at",
    not_said: "not said whether looked at",
    not_graded: "looked at, not graded",
    specimen: "specimen",
  };
  const parts = [
    ...grouped(
      rows.filter((row) => row.missing !== null),
      (row) => `${reasons[certain(row.missing)]}${row.notExaminedReason === null ? "" : `: ${row.notExaminedReason}`}`,
    ),
  ];
  return {
    caption: "Feet without a grade, by reason",
    columns: [
      { name: "reason", title: "Reason" },
      { name: "feet", title: "Feet at visits" },
      { name: "horses", title: "Horses" },
    ],
    rows: parts
      .sort((a, b) => b[1].length - a[1].length)
      .map(([reason, list]) => ({ reason, feet: list.length, horses: new Set(list.map((row) => row.horseId)).size })),
  };
}

function linkage(rows: readonly ClimateRow[]): Table {
  const words: Readonly<Record<string, string>> = {
    matched: "matched",
    no_gauge: "no gauge for the yard, or no yard",
    outside_readings: "before the first or after the last reading",
    missing: "a day without a reading in a window",
  };
  const visits = [...grouped(rows, (row) => `${row.horseId}\n${row.visitDate}`).values()].map(([row]) => certain(row));
  return {
    caption: "Linkage of visits to gauges (a visit to a horse)",
    columns: [
      { name: "linkage", title: "Linkage" },
      { name: "visits", title: "Visits" },
      { name: "yards", title: "Yards" },
      { name: "gauges", title: "Gauges" },
      { name: "medianKm", title: "Median distance (km)", digits: 1 },
      { name: "farthestKm", title: "Farthest (km)", digits: 1 },
    ],
    rows: [...grouped(visits, (row) => row.linkage)].map(([kind, list]) => {
      const km = list.map((row) => valueOf(row, "gaugeKm") as number | null);
      const known = km.some((value) => value !== null) ? describe(km) : null;
      return {
        linkage: words[kind] ?? kind,
        visits: list.length,
        yards: new Set(list.map((row) => row.yardId)).size,
        gauges: new Set(list.flatMap((row) => row.gaugeId ?? [])).size,
        medianKm: known?.median ?? null,
        farthestKm: known?.max ?? null,
      };
    }),
  };
}

function followUp(study: Study): Table {
  const horses = [...grouped(study.visits, (row) => row.horseId).values()].map((list) =>
    [...new Set(list.map((row) => row.visitDate))].sort(),
  );
  const days = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 86_400_000;
  const spans = horses.map((dates) => days(certain(dates[0]), certain(dates.at(-1))));
  const gaps = horses.flatMap((dates) => dates.slice(1).map((date, place) => days(certain(dates[place]), date)));
  const line = (what: string, values: readonly number[]) => {
    if (values.length === 0) return { what, n: 0, q1: null, median: null, q3: null, most: null };
    const { q1, median, q3, max } = describe(values);
    return { what, n: values.length, q1, median, q3, most: max };
  };
  return {
    caption: "Follow-up",
    columns: [
      { name: "what", title: "What" },
      { name: "n", title: "n" },
      { name: "q1", title: "Lower quartile", digits: 0 },
      { name: "median", title: "Median", digits: 0 },
      { name: "q3", title: "Upper quartile", digits: 0 },
      { name: "most", title: "Most", digits: 0 },
    ],
    rows: [
      line(
        "Visits of a horse",
        horses.map((dates) => dates.length),
      ),
      line("Days from first to last visit of a horse", spans),
      line("Days between visits of a horse", gaps),
    ],
  };
}
