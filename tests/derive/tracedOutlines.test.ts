import { expect, test } from "vitest";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing } from "./tracing.js";

const traced = (outlines: readonly OutlinePoint[], options?: Parameters<typeof tracedOutlines>[1]) =>
  tracedOutlines({ outlines }, options);
const codes = (outlines: readonly OutlinePoint[]) => traced(outlines)[0]!.faults.map(({ code, ring }) => `${ring} ${code}`);
const named = (rows: readonly OutlinePoint[], point: string, change: Partial<OutlinePoint>) =>
  rows.map((row) => (row.point === point && row.ring === "wall" ? { ...row, ...change } : row));

test("points in the order of their numbers, not of their rows, and landmarks by name", () => {
  const rows = tracing();
  const [outline] = traced([...rows].reverse());
  expect(outline).toMatchObject({
    horseId: "A",
    foot: "RF",
    end: "fore",
    side: "right",
    usable: true,
    faults: [],
    mirrored: false,
  });
  expect(outline!.wall).toHaveLength(48);
  expect(outline!.frog).toHaveLength(12);
  expect(outline!.landmarks!.toe.y).toBeCloseTo(65, 10);
  const steps = outline!.wall.map((point, place) => {
    const next = outline!.wall[(place + 1) % 48]!;
    return Math.hypot(next.x - point.x, next.y - point.y);
  });
  // 48 points on an oval of 60 by 65: at most 65 * 2 pi / 48 apart.
  expect(Math.max(...steps)).toBeLessThan(8.6);
});

test("rings run anticlockwise, mirrored or not", () => {
  const area = (options: Parameters<typeof tracedOutlines>[1]) =>
    traced(tracing({ foot: "LF" }), options)[0]!.wall.reduce((sum, point, place, ring) => {
      const next = ring[(place + 1) % ring.length]!;
      return sum + (point.x * next.y - next.x * point.y) / 2;
    }, 0);
  expect(area({})).toBeGreaterThan(12_000);
  expect(area({ mirrorLeft: true })).toBeCloseTo(area({}), 6);
});

test("a left foot mirrored lies on its right fellow", () => {
  const right = tracing({ outerLeft: false });
  const left = right.map((row) => ({ ...row, foot: "LF" as const, xMm: -row.xMm }));
  const [mirrored, same] = traced([...left, ...right], { mirrorLeft: true });
  expect([mirrored!.mirrored, same!.mirrored]).toEqual([true, false]);
  expect(mirrored!.landmarks!.heelLateral.x).toBeCloseTo(same!.landmarks!.heelLateral.x, 10);
  expect(traced([...left, ...right])[0]!.landmarks!.heelLateral.x).toBeCloseTo(-30, 10);
});

test("aligned, the heels are at 0, 0 and the toe above, wherever it lay on the paper", () => {
  const [plain] = traced(tracing(), { aligned: true });
  const [turned] = traced(tracing({ at: [140, -80], turnedDeg: 115 }), { aligned: true });
  expect(turned!.aligned).toBe(true);
  expect(turned!.landmarks!.toe.x).toBeCloseTo(0, 9);
  // Half height 65 and the heels at -60 degrees: 65 (1 + sin 60).
  expect(turned!.landmarks!.toe.y).toBeCloseTo(65 * (1 + Math.sqrt(3) / 2), 9);
  turned!.wall.forEach((point, place) => {
    expect(Math.hypot(point.x - plain!.wall[place]!.x, point.y - plain!.wall[place]!.y)).toBeLessThan(1e-9);
  });
});

test("a missing landmark is named, and forbids use", () => {
  const without = tracing().filter(({ point }) => point !== "heel_medial");
  const [outline] = traced(without, { aligned: true });
  expect(outline).toMatchObject({ usable: false, aligned: false, landmarks: null });
  expect(outline!.faults).toMatchObject([
    { code: "missing_landmark", ring: "wall", severity: "unusable", message: "The landmark heel_medial is missing." },
  ]);
});

