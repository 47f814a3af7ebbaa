import iconv from "iconv-lite";
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readStudy } from "../../src/read/readStudy.js";
import { faults, type Files, inFolder, refusalOf, studyFrom, today } from "./folder.js";

const mapped = (files: object, more: Files): Files => ({
  "study.json": JSON.stringify({ name: "T", gaugeDay: "ends_on_date", files }),
  ...more,
});

const german = {
  visits: [
    {
      file: "besuche.csv",
      ...{ delimiter: ";", decimal: ",", encoding: "windows-1252", dates: "day-month-year", twoDigitYearsFrom: 2000 },
      columns: {
        visit_date: "Datum",
        horse_id: ["Pferd", "Name"],
        foot: { header: "Huf", words: { "vorne links": "LF", "hinten rechts": "RH" } },
        thrush_grade: { header: "Strahl", words: { "-": 0, "+": 1, "++": 2 }, missing: ["n.b."] },
        hoof_width_mm: { header: "Breite", unit: "cm" },
        observer_id: { value: "K" },
      },
      extra: ["Wetter"],
    },
  ],
};

test("another country's spreadsheet: semicolons, decimal comma, Windows-1252, short dates, words, a constant, a kept column", async () => {
  const text = [
    "Datum;Pferd;Huf;Strahl;Breite;Wetter",
    "7.3.25;Rübe;vorne links;++;12,4;naß",
    "07.03.2025;Rübe;Hinten  Rechts;n.b.;12,55 cm;",
    '8.3.25;Rübe;LF;-;;"Schnee; Wind"',
    "9.3.25;Rübe;LF;?;12.4;",
    "31.2.25;Rübe;LF;+;;",
  ].join("\r\n");
  const study = await studyFrom(mapped(german, { "besuche.csv": iconv.encode(text, "windows-1252") }));
  expect(
    study.visits.map(({ line, visitDate, horseId, foot, thrushGrade, hoofWidthMm, observerId, extra }) => [
      ...[line, visitDate, horseId, foot, thrushGrade, hoofWidthMm, observerId, extra?.["Wetter"]],
    ]),
  ).toEqual([
    [2, "2025-03-07", "Rübe", "LF", 2, 124, "K", "naß"],
    [3, "2025-03-07", "Rübe", "RH", null, 125.5, "K", null],
    [4, "2025-03-08", "Rübe", "LF", 0, null, "K", "Schnee; Wind"],
    [5, "2025-03-09", "Rübe", "LF", null, null, "K", null],
  ]);
  expect(faults(study)).toEqual([
    "besuche.csv:5 Strahl missing_word cell_blanked",
    "besuche.csv:5 Breite not_a_number cell_blanked",
    "besuche.csv:6 Datum bad_date set_aside",
  ]);
  expect(study.report.issues.find(({ code }) => code === "not_a_number")?.hint).toContain(
    "the decimal mark of this column is a comma",
  );
});

test("the report says how each file was read, conversions among it", async () => {
  const text = "Datum;Name;Huf;Breite;Strahl;Wetter\n7.3.25;A;LF;12;+;x\n";
  const study = await studyFrom(mapped(german, { "besuche.csv": text }));
  const visits = study.report.inputs.find(({ kind }) => kind === "visits");
  expect(visits?.layout).toEqual({
    ...{ delimiter: "semicolon", encoding: "windows-1252", recordsARow: 1 },
    columns: [
      { column: "visit_date", headers: ["Datum"], as: "day-month-year; years of two digits are 2000 to 2099" },
      { column: "horse_id", headers: ["Name"], as: null },
      { column: "foot", headers: ["Huf"], as: "2 words" },
      { column: "observer_id", headers: [], as: 'always "K"' },
      { column: "thrush_grade", headers: ["Strahl"], as: "decimal comma; 4 words" },
      { column: "hoof_width_mm", headers: ["Breite"], as: "decimal comma; cm, times 10" },
      { column: null, headers: ["Wetter"], as: "kept as it is" },
    ],
  });
});

