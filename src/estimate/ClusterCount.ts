/** What was counted in one cluster: a horse with its feet, a yard with its horses. */
export interface ClusterCount {
  readonly cases: number;
  /** Observations of the cluster, cases included. */
  readonly n: number;
}
