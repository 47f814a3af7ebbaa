import type { ZodType } from "zod";
import type { Column } from "../../study/Column.js";
import { dayNumber } from "../../study/dayNumber.js";
import { fileTables } from "../../study/fileTables.js";
import type { Zod } from "../Zod.js";
import type { FileMapping, FilesMapping } from "./FileMapping.js";
import { unitConversions } from "./unitConversions.js";

const LONGEST = 200;
const MOST_EXTRA = 20;
const MOST_FILES = 200;

/** Where a check of zod puts what it finds. */
interface FaultSink {
  readonly addIssue: (issue: { code: "custom"; path: PropertyKey[]; message: string }) => void;
}

/** The schema of `files` in `study.json`: which files hold which table, and how each column is found and read. null stands for a question that is not answered yet. It is made for the tables and columns that are `mentioned`; null: for all. */
export function filesSchema(
  { z }: Zod,
  file: ZodType<string>,
  mentioned: ReadonlySet<string> | null = null,
): ZodType<FilesMapping> {
  const isMentioned = (key: string) => mentioned?.has(key) !== false;
  const text = z.string().min(1).max(LONGEST);
  const texts = z.union([text, z.array(text).min(1)]);
  const dates = z
    .enum(["year-month-day", "day-month-year", "month-day-year"])
    .nullish()
    .describe("In which order the parts of a date are written. Never guessed.");
  const twoDigitYearsFrom = z
    .number()
    .int()
    .min(1000)
    .max(9900)
    .nullish()
    .describe("First of the hundred years that two digits stand for: from 1950, 49 is 2049 and 50 is 1950.");
  const decimal = z.enum([".", ","]).nullish().describe("The decimal mark of numbers.");

  const valueOf = (column: Column): ZodType<string | number | boolean> => {
    const [low, high] = column.hard ?? [-1e9, 1e9];
    switch (column.type) {
      case "code":
      case "codes":
        return z.enum(column.values ?? []);
      case "boolean":
        return z.boolean();
      case "integer":
        return z.number().int().min(low).max(high);
      case "number":
        return z.number().min(low).max(high);
      case "date":
        return z.string().refine((day) => dayNumber(day) !== null, "a calendar day such as 2024-03-05 is expected");
      case "id":
      case "text":
        return text;
    }
  };
  const columnMapping = (column: Column) => {
    const units = Object.keys(unitConversions[column.unit ?? ""] ?? {});
    const number = column.type === "number" || column.type === "integer";
    const several = column.type === "codes";
    const whole = z
      .strictObject({
        header: texts
          .nullish()
          .describe(
            "Header of the column, or several spellings of it; {foot} stands for each foot of a file with one row a visit.",
          ),
        value: valueOf(column).nullish().describe("The value of every row, for a column that the file does not have."),
        ...(number ? { decimal } : {}),
        ...(units.length > 0
          ? {
              unit: z
                .enum(units)
                .nullish()
                .describe(`Unit of the file; the table is in ${column.unit ?? ""}.`),
            }
          : {}),
        ...(column.type === "date" ? { dates, twoDigitYearsFrom } : {}),
        ...(several
          ? { separator: z.string().min(1).max(5).optional().describe("What parts several codes in one cell; ; when left out.") }
          : {}),
        words: z.record(text, valueOf(column).nullable()).optional().describe("What texts of the file mean."),
        missing: z.array(text).optional().describe("Texts that mean that nothing was recorded."),
      })
      .refine(({ header, value }) => (header ?? null) === null || (value ?? null) === null, "give header or value, not both")
      .describe(column.meaning);
    return z.union([text, z.array(text).min(1), whole]).nullish();
  };
  const mapping = (kind: string, columns: readonly Column[]) => {
    const wide = kind === "visits";
    const feet = z.strictObject({ LF: texts.optional(), RF: texts.optional(), LH: texts.optional(), RH: texts.optional() });
    return z
      .strictObject({
        file: z.union([file, z.array(file).min(1).max(MOST_FILES)]).describe("One file, or several that are made alike."),
        delimiter: z.enum([",", ";", "tab", "|"]).nullish().describe("What parts the cells; a comma when left out."),
        encoding: z.enum(["utf-8", "utf-16", "windows-1252"]).nullish().describe("How letters are stored; UTF-8 when left out."),
        ...{ decimal, dates, twoDigitYearsFrom },
        ...(wide
          ? { feet: feet.nullish().describe("For one row a visit: how each foot is spelt where {foot} stands in a header.") }
          : {}),
        columns: z
          .strictObject(
            Object.fromEntries(
              columns.filter(({ name }) => isMentioned(name)).map((column) => [column.name, columnMapping(column)]),
            ),
          )
          .optional()
          .describe("Headers of the file, and how to read them, by the column of the table."),
        extra: z.array(text).max(MOST_EXTRA).optional().describe("Headers of further columns to keep as they are."),
      })
      .superRefine((stated, context) => {
        for (const { path, message } of wideFaults(stated as FileMapping))
          context.addIssue({ code: "custom", path: [...path], message });
      });
  };
  return z.strictObject(
    Object.fromEntries(
      fileTables
        .filter(({ kind }) => isMentioned(kind))
        .map(({ kind, row, columns }) => [
          kind,
          z.array(mapping(kind, columns)).min(1).superRefine(namedOnce).optional().describe(`Files with ${row} a row.`),
        ]),
    ),
  );
}

function namedOnce(mappings: readonly { readonly file: string | string[] }[], context: FaultSink): void {
  const seen = new Set<string>();
  mappings.forEach(({ file }, index) => {
    for (const name of [file].flat()) {
      if (seen.has(name)) context.addIssue({ code: "custom", path: [index, "file"], message: `${name} is named twice` });
      seen.add(name);
    }
  });
}

function wideFaults({ feet, columns }: FileMapping): { readonly path: readonly string[]; readonly message: string }[] {
  const wide = feet !== undefined && feet !== null;
  const faults = Object.entries(columns ?? {}).flatMap(([name, mapping]) => {
    const header = typeof mapping === "object" && mapping !== null && "header" in mapping ? mapping.header : mapping;
    const each = JSON.stringify(header ?? "").includes("{foot}");
    const path = ["columns", name];
    if (wide && name === "foot")
      return [{ path, message: "the feet stand in the headers of this file, so that it has no column of its own" }];
    return each && !wide ? [{ path, message: 'a header has {foot}, and "feet" does not say how feet are spelt' }] : [];
  });
  const spellings = Object.values(feet ?? {}).flat();
  const twice = new Set(spellings).size < spellings.length;
  return twice ? [...faults, { path: ["feet"], message: "two feet are spelt alike" }] : faults;
}
