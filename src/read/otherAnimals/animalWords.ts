/**
 * Words that name an animal or a part that is no horse's, in a text; the first one found, null for none. `kind` words belong to the
 * description of an animal, `claw` words to a remark on a foot. Words that horse people use of horses are passed over: cow-hocked, a cow pony,
 * a working cow horse, and the plural, as in "field shared with cows".
 *
 * Source: common practice, no source.
 */
export function animalWords(text: string | null, kind: "claw" | "kind"): string | null {
  if (text === null) return null;
  return (kind === "claw" ? claws : kinds).exec(text)?.[0].toLowerCase() ?? null;
}

const cow = String.raw`cow(?![\s-]?(?:hock|pon|horse|work|sense|dog|parsley|barn|shed|field|pat))`;
const claws = new RegExp(
  String.raw`\b(?:${cow}|ox|heifer|bullock|bovine|claws?|cloven|dew-?claws?|inter-?digital|digital dermatitis|foul[\s-](?:in|of)[\s-]the[\s-]foot|sole ulcer|two-toed)\b`,
  "i",
);
const kinds = new RegExp(
  String.raw`\b(?:${cow}|ox|oxen|heifer|bullock|bull|steer(?! wrestl)|calf(?![\s-]?knee)|bovine|dairy cattle|beef cattle|sheep|ewe(?![\s-]?neck)|goat|pig|alpaca|llama|cloven)\b`,
  "i",
);
