import { fabricIssue } from "./fabricIssue.js";
import { quoted } from "../../read/report/quoted.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Source } from "../../study/Source.js";
import type { Study } from "../../study/Study.js";

/**
 * Names of horses, observers and yards that differ only in capitals, accents, spaces and marks, and are counted as two: their visits fall
 * apart, and a foot may stand twice.
 *
 * Source: own.
 */
export function spelledTwoWays({ visits, horses, yards }: Pick<Study, "visits" | "horses" | "yards">): Issue[] {
  return [
    ...twice("horse", "horse_id", [...visits, ...horses], ({ horseId }) => horseId),
    ...twice("observer", "observer_id", visits, ({ observerId }) => observerId),
    ...twice("yard", "yard_id", [...horses, ...yards], ({ yardId }) => yardId),
  ];
}

function twice<Row extends Source>(
  what: string,
  column: string,
  rows: readonly Row[],
  nameOf: (row: Row) => string | null,
): Issue[] {
  const names = [...grouped(rows, nameOf)].flatMap(([name, ofName]) => (name === null ? [] : [{ name, ofName }]));
  const alike = grouped(
    names.filter(({ name }) => plain(name) !== ""),
    ({ name }) => plain(name),
  );
  return [...alike.values()].flatMap((spellings) => {
    const [usual, ...others] = [...spellings].sort((a, b) => b.ofName.length - a.ofName.length || (a.name < b.name ? -1 : 1));
    const [first] = others[0]?.ofName ?? [];
    if (usual === undefined || first === undefined) return [];
    const counts = [usual, ...others].map(({ name, ofName }) => `${quoted(name)} in ${ofName.length} rows`);
    return [
      fabricIssue({
        file: first.file,
        line: first.line,
        column,
        code: "spelled_two_ways",
        found: `one ${what} seems to be spelled in ${counts.length} ways and counts as ${counts.length}: ${counts.join(", ")}`,
        hint: "Write the name in one way everywhere, unless they are different ones.",
      }),
    ];
  });
}

function plain(name: string): string {
  return (
    name
      .normalize("NFKD")
      .replace(/\p{M}/gu, "")
      // Between two digits a mark tells 1-2 from 12.
      .replace(/(?<!\d)[\p{P}\p{Z}\s]|[\p{P}\p{Z}\s](?!\d)/gu, "")
      .toLowerCase()
  );
}
