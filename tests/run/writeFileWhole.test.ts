import { spawn } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeFileWhole } from "../../src/run/writeFileWhole.js";
import { StudyError } from "../../src/study/StudyError.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

test("text and bytes arrive whole, in folders made on the way, and nothing is left beside them", async () => {
  const path = join(folder, "a", "b", "näme.txt");
  await writeFileWhole(path, "é\u2028\n");
  expect(readFileSync(path, "utf8")).toBe("é\u2028\n");
  await writeFileWhole(path, new Uint8Array([0, 255]));
  expect([...readFileSync(path)]).toEqual([0, 255]);
  expect(readdirSync(join(folder, "a", "b"))).toEqual(["näme.txt"]);
});

test.skipIf(process.platform === "win32")("permissions and symbolic links stay", async () => {
  const [path, link] = [join(folder, "real.txt"), join(folder, "link.txt")];
  writeFileSync(path, "old");
  chmodSync(path, 0o640);
  symlinkSync(path, link);
  await writeFileWhole(link, "new");
  expect(readFileSync(path, "utf8")).toBe("new");
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder).sort()).toEqual(["link.txt", "real.txt"]);
});

test("a path that cannot be written is told in words, and nothing is left behind", async () => {
  const target = join(folder, "taken");
  mkdirSync(target);
  const fault: unknown = await writeFileWhole(target, "x").catch((thrown: unknown) => thrown);
  expect(fault).toBeInstanceOf(StudyError);
  expect((fault as StudyError).code).toBe("cannot_write");
  expect((fault as StudyError).message).toContain(`${target} could not be written: it is a folder`);
  expect(readdirSync(folder)).toEqual(["taken"]);

  writeFileSync(join(folder, "file"), "old");
  await expect(writeFileWhole(join(folder, "file", "below.txt"), "x")).rejects.toThrow(/one of the folders on the way is a file/);
  expect(readFileSync(join(folder, "file"), "utf8")).toBe("old");
});

test("writers at the same time leave one of their contents, not a mixture", async () => {
  const path = join(folder, "shared.txt");
  const contents = ["a", "b", "c", "d"].map((letter) => letter.repeat(300_000));
  await Promise.all(contents.map((content) => writeFileWhole(path, content)));
  expect(contents).toContain(readFileSync(path, "utf8"));
  expect(readdirSync(folder)).toEqual(["shared.txt"]);
});

test("killed while it writes, the old file is whole", async () => {
  const [path, program] = [join(folder, "out.txt"), join(folder, "program.mjs")];
  writeFileSync(path, "old");
  // A process that replaces the file again and again with 20 MB of one letter, until it is killed.
  writeFileSync(
    program,
    `import { writeFileWhole } from ${JSON.stringify(join(import.meta.dirname, "../../src/run/writeFileWhole.ts"))};
     process.stdout.write("ready");
     for (let i = 0; ; i += 1) await writeFileWhole(process.argv[2], "ab"[i % 2].repeat(20_000_000));`,
  );
  const root = join(import.meta.dirname, "../..");
  const child = spawn(process.execPath, ["--import", "tsx", program, path], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  const ended = new Promise((resolve) => child.once("exit", resolve));
  await new Promise((resolve) => child.stdout.once("data", resolve));
  // Until its half-written file is seen.
  while (child.exitCode === null && !readdirSync(folder).some((name) => name.endsWith(".tmp"))) {
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  expect(child.exitCode, "it still writes").toBeNull();
  child.kill("SIGKILL");
  await ended;
  expect(existsSync(path)).toBe(true);
  const found = readFileSync(path, "utf8");
  expect(["old", "a".repeat(20_000_000), "b".repeat(20_000_000)].includes(found), `${found.length} characters`).toBe(true);
});
