import type { FootLook } from "../../derive/FootLook.js";
import type { FootVisit } from "../../study/FootVisit.js";

/**
 * What was recorded of a foot on one day, in a few words: the grade always where there is one, other findings only where they are not the usual
 * state (level bars, tight white line, tight shoe or bare). Clefts stand in brackets after the grade. A reason in free text is cut to 60 letters. A finding that is not named was not there or not written down.
 *
 * @private
 */
export function findingsInWords(look: FootLook | undefined): string | null {
  if (look === undefined || look.state === "not_said") return null;
  if (look.state === "not_seen")
    return look.notExaminedReason === null ? "not looked at" : `not looked at: ${cut(look.notExaminedReason)}`;
  const said = [thrush(look), ...new Set(look.rows.flatMap(rowFindings))].filter((text) => text !== null);
  return said.length === 0 ? "looked at" : said.join("; ");
}

const clefts = { central_sulcus: "central", medial_groove: "medial", lateral_groove: "lateral" } as const;
const mostLetters = 60;
const plain = (code: string) => code.replaceAll("_", " ");

function cut(text: string): string {
  const letters = Array.from(text);
  return letters.length <= mostLetters ? text : `${letters.slice(0, mostLetters - 1).join("")}…`;
}

function thrush({ grade, thrushSite }: FootLook): string | null {
  if (grade === null) return null;
  return thrushSite === null || grade === 0
    ? `thrush ${grade}`
    : `thrush ${grade} (${thrushSite.map((site) => clefts[site]).join(", ")})`;
}

function rowFindings(row: FootVisit): string[] {
  return [
    row.abscess === true ? "abscess" : null,
    crack(row),
    row.whiteLine === null || row.whiteLine === "tight" ? null : `white line ${row.whiteLine}`,
    row.bars === null || row.bars === "level" ? null : `bars ${row.bars}`,
    row.flareSite === null || row.flareSite.length === 0 ? null : `flare ${row.flareSite.join(", ")}`,
    mark(row),
    row.shoeState === null || row.shoeState === "tight" || row.shoeState === "bare" ? null : `shoe ${row.shoeState}`,
  ].filter((text) => text !== null);
}

function crack({ crackSite, crackFrom, crackLengthMm }: FootVisit): string | null {
  if ((crackSite === null || crackSite.length === 0) && crackFrom === null && crackLengthMm === null) return null;
  const length = crackLengthMm === null ? "" : ` ${crackLengthMm} mm`;
  return `${["crack", ...(crackSite ?? [])].join(" ")}${crackFrom === null ? "" : ` from ${crackFrom}`}${length}`;
}

function mark({ markKind, markBelowCoronetMm }: FootVisit): string | null {
  if (markKind === null || (markKind === "crack" && markBelowCoronetMm === null)) return null;
  return markBelowCoronetMm === null ? plain(markKind) : `${plain(markKind)} ${markBelowCoronetMm} mm below coronet`;
}
