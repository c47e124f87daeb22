-- Checks: the rules of an invented club. A design says which class a rod is entered in, in its own plugin data:
--
--   extensions { key: "house-rules" value { fields { key: "class" value { string_value: "open" } } } }
--
-- Every rule has a code, so that a design can waive it: waivers { code: "house-rules/long-butt" reason: "..." }
local SHORTEST_MM = { open = 1828.8, youth = 1524 } -- by class: 6 ft, 5 ft
local LONGEST_BUTT_MM = 685.8 -- reel foot to butt end, 27 in
local HEAVIEST_G_PER_M = 110 -- a rod that is held all day; surf rods are not
local CLASSES = "open, youth"

local function class_of(ctx)
  local data = ctx.design.extensions["house-rules"]
  return data and data.class or "open"
end

local function known_class(ctx)
  local class = class_of(ctx)
  if not SHORTEST_MM[class] then
    ctx:emit {
      at = "extensions[house-rules]",
      message = ("the club has no class '%s'"):format(class),
      help = "Enter the rod in one of: " .. CLASSES .. ".",
    }
  end
end

local function short_rod(ctx)
  local shortest = SHORTEST_MM[class_of(ctx)]
  local length = ctx:need("fit.overall_length_mm")
  if shortest and length < shortest then
    ctx:emit {
      at = "intent.overall_length",
      numbers = { length_mm = length, shortest_mm = shortest },
      message = ("%.0f mm is shorter than the %.0f mm of class %s"):format(length, shortest, class_of(ctx)),
      help = "Enter it in another class, or ask the committee before building it.",
    }
  end
end

local function long_butt(ctx)
  if ctx.rod.technique == "surf" then
    return
  end
  local foot = ctx:need("intent.reel.foot_center_from_butt", "measure from the butt end to the middle of the reel foot")
  if foot.mm > LONGEST_BUTT_MM then
    ctx:emit {
      at = foot,
      numbers = { butt_mm = foot.mm, longest_mm = LONGEST_BUTT_MM },
      message = ("reel foot %.0f mm from the butt end; the club allows %.0f mm"):format(foot.mm, LONGEST_BUTT_MM),
      help = "Move the reel seat towards the butt, or shorten the rear grip.",
    }
  end
end

-- "A guide for every foot, and the tip-top": whole feet, surf rods excepted.
local function few_guides(ctx)
  if ctx.rod.technique == "surf" then
    return
  end
  local feet = math.floor(ctx:need("fit.overall_length_mm") / 304.8)
  local guides = #ctx.rod.guides
  if guides < feet then
    ctx:emit {
      at = "guides",
      numbers = { guides = guides, feet = feet },
      message = ("guides: %d on a rod of %d ft"):format(guides, feet),
      help = "Add running guides and look at the line in a static test.",
    }
  end
end

local function heavy(ctx)
  if ctx.rod.technique == "surf" then
    return
  end
  local mass = ctx:need("balance.mass_g", "weigh the parts that have no mass yet")
  local per_meter = mass / (ctx:need("fit.overall_length_mm") / 1000)
  if per_meter > HEAVIEST_G_PER_M then
    ctx:emit {
      at = "handle",
      numbers = { mass_g = mass, per_meter_g = per_meter, heaviest_g = HEAVIEST_G_PER_M },
      message = ("%.0f g per metre; the club's rods stay under %d"):format(per_meter, HEAVIEST_G_PER_M),
      help = "Look for the heaviest parts with withy show.",
    }
  end
end

local function lead(ctx)
  for _, part in ipairs(ctx.design.handle and ctx.design.handle.parts or {}) do
    if part.weights and part.weights.material == "lead" then
      ctx:emit {
        at = { part.weights, "material" },
        message = ("the counterweights in %s are of lead"):format(part.id or "a part"),
        help = "Use brass or tungsten; ask what your local rules say about lead.",
      }
    end
  end
end

return {
  api = 1,
  name = "house-rules",
  version = "1.0.0",
  license = "Apache-2.0",
  summary = "The rules of an invented club",
  checks = {
    { code = "unknown-class", severity = "error", summary = "The club has no such class", run = known_class },
    { code = "short-rod", severity = "warning", summary = "Shorter than its class allows", run = short_rod },
    { code = "long-butt", severity = "warning", summary = "Reel foot too far from the butt end", run = long_butt },
    { code = "few-guides", severity = "advice", summary = "Fewer guides than feet of rod", run = few_guides },
    { code = "heavy", severity = "advice", summary = "Heavier for its length than the club's rods", run = heavy },
    { code = "lead", severity = "warning", summary = "Counterweights of lead", run = lead },
  },
}
