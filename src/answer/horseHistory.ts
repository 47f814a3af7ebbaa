import { type FeetOverTimeRow, feetOverTimeChart } from "../chart/feetOverTimeChart.js";
import type { Table } from "../chart/Table.js";
import { type HorseVisit, horseVisits } from "../derive/horseVisits.js";
import { vetFlags } from "../derive/vetFlags.js";
import type { Foot } from "../study/Foot.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { findingsInWords } from "./words/findingsInWords.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { shortDate } from "./words/shortDate.js";
import { visitReasonInWords } from "./words/visitReasonInWords.js";

const { id, question } = asked("horse-history");
const feet: readonly Foot[] = ["LF", "RF", "LH", "RH"];

export interface HorseHistoryOptions {
  /** The latest visits that are listed; 12 unless told otherwise. */
  readonly mostVisits?: number;
  /** The latest visits that are drawn; 12 unless told otherwise. */
  readonly mostDrawn?: number;
}

/** What was recorded of the feet of one horse, visit by visit, of a study cut to that horse. Unit: a foot at a visit. */
export function horseHistory(study: Study, options: HorseHistoryOptions = {}): Answer | NotEnoughData {
  const all = horseVisits(study);
  const [first, last] = [all[0], all.at(-1)];
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (first === undefined || last === undefined) return notEnough("No foot of this horse has been recorded yet.");
  const names = new Set(all.map(({ horseId }) => horseId));
  if (names.size > 1) return notEnough(`A history is of one horse; these records are of ${names.size}.`);
  const shown = all.slice(-(options.mostVisits ?? 12));
  const looks = all.flatMap((visit) => [...visit.feet.values()]);
  const graded = looks.filter(({ grade }) => grade !== null);
  const drawn = all.slice(-(options.mostDrawn ?? 12));
  return {
    kind: "answer",
    id,
    question,
    sentence: `${counted(all.length, "visit")} ${all.length === 1 ? `on ${longDate(first.visitDate)}` : `from ${longDate(first.visitDate)} to ${longDate(last.visitDate)}`}. ${gradesOf(all, study.settings.caseGrade)}`,
    tables: [tableOf(shown, all.length)],
    charts: [feetOverTimeChart(rowsOf(drawn, study), { feet: feet.map(footInWords) })],
    cautions: ["What is not named was not there or not written down. A foot that was not looked at is not a sound foot."],
    method: {
      unit: "a foot at a visit",
      n: graded.length,
      missing: looks.length - graded.length,
      text: "What the rows say, in short. Rows of one foot and day are one look; of several grades the one that counts elsewhere counts here. Usual states (level bars, tight white line, tight shoe) are not repeated.",
      links: ["horseVisits", "thrushCases"],
    },
  };
}

function gradesOf(visits: readonly HorseVisit[], caseGrade: number): string {
  const said = feet.flatMap((foot) => {
    const grades = visits.flatMap((visit) => visit.feet.get(foot)?.grade ?? []);
    if (grades.length === 0) return [];
    return [`${footInWords(foot)} ${grades.filter((grade) => grade >= caseGrade).length} of ${grades.length}`];
  });
  if (said.length === 0) return "No frog was graded.";
  return `Visits with thrush of grade ${caseGrade}${caseGrade === 3 ? "" : " or more"}, of those graded: ${listed(said)}.`;
}

function tableOf(visits: readonly HorseVisit[], all: number): Table {
  const which = visits.length < all ? `the latest ${visits.length} of ${all} visits` : counted(all, "visit");
  return {
    caption: `What was recorded, newest first: ${which} (in brackets the clefts of the frog)`,
    columns: [
      { name: "date", title: "Seen on" },
      { name: "why", title: "Why" },
      ...feet.map((foot) => ({ name: foot, title: capital(footInWords(foot)) })),
    ],
    rows: [...visits].reverse().map((visit) => ({
      date: shortDate(visit.visitDate),
      why: visit.reasons.length === 0 ? null : visit.reasons.map(visitReasonInWords).join(", "),
      ...Object.fromEntries(feet.map((foot) => [foot, findingsInWords(visit.feet.get(foot))])),
    })),
  };
}

function rowsOf(visits: readonly HorseVisit[], study: Study): FeetOverTimeRow[] {
  const flags = vetFlags(study.visits);
  return visits.flatMap(({ visitDate, feet: looks }) =>
    feet.map((foot): FeetOverTimeRow => {
      const look = looks.get(foot);
      return {
        visit: shortDate(visitDate),
        foot: footInWords(foot),
        grade: look?.grade ?? null,
        notSeen: look?.state === "not_seen",
        vet: flags.some((flag) => flag.visitDate === visitDate && (flag.foot === foot || flag.foot === null)),
      };
    }),
  );
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
