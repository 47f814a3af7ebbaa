import { readdirSync, readFileSync } from "node:fs";
import * as library from "../src/index.js";
import type { Answer } from "../src/answer/Answer.js";
import type { Chart } from "../src/chart/Chart.js";
import type { Study } from "../src/study/Study.js";

const root = `${import.meta.dirname}/..`;

/** One question whose answer is drawn. */
export interface GalleryEntry {
  /** The call, as it stands in a cell. */
  readonly call: string;
  readonly question: string;
  /** Functions of src/chart that draw for it. */
  readonly drawnBy: readonly string[];
  readonly charts: readonly Chart[];
}

interface Asked {
  readonly answer: Answer;
  /** How the study stands in the call: whole, or cut to one horse. */
  readonly given: string;
}

/** The answer about the whole study, else about the first horse of the records; null when neither gives one. */
function answerOf(name: string, study: Study): Asked | null {
  const ask = (library as unknown as Record<string, unknown>)[name];
  if (typeof ask !== "function") return null;
  const horseId = study.visits[0]?.horseId ?? "";
  const ways: readonly [string, () => readonly unknown[]][] = [
    ["study", () => [study]],
    [`focusOn(study, { horseId: "${horseId}" })`, () => [library.focusOn(study, { horseId })]],
    [`study, "${horseId}"`, () => [study, horseId]],
  ];
  for (const [given, cut] of ways) {
    try {
      const answer = (ask as (...given: readonly unknown[]) => unknown)(...cut());
      if (typeof answer === "object" && answer !== null && "kind" in answer && answer.kind === "answer")
        return { answer: answer as Answer, given };
    } catch {
      // Asks for more than a study.
    }
  }
  return null;
}

/** Every answer of the library that draws something of this study, in the order of the file names. */
export function galleryEntries(study: Study): GalleryEntry[] {
  const names = readdirSync(`${root}/src/answer`)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => file.replace(/\.ts$/, ""));
  return names.flatMap((name) => {
    const source = readFileSync(`${root}/src/answer/${name}.ts`, "utf8");
    const drawnBy = [...source.matchAll(/from "\.\.\/chart\/(\w+Chart)\.js"/g)].flatMap(([, chart]) => chart ?? []);
    if (drawnBy.length === 0) return [];
    const asked = answerOf(name, study);
    if (asked === null || asked.answer.charts.length === 0) return [];
    const { answer, given } = asked;
    return [{ call: `await show(${name}(${given}));`, question: answer.question, drawnBy, charts: answer.charts }];
  });
}

/** File name of the picture of one chart of an entry. */
export function pictureName(entry: GalleryEntry, at: number): string {
  const name = /\((\w+)\(/.exec(entry.call)?.[1] ?? "chart";
  return `${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}${at === 0 ? "" : `-${at + 1}`}.png`;
}

/** The page docs/gallery.md. */
export function galleryPage(entries: readonly GalleryEntry[]): string {
  const section = (entry: GalleryEntry) => {
    const pictures = entry.charts.map(
      (chart, at) => `![${chart.title}](pictures/${pictureName(entry, at)})\n\n${chart.reading}\n`,
    );
    return `## ${entry.question}\n\n\`\`\`ts\n${entry.call}\n\`\`\`\n\n${pictures.join("\n")}\nDrawn by ${entry.drawnBy.map((name) => `\`${name}\``).join(", ")}.\n`;
  };
  const calls = [...new Set(entries.flatMap(({ call }) => /\((\w+)\(/.exec(call)?.[1] ?? []))];
  return `# Gallery

Every chart that an answer of the invented district in \`data-demo\` draws, with the call that made it. This page and its pictures are written by
\`npm run docs\`. In a notebook each is live: point at a mark to see its numbers.

\`\`\`ts
import { ${[...calls, "focusOn", "readStudy", "show"].sort().join(", ")} } from "underfoot";

const study = await readStudy("../data-demo");
\`\`\`

${entries.map(section).join("\n")}`;
}
