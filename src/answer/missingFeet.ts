import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { atLastVisit } from "../derive/atLastVisit.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { clusteredProportion } from "../estimate/clusteredProportion.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { percentage } from "./words/percentage.js";
import { tooFewHorses } from "./words/tooFewHorses.js";

const { id, question } = asked("missing-feet");

/** Share with thrush under what feet without a grade may have been: none of them a case, all of them, or something between. Unit: a foot at a visit. */
export function missingFeet(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const cases = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = cases.filter(({ thrush }) => thrush !== null);
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) {
    return {
      kind: "not_enough_data",
      id,
      question,
      reason: tooFewHorses(horses, minimumHorses, "a graded frog", "give no share"),
    };
  }
  const missing = cases.filter(({ thrush }) => thrush === null);
  const [seen, none, all] = [share(graded, level, null), share(cases, level, false), share(cases, level, true)];
  const sentence =
    missing.length === 0
      ? `Every foot that has a row was graded, so none is missing from the share with thrush of ${howSure(seen)}.`
      : `${missing.length} of ${counted(cases.length, "look")} at a foot ${missing.length === 1 ? "has" : "have"} no grade: were none of them thrush the share would be ${percentage(none.estimate)}, were all of them ${percentage(all.estimate)}, against ${howSure(seen)} of graded ones.`;
  return {
    kind: "answer",
    id,
    question,
    sentence,
    tables: [sharesTable(cases, graded, missing, level), horsesTable(study, cases), ...reasonsTable(missing)],
    charts: [],
    cautions: [
      "What the feet without a grade were like is not in the records; the rows between the bounds are suppositions, not findings.",
      "A foot without any row at a visit is not counted here: it cannot be told from one that was not there.",
    ],
    method: {
      unit: "a foot at a visit, horses as clusters",
      n: graded.length,
      missing: missing.length,
      text: `Case: ${caseWords(study.settings)}. Bounds: every missing grade put as clear, then as thrush. Between them: the odds of thrush at a missing look half, the same, twice and four times those of graded looks; and at each missing look the share of that horse's own graded looks, or of all where it has none. Limits hold for each supposition: logit limits with Student's t, given for bounds and graded looks only.`,
      links: ["thrushCases", "clusteredProportion"],
    },
  };
}

/** Share with limits; missing grades put as `supposed`. */
function share(rows: readonly FootCase[], level: number, supposed: boolean | null) {
  const clusters = [...grouped(rows, ({ horseId }) => horseId).values()].map((own) => ({
    cases: own.filter(({ thrush }) => thrush ?? supposed).length,
    n: own.length,
  }));
  const { estimate, logitT } = clusteredProportion(clusters, { level });
  return { estimate, ...logitT, level };
}

function sharesTable(
  cases: readonly FootCase[],
  graded: readonly FootCase[],
  missing: readonly FootCase[],
  level: number,
): Table {
  const found = graded.filter(({ thrush }) => thrush).length;
  const mean = found / graded.length;
  const mixed = (expected: number) => (found + expected) / cases.length;
  const own = grouped(graded, ({ horseId }) => horseId);
  const ofHorse = (horseId: string) => {
    const looks = own.get(horseId);
    return looks === undefined ? mean : looks.filter(({ thrush }) => thrush).length / looks.length;
  };
  const odds = ([times, words]: [number, string]) => {
    const risk = (times * mean) / (1 - mean + times * mean);
    return { supposed: words, estimate: mixed(missing.length * risk), lower: null, upper: null };
  };
  const bare = ({ estimate, lower, upper }: ReturnType<typeof share>) => ({ estimate, lower, upper });
  return {
    caption: "Share of looks with thrush, by what is supposed of looks without a grade",
    columns: [
      { name: "supposed", title: "Looks without a grade" },
      { name: "estimate", title: "Share", percent: true, digits: 1 },
      { name: "lower", title: "From", percent: true, digits: 1 },
      { name: "upper", title: "To", percent: true, digits: 1 },
    ],
    rows: [
      { supposed: "left out", ...bare(share(graded, level, null)) },
      { supposed: "none had thrush", ...bare(share(cases, level, false)) },
      odds([0.5, "half the odds of thrush"]),
      odds([1, "the same odds"]),
      {
        supposed: "each like that horse's graded looks",
        estimate: mixed(missing.reduce((sum, { horseId }) => sum + ofHorse(horseId), 0)),
        lower: null,
        upper: null,
      },
      odds([2, "twice the odds"]),
      odds([4, "four times the odds"]),
      { supposed: "all had thrush", ...bare(share(cases, level, true)) },
    ],
  };
}

function horsesTable(study: Study, cases: readonly FootCase[]): Table {
  const last = atLastVisit(cases, asOfDate(study));
  const horses = [...grouped(last, ({ horseId }) => horseId).values()];
  const count = (test: (feet: readonly FootCase[]) => boolean) => horses.filter(test).length;
  const found = count((feet) => feet.some(({ thrush }) => thrush === true));
  const open = count((feet) => feet.every(({ thrush }) => thrush !== true) && feet.some(({ thrush }) => thrush === null));
  return {
    caption: "Horses with thrush in any foot at their last visit, and how far missing grades could move that",
    columns: [
      { name: "what", title: "Horses" },
      { name: "horses", title: "Number" },
      { name: "estimate", title: "Of all", percent: true },
    ],
    rows: [
      { what: "with thrush in a graded foot: at least", horses: found, estimate: found / horses.length },
      { what: "no thrush in any graded foot, but a foot without a grade", horses: open, estimate: open / horses.length },
      { what: "with thrush, were all of those: at most", horses: found + open, estimate: (found + open) / horses.length },
      { what: "horses", horses: horses.length, estimate: 1 },
    ],
  };
}

const kinds = {
  not_examined: "not looked at",
  not_said: "records do not say whether it was looked at",
  not_graded: "looked at, frog not graded",
  specimen: "specimen",
} as const;

function reasonsTable(missing: readonly FootCase[]): Table[] {
  if (missing.length === 0) return [];
  const why = ({ missing: kind, notExaminedReason }: FootCase) =>
    [kinds[kind ?? "not_said"], ...(notExaminedReason === null ? [] : [notExaminedReason])].join(": ");
  const rows = [...grouped(missing, why)].map(([reason, of]) => ({
    reason,
    looks: of.length,
    horses: new Set(of.map(({ horseId }) => horseId)).size,
  }));
  return [
    {
      caption: "Why looks have no grade",
      columns: [
        { name: "reason", title: "Reason" },
        { name: "looks", title: "Looks" },
        { name: "horses", title: "Horses" },
      ],
      rows: rows.sort((a, b) => b.looks - a.looks || (a.reason < b.reason ? -1 : 1)),
    },
  ];
}
