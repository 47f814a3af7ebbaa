import type { ZodType } from "zod";
import type { Column } from "../../study/Column.js";
import { dayNumber } from "../../study/dayNumber.js";
import type { Zod } from "../Zod.js";
import type { CellValue } from "./CellValue.js";
import { codeWord } from "./codeWord.js";
import { footCode } from "./footCode.js";

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
const BOOLEANS = { yes: true, no: false, true: true, false: false, y: true, n: false, "1": true, "0": false } as const;
const LONGEST_ID = 100;

/**
 * The schema of the text of a cell that is not empty, made from its column: trimmed text in, value out. Dates are real calendar days
 * `YYYY-MM-DD`, numbers have a decimal point and lie in the hard range, `codes` are separated by `;`. Letters of either case and spaces for
 * `_` are taken in codes; ids are brought to one Unicode form so that the same name matches in every file.
 */
export function cellSchema(zod: Zod, column: Column): ZodType<CellValue, string> {
  const { z } = zod;
  const text = z.string();
  switch (column.type) {
    case "date":
      return text.refine((date) => dayNumber(date) !== null);
    case "id":
      return text.max(LONGEST_ID).transform((id) => id.normalize("NFC").replace(/\s+/g, " "));
    case "text":
      return text;
    case "code":
      return text.transform(column.name === "foot" ? footCode : codeWord).pipe(z.enum(column.values ?? []));
    case "codes": {
      const list = text.transform((codes) => [...new Set(codes.split(";").map(codeWord).filter(Boolean))]);
      return list.pipe(z.array(z.enum(column.values ?? [])).min(1));
    }
    case "boolean":
      return text
        .transform(codeWord)
        .pipe(z.enum(Object.keys(BOOLEANS) as (keyof typeof BOOLEANS)[]))
        .transform((word) => BOOLEANS[word]);
    case "number":
    case "integer": {
      const [low, high] = column.hard ?? [-Infinity, Infinity];
      const inRange = z.number().min(low).max(high);
      return text
        .regex(NUMBER)
        .transform(Number)
        .pipe(column.type === "integer" ? inRange.int() : inRange);
    }
  }
}
