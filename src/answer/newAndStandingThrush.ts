import type { Table } from "../chart/Table.js";
import { thrushCases } from "../derive/thrushCases.js";
import { type ThrushChange, thrushChanges } from "../derive/thrushChanges.js";
import { type ThrushEpisode, thrushEpisodes } from "../derive/thrushEpisodes.js";
import { clusterBootstrap } from "../estimate/clusterBootstrap.js";
import { incidenceRate } from "../estimate/incidenceRate.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { seedOfAnswers } from "./seedOfAnswers.js";
import { type ClearTimes, timeToClear } from "./thrush/timeToClear.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { rounded } from "./words/rounded.js";
import { shortDate } from "./words/shortDate.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("new-and-standing-thrush");
const MONTH_DAYS = 365.25 / 12;
/** Graded visits running with thrush from which on a frog counts as one that does not clear. */
const STANDING = 3;

/** Episodes of thrush per foot: new, again, standing, and the time to clear. Unit: a foot; horses as clusters. */
export function newAndStandingThrush(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const cases = thrushCases(study);
  const changes = thrushChanges(cases);
  const horses = grouped(changes, ({ horseId }) => horseId);
  if (horses.size < minimumHorses) {
    const reason = tooFewHorses(
      horses.size,
      minimumHorses,
      "a frog that was graded at two visits",
      "tell nothing about frogs that turn",
    );
    return { kind: "not_enough_data", id, question, reason };
  }
  const feet = new Set(changes.map(({ horseId, foot }) => `${horseId}\n${foot}`)).size;
  const episodes = thrushEpisodes(cases);
  const turned = episodes.filter(({ kind }) => kind !== "from_the_start");
  const again = turned.filter(({ kind }) => kind === "again");
  const standing = episodes.filter(({ clearOn, visits }) => clearOn === null && visits >= STANDING);
  const rate = rateOf([...horses.values()], level);
  const clearing = timeToClear(episodes, level);
  const rateWords =
    rate === null
      ? ""
      : ` New cases came at ${withInterval(rate, (value) => rounded(value, 1))} in 100 months of a foot that was clear.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Of ${counted(feet, "foot", "feet")} graded at two visits or more, ${turnedWords(turned, again)}; ${standingWords(standing)}.${rateWords}${clearing === null ? "" : ` ${clearing.sentence}`}`,
    tables: [countsTable(episodes), ...(standing.length === 0 ? [] : [standingTable(standing)])],
    charts: clearing === null ? [] : [clearing.chart],
    cautions: [
      "A frog turned at some time between two visits, not on the day it was seen; what came and went in between was not seen.",
      "A frog that does not clear is for the farrier in attendance and the vet to judge; this counts records.",
    ],
    method: {
      unit: "a foot between two graded visits",
      n: changes.length,
      missing: cases.filter(({ missing }) => missing !== null && missing !== "specimen").length,
      text: methodOf(study, rate, clearing),
      links: ["thrushEpisodes", "thrushChanges", "clusterBootstrap", "kaplanMeier"],
    },
  };
}

function turnedWords(turned: readonly ThrushEpisode[], again: readonly ThrushEpisode[]): string {
  if (turned.length === 0) return "none went off after a clear visit";
  const feet = new Set(turned.map(({ horseId, foot }) => `${horseId}\n${foot}`)).size;
  const repeats = again.length === 0 ? "" : `, ${again.length} of those after an earlier bout had cleared`;
  return `${feet} went off after a clear visit (${counted(turned.length, "time")} in all${repeats})`;
}

function standingWords(standing: readonly ThrushEpisode[]): string {
  if (standing.length === 0) return `none has stood for ${STANDING} graded visits running`;
  return `${counted(standing.length, "foot has", "feet have")} had it at the last ${STANDING} graded visits or more`;
}

interface Rate {
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
  readonly limits: string;
}

