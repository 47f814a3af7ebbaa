import type { ProgressStream } from "./progressLine.js";

/** Where a command prints. `process` fits. @private */
export interface Terminal {
  readonly stdout: ProgressStream;
  readonly stderr: ProgressStream;
}
