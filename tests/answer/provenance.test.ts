import { expect, test } from "vitest";
import { provenance } from "../../src/answer/provenance.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

test("files with their checksums, every setting, and the day the review is made for", () => {
  const { report } = studyOf();
  const input = { file: "visits.csv", kind: "visits", bytes: 9, sha256: "abc", rowsRead: 2, accepted: 1, setAside: 1 } as const;
  const [inputs, settings, versions] = provenance(
    studyOf({ visits: [footVisit({ visitDate: "2025-02-03" })], report: { ...report, inputs: [input] } }),
  );
  expect(inputs?.rows).toEqual([{ file: "visits.csv", rowsRead: 2, accepted: 1, setAside: 1, sha256: "abc" }]);
  expect(settings?.rows).toContainEqual({ setting: "The review is made as of", value: "2025-02-03" });
  expect(settings?.rows).toContainEqual({ setting: "Rain before a visit is totalled over", value: "7, 14, 28 days" });
  expect(versions?.rows.map((row) => row["name"])).toEqual(["underfoot", "Node.js"]);
});
