import { unitConversions } from "../mapping/unitConversions.js";

/** A header without its unit. */
export interface HeaderMeaning {
  /** Lower case, words parted by one blank. */
  readonly words: string;
  /** The unit it names, as `study.json` names units; null: none. */
  readonly unit: string | null;
}

const UNITS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    Object.values(unitConversions).flatMap((units) => Object.keys(units).map((unit) => [unit.toLowerCase(), unit])),
  ),
  ...{ inch: "in", inches: "in", '"': "in", "\u2033": "in", millimetres: "mm", centimetres: "cm", metres: "m" },
  ...{ "\u00b0": "deg", degree: "deg", degrees: "deg", radians: "rad", hh: "hands", h: "hands" },
  ...{
    kgs: "kg",
    lbs: "lb",
    pounds: "lb",
    miles: "mi",
    wks: "weeks",
    wk: "weeks",
    week: "weeks",
    day: "days",
    c: "degC",
    f: "degF",
  },
  ...{ "\u00b0c": "degC", "\u00b0f": "degF" },
};
/** As the last word without brackets these are too short, or too much of a word of their own, to be a unit. */
const IN_BRACKETS_ONLY = new Set(["m", "h", "c", "f", "day", "week", '"']);

/** What a header says: its words, and the unit when it names one in brackets, behind a comma or a stroke, or as its last word. */
export function headerMeaning(header: string): HeaderMeaning {
  const text = header.normalize("NFC").trim().toLowerCase();
  const bracket = /[([{]\s*([^)\]}]*?)\s*[)\]}]\s*$/.exec(text) ?? /[,/]\s*([^\s,/]+)\s*$/.exec(text);
  const inBrackets = UNITS[bracket?.[1]?.replace(/\.$/, "") ?? ""];
  if (bracket !== null && inBrackets !== undefined) return { words: plain(text.slice(0, bracket.index)), unit: inBrackets };
  const words = plain(text);
  const last = /^(.+?)(?: ([a-z]+)| ?([\u00b0"\u2033][cf]?))$/.exec(words.replace(/\.$/, ""));
  const name = last?.[2] ?? last?.[3] ?? "";
  const unit = IN_BRACKETS_ONLY.has(name) && name !== '"' ? undefined : UNITS[name];
  return unit === undefined ? { words, unit: null } : { words: plain(last?.[1] ?? ""), unit };
}

function plain(text: string): string {
  return text.replace(/[\s_\-./:]+/g, " ").trim();
}
