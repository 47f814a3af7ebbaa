const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** A calendar date `YYYY-MM-DD` as people say it: `5 March 2026`. The same on every machine. */
export function longDate(date: string): string {
  const [year = "", month = "", day = ""] = date.split("-");
  return `${Number(day)} ${months[Number(month) - 1] ?? month} ${year}`;
}
