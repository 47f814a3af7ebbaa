import type { Table } from "../chart/Table.js";
import type { FootCase } from "../derive/FootCase.js";
import { horsesGone } from "../derive/horsesGone.js";
import { thrushCases } from "../derive/thrushCases.js";
import { vetFlags } from "../derive/vetFlags.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { shortDate } from "./words/shortDate.js";

const { id, question } = asked("bad-visits-running");
const RUNNING = 2;

interface HorseRun {
  readonly horseId: string;
  /** Graded visits in a row, the last one included, with thrush in any foot. */
  readonly running: number;
  readonly last: string;
  readonly feet: readonly FootCase[];
  /** Findings of the last visit that are the vet's. */
  readonly forVet: readonly string[];
}

/** Horses whose last graded visits all had thrush, or whose last visit holds a finding for the vet. Unit: a horse. */
export function badVisitsRunning(study: Study): Answer | NotEnoughData {
  const feet = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = grouped(
    feet.filter(({ thrush }) => thrush !== null),
    ({ horseId }) => horseId,
  );
  const latest = grouped(
    vetFlags(study.visits).filter((flag) => flag.latest),
    ({ horseId }) => horseId,
  );
  const gone = horsesGone(study);
  const names = [...new Set(feet.map(({ horseId }) => horseId))].filter((name) => !gone.has(name)).sort();
  const judged = names.filter((name) => graded.has(name) || latest.has(name));
  if (judged.length === 0)
    return { kind: "not_enough_data", id, question, reason: "No horse has a graded frog or a finding for the vet." };
  const runs = judged
    .map((name) => runOf(name, graded.get(name) ?? [], latest.get(name)?.map(({ recorded }) => recorded) ?? []))
    .filter(({ running, forVet }) => running >= RUNNING || forVet.length > 0)
    .sort((a, b) => b.forVet.length - a.forVet.length || b.running - a.running || (a.horseId < b.horseId ? -1 : 1));
  const bad = runs.filter(({ running }) => running >= RUNNING);
  const vet = runs.filter(({ forVet }) => forVet.length > 0);
  const few = (of: readonly HorseRun[]) =>
    listed(
      of.map(({ horseId }) => horseId),
      12,
    );
  return {
    kind: "answer",
    id,
    question,
    sentence: `${vet.length === 0 ? "No horse has a finding of its last visit that is the vet's" : `The vet's, by what was recorded at the last visit: ${few(vet)}`}. ${bad.length === 0 ? "None had thrush at two graded visits running." : `${counted(bad.length, "horse")} of ${judged.length} had thrush at ${RUNNING} graded visits running or more, the last one included: ${few(bad)}.`}`,
    tables: runs.length === 0 ? [] : [tableOf(runs)],
    charts: [],
    cautions: ["It lists what was recorded. It is not a diagnosis; what is marked as the vet's is for the vet to judge."],
    method: {
      unit: "a horse",
      n: judged.length,
      missing: names.length - judged.length,
      text: `A bad visit: any foot of the horse a case (${caseWords(study.settings)}) on a day on which a frog was graded. Counted back from the last such day. Findings for the vet are those of the last visit, by the rules of vetFlags. Horses that are no longer there are left out.`,
      links: ["thrushCases", "vetFlags"],
    },
  };
}

function runOf(horseId: string, rows: readonly FootCase[], forVet: readonly string[]): HorseRun {
  const visits = [...grouped(rows, ({ visitDate }) => visitDate)].sort(([a], [b]) => (a < b ? 1 : -1));
  const clear = visits.findIndex(([, feet]) => feet.every(({ thrush }) => thrush !== true));
  const [last, feet] = visits[0] ?? [null, []];
  return {
    ...{ horseId, forVet },
    running: clear === -1 ? visits.length : clear,
    last: last ?? "",
    feet: feet.filter(({ thrush }) => thrush),
  };
}

function tableOf(runs: readonly HorseRun[]): Table {
  return {
    caption: "Horses with bad visits running or a finding for the vet",
    columns: [
      { name: "horse", title: "Horse" },
      { name: "running", title: "Graded visits with thrush, running" },
      { name: "last", title: "Last graded" },
      { name: "feet", title: "Feet with thrush then" },
      { name: "vet", title: "For the vet, at the last visit" },
    ],
    rows: runs.map(({ horseId, running, last, feet, forVet }) => ({
      horse: horseId,
      running,
      last: last === "" ? null : shortDate(last),
      feet:
        feet.length === 0 ? null : feet.map(({ foot, thrushGrade }) => `${footInWords(foot)} ${thrushGrade ?? ""}`).join(", "),
      vet: forVet.length === 0 ? null : forVet.join("; "),
    })),
  };
}
