import { demo } from "./demo.js";
import { fabric } from "./fabric.js";
import { gee } from "./gee.js";
import { libraryImport } from "./libraryImport.js";
import { nestedLogistic } from "./nestedLogistic.js";
import { longMutations } from "./longMutations.js";
import { notebookSpeed } from "./notebookSpeed.js";
import { outlines } from "./outlines.js";
import { readMillion } from "./readMillion.js";

// One line of JSON a figure. Give names to run only those: npm run bench -- readMillion gee
const print = (figure: object) => {
  console.log(JSON.stringify(figure));
};
const benchmarks: Readonly<Record<string, () => unknown>> = {
  demo: () => {
    print(demo());
  },
  libraryImport: () => {
    print(libraryImport());
  },
  fabric: async () => {
    print(await fabric());
  },
  notebookSpeed: async () => {
    print(await notebookSpeed());
  },
  readMillion: async () => {
    print(await readMillion());
    print(await readMillion(1_000_000, true));
    print(await readMillion(100_000));
    print(await readMillion(100_000, true));
  },
  mutations: async () => {
    print(await longMutations());
  },
  nestedLogistic: () => {
    nestedLogistic(print);
  },
  gee: () => {
    gee(print);
  },
  outlines: () => {
    outlines(print);
  },
};

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !Object.hasOwn(benchmarks, name));
if (unknown.length > 0) {
  console.error(`There is no benchmark ${unknown.join(", ")}. There are: ${Object.keys(benchmarks).join(", ")}.`);
  process.exit(2);
}
for (const [name, run] of Object.entries(benchmarks)) if (wanted.length === 0 || wanted.includes(name)) await run();