test("too few points, no wall, a frog that is none", () => {
  expect(codes(tracing({ points: 19 }))).toEqual(["wall too_few_points"]);
  expect(codes(tracing({ points: 5000 }))).toEqual([]);
  expect(codes(tracing({ points: 5001 }))).toEqual(["wall too_many_points"]);
  expect(codes(tracing({ points: 20 }))).toEqual([]);
  expect(codes(tracing().filter(({ ring, point }) => ring === "frog" || !/\d/.test(point)))).toEqual(["wall no_wall"]);
  const [few] = traced(tracing({ frogPoints: 7 }));
  expect(few).toMatchObject({ usable: true, frog: [], faults: [{ code: "too_few_points", ring: "frog" }] });
  expect(traced(tracing({ frogPoints: 0 }))[0]).toMatchObject({ usable: true, frog: [], faults: [] });
});

test("two numbers that changed places make the wall cross itself, and the words say where", () => {
  const rows = tracing();
  const [ten, twelve] = ["10", "12"].map((point) => rows.find((row) => row.point === point && row.ring === "wall")!);
  const mixed = named(named(rows, "10", { xMm: twelve!.xMm, yMm: twelve!.yMm }), "12", { xMm: ten!.xMm, yMm: ten!.yMm });
  const [outline] = traced(mixed);
  expect(outline!.usable).toBe(false);
  expect(outline!.faults).toMatchObject([{ code: "crossing", message: "The wall crosses itself after the points 9 and 12." }]);
});

test("warnings keep the outline: a landmark off the wall, a stretch that is missing, a point that is neither number nor landmark", () => {
  expect(codes(named(tracing(), "toe", { yMm: 80 }))).toEqual(["wall landmark_off_wall"]);
  const gap = tracing().filter(({ ring, point }) => ring === "frog" || !(Number(point) > 5 && Number(point) < 20));
  expect(traced(gap)[0]).toMatchObject({ usable: true, faults: [{ code: "long_step", severity: "warning" }] });
  expect(codes([...tracing(), { ...tracing()[0]!, point: "tip" }])).toEqual(["wall unknown_point"]);
  expect(codes([...tracing(), { ...tracing()[0]!, ring: "frog", point: "toe" }])).toEqual(["frog unknown_point"]);
});

test("centimetres are smelt", () => {
  const cm = tracing().map((row) => ({ ...row, xMm: row.xMm / 10, yMm: row.yMm / 10 }));
  expect(traced(cm)[0]).toMatchObject({ usable: false, faults: [{ code: "unlikely_size" }] });
});

test("one foot that lies the other way round than the rest is pointed out; without a majority none is", () => {
  const right = ["A", "B", "C", "D"].map((horseId) => tracing({ horseId }));
  const left = tracing({ horseId: "A", foot: "LF", outerLeft: true });
  const odd = tracing({ horseId: "E", foot: "LH" });
  const faulty = (rows: readonly OutlinePoint[]) =>
    traced(rows)
      .filter(({ faults }) => faults.some(({ code }) => code === "other_hand"))
      .map(({ horseId, foot }) => `${horseId} ${foot}`);
  expect(faulty([...right.flat(), ...left, ...odd])).toEqual(["E LH"]);
  expect(faulty([...right[0]!, ...odd])).toEqual([]);
  expect(faulty([...right.flat(), ...tracing({ foot: "F", horseId: "specimen", outerLeft: true })])).toEqual([]);
});

test("tracings, stages, days and specimens stay apart, in order", () => {
  const rows = [
    tracing({ visitDate: "2025-03-03" }),
    tracing({ tracing: "2", observerId: "M" }),
    tracing({ stage: "after_trim" }),
    tracing(),
    tracing({ foot: "H", horseId: "specimen", stage: "single" }),
  ].flat();
  const all = traced(rows);
  expect(all.map(({ visitDate, horseId, stage, tracing: name }) => [visitDate, horseId, stage, name])).toEqual([
    ["2025-01-06", "A", "after_trim", null],
    ["2025-01-06", "A", "before_trim", null],
    ["2025-01-06", "A", "before_trim", "2"],
    ["2025-01-06", "specimen", "single", null],
    ["2025-03-03", "A", "before_trim", null],
  ]);
  expect(all[3]).toMatchObject({ end: "hind", side: null });
  expect(all[2]!.observerId).toBe("M");
});
