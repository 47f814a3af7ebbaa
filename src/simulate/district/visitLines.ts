import type { DistrictRow } from "./DistrictRow.js";
import { districtYards } from "./districtYards.js";
import type { TextLine } from "./TextLine.js";

const feet = ["LF", "RF", "LH", "RH"];

/** Lines of visits.csv in the order of a diary: by day, yard, horse and foot, before a trim ahead of after it. */
export function visitLines(rows: readonly DistrictRow[]): TextLine[] {
  const rank = new Map(districtYards.map(({ yardId }, place) => [yardId, place]));
  const key = ({ visitDate, yardId, horseId, cells }: DistrictRow) =>
    `${visitDate} ${rank.get(yardId) ?? 9} ${horseId} ${feet.indexOf(String(cells.foot))} ${cells.stage === "after_trim" ? 1 : 0}`;
  return rows
    .map((row, place) => ({ row, place, key: key(row) }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.place - b.place))
    .map(({ row }) => ({ cells: { ...row.cells } }));
}
