import { daysInWords } from "../words/daysInWords.js";

/** An exposure column in words with its unit: `rain of 14 days (mm)`. */
export function exposureWords(column: string): string {
  const [, days = ""] = /(\d+)d$/.exec(column) ?? [];
  const [, percent] = /^apiMm(.+)pct$/.exec(column) ?? [];
  if (percent !== undefined) return `antecedent precipitation index, ${percent}% kept a day (mm)`;
  if (column.startsWith("rainMm")) return `rain of ${daysInWords(Number(days))} (mm)`;
  if (column.startsWith("rainAnomalyMm")) return `rain of ${daysInWords(Number(days))} less the usual of the month (mm)`;
  if (column.startsWith("wetDays")) return `wet days of ${days}`;
  if (column.startsWith("dewDays")) return `dewy days of ${days}`;
  if (column.startsWith("surplusDays")) return `days of ${days} on which the soil was full`;
  return column === "soilStorageMm" ? "water in the soil (mm)" : column;
}
