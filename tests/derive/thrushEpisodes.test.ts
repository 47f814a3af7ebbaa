import { expect, test } from "vitest";
import { thrushEpisodes } from "../../src/derive/thrushEpisodes.js";
import { footCases } from "./footCases.js";

// By hand. A LF: case, case, clear, (not examined), case, clear, case. B RH: clear, case. C LH: always clear.
const lines = [
  "2025-01-01 A LF 1",
  "2025-02-01 A LF 3",
  "2025-03-01 A LF 0",
  "2025-04-01 A LF -",
  "2025-05-01 A LF 1",
  "2025-06-01 A LF 0",
  "2025-07-01 A LF 2",
  "2025-01-01 B RH 0",
  "2025-02-01 B RH 2",
  "2025-01-01 C LH 0",
];

test("runs of cases, with what is known of both ends", () => {
  const found = thrushEpisodes(footCases(lines)).map((row) => [
    `${row.horseId} ${row.foot} ${row.kind}`,
    row.beganAfter,
    row.firstSeen,
    row.lastSeen,
    row.clearOn,
    row.visits,
    row.worstGrade,
  ]);
  expect(found).toEqual([
    ["A LF from_the_start", null, "2025-01-01", "2025-02-01", "2025-03-01", 2, 3],
    ["A LF again", "2025-03-01", "2025-05-01", "2025-05-01", "2025-06-01", 1, 1],
    ["A LF again", "2025-06-01", "2025-07-01", "2025-07-01", null, 1, 2],
    ["B RH new", "2025-01-01", "2025-02-01", "2025-02-01", null, 1, 2],
  ]);
});

test("the order of the rows does not matter; nothing graded gives nothing", () => {
  expect(thrushEpisodes(footCases([...lines].reverse()))).toEqual(thrushEpisodes(footCases(lines)));
  expect(thrushEpisodes(footCases(["2025-01-01 A LF -"]))).toEqual([]);
});
