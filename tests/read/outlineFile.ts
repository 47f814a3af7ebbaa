import { tracing } from "../derive/tracing.js";

/** Text of an outlines.csv with one sound tracing of a foot. */
export function outlineFile(horseId: string, visitDate: string): string {
  const rows = tracing({ horseId, visitDate, foot: "LF" });
  const cells = rows.map(({ ring, point, xMm, yMm }) => [horseId, visitDate, "LF", ring, point, xMm, yMm].join(","));
  return `${["horse_id,visit_date,foot,ring,point,x_mm,y_mm", ...cells].join("\n")}\n`;
}
