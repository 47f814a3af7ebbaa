const words: Readonly<Record<string, string>> = { ",": "comma", ";": "semicolon", "\t": "tab", "|": "upright stroke" };

/** The delimiter of a file in a word. */
export function delimiterWord(delimiter: string): string {
  return words[delimiter] ?? delimiter;
}
