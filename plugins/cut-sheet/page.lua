-- The sheet as one HTML page.
local cautions = require "cautions"
local drawing = require "drawing"
local grid = require "grid"
local html = require "withy.html"
local sheet = require "withy.sheet"
local style = require "style"
local text = require "withy.text"
local units = require "withy.units"

local M = {}

local e = html.element

local DATUM = "Counted from: the rod's butt end (outer end of the butt cap); guides from the tip-top's ring centre; "
  .. "sections from their butt end as supplied."

-- What is said once about every length below: the datum, and how lengths are rounded.
local function rule(ctx)
  local rounding = ctx:get("identity.units") == "INCH"
      and " Guides to 1/8 in, all else to 1/16 in; mm are the same place."
    or " Guides to 2 mm, all else to 1 mm; inches are the same place to 1/32."
  return DATUM .. rounding
end

-- "2210.6 ± 1.6 mm": as many decimals as the uncertainty has a use for.
local function uncertain(value, plus_minus, unit)
  if not plus_minus then
    return text.fixed(value, 1) .. " " .. unit
  end
  return ("%s ± %s %s"):format(text.fixed(value, 1), text.fixed(math.max(plus_minus, 0.1), 1), unit)
end

local function both(mm, plus_minus)
  if not mm then
    return "not known", ""
  end
  return units.inches(mm, 16), uncertain(mm, plus_minus, "mm")
end

local function figure(title, shown, small)
  return e("div", {}, e("dt", {}, title), e("dd", {}, shown, e("small", {}, small)))
end

local function longest_label(pieces)
  if pieces == 1 then
    return "in one piece"
  end
  return pieces and ("%d pieces, longest"):format(pieces) or "longest piece"
end

local function figures(ctx)
  local ordered = ctx:get("intent.overall_length")
  local mass = ctx:get("balance.mass_g")
  local list = {
    figure("ordered length", both(ordered and ordered.mm)),
    figure("comes out at", both(ctx:get("fit.overall_length_mm"), ctx:get("fit.overall_length_plus_minus_mm"))),
    figure("blank's butt face at", both(ctx:get("fit.blank_butt_mm"))),
    figure("tip-top's ring at", both(ctx:get("fit.tip_ring_mm"))),
    figure(longest_label(ctx:get("sections.pieces")), both(ctx:get("sections.packed_length_mm"))),
    figure("rod without reel", mass and text.fixed(mass, 0) .. " g" or "not known",
      mass and uncertain(mass, ctx:get("balance.mass_plus_minus_g"), "g") or ""),
    figure("balances at", both(ctx:get("balance.balance_from_butt_mm"),
      ctx:get("balance.balance_from_butt_plus_minus_mm"))),
  }
  return e("dl", { class = "figures" }, list)
end

local function heading(ctx)
  local identity = ctx.design.identity
  local who = {}
  for _, author in ipairs(identity and identity.authors or {}) do
    who[#who + 1] = author.name
  end
  local marks = {}
  if identity and identity.revision then
    marks[#marks + 1] = "revision " .. text.fixed(identity.revision, 0)
  end
  if identity and identity.serial then
    marks[#marks + 1] = "serial " .. identity.serial
  end
  return e("header", {},
    e("div", {}, e("p", { class = "label" }, "Cut sheet", ctx.rod.technique and ", " .. ctx.rod.technique),
      e("h1", {}, identity and identity.name or ctx.stem)),
    e("div", { class = "who" }, table.concat(who, ", "), e("br", {}), table.concat(marks, ", ")))
end

-- Lines to write on at the bench, for a cut that is to be made in stages.
local function stages(list)
  if not list.limit_mm then
    return nil
  end
  local rows = {}
  for i = 1, 4 do
    rows[i] = e("tr", {}, e("td", {}, text.fixed(i, 0)), e("td", {}), e("td", {}), e("td", {}))
  end
  return {
    e("p", { class = "note" }, ("No single cut longer than %s. Dry fit after each, read the length, write it down:")
      :format(units.inches(list.limit_mm, 16))),
    e("table", { class = "write" },
      e("thead", {}, e("tr", {}, e("th", {}, "cut"), e("th", {}, "taken off"), e("th", {}, "length at the dry fit"),
        e("th", {}, "blank's butt face in the handle at"))),
      e("tbody", {}, rows)),
  }
end

local function caution_box(ctx)
  local items = {}
  for i, caution in ipairs(cautions(ctx)) do
    items[i] = e("li", {}, caution)
  end
  return e("section", { class = "cautions" }, e("h2", {}, "Before you start"), e("ul", {}, items))
end

-- Narrow lists that follow one another stand in two columns. The cautions stand before the handle, where glue begins.
local function sections(ctx, lists)
  local result, beside = {}, {}
  local function flush()
    result[#result + 1] = #beside > 0 and e("div", { class = "beside" }, beside) or nil
    beside = {}
  end
  for _, list in ipairs(lists) do
    local section = grid.section(list, stages(list))
    if list.narrow then
      beside[#beside + 1] = section
    else
      flush()
      result[#result + 1] = list.title == "Handle" and caution_box(ctx) or nil
      result[#result + 1] = section
    end
  end
  flush()
  return result
end

local function strip(ctx)
  local rings_below = ctx.rod.technique ~= "casting" and ctx.rod.technique ~= "conventional"
  local reel = ctx:get("intent.reel")
  if reel and reel.side then
    rings_below = reel.side == "BELOW"
  end
  local picture = drawing.strip(ctx.rod, rings_below and 1 or -1)
  return picture and e("div", { class = "strip" }, picture)
end

function M.make(ctx, lists)
  local known, paper = pcall(sheet.paper, ctx.options.paper)
  if not known then
    ctx:refuse("option paper: " .. paper)
  end
  local stop
  if lists[1].class == "stop" then
    stop = grid.section(lists[1])
    lists = table.move(lists, 2, #lists, 1, {})
  end
  local identity = ctx.design.identity
  local name = identity and identity.name or ctx.stem
  local digest = ctx.report.design_digest or ""
  return html.page {
    title = name .. ": cut sheet",
    style = style.make(paper, rule(ctx), name .. ", design " .. digest:sub(8, 19)),
    body = {
      heading(ctx), stop, figures(ctx), strip(ctx), e("p", { class = "rule" }, rule(ctx)), sections(ctx, lists),
    },
  }
end

return M
