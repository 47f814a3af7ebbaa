import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import { settingsTable } from "./settingsTable.js";

/** What the numbers rest on, so that they can be made again: the files with their checksums, the settings, the versions. */
export function provenance(study: Pick<Study, "report" | "settings" | "visits">): Table[] {
  return [inputs(study), settingsTable({ ...study.settings, asOf: asOfDate(study) }), versions()];
}

function inputs({ report }: Pick<Study, "report">): Table {
  return {
    caption: "Files that were read",
    columns: [
      { name: "file", title: "File" },
      { name: "rowsRead", title: "Rows read" },
      { name: "accepted", title: "Used" },
      { name: "setAside", title: "Set aside" },
      { name: "sha256", title: "SHA-256 of the file" },
    ],
    rows: report.inputs.map(({ file, rowsRead, accepted, setAside, sha256 }) => ({ file, rowsRead, accepted, setAside, sha256 })),
  };
}

function versions(): Table {
  return {
    caption: "Versions",
    columns: [
      { name: "name", title: "Program" },
      { name: "version", title: "Version" },
    ],
    rows: [
      { name: "underfoot", version },
      { name: "Node.js", version: process.versions.node },
    ],
  };
}
