/** Text with its first letter as a capital, as a sentence or an axis title begins. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
