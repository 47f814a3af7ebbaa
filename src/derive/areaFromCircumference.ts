import { StudyError } from "../study/StudyError.js";

/**
 * Area of the ground surface in square centimetres if a foot of this ground circumference, in mm, were a circle.
 *
 * Method: C^2 / (4 pi). A circle holds the most for its circumference, so a real foot has less.
 *
 * Missing: null gives null.
 *
 * Errors: `bad_circumference` for a number below 0 or none at all.
 *
 * Source: geometry; 330 mm gives 86.66 square centimetres.
 */
export function areaFromCircumference(circumferenceMm: number | null): number | null {
  if (circumferenceMm === null) return null;
  if (!(circumferenceMm >= 0 && circumferenceMm < Infinity)) {
    throw new StudyError(
      "bad_circumference",
      `A circumference of ${circumferenceMm} mm makes no sense.`,
      "Give the length of a tape around the ground border of the wall in mm, or null when it was not taken.",
    );
  }
  return (circumferenceMm / 10) ** 2 / (4 * Math.PI);
}
