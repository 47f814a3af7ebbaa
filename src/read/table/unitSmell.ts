import type { Column } from "../../study/Column.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";

/** Another unit a column is sometimes kept in. */
interface OtherUnit {
  /** As `study.json` names it. */
  readonly unit: string;
  readonly name: string;
  /** Values in this unit times this are in the unit of the column. */
  readonly factor: number;
}

const otherUnits: Readonly<Record<string, readonly OtherUnit[]>> = {
  mm: [
    { unit: "cm", name: "centimetres", factor: 10 },
    { unit: "in", name: "inches", factor: 25.4 },
  ],
  deg: [{ unit: "rad", name: "radians", factor: 180 / Math.PI }],
  cm: [
    { unit: "m", name: "metres", factor: 100 },
    { unit: "hands", name: "hands", factor: 10.16 },
  ],
};

const FEWEST_VALUES = 5;

/**
 * The warning that a column seems to be kept in another unit: more than half of its numbers lie outside the usual range and inside the
 * usual range of that unit. `plain` gives a text as the column table would write it. Judged on five numbers or more, and only where the usual range does not begin at 0. null: nothing to say.
 * Widths of 9 to 18 read as centimetres, of 3 to 9 as inches, angles about 1 as radians (common practice, no source).
 */
export function unitSmell(
  column: Column,
  texts: ReadonlyMap<string, { readonly count: number }>,
  plain: (text: string) => string | null = (text) => text,
): Fault | null {
  const { soft, unit } = column;
  const others = otherUnits[unit ?? ""];
  if (soft === undefined || soft[0] <= 0 || others === undefined) return null;
  const inSoft = (value: number) => value >= soft[0] && value <= soft[1];
  let total = 0;
  const found = others.map((other) => ({ other, count: 0, example: "" }));
  for (const [text, { count }] of texts) {
    const number = plain(text) ?? "";
    const value = Number(number);
    if (number.trim() === "" || count === 0 || !Number.isFinite(value)) continue;
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
  return messages.unitSmell(column, `${likely.count} of ${total} values`, likely.example, likely.other);
}
