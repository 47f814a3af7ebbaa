import * as danfo from "danfojs-node";
import { afterEach, describe, expect, test, vi } from "vitest";
import { toFrame } from "../../src/show/toFrame.js";
import { StudyError } from "../../src/study/StudyError.js";
import { footVisit } from "../footVisit.js";

const rows = [
  { horse: "Bess", widthMm: 120.5, vet: true, share: null, seen: true },
  { horse: null, widthMm: null, vet: null, share: null, seen: false },
  { horse: "Dot", widthMm: 131, vet: false, share: null, seen: true },
];

describe("danfojs-node 1.2.0", () => {
  test("takes the rows with the types of their columns", async () => {
    const frame = await toFrame(rows);
    expect(frame).toBeInstanceOf(danfo.DataFrame);
    expect(frame.shape).toEqual([3, 5]);
    expect(frame.columns).toEqual(["horse", "widthMm", "vet", "share", "seen"]);
    expect(frame.dtypes).toEqual(["string", "float32", "float32", "float32", "boolean"]);
  });

  test("a missing number is NaN, so that the frame leaves it out and does not count it as 0", async () => {
    const frame = (await toFrame(rows)) as unknown as danfo.DataFrame;
    const width = frame["widthMm"] as danfo.Series;
    expect(width.count()).toBe(2);
    expect(width.mean()).toBeCloseTo(125.75, 10);
    expect(width.add(1).values).toEqual([121.5, NaN, 132]);
    expect((frame["vet"] as danfo.Series).values).toEqual([1, NaN, 0]);
    expect((frame["horse"] as danfo.Series).isNa().values).toEqual([false, true, false]);
  });

  test("records of a study go in as they are; several codes are joined", async () => {
    const frame = await toFrame([footVisit({ thrushSite: ["central_sulcus", "medial_groove"], hoofWidthMm: 120 }), footVisit()]);
    const site = frame.columns.indexOf("thrushSite");
    expect(frame.values.map((row) => (row as unknown[])[site])).toEqual(["central_sulcus;medial_groove", null]);
  });

  test("columns are those of all rows together, and the rows are left as they were", async () => {
    const given = Object.freeze([Object.freeze({ a: 1 }), Object.freeze({ b: "x" })]);
    const frame = await toFrame(given);
    expect(frame.columns).toEqual(["a", "b"]);
    expect(frame.values).toEqual([
      [1, null],
      [NaN, "x"],
    ]);
  });
});

describe("what no frame can be made of is said", () => {
  afterEach(() => {
    vi.doUnmock("danfojs-node");
  });

  test("no rows", async () => {
    await expect(toFrame([])).rejects.toMatchObject({ name: "StudyError", code: "frame_empty" });
  });

  test("an object in a cell", async () => {
    await expect(toFrame([{ a: { b: 1 } }])).rejects.toThrow(/field a holds an object/);
  });

  test("danfojs-node is not there", async () => {
    vi.doMock("danfojs-node", () => {
      throw new Error("Cannot find package 'danfojs-node'");
    });
    const error: unknown = await toFrame(rows).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(StudyError);
    expect(error).toMatchObject({ code: "danfo_missing", hint: expect.stringContaining("Install it") as string });
  });
});
