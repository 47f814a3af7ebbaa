import { StudyError } from "../study/StudyError.js";
import type { EstimateErrorCode } from "./EstimateErrorCode.js";

/**
 * Thrown by estimators for input that no number can honestly come from. Input that is sound but too thin for an interval
 * does not throw: the estimate comes back with `lower` and `upper` null and a `note` that says why.
 */
export class EstimateError extends StudyError {
  override readonly name = "EstimateError";
  declare readonly code: EstimateErrorCode;

  // eslint-disable-next-line @typescript-eslint/no-useless-constructor -- it narrows the code
  constructor(code: EstimateErrorCode, message: string, hint: string) {
    super(code, message, hint);
  }
}
