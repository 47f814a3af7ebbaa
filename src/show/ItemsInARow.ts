import type { Showable } from "./partsOf.js";

/** Several things to be shown beside one another, made by `sideBySide`. */
export interface ItemsInARow {
  readonly kind: "side_by_side";
  readonly items: readonly Showable[];
}
