/** Why a physical line or the row that starts on it cannot be split into cells. */
export type LineFault = "not_utf8" | "not_utf16" | "not_windows_1252" | "nul_byte" | "line_too_long" | "stray_quote";
