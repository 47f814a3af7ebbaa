import { prevalenceByBandChart } from "../chart/prevalenceByBandChart.js";
import type { FootCase } from "../derive/FootCase.js";
import { horsesGone } from "../derive/horsesGone.js";
import { rainBeforeVisits } from "../derive/rainBeforeVisits.js";
import { thrushCases } from "../derive/thrushCases.js";
import { EstimateError } from "../estimate/EstimateError.js";
import { type ShrunkenShare, type ShrunkenShares, shrunkenShares } from "../estimate/shrunkenShares.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { comparableTerms } from "./fair/comparableTerms.js";
import { sharesTable } from "./fair/sharesTable.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("horses-to-watch");
const SHOWN = 10;
const NAMED = 3;
/** Rain is allowed for when it is known before this share of the looks. */
const RAIN_KNOWN = 0.8;

/** Horses whose frogs are most to be expected to go off in wet weather, drawn towards the mean of all by how little is known of each. Unit: a graded look at a foot, in horses. */
export function horsesToWatch(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const cases = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = cases.filter(({ thrush }) => thrush !== null);
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (horses < settings.minimumHorses)
    return notEnough(tooFewHorses(horses, settings.minimumHorses, "a graded frog", "give no comparison"));
  const rained = withRain(study, graded);
  const fit = compare(rained, settings.level);
  if (fit instanceof EstimateError) return notEnough(`Horses cannot be compared: ${fit.message}`);
  const gone = horsesGone(study);
  const ranked = fit.shares
    .filter(({ group }) => !gone.has(group))
    .sort((a, b) => b.estimate - a.estimate || (a.group < b.group ? -1 : 1));
  const shown = ranked.slice(0, SHOWN);
  // None has a fair share of its own then: whichever ten were shown, they would be ten of many, and limits would be those of no difference.
  const apart = fit.sd > 0;
  const when =
    rained.wetFromMm === null ? null : `with ${rained.wetFromMm} mm or more in the ${daysInWords(rained.windowDays)} before`;
  return {
    kind: "answer",
    id,
    question,
    sentence: sentenceOf(ranked, fit, when),
    tables: !apart
      ? []
      : [
          sharesTable(shown, {
            caption: `Horses with the highest fair share of looks with thrush${when === null ? "" : `, ${when}`}; mean ${percentage(fit.overall)}`,
            group: "Horse",
            tooFew: () => null,
          }),
        ],
    charts: !apart
      ? []
      : [
          prevalenceByBandChart(
            shown.map(({ group, ...share }) => ({ band: group, ...share })),
            {
              title: `Thrush to be expected${when === null ? "" : ", wet ground"}: the ${counted(shown.length, "horse")} with the highest fair share`,
              bandTitle: "Horse",
              level: settings.level,
              unit: "looks",
              finding: "thrush",
              caseDefinition: caseWords(settings),
              intervalNote: `drawn towards the mean of all horses, ${percentage(fit.overall)}`,
            },
          ),
        ],
    cautions: [
      "What was recorded of a horse before is no certainty of what comes; a horse with few looks stands near the mean whatever it is like.",
      "No order of merit among horses whose intervals overlap. Why a horse's frogs go off is for the farrier in attendance and the vet.",
    ],
    method: {
      unit: "a graded look at a foot, feet and visits of a horse alike",
      n: fit.n,
      missing: cases.length - fit.n,
      text: `Case: ${caseWords(settings)}. Logistic regression on ${when === null ? "" : `rain of ${daysInWords(rained.windowDays)}, `}season and front or hind feet with a random intercept for each horse, exact maximum likelihood; ${counted(fit.shares.length, "horse")}. Fair share: what is expected of a horse were it seen on the ${when === null ? "looks of all" : "wettest third of all looks"}, drawn towards the mean by how little is known of it. Horses that are no longer there take part in the mean and are not listed.${rained.why}${fit.notes.length === 0 ? "" : ` ${fit.notes.join(" ")}`}`,
      links: ["shrunkenShares", "fitMixedLogistic", "rainBeforeVisits", "thrushCases"],
    },
  };
}

interface RainedLooks {
  readonly rows: readonly (FootCase & { readonly rainMm: number | null })[];
  readonly windowDays: number;
  /** Rain from which a look is among the wettest third; null when rain is not allowed for. */
  readonly wetFromMm: number | null;
  readonly why: string;
}

function withRain(study: Study, graded: readonly FootCase[]): RainedLooks {
  const windows = study.settings.rainWindowsDays;
  const windowDays = windows.find((days) => days >= 14) ?? windows.at(-1) ?? 14;
  const before = new Map(
    rainBeforeVisits(study).map((row) => [`${row.horseId}\n${row.visitDate}`, row[`rainMm${windowDays}d`] ?? null]),
  );
  const rows = graded.map((row) => ({ ...row, rainMm: before.get(`${row.horseId}\n${row.visitDate}`) ?? null }));
  const known = rows.flatMap(({ rainMm }) => rainMm ?? []).sort((a, b) => a - b);
  if (known.length < RAIN_KNOWN * rows.length || known[0] === known.at(-1)) {
    const why = ` Rain is not allowed for: it is known before ${known.length} of ${counted(rows.length, "look")}.`;
    return { rows, windowDays, wetFromMm: null, why };
  }
  return { rows, windowDays, wetFromMm: Math.round(known[Math.floor((2 * known.length) / 3)] ?? 0), why: "" };
}

function compare({ rows, wetFromMm }: RainedLooks, level: number): ShrunkenShares | EstimateError {
  const terms = comparableTerms(rows);
  const rain = wetFromMm === null ? [] : [{ column: "rainMm", per: 10 }];
  try {
    return shrunkenShares({
      ...{ rows, outcome: "thrush", group: "horseId", level, terms: [...rain, ...terms] },
      averagedOver: ({ rainMm }) => wetFromMm === null || (rainMm !== null && rainMm >= wetFromMm),
    });
  } catch (fault) {
    if (fault instanceof EstimateError) return fault;
    throw fault;
  }
}

function sentenceOf(ranked: readonly ShrunkenShare[], { overall, sd, level }: ShrunkenShares, when: string | null): string {
  const mean = `the mean of ${percentage(overall)} of looks${when === null ? "" : ` ${when}`}`;
  if (sd === 0) return `Horses differ in thrush by no more than chance would make them; all lie at ${mean}.`;
  const above = ranked.filter(({ lower }) => lower > overall);
  if (above.length === 0) return `No horse can be told from ${mean}.`;
  const named = above.slice(0, NAMED).map((share) => `${share.group}, ${howSure({ ...share, level })}`);
  const others =
    above.length > NAMED ? `; ${counted(above.length - NAMED, "more horse lies", "more horses lie")} above the mean too` : "";
  return `Most thrush, against ${mean}, is to be expected in ${listed(named)}${others}.`;
}
