import type { Answer, NotEnoughData } from "../answer/Answer.js";
import { focusOn } from "../answer/focusOn.js";
import type { Focus, Question } from "../answer/Question.js";
import { questions } from "../answer/questions.js";
import { wrapped } from "../chart/parts/wrapped.js";
import { nearestName } from "../study/nearestName.js";
import { readStudy } from "../read/readStudy.js";
import { toText } from "../show/toText.js";
import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";

/** What the command `ask` is asked. */
export interface AskOptions {
  readonly horse?: string;
  readonly yard?: string;
  /** Day the answer is as of, `YYYY-MM-DD`; that of the study when left out. */
  readonly asOf?: string;
  readonly json?: boolean;
}

/**
 * The command `ask`: prints the answer to one question, or, without one, which questions the study can answer and what it lacks for the rest.
 * With `json` for machines; charts are then Vega-Lite specifications. Returns the exit code.
 *
 * @throws StudyError `unknown_question`, `horse_needed`, those of `focusOn`, or when the folder cannot be used.
 *
 * @private
 */
export async function askFolder(
  folder: string,
  name: string | undefined,
  options: AskOptions,
  terminal: Terminal,
): Promise<number> {
  const question = name === undefined ? null : questionNamed(name);
  if (question?.needs === "horse" && options.horse === undefined) {
    throw new StudyError(
      "horse_needed",
      `${question.id} is asked of one horse.`,
      `Name it, as in: underfoot ask ${folder} ${question.id} --horse ID`,
    );
  }
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const study = await readStudy(folder);
    const focus = focusOf(options);
    focusOn(study, focus);
    const width = terminal.stdout.columns ?? 80;
    if (question === null) {
      const states = questions.map((each) => {
        progress.show(`Asking ${each.id}`);
        return stateOf(each, study, focus);
      });
      progress.clear();
      terminal.stdout.write(options.json === true ? toJson(states) : listText(states, folder, Math.max(width, 40)));
    } else {
      progress.show(`Asking ${question.id}`);
      const answer = question.ask(study, focus);
      progress.clear();
      terminal.stdout.write(options.json === true ? toJson(answer) : toText(answer, Math.max(width, 40)));
    }
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}

function questionNamed(name: string): Question {
  const found = questions.find(({ id }) => id === name);
  if (found !== undefined) return found;
  const nearest = nearestName(
    name,
    questions.map(({ id }) => id),
  );
  throw new StudyError(
    "unknown_question",
    `There is no question ${name}.`,
    `${nearest === null ? "" : `Did you mean ${nearest}? `}List them all with: underfoot ask FOLDER`,
  );
}

function focusOf({ horse, yard, asOf }: AskOptions): Focus {
  return {
    ...(horse === undefined ? {} : { horseId: horse }),
    ...(yard === undefined ? {} : { yardId: yard }),
    ...(asOf === undefined ? {} : { asOf }),
  };
}

interface QuestionState {
  readonly id: string;
  readonly reader: string;
  readonly question: string;
  /** Whether this study can answer it. */
  readonly canAnswer: boolean;
  /** What is lacking, or must be named; null for nothing. */
  readonly lacks: string | null;
}

function stateOf(question: Question, study: Study, focus: Focus): QuestionState {
  const { id, reader } = question;
  const base = { id, reader, question: question.question };
  if (question.needs === "horse" && focus.horseId === undefined) {
    const any = study.visits.length > 0;
    return { ...base, canAnswer: any, lacks: any ? "Name the horse with --horse ID." : "No foot has been recorded yet." };
  }
  const answer: Answer | NotEnoughData = question.ask(study, focus);
  return { ...base, canAnswer: answer.kind === "answer", lacks: answer.kind === "answer" ? null : answer.reason };
}

function toJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

function listText(states: readonly QuestionState[], folder: string, width: number): string {
  const able = states.filter(({ canAnswer }) => canAnswer).length;
  const readers = [...new Set(states.map(({ reader }) => reader))];
  const parts = readers.map((reader) => {
    const of = states.filter((state) => state.reader === reader);
    return `Questions of a ${reader}\n${of.map((state) => stateText(state, width)).join("\n")}`;
  });
  const head = `${able} of ${states.length} questions can be answered from ${folder}.`;
  return `${head}\n\n${parts.join("\n\n")}\n\nAsk one with: underfoot ask ${folder} QUESTION\n`;
}

function stateText({ id, question, canAnswer, lacks }: QuestionState, width: number): string {
  const indented = (text: string) => wrapped(text, width - 6).map((line) => `      ${line}`);
  const mark = canAnswer ? "  " : "- ";
  const lines = [`${mark}  ${id}`, ...indented(question)];
  if (lacks !== null) lines.push(...indented(canAnswer ? lacks : `Not enough data: ${lacks}`));
  return lines.join("\n");
}
