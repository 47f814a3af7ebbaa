import { writeFileSync } from "node:fs";
import { dictionaryPage } from "./dictionaryPage.js";
import { studySchema } from "../src/read/studySchema.js";
import { methodsPage } from "./methodsPage.js";

const docs = `${import.meta.dirname}/../docs`;
writeFileSync(`${docs}/methods.md`, methodsPage());
writeFileSync(`${docs}/data-dictionary.md`, dictionaryPage());
writeFileSync(`${docs}/study.schema.json`, `${JSON.stringify(await studySchema())}\n`);
