import { palette } from "./palette.js";

type Encoding = Readonly<Record<string, unknown>>;

/** The panels of one month axis, tied together: what is pointed at in one is lit in all. */
export interface LinkedMonths {
  /** Stands at the top of the specification. */
  readonly params: readonly Encoding[];
  /** The lowest layer of a panel: its name as given before, and its month axis. */
  readonly layerOf: (panel: string, x: Encoding) => Record<string, unknown>;
}

const selected = "pointedMonth";

/**
 * A band behind each month, invisible until the pointer is over that month in any of the panels, then lit in all of them. Each shows the
 * same tooltip, which so gives the numbers of all panels together. Without a pointer, as in a picture, nothing of it is seen.
 */
export function linkedMonths(panels: readonly string[], tooltip: readonly Encoding[]): LinkedMonths {
  return {
    params: [
      {
        name: selected,
        select: { type: "point", fields: ["month"], on: "mouseover", clear: "mouseout" },
        views: panels.map(viewOf),
      },
    ],
    layerOf: (panel, x) => ({
      name: viewOf(panel),
      mark: { type: "rect", color: palette.skyBlue },
      encoding: {
        x,
        opacity: { condition: { param: selected, empty: false, value: 0.25 }, value: 0 },
        tooltip,
      },
    }),
  };
}

function viewOf(panel: string): string {
  return `months_of_${panel}`;
}
