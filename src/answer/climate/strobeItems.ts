import type { QuestionId } from "../asked.js";

/** One item of STROBE-Vet beside what the output holds of it. */
export interface StrobeItem {
  readonly item: string;
  readonly topic: string;
  /** Empty when the output holds nothing of it. */
  readonly output: string;
  readonly author: string;
}

type Row = readonly [item: string, topic: string, parts: readonly QuestionId[], author: string];

// Topics in our own words after Sargeant JM et al. (2016) J Vet Intern Med 30:1887-1895.
const rows: readonly Row[] = [
  ["1", "Title and abstract", [], "design in the title, a balanced summary"],
  ["2", "Background", [], "what is known, and why the question matters"],
  ["3", "Objectives, with the level of organisation of each", ["study-declaration"], "hypotheses, and why these"],
  ["4", "Study design", [], "how records came about"],
  ["5", "Setting at each level", ["study-records", "study-exposure"], "place, climate, dates of recruitment"],
  ["6", "Selection of owners, yards and animals", ["study-records"], "who was asked, who agreed, who was eligible"],
  ["7", "Variables, level of each, supposed causal structure", ["study-declaration"], "a causal diagram, and reasons for it"],
  ["8", "Data sources and measurement", ["study-exposure", "rain-sensitivity"], "who scored, blind or not; instruments; gauges"],
  ["9", "Bias", ["rain-sensitivity"], "efforts to keep it small at the time"],
  ["10", "Study size", ["detectable-effect"], "how the size came about"],
  ["11", "Quantitative variables", ["study-declaration", "rain-lag-and-shape"], "why this window and this step"],
  [
    "12",
    "Statistical methods, clustering, missing data, sensitivity",
    ["rain-effect", "rain-lag-and-shape", "rain-sensitivity"],
    "why these methods",
  ],
  ["13", "Participants at each level, and losses", ["study-records"], "reasons for refusal"],
  [
    "14",
    "Description, missing data, follow-up",
    ["study-records", "study-description"],
    "what the animals were like beside the records",
  ],
  ["15", "Outcome data", ["study-description"], ""],
  ["16", "Main results, crude and adjusted", ["rain-effect"], "what was held equal, and why"],
  [
    "17",
    "Other analyses",
    ["rain-lag-and-shape", "rain-sensitivity", "since-the-change", "horn-colour", "interval-length"],
    "which were planned",
  ],
  ["18", "Key results", [], "in words"],
  ["19", "Limitations", ["rain-sensitivity"], "direction and size of likely bias"],
  ["20", "Interpretation", [], "cautiously, beside other evidence"],
  ["21", "Generalisability", [], "to which animals and places"],
  ["22", "Funding, interests, ethics, consent", [], "all of it"],
];

/** The 22 items beside the parts that were run. */
export function strobeItems(ran: ReadonlySet<string>): StrobeItem[] {
  return rows.map(([item, topic, parts, author]) => ({
    item,
    topic,
    output: parts.filter((part) => ran.has(part)).join(", "),
    author: author === "" ? "wording" : author,
  }));
}
