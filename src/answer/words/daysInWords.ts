/** A number of days: `1 day`, `7 days`, `0 days`; several of them: `7, 14, 28 days`. */
export function daysInWords(...days: readonly number[]): string {
  return `${days.join(", ")} ${days.length === 1 && days[0] === 1 ? "day" : "days"}`;
}
