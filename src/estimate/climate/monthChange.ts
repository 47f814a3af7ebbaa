import { dayNumber } from "../../study/dayNumber.js";

/** Counts of one month of the year before and after a change. */
export interface MonthChange {
  /** 1 January to 12 December. */
  readonly month: number;
  readonly casesBefore: number;
  readonly before: number;
  readonly casesAfter: number;
  readonly after: number;
}

interface Look {
  readonly visitDate: string;
  readonly case: boolean | null;
}

/** A change of prevalence within months of the year. */
interface Change {
  /** Months seen both before and after, and among those asked for. */
  readonly months: readonly MonthChange[];
  /** Null without such a month. */
  readonly change: number | null;
  /** Whether anything was seen before and anything after, in whatever month. */
  readonly both: boolean;
  /** Looks in the months used. */
  readonly n: number;
}

/** Prevalence from day `after` on minus prevalence before day `before`, month by month; looks between the two count neither way. */
export function monthChange(looks: readonly Look[], before: number, after: number, asked: ReadonlySet<number> | null): Change {
  const cells = Array.from({ length: 12 }, (_, place) => ({
    month: place + 1,
    casesBefore: 0,
    before: 0,
    casesAfter: 0,
    after: 0,
  }));
  for (const { visitDate, case: found } of looks) {
    const day = dayNumber(visitDate)!;
    const cell = cells[Number(visitDate.slice(5, 7)) - 1]!;
    if (day < before) {
      cell.before += 1;
      cell.casesBefore += Number(found);
    } else if (day >= after) {
      cell.after += 1;
      cell.casesAfter += Number(found);
    }
  }
  const months = cells.filter((cell) => cell.before > 0 && cell.after > 0 && (asked === null || asked.has(cell.month)));
  const weighted = months.map((cell) => ({
    weight: (cell.before * cell.after) / (cell.before + cell.after),
    gap: cell.casesAfter / cell.after - cell.casesBefore / cell.before,
  }));
  const weight = weighted.reduce((sum, one) => sum + one.weight, 0);
  return {
    months,
    change: weight === 0 ? null : weighted.reduce((sum, one) => sum + one.weight * one.gap, 0) / weight,
    both: cells.some((cell) => cell.before > 0) && cells.some((cell) => cell.after > 0),
    n: months.reduce((sum, cell) => sum + cell.before + cell.after, 0),
  };
}
