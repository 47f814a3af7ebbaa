import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, readdirSync } from "node:fs";
import { once } from "node:events";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openFileWhole } from "../../src/run/openFileWhole.js";
import { folderWith } from "./folders.js";

const bytes = (text: string) => Buffer.from(text);

test("stands under its name only when it is finished, in folders that are made", () => {
  const folder = folderWith();
  const path = join(folder, "a", "b.txt");
  const file = openFileWhole(path);
  file.write(bytes("one"));
  file.write(bytes("x".repeat(3_000_000)));
  expect(readdirSync(join(folder, "a")).filter((name) => !name.endsWith(".tmp"))).toEqual([]);
  file.finish();
  file.discard();
  expect(readdirSync(join(folder, "a"))).toEqual(["b.txt"]);
  expect(readFileSync(path, "utf8")).toBe(`one${"x".repeat(3_000_000)}`);
});

test("an old file stays as it is when the new one is given up", () => {
  const folder = folderWith({ "a.txt": "old" });
  const file = openFileWhole(join(folder, "a.txt"));
  file.write(bytes("new"));
  file.discard();
  expect(readdirSync(folder)).toEqual(["a.txt"]);
  expect(readFileSync(join(folder, "a.txt"), "utf8")).toBe("old");
});

test("a place where nothing can be written is refused in words", () => {
  const folder = folderWith({ file: "" });
  expect(() => openFileWhole(join(folder, "file", "a.txt"))).toThrow("one of the folders on the way is a file");
  mkdirSync(join(folder, "a.txt"));
  const file = openFileWhole(join(folder, "a.txt"));
  expect(() => {
    file.finish();
  }).toThrow("it is a folder");
  expect(readdirSync(folder).sort()).toEqual(["a.txt", "file"]);
});

test("a process that is killed half-way leaves the old file whole", async () => {
  const folder = folderWith({ "a.txt": "old" });
  const source = new URL("../../src/run/openFileWhole.ts", import.meta.url).href;
  const script = `const { openFileWhole } = await import(${JSON.stringify(source)});
    const file = openFileWhole(${JSON.stringify(join(folder, "a.txt"))});
    process.stdout.write("writing\\n");
    for (;;) file.write(Buffer.alloc(1 << 20));`;
  const child = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "-e", script], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  await once(child.stdout, "data");
  await new Promise((resolve) => setTimeout(resolve, 100));
  child.kill("SIGKILL");
  await once(child, "exit");
  expect(readFileSync(join(folder, "a.txt"), "utf8")).toBe("old");
  expect(readdirSync(folder).filter((name) => !/^\..*\.tmp$/.test(name))).toEqual(["a.txt"]);
});
