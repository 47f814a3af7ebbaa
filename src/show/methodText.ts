import type { Method } from "../answer/Answer.js";

/** How an answer was reached, in one paragraph. @private */
export function methodText(method: Method): string {
  const missing =
    method.missing === 0 ? "none left out for want of a record" : `${method.missing} left out because something was not recorded`;
  const links = method.links.length === 0 ? "" : ` Formulas: methods page, ${method.links.join(", ")}.`;
  return `${method.text} Unit: ${method.unit}. ${method.n} used, ${missing}.${links}`;
}
