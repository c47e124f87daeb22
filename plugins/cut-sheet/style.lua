-- How the sheet looks: black on white, one typeface, figures under figures, nothing cut at a page's end.
local text = require "withy.text"

local M = {}

local BASE = [[
* { box-sizing: border-box; }
html { font: 8.6pt/1.3 "Liberation Sans", Arimo, Helvetica, Arial, sans-serif; color: #000; background: #fff; }
body { margin: 0; font-variant-numeric: tabular-nums lining-nums; }
header { display: flex; justify-content: space-between; align-items: flex-end; border-bottom: 1.6pt solid #000; }
header p { margin: 0; }
.label { font-size: 7pt; letter-spacing: .09em; text-transform: uppercase; }
h1 { font-size: 21pt; line-height: 1.1; margin: .5mm 0 1.6mm; letter-spacing: -.01em; }
.who { text-align: right; padding-bottom: 1.6mm; line-height: 1.45; }
.figures { display: flex; margin: 0; border-bottom: .5pt solid #000; }
.figures div { flex: 1 1 0; padding: 1.6mm 2mm 1.8mm 0; }
.figures div + div { border-left: .5pt solid #000; padding-left: 2.4mm; }
.figures dt { font-size: 7pt; }
.figures dd { margin: .3mm 0 0; font-size: 12pt; font-weight: bold; line-height: 1.15; white-space: nowrap; }
.figures dd small { display: block; font-size: 7.6pt; font-weight: normal; }
.strip { margin: 2.2mm 0 0; }
.strip svg { display: block; width: 100%; height: auto; }
.rule { margin: 1.2mm 0 0; padding: 1.3mm 0 1.4mm; border-top: .5pt solid #000; border-bottom: .5pt solid #000; }
section { margin-top: 3.2mm; }
h2 { display: flex; align-items: baseline; gap: 3mm; margin: 0 0 .6mm; font-size: 11.5pt; line-height: 1.2;
     break-after: avoid; }
h2 span { font-size: 7.4pt; font-weight: normal; }
table { border-collapse: collapse; width: 100%; border-top: 1pt solid #000; border-bottom: .5pt solid #000; }
thead { display: table-header-group; }
th { font-size: 7pt; font-weight: normal; text-align: left; vertical-align: bottom; padding: .8mm 2.4mm .6mm 0;
     border-bottom: .5pt solid #000; line-height: 1.15; }
th.n { text-align: right; }
td { padding: .65mm 2.4mm .65mm 0; border-bottom: .25pt solid #777; vertical-align: baseline; }
tr { break-inside: avoid; }
tbody tr:last-child td { border-bottom: 0; }
td.n { text-align: right; white-space: nowrap; }
td.i { white-space: nowrap; text-align: right; }
td.i .f { display: inline-block; width: 2.6em; padding-left: .35em; text-align: left; }
th.i { text-align: right; padding-right: calc(2.4mm + 2.6em); }
td.s, tr.s td { font-weight: bold; }
tr.s td { border-top: .5pt solid #000; }
td.t { width: 5.5mm; }
td.u { font-style: italic; white-space: nowrap; }
.box { display: inline-block; width: 3mm; height: 3mm; border: .8pt solid #000; vertical-align: -.35mm; }
.note { margin: 1mm 0 0; }
.note.s { margin: 0 0 1mm; font-weight: bold; }
.whole { break-inside: avoid; }
.none { display: flex; align-items: baseline; gap: 3mm; }
.none h2 { break-after: auto; }
.none .note { margin: 0; }
.beside { columns: 2; column-gap: 8mm; margin-top: 3.2mm; }
.beside section { margin: 0; padding-bottom: 3.2mm; }
.beside h2 { display: block; }
.beside h2 span { display: block; }
.beside td { padding-top: .38mm; padding-bottom: .38mm; }
.fine td { padding-top: .25mm; padding-bottom: .25mm; font-size: 7.6pt; }
.beside + section, .beside + .beside { margin-top: 0; }
.write td { height: 6.8mm; }
td.w { min-width: 22mm; }
td.w, .write td + td.w { border-left: .5pt solid #000; border-right: .5pt solid #000; }
.stop { border: 2pt solid #000; padding: 1.4mm 2.6mm 1.8mm; }
.stop table { border-bottom: 0; }
.stop tr.s td { border-top: 0; }
.stop td:first-child { white-space: nowrap; }
.cautions { border: 1pt solid #000; padding: 1.8mm 2.6mm 2mm; break-inside: avoid; font-size: 8pt; }
.cautions h2 { margin-bottom: .8mm; }
.cautions ul { margin: 0; padding-left: 3.6mm; columns: 2; column-gap: 7mm; }
.cautions li { break-inside: avoid; margin-bottom: .6mm; }
@media print { .rule { display: none; } }
@media screen { body { max-width: 190mm; margin: 8mm auto; padding: 0 4mm; } }
]]

-- A CSS string that holds any text: what isn't plain is written by its number, which a space ends.
local function css_string(s)
  return '"' .. s:gsub("[^%w %.,:;/()+#-]", function(byte)
    return byte:byte() < 128 and ("\\%x "):format(byte:byte()) or nil
  end) .. '"'
end

-- `head` and `foot` stand on every page, with its number. `paper` is one of withy.sheet.
function M.make(paper, head, foot)
  return BASE .. ([[
@page {
  size: %smm %smm; margin: 14mm 14mm 13mm;
  @top-left { content: %s; font: 7pt "Liberation Sans", Arimo, Helvetica, Arial, sans-serif; }
  @bottom-left { content: %s; font: 7pt "Liberation Sans", Arimo, Helvetica, Arial, sans-serif; }
  @bottom-right { content: "page " counter(page) " of " counter(pages);
                  font: 7pt "Liberation Sans", Arimo, Helvetica, Arial, sans-serif; }
}
]]):format(text.fixed(paper.width_mm, 1), text.fixed(paper.height_mm, 1), css_string(head), css_string(foot))
end

return M
