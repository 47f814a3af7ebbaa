import type { Table } from "../../chart/Table.js";
import type { FootCase } from "../../derive/FootCase.js";
import { clusteredProportion } from "../../estimate/clusteredProportion.js";
import { grouped } from "../../study/grouped.js";
import type { Settings } from "../../study/Settings.js";
import type { Yard } from "../../study/Yard.js";

/**
 * Share of graded looks with thrush by ground, by bedding and by hours out, yards as clusters. A kind that one yard alone has, or fewer horses
 * than the minimum, gets no share: it cannot be told from the yard, or from chance. No table when no yard says anything of itself.
 *
 * @private
 */
export function groundTable(graded: readonly FootCase[], yards: readonly Yard[], { level, minimumHorses }: Settings): Table[] {
  const known = new Map(yards.map((yard) => [yard.yardId, yard]));
  const kinds: readonly [string, (yard: Yard) => string | null][] = [
    ["ground", ({ ground }) => ground],
    ["bedding", ({ bedding }) => bedding],
    ["hours out a day", ({ turnoutHours }) => hoursOut(turnoutHours)],
  ];
  const rows = kinds.flatMap(([kind, valueOf]) => {
    const groups = grouped(graded, ({ yardId }) => {
      const yard = known.get(yardId ?? "");
      return yard === undefined ? null : valueOf(yard);
    });
    return [...groups]
      .flatMap(([value, looks]) => (value === null ? [] : [{ kind, value, ...shareOf(looks, level, minimumHorses) }]))
      .sort((a, b) => (a.value < b.value ? -1 : 1));
  });
  if (rows.length === 0) return [];
  return [
    {
      caption:
        "Graded looks with thrush by what the yards have; several yards are needed to tell ground or bedding from the yard itself",
      columns: [
        { name: "kind", title: "What" },
        { name: "value", title: "Kind" },
        { name: "yards", title: "Yards" },
        { name: "horses", title: "Horses" },
        { name: "cases", title: "Looks with thrush" },
        { name: "n", title: "Looks" },
        { name: "estimate", title: "Share", percent: true },
        { name: "lower", title: "From", percent: true },
        { name: "upper", title: "To", percent: true },
      ],
      rows: rows.map(({ reason: _, ...row }) => row),
      greyed: rows.flatMap(({ reason }, row) => (reason === null ? [] : [{ row, reason }])),
    },
  ];
}

function hoursOut(hours: number | null): string | null {
  if (hours === null) return null;
  return hours < 12 ? "under 12" : hours < 24 ? "12 to 23" : "all day and night";
}

function shareOf(looks: readonly FootCase[], level: number, minimumHorses: number) {
  const yards = [...grouped(looks, ({ yardId }) => yardId).values()];
  const horses = new Set(looks.map(({ horseId }) => horseId)).size;
  const clusters = yards.map((rows) => ({ cases: rows.filter(({ thrush }) => thrush).length, n: rows.length }));
  const { cases, n, estimate, logitT } = clusteredProportion(clusters, { level });
  const base = { yards: yards.length, horses, cases, n };
  const reason =
    horses < minimumHorses ? `fewer than ${minimumHorses} horses` : yards.length < 2 ? "one yard alone has it" : null;
  return reason === null
    ? { ...base, estimate, ...logitT, reason }
    : { ...base, estimate: null, lower: null, upper: null, reason };
}
