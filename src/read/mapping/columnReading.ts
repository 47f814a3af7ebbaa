import type { Column } from "../../study/Column.js";
import { calendarDay } from "./calendarDay.js";
import type { CellReading } from "./CellReading.js";
import { converted } from "./converted.js";
import type { ColumnMapping, FileMapping } from "./FileMapping.js";
import { unitConversions } from "./unitConversions.js";
import { wordKey } from "./wordKey.js";

type FileDefaults = Pick<FileMapping, "decimal" | "dates" | "twoDigitYearsFrom">;

/**
 * How a column is read by its mapping, and by what the mapping of its file states for all columns; null when it is read as any file is. What is declared for dates
 * holds for date columns only, the decimal mark and the unit for numbers only.
 */
export function columnReading(column: Column, mapping: ColumnMapping, file: FileDefaults): CellReading | null {
  const words = new Map<string, string | null>();
  for (const text of mapping.missing ?? []) words.set(wordKey(text), null);
  for (const [text, value] of Object.entries(mapping.words ?? {}))
    words.set(wordKey(text), value === null ? null : String(value));
  const form = formOf(column, mapping, file, words);
  if (form === null && words.size === 0) return null;
  const list = words.size === 0 ? [] : [words.size === 1 ? "1 word" : `${words.size} words`];
  const inWords = [...(form?.inWords ?? []), ...list].join("; ");
  return {
    words,
    translate: form?.translate ?? ((text) => text),
    hint: form?.hint ?? null,
    converts: form?.converts ?? false,
    inWords: inWords === "" ? null : inWords,
  };
}

interface Form extends Pick<CellReading, "translate" | "hint" | "converts"> {
  readonly inWords: readonly string[];
}

function formOf(column: Column, mapping: ColumnMapping, file: FileDefaults, words: CellReading["words"]): Form | null {
  switch (column.type) {
    case "date":
      return dateForm(mapping, file);
    case "number":
    case "integer":
      return numberForm(column, mapping, file);
    case "codes":
      return codesForm(mapping.separator ?? ";", words);
    case "boolean":
    case "code":
    case "id":
    case "text":
      return null;
  }
}

function dateForm(mapping: ColumnMapping, file: FileDefaults): Form | null {
  const order = mapping.dates ?? file.dates ?? null;
  const from = mapping.twoDigitYearsFrom ?? file.twoDigitYearsFrom ?? null;
  if (order === null) return null;
  const years = from === null ? [] : [`years of two digits are ${from} to ${from + 99}`];
  const asked = from === null ? '; for years of two digits give "twoDigitYearsFrom"' : "";
  return {
    translate: (text) => calendarDay(text, order, from),
    hint: `By study.json the dates of this column are ${order}: correct the cell, or study.json${asked}.`,
    converts: false,
    inWords: [order, ...years],
  };
}

function numberForm(column: Column, mapping: ColumnMapping, file: FileDefaults): Form | null {
  const comma = (mapping.decimal ?? file.decimal) === ",";
  const unit = mapping.unit ?? null;
  const conversion = unit === null ? undefined : unitConversions[column.unit ?? ""]?.[unit];
  if (!comma && conversion === undefined) return null;
  const point = (text: string) => (comma ? pointed(text) : text);
  return {
    translate(text) {
      const number = point(text);
      if (number === null || conversion === undefined) return number;
      const value = converted(number, conversion);
      return value === null ? null : String(value);
    },
    hint: comma ? "By study.json the decimal mark of this column is a comma: write 12,5 and no point." : null,
    converts: conversion !== undefined && unit !== column.unit,
    inWords: [...(comma ? ["decimal comma"] : []), ...(conversion === undefined ? [] : [`${unit ?? ""}, ${conversion.words}`])],
  };
}

// A point beside a decimal comma would have to part thousands, which no measure of a foot has.
function pointed(text: string): string | null {
  return text.includes(".") || text.indexOf(",") !== text.lastIndexOf(",") ? null : text.replace(",", ".");
}

function codesForm(separator: string, words: CellReading["words"]): Form | null {
  if (separator === ";" && words.size === 0) return null;
  return {
    translate(text) {
      const codes = text.split(separator).map((code) => {
        const word = words.get(wordKey(code));
        return word === undefined ? code : (word ?? "");
      });
      return codes.filter((code) => code.trim() !== "").join(";");
    },
    hint: null,
    converts: false,
    inWords: separator === ";" ? [] : [`parted by ${separator}`],
  };
}
