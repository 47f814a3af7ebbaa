import type { Terminal } from "./Terminal.js";

/**
 * A terminal on whose standard output control characters other than line ends and tabs stand as `\uFFFD`: a name in the records may hold some,
 * and they would move the cursor or colour what follows.
 *
 * @private
 */
export function safeTerminal({ stdout, stderr }: Terminal): Terminal {
  return {
    stdout: {
      isTTY: stdout.isTTY,
      // Asked anew each time, since a window can be made wider.
      get columns() {
        return stdout.columns;
      },
      write: (text) => stdout.write(text.replace(/[^\P{Cc}\n\t]/gu, "\uFFFD")),
    },
    stderr,
  };
}
