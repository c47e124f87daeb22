-- How wide the columns of a table are: CSS lengths, in order.
local html = require "withy.html"
local list = require "withy.table"

return function(widths)
  return html.element("colgroup", {}, list.map(widths, function(width)
    return html.element("col", { style = "width:" .. width })
  end))
end
