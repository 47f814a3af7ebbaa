import fc from "fast-check";
import { expect, test } from "vitest";
import { dlyLine } from "../../../src/read/weather/dlyLine.js";

// A line written from its definition (NOAA, GHCN-Daily readme.txt section III): ID, YEAR, MONTH, ELEMENT, then 31 times VALUE (5), MFLAG, QFLAG, SFLAG.
interface Cell {
  readonly value: number;
  readonly flags: string;
}
const NONE: Cell = { value: -9999, flags: "   " };
const lineOf = (head: string, cells: readonly Cell[]) =>
  head +
  Array.from({ length: 31 }, (_, day) => cells[day] ?? NONE)
    .map(({ value, flags }) => String(value).padStart(5) + flags)
    .join("");
const head = "XX000000001202402PRCP";
const full = lineOf(head, Array<Cell>(29).fill({ value: 12, flags: "  E" }));
const fieldOf = (line: string) => {
  const found = dlyLine(line);
  return "found" in found ? found.field : "good";
};

test("a line of 269 characters gives its days, with flags and without -9999", () => {
  const cells = [{ value: 0, flags: "T E" }, { value: 123, flags: "  7" }, NONE, { value: -56, flags: " OE" }];
  const line = lineOf(head, cells);
  expect(line).toHaveLength(269);
  const day = { station: "XX000000001", element: "PRCP" };
  expect(dlyLine(line)).toEqual({
    ...day,
    month: "2024-02",
    readings: [
      { ...day, date: "2024-02-01", value: 0, measurementFlag: "T", qualityFlag: "" },
      { ...day, date: "2024-02-02", value: 123, measurementFlag: "", qualityFlag: "" },
      { ...day, date: "2024-02-04", value: -56, measurementFlag: "", qualityFlag: "O" },
    ],
  });
});

test("the last group stands in characters 262 to 269", () => {
  const cells = [...Array<Cell>(30).fill(NONE), { value: 99999, flags: "BXS" }];
  const line = lineOf("XX000000001202403PRCP", cells);
  expect([line.slice(261, 266), line[266], line[267], line[268]]).toEqual(["99999", "B", "X", "S"]);
  expect(dlyLine(line)).toMatchObject({
    readings: [{ date: "2024-03-31", value: 99999, measurementFlag: "B", qualityFlag: "X" }],
  });
});

test.each([
  ["", "ID"],
  [`XX 00000001202402PRCP${full.slice(21)}`, "ID"],
  [full.replace("202402", "2o2402"), "YEAR"],
  [full.replace("202402", "202413"), "MONTH"],
  [full.replace("202402", "000002"), "MONTH"],
  [full.replace("PRCP", "prcp"), "ELEMENT"],
  [full.slice(0, 200), null],
  [`${full}${full}`, null],
  [`${full.slice(0, 21)}   1x${full.slice(26)}`, "VALUE1"],
  [`${full.slice(0, 29)}   - ${full.slice(34)}`, "VALUE2"],
  [`${full.slice(0, 29)}  1 2${full.slice(34)}`, "VALUE2"],
  [`${full.slice(0, 29)}     ${full.slice(34)}`, "VALUE2"],
  [`${full.slice(0, 26)}4${full.slice(27)}`, "MFLAG1"],
  [`${full.slice(0, 27)}-${full.slice(28)}`, "QFLAG1"],
  [`${full.slice(0, 28)}?${full.slice(29)}`, "SFLAG1"],
  [`${full.slice(0, 21)}\t  12${full.slice(26)}`, "VALUE1"],
])("%#: a field of another kind refuses the line and is named", (line, field) => {
  expect(fieldOf(line)).toBe(field);
});

test("a fault says which characters and what they hold", () => {
  expect(dlyLine(`${full.slice(0, 29)}   1x${full.slice(34)}`)).toEqual({
    field: "VALUE2",
    found: 'characters 30 to 34 hold "   1x", no whole number that ends in its column',
  });
});

