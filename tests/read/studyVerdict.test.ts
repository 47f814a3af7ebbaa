import { expect, test } from "vitest";
import { studyVerdict } from "../../src/read/studyVerdict.js";
import { studyFrom } from "./folder.js";

const verdictOf = async (row: string) =>
  studyVerdict((await studyFrom({ "visits.csv": `visit_date,horse_id,foot,thrush_grade,hoof_width_mm\n${row}\n` })).report);

test("what was lost decides, the dearest first; a warning costs nothing", async () => {
  expect(await verdictOf("2025-03-01,Ash,LF,1,120")).toBe("clean");
  expect(await verdictOf("2025-03-01,Ash,LF,1,175")).toBe("clean");
  expect(await verdictOf("2025-03-01,Ash,LF,7,120")).toBe("cells_blanked");
  expect(await verdictOf("2025-03-01,Ash,LF,7,120\n2025-03-01,Ash,LG,1,120")).toBe("rows_set_aside");
});
