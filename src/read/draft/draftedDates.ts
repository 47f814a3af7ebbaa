import { calendarDay } from "../mapping/calendarDay.js";
import type { DateOrder } from "../mapping/DateOrder.js";
import { quoted } from "../report/quoted.js";
import type { DraftColumn, DraftQuestion } from "./DraftColumn.js";
import type { SampleText } from "./SampleText.js";

const ORDERS = ["year-month-day", "day-month-year", "month-day-year"] as const satisfies readonly DateOrder[];
const ISO = /^\d{4}-\d{2}-\d{2}$/;
// Only to try an order: no year is proposed.
const SOME_CENTURY = 2000;

/**
 * How a date column is proposed to be read. An order is proposed only when a text of the column can be a day in no other order, or when all orders give the same day;
 * else it is asked. The century of two digits is always asked.
 */
export function draftedDates(texts: readonly SampleText[]): DraftColumn {
  if (texts.every(({ text }) => ISO.test(text))) {
    return {
      mapping: {},
      evidence: texts.length === 0 ? [] : ["all dates are year-month-day, such as 2024-03-05"],
      questions: [],
    };
  }
  const days = ORDERS.map((order) => ({ order, read: texts.map(({ text }) => calendarDay(text, order, SOME_CENTURY)) }));
  const good = (read: readonly (string | null)[]) => read.filter((day) => day !== null).length;
  const most = Math.max(...days.map(({ read }) => good(read)));
  const best = days.filter(({ read }) => good(read) === most);
  // Where several orders serve, as for names of months, the one that is written.
  const yearFirst = texts.every(({ text }) => /^\d{4}/.test(text));
  const first = best.find(({ order }) => (order === "year-month-day") === yearFirst) ?? best[0];
  if (first === undefined || most === 0) return asked("no order of day, month and year reads its dates", texts[0]);
  const same = best.every(({ read }) => read.every((day, index) => day === first.read[index]));
  if (!same) {
    const at = texts.findIndex((_, index) => best.some(({ read }) => read[index] !== first.read[index]));
    const both = best.map(({ order, read }) => `${read[at] ?? "no day"} by ${order}`).join(", ");
    return asked(`no date tells the order: ${quoted(texts[at]?.text ?? "")} is ${both}`, texts[at]);
  }
  const others = days.filter((each) => !best.includes(each));
  const against = others.map(({ read, order }) => ({
    order,
    at: texts.findIndex((_, index) => first.read[index] !== null && (read[index] === null || read[index] !== first.read[index])),
    only: texts.findIndex((_, index) => first.read[index] === null && read[index] !== null),
  }));
  const contradiction = against.find(({ only }) => only !== -1);
  if (contradiction !== undefined) {
    const text = texts[contradiction.only];
    return asked(
      `most dates can be ${first.order}, but ${quoted(text?.text ?? "")} (${text?.place ?? ""}) only ${contradiction.order}`,
      text,
    );
  }
  const proof =
    texts[texts.findIndex((_, index) => first.read[index] !== null && others.every(({ read }) => read[index] === null))];
  const evidence =
    others.length === 0 || proof === undefined
      ? `${first.order}: no date of the column can be read in two ways`
      : `${first.order}: ${quoted(proof.text)} (${proof.place}) is a day in no other order`;
  const short = texts.find(({ text }, index) => first.read[index] !== null && calendarDay(text, first.order, null) === null);
  return {
    mapping: { dates: first.order, ...(short === undefined ? {} : { twoDigitYearsFrom: null }) },
    evidence: [evidence],
    questions: short === undefined ? [] : [century(short)],
  };
}

function asked(why: string, example: SampleText | undefined): DraftColumn {
  const short = example !== undefined && /\D\d\d$|^\d\d\D/.test(example.text) && !/\d{4}/.test(example.text);
  const question = `which order do its dates have, day-month-year, month-day-year or year-month-day? ${why}`;
  return {
    mapping: { dates: null, ...(short ? { twoDigitYearsFrom: null } : {}) },
    evidence: [],
    questions: [{ path: "dates", question }, ...(short ? [century(example)] : [])],
  };
}

function century({ text, place }: SampleText): DraftQuestion {
  return {
    path: "twoDigitYearsFrom",
    question: `from which year on do years of two digits count, as in ${quoted(text)} (${place})? 2000 makes them 2000 to 2099`,
  };
}
