import { effectOfExposure } from "../estimate/effectOfExposure.js";
import { forestChart } from "../chart/forestChart.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked } from "./climate/asked.js";
import { fewestMonths } from "./climate/fewestMonths.js";
import { fewestYards } from "./climate/fewestYards.js";
import { climateRows } from "./climate/climateRows.js";
import { effectTable } from "./climate/effectTable.js";
import { oddsWords } from "./climate/oddsWords.js";
import { counted } from "./words/counted.js";

const { id, question, notEnough } = asked("interval-length");

/** Thrush by days since the visit before, shod and bare feet apart. Unit: a foot at a visit. */
export function intervalLength(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const rows = climateRows(study).filter((row) => row.reason === "routine" || row.reason === null);
  const parts = (["bare", "shod"] as const).map((kind) => {
    const own = rows.filter((row) => row.shodFoot === kind && row.case !== null && row.intervalDays !== null);
    const horses = new Set(own.map((row) => row.horseId)).size;
    const model = {
      rows: rows.filter((row) => row.shodFoot === kind),
      outcome: "case",
      exposure: "intervalDays",
      per: 7,
      groups: ["yardId", "horseId"],
      minimumGroups: fewestYards,
      level,
    } as const;
    const adjust = [{ season: "visitDate" }, { column: "end", reference: "fore" }] as const;
    const held = new Set(own.map((row) => row.end)).size > 1 ? adjust : adjust.slice(0, 1);
    return { kind, horses, make: () => effectOfExposure({ ...model, adjust: held, method: "gee" }, { name: `${kind} feet` }) };
  });
  const enough = parts.filter(({ horses }) => horses >= minimumHorses);
  if (enough.length === 0)
    return notEnough(
      `Seen a second time with a grade: ${parts.map(({ kind, horses }) => `${counted(horses, "horse")} with ${kind} feet`).join(", ")}; ${minimumHorses} are needed.`,
    );
  const months = new Set(rows.filter((row) => row.case !== null && row.intervalDays !== null).map((row) => row.monthOfYear)).size;
  if (months < fewestMonths)
    return notEnough(
      `Second visits lie in ${counted(months, "month")} of the year; season can be told from the interval with ${fewestMonths} or more.`,
    );
  const effects = enough.map(({ make }) => make());
  const known = effects.filter(({ estimate }) => estimate !== null);
  if (known.length === 0) return notEnough(effects.map(({ name, note }) => `${name}: ${note ?? ""}`).join(" "));
  const n = effects.reduce((sum, effect) => sum + (effect.n ?? 0), 0);
  return {
    kind: "answer",
    id,
    question,
    sentence: `Per seven days longer since the visit before, the odds of thrush were ${known.map((effect) => `${oddsWords(effect)} times as high in ${effect.name}`).join(", ")}.`,
    tables: [effectTable(`Thrush (${caseWords(study.settings)}) by days since the visit before, routine visits`, effects, level)],
    charts: [
      forestChart(
        effects.map(({ name, estimate, lower, upper, n: feet }) => ({ label: name, estimate, lower, upper, n: feet })),
        {
          title: "Longer intervals and thrush, shod and bare apart",
          ratioTitle: "Odds ratio per 7 days",
          level,
          unit: "feet at visits",
        },
      ),
    ],
    cautions: [
      "Worse feet are given shorter intervals: a longer one can look harmless, or good, for that reason alone. Never a reason to change an interval.",
      "A hypothesis beside the declared one: exploratory unless it was declared by itself. Published effects differ in sign.",
      ...parts
        .filter(({ horses }) => horses < minimumHorses)
        .map(({ kind, horses }) => `${kind} feet: ${counted(horses, "horse")}, too few.`),
    ],
    method: {
      unit: "a foot at a visit, in its horse, in its yard",
      n,
      missing: rows.length - n,
      text: `Case: ${caseWords(study.settings)}. Estimating equations with season and hind or front held equal, shod and bare feet apart. ${known.map(({ name, method }) => `${name.slice(0, 1).toUpperCase()}${name.slice(1)}: ${method}.`).join(" ")}`,
      links: ["effectOfExposure", "footShoeing"],
    },
  };
}
