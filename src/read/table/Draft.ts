/** A record while it may still be changed. */
export type Draft<Row> = { -readonly [Field in keyof Row]: Row[Field] };
