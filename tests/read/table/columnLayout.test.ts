import { expect, test } from "vitest";
import { columnLayout } from "../../../src/read/table/columnLayout.js";
import { changeColumns } from "../../../src/study/changeColumns.js";
import { StudyError } from "../../../src/study/StudyError.js";

function layoutOf(header: string) {
  const said: string[] = [];
  const layout = columnLayout("changes.csv", changeColumns, header.split(","), (fault, name) =>
    said.push(`${name} ${fault.code}: ${fault.hint}`),
  );
  return { ...layout, said };
}

function refusal(header: string): StudyError {
  try {
    layoutOf(header);
  } catch (error) {
    if (error instanceof StudyError) return error;
  }
  throw new Error("not refused");
}

test("columns stand in any order and may be left out when they are not required", () => {
  expect(layoutOf("what,yard_id,changed_on")).toEqual({ width: 3, at: [1, 2, 0], said: [] });
  expect(layoutOf("changed_on,yard_id")).toEqual({ width: 2, at: [1, 0, -1], said: [] });
});

test("case, spaces and hyphens make no difference", () => {
  expect(layoutOf("Yard ID, changed-on ,WHAT").at).toEqual([0, 1, 2]);
});

test("an unknown column is named once, with the column that was perhaps meant", () => {
  expect(layoutOf("yard_id,changed_on,wat").said).toEqual([
    'wat unknown_column: Rename it if it should be read; see the data dictionary. Was "what" meant?',
  ]);
  expect(layoutOf("yard_id,changed_on,what,owner").said).toEqual([
    "owner unknown_column: Rename it if it should be read; see the data dictionary.",
  ]);
});

test("a column without a name is reported by its place", () => {
  expect(layoutOf("yard_id,changed_on,what,").said).toHaveLength(1);
});

test("a missing required column is refused: what is missing, what was found, what was perhaps meant", () => {
  const error = refusal("yard,changd_on,what");
  expect(error.code).toBe("header_missing");
  expect(error.message).toBe('changes.csv: the header lacks yard_id, changed_on; found "yard", "changd_on", "what".');
  expect(refusal("yard_id,changd_on").hint).toContain('Was "changd_on" meant?');
});

test("a header that is separated by semicolons is told apart", () => {
  expect(refusal("yard_id;changed_on;what").hint).toContain("semicolons");
});

test("a known column twice is refused, an unknown one is not", () => {
  expect(refusal("yard_id,changed_on,Yard_ID").code).toBe("header_duplicate");
  expect(layoutOf("yard_id,changed_on,a,a").said).toHaveLength(2);
});

test("a header of very many columns takes no time worth speaking of", () => {
  const started = performance.now();
  const many = Array.from({ length: 50_000 }, (_, index) => `c${String(index)}`).join(",");
  expect(layoutOf(`yard_id,changed_on,${many}`).width).toBe(50_002);
  expect(performance.now() - started).toBeLessThan(5000); // loose: the machine may be busy; a quadratic search takes minutes
});
