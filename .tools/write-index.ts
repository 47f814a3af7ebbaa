import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { format, resolveConfig } from "prettier";

const root = `${import.meta.dirname}/..`;

const rooms = {
  study: "the words of the field",
  read: "text to records and issues",
  derive: "more columns",
  estimate: "numbers with their uncertainty",
  simulate: "herds whose truth is known",
  chart: "drawings of finished numbers",
  answer: "questions and answers",
  show: "notebook output, pages, tables",
  run: "notebooks run by the kernel",
};

/** The lines of a room: every file at its top whose doc comment is not marked `@private`. */
function linesOf(room: string): string[] {
  const files = readdirSync(`${root}/src/${room}`).filter((file) => file.endsWith(".ts"));
  return files.sort().flatMap((file) => {
    const text = readFileSync(`${root}/src/${room}/${file}`, "utf8");
    if (text.includes("@private")) return [];
    const from = `"./${room}/${file.replace(/\.ts$/, ".js")}";`;
    const values = namesIn(text, /^export (?:async )?(?:function\*?|const|class) (\w+)/gm);
    const types = namesIn(text, /^export (?:interface|type) (\w+)/gm);
    return [
      ...(values.length > 0 ? [`export { ${values.join(", ")} } from ${from}`] : []),
      ...(types.length > 0 ? [`export type { ${types.join(", ")} } from ${from}`] : []),
    ];
  });
}

function namesIn(text: string, pattern: RegExp): string[] {
  return [...text.matchAll(pattern)].flatMap(([, name]) => name ?? []);
}

const head = "// The public face of the library, grouped by stage. This file only re-exports; `npm run docs` writes it.\n";
const parts = Object.entries(rooms).map(([room, title]) => `\n// ${room}: ${title}\n${linesOf(room).join("\n")}\n`);
const path = `${root}/src/index.ts`;
const options = await resolveConfig(path);
writeFileSync(path, await format(head + parts.join(""), { ...options, filepath: path }));
