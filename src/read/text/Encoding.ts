/** How the bytes of a text file stand for characters. `utf-16` says its byte order by the mark it begins with. */
export type Encoding = "utf-8" | "utf-16" | "windows-1252";
