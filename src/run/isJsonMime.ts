/** Whether a display of this mime type holds a JSON value rather than text. Source: `mimebundle` of the nbformat 4.5 schema. @private */
export function isJsonMime(mime: string): boolean {
  return /^application\/(.*\+)?json$/.test(mime);
}
