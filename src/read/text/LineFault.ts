/** Why a physical line or the row that starts on it cannot be split into cells. */
export type LineFault = "not_utf8" | "nul_byte" | "line_too_long" | "stray_quote";
