import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { readStudy } from "../src/read/readStudy.js";
import { toPng } from "../src/show/toPng.js";
import { galleryEntries, galleryPage, pictureName } from "./galleryPage.js";

// docs/gallery.md and its pictures, drawn from the demo data.
const folder = `${import.meta.dirname}/../docs/pictures`;
mkdirSync(folder, { recursive: true });
for (const file of readdirSync(folder)) if (file.endsWith(".png")) rmSync(`${folder}/${file}`);
const study = await readStudy(`${import.meta.dirname}/../data-demo`);
const entries = galleryEntries(study);
for (const entry of entries) {
  for (const [at, chart] of entry.charts.entries()) {
    const { png } = await toPng(chart, { scale: 1.5 });
    writeFileSync(`${folder}/${pictureName(entry, at)}`, png);
  }
}
writeFileSync(`${folder}/../gallery.md`, galleryPage(entries));
