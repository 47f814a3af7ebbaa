/** The system's short name of an error such as `EACCES`; `unknown reason` when it has none. */
export function systemCode(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "unknown reason";
}
