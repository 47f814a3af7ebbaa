import type { Table } from "../../chart/Table.js";
import type { ExposureEffect } from "../../estimate/ExposureEffect.js";
import { clusterWords } from "./clusterWords.js";
import { heldEqualWords } from "./heldEqualWords.js";
import { levelText } from "../../chart/parts/levelText.js";

/** Effects as a table: each with its contrast, what was held equal, n, missing and what the limits allow for. */
export function effectTable(
  caption: string,
  effects: readonly (ExposureEffect & { readonly kind?: string; readonly adjustedP?: number | null })[],
  level: number,
): Table {
  const interval = `${levelText(level)} interval`;
  const withKind = effects.some(({ kind }) => kind !== undefined);
  const withAdjusted = effects.some(({ adjustedP }) => adjustedP !== undefined);
  return {
    caption,
    columns: [
      { name: "name", title: "Analysis" },
      ...(withKind ? [{ name: "kind", title: "Status" }] : []),
      { name: "contrast", title: "Contrast", below: "alike" },
      { name: "estimate", title: "Odds ratio", digits: 3 },
      { name: "lower", title: `${interval}, from`, digits: 3 },
      { name: "upper", title: "to", digits: 3 },
      { name: "p", title: "p", digits: 4, p: true },
      ...(withAdjusted ? [{ name: "adjustedP", title: "p, Holm over all tried", digits: 4, p: true }] : []),
      { name: "n", title: "Feet" },
      { name: "cases", title: "Cases" },
      { name: "missing", title: "Missing" },
      { name: "adjusted", title: "Held equal", below: "alike" },
      { name: "clusters", title: "Limits allow for", below: "alike" },
      { name: "note", title: "Note", below: "long" },
    ],
    rows: effects.map((effect) => ({
      name: effect.name.replace("monthOfYear", "month of the year"),
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
      adjusted: heldEqualWords(effect.adjustedFor),
      clusters: clusterWords(effect),
      note: effect.note,
    })),
  };
}
