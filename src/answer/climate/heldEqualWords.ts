/** Columns that can be held equal, as a reader calls them. */
const inWords: Readonly<Record<string, string>> = {
  end: "front or hind",
  observerId: "observer",
  shodFoot: "shod or bare",
  intervalDays: "days since the visit before",
  turnoutHours: "hours of turnout",
  surfaceTreated7d: "treatment of the last seven days",
  hind: "front or hind",
  monthOfYear: "month of the year",
};

/** What was held equal, in words: `season, front or hind, observer`; `nothing` for none. `adjustedFor` is that of an effect. */
export function heldEqualWords(adjustedFor: readonly string[]): string {
  if (adjustedFor.length === 0) return "nothing";
  return adjustedFor.map((name) => inWords[name] ?? name.replace(/^season of \w+/, "season")).join(", ");
}