/** New cases in 100 months at risk, with limits that let feet of one horse be alike; exact ones where no foot turned. */
function rateOf(horses: readonly (readonly ThrushChange[])[], level: number): Rate | null {
  const { events, months } = atRisk(horses.flat());
  if (months === 0) return null;
  if (events === 0) return { ...incidenceRate(0, months / 100, { level }), limits: "exact Poisson, since no foot turned" };
  // Events and months of a horse are added up once; each resample then adds up horses.
  const rate = clusterBootstrap(
    horses.map((changes) => [atRisk(changes)]),
    (drawn) => {
      const all = drawn.reduce((sum, horse) => ({ events: sum.events + horse.events, months: sum.months + horse.months }));
      return all.months === 0 ? null : (100 * all.events) / all.months;
    },
    { random: seededRandom(seedOfAnswers), replicates: 1000, level },
  );
  const limits = `${rate.replicates} resamples of whole horses, since feet of one horse are alike, seed “${seedOfAnswers}”`;
  return { ...rate, estimate: (100 * events) / months, limits };
}

/** Whole gaps of feet that stayed clear, half of those in which a foot turned. */
function atRisk(changes: readonly ThrushChange[]): { readonly events: number; readonly months: number } {
  const days = (change: ThrushChange["change"]) =>
    changes.filter((row) => row.change === change).reduce((sum, row) => sum + row.days, 0);
  return {
    events: changes.filter(({ change }) => change === "new").length,
    months: (days("clear") + days("new") / 2) / MONTH_DAYS,
  };
}

function countsTable(episodes: readonly ThrushEpisode[]): Table {
  const kinds: readonly [ThrushEpisode["kind"], string][] = [
    ["new", "new: the first after a clear visit"],
    ["again", "again: after an earlier bout had cleared"],
    ["from_the_start", "there at the first graded visit"],
  ];
  return {
    caption: "Bouts of thrush, by how they began and whether they were seen to clear",
    columns: [
      { name: "kind", title: "Bout" },
      { name: "bouts", title: "Bouts" },
      { name: "fore", title: "Front feet" },
      { name: "hind", title: "Hind feet" },
      { name: "cleared", title: "Seen clear later" },
      { name: "standing", title: "Not seen clear" },
    ],
    rows: kinds.map(([kind, words]) => {
      const of = episodes.filter((episode) => episode.kind === kind);
      const count = (test: (episode: ThrushEpisode) => boolean) => of.filter(test).length;
      return {
        kind: words,
        bouts: of.length,
        fore: count(({ end }) => end === "fore"),
        hind: count(({ end }) => end === "hind"),
        cleared: count(({ clearOn }) => clearOn !== null),
        standing: count(({ clearOn }) => clearOn === null),
      };
    }),
  };
}

function standingTable(standing: readonly ThrushEpisode[]): Table {
  const rows = [...standing].sort(
    (a, b) => b.visits - a.visits || b.worstGrade - a.worstGrade || (a.horseId < b.horseId ? -1 : 1),
  );
  return {
    caption: `Frogs with thrush at their last ${STANDING} graded visits or more`,
    columns: [
      { name: "horse", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "visits", title: "Visits running" },
      { name: "worst", title: "Worst grade" },
      { name: "began", title: "Began between" },
      { name: "lastSeen", title: "Last graded" },
    ],
    rows: rows.map(({ horseId, foot, visits, worstGrade, beganAfter, firstSeen, lastSeen }) => ({
      horse: horseId,
      foot: footInWords(foot),
      visits,
      worst: worstGrade,
      began:
        beganAfter === null
          ? `not known; there on ${shortDate(firstSeen)}`
          : `${shortDate(beganAfter)} and ${shortDate(firstSeen)}`,
      lastSeen: shortDate(lastSeen),
    })),
  };
}

function methodOf(study: Study, rate: Rate | null, clearing: ClearTimes | null): string {
  const limits = rate === null ? "" : ` Limits of the rate: ${rate.limits}.`;
  const cleared = clearing === null ? "" : ` ${clearing.method}`;
  return `Case: ${caseWords(study.settings)}. A bout is a run of graded visits with thrush; ungraded visits are passed over. Months at risk: between graded visits of a foot that was clear, half of the gap where it turned.${limits}${cleared}`;
}