test("a value on a day that the month lacks refuses the line; blanks there and lost blanks at the end do not", () => {
  const thirtieth = lineOf(head, [...Array<Cell>(29).fill(NONE), { value: 4, flags: "   " }]);
  expect(fieldOf(thirtieth)).toBe("VALUE30");
  expect(fieldOf(`${full.slice(0, 253)}-9999  E${full.slice(261)}`)).toBe("MFLAG30");
  expect(fieldOf(full.slice(0, 253))).toBe("good");
  expect(fieldOf(`${full.slice(0, 253)}${" ".repeat(16)}`)).toBe("good");
  expect(fieldOf(lineOf("XX000000001202302PRCP", Array<Cell>(29).fill({ value: 12, flags: "   " })))).toBe("VALUE29");
});

const letterOf = (letters: string) => fc.nat(letters.length - 1).map((place) => letters.charAt(place));
const lineParts = fc.record({
  year: fc.integer({ min: 1781, max: 2100 }),
  month: fc.integer({ min: 1, max: 12 }),
  cells: fc.array(
    fc.record({
      value: fc.oneof(fc.constant(-9999), fc.integer({ min: -999, max: 99_999 })),
      flags: fc.tuple(letterOf(" BDHKLOPTW"), letterOf(" DGIKLMNORSTWXZ"), letterOf(" 067ABES")),
    }),
    { minLength: 31, maxLength: 31 },
  ),
});

test("any line written by the definition is read back, day by day", () => {
  fc.assert(
    fc.property(lineParts, ({ year, month, cells }) => {
      const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
      const real = cells.slice(0, days).map(({ value, flags }) => ({ value, flags: flags.join("") }));
      const month2 = String(month).padStart(2, "0");
      const found = dlyLine(lineOf(`AB123456789${year}${month2}TMAX`, real));
      if ("found" in found) throw new Error(found.found);
      const expected = real.flatMap(({ value, flags }, day) =>
        value === -9999
          ? []
          : [[`${year}-${month2}-${String(day + 1).padStart(2, "0")}`, value, (flags[0] ?? "").trim(), (flags[1] ?? "").trim()]],
      );
      expect(
        found.readings.map(({ date, value, measurementFlag, qualityFlag }) => [date, value, measurementFlag, qualityFlag]),
      ).toEqual(expected);
    }),
  );
});

// A shift by one column is the fault of a fixed-width file that is hardest to see: no reading may come out of it.
test("characters lost or added among the values refuses the line", () => {
  fc.assert(
    fc.property(lineParts, fc.integer({ min: 21, max: 260 }), fc.boolean(), ({ month, cells }, place, lost) => {
      const days = new Date(Date.UTC(2023, month, 0)).getUTCDate();
      const real = cells.slice(0, days).map(({ value, flags }) => ({ value, flags: flags.join("") }));
      const line = lineOf(`AB1234567892023${String(month).padStart(2, "0")}TMAX`, real);
      const shifted = lost ? line.slice(0, place) + line.slice(place + 1) : `${line.slice(0, place)}  ${line.slice(place)}`;
      const found = dlyLine(shifted);
      const good = dlyLine(line);
      if ("found" in good) throw new Error(good.found);
      // Among the flags of the last day nothing follows that could be shifted; the line may pass then, with every value as it was.
      const values = ({ readings }: typeof good) => readings.map(({ date, value }) => `${date} ${value}`);
      if (!("found" in found)) expect(values(found)).toEqual(values(good));
      else expect(found.found).not.toBe("");
      if (place < 21 + 8 * (days - 1)) expect(found).toHaveProperty("found");
    }),
    { numRuns: 300 },
  );
});

test("no text makes it throw, and what comes out are days of the month written in the line", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 300, unit: "binary" }), fc.integer({ min: 0, max: 269 }), (noise, place) => {
      for (const text of [noise, full.slice(0, place) + noise + full.slice(place)]) {
        const found = dlyLine(text);
        if ("found" in found) expect(found.found).not.toBe("");
        else for (const { date } of found.readings) expect(date.startsWith(found.month)).toBe(true);
      }
    }),
  );
});
