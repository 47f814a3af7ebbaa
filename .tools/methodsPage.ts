import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";

const root = `${import.meta.dirname}/..`;

const rooms = [
  { folder: "derive", title: "Columns that are derived" },
  { folder: "estimate", title: "Estimates" },
  { folder: "simulate", title: "Simulation" },
];

function documented(file: string): { name: string; signature: string; comment: string }[] {
  const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.ES2022, true);
  return source.statements.filter(ts.isFunctionDeclaration).flatMap((node) => {
    const exported = node.modifiers?.some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword) ?? false;
    if (!exported || node.name === undefined || node.body === undefined) return [];
    const comment = ts
      .getJSDocCommentsAndTags(node)
      .map((doc) => doc.getText())
      .join("\n");
    if (comment.includes("@private")) return [];
    const signature = source.text
      .slice(node.getStart(), node.body.getStart())
      .trim()
      .replace(/^export /, "");
    return [{ name: node.name.text, signature, comment: plain(comment) }];
  });
}

function plain(comment: string): string {
  return comment
    .replace(/^\/\*\*+|\*\/$/g, "")
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, ""))
    .join("\n")
    .replace(/\{@link (\w+)\}/g, "`$1`")
    .trim();
}

/** The page docs/methods.md: every formula with its meaning, missing-value rule and source, collected from the doc comments. */
export function methodsPage(): string {
  const parts = rooms.map(({ folder, title }) => {
    const files = readdirSync(`${root}/src/${folder}`)
      .filter((name) => name.endsWith(".ts"))
      .sort();
    const entries = files.flatMap((name) => documented(`${root}/src/${folder}/${name}`));
    const body = entries.map(({ name, signature, comment }) => `### ${name}\n\n\`\`\`\n${signature}\n\`\`\`\n\n${comment}\n`);
    return `## ${title}\n\n${body.join("\n")}`;
  });
  const head = "# Methods\n\nCollected from the doc comments in the source by `npm run docs`; change them there.\n";
  return `${head}\n${parts.join("\n")}`;
}
