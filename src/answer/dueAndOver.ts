import type { Table, TableColumn } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { DueDate, DueState } from "../derive/DueDate.js";
import { dueDates } from "../derive/dueDates.js";
import { requiredDay } from "../derive/requiredDay.js";
import { dateOfDay } from "../study/dateOfDay.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { dueStateInWords } from "./words/dueStateInWords.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { shortDate } from "./words/shortDate.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("due-and-over");
const week = 7;

/** Who is over, past and due, as of the day of the review. Unit: a horse that is there on that day. */
export function dueAndOver(study: Study): Answer | NotEnoughData {
  const asOf = asOfDate(study);
  const rows = dueDates(study);
  const dated = rows.filter((row) => row.daysLeft !== null && row.state !== "lost");
  if (asOf === null || dated.length === 0) {
    const reason =
      rows.length === 0
        ? "No horse has been recorded, or all have left."
        : `None of ${counted(rows.length, "horse")} has both a routine visit and an agreed interval.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const { toleranceDays } = study.settings;
  const of = (state: DueState) => dated.filter((row) => row.state === state);
  const within = (from: number, to: number) =>
    of("to_come").filter(({ daysLeft }) => daysLeft !== null && daysLeft >= from && daysLeft < to);
  const groups = { over: of("over"), past: of("past"), now: within(0, week), next: within(week, 2 * week) };
  const later = within(2 * week, Infinity);
  const dateless = rows.filter((row) => !dated.includes(row));
  const on = (days: number) => shortDate(dateOfDay(requiredDay(asOf) + days));
  const tables = [
    dueTable(`Over: past the date by more than ${daysInWords(toleranceDays)}`, groups.over),
    dueTable(`Past the date, by ${daysInWords(toleranceDays)} at most`, groups.past),
    dueTable(`Due this week, ${on(0)} to ${on(week - 1)}`, groups.now),
    dueTable(`Due next week, ${on(week)} to ${on(2 * week - 1)}`, groups.next),
    dueTable(`Due from ${on(2 * week)} on`, later),
    datelessTable(dateless),
  ];
  return {
    kind: "answer",
    id,
    question,
    sentence: sentenceOf(asOf, groups, [later.length, dateless.length], toleranceDays),
    tables: tables.filter((table) => table.rows.length > 0).map((table) => withoutLoneYard(table, rows)),
    charts: [],
    cautions: [
      "The list describes the diary. Farrier and owner agree the interval of each horse; a foot that is sore or lame does not wait for its date.",
    ],
    method: {
      unit: "a horse that is there on that day",
      n: dated.length,
      missing: dateless.length,
      text: `Date: last routine visit plus the days agreed at it, else the interval agreed for the horse. A lost shoe or a lame call does not move it. This week is the seven days from ${longDate(asOf)}. Horses that left are not listed; one without a routine visit for more than ${daysInWords(study.settings.lostAfterDays)} has no date.`,
      links: ["dueDates", "trimIntervals"],
    },
  };
}

interface Groups {
  readonly over: readonly DueDate[];
  readonly past: readonly DueDate[];
  readonly now: readonly DueDate[];
  readonly next: readonly DueDate[];
}

function sentenceOf(asOf: string, groups: Groups, [later, dateless]: readonly [number, number], toleranceDays: number): string {
  const { over, past, now, next } = groups;
  const named = over.map(({ horseId, daysLeft }) => `${horseId} (${counted(-(daysLeft ?? 0), "day")})`);
  const who = over.length === 0 ? "" : `: ${listed(named, 5)}`;
  const rest = `${counted(past.length, "more is", "more are")} past it by less`;
  return [
    `On ${longDate(asOf)} ${counted(over.length, "horse is", "horses are")} over the date by more than ${daysInWords(toleranceDays)}${who}; ${rest}.`,
    `${capital(counted(now.length, "falls", "fall"))} due in the seven days from then, ${counted(next.length, "in the seven after", "in the seven after")} and ${counted(later, "later", "later")}.`,
    ...(dateless === 0 ? [] : [`${capital(counted(dateless, "horse has", "horses have"))} no date.`]),
  ].join(" ");
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

const horseAndYard: readonly TableColumn[] = [
  { name: "horse", title: "Horse" },
  { name: "yard", title: "Yard" },
];

function dueTable(caption: string, rows: readonly DueDate[]): Table {
  const past = rows.some(({ daysLeft }) => daysLeft !== null && daysLeft < 0);
  return {
    caption,
    columns: [
      ...horseAndYard,
      { name: "dueOn", title: past ? "Was due" : "Due" },
      { name: "days", title: past ? "Days over" : "In days" },
      { name: "last", title: "Last routine visit" },
      { name: "interval", title: "Days agreed" },
    ],
    rows: rows.map((row) => ({
      horse: row.horseId,
      yard: row.yardId,
      dueOn: row.dueOn === null ? null : shortDate(row.dueOn),
      days: row.daysLeft === null ? null : Math.abs(row.daysLeft),
      last: row.lastRoutine === null ? null : shortDate(row.lastRoutine),
      interval: row.plannedDays,
    })),
  };
}

function datelessTable(rows: readonly DueDate[]): Table {
  return {
    caption: "Horses without a date",
    columns: [...horseAndYard, { name: "why", title: "Why" }, { name: "last", title: "Last seen" }],
    rows: rows.map((row) => ({
      horse: row.horseId,
      yard: row.yardId,
      why: dueStateInWords(row.state),
      last: row.lastSeen === null ? null : shortDate(row.lastSeen),
    })),
  };
}

/** A column that says the same in every row of the list tells nothing. */
function withoutLoneYard(table: Table, rows: readonly DueDate[]): Table {
  if (new Set(rows.map(({ yardId }) => yardId)).size > 1) return table;
  return { ...table, columns: table.columns.filter(({ name }) => name !== "yard") };
}
