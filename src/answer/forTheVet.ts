import { type VetFlag, vetFlags } from "../derive/vetFlags.js";
import { stayAt } from "../derive/stayAt.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { capital } from "../chart/parts/capital.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { shortDate } from "./words/shortDate.js";

const { id, question } = asked("for-the-vet");

/** Recorded findings that are the vet's, those of a horse's last visit first. Unit: a foot at a visit. */
export function forTheVet(study: Study): Answer | NotEnoughData {
  if (study.visits.length === 0) return { kind: "not_enough_data", id, question, reason: "No foot has been recorded yet." };
  const flags = vetFlags(study.visits);
  const latest = flags.filter((flag) => flag.latest);
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const yardOf = (flag: VetFlag) => stayAt(stays.get(flag.horseId) ?? [], flag.horseId, flag.visitDate)?.yardId ?? null;
  const horses = [...new Set(latest.map((flag) => flag.horseId))].sort();
  const earlier = flags.length - latest.length;
  const now =
    horses.length === 0
      ? "No finding of a horse's last visit is marked as the vet's."
      : `At their last visit ${counted(horses.length, "horse")} had a finding recorded that is the vet's: ${listed(horses, 12)}.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${now} ${capital(counted(earlier, "such finding was", "such findings were"))} recorded at earlier visits.`,
    tables: latest.length === 0 ? [] : [tableOf(latest, yardOf)],
    charts: [],
    cautions: [
      "A lame, bleeding, hot or punctured foot is vet work now. This list holds only what was written down: a foot that is not on it is not thereby sound.",
      "It is not a diagnosis. The vet decides.",
    ],
    method: {
      unit: "a foot at a visit",
      n: new Set(study.visits.map((visit) => `${visit.horseId}\n${visit.visitDate}\n${visit.foot}`)).size,
      missing: 0,
      text: "Now: grade 3, a visit for lameness, a crack from the coronet. Soon: grade 2 or more at two visits running, thrush at a visit for lameness, an abscess of the same foot again.",
      links: ["vetFlags"],
    },
  };
}

function tableOf(flags: readonly VetFlag[], yardOf: (flag: VetFlag) => string | null): Answer["tables"][number] {
  return {
    caption: "Findings of each horse's last visit that are the vet's",
    columns: [
      { name: "urgency", title: "Vet" },
      { name: "horse", title: "Horse" },
      { name: "yard", title: "Yard" },
      { name: "foot", title: "Foot" },
      { name: "date", title: "Seen on" },
      { name: "recorded", title: "What was recorded" },
      { name: "vet", title: "Vet involved" },
    ],
    rows: [...flags]
      .sort((a, b) => (a.urgency === b.urgency ? 0 : a.urgency === "now" ? -1 : 1))
      .map((flag) => ({
        urgency: flag.urgency,
        horse: flag.horseId,
        yard: yardOf(flag),
        foot: flag.foot === null ? "the horse" : footInWords(flag.foot),
        date: shortDate(flag.visitDate),
        recorded: flag.recorded,
        vet: flag.vetInvolved === null ? "not recorded" : flag.vetInvolved ? "yes" : "no",
      })),
  };
}
