import fc from "fast-check";
import { expect, test } from "vitest";
import { dailyEvapotranspiration } from "../../src/derive/dailyEvapotranspiration.js";
import { soilWetness } from "../../src/derive/soilWetness.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { referenceRain, weatherReferences } from "./weatherReferences.js";

const series = (water: readonly (readonly [number | null, number | null])[], from = 20_000) =>
  water.map(([rainMm, evapotranspirationMm], place) => ({ date: dateOfDay(from + place), rainMm, evapotranspirationMm }));

// By hand, capacity 20, start 10: +8-3 = 15; +12-2 = 25, 5 over; -4; -18 leaves 0 of -2; +0.5-0.2.
test("a store that fills, runs over and empties", () => {
  const water = [
    [8, 3],
    [12, 2],
    [0, 4],
    [0, 18],
    [0.5, 0.2],
  ] as const;
  const rows = soilWetness(series(water), { capacityMm: 20, start: 10 });
  expect(rows.map(({ storageMm }) => storageMm)).toEqual([15, 20, 16, 0, 0.3]);
  expect(rows.map(({ surplusMm }) => surplusMm)).toEqual([0, 5, 0, 0, 0]);
});

// tests/reference/weather/references.R: capacity 75, start 40; evapotranspiration is rounded to thousandths there as here.
test("against R over a year", () => {
  const rows = soilWetness(dailyEvapotranspiration(referenceRain(), 53.2), { capacityMm: 75, start: 40 });
  const found = new Map(rows.map((row) => [row.date, row]));
  const [storage, surplus] = [weatherReferences("storage"), weatherReferences("surplus")];
  expect([...surplus.values()].some((mm) => mm > 5)).toBe(true);
  // Some days fall on the edge of a thousandth, hence half a hundredth.
  for (const [date, mm] of storage) expect(found.get(date)?.storageMm, date).toBeCloseTo(mm, 2);
  for (const [date, mm] of surplus) expect(found.get(date)?.surplusMm, date).toBeCloseTo(mm, 2);
});

test("without a start nothing is told until it no longer matters, and then all starts agree", () => {
  const water = [
    [1, 3],
    [4, 1],
    [25, 0],
    [0, 5],
  ] as const;
  const rows = soilWetness(series(water), { capacityMm: 20 });
  // On the 3rd day even the empty store is full; how much ran over it cannot be told.
  expect(rows.map(({ storageMm }) => storageMm)).toEqual([null, null, 20, 15]);
  expect(rows.map(({ surplusMm }) => surplusMm)).toEqual([0, null, null, 0]);
  const dry = soilWetness(series([[0, 15], [0, 6], [3, 1]]), { capacityMm: 20 }); // prettier-ignore
  expect(dry.map(({ storageMm }) => storageMm)).toEqual([null, 0, 2]);
});

test("a day that is not known, or not there, is forgotten what was held before it", () => {
  const known = [[30, 0], [0, 1], [0, 1], [0, 1]] as const; // prettier-ignore
  const at = (place: number, water: readonly [number | null, number | null]) =>
    soilWetness(series(known.map((day, index) => (index === place ? water : day))), { capacityMm: 20 }).map(
      (row) => row.storageMm,
    );
  expect(at(2, [0, 1])).toEqual([20, 19, 18, 17]);
  expect(at(2, [null, 1])).toEqual([20, 19, null, null]);
  expect(at(2, [0, null])).toEqual([20, 19, null, null]);
  const holed = series(known).filter((_, place) => place !== 2);
  expect(soilWetness(holed, { capacityMm: 20 }).map(({ storageMm }) => storageMm)).toEqual([20, 19, null]);
  expect(soilWetness(series([[null, 1]]), { capacityMm: 20, start: 4 })[0]).toMatchObject({ storageMm: null, surplusMm: null });
});

const amounts = fc
  .option(fc.integer({ min: 0, max: 300 }), { nil: null, freq: 25 })
  .map((tenths) => (tenths === null ? null : tenths / 10));
const waters = fc.array(fc.tuple(amounts, amounts), { minLength: 1, maxLength: 80 });

test("order, a shift of the dates and the start: what is given never depends on a guess", () => {
  fc.assert(
    fc.property(waters, fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 60 }), (water, capacityMm, begin) => {
      const start = Math.min(begin, capacityMm);
      const days = series(water);
      const open = soilWetness(days, { capacityMm });
      const started = soilWetness(days, { capacityMm, start });
      open.forEach(({ storageMm, surplusMm }, place) => {
        if (storageMm !== null) {
          expect(started[place]?.storageMm).toBe(storageMm);
          expect(storageMm).toBeGreaterThanOrEqual(0);
          expect(storageMm).toBeLessThanOrEqual(capacityMm);
        }
        if (surplusMm !== null) expect(started[place]?.surplusMm).toBe(surplusMm);
      });
      expect(soilWetness([...days].reverse(), { capacityMm })).toEqual(open);
      const shifted = soilWetness(series(water, 21_000), { capacityMm });
      expect(shifted.map(({ storageMm }) => storageMm)).toEqual(open.map(({ storageMm }) => storageMm));
      // A day without rain and without evapotranspiration keeps what is held.
      const still = soilWetness([...days, { date: dateOfDay(20_000 + water.length), rainMm: 0, evapotranspirationMm: 0 }], {
        capacityMm,
      });
      expect(still.at(-1)).toMatchObject({ storageMm: open.at(-1)?.storageMm });
    }),
  );
});

test("what comes in is held, given off or run over", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.constant(0)), { minLength: 1, maxLength: 40 }),
      (water) => {
        const rows = soilWetness(series(water), { capacityMm: 100, start: 30 });
        const [rain, over] = [water.reduce((sum, [mm]) => sum + mm, 0), rows.reduce((sum, { surplusMm }) => sum + surplusMm!, 0)];
        expect(rows.at(-1)!.storageMm! + over).toBeCloseTo(30 + rain, 9);
      },
    ),
  );
});

test("choices and amounts that make no sense are refused", () => {
  for (const capacityMm of [0, -5, Number.NaN]) expect(() => soilWetness([], { capacityMm })).toThrow("soil");
  for (const start of [-1, 21, Number.NaN]) expect(() => soilWetness([], { capacityMm: 20, start })).toThrow("start");
  expect(() => soilWetness(series([[-1, 0]]), { capacityMm: 20 })).toThrow("-1 mm");
  expect(() => soilWetness(series([[0, Number.NaN]]), { capacityMm: 20 })).toThrow("NaN mm");
  expect(() => soilWetness([...series([[1, 0]]), ...series([[1, 0]])], { capacityMm: 20 })).toThrow("twice");
});
