import { Ajv } from "ajv";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readStudy } from "../../src/read/readStudy.js";
import { toDataPackage } from "../../src/show/toDataPackage.js";
import { studyFrom } from "../read/folder.js";

const demo = "data-demo";
// The standard's own profile; where it comes from stands in tests/reference/README.md.
const profile = JSON.parse(readFileSync("tests/reference/data-package/datapackage-2.0.json", "utf8")) as object;
const validate = new Ajv({ strict: false, allErrors: true, validateFormats: false }).compile(profile);
const faultsOf = (descriptor: unknown) =>
  validate(descriptor) ? [] : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ""}`);

interface Resource {
  readonly name: string;
  readonly path: string;
  readonly bytes: number;
  readonly hash: string;
  readonly encoding: string;
  readonly dialect?: { readonly delimiter: string };
  readonly schema?: {
    readonly fields: readonly Readonly<Record<string, unknown>>[];
    readonly uniqueKeys?: readonly (readonly string[])[];
    readonly foreignKeys?: readonly { readonly fields: readonly string[]; readonly reference: { readonly resource: string } }[];
  };
}
const resourcesOf = (descriptor: Readonly<Record<string, unknown>>) => descriptor["resources"] as readonly Resource[];

test("the descriptor of the demo keeps to the profile of the standard, and its sums are those of the files", async () => {
  const descriptor = toDataPackage(await readStudy(demo));
  expect(faultsOf(descriptor)).toEqual([]);
  expect(faultsOf({ ...descriptor, resources: [] })).not.toEqual([]);
  expect(faultsOf({ ...descriptor, resources: [{ name: "x", path: "../x.csv" }] })).not.toEqual([]);
  for (const { path, bytes, hash } of resourcesOf(descriptor)) {
    const content = readFileSync(join(demo, path));
    expect([path, bytes, hash]).toEqual([path, content.length, `sha256:${createHash("sha256").update(content).digest("hex")}`]);
  }
  const visits = resourcesOf(descriptor).find(({ path }) => path === "visits.csv");
  const header = readFileSync(join(demo, "visits.csv"), "utf8").split(/\r?\n/)[0]?.split(",");
  expect(visits?.schema?.fields.map(({ name }) => name)).toEqual(header);
  expect(visits?.schema?.foreignKeys).toEqual([
    { fields: ["horse_id"], reference: { resource: "horses", fields: ["horse_id"] } },
  ]);
  expect(visits?.schema?.fields.find(({ name }) => name === "thrush_grade")).toMatchObject({
    type: "integer",
    constraints: { minimum: 0, maximum: 3 },
    missingValues: [{ value: "", label: "not recorded; never read as sound or zero" }],
  });
});

test("a file of another make is described as it lies there, and says what is done to its columns", async () => {
  const files = {
    visits: [
      {
        file: "Stall Buch.csv",
        ...{ delimiter: ";", encoding: "windows-1252", dates: "day-month-year", decimal: "," },
        columns: { visit_date: "Datum", horse_id: "Pferd", foot: "Huf", hoof_width_mm: { header: "Breite", unit: "cm" } },
      },
    ],
  };
  const study = await studyFrom({
    "study.json": JSON.stringify({ name: "M\u00fchle", files }),
    "Stall Buch.csv": "Datum;Pferd;Huf;Breite;Wetter\n7.3.2025;Ash;LF;12,4;x\n",
  });
  const descriptor = toDataPackage(study);
  expect(faultsOf(descriptor)).toEqual([]);
  expect(descriptor["name"]).toBe("muhle");
  const [, visits] = resourcesOf(descriptor);
  expect(visits).toMatchObject({ name: "stall-buch", encoding: "windows-1252", dialect: { delimiter: ";" } });
  expect(visits?.schema?.uniqueKeys).toBeUndefined();
  const [date, horse, , width, weather] = visits?.schema?.fields ?? [];
  expect(date).toMatchObject({ name: "Datum", type: "string", description: expect.stringContaining("day-month-year") as string });
  expect(horse).toMatchObject({ name: "Pferd", type: "string", constraints: { required: true } });
  expect(width).toMatchObject({ type: "string", description: expect.stringContaining("cm, times 10") as string });
  expect(weather).toMatchObject({ name: "Wetter", type: "any" });
});
