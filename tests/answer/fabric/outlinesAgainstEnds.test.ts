import { expect, test } from "vitest";
import { outlinesAgainstEnds } from "../../../src/answer/fabric/outlinesAgainstEnds.js";
import { readStudy } from "../../../src/read/readStudy.js";
import type { Foot } from "../../../src/study/Foot.js";
import { outlinesExchanged, tracedDays } from "./plants.js";

const demo = await readStudy("data-demo", { today: "2026-03-01" });
const days = tracedDays(demo);
const key = ({ horseId, visitDate }: { readonly horseId: string; readonly visitDate: string }) => `${horseId}\n${visitDate}`;
const told = (study: typeof demo) => outlinesAgainstEnds(study).map(({ message }) => message);
const relabelled = (day: string, labels: Partial<Record<Foot, Foot>>) => ({
  ...demo,
  outlines: demo.outlines.map((point) => (key(point) === day ? { ...point, foot: labels[point.foot] ?? point.foot } : point)),
});

test("outlines with the right labels raise nothing", () => {
  expect(days.length).toBeGreaterThan(20);
  expect(told(demo)).toEqual([]);
});

test("front and hind exchanged on one day are told by that day alone, with the line and the chances", () => {
  for (const day of days.filter((_, place) => place % 6 === 0)) {
    const [horseId = "", visitDate = ""] = day.split("\n");
    const study = outlinesExchanged(demo, day);
    const issues = outlinesAgainstEnds(study);
    expect(issues.map(({ message }) => message.includes(`${horseId} on ${visitDate}`))).toEqual([true]);
    expect(issues[0]).toMatchObject({ file: "outlines.csv", column: "foot", code: "outlines_against_ends", severity: "warning" });
    expect(issues[0]?.message).toMatch(/\(.*RF with RH\).* RF 0 %.* RH 100 %/);
    expect(study.outlines.some((point) => key(point) === day && point.line === issues[0]?.line)).toBe(true);
  }
});

test("an exchange on one side is told of that side", () => {
  const [message] = told(relabelled(days[0] ?? "", { LF: "LH", LH: "LF" }));
  expect(message).toContain("(LF with LH)");
});

test("left and right exchanged say nothing of front and hind", () => {
  expect(told(relabelled(days[0] ?? "", { LF: "RF", RF: "LF", LH: "RH", RH: "LH" }))).toEqual([]);
});

test("a hind foot that is odd by itself is no exchange while its front foot is a front foot", () => {
  // Its near hind is traced as broad at the toe as its near fore: both look like front feet, so that neither label fits better.
  const day = days[0] ?? "";
  const ofDay = demo.outlines.filter((point) => key(point) === day);
  const copied = ofDay.filter(({ foot }) => foot === "LF").map((point) => ({ ...point, foot: "LH" as const }));
  const outlines = [...demo.outlines.filter((point) => key(point) !== day || point.foot !== "LH"), ...copied];
  expect(told({ ...demo, outlines })).toEqual([]);
});

test("fewer than ten horses make no rule; donkeys and specimens make no part of it", () => {
  const [first = ""] = days;
  const names = [...new Set(days.map((day) => day.split("\n")[0] ?? ""))];
  const of = (count: number) => {
    const kept = new Set(names.slice(0, count));
    const study = outlinesExchanged(demo, first);
    return { ...study, outlines: study.outlines.filter(({ horseId }) => kept.has(horseId)) };
  };
  expect(told(of(14))).toHaveLength(1);
  expect(told(of(9))).toEqual([]);
  const donkeys = { ...of(14), horses: demo.horses.map((stay) => ({ ...stay, species: "donkey" as const })) };
  expect(told(donkeys)).toEqual([]);
  expect(told({ ...of(14), outlines: of(14).outlines.map((point) => ({ ...point, foot: "F" as const })) })).toEqual([]);
});

test("no outlines, no doubt", () => {
  expect(outlinesAgainstEnds({ outlines: [], horses: [] })).toEqual([]);
});
