/**
 * A value that must be there, because what came before made sure of it.
 * @throws RangeError when it is not.
 */
export function certain<Value>(value: Value | null | undefined): Value {
  if (value === null || value === undefined) throw new RangeError("A value that must be known is missing.");
  return value;
}
