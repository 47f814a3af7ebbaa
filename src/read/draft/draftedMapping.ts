import type { ColumnMapping, FileMapping } from "../mapping/FileMapping.js";
import type { StudyDraft } from "../StudyDraft.js";
import { codeWord } from "../table/codeWord.js";
import type { Zod } from "../Zod.js";
import type { DraftColumn, DraftQuestion } from "./DraftColumn.js";
import { draftedDates } from "./draftedDates.js";
import { draftedNumbers } from "./draftedNumbers.js";
import { draftedWords } from "./draftedWords.js";
import type { Sample } from "./Sample.js";
import type { SampleText } from "./SampleText.js";
import type { MatchedColumn, TableMatch } from "./tableMatch.js";

/** A proposed mapping of files that are made alike. */
export interface DraftedMapping {
  readonly mapping: FileMapping;
  readonly evidence: StudyDraft["notes"][number]["evidence"];
  /** Paths are relative to the mapping. */
  readonly questions: readonly DraftQuestion[];
  /** Nothing but the name of the file needs to be said. */
  readonly plain: boolean;
}

const MOST_EXTRA = 20;
/** Headers of columns that name people or where they live; records of feet have no place for them. */
const PERSONAL =
  /owner|client|customer|keeper|phone|mobile|\btel\b|e-?mail|address|street|postcode|zip|besitzer|telefon|adresse/i;

/** How files with the same header, delimiter and encoding are proposed to be read, by what stands in all of them. */
export function draftedMapping(zod: Zod, samples: readonly [Sample, ...Sample[]], match: TableMatch): DraftedMapping {
  const [first] = samples;
  const evidence: string[] = [];
  const questions: DraftQuestion[] = [];
  const delimiter = first.delimiter === "\t" ? "tab" : (first.delimiter as ";" | "," | "|" | null);
  if (delimiter !== ",") evidence.push(first.delimiterEvidence);
  if (first.encodingEvidence !== null) evidence.push(first.encodingEvidence);
  if (samples.some(({ cut }) => cut)) evidence.push("it is long, and was judged by its first 20,000 lines");
  const columns: Record<string, string | ColumnMapping> = {};
  for (const column of match.columns) {
    const { mapping, ...found } = draftedColumn(zod, column, textsOf(samples, column.at));
    const { name } = column.column;
    const usual = match.feet === null ? name : `{foot}_${name}`;
    const own = codeWord(column.header) === codeWord(usual) || codeWord(column.header) === name;
    const whole = { ...(own ? {} : { header: column.header }), ...mapping };
    if (Object.keys(whole).length > 0) columns[name] = Object.keys(mapping).length === 0 ? column.header : whole;
    evidence.push(...(own ? [] : [`${name} from "${column.header}"`]), ...found.evidence.map((each) => `${name}: ${each}`));
    if (column.rivals.length > 0)
      evidence.push(`${name} could also be ${column.rivals.map((each) => `"${each}"`).join(", ")}, which is kept as it is`);
    questions.push(
      ...found.questions.map(({ path, question }) => ({
        path: `columns.${name}.${path}`,
        question: `"${column.header}": ${question}`,
      })),
    );
  }
  for (const { name, title } of match.lacking) {
    columns[name] = { value: null };
    const question = `no header names the ${title.toLowerCase()}: which is it in every row? Or give its "header" instead of "value"`;
    questions.push({ path: `columns.${name}.value`, question });
  }
  const single = match.strangers.filter((header) => !header.includes("{foot}"));
  const personal = single.filter((header) => PERSONAL.test(header));
  const extra = single.filter((header) => !personal.includes(header)).slice(0, MOST_EXTRA);
  if (extra.length > 0) evidence.push(`not recognised, kept beside the records: ${listed(extra)}`);
  if (personal.length > 0) evidence.push(`left out, since it may name people: ${listed(personal)}`);
  const unread = match.strangers.filter((header) => !personal.includes(header) && !extra.includes(header));
  if (unread.length > 0) evidence.push(`not recognised and not read: ${listed(unread)}`);
  const files = samples.map(({ file }) => file);
  const mapping: FileMapping = {
    file: files.length === 1 ? first.file : files,
    ...(delimiter === "," ? {} : { delimiter }),
    ...(first.encoding === null ? {} : { encoding: first.encoding }),
    ...(match.feet === null ? {} : { feet: feetOf(match.feet.spellings) }),
    ...(Object.keys(columns).length === 0 ? {} : { columns }),
    ...(extra.length === 0 ? {} : { extra }),
  };
  if (match.feet !== null) evidence.unshift(`one row a visit: ${footWords(match.feet.spellings)}`);
  return { mapping, evidence, questions, plain: Object.keys(mapping).length === 1 && files.length === 1 };
}

function draftedColumn(zod: Zod, { column, unit }: MatchedColumn, texts: readonly SampleText[]): DraftColumn {
  if (column.type === "date") return draftedDates(texts);
  const number = column.type === "number" || column.type === "integer";
  const form = number ? draftedNumbers(column, texts, unit) : { mapping: {}, evidence: [], questions: [] };
  const words = draftedWords(zod, column, texts, form.mapping);
  return {
    mapping: { ...form.mapping, ...words.mapping },
    evidence: [...form.evidence, ...words.evidence],
    questions: [...form.questions, ...words.questions],
  };
}

function textsOf(samples: readonly Sample[], at: readonly number[]): SampleText[] {
  const found = new Map<string, { text: string; count: number; place: string }>();
  for (const { file, rows } of samples) {
    for (const { cells, line } of rows) {
      for (const index of at) {
        const text = (cells[index] ?? "").trim();
        if (text === "") continue;
        const known = found.get(text);
        if (known === undefined)
          found.set(text, { text, count: 1, place: samples.length === 1 ? `line ${line}` : `${file}, line ${line}` });
        else known.count += 1;
      }
    }
  }
  return [...found.values()];
}

type Spellings = NonNullable<TableMatch["feet"]>["spellings"];

function feetOf(spellings: Spellings): NonNullable<FileMapping["feet"]> {
  return Object.fromEntries(Object.entries(spellings).map(([foot, spelt]) => [foot, spelt.length === 1 ? spelt[0] : spelt]));
}

function footWords(spellings: Spellings): string {
  return Object.entries(spellings)
    .map(([foot, spelt]) => `${foot} is ${spelt.map((each) => `"${each}"`).join(" or ")}`)
    .join(", ");
}

function listed(headers: readonly string[]): string {
  return headers.map((each) => `"${each}"`).join(", ");
}
