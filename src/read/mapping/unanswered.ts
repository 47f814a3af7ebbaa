/**
 * The questions that a draft of `study.json` left open: the paths under `files` at which null stands, such as `files.visits.0.columns.visit_date.dates`.
 */
export function unanswered(files: unknown, path = "files"): string[] {
  if (files === null) return [path];
  if (typeof files !== "object") return [];
  return Object.entries(files).flatMap(([key, value]) => unanswered(value, `${path}.${key}`));
}
