import { grouped } from "../../study/grouped.js";
import type { TextLine } from "./TextLine.js";

/** A slip in one tracing, not in one line: what putting the outlines together should say of it. */
export interface OutlineSlip {
  readonly horseId: string;
  readonly visitDate: string;
  readonly foot: string;
  /** Code of the fault that `tracedOutlines` should give. */
  readonly code: "missing_landmark" | "crossing" | "other_hand";
  readonly about: string;
}

/**
 * Plants three slips into tracings that were made once, in place: a landmark left out, two numbers that changed places, the heels taken
 * for each other. The same lines get the same slips.
 */
export function plantOutlineSlips(lines: TextLine[]): OutlineSlip[] {
  const tracings = [
    ...grouped(
      lines.filter(({ cells }) => cells["tracing"] === "" && cells["stage"] !== "single"),
      ({ cells }) => [cells["horse_id"], cells["visit_date"], cells["foot"]].join("\n"),
    ).values(),
  ];
  const slip = (share: number, code: OutlineSlip["code"], about: string, make: (rows: readonly TextLine[]) => void) => {
    const rows = tracings[Math.floor(tracings.length * share)]!;
    make(rows);
    const { horse_id, visit_date, foot } = rows[0]!.cells;
    return { horseId: String(horse_id), visitDate: String(visit_date), foot: String(foot), code, about };
  };
  const wall = (rows: readonly TextLine[], point: string | number) =>
    rows.find(({ cells }) => cells["ring"] === "wall" && cells["point"] === point)!;
  return [
    slip(0.2, "missing_landmark", "The outer heel was not marked.", (rows) => {
      lines.splice(lines.indexOf(wall(rows, "heel_lateral")), 1);
    }),
    slip(0.5, "crossing", "The numbers of the points 20 and 22 changed places.", (rows) => {
      const [one, other] = [wall(rows, 20), wall(rows, 22)];
      [one.cells["point"], other.cells["point"]] = [22, 20];
    }),
    slip(0.8, "other_hand", "The two heels were taken for each other.", (rows) => {
      const [one, other] = [wall(rows, "heel_medial"), wall(rows, "heel_lateral")];
      [one.cells["point"], other.cells["point"]] = ["heel_lateral", "heel_medial"];
    }),
  ];
}
