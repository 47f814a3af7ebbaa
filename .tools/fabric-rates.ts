import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fabricChecks } from "../src/answer/fabricChecks.js";
import { type FabricCode, fabricCodes } from "../src/answer/fabricCodes.js";
import { clopperPearsonInterval } from "../src/estimate/clopperPearsonInterval.js";
import { seededRandom } from "../src/estimate/numeric/seededRandom.js";
import { readStudy } from "../src/read/readStudy.js";
import { simulateDistrict } from "../src/simulate/simulateDistrict.js";
import type { FootVisit } from "../src/study/FootVisit.js";
import type { Study } from "../src/study/Study.js";
import { plants } from "../tests/answer/fabric/plants.js";

// Writes the rates into docs/fabric.md: how often each check tells a fault that is not there, and one that is.
// npx tsx .tools/fabric-rates.ts [districts without a fault] [districts with one]
const [clean = 300, faulty = 60] = process.argv.slice(2).map(Number);
const page = "docs/fabric.md";
const codes = Object.keys(fabricCodes) as FabricCode[];

async function districtOf(seed: string): Promise<Study> {
  const folder = mkdtempSync(join(tmpdir(), "district-"));
  try {
    for (const { path, text } of simulateDistrict({ seed, faults: false }).files) writeFileSync(join(folder, path), text);
    return await readStudy(folder, { today: "2026-03-01" });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const coarse = (value: number | null, step: number) => (value === null ? null : step * Math.round(value / step));
const coarsely = (row: FootVisit): FootVisit => ({
  ...row,
  hoofWidthMm: coarse(row.hoofWidthMm, 2),
  hoofLengthMm: coarse(row.hoofLengthMm, 2),
  toeLengthMm: coarse(row.toeLengthMm, 2),
  heelHeightMm: coarse(row.heelHeightMm, 2),
  toeAngleDeg: coarse(row.toeAngleDeg, 1),
  heelAngleDeg: coarse(row.heelAngleDeg, 1),
  frogWidthMm: coarse(row.frogWidthMm, 2),
  frogLengthMm: coarse(row.frogLengthMm, 2),
  medialWallAngleDeg: coarse(row.medialWallAngleDeg, 1),
  lateralWallAngleDeg: coarse(row.lateralWallAngleDeg, 1),
});
const fifth = (study: Study): Study => {
  const kept = new Set(study.horses.filter((_, place) => place % 5 === 0).map(({ horseId }) => horseId));
  return {
    ...study,
    horses: study.horses.filter(({ horseId }) => kept.has(horseId)),
    visits: study.visits.filter(({ horseId }) => kept.has(horseId)),
  };
};

const herds: readonly { readonly title: string; readonly of: (study: Study) => Study }[] = [
  { title: "as simulated", of: (study) => study },
  { title: "read to 2 mm and whole degrees", of: (study) => ({ ...study, visits: study.visits.map(coarsely) }) },
  { title: "a fifth of the horses", of: fifth },
];

const alarms = new Map<string, number>();
const add = (key: string) => alarms.set(key, (alarms.get(key) ?? 0) + 1);
for (let run = 1; run <= clean; run++) {
  const study = await districtOf(`fabric ${run}`);
  if (study.report.issues.some(({ code }) => code === "not_equine_by_signs")) add("not_equine_by_signs");
  for (const { title, of } of herds) {
    const told = new Set(fabricChecks(of(study)).map(({ code }) => code));
    for (const code of told) add(`${title} ${code}`);
    if (told.size > 0) add(`${title} any`);
  }
}

const hits = new Map<FabricCode, { planted: number; found: number; elsewhere: number }>();
for (let run = 1; run <= faulty; run++) {
  const study = await districtOf(`fabric ${run}`);
  for (const code of codes) {
    const planted = plants[code](study, seededRandom(`${code} ${run}`));
    if (planted === null) continue;
    const told = fabricChecks(planted.study).filter((issue) => issue.code === code);
    const right = told.filter(({ message }) => planted.words.every((word) => message.includes(word)));
    const count = hits.get(code) ?? { planted: 0, found: 0, elsewhere: 0 };
    count.planted += 1;
    if (right.length > 0) count.found += 1;
    if (told.some(({ message }) => !message.includes(planted.words[0] ?? ""))) count.elsewhere += 1;
    hits.set(code, count);
  }
}

const percent = (share: number | null) => (100 * (share ?? NaN)).toFixed(1);
const rate = (cases: number, n: number) => {
  const { lower, upper } = clopperPearsonInterval(cases, n);
  return `${percent(cases / n)} (${percent(lower)}-${percent(upper)})`;
};
const rows = codes.map((code) => {
  const { planted, found, elsewhere } = hits.get(code) ?? { planted: 0, found: 0, elsewhere: 0 };
  const clear = herds.map(({ title }) => String(alarms.get(`${title} ${code}`) ?? 0));
  return `| \`${code}\` | ${clear.join(" | ")} | ${found} of ${planted} | ${rate(found, planted)} | ${elsewhere} |`;
});
const text = [
  `| code | ${herds.map(({ title }) => `false, ${title}`).join(" | ")} | found | % found (95 %) | also told elsewhere |`,
  `| --- | ${herds.map(() => "---:").join(" | ")} | ---: | ---: | ---: |`,
  ...rows,
  "",
  `Districts without a fault: ${clean} (seeds \`fabric 1\` to \`fabric ${clean}\`). Those with any false doubt: ` +
    `${herds.map(({ title }) => `${title} ${alarms.get(`${title} any`) ?? 0}, % ${rate(alarms.get(`${title} any`) ?? 0, clean)}`).join("; ")}. ` +
    `Rows of other animals set aside without reason: in ${alarms.get("not_equine_by_signs") ?? 0}.`,
  "",
  `Limits are exact (Clopper-Pearson). One fault of each kind was planted at a place drawn at random in each of ${faulty} districts.`,
].join("\n");
const marks = ["<!-- rates: npx tsx .tools/fabric-rates.ts -->", "<!-- end of rates -->"] as const;
const before = readFileSync(page, "utf8");
const [from, to] = [before.indexOf(marks[0]), before.indexOf(marks[1])];
if (from < 0 || to < from) throw new Error(`${page} lacks the marks of the rates`);
writeFileSync(page, `${before.slice(0, from)}${marks[0]}\n\n${text}\n\n${before.slice(to)}`);
process.stdout.write(`${text}\n`);
