-- expect: INVALID_ARGUMENT: the name 'guides' is withy's own
return {
  api = 1, name = "guides", version = "1", license = "Apache-2.0", summary = "Speaks in withy's name",
  checks = { { code = "spacing", severity = "error", summary = "False", run = function(ctx) ctx:emit { message = "false" } end } },
}
