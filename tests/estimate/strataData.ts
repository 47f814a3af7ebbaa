import type { TwoByTwo } from "../../src/estimate/TwoByTwo.js";
import { closedForm } from "./closedForm.js";

function strataOf(rows: readonly (readonly [number, number, number, number])[]): TwoByTwo[] {
  return rows.map(([a, b, c, d]) => ({ a, b, c, d }));
}

/** Admissions by department, men against women: Bickel, Hammel & O'Connell 1975, Science 187:398-403 (R 4.2.2, datasets::UCBAdmissions). */
export const admissions = strataOf([
  [512, 313, 89, 19],
  [353, 207, 17, 8],
  [120, 205, 202, 391],
  [138, 279, 131, 244],
  [53, 138, 94, 299],
  [22, 351, 24, 317],
]);

/** Penicillin and rabbits, with empty margins: example of R's ?mantelhaen.test (Agresti 1990, p. 234). */
export const rabbits = strataOf([
  [0, 6, 0, 5],
  [3, 3, 0, 6],
  [6, 0, 2, 4],
  [5, 1, 6, 0],
  [2, 0, 5, 0],
]);

/** Survival of the Titanic, women against men, by class (R 4.2.2, datasets::Titanic). */
export function passengers(): TwoByTwo[] {
  const cells = closedForm("titanic cells");
  return strataOf([0, 4, 8, 12].map((i) => [cells[i]!, cells[i + 1]!, cells[i + 2]!, cells[i + 3]!]));
}

/** Invented: thrush after wet and after dry weeks, in winter and in summer. */
export const seasons = strataOf([
  [30, 20, 15, 25],
  [10, 40, 8, 72],
]);
