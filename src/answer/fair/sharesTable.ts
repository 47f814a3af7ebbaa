import type { Table } from "../../chart/Table.js";
import type { ShrunkenShare } from "../../estimate/shrunkenShares.js";

/** A share with its limits, which are null where groups differ by no more than chance. */
interface FairShare extends Omit<ShrunkenShare, "lower" | "upper"> {
  readonly lower: number | null;
  readonly upper: number | null;
  readonly horses?: number;
}

/** Groups with what was counted and the share expected of them, the raw share never alone; small groups greyed. @private */
export function sharesTable(
  shares: readonly FairShare[],
  words: { readonly caption: string; readonly group: string; readonly tooFew: (share: FairShare) => string | null },
): Table {
  const counted = shares.some(({ horses }) => horses !== undefined);
  return {
    caption: words.caption,
    columns: [
      { name: "group", title: words.group },
      ...(counted ? [{ name: "horses", title: "Horses" }] : []),
      { name: "cases", title: "Looks with thrush" },
      { name: "n", title: "Graded looks" },
      { name: "estimate", title: "Fair share", percent: true },
      { name: "lower", title: "From", percent: true },
      { name: "upper", title: "To", percent: true },
    ],
    rows: shares.map((share) => ({ ...share })),
    greyed: shares.flatMap((share, row) => {
      const reason = words.tooFew(share);
      return reason === null ? [] : [{ row, reason }];
    }),
  };
}
