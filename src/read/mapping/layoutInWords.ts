import type { FileLayout } from "../../study/DataReport.js";
import type { ColumnLayout } from "../table/columnLayout.js";
import { delimiterWord } from "../report/delimiterWord.js";
import type { Encoding } from "../text/Encoding.js";
import type { TableSource } from "./TableSource.js";

/** How a file was read by its mapping, for the report: what is not said there was read as it stands. */
export function layoutInWords({ delimiter, columns }: TableSource, layout: ColumnLayout, encoding: Encoding): FileLayout {
  const read = columns.flatMap(({ column, headers, constant, reading }, index) => {
    const name = column.name;
    const places = [...new Set(layout.records.map(({ at }) => at[index] ?? -1))].filter((at) => at !== -1);
    const found = places.map((at) => (layout.headers[at] ?? "").trim());
    if (constant !== undefined) return [{ column: name, headers: [], as: `always ${JSON.stringify(constant)}` }];
    if (found.length === 0 || (headers === null && reading === null && found.length === 1)) return [];
    return [{ column: name, headers: found, as: reading?.inWords ?? null }];
  });
  const kept = layout.extra.map(({ header }) => ({ column: null, headers: [header], as: "kept as it is" }));
  return { delimiter: delimiterWord(delimiter), encoding, recordsARow: layout.records.length, columns: [...read, ...kept] };
}
