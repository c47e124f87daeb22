-- What stands against building from this sheet: errors of the design, and rules that could not be judged.
local text = require "withy.text"

local function count_of(rows, severity)
  local count = 0
  for _, row in ipairs(rows) do
    count = count + (row.severity == severity and 1 or 0)
  end
  return count
end

local function counted(count, one, many)
  return ("%s %s"):format(text.fixed(count, 0), count == 1 and one or many)
end

-- The length is not yet the one ordered, nothing else is wrong, and the cuts below bring it there.
local function cuts_mend(ctx, rows)
  local plan = ctx:get("fit.cut_plan")
  for _, row in ipairs(rows) do
    if row.severity == "error" and row.code ~= "fit/overall-length" then
      return false
    end
  end
  return plan and plan.outcome == "reached" and #plan.stages > 0
end

local function title(ctx, rows)
  local errors, open = count_of(rows, "error"), count_of(rows, "cannot tell")
  local questions = counted(open, "open question", "open questions")
  if errors > 0 and cuts_mend(ctx, rows) then
    return "Not yet the length ordered: the cuts in stages bring it there"
      .. (open > 0 and "; " .. questions or "")
  end
  if errors == 0 then
    return questions .. ": settle before the cut"
  end
  return ("Not to be built from: %s in the design%s"):format(
    counted(errors, "error", "errors"), open > 0 and ", " .. questions or "")
end

return function(ctx)
  local rows = {}
  for _, severity in ipairs { "error", "cannot tell" } do
    for _, finding in ipairs(ctx.report.findings) do
      if finding.severity == severity then
        rows[#rows + 1] = {
          item = severity, severity = severity, code = finding.code, strong = severity == "error",
          what = finding.message, help = finding.help,
        }
      end
    end
  end
  if #rows == 0 then
    return {}
  end
  return {
    {
      title = title(ctx, rows),
      class = "stop",
      datum = "",
      rows = rows,
      columns = {
        { key = "item", title = "", kind = "text" },
        { key = "what", title = "what", kind = "text" },
        { key = "help", title = "what to do", kind = "text", optional = true },
      },
    },
  }
end
