/** Chance of any false doubt in a whole study without a fault, at most, from the checks that rest on probability, all taken together. */
const ANY_FALSE = 0.05;
/**
 * So many checks rest on probability: swapped labels, outlines against ends, swapped horses, swapped wall sides, reversed ends, heaped digits, copied rows, repeated
 * rows, left equal to right, rows of two horses, unvarying grades, shifted grades.
 */
const CHECKS = 12;

/**
 * The part of each check in that chance (Bonferroni). A check divides its part again by what it compares: sets, pairs of horses, observers or
 * measures.
 */
export const falseAlarmShare = ANY_FALSE / CHECKS;
