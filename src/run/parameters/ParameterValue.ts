/** A plain value without parts. */
export type PlainValue = string | number | boolean | null;

/** What a parameter of a notebook may be. */
export type ParameterValue = PlainValue | readonly PlainValue[];
