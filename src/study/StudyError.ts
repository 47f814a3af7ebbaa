import { inspect } from "node:util";

/**
 * The one error thrown for what a user can mend: a folder that is not a study, a file that cannot be read, an option that
 * makes no sense. The message is a whole sentence; `hint` says what to do. Everything else is a bug.
 */
export class StudyError extends Error {
  override readonly name: string = "StudyError";
  /** Short stable name of the fault, snake case. */
  readonly code: string;
  /** One sentence: what to do about it. */
  readonly hint: string;

  constructor(code: string, message: string, hint: string) {
    super(message);
    this.code = code;
    this.hint = hint;
  }

  /**
   * As Node prints it below a cell or in a terminal: what happened and what to do. The way through the program says nothing to someone
   * who has misspelt a name; it is in `stack`.
   */
  [inspect.custom](): string {
    return `${this.name}: ${this.message}\n${this.hint}`;
  }
}
