import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";

/** What the numbers rest on, so that they can be made again: the files with their checksums, the settings, the versions. */
export function provenance(study: Pick<Study, "report" | "settings" | "visits">): Table[] {
  return [inputs(study), settings(study), versions()];
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

function settings(study: Pick<Study, "settings" | "visits">): Table {
  const entries = Object.entries({ ...study.settings, asOf: asOfDate(study) });
  return {
    caption: "Settings in use",
    columns: [
      { name: "name", title: "Setting" },
      { name: "value", title: "Value" },
    ],
    rows: entries.map(([name, value]) => ({ name, value: Array.isArray(value) ? value.join(", ") : String(value) })),
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
