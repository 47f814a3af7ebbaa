import { palette } from "./palette.js";

/** The look shared by all charts, as a new Vega-Lite `config`: one family of type, nothing smaller than 12 px, quiet grid. */
export function chartConfig(): Record<string, unknown> {
  return {
    // In quotes, for a name may hold no word that begins with a digit, and a canvas that is given one falls back to letters of 10 px.
    font: "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', Helvetica, Arial, sans-serif",
    view: { stroke: null },
    axis: {
      labelFontSize: 13,
      labelColor: palette.ink,
      labelLimit: 200,
      titleFontSize: 13,
      titleFontWeight: 600,
      titleColor: palette.ink,
      titlePadding: 10,
      gridColor: palette.grid,
      domainColor: palette.grey,
      tickColor: palette.grey,
    },
    legend: {
      labelFontSize: 13,
      labelColor: palette.ink,
      labelLimit: 260,
      titleFontSize: 13,
      titleFontWeight: 600,
      titleColor: palette.ink,
    },
    text: { fontSize: 12, color: palette.ink },
    title: {
      anchor: "start",
      frame: "bounds",
      fontSize: 17,
      fontWeight: 600,
      lineHeight: 21,
      color: palette.ink,
      subtitleFontSize: 13,
      subtitleLineHeight: 17,
      subtitleColor: palette.quietInk,
      subtitlePadding: 5,
      offset: 16,
    },
  };
}
