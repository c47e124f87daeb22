-- From mm of the rod to mm of the drawing: the same scale along the axis and across it.
local gaps = require "gaps"

local M = {}

local SCALES = { 1, 1.5, 2, 2.5, 4, 5, 8, 10, 15, 20 }
local DETAIL_SCALES = { 0.5, 2 / 3, 1, 1.5, 2, 2.5, 4, 5 }
local DETAIL_HEIGHT = 50 -- mm that a detail may take
local AROUND = 8 -- mm of the rod on both sides of what a detail is of

local function number_option(ctx, name, low, high)
  local value = ctx.options[name]
  if not (value >= low and value <= high) then
    ctx:refuse(("option %s: from %g to %g, not %g"):format(name, low, high, value))
  end
  return value
end

local function ratio(scale)
  return scale < 1 and ("%g : 1"):format(1 / scale) or ("1 : %g"):format(scale)
end

local function make(width, scale, first, last, widened)
  local left = (width - (last - first) / scale) / 2
  return {
    width = width, scale = scale, first = first, last = last, gaps = widened,
    words = ("%s (%.1f mm on paper)"):format(ratio(scale), 50 / scale),
    x = function(mm) return left + (mm - first) / scale end,
    r = function(mm) return mm / scale end,
  }
end

local function scale_for(scales, length, width)
  for _, scale in ipairs(scales) do
    if length / scale <= width then
      return scale
    end
  end
  return scales[#scales]
end

function M.whole(ctx, handle, margin)
  local width = number_option(ctx, "width_mm", 150, 800)
  local widened = gaps.make(handle, number_option(ctx, "gaps", 1, 20))
  local scale = ctx.options.scale
  if scale == 0 then
    scale = scale_for(SCALES, handle.stop, width - 2 * margin - 6)
  else
    scale = number_option(ctx, "scale", 1, 20)
  end
  return make(width, scale, 0, handle.stop, widened)
end

-- From the first to the last place at which something is in a bore with the blank, or nil.
local function reach(handle)
  local first, last
  local function include(from, to)
    first, last = math.min(first or from, from), math.max(last or to, to)
  end
  if handle.host then
    include(math.max(handle.blank[1].at_mm, handle.host.start), handle.host.stop)
  end
  for _, part in ipairs(handle.parts) do
    for _, arbor in ipairs(part.arbors) do
      if arbor.start_mm then
        include(part.start, part.stop)
      end
    end
  end
  if not first then
    return nil
  end
  first = math.max(first, handle.blank[1].at_mm)
  return math.max(0, first - AROUND), math.min(handle.stop, last + AROUND)
end

local function widest(handle, first, last)
  local most = 5
  for _, part in ipairs(handle.parts) do
    for _, row in ipairs(part.start < last and part.stop > first and part.outer or {}) do
      most = math.max(most, 2 * row.radius)
    end
  end
  return most
end

-- The same handle nearer by, or nil where that would be no larger than `view`.
function M.detail(handle, view)
  if not handle.blank then
    return nil
  end
  local first, last = reach(handle)
  if not first or first >= last then
    return nil
  end
  local across = widest(handle, first, last) * view.width / DETAIL_HEIGHT
  local scale = scale_for(DETAIL_SCALES, math.max(last - first, across), view.width - 14)
  return scale < view.scale and make(view.width, scale, first, last, view.gaps) or nil
end

return M
