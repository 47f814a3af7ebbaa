import { thrushCases } from "../derive/thrushCases.js";
import { differenceInDifferences } from "../estimate/differenceInDifferences.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, climateSeed } from "./climate/asked.js";
import { whenPossible } from "./climate/whenPossible.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { points } from "./words/points.js";
import { pointsInterval } from "./words/pointsInterval.js";
import { shortDate } from "./words/shortDate.js";

const { id, question, notEnough } = asked("since-the-change");

/** Before and after each dated change of a yard against the yards that changed nothing, months matched. Unit: a foot at a visit. */
export function yardChanges(study: Study): Answer | NotEnoughData {
  if (study.changes.length === 0) return notEnough("No yard has a dated change.");
  const { level, minimumHorses } = study.settings;
  const rows = thrushCases(study)
    .filter(({ missing }) => missing !== "specimen")
    .map(({ yardId, horseId, visitDate, thrush }) => ({ yardId, horseId, visitDate, case: thrush }));
  const changed = new Set(study.changes.map(({ yardId }) => yardId));
  const controls = [...new Set(rows.flatMap(({ yardId }) => yardId ?? []))].filter((yard) => !changed.has(yard));
  const lines = study.changes.map(({ yardId, changedOn, what }) => {
    const random = seededRandom(climateSeed).stream(`${yardId} ${changedOn}`);
    const base = { yardId, changedOn, what };
    const none = { estimate: null, lower: null, upper: null, placeboP: null };
    const found = whenPossible(() =>
      differenceInDifferences(rows, { yardId, changedOn, controls, minimumHorses, random, replicates: 500, level }),
    );
    if (typeof found === "string")
      return { ...base, ...none, months: null, controls: null, horses: null, n: null, note: `Cannot tell. ${found}` };
    if (found.kind === "cannot_tell") {
      return {
        ...base,
        ...none,
        months: found.months,
        controls: found.controlYards,
        horses: found.horses,
        n: null,
        note: `Cannot tell. ${found.reason}`,
      };
    }
    const { estimate, lower, upper, placeboP, horses, n, bootstrap } = found;
    const drawn =
      bootstrap === null
        ? ""
        : ` By resampling yards and horses ${points(bootstrap.lower)} to ${points(bootstrap.upper)}, usually too narrow.`;
    return {
      ...base,
      estimate,
      lower,
      upper,
      placeboP,
      months: found.months.length,
      controls: found.controlYards.length,
      horses,
      n,
      note: `${found.method}.${drawn} ${found.note ?? ""}`.trim(),
    };
  });
  const told = lines.filter(({ estimate }) => estimate !== null);
  return {
    kind: "answer",
    id,
    question,
    sentence: `Of ${counted(lines.length, "dated change")} of yards, ${told.length === 0 ? "none can be judged: cannot tell" : `${told.length} can be set against yards that changed nothing`}.${told.map((line) => ` ${inWords(line, level)}`).join("")}`,
    tables: [
      {
        caption: `Change of prevalence (${caseWords(study.settings)}) at the yard less that at control yards, months matched`,
        columns: [
          { name: "yardId", title: "Yard" },
          { name: "changedOn", title: "Changed on" },
          { name: "what", title: "What" },
          { name: "estimate", title: "Difference in differences", percent: true, digits: 1 },
          { name: "lower", title: "From", percent: true, digits: 1 },
          { name: "upper", title: "To", percent: true, digits: 1 },
          { name: "placeboP", title: "Share of yards that stand out as much", digits: 2 },
          { name: "months", title: "Months matched" },
          { name: "controls", title: "Control yards" },
          { name: "horses", title: "Horses seen before and after" },
          { name: "n", title: "Feet" },
          { name: "note", title: "Note", below: "long" },
        ],
        rows: lines,
      },
    ],
    charts: [],
    cautions: [
      "It went with the change; one yard is no experiment, and yards that change something are often those that had trouble, which eases by itself.",
      "Controls are yards without any dated change; changes that were not written down are not known.",
    ],
    method: {
      unit: "a foot at a visit",
      n: told.reduce((sum, { n }) => sum + (n ?? 0), 0),
      missing: rows.filter((row) => row.case === null).length,
      text: `Case: ${caseWords(study.settings)}. Prevalence after less before within each month of the year seen both before and after; the yard's less the mean of the control yards'; limits from the spread of the control yards.`,
      links: ["differenceInDifferences"],
    },
  };
}

function inWords(
  line: {
    readonly yardId: string;
    readonly changedOn: string;
    readonly estimate: number | null;
    readonly lower: number | null;
    readonly upper: number | null;
  },
  level: number,
): string {
  const which = compared(line, 0, {
    above: "thrush rose more than at the others",
    below: "thrush fell more than at the others",
    unclear: "the change in thrush cannot be told apart from that of the others",
  });
  return `${line.yardId}, after ${shortDate(line.changedOn)}: ${which}, ${pointsInterval({ ...line, estimate: line.estimate ?? 0, level })}.`;
}
