import { counted } from "../answer/words/counted.js";
import type { DataReport } from "../study/DataReport.js";

/** What reading cost, in one line. @private */
export function verdictText({ inputs, counts }: DataReport): string {
  const total = (of: (input: DataReport["inputs"][number]) => number) => inputs.reduce((sum, input) => sum + of(input), 0);
  const [read, setAside] = [total(({ rowsRead }) => rowsRead), total((input) => input.setAside)];
  const blanked = counts.filter(({ severity }) => severity === "cell_blanked").reduce((sum, { count }) => sum + count, 0);
  if (read === 0) return "There are no rows yet.";
  const rows =
    setAside === 0 ? `All ${counted(read, "row")} used` : `${counted(setAside, "row")} set aside of ${counted(read, "row")}`;
  return blanked === 0 ? `${rows}.` : `${rows}; ${counted(blanked, "cell")} left empty.`;
}
