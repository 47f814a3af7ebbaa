import type { DataReport } from "../study/DataReport.js";
import type { Table } from "../chart/Table.js";

/**
 * What reading found, as tables: the files, where the records of each level went, and the faults by kind. The faulty cells
 * themselves are not among them, since a note may name people.
 *
 * @private
 */
export function reportTables(report: DataReport): Table[] {
  const { inputs, flow, counts } = report;
  const rowCounts = [
    { name: "read", title: "Read" },
    { name: "accepted", title: "Used" },
    { name: "setAside", title: "Set aside" },
  ];
  return [
    {
      caption: "Files",
      columns: [
        { name: "file", title: "File" },
        { name: "kind", title: "Holds" },
        ...rowCounts,
        { name: "sha256", title: "SHA-256, first 12 digits" },
      ],
      rows: inputs.map(({ file, kind, rowsRead, accepted, setAside, sha256 }) => ({
        file,
        kind,
        read: rowsRead,
        accepted,
        setAside,
        sha256: sha256.slice(0, 12),
      })),
    },
    {
      caption: "Records of the visits, at each level",
      columns: [{ name: "level", title: "Level" }, ...rowCounts],
      rows: [
        { level: "Feet at visits", ...flow.footVisits },
        { level: "Visits", ...flow.visits },
        { level: "Horses", ...flow.horses },
        { level: "Yards", ...flow.yards },
      ],
    },
    ...(counts.length === 0 ? [] : [faults(counts)]),
  ];
}

const costs = { set_aside: "row set aside", cell_blanked: "cell left empty", warning: "kept, look at it" } as const;

function faults(counts: DataReport["counts"]): Table {
  return {
    caption: "Faults found",
    columns: [
      { name: "code", title: "Fault" },
      { name: "file", title: "File" },
      { name: "column", title: "Column" },
      { name: "cost", title: "What it cost" },
      { name: "count", title: "Times" },
    ],
    rows: counts.map(({ code, file, column, severity, count }) => ({
      code: code.replaceAll("_", " "),
      file,
      column,
      cost: costs[severity],
      count,
    })),
  };
}
