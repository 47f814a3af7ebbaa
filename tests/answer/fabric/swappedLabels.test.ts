import { expect, test } from "vitest";
import { swappedLabels } from "../../../src/answer/fabric/swappedLabels.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import type { Foot } from "../../../src/study/Foot.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited, plants } from "./plants.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
const atHorse = (row: FootVisit) => row.horseId === "Horse 3" && row.visitDate === day;
const codes = (study: typeof herd) => swappedLabels(study).map(({ code, message }) => [code, message.includes("Horse 3")]);
const relabelled = (labels: Partial<Record<Foot, Foot>>) =>
  edited(herd, (row) => (atHorse(row) ? { ...row, foot: labels[row.foot] ?? row.foot } : row));

test("a herd with the right labels raises nothing", () => {
  expect(swappedLabels(herd)).toEqual([]);
});

test("front and hind, left and right, and diagonal feet are told apart, also on one side or at one end only", () => {
  expect(codes(relabelled({ LF: "LH", LH: "LF", RF: "RH", RH: "RF" }))).toEqual([["ends_swapped", true]]);
  expect(codes(relabelled({ LF: "LH", LH: "LF" }))).toEqual([["ends_swapped", true]]);
  expect(codes(relabelled({ LF: "RF", RF: "LF", LH: "RH", RH: "LH" }))).toEqual([["sides_swapped", true]]);
  expect(codes(relabelled({ LH: "RH", RH: "LH" }))).toEqual([["sides_swapped", true]]);
  expect(codes(relabelled({ LF: "RH", RH: "LF", RF: "LH", LH: "RF" }))).toEqual([["diagonals_swapped", true]]);
});

test("the sentence holds the evidence: the difference here and on how many other days", () => {
  const [issue] = swappedLabels(relabelled({ LF: "LH", LH: "LF", RF: "RH", RH: "RF" }));
  expect(issue?.message).toMatch(
    /^visits\.csv, line \d+, column foot: front and hind feet of Horse 3 on 2024-10-04 were probably exchanged \(LF with LH, RF with RH\): /,
  );
  expect(issue?.message).toMatch(
    /\): [a-z ]+ [LR]F less [LR]H is [+-]\d+ (mm|degrees) here and [+-]\d+(\.\d)? (mm|degrees) on 5 other days; /,
  );
  expect(issue?.message).toMatch(/better by \d+\.\d the other way round, where 12\.2 is asked of 96 sets\.$/);
});

test("the limit is that of Markov and Bonferroni: log of 96 sets times 9 swaps over 5 % shared by 12 checks", () => {
  expect(Math.log((96 * 9) / (0.05 / 12))).toBeCloseTo(12.242, 3);
});

test("one measure alone is no exchange: only the widths of two feet changed places", () => {
  const widths = new Map(herd.visits.filter(atHorse).map(({ foot, hoofWidthMm }) => [foot, hoofWidthMm]));
  const other: Partial<Record<Foot, Foot>> = { LF: "LH", LH: "LF" };
  const study = edited(herd, (row) =>
    atHorse(row) ? { ...row, hoofWidthMm: widths.get(other[row.foot] ?? row.foot) ?? null } : row,
  );
  expect(swappedLabels(study)).toEqual([]);
  // Nor when nothing else was measured that could speak against it.
  const measured = ({ hoofWidthMm, ...row }: FootVisit) => {
    const none = { hoofLengthMm: null, toeLengthMm: null, heelHeightMm: null, toeAngleDeg: null, heelAngleDeg: null };
    return {
      ...row,
      ...none,
      frogWidthMm: null,
      frogLengthMm: null,
      medialWallAngleDeg: null,
      lateralWallAngleDeg: null,
      hoofWidthMm,
    };
  };
  // Its near fore is 20 mm wider than that of others, so that the widths alone would be plain enough.
  const wide = edited(relabelled({ LF: "LH", LH: "LF" }), (row) => {
    const nearFore = row.foot === (row.visitDate === day ? "LH" : "LF");
    return row.horseId === "Horse 3" && nearFore ? { ...row, hoofWidthMm: (row.hoofWidthMm ?? 0) + 20 } : row;
  });
  expect(codes(wide)).toEqual([["ends_swapped", true]]);
  const bare = edited(wide, (row) => (atHorse(row) ? measured(row) : row));
  expect(swappedLabels(bare)).toEqual([]);
});

test("two days are no history: nobody could say which of them is wrong", () => {
  const swap = plants.ends_swapped(herd, seededRandom("short"));
  const dates = [...new Set(herd.visits.map(({ visitDate }) => visitDate))];
  const [name = ""] = swap?.words ?? [];
  const kept = new Set([swap?.words[1], dates.find((date) => date !== swap?.words[1])]);
  const visits = swap?.study.visits.filter((row) => row.horseId !== name || kept.has(row.visitDate)) ?? [];
  expect(swappedLabels(swap?.study ?? herd)).toHaveLength(1);
  expect(swappedLabels({ visits })).toEqual([]);
});

const lookedAt = (marks: (visit: number, foot: Foot) => Partial<FootVisit>) =>
  edited(herd, (row) => {
    const visit = [...new Set(herd.visits.map(({ visitDate }) => visitDate))].indexOf(row.visitDate);
    const blank = { hoofWidthMm: null, hoofLengthMm: null, toeLengthMm: null, heelHeightMm: null, toeAngleDeg: null };
    const rest = {
      heelAngleDeg: null,
      frogWidthMm: null,
      frogLengthMm: null,
      medialWallAngleDeg: null,
      lateralWallAngleDeg: null,
    };
    return { ...row, ...blank, ...rest, ...(row.horseId === "Horse 3" ? marks(visit, row.foot) : {}) };
  });

test("without measures, horn colour and shoes on both pairs tell; horn colour alone, on one pair, does not", () => {
  const seen = (foot: Foot): Partial<FootVisit> =>
    foot.endsWith("F") ? { hornColour: "light", shoeState: "tight" } : { hornColour: "dark", shoeState: "bare" };
  const turned = (foot: Foot) => (foot.endsWith("F") ? "LH" : "LF");
  const both = lookedAt((visit, foot) => seen(visit === 2 ? turned(foot) : foot));
  expect(codes(both)).toEqual([["ends_swapped", true]]);
  const colour = lookedAt((visit, foot) =>
    foot.startsWith("L") ? { hornColour: seen(visit === 2 ? turned(foot) : foot).hornColour ?? null } : {},
  );
  expect(codes(colour)).toEqual([]);
});
