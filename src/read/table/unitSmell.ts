import type { Column } from "../../study/Column.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";

/** Another unit a column is sometimes kept in. */
interface OtherUnit {
  readonly name: string;
  /** Values in this unit times this are in the unit of the column. */
  readonly factor: number;
  readonly remedy: string;
}

const centimetres = { name: "centimetres", factor: 10, remedy: "multiply the centimetres by 10" };
const inches = { name: "inches", factor: 25.4, remedy: "multiply the inches by 25.4" };
const radians = { name: "radians", factor: 180 / Math.PI, remedy: "multiply the radians by 57.2958" };
const hands = { name: "hands", factor: 10.16, remedy: "multiply the hands by 10.16 (14.2 hands is 14 and a half)" };
const metres = { name: "metres", factor: 100, remedy: "multiply the metres by 100" };

const otherUnits: Readonly<Record<string, readonly OtherUnit[]>> = {
  mm: [centimetres, inches],
  deg: [radians],
  cm: [metres, hands],
};

const FEWEST_VALUES = 5;

/**
 * The warning that a column seems to be kept in another unit: more than half of its numbers lie outside the usual range and inside the
 * usual range of that unit. Judged on five numbers or more, and only where the usual range does not begin at 0. null: nothing to say.
 * Widths of 9 to 18 read as centimetres, of 3 to 9 as inches, angles about 1 as radians (common practice, no source).
 */
export function unitSmell(column: Column, texts: ReadonlyMap<string, { readonly count: number }>): Fault | null {
  const { soft, unit } = column;
  const others = otherUnits[unit ?? ""];
  if (soft === undefined || soft[0] <= 0 || others === undefined) return null;
  const inSoft = (value: number) => value >= soft[0] && value <= soft[1];
  let total = 0;
  const found = others.map((other) => ({ other, count: 0, example: "" }));
  for (const [text, { count }] of texts) {
    const value = Number(text);
    if (text.trim() === "" || count === 0 || !Number.isFinite(value)) continue;
    total += count;
    if (inSoft(value)) continue;
    for (const entry of found) {
      if (!inSoft(value * entry.other.factor)) continue;
      entry.count += count;
      if (entry.example === "") entry.example = text;
    }
  }
  const likely = found.reduce((most, entry) => (entry.count > most.count ? entry : most));
  if (total < FEWEST_VALUES || likely.count * 2 <= total) return null;
  return messages.unitSmell(column, `${likely.count} of ${total} values`, likely.example, likely.other.name, likely.other.remedy);
}
