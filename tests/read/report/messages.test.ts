import { expect, test } from "vitest";
import { mappingMessages } from "../../../src/read/report/mappingMessages.js";
import { messages } from "../../../src/read/report/messages.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

const [date] = visitColumns;
const grade = visitColumns.find(({ name }) => name === "thrush_grade") ?? date;

const all = [
  ...(["not_utf8", "not_utf16", "not_windows_1252", "nul_byte", "line_too_long", "stray_quote"] as const).map((code) =>
    messages.line(code),
  ),
  messages.ragged(3, 4),
  messages.ragged(5, 4),
  messages.bareQuote(),
  messages.requiredEmpty(date),
  messages.missingWord(grade, "NA"),
  ...visitColumns.flatMap((column) =>
    ["custom", "too_small", "invalid_type", "invalid_format"].map((issue) => messages.badCell(column, "x", issue)),
  ),
  messages.unusual(grade, "3"),
  messages.unknownColumn("wat", "what"),
  messages.unnamedColumn(3),
  messages.noRows("one yard"),
  messages.fileAbsent("nothing is known"),
  messages.inFuture("2025-07-01", "2025-06-30"),
  messages.notEquine("Daisy", "cow"),
  messages.unknownHorse("Ahs", "Ash"),
  messages.beforeBirth("2011-01-01", 2012),
  messages.beforeGuessedBirth("2011-01-01", 2012),
  messages.outsideStays("2025-01-01"),
  messages.duplicate("the yard", "yards.csv", 3),
  messages.siteWithoutThrush(),
  messages.lostFromBare(),
  messages.findingNotExamined(),
  messages.toeLongerAfter(80, 90, 3),
  mappingMessages.headerAbsent("note", ["Remark"], "remarks"),
  mappingMessages.extraAbsent("gait", null),
  mappingMessages.fileNotRead(),
  messages.leftBeforeJoined("2025-01-02", "2025-01-01"),
  messages.overlappingStays(4),
  messages.bornInFuture(2030),
  messages.unknownYard("Y9", "Y1"),
  messages.unknownGauge("G9", null),
  messages.traceWithRain(0.4),
  messages.missingWithRain(2),
  messages.accumulated("30"),
  messages.accumulatedAround(),
  messages.temperaturesCrossed(),
  messages.ghcnRow("x"),
  messages.ghcnQuality("PRCP", "560", "O"),
  messages.ghcnQualityOfDay("PRCP", "2024-02-04", "560", "O"),
  messages.ghcnPresumedZero(),
  messages.ghcnMissing("PRCP"),
  messages.ghcnUnused("SNOW", 3),
  messages.ghcnDaysUnknown(),
  messages.dlyLine('characters 22 to 26 hold "12x", which is no whole number'),
  messages.ghcnStationsUnused(1, 20),
  messages.ghcnStationsUnused(2, 20),
  messages.ghcnStationAbsent("XX1", "XX2"),
  messages.stationLine("the line has 3 characters"),
  messages.stationNotListed("XX1"),
  messages.gaugeWithoutReadings("G9", "G1"),
  messages.rainOverLimit(400, 341),
  messages.gaugeDayNotStated("ends_on_date"),
];

test("every fault has a stable code, says what was found without a full stop, and what to do with one", () => {
  for (const { code, found, hint } of all) {
    expect(code).toMatch(/^[a-z]+(_[a-z0-9]+)*$/);
    expect(found).toMatch(/[^.]$/);
    expect(hint).toMatch(/^["A-Z].*[.?]$/);
    expect(`${found} ${hint}`).not.toMatch(/undefined|null|\[object|NaN/);
  }
});

test("a fault of a required cell costs the row, of another the cell", () => {
  expect(messages.badCell(date, "x", "custom").severity).toBe("set_aside");
  expect(messages.badCell(grade, "x", "invalid_format")).toMatchObject({
    severity: "cell_blanked",
    found: '"x" is not a number; the cell counts as empty',
  });
});
