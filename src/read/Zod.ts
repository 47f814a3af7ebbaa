/** The zod library, handed in by the one function that loads it, so that importing this project does not wait for it. @private */
export type Zod = typeof import("zod");
