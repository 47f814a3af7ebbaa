/** Name of the record field that holds a CSV column: `cleft_depth_mm` becomes `cleftDepthMm`. @private */
export function fieldName(column: string): string {
  return column.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
}
