import type { Chart } from "../chart/Chart.js";
import type { Table } from "../chart/Table.js";

/** How an answer was reached, for the reader who wants to check it. */
export interface Method {
  /** What one observation is: foot, horse, visit, interval, yard. */
  readonly unit: string;
  /** Observations used. */
  readonly n: number;
  /** Observations left out because something was not recorded. */
  readonly missing: number;
  /** What was computed, in one or two sentences, with the case definition where one is used. */
  readonly text: string;
  /** Headings of docs/methods.md that give the formulas. */
  readonly links: readonly string[];
}

/** The answer to one question about one study. */
export interface Answer {
  readonly kind: "answer";
  /** Short name, as used on the command line. */
  readonly id: string;
  /** The question in the reader's words. */
  readonly question: string;
  /** One plain sentence with the number and how sure it is. */
  readonly sentence: string;
  readonly tables: readonly Table[];
  readonly charts: readonly Chart[];
  /** Cautions that apply to this answer. */
  readonly cautions: readonly string[];
  readonly method: Method;
}

/** Said instead of an answer when the study cannot carry one. */
export interface NotEnoughData {
  readonly kind: "not_enough_data";
  readonly id: string;
  readonly question: string;
  /** One plain sentence: what is lacking, and how much of it there is. */
  readonly reason: string;
}
