/**
 * A count with its noun in the right number: `1 horse`, `1,204 horses`, `no feet`. The plural is the noun with an s unless given.
 */
export function counted(count: number, noun: string, plural = `${noun}s`): string {
  const number = count === 0 ? "no" : wholeNumber(count);
  return `${number} ${count === 1 ? noun : plural}`;
}

function wholeNumber(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
