import type { Issue } from "../study/Issue.js";

const MOST = 2;

/**
 * What to do about faults of one kind: a row too short and a row too long are mended in two ways. Both are said where there are two; of more, which then name single
 * cells, the first.
 *
 * @private
 */
export function hintsOf(issues: readonly Pick<Issue, "hint">[]): string {
  const hints = [...new Set(issues.map(({ hint }) => hint))];
  return (hints.length <= MOST ? hints : hints.slice(0, 1)).join(" ");
}
