import { asOfDate } from "../derive/asOfDate.js";
import { stayAt } from "../derive/stayAt.js";
import { nearestName } from "../study/nearestName.js";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";
import type { Focus } from "./Question.js";
import { listed } from "./words/listed.js";

const keys: readonly string[] = ["horseId", "yardId", "asOf"] satisfies readonly (keyof Focus)[];

/**
 * The study cut to what a question is asked about: one horse, one yard, or both, as things stood on a day.
 *
 * Of a yard: its horses for the days of their stays there, the rows of those days, its gauge, its changes; nothing of any other
 * yard is left, so that no answer can name one. A stay that was never ended closes on the day a later one elsewhere begins. A horse whose
 * yard is not known belongs to none. Of a horse: its stays and rows.
 * As of a day, of the focus or else `asOfDate` of the whole study: rows, readings, stays and changes up to that day. The data report
 * keeps its files; faults are left out of a study cut to a horse or yard, since they quote other rows.
 *
 * @throws StudyError `unknown_horse`, `unknown_yard`, `not_a_date`, `unknown_focus` for a misspelt field, which would leave the study whole.
 */
export function focusOn(study: Study, focus: Focus = {}): Study {
  const asOf = focus.asOf ?? asOfDate(study);
  if (asOf !== null && dayNumber(asOf) === null)
    throw new StudyError("not_a_date", `${asOf} is no calendar day.`, "Write the day as YYYY-MM-DD, such as 2026-02-28.");
  const odd = Object.keys(focus).find((key) => !keys.includes(key));
  if (odd !== undefined)
    throw new StudyError("unknown_focus", `A question is not asked by ${odd}.`, `Name one of ${keys.join(", ")}.`);
  const known = asOf === null ? study : knownOn(study, asOf);
  const { horseId, yardId } = focus;
  if (horseId !== undefined) requireName("horse", horseId, horsesOf(study));
  if (yardId !== undefined) requireName("yard", yardId, yardsOf(study));
  if (horseId === undefined && yardId === undefined) return known;
  const ofHorse = horseId === undefined ? known : onlyHorse(known, horseId);
  const cut = yardId === undefined ? ofHorse : onlyYard(ofHorse, yardId);
  return { ...cut, report: { ...cut.report, issues: [], counts: [] } };
}

function knownOn(study: Study, day: string): Study {
  return {
    ...study,
    settings: { ...study.settings, asOf: day },
    visits: study.visits.filter(({ visitDate }) => visitDate <= day),
    horses: study.horses.filter(({ joinedOn }) => joinedOn === null || joinedOn <= day),
    changes: study.changes.filter(({ changedOn }) => changedOn <= day),
    weather: study.weather.filter(({ date }) => date <= day),
    outlines: study.outlines.filter(({ visitDate }) => visitDate <= day),
  };
}

function onlyHorse(study: Study, horseId: string): Study {
  const own = (row: { readonly horseId: string }) => row.horseId === horseId;
  return {
    ...study,
    visits: study.visits.filter(own),
    horses: study.horses.filter(own),
    outlines: study.outlines.filter(own),
  };
}

function onlyYard(study: Study, yardId: string): Study {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const there = ({ horseId, visitDate }: { readonly horseId: string; readonly visitDate: string }) =>
    stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId === yardId;
  const own = (row: { readonly yardId: string | null }) => row.yardId === yardId;
  const yards = study.yards.filter(own);
  const gauges = new Set(yards.map(({ gaugeId }) => gaugeId));
  return {
    ...study,
    visits: study.visits.filter(there),
    horses: study.horses.filter(own).map((stay) => ended(stay, stays.get(stay.horseId) ?? [])),
    yards,
    changes: study.changes.filter(own),
    weather: study.weather.filter(({ gaugeId }) => gauges.has(gaugeId)),
    ...(study.gauges === undefined ? {} : { gauges: study.gauges.filter(({ gaugeId }) => gauges.has(gaugeId)) }),
    outlines: study.outlines.filter(there),
  };
}

/** The stay, ended where a later one elsewhere takes the horse away for good. */
function ended(stay: HorseStay, all: readonly HorseStay[]): HorseStay {
  const away = all
    .filter(({ yardId, joinedOn, leftOn }) => {
      const later = joinedOn !== null && joinedOn > (stay.joinedOn ?? "") && joinedOn < (stay.leftOn ?? "9999");
      return later && yardId !== stay.yardId && (leftOn ?? "9999") >= (stay.leftOn ?? "9999");
    })
    .flatMap(({ joinedOn }) => joinedOn ?? [])
    .sort();
  return away[0] === undefined ? stay : { ...stay, leftOn: away[0] };
}

function horsesOf(study: Study): Set<string> {
  return new Set([...study.horses, ...study.visits].map(({ horseId }) => horseId));
}

function yardsOf(study: Study): Set<string> {
  return new Set([...study.yards, ...study.horses].flatMap(({ yardId }) => yardId ?? []));
}

function requireName(kind: "horse" | "yard", name: string, known: ReadonlySet<string>): void {
  if (known.has(name)) return;
  const nearest = nearestName(name, known);
  const hint = nearest === null ? `The study names ${listed([...known].sort())}.` : `Did you mean ${nearest}?`;
  throw new StudyError(`unknown_${kind}`, `There is no ${kind} ${name} in this study.`, hint);
}
