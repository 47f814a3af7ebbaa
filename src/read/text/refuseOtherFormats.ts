import { refusals } from "../report/refusals.js";

const SAVE_AS = "Save it again as CSV UTF-8.";

/**
 * Refuses a file whose first bytes say that it is not text with one byte for a Latin letter: UTF-16, a spreadsheet workbook, a compressed file.
 *
 * @throws StudyError `not_csv_text`.
 */
export function refuseOtherFormats(start: Buffer, file: string): void {
  const begins = (...bytes: readonly number[]) => bytes.every((byte, index) => start[index] === byte);
  if (begins(0xff, 0xfe) || begins(0xfe, 0xff) || isSpacedByNuls(start)) throw refusals.notText(file, "UTF-16 text", SAVE_AS);
  if (begins(0x50, 0x4b, 3, 4) || begins(0xd0, 0xcf, 0x11, 0xe0)) {
    throw refusals.notText(file, "a workbook or an archive", "Open it in its own program and save the sheet as CSV UTF-8.");
  }
  if (begins(0x1f, 0x8b)) throw refusals.notText(file, "a compressed file", "Unpack it first.");
}

// Latin text in UTF-16 without a mark has a NUL at every second byte.
function isSpacedByNuls(start: Buffer): boolean {
  const bytes = [...start.subarray(0, 16)];
  if (bytes.length < 8) return false;
  return [0, 1].some((parity) => bytes.every((byte, index) => (index % 2 === parity) === (byte === 0)));
}
