/** What one display of a cell holds: text by mime type; JSON mime types (`application/json`, `application/…+json`) hold objects. */
export type MimeBundle = Readonly<Record<string, unknown>>;

/** One output of a code cell, named as in the nbformat 4.5 schema. */
export type NotebookOutput =
  | { readonly output_type: "stream"; readonly name: string; readonly text: string }
  | { readonly output_type: "display_data"; readonly data: MimeBundle; readonly metadata: Readonly<Record<string, unknown>> }
  | {
      readonly output_type: "execute_result";
      readonly execution_count: number | null;
      readonly data: MimeBundle;
      readonly metadata: Readonly<Record<string, unknown>>;
    }
  | { readonly output_type: "error"; readonly ename: string; readonly evalue: string; readonly traceback: readonly string[] };

/** A cell whose source is run by the kernel. */
export interface CodeCell {
  readonly cell_type: "code";
  readonly id: string;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly source: string;
  readonly outputs: readonly NotebookOutput[];
  /** Number the kernel gave to the run; null when it was not run. */
  readonly execution_count: number | null;
}

/** A cell of text for the reader. */
export interface TextCell {
  readonly cell_type: "markdown" | "raw";
  readonly id: string;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly source: string;
  readonly attachments?: Readonly<Record<string, MimeBundle>>;
}

export type NotebookCell = CodeCell | TextCell;

/**
 * A Jupyter notebook, nbformat 4.5, in memory: the names are those of the format, and text that a file may hold as a list of
 * lines is one string. Source: the nbformat 4.5 JSON schema, Jupyter project.
 */
export interface Notebook {
  readonly nbformat: 4;
  readonly nbformat_minor: number;
  readonly metadata: Readonly<Record<string, unknown>>;
  readonly cells: readonly NotebookCell[];
}
