import { requireRows } from "./design/requireRows.js";
import { effectOfExposure } from "./effectOfExposure.js";
import type { ExposureEffect } from "./ExposureEffect.js";
import type { ExposureModel } from "./ExposureModel.js";

/** The effect without one of the outer groups. */
export interface EffectWithout extends ExposureEffect {
  /** The group that was left out; null for the effect of all. */
  readonly without: string | number | boolean | null;
}

/**
 * The effect of the exposure without each outer group in turn (without each yard), and of all: whether one yard carries it.
 *
 * Method: `effectOfExposure` on the rows of the others. First comes the effect of all, then the groups by name.
 *
 * Missing, errors: as `effectOfExposure`.
 */
export function leaveOneOut(model: ExposureModel): EffectWithout[] {
  requireRows(model.rows);
  const outer = model.groups[0];
  const valueOf = (row: object) =>
    (row as Readonly<Record<string, unknown>>)[outer] as string | number | boolean | null | undefined;
  const names = [...new Set(model.rows.map(valueOf))].filter((name) => name !== null && name !== undefined);
  names.sort((a, b) => (a < b ? -1 : 1));
  return [null, ...names].map((without) => {
    const rows = without === null ? model.rows : model.rows.filter((row) => valueOf(row) !== without);
    return {
      ...effectOfExposure({ ...model, rows }, { name: without === null ? "All" : `Without ${String(without)}` }),
      without,
    };
  });
}
