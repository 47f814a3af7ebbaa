import { expect, test } from "vitest";
import { columnLayout } from "../../../src/read/table/columnLayout.js";
import { StudyError } from "../../../src/study/StudyError.js";
import { visitColumns } from "../../../src/study/visitColumns.js";
import { sourceOf } from "../mapping/sourceOf.js";

function layoutOf(header: string) {
  const said: string[] = [];
  const { width, records } = columnLayout(sourceOf("changes", {}), header.split(","), (fault, name) =>
    said.push(`${name} ${fault.code}: ${fault.hint}`),
  );
  expect(records).toHaveLength(1);
  return { width, at: records[0]?.at, said };
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

const visits = (mapping: Parameters<typeof sourceOf>[1], header: string) => {
  const said: string[] = [];
  const layout = columnLayout(sourceOf("visits", mapping), header.split(","), (fault, name) =>
    said.push(`${name} ${fault.code}`),
  );
  const at = (column: string, record = 0) => layout.records[record]?.at[visitColumns.findIndex(({ name }) => name === column)];
  return { layout, at, said };
};

test("a mapped header is found by any of its spellings, and the column's own name no longer counts", () => {
  const { at, said } = visits({ columns: { visit_date: ["Date", "Datum"], horse_id: "Horse" } }, "Datum,horse,foot,visit_date");
  expect([at("visit_date"), at("horse_id"), at("foot")]).toEqual([0, 1, 2]);
  expect(said).toEqual(["visit_date unknown_column"]);
});

test("two headers that only their letter case tells apart are told apart by a stated spelling", () => {
  const mapping = { columns: { visit_date: "D", horse_id: "d", foot: "F" } };
  const { at } = visits(mapping, "d,D,F");
  expect([at("visit_date"), at("horse_id")]).toEqual([1, 0]);
  expect(() => visits({ columns: { visit_date: ["D", "d"] } }, "d,D,foot,horse_id")).toThrow(/twice, as "d" and "D"/);
});

test("a stated header that the file lacks is named: with a warning, or refused when the row needs it", () => {
  expect(visits({ columns: { thrush_grade: "Thrsh" } }, "visit_date,horse_id,foot,Thrush").said).toEqual([
    "Thrsh mapped_header_absent",
    "Thrush unknown_column",
  ]);
  expect(() => visits({ columns: { horse_id: "Pferd" } }, "visit_date,horse_id,foot")).toThrow(
    'lacks horse_id (in study.json "Pferd")',
  );
});

test("a row of a visit holds a record for each foot that has a column: its own cells, and those that all share", () => {
  const mapping = {
    feet: { LF: ["LF", "NF"], RH: "off hind" },
    columns: { thrush_grade: "{foot} thrush", note: "remarks" },
  };
  const { layout, at } = visits(mapping, "visit_date,horse_id,NF thrush,RF thrush,Off Hind thrush,off hind_bars,remarks");
  expect(layout.records.map(({ foot }) => foot)).toEqual(["LF", "RF", "RH"]);
  expect([0, 1, 2].map((record) => [at("thrush_grade", record), at("bars", record), at("note", record)])).toEqual([
    [2, -1, 6],
    [3, -1, 6],
    [4, 5, 6],
  ]);
  const own = layout.records[2]?.own.flatMap((is, index) => (is ? [visitColumns[index]?.name] : []));
  expect(own).toEqual(["thrush_grade", "bars"]);
});

test("a file with one row a visit that has no column of any foot is refused", () => {
  expect(() => visits({ feet: {} }, "visit_date,horse_id,thrush")).toThrow("the header lacks any column of a foot");
});

test("further columns are kept by name, and said when they are not there", () => {
  const { layout, said } = visits({ extra: ["Weather", "gait"] }, "visit_date,horse_id,foot,weather");
  expect(layout.extra).toEqual([{ header: "Weather", at: 3 }]);
  expect(said).toEqual(["gait mapped_header_absent"]);
});
