import { expect, test } from "vitest";
import { safeTerminal } from "../../src/run/safeTerminal.js";

const caught = (columns?: number) => {
  const written: string[] = [];
  const stream = { ...(columns === undefined ? {} : { columns, isTTY: true }), write: (text: string) => written.push(text) };
  return { written, terminal: safeTerminal({ stdout: stream, stderr: stream }) };
};

test("what would steer a terminal is shown, not obeyed; line ends, tabs and letters of any script pass", () => {
  const { written, terminal } = caught();
  terminal.stdout.write("Bess\u001B[31m\u0007\r and \u009B2J Zoë\t馬\n");
  expect(written).toEqual(["Bess\uFFFD[31m\uFFFD\uFFFD and \uFFFD2J Zoë\t馬\n"]);
});

test("progress on the error stream still moves the cursor", () => {
  const { written, terminal } = caught();
  terminal.stderr.write("\r\u001B[2K");
  expect(written).toEqual(["\r\u001B[2K"]);
});

test("the width and whether it is a terminal are those of the stream; a pipe has none", () => {
  expect(caught(132).terminal.stdout).toMatchObject({ columns: 132, isTTY: true });
  expect(caught().terminal.stdout.isTTY).toBeUndefined();
  expect(caught().terminal.stdout.columns).toBeUndefined();
});
