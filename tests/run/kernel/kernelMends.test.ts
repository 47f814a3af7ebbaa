import { execFileSync } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { kernelMends } from "../../../src/run/kernel/kernelMends.js";
import { root } from "../../repository/trackedFiles.js";

// Below the project, so that the messaging library is found as the kernel finds it.
const folder = join(root, "reports", "mends-test");
const program = join(folder, "kernel.cjs");
const start = join(folder, "start.cjs");

beforeAll(() => {
  mkdirSync(folder, { recursive: true });
  writeFileSync(start, kernelMends());
  // What the kernel does: it binds, and does not wait before it answers.
  writeFileSync(
    program,
    `const { Publisher, Router } = require("zeromq");
    (async () => {
      for (const kind of [Publisher, Router]) {
        const socket = new kind();
        const bound = socket.bind("tcp://127.0.0.1:*");
        await socket.send(["early", "answer"]).catch((fault) => {
          // Nobody is there to be answered, which is another matter.
          if (!/unreachable/i.test(fault.message)) throw fault;
        });
        await bound;
        socket.close();
      }
      console.log("sent", ...process.argv.slice(2));
    })().catch((fault) => console.log(fault.message));`,
  );
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const said = (...programs: readonly string[]) => execFileSync(process.execPath, [...programs, "kernel"], { encoding: "utf8" });

test("an answer that is sent while its socket is being bound waits for it; without the mends it is refused", () => {
  expect(said(program)).toBe("Socket is blocked by a bind or unbind operation\n");
  expect(said(start, program)).toBe("sent kernel\n");
});
