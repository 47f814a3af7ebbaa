/** Whether a version such as `20.19.0` is at least another one; parts that are missing count as 0, what follows the numbers is ignored. */
export function versionAtLeast(version: string, least: string): boolean {
  const parts = (text: string) => text.split(/[.-]/).map((part) => Number.parseInt(part, 10) || 0);
  const [found, wanted] = [parts(version), parts(least)];
  for (let at = 0; at < Math.max(found.length, wanted.length); at += 1) {
    const difference = (found[at] ?? 0) - (wanted[at] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return true;
}
