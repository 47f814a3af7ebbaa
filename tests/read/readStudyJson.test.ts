import { expect, test } from "vitest";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { faults, refusalOf, studyFrom } from "./folder.js";

const visits = "visit_date,horse_id,foot\n2025-03-01,Ash,LF\n";
const weather = "gauge_id,date,rain_mm\nG1,2025-02-28,3.5\n";
const refused = (json: string | Uint8Array) => refusalOf({ "study.json": json, "visits.csv": visits });

test("what is stated is used, the rest is usual", async () => {
  const json = JSON.stringify({
    name: " Spring round ",
    gaugeDay: "starts_on_date",
    asOf: "2025-04-01",
    settings: { caseGrade: 2, rainWindowsDays: [7], level: 0.9 },
  });
  const { name, settings } = await studyFrom({ "study.json": json, "visits.csv": visits });
  expect(name).toBe("Spring round");
  expect(settings).toEqual({
    ...defaultSettings,
    gaugeDay: "starts_on_date",
    asOf: "2025-04-01",
    caseGrade: 2,
    rainWindowsDays: [7],
    level: 0.9,
  });
});

test("gaugeDay and asOf may stand among the settings, but not with two values", async () => {
  const inside = '{"name":"T","settings":{"gaugeDay":"calendar_day","asOf":"2025-04-01"}}';
  expect((await studyFrom({ "study.json": inside, "visits.csv": visits, "weather.csv": weather })).settings).toMatchObject({
    gaugeDay: "calendar_day",
    asOf: "2025-04-01",
  });
  expect(await refused('{"name":"T","gaugeDay":"ends_on_date","settings":{"gaugeDay":"calendar_day"}}')).toMatchObject({
    code: "bad_study_json",
    message: 'study.json: gaugeDay is "ends_on_date" and settings.gaugeDay is "calendar_day".',
  });
});

test("with weather and no gaugeDay the reader is told which is used; without weather there is nothing to tell", async () => {
  const json = '{"name":"T"}';
  const wet = await studyFrom({ "study.json": json, "visits.csv": visits, "weather.csv": weather });
  expect(wet.settings.gaugeDay).toBe(defaultSettings.gaugeDay);
  expect(faults(wet)).toEqual(["study.json:- - gauge_day_not_stated warning"]);
  expect(wet.report.issues[0]?.message).toContain("ends_on_date (the 24 hours up to the morning of the date) is used");
  expect(faults(await studyFrom({ "study.json": json, "visits.csv": visits }))).toEqual([]);
});

test("a gaugeDay left open with null is asked for even without weather", async () => {
  expect(faults(await studyFrom({ "study.json": '{"name":"T","gaugeDay":null}', "visits.csv": visits }))).toEqual([
    "study.json:- - gauge_day_not_stated warning",
  ]);
});

test("text that is not JSON is refused with the line and column", async () => {
  expect(await refused('{\n  "name": "T",\n  gaugeDay: "ends_on_date"\n}')).toMatchObject({
    code: "bad_json",
    message: 'study.json, line 3, column 3: the text stops being JSON at the character "g".',
  });
});

test("a byte order mark is no fault", async () => {
  expect((await studyFrom({ "study.json": '\uFEFF{"name":"T"}', "visits.csv": visits })).name).toBe("T");
});

test.each([
  ['{"name":"T","gaugeday":"ends_on_date"}', 'the key "gaugeday" is not known', 'Was "gaugeDay" meant?'],
  ['{"name":"T","settings":{"caseGrades":1}}', 'settings: the key "caseGrades" is not known', 'Was "caseGrade" meant?'],
  [
    '{"name":"T","weather":[{"file":"a","format":"ghcn-by-station","gage":"G"}]}',
    'weather.0: the key "gage" is not known',
    'Was "gauge" meant?',
  ],
  ['{"gaugeDay":"ends_on_date"}', "name is missing", ""],
  ['{"name":7}', "name should be of the kind string", ""],
  ['{"name":"  "}', "name is empty", ""],
  ["[]", "the whole file should be of the kind object", ""],
  ['{"name":"T","gaugeDay":"morning"}', 'gaugeDay should be ends_on_date or starts_on_date or calendar_day, not "morning"', ""],
  ['{"name":"T","asOf":"2025-02-30"}', "asOf: a calendar day such as 2024-03-05 is expected", ""],
  ['{"name":"T","settings":{"caseGrade":4}}', 'settings.caseGrade should be 1 or 2 or 3, not "4"', ""],
  ['{"name":"T","settings":{"level":1}}', "settings.level should be less than 1", ""],
  ['{"name":"T","settings":{"rainWindowsDays":[0]}}', "settings.rainWindowsDays.0 should be at least 1", ""],
  ['{"name":"T","settings":{"rainWindowsDays":[]}}', "settings.rainWindowsDays is empty", ""],
  ['{"name":"T","settings":{"toleranceDays":1.5}}', "settings.toleranceDays should be of the kind int", ""],
  [
    '{"name":"T","weather":[{"file":"../rain.csv","format":"ghcn-by-station"}]}',
    "weather.0.file: a file inside the study folder is expected",
    "",
  ],
  [
    '{"name":"T","weather":[{"file":"/etc/hosts","format":"ghcn-by-station"}]}',
    "weather.0.file: a file inside the study folder is expected",
    "",
  ],
  [
    '{"name":"T","weather":[{"file":"a.csv","format":"dly"}]}',
    'weather.0.format should be ghcn-by-station or ghcn-dly, not "dly"',
    "",
  ],
  [
    '{"name":"T","weather":[{"file":"a.dly","format":"ghcn-dly","gauge":"G","stations":{"XX1":"G"}}]}',
    "weather.0: give gauge or stations, not both",
    "",
  ],
  ['{"name":"T","gauges":[{"gauge":"G","latitudeDeg":91}]}', "gauges.0.latitudeDeg should be at most 90", ""],
  [
    '{"name":"T","gauges":[{"gauge":"G","latitude":9,"latitudeDeg":9}]}',
    'gauges.0: the key "latitude" is not known',
    "latitudeDeg",
  ],
  ['{"name":"T","gauges":[{"gauge":"G","latitudeDeg":1},{"gauge":"G","latitudeDeg":2}]}', "gauges: a gauge is named twice", ""],
  ['{"name":"T","settings":{"dailyRainLimitMm":0}}', "settings.dailyRainLimitMm should be more than 0", ""],
])("%s is refused in words", async (json, found, hint) => {
  const refusal = await refused(json);
  expect(refusal.code).toBe("bad_study_json");
  expect(refusal.message).toBe(`study.json: ${found}.`);
  expect(refusal.hint).toContain(hint);
});

test("several faults are named together", async () => {
  expect((await refused('{"nam":"T","gaugeDay":1}')).message).toBe(
    'study.json: name is missing; gaugeDay should be ends_on_date or starts_on_date or calendar_day, not "1"; the key "nam" is not known.',
  );
});

test("text of another encoding and a file that is far too large are refused", async () => {
  expect(await refused(Buffer.from('{"name":"Föhr"}', "latin1"))).toMatchObject({ code: "not_csv_text" });
  expect(await refused(Buffer.from('{"name":"T"}', "utf16le"))).toMatchObject({ code: "not_csv_text" });
  expect(await refused(`{"name":"T"}${" ".repeat(1_000_000)}`)).toMatchObject({ code: "bad_study_json" });
});
