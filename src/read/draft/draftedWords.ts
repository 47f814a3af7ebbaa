import type { Column } from "../../study/Column.js";
import { columnReading } from "../mapping/columnReading.js";
import type { ColumnMapping } from "../mapping/FileMapping.js";
import { quoted } from "../report/quoted.js";
import { cellDecider } from "../table/cellDecider.js";
import type { Zod } from "../Zod.js";
import type { DraftColumn } from "./DraftColumn.js";
import type { SampleText } from "./SampleText.js";

const MOST_WORDS = 12;
/** These say that nothing was recorded, whatever the column. */
const NOTHING = /^(n\/?a|nan|null|none recorded|not recorded|not seen|unknown|#n\/a)$/i;
/** Front and hind before left and right, by their first letters: the four letters can mean nothing else of a horse. */
const FEET: Readonly<Record<string, string>> = { FL: "LF", FR: "RF", HL: "LH", HR: "RH" };

/**
 * What the texts of a column mean that do not read as they stand, with `mapping` already given: words that say that nothing was recorded are proposed as missing, feet
 * named end first as feet; what any other word means is asked. More than twelve of them are left to the check of the data.
 */
export function draftedWords(zod: Zod, column: Column, texts: readonly SampleText[], mapping: ColumnMapping): DraftColumn {
  const nothing: DraftColumn = { mapping: {}, evidence: [], questions: [] };
  if (column.type === "date" || column.type === "id" || column.type === "text") return nothing;
  const { decide } = cellDecider(zod, column, columnReading(column, withoutQuestions(mapping), {}));
  const strange = texts.filter(({ text }) => {
    const { fault } = decide(text);
    return fault !== null && fault.severity !== "warning" && fault.code !== "out_of_range" && fault.code !== "not_equine";
  });
  const numbers = column.type === "number" || column.type === "integer";
  const words = numbers ? strange.filter(({ text }) => !/\d/.test(text)) : strange;
  const missing = words.filter(({ text }) => NOTHING.test(text.trim()));
  const feet = words.filter(({ text }) => column.name === "foot" && feetOf(text) !== undefined);
  const open = words.filter((word) => !missing.includes(word) && !feet.includes(word));
  const asked = open.length > MOST_WORDS ? [] : open;
  const known = feet.map(({ text }): [string, string | null] => [text, feetOf(text) ?? null]);
  const all = [...known, ...asked.map(({ text }): [string, null] => [text, null])];
  return {
    mapping: {
      ...(all.length > 0 && { words: Object.fromEntries(all) }),
      ...(missing.length > 0 && { missing: missing.map(({ text }) => text) }),
    },
    evidence: [
      ...(missing.length > 0 ? [`nothing recorded where it says ${missing.map(({ text }) => quoted(text)).join(", ")}`] : []),
      ...known.map(([text, foot]) => `${quoted(text)} is ${foot ?? ""}`),
      ...(open.length > MOST_WORDS
        ? [`${open.length} different texts do not read as ${numbers ? "numbers" : "its codes"}; the check lists them`]
        : []),
    ],
    questions: asked.map(({ text, count, place }) => ({
      path: `words.${text}`,
      question: `what does ${quoted(text)} mean (${count} ${count === 1 ? "cell" : "cells"}, first in ${place})? ${answers(column)}`,
    })),
  };
}

function feetOf(text: string): string | undefined {
  return FEET[text.trim().toUpperCase()];
}

function answers({ type, values, hard }: Column): string {
  if (type === "boolean") return "true or false";
  if (values !== undefined) return `one of ${values.join(", ")}`;
  return hard === undefined ? "a number" : `a number from ${hard.join(" to ")}`;
}

function withoutQuestions(mapping: ColumnMapping): ColumnMapping {
  return Object.fromEntries(Object.entries(mapping).filter(([, value]) => value !== null));
}
