import type { Table } from "../chart/Table.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { clusteredProportion } from "../estimate/clusteredProportion.js";
import { mcnemar } from "../estimate/mcnemar.js";
import { meanInterval } from "../estimate/meanInterval.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { percentage } from "./words/percentage.js";
import { pValue } from "./words/pValue.js";
import { pointsInterval } from "./words/pointsInterval.js";
import { rounded } from "./words/rounded.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("hinds-or-fronts");

/** Thrush of hind feet beside that of the front feet of the same horses, and the clefts. Unit: a horse. */
export function hindsOrFronts(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const feet = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = feet.filter(({ thrush }) => thrush !== null);
  const horses = [...grouped(graded, ({ horseId }) => horseId).values()].flatMap((rows) => bothEnds(rows) ?? []);
  if (horses.length < minimumHorses) {
    const reason = tooFewHorses(horses.length, minimumHorses, "a graded frog in front and behind", "give no comparison");
    return { kind: "not_enough_data", id, question, reason };
  }
  const difference = meanInterval(
    horses.map(({ hind, fore }) => hind - fore),
    { level },
  );
  const share = (end: "hind" | "fore") => horses.reduce((sum, horse) => sum + horse[end], 0) / horses.length;
  const which = compared(difference, 0, {
    above: "Hind feet had thrush more often than front feet",
    below: "Front feet had thrush more often than hind feet",
    unclear: "Hind and front feet cannot be told apart in how often they had thrush",
  });
  const paired = lastPairs(graded);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${which}: ${percentage(share("hind"))} of looks behind and ${percentage(share("fore"))} in front, ${counted(horses.length, "horse")} counting once each; a difference of ${pointsInterval({ ...difference, estimate: difference.estimate ?? 0 })}.${cleftWords(graded)}`,
    tables: [pairsTable(paired), ...cleftTable(graded, level)],
    charts: [],
    cautions: [
      "Why one end differs from the other is not in the records: ground and bedding, work, shoes, and how well a foot can be looked at all come in.",
    ],
    method: {
      unit: "a horse",
      n: horses.length,
      missing: new Set(feet.map(({ horseId }) => horseId)).size - horses.length,
      text: `Case: ${caseWords(study.settings)}. Share of graded looks with thrush behind less in front, within each horse; mean over horses, Student's t limits. Last visit: one pair a horse, any hind and any front foot; ${mcnemarWords(paired, level)} Clefts: share of feet with thrush at a visit, horses as clusters; a foot may have several.`,
      links: ["thrushCases", "meanInterval", "mcnemar", "clusteredProportion"],
    },
  };
}

function bothEnds(rows: readonly FootCase[]): { readonly hind: number; readonly fore: number } | null {
  const shareOf = (end: FootCase["end"]) => {
    const of = rows.filter((row) => row.end === end);
    return of.length === 0 ? null : of.filter(({ thrush }) => thrush).length / of.length;
  };
  const [hind, fore] = [shareOf("hind"), shareOf("fore")];
  return hind === null || fore === null ? null : { hind, fore };
}

interface Pairs {
  readonly both: number;
  readonly hindOnly: number;
  readonly foreOnly: number;
  readonly neither: number;
}

/** One pair a horse: any hind and any front foot at the last visit at which both ends were graded. */
function lastPairs(graded: readonly FootCase[]): Pairs {
  const pairs = { both: 0, hindOnly: 0, foreOnly: 0, neither: 0 };
  for (const rows of grouped(graded, ({ horseId }) => horseId).values()) {
    const visits = [...grouped(rows, ({ visitDate }) => visitDate)].sort(([a], [b]) => (a < b ? 1 : -1));
    const last = visits.map(([, feet]) => feet).find((visit) => new Set(visit.map(({ end }) => end)).size === 2);
    if (last === undefined) continue;
    const any = (end: FootCase["end"]) => last.some((row) => row.end === end && row.thrush);
    const [hind, fore] = [any("hind"), any("fore")];
    pairs[hind ? (fore ? "both" : "hindOnly") : fore ? "foreOnly" : "neither"] += 1;
  }
  return pairs;
}

function mcnemarWords({ hindOnly, foreOnly }: Pairs, level: number): string {
  const { exactP, oddsRatio } = mcnemar(hindOnly, foreOnly, { level });
  if (exactP === null) return "no horse differs between its ends there.";
  const ratio = withInterval({ ...oddsRatio, estimate: oddsRatio.estimate ?? Infinity }, (value) => rounded(value, 1));
  return `odds ratio within pairs ${ratio}, exact McNemar test ${pValue(exactP)}.`;
}

function pairsTable({ both, hindOnly, foreOnly, neither }: Pairs): Table {
  return {
    caption: "Horses at the last visit at which both ends were graded",
    columns: [
      { name: "where", title: "Thrush" },
      { name: "horses", title: "Horses" },
    ],
    rows: [
      { where: "behind and in front", horses: both },
      { where: "behind only", horses: hindOnly },
      { where: "in front only", horses: foreOnly },
      { where: "neither", horses: neither },
    ],
  };
}

const clefts = [
  { site: "central_sulcus", words: "central sulcus" },
  { site: "medial_groove", words: "inner groove" },
  { site: "lateral_groove", words: "outer groove" },
] as const;

function sited(graded: readonly FootCase[]): (FootCase & { readonly thrushSite: NonNullable<FootCase["thrushSite"]> })[] {
  return graded.flatMap((row) => (row.thrush && row.thrushSite !== null ? [{ ...row, thrushSite: row.thrushSite }] : []));
}

function cleftWords(graded: readonly FootCase[]): string {
  const rows = sited(graded);
  if (rows.length === 0) return " In which cleft was not recorded.";
  const counts = clefts.map(({ site, words }) => ({ words, feet: rows.filter((row) => row.thrushSite.includes(site)).length }));
  const most = counts.reduce((best, each) => (each.feet > best.feet ? each : best));
  return ` Where the cleft was named it was most often the ${most.words}: ${most.feet} of ${counted(rows.length, "look")} with thrush.`;
}

function cleftTable(graded: readonly FootCase[], level: number): Table[] {
  const rows = sited(graded);
  if (rows.length === 0) return [];
  const shares = (["fore", "hind"] as const).flatMap((end) => {
    const of = rows.filter((row) => row.end === end);
    if (of.length === 0) return [];
    return clefts.map(({ site, words }) => {
      const clusters = [...grouped(of, ({ horseId }) => horseId).values()].map((feet) => ({
        cases: feet.filter((row) => row.thrushSite.includes(site)).length,
        n: feet.length,
      }));
      const { cases, n, estimate, logitT } = clusteredProportion(clusters, { level });
      return { end: end === "fore" ? "front" : "hind", cleft: words, cases, n, estimate, ...logitT };
    });
  });
  const unnamed = graded.filter(({ thrush, thrushSite }) => thrush && thrushSite === null).length;
  return [
    {
      caption: `Clefts named at looks with thrush (${counted(unnamed, "look")} with thrush named none)`,
      columns: [
        { name: "end", title: "Feet" },
        { name: "cleft", title: "Cleft" },
        { name: "cases", title: "Looks" },
        { name: "n", title: "Of looks with thrush" },
        { name: "estimate", title: "Share", percent: true },
        { name: "lower", title: "From", percent: true },
        { name: "upper", title: "To", percent: true },
      ],
      rows: shares,
    },
  ];
}
