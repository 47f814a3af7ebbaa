import type { Table } from "../chart/Table.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked, type QuestionId } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { provenance } from "./provenance.js";
import { seedOfAnswers } from "./seedOfAnswers.js";
import { counted } from "./words/counted.js";

const { id, question } = asked("rebuild");

/** What the numbers rest on: files with their checksums, settings, versions, seed, what was left out; and where each item of a report is found. */
export function rebuild(study: Study): Answer | NotEnoughData {
  const { inputs, flow } = study.report;
  if (inputs.length === 0) return { kind: "not_enough_data", id, question, reason: "The study was not read from files." };
  return {
    kind: "answer",
    id,
    question,
    sentence: `Every number comes again from ${counted(inputs.length, "file")} with the checksums below, the settings below, underfoot ${version} and the seed “${seedOfAnswers}”; of ${counted(flow.footVisits.read, "row")} of feet at visits ${flow.footVisits.accepted} were used and ${flow.footVisits.setAside} set aside.`,
    tables: [...provenance(study), flowTable(study), itemsTable()],
    charts: [],
    cautions: [
      "A changed file, setting or version may change numbers; the checksum tells whether a file is the same.",
      "Choices made before the figures were seen cannot be told from choices made after: write them down first.",
    ],
    method: {
      unit: "a row of a file",
      n: flow.footVisits.accepted,
      missing: flow.footVisits.setAside,
      text: `SHA-256 of the bytes of each file. Case: ${caseWords(study.settings)}. Whatever is resampled starts from the one seed, so that the same rows give the same limits. Items: numbers of STROBE-Vet (Sargeant JM et al. 2016 J Vet Intern Med 30:1887), in words of our own.`,
      links: ["readStudy", "thrushCases"],
    },
  };
}

function flowTable({ report: { flow } }: Study): Table {
  const rows: [string, keyof typeof flow][] = [
    ["feet at visits", "footVisits"],
    ["visits", "visits"],
    ["horses", "horses"],
    ["yards", "yards"],
  ];
  return {
    caption: "Rows read, used and set aside",
    columns: [
      { name: "what", title: "Counted in" },
      { name: "read", title: "Read" },
      { name: "accepted", title: "Used" },
      { name: "setAside", title: "Set aside" },
    ],
    rows: rows.map(([what, key]) => {
      const { read, accepted, setAside } = flow[key];
      return { what, read, accepted, setAside };
    }),
  };
}

/** Items of a report that records can fill; those of thought (background, meaning) are the writer's. */
const items: readonly { readonly item: string; readonly asks: string; readonly where: string; readonly from?: QuestionId }[] = [
  { item: "3", asks: "objectives, each with the level it is about", where: "the unit in the method of each answer" },
  { item: "5", asks: "setting: places and dates", where: "counts of visits, horses and feet", from: "feet-seen" },
  { item: "6", asks: "which animals came in, and how", where: "rows read, used and set aside, above" },
  { item: "7", asks: "outcome and exposure, level of each", where: "the case in the method of each answer; data dictionary" },
  {
    item: "8",
    asks: "how things were measured, and agreement",
    where: "observers beside each other",
    from: "observers-agreeing",
  },
  { item: "9", asks: "bias", where: "visits that come when feet are bad", from: "gaps-and-grades" },
  { item: "12", asks: "methods, clusters, missing values", where: "the method of each answer; methods page" },
  {
    item: "12, 16",
    asks: "how alike members of a cluster are",
    where: "likeness and design effect",
    from: "prevalence-by-level",
  },
  { item: "13", asks: "numbers at each stage", where: "rows read, used and set aside, above" },
  { item: "14", asks: "missing values of each variable", where: "looks without a grade and why", from: "missing-feet" },
  { item: "15", asks: "outcome counted", where: "shares counted four ways", from: "prevalence-by-level" },
  { item: "16", asks: "main result with its precision", where: "rain before the visit", from: "thrush-after-rain" },
  { item: "17", asks: "sensitivity", where: "bounds for looks without a grade", from: "missing-feet" },
  { item: "19", asks: "limitations", where: "the cautions of each answer; limitations page" },
];

function itemsTable(): Table {
  return {
    caption: "Where the items of a report are found",
    columns: [
      { name: "item", title: "Item" },
      { name: "asks", title: "Asks for" },
      { name: "where", title: "Found in" },
      { name: "from", title: "Question" },
    ],
    rows: items.map(({ item, asks, where, from }) => ({ item, asks, where, from: from ?? null })),
  };
}
