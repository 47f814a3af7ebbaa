import type { ExposureModel } from "../../estimate/ExposureModel.js";
import type { Term } from "../../estimate/Term.js";
import { grouped } from "../../study/grouped.js";
import type { AdjustmentCode, Settings } from "../../study/Settings.js";
import type { ClimateRow } from "./ClimateRow.js";
import { fewestYards } from "./fewestYards.js";
import { valueOf } from "./valueOf.js";

/** A model and what could not be held equal in it, each with the reason. */
export interface Adjusted {
  readonly model: ExposureModel & { readonly adjust: readonly Term[] };
  readonly leftOut: readonly string[];
}

const columns: Readonly<Record<AdjustmentCode, Term>> = {
  season: { season: "visitDate" },
  season_2: { season: "visitDate", harmonics: 2 },
  end: { column: "end", reference: "fore" },
  observer: { column: "observerId", reference: "" },
  shod: { column: "shodFoot", reference: "bare" },
  interval: { column: "intervalDays", per: 7 },
  ground: { column: "ground", reference: "" },
  bedding: { column: "bedding", reference: "" },
  turnout: "turnoutHours",
  surface_treated: "surfaceTreated7d",
};
const ofTheYard: readonly AdjustmentCode[] = ["ground", "bedding", "turnout"];

/** The model with other things held equal. */
export function adjustedModel(
  { primaryExposure, exposurePer, level }: Settings,
  rows: readonly ClimateRow[],
  codes: readonly AdjustmentCode[],
): Adjusted {
  const used = rows.filter((row) => row.case !== null && valueOf(row, primaryExposure) !== null && row.yardId !== null);
  const fewYards = new Set(used.map(({ yardId }) => yardId)).size < fewestYards;
  const parts = codes.map((code) => termOf(code, used, fewYards));
  return {
    model: {
      rows,
      outcome: "case",
      exposure: primaryExposure,
      per: exposurePer,
      adjust: parts.flatMap((part) => (typeof part === "object" && "term" in part ? [part.term] : [])),
      groups: ["yardId", "horseId"],
      minimumGroups: fewestYards,
      level,
    },
    leftOut: parts.flatMap((part) => ("why" in part ? [part.why] : [])),
  };
}

function termOf(
  code: AdjustmentCode,
  rows: readonly ClimateRow[],
  fewYards: boolean,
): { readonly term: Term } | { readonly why: string } {
  const term = columns[code];
  if (fewYards && ofTheYard.includes(code))
    return { why: `${code}: yards are too few to be judged by; each has a term of its own` };
  if (typeof term === "object" && "season" in term) return { term };
  const column = typeof term === "string" ? term : (term as { readonly column: string }).column;
  const counts = new Map<unknown, number>();
  for (const row of rows) counts.set(valueOf(row, column), (counts.get(valueOf(row, column)) ?? 0) + 1);
  const known = [...counts].filter(([value]) => value !== null);
  const missing = counts.get(null) ?? 0;
  if (missing > rows.length / 4) return { why: `${code}: not recorded at ${missing} of ${rows.length} feet` };
  if (known.length < 2) return { why: `${code}: the same at every foot` };
  const ofAYard = [...grouped(rows, ({ yardId }) => yardId).values()].map((own) => own.map((row) => valueOf(row, column)));
  if (fewYards && ofAYard.every((values) => new Set(values.filter((value) => value !== null)).size < 2))
    return { why: `${code}: the same at every foot of a yard, and each yard has a term of its own` };
  // The most frequent one is the reference, so that its comparison with the others is as sure as can be.
  const commonest = known.reduce((most, one) => (one[1] > most[1] ? one : most))[0] as string;
  return { term: typeof term === "object" && "reference" in term ? { ...term, reference: commonest } : term };
}
