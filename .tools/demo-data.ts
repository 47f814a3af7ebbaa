import { mkdirSync, writeFileSync } from "node:fs";
import { demoSeed } from "../src/simulate/district/demoSeed.js";
import { simulateDistrict } from "../src/simulate/simulateDistrict.js";

const folder = `${import.meta.dirname}/../data-demo`;
mkdirSync(folder, { recursive: true });
for (const { path, text } of simulateDistrict({ seed: demoSeed }).files) writeFileSync(`${folder}/${path}`, text);