test("the same study in UTF-16 of either end, with tabs or upright strokes, is the same", async () => {
  const rows = [
    ["visit_date", "horse_id", "foot", "note"],
    ["2025-03-07", "Ash", "LF", "ä, b"],
    ["2025-03-07", "Ash", "RF", '"x"'],
  ];
  const read = async (delimiter: string, stated: string, encode: (text: string) => Buffer) => {
    const cells = (row: readonly string[]) => row.map((cell) => (cell.includes('"') ? `"${cell.replaceAll('"', '""')}"` : cell));
    const text = rows.map((row) => cells(row).join(delimiter)).join("\r\n");
    const study = await studyFrom(mapped({ visits: [{ file: "v.csv", delimiter: stated }] }, { "v.csv": encode(text) }));
    expect(faults(study)).toEqual([]);
    return study.visits;
  };
  const utf16 = (text: string) => Buffer.from(`\uFEFF${text}`, "utf16le");
  const plain = await read("\t", "tab", (text) => Buffer.from(text));
  expect(plain.map(({ note }) => note)).toEqual(["ä, b", '"x"']);
  expect(await read("|", "|", utf16)).toEqual(plain);
  expect(await read(";", ";", (text) => utf16(text).swap16())).toEqual(plain);
});

const wide = {
  visits: [
    {
      file: "wide.csv",
      feet: { LF: "NF", RF: "OF", LH: "NH", RH: "OH" },
      columns: {
        visit_date: "Date",
        horse_id: "Horse",
        thrush_grade: "{foot} thrush",
        hoof_width_mm: { header: "{foot} width", unit: "in" },
      },
    },
  ],
};
const wideHeader = "Date,Horse,reason,NF thrush,OF thrush,NH thrush,OH thrush,NF width,OF width,note";

test("one row a visit becomes one record a foot, all on the line of the row", async () => {
  const study = await studyFrom(mapped(wide, { "wide.csv": `${wideHeader}\n2025-03-07,Ash,routine,0,1,2,3,5,5.1,wet\n` }));
  expect(
    study.visits.map(({ line, foot, reason, thrushGrade, hoofWidthMm, note }) => [
      line,
      foot,
      reason,
      thrushGrade,
      hoofWidthMm,
      note,
    ]),
  ).toEqual([
    [2, "LF", "routine", 0, 127, "wet"],
    [2, "RF", "routine", 1, 129.54, "wet"],
    [2, "LH", "routine", 2, null, "wet"],
    [2, "RH", "routine", 3, null, "wet"],
  ]);
  expect(study.report.flow).toMatchObject({
    footVisits: { read: 4, accepted: 4, setAside: 0 },
    visits: { read: 1, accepted: 1 },
  });
});

test("in a row of four feet a bad cell of one costs that cell, a shared one is told once, and a bad row sets four aside", async () => {
  const rows = ["2025-03-07,Ash,routin,9,1,,,5,50,", "soon,Ash,,1,1,1,1,,,", "2025-03-08,Ash,,1", "2025-03-07,Ash,,1,,,,,,"];
  const study = await studyFrom(mapped(wide, { "wide.csv": [wideHeader, ...rows].join("\n") }));
  expect(study.visits.map(({ line, foot, thrushGrade }) => [line, foot, thrushGrade])).toEqual([
    [2, "LF", null],
    [2, "RF", 1],
    [2, "LH", null],
    [2, "RH", null],
  ]);
  expect(faults(study)).toEqual([
    "wide.csv:2 reason unknown_code cell_blanked",
    "wide.csv:2 NF thrush out_of_range cell_blanked",
    "wide.csv:2 OF width out_of_range cell_blanked",
    "wide.csv:3 Date bad_date set_aside",
    "wide.csv:4 - ragged_row set_aside",
    ...Array.from({ length: 4 }, () => "wide.csv:5 - duplicate_row set_aside"),
  ]);
  expect(study.report.issues.filter(({ code }) => code === "duplicate_row").map(({ message }) => message)[3]).toBe(
    "wide.csv, line 5: a row of this horse, day, foot and stage already stands in line 2 (RH).",
  );
  expect(study.report.issues.find(({ column }) => column === "OF width")?.message).toContain('"50" (1270 mm) cannot be right');
  const { rowsRead, accepted, setAside } = study.report.inputs.find(({ kind }) => kind === "visits") ?? {};
  expect([rowsRead, accepted, setAside]).toEqual([16, 4, 12]);
});

test("a cell that only one foot needs costs that foot's record alone", async () => {
  const files = { visits: [{ file: "w.csv", feet: {}, columns: { visit_date: "{foot} seen", thrush_grade: "{foot}" } }] };
  const study = await studyFrom(mapped(files, { "w.csv": "horse_id,LF seen,RF seen,LF,RF\nAsh,2025-03-07,,1,2\n" }));
  expect(study.visits.map(({ foot, thrushGrade }) => [foot, thrushGrade])).toEqual([["LF", 1]]);
  expect(faults(study)).toEqual(["w.csv:2 RF seen required_empty set_aside"]);
});

