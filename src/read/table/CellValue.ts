/** What a cell may hold once it is decided. Missing is null. */
export type CellValue = string | number | boolean | readonly string[] | null;
