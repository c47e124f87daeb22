-- How the protocol looks: black on white, rules to write on, nothing parted that belongs together.
local text = require "withy.text"

local M = {}

local BASE = [[
* { box-sizing: border-box; }
html { font: 8.2pt/1.25 "Liberation Sans", Arimo, Helvetica, Arial, sans-serif; color: #000; background: #fff; }
body { margin: 0 .3mm 0 0; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
p { margin: 0; }
.load + .load { break-before: page; }
header { display: flex; justify-content: space-between; align-items: flex-end; gap: 6mm;
         border-bottom: 1.4pt solid #000; }
header .label { font-size: 7.2pt; letter-spacing: .09em; text-transform: uppercase; }
h1 { font-size: 17pt; line-height: 1.1; margin: 0 0 1.2mm; }
.who { text-align: right; padding-bottom: 1.2mm; white-space: nowrap; }
h2 { font-size: 10pt; line-height: 1.15; margin: 1.8mm 0 .5mm; break-after: avoid; }
h2 span { font-size: 7.6pt; font-weight: normal; margin-left: 2mm; }
.stop { border: 1.6pt solid #000; padding: .8mm 2mm; margin-top: 1.6mm; font-weight: bold; }
.cautions { border: .8pt solid #000; padding: .8mm 2mm; margin-top: 1.4mm; font-size: 7.2pt; line-height: 1.18;
            break-inside: avoid; }
.cautions ul { margin: 0; padding-left: 3.4mm; columns: 2; column-gap: 6mm; }
.cautions li { break-inside: avoid; }
.beside { display: flex; gap: 5mm; break-inside: avoid; }
.beside > div:first-child { flex: 1 1 0; }
.picture { width: 76mm; font-size: 7.4pt; line-height: 1.2; }
.picture svg { display: block; }
dl { display: grid; grid-template-columns: 15mm 1fr; gap: .5mm 2mm; margin: 0; }
dt { font-size: 7.4pt; }
dd { margin: 0; font-weight: bold; }
dd small { font-size: 7.6pt; font-weight: normal; }
ul.look { list-style: none; margin: 0; padding: 0; }
ul.look li { padding-left: 4.6mm; text-indent: -4.6mm; margin-bottom: .4mm; }
.box { display: inline-block; width: 3mm; height: 3mm; border: .8pt solid #000; vertical-align: -.35mm;
       margin-right: 1.6mm; text-indent: 0; }
table { border-collapse: collapse; table-layout: fixed; width: 100%;
        border-top: 1pt solid #000; border-bottom: .8pt solid #000; }
thead { display: table-header-group; }
th { font-size: 7.2pt; font-weight: normal; text-align: left; vertical-align: bottom; padding: .5mm 1.6mm .4mm 0;
     border-bottom: .5pt solid #000; line-height: 1.1; }
td { padding: .3mm 1.6mm .3mm 0; border-bottom: .25pt solid #777; vertical-align: middle; height: 5.3mm;
     line-height: 1.1; }
.few td { height: 5.5mm; }
.many td { height: 4.6mm; }
tr { break-inside: avoid; }
td.n, th.n { text-align: right; }
td.n, td.s { white-space: nowrap; }
td.s { font-weight: bold; }
td.w { border-left: .5pt solid #000; border-right: .5pt solid #000; }
th.w, td.w { padding-left: 1.2mm; }
.result { border: 1pt solid #000; padding: .8mm 2mm 1mm; margin-top: 2mm; break-inside: avoid; }
.result h2 { margin-top: 0; }
.line { display: flex; gap: 3mm; align-items: flex-end; height: 5.8mm; }
.line i { flex: 1 1 0; border-bottom: .5pt solid #000; }
.line i.short { flex: 0 0 22mm; }
code { font: 7.2pt/1.3 "Liberation Mono", Cousine, monospace; }
.note { font-size: 7.4pt; margin-top: .6mm; }
]]

-- A CSS string that holds any text: what isn't plain is written by its number, which a space ends.
local function css_string(s)
  return '"' .. s:gsub("[^%w %.,:;/()+#-]", function(byte)
    return byte:byte() < 128 and ("\\%x "):format(byte:byte()) or nil
  end) .. '"'
end

-- `foot` stands on every page, with its number. `paper` is one of withy.sheet.
function M.make(paper, foot)
  local font = 'font: 7.2pt "Liberation Sans", Arimo, Helvetica, Arial, sans-serif;'
  return BASE .. ([[
@media screen { body { width: %smm; margin: 8mm auto; } }
@page {
  size: %smm %smm; margin: 9mm 12mm 11mm;
  @bottom-left { content: %s; %s }
  @bottom-right { content: "page " counter(page) " of " counter(pages); %s }
}
]]):format(text.fixed(paper.width_mm - 24, 1), text.fixed(paper.width_mm, 1), text.fixed(paper.height_mm, 1),
    css_string(foot), font, font)
end

return M
