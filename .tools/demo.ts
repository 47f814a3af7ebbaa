import { join, resolve } from "node:path";
import { progressLine } from "../src/run/progressLine.js";
import { readNotebook } from "../src/run/readNotebook.js";
import { reviewFolder } from "../src/run/reviewFolder.js";
import { runNotebook } from "../src/run/runNotebook.js";
import { writeNotebook } from "../src/run/writeNotebook.js";
import { StudyError } from "../src/study/StudyError.js";

// The demo: the notebook through the real kernel, and the page, both of data-demo, into reports/. The kernel uses dist/, so build first.
const root = resolve(import.meta.dirname, "..");
process.chdir(root);

async function demo(): Promise<void> {
  const started = performance.now();
  const progress = progressLine(process.stderr);
  try {
    const notebook = await readNotebook("notebooks/season-review.ipynb");
    const run = await runNotebook(notebook, {
      folder: join(root, "notebooks"),
      onProgress: ({ cell, cells, firstLine }) => {
        progress.show(`Running the notebook: cell ${cell} of ${cells}: ${firstLine}`);
      },
    });
    progress.clear();
    for (const warning of run.warnings) process.stderr.write(`${warning.message}\n`);
    await writeNotebook("reports/season-review.ipynb", run.notebook);
    process.stdout.write(`Wrote reports/season-review.ipynb: ${run.cellsRun} cells run by the kernel\n`);
    await reviewFolder("data-demo", { out: "reports" }, process);
    process.stdout.write(`Took ${((performance.now() - started) / 1000).toFixed(1)} s. Open reports/season-review.html\n`);
  } finally {
    progress.clear();
  }
}

try {
  await demo();
} catch (fault) {
  if (!(fault instanceof StudyError)) throw fault;
  process.stderr.write(`${fault.message}\n${fault.hint}\n`);
  process.exitCode = 1;
}
