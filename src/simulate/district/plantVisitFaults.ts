import { changeCell } from "./changeCell.js";
import { insertCopy } from "./insertCopy.js";
import { placeOf } from "./placeOf.js";
import type { TextLine } from "./TextLine.js";

/** Plants the faults of the visits and of the horses, in place; see `plantFaults`. */
export function plantVisitFaults(visits: TextLine[], horses: TextLine[]): void {
  changeCell(
    visits,
    ({ foot, reason }) => foot === "LF" && reason === "routine",
    0.06,
    "horse_id",
    (name) => `${String(name)}x`,
    {
      kind: "unknown_horse",
      code: "unknown_horse",
      expected: "set_aside",
      about: "One letter too many in the name of the horse.",
    },
  );
  changeCell(
    visits,
    ({ examined }) => examined === "yes",
    0.13,
    "foot",
    () => "XX",
    {
      kind: "unknown_foot",
      code: "unknown_foot",
      expected: "set_aside",
      about: "A foot that no horse has.",
    },
  );
  changeCell(
    visits,
    ({ thrush_grade }) => thrush_grade === 1,
    0.2,
    "thrush_grade",
    () => 7,
    {
      kind: "grade_outside_scale",
      code: "out_of_range",
      expected: "cell_blanked",
      about: "A grade of 7 on a scale from 0 to 3; it was 1.",
    },
  );
  changeCell(
    visits,
    ({ hoof_width_mm }) => Number(hoof_width_mm) > 110,
    0.27,
    "hoof_width_mm",
    (mm) => Number(mm) / 10,
    {
      kind: "centimetres_for_millimetres",
      code: "out_of_range",
      expected: "cell_blanked",
      about: "The width was written in centimetres.",
    },
  );
  changeCell(
    visits,
    ({ toe_length_mm }) => Number(toe_length_mm) === 80,
    0.34,
    "toe_length_mm",
    () => "8o",
    {
      kind: "letter_for_digit",
      code: "not_a_number",
      expected: "cell_blanked",
      about: "The letter o instead of a nought.",
    },
  );
  changeCell(
    visits,
    ({ toe_angle_deg }) => Number(toe_angle_deg) % 1 === 0.5,
    0.41,
    "toe_angle_deg",
    (deg) => String(deg).replace(".", ","),
    {
      kind: "decimal_comma",
      code: "not_a_number",
      expected: "cell_blanked",
      about: "A decimal comma in a file of decimal points.",
    },
  );
  changeCell(
    visits,
    ({ thrush_grade, foot }) => thrush_grade === 0 && foot === "RH",
    0.48,
    "thrush_site",
    () => "central_sulcus",
    {
      kind: "site_without_thrush",
      code: "site_without_thrush",
      expected: "warning",
      about: "Grade 0, and yet a cleft is named.",
    },
  );
  changeCell(
    visits,
    ({ shoe_state, foot, reason }) => shoe_state === "bare" && foot === "LF" && reason === "routine",
    0.55,
    "shoe_state",
    () => "lost",
    {
      kind: "shoe_lost_from_bare_horse",
      code: "lost_shoe_on_bare_horse",
      expected: "warning",
      about: "A shoe lost from a horse that goes bare.",
    },
  );
  changeCell(
    visits,
    ({ examined }) => examined === "no",
    0.62,
    "thrush_grade",
    () => 0,
    {
      kind: "graded_but_not_examined",
      code: "graded_but_not_examined",
      expected: "warning",
      about: "Not looked at, and yet graded 0.",
    },
  );
  insertCopy(
    visits,
    ({ reason }) => reason === "routine",
    0.75,
    (cells) => cells,
    {
      kind: "duplicate_row",
      code: "duplicate_row",
      column: null,
      expected: "set_aside",
      about: "The line before, once more.",
    },
  );
  insertCopy(
    visits,
    ({ thrush_grade, thrush_site }) => thrush_grade === 0 && thrush_site === undefined,
    0.8,
    (cells) => ({ ...cells, thrush_grade: 1, thrush_site: "medial_groove" }),
    {
      kind: "contradicting_row",
      code: "duplicate_row",
      column: null,
      expected: "set_aside",
      about: "The same look at the same foot as the line before, with another grade.",
    },
  );
  insertCopy(
    visits,
    ({ foot }) => foot === "LF",
    0.84,
    (cells) => ({ ...cells, visit_date: "31/02/2025" }),
    {
      kind: "impossible_date",
      code: "bad_date",
      column: "visit_date",
      expected: "set_aside",
      about: "The 31st of February, and not in the date order of the file.",
    },
  );
  insertCopy(
    visits,
    ({ foot }) => foot === "RF",
    0.88,
    (cells) => ({ ...cells, visit_date: "2062-02-03" }),
    {
      kind: "date_in_the_future",
      code: "visit_in_future",
      column: "visit_date",
      expected: "set_aside",
      about: "Two digits of 2026 changed places.",
    },
  );
  insertCopy(
    visits,
    ({ foot, note }) => foot === "LH" && note === undefined,
    0.91,
    (cells) => ({ ...cells, visit_date: "2026-02-27" }),
    {
      kind: "too_many_cells",
      code: "ragged_row",
      column: null,
      expected: "set_aside",
      about: "A comma in a remark that is not quoted.",
    },
    { tail: "wet field, gateway poached" },
  );
  insertCopy(
    visits,
    ({ foot, note }) => foot === "RH" && note === undefined,
    0.94,
    (cells) => ({ ...cells, visit_date: "2026-02-27" }),
    {
      kind: "too_few_cells",
      code: "ragged_row",
      column: null,
      expected: "set_aside",
      about: "The line breaks off after the fifth cell.",
    },
    { cutAfter: 5 },
  );
  plantCow(visits, horses);
  changeCell(
    horses,
    ({ planned_interval_days, joined_on }) => planned_interval_days === 42 && joined_on === "",
    0.3,
    "planned_interval_days",
    () => 6,
    {
      kind: "weeks_for_days",
      code: "out_of_range",
      expected: "cell_blanked",
      about: "The interval was written in weeks.",
    },
  );
}

/** A cow among the horses: one animal, eight claws. */
function plantCow(visits: TextLine[], horses: TextLine[]): void {
  horses.push({
    cells: { horse_id: "Daisy 0417", yard_id: "Oddley", species: "cow", type: "dairy cow", birth_year: 2019 },
    fault: { kind: "not_a_horse", code: "not_equine", column: "species", expected: "set_aside", about: "A cow." },
  });
  const place = placeOf(visits, () => true, 0.5);
  const claws = ["LF", "RF", "LH", "RH"].flatMap((foot) => ["outer claw", "inner claw"].map((note) => ({ foot, note })));
  const rows = claws.map(({ foot, note }): TextLine => {
    const cells = { visit_date: String(visits[place]!.cells["visit_date"]), horse_id: "Daisy 0417", foot, examined: "yes", note };
    const shape = { hoof_width_mm: 58, hoof_length_mm: 112, toe_length_mm: 75, toe_angle_deg: 50 };
    return {
      cells: { ...cells, ...shape },
      fault: {
        kind: "visit_to_no_horse",
        code: "not_equine",
        column: "horse_id",
        expected: "set_aside",
        about: "One of the eight claws of a cow.",
      },
    };
  });
  visits.splice(place + 1, 0, ...rows);
}
