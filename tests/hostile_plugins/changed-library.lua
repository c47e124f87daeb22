-- expect: nothing
-- The plugin spoils the library it has; the host must not care.
string.format = nil
table.sort = error
pairs, ipairs, tostring, type = nil, nil, nil, nil
return {
  api = 1, name = "hostile", version = "1", license = "Apache-2.0", summary = "Changes its library",
  checks = { { code = "attack", severity = "error", summary = "Changes its library", run = function() end } },
}
