import { growthTimelineChart } from "../chart/growthTimelineChart.js";
import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { GrowthRates } from "../derive/growthRates.js";
import { markGrowth } from "../derive/markGrowth.js";
import { type MarkTimes, markTimes } from "../derive/markTimes.js";
import { type HerdGrowth, herdGrowth } from "../estimate/herdGrowth.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { publishedGrowthTable } from "./publishedGrowthTable.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { longDate } from "./words/longDate.js";
import { shortDate } from "./words/shortDate.js";

const { id, question } = asked("marks-on-the-wall");
const feet = (["LF", "RF", "LH", "RH"] as const).map(footInWords);
/** Horses with the most sightings get a drawing; asked of one horse it is that one. */
const DRAWN = 2;

interface Timed extends MarkTimes {
  readonly rates: GrowthRates;
  readonly ratesFrom: string;
}

/** When each mark began and when it will be out, as intervals of days. Unit: a mark that was followed. */
export function marksOnTheWall(study: Study): Answer | NotEnoughData {
  const asOf = asOfDate(study);
  const visits = study.visits.filter(({ visitDate }) => asOf === null || visitDate <= asOf);
  const { level, minimumHorses } = study.settings;
  const growth = herdGrowth(markGrowth({ visits, horses: study.horses }), { level, leastHorses: minimumHorses });
  const own = ownRates(growth);
  const marks = [...grouped(visits, ({ horseId }) => horseId)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([horseId, rows]) => {
      const rates = own.get(horseId) ?? growth.rates;
      const ratesFrom = own.has(horseId) ? "this horse" : growth.ratesFrom;
      return markTimes(rows, rates).map((mark): Timed => ({ ...mark, rates, ratesFrom }));
    });
  if (marks.length === 0) {
    const reason = "No ring or abscess track was measured from the hairline; without that distance no day can be given.";
    return { kind: "not_enough_data", id, question, reason };
  }
  const newest = [...marks].sort((a, b) => (a.seenOn < b.seenOn ? 1 : a.seenOn > b.seenOn ? -1 : 0))[0];
  const about =
    newest === undefined
      ? ""
      : ` Seen last: ${newest.horseId}, ${footInWords(newest.foot)}, ${kindWords(newest)} ${newest.belowCoronetMm} mm below the hairline on ${longDate(newest.seenOn)}; it began between ${longDate(newest.beganEarliest)} and ${longDate(newest.beganLatest)}.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${counted(marks.length, "mark")} on the walls of ${counted(new Set(marks.map(({ horseId }) => horseId)).size, "horse")}, each with the days between which it began.${about}`,
    tables: [timesTable(marks), publishedGrowthTable()],
    charts: timelines(marks),
    cautions: [
      "The day is an interval because walls grow at different rates; a single day would be a guess.",
      "The interval is that of the rate; an error of reading of 1 mm adds some 4 days at either end.",
      "A mark at the quarter or heel is out sooner than at the toe, for which the last day is given.",
      "An open, running or painful track is the vet's.",
    ],
    method: {
      unit: "a mark that was followed",
      n: marks.length,
      missing: visits.filter(
        ({ markKind, markBelowCoronetMm }) => markKind !== null && markKind !== "crack" && markBelowCoronetMm === null,
      ).length,
      text: `Day of the last sighting less the distance from the hairline over the rate of growth, slowest and fastest; on to the ground by what is left of the toe wall. Rates: of the horse where its own marks were followed, else ${growth.ratesFrom === "this herd" ? "what a horse of this herd may grow" : "the published range"}; growth is taken from distances below the hairline only, never from toe lengths. Missing: marks without a distance.`,
      links: ["markTimes", "markGrowth", "herdGrowth", "growthRates"],
    },
  };
}

function ownRates(growth: HerdGrowth): ReadonlyMap<string, GrowthRates> {
  return new Map(
    growth.ofHorses.flatMap(({ name, lower, upper }): [string, GrowthRates][] =>
      lower === null || upper === null || lower <= 0 ? [] : [[name, { slowestMmPerDay: lower, fastestMmPerDay: upper }]],
    ),
  );
}

function kindWords({ markKind }: Pick<MarkTimes, "markKind">): "ring" | "abscess track" {
  return markKind === "ring" ? "ring" : "abscess track";
}

function rateWords({ slowestMmPerDay, fastestMmPerDay }: GrowthRates): string {
  return `${slowestMmPerDay.toFixed(2)} to ${fastestMmPerDay.toFixed(2)}`;
}

function timesTable(marks: readonly Timed[]): Table {
  const day = (date: string | null) => (date === null ? null : shortDate(date));
  return {
    caption: "Marks on the wall: when they began, when they are out at the toe",
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "kind", title: "Mark" },
      { name: "seen", title: "Seen last" },
      { name: "below", title: "mm below the hairline" },
      { name: "beganEarliest", title: "Began, earliest" },
      { name: "beganLatest", title: "latest" },
      { name: "groundEarliest", title: "Out at the toe, earliest" },
      { name: "groundLatest", title: "latest" },
      { name: "rate", title: "Rate, mm a day" },
      { name: "ratesFrom", title: "Rate of" },
    ],
    rows: marks.map((mark) => ({
      ...{ horseId: mark.horseId, foot: footInWords(mark.foot), kind: kindWords(mark) },
      ...{ seen: shortDate(mark.seenOn), below: mark.belowCoronetMm },
      ...{ beganEarliest: day(mark.beganEarliest), beganLatest: day(mark.beganLatest) },
      ...{ groundEarliest: day(mark.groundEarliest), groundLatest: day(mark.groundLatest) },
      ...{ rate: rateWords(mark.rates), ratesFrom: mark.ratesFrom },
    })),
  };
}

function timelines(marks: readonly Timed[]) {
  const sightings = (rows: readonly Timed[]) => rows.reduce((sum, row) => sum + row.sightings.length, 0);
  const horses = [...grouped(marks, ({ horseId }) => horseId)].sort(
    ([a, one], [b, other]) => sightings(other) - sightings(one) || (a < b ? -1 : 1),
  );
  return horses.slice(0, DRAWN).map(([horseId, of]) => {
    const [first] = of;
    const rate = first === undefined ? "" : `${rateWords(first.rates)} mm a day, rate of ${first.ratesFrom}`;
    return growthTimelineChart(
      of.map((mark) => ({ ...mark, foot: footInWords(mark.foot), kind: kindWords(mark) })),
      { horseId, feet, rate },
    );
  });
}
