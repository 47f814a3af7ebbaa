import { shapeMeasures } from "../derive/shapeMeasures.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { ClassificationTable } from "./ClassificationTable.js";
import { describedOutlines } from "./describedOutlines.js";
import { EstimateError } from "./EstimateError.js";
import { linearDiscriminant, type LinearDiscriminant } from "./linearDiscriminant.js";

/** How the shape of one foot, once measured or traced, speaks. */
export interface FootEndChance extends Pick<FootVisit, "horseId" | "visitDate" | "foot" | "stage" | "observerId"> {
  /** Which tracing; null for a caliper reading, or an only tracing. */
  readonly tracing: string | null;
  readonly from: "outline" | "caliper";
  /** The end it is labelled as; null for a specimen of unknown end. */
  readonly labelled: "fore" | "hind" | null;
  /** Side unknown: it made no part of any rule. */
  readonly specimen: boolean;
  /** Chance of a front foot, by a rule that this horse had no part in. */
  readonly probabilityFore: number;
}

/** A rule, and how often it is wrong about horses it has not seen. */
export interface FootEndRule {
  readonly from: "outline" | "caliper";
  readonly stage: FootVisit["stage"];
  readonly terms: readonly string[];
  /** Readings or tracings it was made from, and their horses. */
  readonly n: number;
  readonly horses: number;
  readonly crossValidated: ClassificationTable;
}

/** Chances of every foot that a rule could be asked about. */
export interface FootEndChances {
  readonly feet: readonly FootEndChance[];
  readonly rules: readonly FootEndRule[];
  /** Why there is no rule for a stage. */
  readonly notes: readonly string[];
}

type Row = Omit<FootEndChance, "probabilityFore"> & Readonly<Record<string, unknown>>;

const caliperTerms = ["shapeIndex"];
const outlineTerms = ["shapeIndex", "toeTaper", "widestFromToe", "circularity"];

/**
 * Front or hind? For every foot measured or traced, the chance by its shape alone; for a label in doubt, a specimen of unknown end, or a
 * check of labels.
 *
 * Method: linear discriminants held out by horse, both ends equally likely beforehand; one from width over length by caliper and one from traced
 * outlines (width over length, toe taper, widest place, circularity), each stage by itself. A specimen is judged by the rule of its own
 * stage, or where there is none by that made from most horses. Donkeys and mules have no part.
 *
 * Missing: a foot without width and length, or with an outline that cannot be used, is not in `feet`; nor is one at a stage without a
 * rule, which `notes` then says. A rule needs both ends and `leastHorses` (5).
 *
 * Errors (`EstimateError`): `out_of_range` for a level not between 0 and 1.
 *
 * Source: as in `linearDiscriminant`.
 */
export function footEndChances(
  study: Pick<Study, "visits" | "horses" | "outlines">,
  options: { readonly level?: number; readonly leastHorses?: number } = {},
): FootEndChances {
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  const known = ({ horseId }: { readonly horseId: string }) => !["donkey", "mule"].includes(species.get(horseId) ?? "horse");
  const parts = [
    chancesOf(outlineRows(study).filter(known), outlineTerms, options),
    chancesOf(caliperRows(study).filter(known), caliperTerms, options),
  ];
  return {
    feet: parts.flatMap(({ feet }) => feet),
    rules: parts.flatMap(({ rules }) => rules),
    notes: parts.flatMap(({ notes }) => notes),
  };
}

function outlineRows({ outlines }: Pick<Study, "outlines">): Row[] {
  return describedOutlines(tracedOutlines({ outlines }, { mirrorLeft: true })).rows.map(({ end, side, ...row }) => ({
    ...row,
    ...{ from: "outline", labelled: end, specimen: side === null },
  }));
}

function caliperRows(study: Pick<Study, "visits" | "horses">): Row[] {
  return shapeMeasures(study, ["shapeIndex"]).map(({ horseId, visitDate, foot, stage, observerId, end, side, value }) => ({
    ...{ horseId, visitDate, foot, stage, observerId, tracing: null, from: "caliper" },
    ...{ labelled: end, specimen: side === null, shapeIndex: value },
  }));
}

function chancesOf(
  rows: readonly Row[],
  terms: readonly string[],
  { level = 0.95, leastHorses = 5 }: { readonly level?: number; readonly leastHorses?: number },
): FootEndChances {
  const sided = rows.filter(({ specimen }) => !specimen);
  const notes: string[] = [];
  const made = [...grouped(sided, ({ stage }) => stage)].flatMap(([stage, own]) => {
    const horses = new Set(own.map(({ horseId }) => horseId)).size;
    const said = ruleOf(own, terms, { level, leastHorses, horses });
    if (typeof said !== "string") return [{ stage, own, horses, said }];
    notes.push(`${own[0]?.from === "outline" ? "outlines" : "caliper readings"}, ${taken(stage)}: ${said}`);
    return [];
  });
  made.sort((a, b) => b.horses - a.horses || b.said.n - a.said.n || ((a.stage ?? "") < (b.stage ?? "") ? -1 : 1));
  const feet = made.flatMap(({ own, said }) =>
    said.rows.flatMap(({ row, heldOut }) => chanceOf(own[row], heldOut.posterior["fore"])),
  );
  const specimens = rows.flatMap((row) => {
    const rule = made.find(({ stage }) => stage === row.stage) ?? made[0];
    return row.specimen ? chanceOf(row, rule?.said.predict([row])[0]?.posterior["fore"]) : [];
  });
  return {
    feet: [...feet, ...specimens],
    rules: made.map(({ stage, horses, said: { n, crossValidated }, own }) => ({
      ...{ from: own[0]?.from ?? "caliper", stage, terms, n, horses, crossValidated },
    })),
    notes,
  };
}

function taken(stage: FootVisit["stage"]): string {
  return stage === null ? "stage not recorded" : stage.replace("_", " ");
}

/** A rule, or in words why there is none. */
function ruleOf(
  rows: readonly Row[],
  terms: readonly string[],
  { level, leastHorses, horses }: { readonly level: number; readonly leastHorses: number; readonly horses: number },
): LinearDiscriminant | string {
  if (horses < leastHorses) return `${horses} horses; ${leastHorses} are needed.`;
  try {
    return linearDiscriminant({ rows, label: "labelled", terms, foldBy: "horseId", priors: { fore: 0.5, hind: 0.5 }, level });
  } catch (fault) {
    // Priors are out of range when one end is not there at all.
    if (!(fault instanceof EstimateError) || (fault.code === "out_of_range" && bothEnds(rows))) throw fault;
    return bothEnds(rows) ? fault.message : "only one end was recorded.";
  }
}

function bothEnds(rows: readonly Row[]): boolean {
  return new Set(rows.map(({ labelled }) => labelled)).size === 2;
}

function chanceOf(row: Row | undefined, probabilityFore: number | undefined): FootEndChance[] {
  if (row === undefined || probabilityFore === undefined) return [];
  const { horseId, visitDate, foot, stage, observerId, tracing, from, labelled, specimen } = row;
  return [{ horseId, visitDate, foot, stage, observerId, tracing, from, labelled, specimen, probabilityFore }];
}
