import type { RandomSource } from "../../../src/estimate/numeric/RandomSource.js";
import { dayNumber } from "../../../src/study/dayNumber.js";
import type { FabricCode } from "../../../src/answer/fabricCodes.js";
import type { Foot } from "../../../src/study/Foot.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { grouped } from "../../../src/study/grouped.js";
import type { Study } from "../../../src/study/Study.js";

/** A study with one fault put into it, and words that the doubt about it must hold; null where the study has no place for it. */
export type Planted = { readonly study: Study; readonly words: readonly string[] } | null;

type Plant = (study: Study, random: RandomSource) => Planted;

const measures = [
  "hoofWidthMm",
  "hoofLengthMm",
  "toeLengthMm",
  "heelHeightMm",
  "toeAngleDeg",
  "heelAngleDeg",
  "frogWidthMm",
  "frogLengthMm",
  "medialWallAngleDeg",
  "lateralWallAngleDeg",
] as const satisfies readonly (keyof FootVisit)[];

const measured = (row: FootVisit) => row.hoofWidthMm !== null && row.toeAngleDeg !== null && row.foot.length === 2;
const key = ({ horseId, visitDate }: { readonly horseId: string; readonly visitDate: string }) => `${horseId}\n${visitDate}`;
const measuresOf = (row: FootVisit) => Object.fromEntries(measures.map((field) => [field, row[field]]));

/** Horse days on which all four feet were measured, of horses with two more such days, the horses in random order. */
function judgeableDays({ visits }: Study, random: RandomSource): FootVisit[][] {
  const days = grouped(visits.filter(measured), key);
  const whole = [...days.values()].filter((rows) => new Set(rows.map(({ foot }) => foot)).size === 4);
  const horses = [...grouped(whole, ([row]) => row?.horseId).values()].filter((ofHorse) => ofHorse.length >= 3);
  return horses
    .map((ofHorse) => ({ day: random.pick(ofHorse), at: random.uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ day }) => day);
}

/** The study with other rows of visits. */
export function edited(study: Study, edit: (row: FootVisit) => FootVisit): Study {
  return { ...study, visits: study.visits.map(edit) };
}

function relabelled(labels: Readonly<Partial<Record<Foot, Foot>>>): Plant {
  return (study, random) => {
    const [row] = judgeableDays(study, random)[0] ?? [];
    if (row === undefined) return null;
    const edit = (each: FootVisit) => (key(each) === key(row) ? { ...each, foot: labels[each.foot] ?? each.foot } : each);
    return { study: edited(study, edit), words: [row.horseId, row.visitDate] };
  };
}

function withSetOf(study: Study, random: RandomSource, edit: (rows: FootVisit[]) => readonly FootVisit[]): Planted {
  const day = judgeableDays(study, random)[0];
  const [first] = day ?? [];
  if (first === undefined) return null;
  const own = study.visits.filter((row) => key(row) === key(first) && row.stage === first.stage);
  const others = study.visits.filter((row) => !own.includes(row));
  return { study: { ...study, visits: [...others, ...edit(own)] }, words: [first.horseId, first.visitDate] };
}

const busiest = ({ visits }: Study) =>
  [...grouped(visits, ({ observerId }) => observerId)]
    .filter(([observerId]) => observerId !== null)
    .sort(([, a], [, b]) => b.length - a.length)[0]?.[0] ?? "";

const ofObserver = (study: Study, edit: (row: FootVisit) => FootVisit): Planted => {
  const observerId = busiest(study);
  return { study: edited(study, (row) => (row.observerId === observerId ? edit(row) : row)), words: [observerId] };
};

const otherEnd: Readonly<Partial<Record<Foot, Foot>>> = { LF: "LH", LH: "LF", RF: "RH", RH: "RF" };

/** The study with front and hind exchanged in the outlines of one horse and day. */
export function outlinesExchanged(study: Study, at: string): Study {
  const outlines = study.outlines.map((point) =>
    key(point) === at ? { ...point, foot: otherEnd[point.foot] ?? point.foot } : point,
  );
  return { ...study, outlines };
}