test("several files of one kind are one table: a row that stands in two is set aside with the place of the first", async () => {
  const files = { visits: [{ file: ["2023.csv", "2024.csv"] }, { file: "2025.csv", delimiter: ";" }] };
  const header = "visit_date,horse_id,foot";
  const study = await studyFrom(
    mapped(files, {
      "2023.csv": `${header}\n2023-03-01,Ash,LF\n`,
      "2024.csv": `${header}\n2024-03-01,Ash,LF\n2023-03-01,Ash,LF\n`,
      "2025.csv": `${header.replaceAll(",", ";")}\n2025-03-01;Ash;LF\n2024-03-01;Ash;LF\n`,
      "visits.csv": `${header}\n2022-03-01,Ash,LF\n`,
    }),
  );
  expect(study.visits.map(({ file, line }) => `${file}:${String(line)}`)).toEqual(["2023.csv:2", "2024.csv:2", "2025.csv:2"]);
  expect(study.report.issues.filter(({ code }) => code === "duplicate_row").map(({ message }) => message)).toEqual([
    "2024.csv, line 3: a row of this horse, day, foot and stage already stands in 2023.csv, line 2.",
    "2025.csv, line 3: a row of this horse, day, foot and stage already stands in 2024.csv, line 2.",
  ]);
  expect(study.report.flow.footVisits).toEqual({ read: 5, accepted: 3, setAside: 2 });
  // A CSV file that lies there and is not read is named, so that nothing is passed over in silence.
  expect(faults(study)).toContain("visits.csv:- - file_not_read warning");
});

test("a file that study.json names must be there", async () => {
  expect(
    await refusalOf(mapped({ horses: [{ file: "pferde.csv" }] }, { "visits.csv": "visit_date,horse_id,foot\n" })),
  ).toMatchObject({
    code: "file_missing",
    message: "pferde.csv: the file is not in the study folder.",
  });
});

test("a draft with open questions is refused, and each is named", async () => {
  const files = { visits: [{ file: "v.csv", delimiter: null, columns: { visit_date: { header: "Date", dates: null } } }] };
  expect(await refusalOf(mapped(files, { "v.csv": "Date\n" }))).toMatchObject({
    code: "unanswered",
    message: "study.json: 2 questions are not answered yet: files.visits.0.delimiter; files.visits.0.columns.visit_date.dates.",
  });
});

const visit = (mapping: object) => ({ visits: [{ file: "v.csv", ...mapping }] });

