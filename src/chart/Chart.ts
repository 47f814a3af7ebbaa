import type { Table } from "./Table.js";

/** A finished drawing: a Vega-Lite specification that holds its own data, and what it says in words. */
export interface Chart {
  /** The finding, not the subject: "Frogs were worst in January". */
  readonly title: string;
  /** What a reader who cannot see the chart needs: one or two sentences with the numbers. */
  readonly reading: string;
  /** Vega-Lite 5, only what version 5.6.1 has; data inline; nothing is aggregated in it. */
  readonly spec: Readonly<Record<string, unknown>>;
  /** The numbers that are drawn. */
  readonly table: Table;
}
