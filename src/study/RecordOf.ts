import type { Column } from "./Column.js";

type Camel<Name extends string> = Name extends `${infer Head}_${infer Tail}` ? `${Head}${Capitalize<Camel<Tail>>}` : Name;

type Cell<C extends Column> = C["type"] extends "number" | "integer"
  ? number
  : C["type"] extends "boolean"
    ? boolean
    : C["type"] extends "code"
      ? NonNullable<C["values"]>[number]
      : C["type"] extends "codes"
        ? readonly NonNullable<C["values"]>[number][]
        : string;

/**
 * The record a column table describes: snake-case headers become camel-case fields, optional cells may be null.
 * The written-out record types in this folder are checked against it, so that table and type cannot drift apart.
 *
 * @private
 */
export type RecordOf<Table extends readonly Column[]> = {
  readonly [C in Table[number] as Camel<C["name"]>]: C["required"] extends true ? Cell<C> : Cell<C> | null;
};