test.each([
  [visit({ delimeter: ";" }), 'files.visits.0: the key "delimeter" is not known', 'Was "delimiter" meant?'],
  [
    visit({ columns: { horse: "Pferd" } }),
    'files.visits.0.columns: the key "horse" is not known',
    "Keys here are visit_date, horse_id",
  ],
  [
    visit({ columns: { thrush_grad: "x" } }),
    'files.visits.0.columns: the key "thrush_grad" is not known',
    'Was "thrush_grade" meant?',
  ],
  [
    visit({ columns: { visit_date: { heading: "x" } } }),
    'files.visits.0.columns.visit_date: the key "heading" is not known',
    "Keys here are header",
  ],
  [visit({ delimiter: ":" }), 'files.visits.0.delimiter should be , or ; or tab or |, not ":"', ""],
  [
    visit({ encoding: "utf8" }),
    'files.visits.0.encoding should be utf-8 or utf-16 or windows-1252, not "utf8"',
    'Was "utf-8" meant?',
  ],
  [visit({ dates: "dmy" }), 'files.visits.0.dates should be year-month-day or day-month-year or month-day-year, not "dmy"', ""],
  [
    visit({ columns: { hoof_width_mm: { unit: "inch" } } }),
    'files.visits.0.columns.hoof_width_mm.unit should be mm or cm or m or in, not "inch"',
    "",
  ],
  [visit({ columns: { note: { unit: "mm" } } }), 'files.visits.0.columns.note: the key "unit" is not known', ""],
  [
    visit({ columns: { foot: { words: { NF: "LV" } } } }),
    "files.visits.0.columns.foot.words.NF should be LF or RF or LH or RH",
    "",
  ],
  [
    visit({ columns: { bars: { words: { x: "levle" } } } }),
    'files.visits.0.columns.bars.words.x should be level or overgrown or folded, not "levle"',
    'Was "level" meant?',
  ],
  [
    visit({ columns: { thrush_grade: { words: { "+++": 4 } } } }),
    "files.visits.0.columns.thrush_grade.words.+++ should be at most 3",
    "",
  ],
  [
    visit({ columns: { bars: { words: { "": "level" } } } }),
    "files.visits.0.columns.bars.words.: a key is empty or too long",
    "",
  ],
  [
    visit({ columns: { observer_id: { header: "a", value: "K" } } }),
    "files.visits.0.columns.observer_id: give header or value, not both",
    "",
  ],
  [
    visit({ columns: { visit_date: { value: "2025-02-30" } } }),
    "files.visits.0.columns.visit_date.value: a calendar day such as 2024-03-05 is expected",
    "",
  ],
  [
    visit({ columns: { visit_date: 7 } }),
    "files.visits.0.columns.visit_date should be a text, a list of texts, or an object with the keys of a column",
    "",
  ],
  [
    visit({ columns: { thrush_grade: "{foot} t" } }),
    'files.visits.0.columns.thrush_grade: a header has {foot}, and "feet" does not say how feet are spelt',
    "",
  ],
  [visit({ feet: {}, columns: { foot: "Huf" } }), "files.visits.0.columns.foot: the feet stand in the headers of this file", ""],
  [visit({ feet: { LF: "x", RF: "x" } }), "files.visits.0.feet: two feet are spelt alike", ""],
  [{ visits: [{ file: "../v.csv" }] }, "files.visits.0.file: a file inside the study folder is expected", ""],
  [{ visits: [{ file: ["/etc/hosts"] }] }, "files.visits.0.file.0: a file inside the study folder is expected", ""],
  [{ visits: [] }, "files.visits is empty", ""],
  [{ visit: [{ file: "v.csv" }] }, 'files: the key "visit" is not known', 'Was "visits" meant?'],
  [{ visits: [{ file: "v.csv" }, { file: ["w.csv", "v.csv"] }] }, "files.visits.1.file: v.csv is named twice", ""],
])("%j is refused in words", async (files, found, hint) => {
  const refusal = await refusalOf(mapped(files, { "v.csv": "x\n" }));
  expect(refusal.code).toBe("bad_study_json");
  expect(refusal.message).toContain(`study.json: ${found}`);
  expect(refusal.hint).toContain(hint);
});

test("a header parted by another mark is refused with the line for study.json", async () => {
  expect(await refusalOf({ "visits.csv": "visit_date;horse_id;foot\n" })).toMatchObject({
    code: "header_missing",
    hint: 'The cells seem to be parted by semicolons: say "delimiter": ";" for the file in study.json, or run `underfoot draft`.',
  });
});

test.skipIf(process.platform === "win32")("a link may lead within the folder and nowhere else", async () => {
  const header = "visit_date,horse_id,foot\n";
  await inFolder({ "study.json": '{"name":"T"}', "real.csv": `${header}2025-03-01,Ash,LF\n` }, async (folder) => {
    symlinkSync("real.csv", join(folder, "visits.csv"));
    expect((await readStudy(folder, { today })).visits).toHaveLength(1);
  });
  await inFolder({ "secret.csv": header }, async (outside) => {
    await inFolder({ "study.json": '{"name":"T"}' }, async (folder) => {
      symlinkSync(join(outside, "secret.csv"), join(folder, "visits.csv"));
      await expect(readStudy(folder)).rejects.toMatchObject({
        code: "file_outside_folder",
        message: expect.stringContaining("visits.csv: the link leads out of the study folder") as string,
      });
    });
    const json = JSON.stringify({ name: "T", files: { visits: [{ file: "sub/v.csv" }] } });
    await inFolder({ "study.json": json }, async (folder) => {
      symlinkSync(outside, join(folder, "sub"));
      writeFileSync(join(outside, "v.csv"), header);
      await expect(readStudy(folder)).rejects.toMatchObject({ code: "file_outside_folder" });
    });
    const inSub = JSON.stringify({ name: "T", files: { visits: [{ file: "sub/v.csv" }] } });
    await inFolder({ "study.json": inSub }, async (folder) => {
      mkdirSync(join(folder, "sub"));
      writeFileSync(join(folder, "sub", "v.csv"), `${header}2025-03-01,Ash,LF\n`);
      expect((await readStudy(folder, { today })).visits[0]?.file).toBe("sub/v.csv");
    });
  });
});
