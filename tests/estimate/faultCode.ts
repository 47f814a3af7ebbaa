import { EstimateError } from "../../src/estimate/EstimateError.js";

/** Code of the estimate error that is thrown; fails when none is, or when it does not speak in sentences. */
export function faultCode(make: () => unknown): string {
  try {
    make();
  } catch (fault) {
    if (!(fault instanceof EstimateError)) throw fault;
    if (!/^[A-Z0-9].*\.$/.test(fault.message)) {
      throw new Error(`not a sentence: ${fault.message}`, { cause: fault });
    }
    if (!/^[A-Z].*\.$/.test(fault.hint)) throw new Error(`not a sentence: ${fault.hint}`, { cause: fault });
    return fault.code;
  }
  throw new Error("nothing was thrown");
}
