-- What withy's own rules say of one load: what speaks against loading it so, and where to look.
local list = require "withy.table"

local M = {}

local AGAINST = { ["line_load/folds"] = true, ["line_load/caution-angle"] = true }
local OF_PAST_TESTS = "line_load/static-test-differs"

-- A finding names the load that it is of.
local function of(known, strung)
  local named = ("load '%s'"):format(strung.id or "")
  return list.filter(known.findings, function(finding)
    return finding.code and finding.code:find("^line_load/") and finding.code ~= OF_PAST_TESTS
      and finding.message and finding.message:find(named, 1, true) ~= nil
  end)
end

local function sentence(finding, strung)
  local prefix = ("under load '%s' "):format(strung.id or "")
  local said = finding.message
  if said:sub(1, #prefix) == prefix then
    said = said:sub(#prefix + 1)
  end
  return said:sub(1, 1):upper() .. said:sub(2) .. "."
end

-- Sentences, each with what to do.
function M.against(known, strung)
  local found = list.filter(of(known, strung), function(finding) return AGAINST[finding.code] end)
  return list.map(found, function(finding)
    return sentence(finding, strung) .. (finding.help and " " .. finding.help or "")
  end)
end

-- Sentences.
function M.to_look_at(known, strung)
  local found = list.filter(of(known, strung), function(finding) return not AGAINST[finding.code] end)
  return list.map(found, function(finding) return sentence(finding, strung) end)
end

return M
