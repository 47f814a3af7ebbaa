/**
 * The look of a page: ink on paper, one accent, wide lines kept short; dark when the reader asks for it; A4 when printed, with what is
 * folded up opened. Drawings were laid out in Source Sans 3: `font-size-adjust` (its height of an x over its size) brings the letters of
 * another typeface to about the same width.
 */
export const pageStyle = `
:root {
  color-scheme: light dark;
  --paper: #ffffff; --ink: #1f2423; --quiet: #4d5553; --line: #d3d9d6; --rule: #6f7875;
  --accent: #1d5c4f; --warn-paper: #fff5dc; --warn-line: #9a5b00; --stripe: #f5f7f6;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #171b1a; --ink: #e9edeb; --quiet: #b6bfbb; --line: #3a4340; --rule: #8b9591;
    --accent: #86cbb9; --warn-paper: #2c2616; --warn-line: #e0a84a; --stripe: #1e2422;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 58rem; overflow-wrap: break-word;
  background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.55 "Source Sans 3", "Segoe UI", system-ui, -apple-system, "Helvetica Neue", Arial, sans-serif;
}
h1, h2, p, ul, ol, figcaption, .first { max-width: 44rem; }
h1 { font-size: 2rem; line-height: 1.15; margin: 0 0 0.75rem; letter-spacing: -0.01em; }
h2 { font-size: 1.375rem; line-height: 1.25; margin: 0 0 0.5rem; }
h3 { font-size: 1.0625rem; line-height: 1.3; margin: 1.25rem 0 0.35rem; }
p { margin: 0 0 0.75rem; }
a { color: var(--accent); }
a:focus-visible, summary:focus-visible, [tabindex]:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.about { color: var(--quiet); font-size: 0.9375rem; }
.first { border: 1px solid var(--warn-line); border-left-width: 6px; background: var(--warn-paper); padding: 0.9rem 1.1rem 0.4rem; margin: 1.5rem 0; }
.first h2 { font-size: 1.125rem; }
ul, ol { margin: 0 0 0.75rem; padding-left: 1.35rem; }
li { margin: 0.25rem 0; }
nav { border-block: 1px solid var(--line); padding: 0.9rem 0 0.5rem; margin: 1.5rem 0; }
nav h2 { font-size: 1.125rem; }
nav li { padding: 0.1rem 0; }
main > section { border-top: 2px solid var(--rule); padding-top: 1.1rem; margin-top: 2.25rem; }
.sentence { font-size: 1.1875rem; line-height: 1.45; }
.lacking { border-left: 4px solid var(--rule); padding-left: 0.9rem; }
figure { margin: 1.25rem 0; }
figcaption { font-size: 0.9375rem; color: var(--quiet); margin-top: 0.4rem; }
.scroll { overflow-x: auto; max-width: 100%; }
.drawing svg { display: block; height: auto; width: 100%; overflow: visible; }
.drawing text { font-size-adjust: 0.486; }
table { border-collapse: collapse; width: 100%; margin: 1rem 0 0.4rem; font-size: 0.9375rem; line-height: 1.35; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-weight: 600; padding-bottom: 0.4rem; }
caption span { display: inline-block; max-width: calc(100vw - 2.5rem); }
@media (max-width: 30rem) {
  table { font-size: 0.875rem; }
  th, td { padding: 0.3rem 0.35rem; }
}
th, td { padding: 0.3rem 0.5rem; border-bottom: 1px solid var(--line); vertical-align: top; }
th:first-child, td:first-child { padding-left: 0.25rem; }
thead th { border-bottom: 2px solid var(--rule); vertical-align: bottom; }
tbody th { font-weight: 400; }
tbody tr:nth-child(even) { background: var(--stripe); }
.note { font-size: 0.875rem; color: var(--quiet); margin: 0 0 0.5rem; }
details { margin: 0.75rem 0; }
summary { cursor: pointer; color: var(--accent); padding: 0.25rem 0; min-height: 24px; }
.cautions { border-left: 4px solid var(--warn-line); padding-left: 0.9rem; margin: 1.25rem 0; }
.cautions h3 { margin-top: 0; }
.compact main > section { margin-top: 1.75rem; }
footer { border-top: 2px solid var(--rule); margin-top: 2.5rem; padding-top: 0.75rem; color: var(--quiet); font-size: 0.9375rem; }
@page { size: A4; margin: 16mm 15mm 18mm; @bottom-right { content: counter(page) " / " counter(pages); font-size: 9pt; } }
@page sheet { size: A4; margin: 10mm 12mm 12mm; }
@media print {
  :root {
    color-scheme: light;
    --paper: #ffffff; --ink: #000000; --quiet: #333333; --line: #b5bbb8; --rule: #555555;
    --accent: #000000; --warn-paper: #ffffff; --warn-line: #000000; --stripe: #ffffff;
  }
  body, h1, h2, p, ul, ol, figcaption, .first { max-width: none; }
  body { padding: 0; font-size: 9.5pt; line-height: 1.4; }
  h1 { font-size: 17pt; }
  h2 { font-size: 12.5pt; }
  p { margin-bottom: 2mm; }
  .sentence { font-size: 10.5pt; }
  .first { margin: 4mm 0; padding: 2mm 4mm 1mm; }
  .about, footer, figcaption { font-size: 9pt; }
  main > section { margin-top: 6mm; padding-top: 3mm; }
  .cautions { margin: 3mm 0; }
  .cautions li, .first li { margin: 0; }
  .cautions h3, .first h2 { margin-bottom: 1mm; font-size: 10pt; }
  figure, table, details { margin-block: 3mm 1mm; }
  details p { font-size: 8.5pt; }
  table { font-size: 8.5pt; }
  td, th { min-width: 0 !important; }
  th, td { padding: 0.15rem 0.4rem; }
  body:not(.compact) :is(th, td) { white-space: normal !important; }
  nav { display: none; }
  .scroll { overflow: visible; }
  .drawing svg { min-width: 0 !important; max-height: 82mm; }
  h1, h2, h3, figure, .first, .cautions, .sentence, figcaption, .note, tr, li { break-inside: avoid; }
  p { orphans: 3; widows: 3; }
  thead { display: table-header-group; }
  h1, h2, h3, caption, summary { break-after: avoid; }
  .sentence { break-before: avoid; break-after: avoid; }
  details::details-content { content-visibility: visible; block-size: auto; }
  summary { list-style: none; color: inherit; font-weight: 600; }
  summary::-webkit-details-marker { display: none; }
  .compact { page: sheet; font-size: 9pt; line-height: 1.3; }
  .compact h1 { font-size: 16pt; margin-bottom: 1mm; }
  .compact h2 { font-size: 10.5pt; margin-bottom: 0.5mm; }
  .compact p { margin-bottom: 1mm; }
  .compact .about, .compact footer, .compact .note, .compact figcaption { font-size: 8pt; }
  .compact .sentence { font-size: 8.5pt; line-height: 1.25; }
  .compact table { font-size: 7.5pt; line-height: 1.2; margin: 1.5mm 0 1mm; }
  .compact caption { padding-bottom: 0.5mm; }
  .compact th, .compact td { padding: 0.3mm 2mm; }
  .compact .first { padding: 1mm 2mm; margin: 1.5mm 0; }
  .compact .first ul, .compact .cautions ul { margin: 0; }
  .compact main > section { margin-top: 2.5mm; padding-top: 1.5mm; border-top-width: 1px; }
  .compact figure { margin: 1mm 0; }
  .compact footer { margin-top: 3mm; padding-top: 1mm; border-top-width: 1px; }
  .compact .drawing svg { max-height: 40mm; }
  .compact .first ul, .compact .cautions ul { list-style: none; padding: 0; }
  .compact .first h2, .compact .cautions h3 { float: left; margin: 0 2mm 0 0; font-size: 8pt; line-height: 1.3; }
  .compact .first li, .compact .cautions li { display: inline; font-size: 8pt; }
  .compact .cautions { border-left-width: 1mm; padding-left: 2mm; margin: 1mm 0; }
  .compact figcaption, .compact details { display: none; }
}
`;
