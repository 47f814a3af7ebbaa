import type { KernelExit } from "./spawnKernel.js";

/** How the kernel ended a request, or why it did not. */
export type Outcome =
  | { readonly kind: "reply"; readonly status: string; readonly executionCount: number | null }
  /** `loopTurns`: the kernel still echoes heartbeats, so the cell waits for something rather than computing without pause. */
  | { readonly kind: "timeout"; readonly loopTurns: boolean }
  /** The kernel dropped output, or answered but never published that it was done. */
  | { readonly kind: "output_lost" }
  | { readonly kind: "died"; readonly exit: KernelExit; readonly lastWords: string }
  | { readonly kind: "aborted" };

/** Limits of one request. */
export interface ExecuteLimits {
  readonly timeoutMs: number;
  readonly signal: AbortSignal;
  /** Gets the id that the output of this request will name, before any output comes. */
  readonly started: (requestId: string) => void;
}

/** A running kernel. */
export interface Kernel {
  readonly pid: number;
  /** What the kernel says about its language. */
  readonly languageInfo: Readonly<Record<string, unknown>>;
  /** Runs code; resolves when the kernel has answered and published that it is done, or cannot. */
  readonly execute: (code: string, limits: ExecuteLimits) => Promise<Outcome>;
  /** Messages that were not signed or not formed as the protocol says, so far. */
  readonly notUnderstood: () => number;
  /** Asks the kernel to end, then makes it. Resolves when the process is gone. */
  readonly stop: () => Promise<void>;
}
