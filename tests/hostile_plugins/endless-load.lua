-- expect: RESOURCE_EXHAUSTED: endless-load.lua:2: ran for more than
while true do end
