import { writeFileSync } from "node:fs";
import { dictionaryPage } from "./dictionaryPage.js";
import { methodsPage } from "./methodsPage.js";

const docs = `${import.meta.dirname}/../docs`;
writeFileSync(`${docs}/methods.md`, methodsPage());
writeFileSync(`${docs}/data-dictionary.md`, dictionaryPage());
