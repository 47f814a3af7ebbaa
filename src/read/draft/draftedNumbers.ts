import type { Column } from "../../study/Column.js";
import { converted } from "../mapping/converted.js";
import { unitConversions } from "../mapping/unitConversions.js";
import { quoted } from "../report/quoted.js";
import type { DraftColumn, DraftQuestion } from "./DraftColumn.js";
import type { SampleText } from "./SampleText.js";

const SHOWN_UNITS = 3;

/**
 * How a column of numbers is proposed to be read. A decimal comma is proposed when commas stand between digits and no point does. A unit is proposed only when the header
 * names it or most cells carry it; that numbers would be usual in a unit is told, and the unit asked. Texts that are no numbers are asked for, up to twelve.
 */
export function draftedNumbers(column: Column, texts: readonly SampleText[], stated: string | null): DraftColumn {
  const mapping: { decimal?: "," | null; unit?: string | null } = {};
  const evidence: string[] = [];
  const questions: DraftQuestion[] = [];
  const comma = texts.find(({ text }) => /^\D?\d+,\d/.test(text));
  const point = texts.find(({ text }) => /^\D?\d+\.\d/.test(text));
  if (comma !== undefined && point === undefined) {
    mapping.decimal = ",";
    evidence.push(`decimal comma: ${quoted(comma.text)} (${comma.place}), and no number has a point`);
  } else if (comma !== undefined && point !== undefined) {
    mapping.decimal = null;
    const question = `is the decimal mark a comma or a point? There is ${quoted(comma.text)} (${comma.place}) and ${quoted(point.text)} (${point.place})`;
    questions.push({ path: "decimal", question });
  }
  const pointed = (text: string) => (mapping.decimal === "," ? text.replace(",", ".") : text);
  const units = unitConversions[column.unit ?? ""];
  if (units !== undefined) {
    const numbers = texts.map((each) => ({ ...each, text: pointed(each.text) })).filter(({ text }) => /\d/.test(text));
    const inCells = carried(units, numbers);
    const unit = stated !== null && stated in units ? stated : inCells;
    if (unit !== null) {
      mapping.unit = unit;
      evidence.push(unit === stated ? `${unit}, as its header says` : `${unit}, as its cells say`);
    } else if (numbers.length > 0) {
      const { proof, question } = judged(column, units, numbers);
      if (proof !== null) evidence.push(proof);
      else {
        mapping.unit = null;
        questions.push({ path: "unit", question });
      }
    }
  }
  return { mapping, evidence, questions };
}

type Units = (typeof unitConversions)[string];

/** Whether the numbers are usual in the unit of the table and in no other; else the question. */
function judged(column: Column, units: Units, numbers: readonly SampleText[]): { proof: string | null; question: string } {
  const total = numbers.reduce((sum, { count }) => sum + count, 0);
  const likely = usual(column, units, numbers).filter(({ count }) => count > 0);
  const [most, next] = likely;
  const clear = most?.unit === column.unit && most.count * 2 > total && (next?.count ?? 0) * 2 <= total;
  const proof = clear ? `${most.unit}: ${most.count} of ${total} numbers are usual so` : null;
  const so = likely.slice(0, SHOWN_UNITS).map(({ unit, count }) => `${count} of ${total} numbers are usual as ${unit}`);
  const names = Object.keys(units).join(", ");
  return { proof, question: `which unit is it in: ${names}? ${["Neither header nor cells say", ...so].join("; ")}` };
}

/** The unit that stands in most cells behind the number. */
function carried(units: Units, numbers: readonly SampleText[]): string | null {
  const total = numbers.reduce((sum, { count }) => sum + count, 0);
  for (const [unit, { suffix }] of Object.entries(units)) {
    const with_ = numbers.filter(({ text }) => suffix.test(text)).reduce((sum, { count }) => sum + count, 0);
    if (with_ * 2 > total) return unit;
  }
  return null;
}

/** How many numbers lie in the usual range in each unit, the most first. */
function usual(column: Column, units: Units, numbers: readonly SampleText[]): { unit: string; count: number }[] {
  const [low, high] = column.soft ?? [0, 0];
  if (low <= 0) return [];
  return Object.entries(units)
    .map(([unit, conversion]) => {
      const inRange = ({ text }: SampleText) => {
        const value = converted(text, conversion);
        return value !== null && value >= low && value <= high;
      };
      return { unit, count: numbers.filter(inRange).reduce((sum, { count }) => sum + count, 0) };
    })
    .sort((a, b) => b.count - a.count);
}