/** Horse days on which all four feet of a horse or pony were traced. */
export function tracedDays({ outlines, horses }: Pick<Study, "outlines" | "horses">): string[] {
  const others = new Set(
    horses.filter(({ species }) => species === "donkey" || species === "mule").map(({ horseId }) => horseId),
  );
  const days = grouped(
    outlines.filter(({ horseId }) => !others.has(horseId)),
    key,
  );
  return [...days].filter(([, points]) => new Set(points.map(({ foot }) => foot)).size === 4).map(([day]) => day);
}

/** One fault of each kind, at a place drawn at random. */
export const plants: Readonly<Record<FabricCode, Plant>> = {
  ends_swapped: relabelled({ LF: "LH", LH: "LF", RF: "RH", RH: "RF" }),
  sides_swapped: relabelled({ LF: "RF", RF: "LF", LH: "RH", RH: "LH" }),
  diagonals_swapped: relabelled({ LF: "RH", RH: "LF", RF: "LH", LH: "RF" }),
  outlines_against_ends(study, random) {
    const days = tracedDays(study);
    if (days.length === 0) return null;
    const day = random.pick(days);
    return { study: outlinesExchanged(study, day), words: day.split("\n") };
  },
  horses_swapped(study, random) {
    const yardOf = new Map(study.horses.map(({ horseId, yardId }) => [horseId, yardId]));
    const days = judgeableDays(study, random);
    for (const [a] of days) {
      const other = study.visits.find(
        (row) =>
          measured(row) &&
          row.visitDate === a?.visitDate &&
          row.stage === a.stage &&
          row.horseId !== a.horseId &&
          yardOf.get(row.horseId) === yardOf.get(a.horseId) &&
          days.some(([first]) => first?.horseId === row.horseId),
      );
      if (a === undefined || other === undefined) continue;
      const names = new Map([
        [a.horseId, other.horseId],
        [other.horseId, a.horseId],
      ]);
      const edit = (row: FootVisit) =>
        row.visitDate === a.visitDate ? { ...row, horseId: names.get(row.horseId) ?? row.horseId } : row;
      return { study: edited(study, edit), words: [a.horseId, other.horseId, a.visitDate] };
    }
    return null;
  },
  wall_sides_swapped(study, random) {
    const [row] = judgeableDays(study, random)[0] ?? [];
    if (row === undefined) return null;
    const edit = (each: FootVisit) =>
      key(each) === key(row)
        ? { ...each, medialWallAngleDeg: each.lateralWallAngleDeg, lateralWallAngleDeg: each.medialWallAngleDeg }
        : each;
    return { study: edited(study, edit), words: [row.horseId, row.visitDate] };
  },
  ends_reversed_throughout: (study) =>
    ofObserver(study, (row) => ({
      ...row,
      foot: ({ LF: "LH", LH: "LF", RF: "RH", RH: "RF", F: "H", H: "F" } as Partial<Record<Foot, Foot>>)[row.foot] ?? row.foot,
    })),
  mark_out_of_step(study, random) {
    const tracks = grouped(
      study.visits.filter((row) => row.markKind === "abscess_track" && row.markBelowCoronetMm !== null),
      ({ horseId, foot }) => `${horseId}\n${foot}`,
    );
    const twice = [...tracks.values()].flatMap(([before, after]) =>
      before === undefined || after === undefined || after.abscess === true ? [] : [[before, after] as const],
    );
    if (twice.length === 0) return null;
    const [before, after] = random.pick(twice);
    const days = (dayNumber(after.visitDate) ?? 0) - (dayNumber(before.visitDate) ?? 0);
    const markBelowCoronetMm = (before.markBelowCoronetMm ?? 0) + Math.round(0.5 * days) + 20;
    const edit = (row: FootVisit) => (row === after ? { ...row, markBelowCoronetMm } : row);
    return { study: edited(study, edit), words: [after.horseId, String(before.line)] };
  },
  unit_run(study, random) {
    const [row] = judgeableDays(study, random)[0] ?? [];
    if (row === undefined) return null;
    const edit = (each: FootVisit) =>
      key(each) === key(row) ? { ...each, toeLengthMm: each.toeLengthMm === null ? null : each.toeLengthMm / 10 } : each;
    return { study: edited(study, edit), words: [row.horseId, "centimetres"] };
  },
  heaped_digits: (study) =>
    ofObserver(study, (row) => ({
      ...row,
      toeAngleDeg: row.toeAngleDeg === null ? null : 5 * Math.round(row.toeAngleDeg / 5),
    })),
  copied_forward(study, random) {
    const histories = grouped(study.visits.filter(measured), ({ horseId, stage, foot }) => [horseId, stage, foot].join("\n"));
    const day = judgeableDays(study, random).find((rows) =>
      rows.every((row) => (histories.get([row.horseId, row.stage, row.foot].join("\n"))?.[0]?.visitDate ?? "9") < row.visitDate),
    );
    const [first] = day ?? [];
    if (first === undefined) return null;
    const before = (row: FootVisit) =>
      histories
        .get([row.horseId, row.stage, row.foot].join("\n"))
        ?.filter(({ visitDate }) => visitDate < row.visitDate)
        .at(-1);
    const edit = (row: FootVisit) => {
      const earlier = key(row) === key(first) ? before(row) : undefined;
      return earlier === undefined ? row : { ...row, ...measuresOf(earlier) };
    };
    return { study: edited(study, edit), words: [first.horseId, first.visitDate] };
  },
  same_rows_twice: (study, random) =>
    withSetOf(study, random, (rows) => [...rows, ...rows.map((row) => ({ ...row, observerId: "another" }))]),
  left_equals_right: (study, random) =>
    withSetOf(study, random, (rows) =>
      rows.map((row) => {
        const left = rows.find(({ foot }) => foot === row.foot.replace("R", "L"));
        return left === undefined ? row : { ...row, ...measuresOf(left) };
      }),
    ),
  same_rows_two_horses: (study, random) =>
    withSetOf(study, random, (rows) => [...rows, ...rows.map((row) => ({ ...row, horseId: "A stranger" }))]),
  spelled_two_ways(study, random) {
    const { horseId, visitDate } = random.pick(study.visits);
    const edit = (row: FootVisit) =>
      row.horseId === horseId && row.visitDate === visitDate ? { ...row, horseId: horseId.toUpperCase() } : row;
    return { study: edited(study, edit), words: [horseId, horseId.toUpperCase()] };
  },
  grades_never_vary: (study) =>
    ofObserver(study, (row) => ({ ...row, thrushGrade: row.thrushGrade === null ? null : 0, thrushSite: null })),
  grades_shift_with_observer: (study, random) =>
    ofObserver(study, (row) => ({
      ...row,
      thrushGrade: row.thrushGrade === 0 && random.bernoulli(0.4) ? 1 : row.thrushGrade,
    })),
  gauge_stuck(study, random) {
    const gauges = [...grouped(study.weather, ({ gaugeId }) => gaugeId).keys()];
    const gaugeId = random.pick(gauges);
    const wet = study.weather.filter((day) => day.gaugeId !== gaugeId && (day.rainMm ?? 0) >= 1);
    const from = dayNumber(random.pick(wet).date) ?? 0;
    const weather = study.weather.map((day) => {
      const at = (dayNumber(day.date) ?? 0) - from;
      return day.gaugeId === gaugeId && at >= 0 && at < 28 ? { ...day, rainMm: 0, flag: null } : day;
    });
    return { study: { ...study, weather }, words: [gaugeId] };
  },
  gauges_identical(study) {
    const [one, other] = [...grouped(study.weather, ({ gaugeId }) => gaugeId).keys()];
    const rain = new Map(study.weather.filter(({ gaugeId }) => gaugeId === one).map((day) => [day.date, day.rainMm]));
    const weather = study.weather.map((day) => (day.gaugeId === other ? { ...day, rainMm: rain.get(day.date) ?? null } : day));
    return one === undefined || other === undefined ? null : { study: { ...study, weather }, words: [one, other] };
  },
  visits_without_rain(study, random) {
    const gaugeId = random.pick(study.weather).gaugeId;
    const dates = [...new Set(study.weather.map(({ date }) => date))].sort();
    const from = random.integer(0, Math.floor(dates.length / 2));
    const gone = new Set(dates.slice(from, from + 90));
    return {
      study: { ...study, weather: study.weather.filter((day) => day.gaugeId !== gaugeId || !gone.has(day.date)) },
      words: [gaugeId],
    };
  },
};
