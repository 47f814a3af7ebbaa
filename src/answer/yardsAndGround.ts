import { asOfDate } from "../derive/asOfDate.js";
import { atLastVisit } from "../derive/atLastVisit.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { EstimateError } from "../estimate/EstimateError.js";
import { type ShrunkenShares, shrunkenShares } from "../estimate/shrunkenShares.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { comparableTerms } from "./fair/comparableTerms.js";
import { groundTable } from "./fair/groundTable.js";
import { sharesTable } from "./fair/sharesTable.js";
import { yardFunnel } from "./fair/yardFunnel.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";

const { id, question } = asked("yards-and-ground");

/** Yards compared fairly, and what they have by way of ground, bedding and hours out. Unit: a graded look at a foot, in horses, in yards. */
export function yardsAndGround(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const { level, minimumHorses } = settings;
  const cases = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = cases.filter(({ thrush, yardId }) => thrush !== null && yardId !== null);
  const horses = new Map(
    [...grouped(graded, ({ yardId }) => yardId ?? "")].map(([yardId, rows]) => [
      yardId,
      new Set(rows.map((row) => row.horseId)).size,
    ]),
  );
  const large = [...horses.values()].filter((count) => count >= minimumHorses).length;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (large < 2) {
    return notEnough(
      `${large === 0 ? "No yard has" : "One yard has"} ${minimumHorses} horses or more with a graded frog; a comparison needs two such yards.`,
    );
  }
  const fit = compare(graded, level);
  if (fit instanceof EstimateError) return notEnough(`Yards cannot be compared: ${fit.message}`);
  const horsesAt = (yardId: string) => horses.get(yardId) ?? 0;
  const tooFew = (yardId: string) => (horsesAt(yardId) < minimumHorses ? `fewer than ${minimumHorses} horses` : null);
  // A share put at the mean because yards do not differ has no limits of its own.
  const limits = fit.sd === 0 ? { lower: null, upper: null } : {};
  const shares = fit.shares.map((share) => ({ ...share, ...limits, horses: horsesAt(share.group) }));
  return {
    kind: "answer",
    id,
    question,
    sentence: sentenceOf({ ...fit, shares: fit.shares.filter(({ group }) => tooFew(group) === null) }),
    tables: [
      sharesTable(shares, {
        caption: `Yards by name: looks with thrush, and the share expected were all seen in the same season and feet (mean ${percentage(fit.overall)})`,
        group: "Yard",
        tooFew: ({ group }) => tooFew(group),
      }),
      ...groundTable(graded, study.yards, settings),
    ],
    charts: [yardFunnel(atLastVisit(cases, asOfDate(study)), settings)],
    cautions: [
      "No order of merit: yards differ in horses, work and ground, and one of several is always highest by chance.",
      "Ground, bedding and hours out were not shared out by lot; what goes with them need not come from them.",
      "One gauge, one entry for ground and one for bedding stand for a whole yard, whatever its fields and barns.",
    ],
    method: {
      unit: "a graded look at a foot, feet of a horse and horses of a yard alike",
      n: fit.n,
      missing: cases.length - fit.n,
      text: `Case: ${caseWords(settings)}. Fair share: logistic regression on season and front or hind feet with random intercepts for yards and horses in them, exact maximum likelihood; each yard drawn towards the mean by how little is known of it; ${counted(horses.size, "yard")}. The funnel has one look a horse, any foot at its last visit, with exact binomial limits. By ground: yards as clusters.${fit.notes.length === 0 ? "" : ` ${fit.notes.join(" ")}`}`,
      links: ["shrunkenShares", "funnelLimits", "fitMixedLogistic", "thrushCases"],
    },
  };
}

function compare(graded: readonly FootCase[], level: number): ShrunkenShares | EstimateError {
  const terms = comparableTerms(graded);
  try {
    return shrunkenShares({ rows: graded, outcome: "thrush", terms, group: "yardId", within: "horseId", level });
  } catch (fault) {
    if (fault instanceof EstimateError) return fault;
    throw fault;
  }
}

function sentenceOf({ shares, overall, sd, level }: ShrunkenShares): string {
  const mean = `the mean of ${percentage(overall)} of looks`;
  if (sd === 0) return `Yards differ in thrush by no more than chance would make them; all lie at ${mean}.`;
  const named = (list: ShrunkenShares["shares"]) =>
    listed(list.map((share) => `${share.group}, ${howSure({ ...share, level })}`));
  const above = shares.filter(({ lower }) => lower > overall);
  const below = shares.filter(({ upper }) => upper < overall);
  const rest = shares.length - above.length - below.length;
  if (rest === shares.length) return `No yard can be told from ${mean}, allowing for season and for front and hind feet.`;
  const parts = [
    above.length === 0 ? null : `more thrush than ${mean} went with ${named(above)}`,
    below.length === 0 ? null : `less than ${above.length === 0 ? mean : "the mean"} with ${named(below)}`,
  ].filter((part) => part !== null);
  const others = rest === 0 ? "" : ` ${counted(rest, "other yard")} cannot be told from the mean.`;
  return `Allowing for season and for front and hind feet, ${parts.join("; ")}.${others}`;
}
