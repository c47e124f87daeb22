-- A check: looks at a design and says what is wrong with it. The API is in plugins/api/manual.md of withy.
return {
  api = 1,
  name = "PLUGIN-NAME",
  version = "0.1.0",
  license = "Apache-2.0",
  summary = "Our own rules",
  checks = {
    {
      code = "short-rod",
      severity = "warning",
      summary = "Shorter than our shortest rod",
      run = function(ctx)
        -- Without a length this check ends here as 'cannot tell', and says what to add.
        local length = ctx:need("intent.overall_length", "Write the length ordered.")
        if length.mm < 1800 then
          ctx:emit {
            at = length,
            numbers = { length_mm = length.mm },
            message = "shorter than 1800 mm",
            help = "Ask before building it.",
          }
        end
      end,
    },
  },
}
