/** A confidence level as it is written, in full: `95%`, `97.5%`, `99.9%`. A share is rounded, a level is a choice and is not. */
export function levelText(level: number): string {
  return `${Number((level * 100).toFixed(10))}%`;
}
