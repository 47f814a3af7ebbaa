/** In which order the parts of a date are written. */
export type DateOrder = "year-month-day" | "day-month-year" | "month-day-year";
