import { expect, test } from "vitest";
import { mostUsedStage } from "../../src/derive/mostUsedStage.js";

const row = (horseId: string, stage: "before_trim" | "after_trim" | null) => ({ horseId, stage });

test("counted in horses, not in rows; ties by name; no rows give null", () => {
  const rows = [
    row("A", "after_trim"),
    row("A", "after_trim"),
    row("A", "after_trim"),
    row("A", "before_trim"),
    row("B", "before_trim"),
  ];
  expect(mostUsedStage(rows)).toBe("before_trim");
  expect(mostUsedStage([row("A", "before_trim"), row("A", "after_trim")])).toBe("after_trim");
  expect(mostUsedStage([row("A", null), row("B", null), row("A", "after_trim")])).toBeNull();
  expect(mostUsedStage([])).toBeNull();
});
