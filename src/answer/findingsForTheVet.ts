import { type VetFlag, vetFlags } from "../derive/vetFlags.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { longDate } from "./words/longDate.js";
import { shortDate } from "./words/shortDate.js";

const id = "findings-for-the-vet";
const question = "What was recorded that is the vet's?";

export interface FindingsForTheVetOptions {
  /** The latest findings that are listed; 8 unless told otherwise. */
  readonly most?: number;
}

/** Every recorded finding of one horse that is the vet's, newest first, of a study cut to that horse. Unit: a finding. */
export function findingsForTheVet(study: Study, options: FindingsForTheVetOptions = {}): Answer | NotEnoughData {
  const dates = study.visits.map(({ visitDate }) => visitDate).sort();
  const last = dates.at(-1);
  if (last === undefined)
    return { kind: "not_enough_data", id, question, reason: "No foot of this horse has been recorded yet." };
  const flags = vetFlags(study.visits);
  const latest = flags.filter((flag) => flag.latest);
  const shown = flags.slice(0, options.most ?? 8);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${latestInWords(latest, last)} ${earlierInWords(flags.length - latest.length, latest.length)}`,
    tables: shown.length === 0 ? [] : [tableOf(shown, flags.length)],
    charts: [],
    cautions: ["This is no diagnosis; a foot that is not listed is not thereby sound. The vet decides."],
    method: {
      unit: "a foot at a visit",
      n: new Set(study.visits.map(({ visitDate, foot }) => `${visitDate}\n${foot}`)).size,
      missing: 0,
      text: "Now: grade 3, a visit for lameness, a crack from the coronet. Soon: grade 2 or more at two visits running, thrush at a visit for lameness, an abscess of the same foot again.",
      links: ["vetFlags"],
    },
  };
}

const footOf = ({ foot }: VetFlag) => (foot === null ? "the horse" : footInWords(foot));

function latestInWords(latest: readonly VetFlag[], last: string): string {
  if (latest.length === 0) return `No finding of the last visit, on ${longDate(last)}, is marked as the vet's.`;
  const said = latest.map((flag) => `${footOf(flag)}, ${flag.recorded}`);
  return `The last visit, on ${longDate(last)}, has ${counted(latest.length, "finding that is", "findings that are")} the vet's: ${listed(said, 4)}.`;
}

function earlierInWords(earlier: number, latest: number): string {
  if (earlier === 0) return latest === 0 ? "Nor is any of an earlier one." : "Earlier visits have none.";
  return `Earlier visits have ${earlier}.`;
}

function tableOf(flags: readonly VetFlag[], all: number): Answer["tables"][number] {
  const which = flags.length < all ? `, the latest ${flags.length} of ${all}` : "";
  return {
    caption: `Findings that are the vet's, newest first${which}`,
    columns: [
      { name: "date", title: "Seen on" },
      { name: "foot", title: "Foot" },
      { name: "recorded", title: "What was recorded" },
      { name: "urgency", title: "Vet" },
      { name: "vet", title: "Vet involved then" },
    ],
    rows: flags.map((flag) => ({
      date: shortDate(flag.visitDate),
      foot: footOf(flag),
      recorded: flag.recorded,
      urgency: flag.urgency,
      vet: flag.vetInvolved === null ? "not recorded" : flag.vetInvolved ? "yes" : "no",
    })),
  };
}
