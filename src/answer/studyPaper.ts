import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked, climateSeed } from "./climate/asked.js";
import { strobeItems } from "./climate/strobeItems.js";
import { provenance } from "./provenance.js";

const { id, question } = asked("study-paper");

/**
 * What goes into the paper: a methods paragraph from what was run, a map of the STROBE-Vet items, and the facts of the session. Give the replies in the order in which
 * they were shown. It never says that a checklist is met: most items are the author's to write.
 */
export function studyPaper(study: Study, replies: readonly (Answer | NotEnoughData)[]): Answer {
  const answers = replies.filter((reply) => reply.kind === "answer");
  const skipped = replies.filter((reply) => reply.kind === "not_enough_data");
  const ran = new Set(answers.map((answer) => answer.id));
  const items = strobeItems(ran);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${answers.length} parts were run and ${skipped.length} skipped; of ${items.length} items of STROBE-Vet, ${items.filter((item) => item.output !== "").length} find something in the output, and all need the author.`,
    tables: [
      {
        caption: "Methods, from what was run",
        columns: [
          { name: "part", title: "Part" },
          { name: "text", title: "Text" },
        ],
        rows: [
          ...answers.map(({ id: part, method }) => ({
            part,
            text: `Unit: ${method.unit}; n ${method.n}, missing ${method.missing}. ${method.text}`,
          })),
          ...skipped.map(({ id: part, reason }) => ({ part, text: `Not done: ${reason}` })),
        ],
      },
      {
        caption: "STROBE-Vet items: what the output covers, what the author must write (no claim that the checklist is met)",
        columns: [
          { name: "item", title: "Item" },
          { name: "topic", title: "Topic" },
          { name: "output", title: "In the output" },
          { name: "author", title: "Left to the author" },
        ],
        rows: items.map((item) => ({ ...item })),
      },
      {
        caption: "Seeds",
        columns: [
          { name: "what", title: "What is drawn" },
          { name: "seed", title: "Seed" },
        ],
        rows: [{ what: "resamples, bands and simulated studies of the climate study", seed: climateSeed }],
      },
      ...provenance(study),
    ],
    charts: [],
    cautions: [
      "The paragraph says what was computed. Why, on whom, under what ethics and with what consequence is the author's to say.",
    ],
    method: {
      unit: "a part of the study",
      n: answers.length,
      missing: skipped.length,
      text: "Collected from the method of each reply. STROBE-Vet: Sargeant JM et al. (2016) J Vet Intern Med 30:1887-1895, item numbers and topics.",
      links: [],
    },
  };
}
