import { asOfDate } from "../derive/asOfDate.js";
import { atLastVisit } from "../derive/atLastVisit.js";
import type { DueDate } from "../derive/DueDate.js";
import { dueDates } from "../derive/dueDates.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { vetFlags } from "../derive/vetFlags.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { counted } from "./words/counted.js";
import { dueStateInWords } from "./words/dueStateInWords.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { shortDate } from "./words/shortDate.js";

const id = "yard-horses";
const question = "How does each horse stand?";

/** Every horse that is there on the day of the review in a line: last visit, worst frog then, next date, the vet. Unit: a horse. */
export function yardHorses(study: Study): Answer | NotEnoughData {
  const asOf = asOfDate(study);
  const horses = dueDates(study);
  if (asOf === null || horses.length === 0)
    return { kind: "not_enough_data", id, question, reason: "No horse has been recorded, or all have left." };
  const last = grouped(atLastVisit(thrushCases(study), asOf), ({ horseId }) => horseId);
  const flags = grouped(
    vetFlags(study.visits.filter(({ visitDate }) => visitDate <= asOf)).filter(({ latest }) => latest),
    ({ horseId }) => horseId,
  );
  const lines = horses.map((row) => {
    const feet = row.lastSeen === null ? [] : (last.get(row.horseId) ?? []);
    const own = row.lastSeen === null ? [] : (flags.get(row.horseId) ?? []);
    const vet: "now" | "soon" | null = own.some(({ urgency }) => urgency === "now") ? "now" : own.length > 0 ? "soon" : null;
    return { row, feet, vet };
  });
  lines.sort((a, b) => rank(a.vet) - rank(b.vet) || compare(a.row.horseId, b.row.horseId));
  const seen = lines.filter(({ row }) => row.lastSeen !== null).length;
  const bad = lines.filter(({ feet }) => feet.some(({ thrush }) => thrush === true)).length;
  const vets = lines.filter(({ vet }) => vet !== null).length;
  return {
    kind: "answer",
    id,
    question,
    sentence: `On ${longDate(asOf)} ${counted(horses.length, "horse stands", "horses stand")} here, ${seen} of them seen. At the last visit of each, ${counted(bad, "horse", "horses")} had thrush of grade ${study.settings.caseGrade}${study.settings.caseGrade === 3 ? "" : " or more"} and ${counted(vets, "horse", "horses")} a finding that is the vet's.`,
    tables: [
      {
        caption: "Each horse at its last visit, those with a finding that is the vet's first",
        columns: [
          { name: "horse", title: "Horse" },
          { name: "vet", title: "Vet" },
          { name: "seen", title: "Last seen" },
          { name: "worst", title: "Worst frog then" },
          { name: "ungraded", title: "Feet without a grade" },
          { name: "due", title: "Next date" },
        ],
        rows: lines.map(({ row, feet, vet }) => ({
          horse: row.horseId,
          vet,
          seen: row.lastSeen === null ? null : shortDate(row.lastSeen),
          worst: worstOf(feet),
          ungraded: row.lastSeen === null ? null : 4 - feet.filter(({ thrushGrade }) => thrushGrade !== null).length,
          due: dueInWords(row),
        })),
      },
    ],
    charts: [],
    cautions: ["A foot without a grade is not a clear foot; what is not written down is not there to be counted."],
    method: {
      unit: "a horse that is there on that day",
      n: seen,
      missing: horses.length - seen,
      text: "Last visit for any reason, up to that day. Worst frog: the highest grade of that visit, project scale 0 to 3. Next date: last routine visit plus the days agreed.",
      links: ["atLastVisit", "thrushCases", "dueDates", "vetFlags"],
    },
  };
}

function worstOf(feet: readonly FootCase[]): string | null {
  const graded = feet.flatMap(({ foot, thrushGrade }) => (thrushGrade === null ? [] : [{ foot, grade: thrushGrade }]));
  if (graded.length === 0) return null;
  const worst = Math.max(...graded.map(({ grade }) => grade));
  if (worst === 0) return "grade 0";
  const where = graded.filter(({ grade }) => grade === worst).map(({ foot }) => footInWords(foot));
  return `grade ${worst}, ${where.length === 4 ? "all four" : listed(where)}`;
}

function dueInWords({ state, dueOn, daysLeft }: DueDate): string {
  if (dueOn === null || daysLeft === null || state === "lost") return dueStateInWords(state);
  return daysLeft < 0 ? `${shortDate(dueOn)}, ${counted(-daysLeft, "day")} over` : shortDate(dueOn);
}

function rank(vet: "now" | "soon" | null): number {
  return vet === "now" ? 0 : vet === "soon" ? 1 : 2;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
