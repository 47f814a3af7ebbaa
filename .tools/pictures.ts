import { mkdirSync, writeFileSync } from "node:fs";
import { thrushByMonth } from "../src/answer/thrushByMonth.js";
import { readStudy } from "../src/read/readStudy.js";
import { toPng } from "../src/show/toPng.js";

// The pictures of the pages, drawn from the demo data.
const folder = `${import.meta.dirname}/../docs/pictures`;
mkdirSync(folder, { recursive: true });
const study = await readStudy(`${import.meta.dirname}/../data-demo`);
const answer = thrushByMonth(study);
if (answer.kind !== "answer" || answer.charts[0] === undefined) throw new Error("The demo data give no chart by month.");
const { png } = await toPng(answer.charts[0], { scale: 2 });
writeFileSync(`${folder}/rain-and-thrush.png`, png);
