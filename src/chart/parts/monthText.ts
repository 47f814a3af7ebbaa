const names = "January February March April May June July August September October November December".split(" ");

/** A month `YYYY-MM` as people say it: `March 2026`. The same on every machine. */
export function monthText(month: string): string {
  const [year = "", number = ""] = month.split("-");
  return `${names[Number(number) - 1] ?? number} ${year}`;
}
