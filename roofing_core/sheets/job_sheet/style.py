"""The style of the HTML sheet: one column on a screen, pages on paper, black on white."""

from __future__ import annotations

STYLE = """\
:root { color: black; background: white; font: 11pt/1.35 Georgia, "Times New Roman", serif }
body { margin: 0 auto; max-width: 190mm; padding: 0 4mm }
h1 { font-size: 20pt; margin: 8mm 0 0; line-height: 1.15; overflow-wrap: anywhere }
h2 { font-size: 13pt; margin: 7mm 0 2mm; border-bottom: 1.2pt solid black }
h3 { font-size: 11pt; margin: 4mm 0 1mm }
p { margin: 1mm 0 2mm; overflow-wrap: anywhere }
p.subtitle { font-size: 12pt }
p.small, cite, caption, footer { font-size: 9pt }
cite { font-style: italic }
dl { columns: 72mm 2; column-gap: 10mm; margin: 0 }
dl div { display: flex; justify-content: space-between; gap: 4mm; break-inside: avoid;
  border-bottom: 0.4pt solid #999; padding: 0.4mm 0 }
dt, dd { margin: 0; overflow-wrap: anywhere }
dd { text-align: right; font-variant-numeric: lining-nums tabular-nums }
div.grid { overflow-x: auto }
table { border-collapse: collapse; width: 100%; font-size: 10pt;
  font-variant-numeric: lining-nums tabular-nums }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%) }
th, td { text-align: left; vertical-align: top; padding: 0.7mm 1.6mm;
  border-bottom: 0.4pt solid #999; overflow-wrap: break-word }
thead th { border-bottom: 1.2pt solid black; vertical-align: bottom }
tbody th { font-weight: normal }
th.right, td.right { text-align: right; white-space: nowrap }
input { width: 4mm; height: 4mm; margin: 0 }
ul { margin: 0; padding-left: 5mm }
li { margin: 0 0 1.2mm; overflow-wrap: anywhere }
ul.urgent { border: 2pt solid black; padding: 2mm 2mm 1mm 7mm }
figure { margin: 4mm 0; overflow-x: auto }
footer { border-top: 0.4pt solid #999; margin-top: 6mm }
@media print {
  :root { font-size: 9.5pt }
  table { font-size: 9pt }
  cite, p.small { font-size: 8.5pt }
  body { max-width: none; padding: 0 }
  h1 { margin-top: 0 }
  h2, h3 { break-after: avoid }
  tr, li, figure { break-inside: avoid }
  thead { display: table-header-group; break-after: avoid }
  tbody tr:first-child { break-before: avoid }
  div.grid, figure { overflow: visible }
  figure { margin: 0 }
  figure.across { page: across; break-before: page }
  footer { display: none }
  input { appearance: none; border: 0.8pt solid black }
}
@page {
  margin: 14mm;
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 9pt serif }
}
"""
