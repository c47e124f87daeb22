-- expect: INVALID_ARGUMENT: there is no
-- The plugin's own table is a maze.
local maze = setmetatable({}, { __index = function(t) return t end })
maze.api, maze.name, maze.version, maze.license, maze.summary, maze.self = 1, "hostile", "1", "Apache-2.0", "Maze", maze
maze.checks = { maze }
return maze
