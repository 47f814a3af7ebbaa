import { expect, test } from "vitest";
import { markTracks } from "../../src/derive/markTracks.js";
import { footVisit } from "../footVisit.js";

const mark = (visitDate: string, markBelowCoronetMm: number | null, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate, markKind: "abscess_track", markBelowCoronetMm, ...cells });
const depths = (...visits: readonly ReturnType<typeof mark>[]) =>
  markTracks(visits).map(({ sightings, notTheOneBefore }) => [sightings.map((each) => each.belowCoronetMm), notTheOneBefore]);

test("a mark is followed as it moves down, whatever the order of the rows", () => {
  expect(depths(mark("2025-03-03", 20), mark("2025-01-06", 6), mark("2025-02-03", 13))).toEqual([[[6, 13, 20], null]]);
});

// Common practice, no source: a mark of the wall never moves up.
test("a mark that would have moved up is another one", () => {
  expect(depths(mark("2025-01-06", 20), mark("2025-02-03", 5), mark("2025-03-03", 12))).toEqual([
    [[20], null],
    [[5, 12], "it would have moved up"],
  ]);
});

test("so is one that would have moved at a rate no wall grows at", () => {
  // 28 days: 1.4 mm at 0.05, 16.8 mm at 0.6 mm a day.
  const second = (mm: number) => depths(mark("2025-01-06", 10), mark("2025-02-03", mm)).at(-1)![1];
  expect([10, 11.3, 11.5, 26.7, 26.9].map(second)).toEqual([
    "it would have grown too slowly",
    "it would have grown too slowly",
    null,
    null,
    "it would have grown too fast",
  ]);
});

test("rates can be given, and make sense", () => {
  const visits = [mark("2025-01-06", 10), mark("2025-02-03", 20)];
  expect(markTracks(visits)).toHaveLength(1);
  expect(markTracks(visits, { slowestMmPerDay: 0.2, fastestMmPerDay: 0.31 })).toHaveLength(2);
  expect(() => markTracks([], { slowestMmPerDay: 0.3, fastestMmPerDay: 0.2 })).toThrow("makes no sense");
});

test("kinds, feet and horses are not mixed; cracks, marks without distance and specimens are left out", () => {
  const visits = [
    mark("2025-01-06", 6),
    mark("2025-02-03", 13, { markKind: "ring" }),
    mark("2025-02-03", 13, { foot: "RF" }),
    mark("2025-02-03", 13, { horseId: "B" }),
    mark("2025-02-03", 13, { markKind: "crack" }),
    mark("2025-02-03", null),
    mark("2025-02-03", 13, { foot: "F" }),
  ];
  expect(markTracks(visits).map(({ horseId, foot, markKind }) => `${horseId} ${foot} ${markKind}`)).toEqual([
    "A LF abscess_track",
    "A LF ring",
    "A RF abscess_track",
    "B LF abscess_track",
  ]);
});

test("rows before and after a trim of one day are one sighting; a visit that names no mark ends nothing", () => {
  const visits = [mark("2025-01-06", 6), mark("2025-01-06", 7, { stage: "after_trim" }), footVisit({ visitDate: "2025-01-20" })];
  expect(depths(...visits, mark("2025-02-03", 13))).toEqual([[[6, 13], null]]);
});
