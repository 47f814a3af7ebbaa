/** What is used of an output stream; `process.stderr` fits. @private */
export interface ProgressStream {
  readonly isTTY?: boolean | undefined;
  readonly columns?: number | undefined;
  write(text: string): unknown;
}

/** One line of a terminal that is written over and over. */
export interface ProgressLine {
  /** Shows this text in place of the one before. */
  readonly show: (text: string) => void;
  /** Takes the line away, so that what is printed next starts on a clean line. */
  readonly clear: () => void;
}

const clearLine = "\r\u001B[2K";

/** As much of the text as fits: a line that wraps cannot be written over. Everything outside ASCII is taken as two wide. */
function fitted(text: string, width: number): string {
  let [used, out] = [0, ""];
  // A control character in the text would move the cursor.
  for (const { segment } of new Intl.Segmenter("en").segment(text.replace(/[\p{Cc}\p{Cf}\s]+/gu, " "))) {
    used += /^[ -~]$/.test(segment) ? 1 : 2;
    if (used > width) return out;
    out += segment;
  }
  return out;
}

/** Some terminals give their width as 0 when they do not know it. */
function widthOf({ columns }: ProgressStream): number {
  return columns === undefined || columns === 0 ? 80 : columns;
}

/**
 * A line of progress on a terminal. It writes nothing at all when the stream is not a terminal, or one that cannot move its
 * cursor (`TERM=dumb`), so that logs and pipes stay clean.
 */
export function progressLine(stream: ProgressStream, terminal: string | undefined = process.env["TERM"]): ProgressLine {
  const drawn = stream.isTTY === true && terminal !== "dumb";
  let shown = false;
  return {
    show: (text) => {
      if (!drawn) return;
      stream.write(clearLine + fitted(text, widthOf(stream) - 1));
      shown = true;
    },
    clear: () => {
      if (shown) stream.write(clearLine);
      shown = false;
    },
  };
}
