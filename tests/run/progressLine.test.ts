import { expect, test } from "vitest";
import { progressLine } from "../../src/run/progressLine.js";

function fakeStream(isTTY: boolean, columns?: number) {
  const written: string[] = [];
  return { isTTY, ...(columns === undefined ? {} : { columns }), write: (text: string) => written.push(text), written };
}

test("on a terminal the line is written over and taken away at the end", () => {
  const stream = fakeStream(true, 40);
  const line = progressLine(stream, "xterm");
  line.show("cell 1 of 2");
  line.show("cell 2 of 2");
  line.clear();
  line.clear();
  expect(stream.written).toEqual(["\r\u001B[2Kcell 1 of 2", "\r\u001B[2Kcell 2 of 2", "\r\u001B[2K"]);
});

test("nothing is written to a file, a pipe or a terminal that cannot move its cursor", () => {
  for (const [stream, terminal] of [
    [fakeStream(false, 80), "xterm"],
    [fakeStream(true, 80), "dumb"],
  ] as const) {
    const line = progressLine(stream, terminal);
    line.show("cell 1 of 2");
    line.clear();
    expect(stream.written).toEqual([]);
  }
});

test("text never wraps and never moves the cursor", () => {
  const stream = fakeStream(true, 10);
  progressLine(stream, "xterm").show("abc\ndef\u001B[31mghi\tjkl");
  expect(stream.written).toEqual(["\r\u001B[2Kabc def ["]);
  // Wide characters take two columns: 4 of them in 9 columns.
  const wide = fakeStream(true, 10);
  progressLine(wide, "xterm").show("蹄蹄蹄蹄蹄蹄");
  expect(wide.written).toEqual(["\r\u001B[2K蹄蹄蹄蹄"]);
  const unknownWidth = fakeStream(true);
  progressLine(unknownWidth, undefined).show("x".repeat(200));
  expect(unknownWidth.written).toEqual([`\r\u001B[2K${"x".repeat(79)}`]);
});

test("a terminal that gives its width as 0 is taken as 80 wide", () => {
  const stream = fakeStream(true, 0);
  progressLine(stream, "xterm").show("Reading");
  expect(stream.written.join("")).toContain("Reading");
});
