/** One foot at one visit, with all that prevalence needs. */
export interface PrevalenceRow {
  /** Whether the foot is a case under the definition in use; null when it cannot be said. */
  readonly case: boolean | null;
  readonly horseId: string;
  /** Null when not known. */
  readonly yardId: string | null;
  /** Day of the visit; when rows carry it, prevalence is also given per visit of a horse. */
  readonly visitDate?: string;
}
