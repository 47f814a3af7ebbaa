import type { Table } from "../chart/Table.js";
import { growthRates } from "../derive/growthRates.js";

/** Published rates of growth with their sources, used where a herd has none of its own. @private */
export function publishedGrowthTable(): Table {
  return {
    caption: "Published growth of the wall, used where this herd has none of its own (abstracts read, not the tables)",
    columns: [
      { name: "mmPerDay", title: "mm a day", digits: 3 },
      { name: "animals", title: "Animals" },
      { name: "source", title: "Source" },
    ],
    rows: growthRates.published.map(({ mmPerDay, animals, source }) => ({ mmPerDay, animals, source })),
  };
}
