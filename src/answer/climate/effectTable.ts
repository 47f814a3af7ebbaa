import { cellText } from "../../chart/cellText.js";
import type { Table } from "../../chart/Table.js";
import type { ExposureEffect } from "../../estimate/ExposureEffect.js";

/** Effects as a table: each with its contrast, what was held equal, n, missing and what the limits allow for. */
export function effectTable(
  caption: string,
  effects: readonly (ExposureEffect & { readonly kind?: string; readonly adjustedP?: number | null })[],
  level: number,
): Table {
  const interval = `${cellText(level, { percent: true })} interval`;
  const withKind = effects.some(({ kind }) => kind !== undefined);
  const withAdjusted = effects.some(({ adjustedP }) => adjustedP !== undefined);
  return {
    caption,
    columns: [
      { name: "name", title: "Analysis" },
      ...(withKind ? [{ name: "kind", title: "Status" }] : []),
      { name: "contrast", title: "Contrast" },
      { name: "estimate", title: "Odds ratio", digits: 3 },
      { name: "lower", title: `${interval}, from`, digits: 3 },
      { name: "upper", title: "to", digits: 3 },
      { name: "p", title: "p", digits: 4, p: true },
      ...(withAdjusted ? [{ name: "adjustedP", title: "p, Holm over all tried", digits: 4 }] : []),
      { name: "n", title: "Feet" },
      { name: "cases", title: "Cases" },
      { name: "missing", title: "Missing" },
      { name: "adjusted", title: "Held equal" },
      { name: "clusters", title: "Limits allow for" },
      { name: "note", title: "Note" },
    ],
    rows: effects.map((effect) => ({
      name: effect.name,
      ...(withKind ? { kind: effect.kind ?? null } : {}),
      contrast: effect.contrast,
      estimate: effect.estimate,
      lower: effect.lower,
      upper: effect.upper,
      p: effect.p,
      ...(withAdjusted ? { adjustedP: effect.adjustedP ?? null } : {}),
      n: effect.n,
      cases: effect.cases,
      missing: effect.missing,
      adjusted: effect.adjustedFor.join(", ") || "nothing",
      clusters: effect.clusteredBy === null ? "nothing alike" : `${effect.clusters ?? 0} of ${effect.clusteredBy}`,
      note: effect.note,
    })),
  };
}
