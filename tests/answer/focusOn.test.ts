import { expect, test } from "vitest";
import { focusOn } from "../../src/answer/focusOn.js";
import { dueDates } from "../../src/derive/dueDates.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";

const study = studyOf({
  visits: [
    footVisit({ horseId: "Bess", visitDate: "2025-01-06" }),
    footVisit({ horseId: "Bess", visitDate: "2025-03-03" }),
    footVisit({ horseId: "Captain", visitDate: "2025-01-20" }),
    footVisit({ horseId: "Dot", visitDate: "2025-02-03" }),
  ],
  horses: [
    horseStay({ horseId: "Bess", yardId: "Low", plannedIntervalDays: 42, leftOn: "2025-02-01" }),
    horseStay({ horseId: "Bess", yardId: "High", plannedIntervalDays: 42, joinedOn: "2025-02-01" }),
    horseStay({ horseId: "Captain", yardId: "High", plannedIntervalDays: 42 }),
    horseStay({ horseId: "Dot", yardId: null }),
  ],
  yards: [yard({ yardId: "Low", gaugeId: "weir" }), yard({ yardId: "High", gaugeId: "hill" })],
  changes: [{ file: "changes.csv", line: 2, yardId: "High", changedOn: "2025-01-01", what: "mats" }],
  weather: [gaugeDay({ gaugeId: "weir", date: "2025-01-01" }), gaugeDay({ gaugeId: "hill", date: "2025-01-01" })],
});

test("of a yard: its horses for the days they stood there, its gauge, its changes", () => {
  const low = focusOn(study, { yardId: "Low" });
  expect(low.visits.map(({ horseId, visitDate }) => [horseId, visitDate])).toEqual([["Bess", "2025-01-06"]]);
  expect(low.horses.map(({ yardId }) => yardId)).toEqual(["Low"]);
  expect(low.weather.map(({ gaugeId }) => gaugeId)).toEqual(["weir"]);
  expect(low.changes).toEqual([]);
  const high = focusOn(study, { yardId: "High" });
  expect(high.visits.map(({ horseId, visitDate }) => [horseId, visitDate])).toEqual([
    ["Bess", "2025-03-03"],
    ["Captain", "2025-01-20"],
  ]);
  expect(JSON.stringify(high)).not.toMatch(/Low|weir|Dot/);
});

test("a horse that moved without a last day of the old stay is not waited for at the old yard", () => {
  const horses = study.horses.map((stay) => ({ ...stay, leftOn: null }));
  const low = focusOn({ ...study, horses }, { yardId: "Low", asOf: "2025-03-10" });
  expect(low.horses.map(({ leftOn }) => leftOn)).toEqual(["2025-02-01"]);
  expect(dueDates(low)).toEqual([]);
});

test("a horse lent out and back keeps its stay", () => {
  const horses = [
    horseStay({ horseId: "Bess", yardId: "Low", joinedOn: "2024-01-01" }),
    horseStay({ horseId: "Bess", yardId: "High", joinedOn: "2025-01-10", leftOn: "2025-02-10" }),
  ];
  expect(focusOn({ ...study, horses }, { yardId: "Low" }).horses[0]).toMatchObject({ leftOn: null });
});

test("of a horse: its stays and rows, wherever it stood", () => {
  const bess = focusOn(study, { horseId: "Bess" });
  expect(bess.visits).toHaveLength(2);
  expect(bess.horses.map(({ yardId }) => yardId)).toEqual(["Low", "High"]);
  expect(focusOn(study, { horseId: "Bess", yardId: "High" }).visits.map(({ visitDate }) => visitDate)).toEqual(["2025-03-03"]);
});

test("as of a day: nothing later; without one, as of the study", () => {
  const then = focusOn(study, { asOf: "2025-01-31" });
  expect(then.visits.map(({ visitDate }) => visitDate)).toEqual(["2025-01-06", "2025-01-20"]);
  expect(then.horses.map(({ joinedOn }) => joinedOn)).toEqual([null, null, null]);
  expect(then.settings.asOf).toBe("2025-01-31");
  expect(focusOn(study).settings.asOf).toBe("2025-03-03");
  expect(focusOn(studyOf()).settings.asOf).toBeNull();
});

test("a name or a day that is none is an error with a hint", () => {
  expect(() => focusOn(study, { horseId: "Bes" })).toThrow(
    expect.objectContaining({ code: "unknown_horse", hint: "Did you mean Bess?" }) as Error,
  );
  expect(() => focusOn(study, { yardId: "Nowhere" })).toThrow(expect.objectContaining({ code: "unknown_yard" }) as Error);
  expect(() => focusOn(study, { asOf: "1 March" })).toThrow(expect.objectContaining({ code: "not_a_date" }) as Error);
  const misspelt: object = { horse: "Bess" };
  expect(() => focusOn(study, misspelt)).toThrow(expect.objectContaining({ code: "unknown_focus" }) as Error);
});
