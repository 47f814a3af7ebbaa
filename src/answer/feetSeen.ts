import { examination } from "../derive/examination.js";
import { footSide } from "../derive/footSide.js";
import { grouped } from "../study/grouped.js";
import type { Foot } from "../study/Foot.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";

const { id, question } = asked("feet-seen");
const feet: readonly Foot[] = ["LF", "RF", "LH", "RH", "F", "H", "U", "LF_specimen", "RF_specimen", "LH_specimen", "RH_specimen"];

/** Counts of visits, horses and feet, and of feet not looked at with the reasons given. Unit: a foot at a visit. */
export function feetSeen(study: Study): Answer | NotEnoughData {
  if (study.visits.length === 0) return { kind: "not_enough_data", id, question, reason: "No foot has been recorded yet." };
  const all = [...footDays(study)];
  const rows = all.filter(({ foot }) => footSide(foot) !== null);
  const specimens = all.length - rows.length;
  if (rows.length === 0) {
    const reason = `No foot of a live horse is recorded.${specimenWords(specimens)}`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const seen = rows.filter((row) => row.state === "seen");
  const notSeen = rows.filter((row) => row.state === "not_seen");
  const notSaid = rows.length - seen.length - notSeen.length;
  const ofHorses = study.visits.filter(({ foot }) => footSide(foot) !== null);
  const horses = new Set(ofHorses.map((visit) => visit.horseId)).size;
  const visits = new Set(ofHorses.map((visit) => `${visit.horseId}\n${visit.visitDate}`)).size;
  const reasons = [...grouped(notSeen, (row) => row.reason ?? "no reason given")].map(([reason, of]) => ({
    reason,
    feet: of.length,
  }));
  reasons.sort((a, b) => b.feet - a.feet || (a.reason < b.reason ? -1 : 1));
  const why = listed(
    reasons.map((row) => `${row.reason} (${row.feet})`),
    4,
  );
  const left =
    notSeen.length === 0 ? "No foot was left out." : `${counted(notSeen.length, "foot was", "feet were")} not looked at: ${why}.`;
  const quiet = notSaid === 0 ? "" : ` For ${counted(notSaid, "foot", "feet")} the records do not say.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${counted(visits, "visit")} to ${counted(horses, "horse")}, ${counted(seen.length, "foot", "feet")} looked at. ${left}${quiet}${specimenWords(specimens)}`,
    tables: [byFoot(all), ...(reasons.length === 0 ? [] : [byReason(reasons)])],
    charts: [],
    cautions:
      notSeen.length + notSaid === 0
        ? []
        : ["A foot that was not looked at is not a sound foot; it is left out of every other figure."],
    method: {
      unit: "a foot at a visit",
      n: rows.length,
      missing: notSaid,
      text: "Counts. Rows of one foot on one day, before and after trimming, are one look. Looked at: said so, or any grade, measure or finding recorded.",
      links: ["examination"],
    },
  };
}

function specimenWords(specimens: number): string {
  if (specimens === 0) return "";
  return ` ${counted(specimens, "specimen is", "specimens are")} in no share of feet or horses, having no live horse, and ${specimens === 1 ? "counts" : "count"} for shape only.`;
}

interface FootDay {
  readonly foot: Foot;
  readonly state: ReturnType<typeof examination>;
  readonly reason: string | null;
}

function* footDays(study: Study): Generator<FootDay> {
  for (const rows of grouped(study.visits, (visit) => `${visit.horseId}\n${visit.visitDate}\n${visit.foot}`).values()) {
    const states = rows.map(examination);
    const state = states.includes("seen") ? "seen" : states.includes("not_seen") ? "not_seen" : "not_said";
    for (const { foot } of rows.slice(0, 1))
      yield { foot, state, reason: rows.map((row) => row.notExaminedReason).find((reason) => reason !== null) ?? null };
  }
}

function byFoot(rows: readonly FootDay[]): Answer["tables"][number] {
  const groups = grouped(rows, (row) => row.foot);
  return {
    caption: "Feet looked at, by foot",
    columns: [
      { name: "foot", title: "Foot" },
      { name: "seen", title: "Looked at" },
      { name: "notSeen", title: "Not looked at" },
      { name: "notSaid", title: "Not said" },
    ],
    rows: feet.flatMap((foot) => {
      const of = groups.get(foot);
      if (of === undefined) return [];
      const count = (state: FootDay["state"]) => of.filter((row) => row.state === state).length;
      return [{ foot: footInWords(foot), seen: count("seen"), notSeen: count("not_seen"), notSaid: count("not_said") }];
    }),
  };
}

function byReason(rows: readonly { readonly reason: string; readonly feet: number }[]): Answer["tables"][number] {
  return {
    caption: "Feet not looked at, by reason given",
    columns: [
      { name: "reason", title: "Reason" },
      { name: "feet", title: "Feet" },
    ],
    rows,
  };
}
