/** How often to simulate, and from which seed. */
export interface SimulationRuns {
  readonly runs: number;
  readonly seed: string | number;
  /** Called after each run with the number done so far. */
  readonly onRun?: (done: number) => void;
}
