/** How the texts of one column become texts as the column table writes them. */
export interface CellReading {
  /** What whole texts mean, by `wordKey`; null: nothing was recorded. */
  readonly words: ReadonlyMap<string, string | null>;
  /** The text as the table writes it; null when it is not of the form that was declared. */
  readonly translate: (text: string) => string | null;
  /** What to do when a text is not of that form; null where the usual hint serves. */
  readonly hint: string | null;
  /** Values are converted from another unit. */
  readonly converts: boolean;
  /** What is done to the texts, in words; null: nothing. */
  readonly inWords: string | null;
}
