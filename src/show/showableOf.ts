import { StudyError } from "../study/StudyError.js";
import { frameTable } from "./frameTable.js";
import type { Showable } from "./partsOf.js";
import type { Frame } from "./toFrame.js";
import { toTable } from "./toTable.js";

const marks = ["kind", "spec", "caption", "flow", "report"];

function refused(found: string, hint: string): StudyError {
  return new StudyError("not_showable", `show was given ${found}, which it cannot show.`, hint);
}

/**
 * What `show` was given as something it can take apart: rows and data frames become tables. Cells are not checked as strictly as
 * programs, so anything may come.
 * @throws StudyError `not_showable`, with what to do instead.
 *
 * @private
 */
export function showableOf(item: unknown): Showable {
  if (typeof item === "string") return item;
  if (typeof item === "function") throw refused(`the function ${item.name}`, `Call it: ${item.name}(study).`);
  if (typeof item !== "object" || item === null)
    throw refused(String(item), "Give an answer, a chart, a table, rows, a data frame, a study or a text.");
  if (Array.isArray(item)) {
    const items = item as readonly unknown[];
    if (items.every((row): row is object => typeof row === "object" && row !== null && !Array.isArray(row))) {
      const shown = items.length > 0 && items.every((row) => marks.slice(0, 4).some((mark) => mark in row));
      if (shown) throw refused(`a list of ${items.length} things to show`, "Put three dots before it: await show(...list).");
      return toTable(items);
    }
    throw refused("a list that does not hold rows", "Give rows, such as study.visits, or print it: console.log(list).");
  }
  if ("columns" in item && "values" in item && "shape" in item) return frameTable(item as unknown as Frame);
  if (marks.some((mark) => mark in item)) return item as Showable;
  throw refused(
    `an object with ${Object.keys(item).slice(0, 5).join(", ") || "no fields"}`,
    "For one row: await show([row]). For any object: console.log(object).",
  );
}
