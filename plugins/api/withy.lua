---@meta
-- The plugin API of withy, version 1, for editors. Made from the tables in lib/plugin_host; not run by anything.
-- luacheck: ignore

---@class withy.Plugin
---@field api integer Version of this API that the plugin was written for: 1. Read before anything else.
---@field name string Lower-case letters, digits and '-'. The first half of every code the plugin gives.
---@field version string The plugin's own version, as people should see it.
---@field license string SPDX expression.
---@field summary string What it does, in one line without a full stop.
---@field checks? withy.Check[] Checks it adds.
---@field exporters? withy.Exporter[] Exporters it adds.
---@field importers? withy.Importer[] Importers it adds.
---@field practices? withy.Practice[] What is usual for guides, technique by technique, in place of withy's own figures. Of several plugins the one that is named first counts.

---@class withy.Check
---@field code string Names the check; its findings have the code `plugin/code`.
---@field severity string `"error"`, `"warning"` or `"advice"`.
---@field summary string What is wrong when it speaks, in one line.
---@field run function Looks at the design: `function(ctx)`.

---@class withy.Exporter
---@field name string Names the exporter.
---@field extension string Ending of its main file, without the dot.
---@field summary string What it writes, in one line.
---@field options? table Options by name, each an Option.
---@field wants? string[] Parts of the report that take long and are left out unless asked for. `"placement"`: where the guides would best stand (`ctx.report.placement`).
---@field run function Writes the files: `function(ctx)`.

---@class withy.Importer
---@field name string Names the importer.
---@field extensions string[] Endings of the files it reads, without the dot.
---@field summary string What it reads, in one line.
---@field options? table Options by name, each an Option.
---@field run function Reads the input: `function(ctx)`, returns a design as a table.

---@class withy.Option
---@field type string `"string"`, `"number"` or `"boolean"`.
---@field summary string What it chooses, in one line.
---@field default? any Its value where it is not given; without one it is then nil.

---@class withy.Practice
---@field technique string A word of `intent.technique`, or `"other: ..."`.
---@field source string Who says so, in at most 200 bytes; every finding that follows quotes it.
---@field butt_guide_from_reel_mm? number[] `{ least, most }`: middle of the reel's foot to the centre of the butt guide's ring. This and the next stand in place of both of withy's own.
---@field butt_guide_from_butt_mm? number[] `{ least, most }`: likewise from the butt end of the rod.
---@field butt_ring_mm? number[] `{ least, most }`: outer diameter of the butt guide's ring.
---@field running_ring_mm? number[] `{ least, most }`: likewise of the guide next to the tip-top.
---@field guides? number[] `{ least, most }`: how many guides, the tip-top not counted.
---@field guides_per_foot? number So many for each foot (304.8 mm) of the rod; `guides` then counts beyond that, as `{ 0, 2 }`. The sums are rounded to whole numbers.

---@class withy.Remark
---@field message string What is wrong, in one line without a full stop.
---@field at? any Where: a value read from the design, a path (`"guides[g5].from_tip"`), or `{ value, "field" }`.
---@field help? string What to do at the bench.
---@field numbers? table Numbers it speaks of, by name; the unit is the end of the name: `{ length_mm = 1750 }`.
---@field severity? string Instead of the check's own; of an importer's remark `"advice"` unless given.
---@field line? integer Importers: line of the input, from 1.
---@field column? integer Importers: column of the input, from 1.

---@class withy.InputPlace
---@field line integer Line of the input, from 1.
---@field column? integer Column of the input, from 1.

---@class withy.Context
---@field design withy.Design The design as written.
---@field rod withy.Rod The resolved rod: places worked out, models and defaults filled in; mm, g, degrees.
---@field report withy.Report What was computed.
---@field stem string The design's file name without folder and ending, as a plain file name.
---@field options table Declared options by name, defaults filled in; one that was not declared is an error.
---@field input string The bytes of the input.
---@field input_name string Name of the input, for messages.
local context = {}

---The value at a path; nil where anything on the way is not known. A path begins with `design.`, `rod.` or `report.`; without one it is looked up in the report, then in the design. List items are named by id, or counted from 0 as in findings.
---@param path string
---@return any
function context:get(path) end

---As get, for what the plugin cannot do without: where there is no value, a check ends as 'cannot tell' and an exporter is refused. The hint says what to measure; without one the report is asked.
---@param path string
---@param hint? string
---@return any
function context:need(path, hint) end

---The design's thing with that id, or nil.
---@param id string
---@return any
function context:find(id) end

---Gives one finding.
---@param remark withy.Remark
function context:emit(remark) end

---Ends the run in an orderly way; nothing it gave is kept. An importer says where its input is wrong.
---@param message string
---@param place? withy.InputPlace
function context:refuse(message, place) end

---Writes one file. The name is plain ([A-Za-z0-9._ -], no leading dot) and is used once.
---@param name string
---@param bytes string
function context:write(name, bytes) end

---@class withy.Node

---@overload fun(name: "withy.svg"): withy.svg
---@overload fun(name: "withy.sheet"): withy.sheet
---@overload fun(name: "withy.html"): withy.html
---@overload fun(name: "withy.units"): withy.units
---@overload fun(name: "withy.text"): withy.text
---@overload fun(name: "withy.table"): withy.table
---@overload fun(name: "withy.lengths"): withy.lengths
---@param name string
---@return any
function require(name) end

---Drawings at true scale: every number is in millimetres. Nodes are those of withy.html.
---@class withy.svg
local svg_module = {}

---The whole drawing; x to the right, y down.
---@param width number
---@param height number
---@param ... any
---@return withy.Node
function svg_module.drawing(width, height, ...) end

---A straight line.
---@param x1 number
---@param y1 number
---@param x2 number
---@param y2 number
---@param attributes? table
---@return withy.Node
function svg_module.line(x1, y1, x2, y2, attributes) end

---A rectangle.
---@param x number
---@param y number
---@param width number
---@param height number
---@param attributes? table
---@return withy.Node
function svg_module.rect(x, y, width, height, attributes) end

---A circle about (x, y).
---@param x number
---@param y number
---@param radius number
---@param attributes? table
---@return withy.Node
function svg_module.circle(x, y, radius, attributes) end

---An open line through points `{ x, y }`.
---@param points number[][]
---@param attributes? table
---@return withy.Node
function svg_module.polyline(points, attributes) end

---A closed line through points `{ x, y }`.
---@param points number[][]
---@param attributes? table
---@return withy.Node
function svg_module.polygon(points, attributes) end

---A path in the language of SVG.
---@param d string
---@param attributes? table
---@return withy.Node
function svg_module.path(d, attributes) end

---Text that begins at (x, y).
---@param x number
---@param y number
---@param s string
---@param attributes? table
---@return withy.Node
function svg_module.text(x, y, s, attributes) end

---Nodes with attributes in common.
---@param attributes table
---@param ... any
---@return withy.Node
function svg_module.group(attributes, ...) end

---Any other element.
---@param name string
---@param attributes table
---@param ... any
---@return withy.Node
function svg_module.element(name, attributes, ...) end

---A drawing as a file of its own.
---@param drawing withy.Node
---@return string
function svg_module.render(drawing) end

---Paper: sizes, style sheets and true scale.
---@class withy.sheet
local sheet_module = {}

---"A4", "Letter", "A3" or "Tabloid" as `{ name, width_mm, height_mm }`.
---@param name string
---@return table
function sheet_module.paper(name) end

---CSS for printing in black and white: `paper`, `margin_mm` (12), `landscape`. Without a paper it fits A4 and Letter.
---@param options? table
---@return string
function sheet_module.style(options) end

---A drawing of a rule, to see whether a page was printed at 100 %.
---@param length_mm number
---@return withy.Node
function sheet_module.scale_bar(length_mm) end

---A long strip on pages: `{ start_mm, end_mm }` each.
---@param length_mm number
---@param page_mm number
---@param overlap_mm? number
---@return table[]
function sheet_module.tiles(length_mm, page_mm, overlap_mm) end

---HTML as nodes. Text is escaped; attributes come in alphabetical order.
---@class withy.html
local html_module = {}

---An element. Children are text, numbers (at most three decimals), nodes and lists of these; nil is left out. An attribute that is true has no value; false leaves it out.
---@param name string
---@param attributes table
---@param ... any
---@return withy.Node
function html_module.element(name, attributes, ...) end

---A table of `head`, `rows`, `align` ("left", "right", "center" by column) and `class`.
---@param options table
---@return withy.Node
function html_module.table(options) end

---A whole document of `title`, `style` (CSS), `body` and `language` ("en").
---@param options table
---@return string
function html_module.page(options) end

---Text that stands for itself in HTML, SVG and attributes; control characters become a visible sign.
---@param s string
---@return string
function html_module.escape(s) end

---A node as text.
---@param node withy.Node
---@return string
function html_module.render(node) end

---Lengths and masses as people write and read them. Units are named as in the schema.
---@class withy.units
local units_module = {}

---`7' 3 1/2"`, `2222.5 mm`, `5/64 in` as a design holds it, `{ inch = 87.5 }`; or nil and why not. A number without a unit and a decimal comma are refused.
---@param s string
---@return table?
---@return string?
function units_module.length(s) end

---Likewise `1/4 oz`, `12 g`, `150 gr`.
---@param s string
---@return table?
---@return string?
function units_module.mass(s) end

---`convert(87, "inch", "mm")` is 2209.8.
---@param x number
---@param from string
---@param to string
---@return number
function units_module.convert(x, from, to) end

---`7' 3 1/2"`, to the nearest 1/16 unless told: cuts are laid out in 1/16, guides in 1/8.
---@param mm number
---@param denominator? integer
---@return string
function units_module.feet_inches(mm, denominator) end

---`87 1/2"`, likewise.
---@param mm number
---@param denominator? integer
---@return string
function units_module.inches(mm, denominator) end

---`5.5/64`, to the nearest half, as tip-top tubes are sold.
---@param mm number
---@return string
function units_module.in64(mm) end

---To the nearest multiple of `step`, halves away from zero.
---@param x number
---@param step number
---@return number
function units_module.round(x, step) end

---Text for tables, sheets and files. Widths count characters.
---@class withy.text
local text_module = {}

---Without white space at both ends.
---@param s string
---@return string
function text_module.trim(s) end

---Lines without their breaks (`\n` or `\r\n`); no empty one after the last break.
---@param s string
---@return string[]
function text_module.lines(s) end

---Parts between the separators, which are plain text.
---@param s string
---@param separator string
---@return string[]
function text_module.split(s, separator) end

---Lines of at most `width` characters, broken at white space.
---@param s string
---@param width integer
---@return string[]
function text_module.wrap(s, width) end

---With blanks up to `width`; `align` is "left" (unless given) or "right".
---@param s string
---@param width integer
---@param align? string
---@return string
function text_module.pad(s, width, align) end

---With that many decimals (none unless given); never "-0".
---@param x number
---@param decimals? integer
---@return string
function text_module.fixed(x, decimals) end

---"12.3 ± 0.4", both with that many decimals (none unless given); without what is nil, and "not known" where that is the value.
---@param value number?
---@param plus_minus number?
---@param decimals? integer
---@return string
function text_module.uncertain(value, plus_minus, decimals) end

---At most that many characters (one or more), the last of them an ellipsis where something was left out.
---@param s string
---@param most integer
---@return string
function text_module.clipped(s, most) end

---One row as RFC 4180 writes it, without a line break; a fraction has at most six decimals.
---@param cells any[]
---@param separator? string
---@return string
function text_module.csv_row(cells, separator) end

---The cells of one row as RFC 4180 writes it; or nil and what is wrong (a quote that is not closed).
---@param line string
---@param separator? string
---@return string[]?
---@return string?
function text_module.csv_cells(line, separator) end

---New lists from lists, those of the design included. The list that is given stays as it is.
---@class withy.table
local table_module = {}

---In ascending order of a key (a field's name, or a function of the item); equal ones keep their order.
---@param items any[]
---@param key? any
---@return any[]
function table_module.sort_by(items, key) end

---What `f` makes of each.
---@param items any[]
---@param f function
---@return any[]
function table_module.map(items, f) end

---Those that `f` is true of.
---@param items any[]
---@param f function
---@return any[]
function table_module.filter(items, f) end

---The first that `f` is true of, or nil.
---@param items any[]
---@param f function
---@return any
function table_module.find(items, f) end

---Sum of the items or of a key; nil counts as nothing.
---@param items any[]
---@param key? any
---@return number
function table_module.sum(items, key) end

---Of numbers in ascending order the largest that is not above `most`, else the first.
---@param numbers number[]
---@param most number
---@return number
function table_module.at_most(numbers, most) end

---Of numbers in ascending order the smallest that is not below `least`, else the last.
---@param numbers number[]
---@param least number
---@return number
function table_module.at_least(numbers, least) end

---Lengths along the rod in the units that a setting `units` of an exporter asks for: "mm", "inch", or "design" for those of the design.
---@class withy.lengths
local lengths_module = {}

---`unit` ("mm" or "in"), `mm` (of one unit), and `say(mm, plus_minus?)`: whole millimetres or sixteenths of an inch, with a plus-minus as many decimals as it has a use for. Refuses where the setting is none of the three.
---@param ctx withy.Context
---@return withy.Lengths
function lengths_module.asked(ctx) end

---@class withy.Design
---@field format? string
---@field identity? withy.Identity
---@field intent? withy.Intent
---@field load_cases withy.LoadCase[]
---@field blank? withy.Blank
---@field handle? withy.Handle
---@field guide_models withy.GuideModel[]
---@field guides withy.Guide[]
---@field tip_top? withy.TipTop
---@field threads withy.Thread[]
---@field wraps withy.Wrap[]
---@field inscriptions withy.Inscription[]
---@field adhesives withy.Adhesive[]
---@field finishes withy.Finish[]
---@field shop? withy.Shop
---@field wishes withy.Wish[]
---@field log withy.Entry[]
---@field waivers withy.Waiver[]
---@field extensions table<string, table>
---@field accessories withy.Accessory[]

---@class withy.Identity
---@field uuid? string
---@field name? string
---@field description? string
---@field authors withy.Author[]
---@field license? string
---@field revision? integer
---@field parent_digest? string
---@field tags string[]
---@field units? string
---@field changes withy.Change[]
---@field serial? string
---@field attachments withy.Attachment[]

---@class withy.Author
---@field name? string
---@field contact? string

---@class withy.Change
---@field date? string
---@field author? string
---@field summary? string

---@class withy.Attachment
---@field name? string
---@field media_type? string
---@field digest? string

---@class withy.Intent
---@field technique? string
---@field overall_length? withy.Length
---@field balance_from_butt? withy.Length
---@field holding_point_from_butt? withy.Length
---@field reel? withy.Reel
---@field line? withy.Line
---@field lure? withy.MassRange
---@field line_mass? withy.MassRange
---@field line_number? string
---@field hand? string
---@field customer? withy.Customer

---@class withy.Length
---@field unit? string the author's unit
---@field mm? number
---@field inch? number
---@field in64? number
---@field plus_minus? number
---@field source? string

---@class withy.Reel
---@field mass? withy.Mass
---@field foot_center_from_butt? withy.Length
---@field side? string
---@field spool_diameter? withy.Length
---@field spool_axis_height? withy.Length
---@field spool_axis_angle? withy.Angle
---@field spool_lip_from_foot_center? withy.Length
---@field center_of_mass_height? withy.Length

---@class withy.Mass
---@field unit? string the author's unit
---@field g? number
---@field oz? number
---@field grain? number
---@field plus_minus? number
---@field source? string

---@class withy.Angle
---@field unit? string the author's unit
---@field deg? number
---@field plus_minus? number
---@field source? string

---@class withy.Line
---@field strength? withy.Force
---@field diameter? withy.Length
---@field material? string
---@field friction? number
---@field knot_diameter? withy.Length

---@class withy.Force
---@field unit? string the author's unit
---@field n? number
---@field lbf? number
---@field kgf? number
---@field plus_minus? number
---@field source? string

---@class withy.MassRange
---@field min? withy.Mass
---@field max? withy.Mass

---@class withy.Customer
---@field name? string
---@field reach? withy.Length
---@field hand_size? string
---@field inscription? string
---@field note? string

---@class withy.LoadCase
---@field id? string
---@field lifted? withy.Mass
---@field tension? withy.Force
---@field at_tip boolean
---@field butt_angle? withy.Angle
---@field line_angle? withy.Angle
---@field clamp_from_butt? withy.Length

---@class withy.Blank
---@field name? string
---@field sections withy.Section[]
---@field joints withy.Joint[]
---@field rated_line? withy.ForceRange
---@field rated_lure? withy.MassRange
---@field rated_line_number? string
---@field rated_action? string
---@field rated_power? string
---@field rated_lift? withy.Force
---@field mass? withy.Mass
---@field bench withy.BenchReading[]
---@field cuts withy.PlannedCut[]
---@field serial? string
---@field item? withy.Item

---@class withy.Section
---@field id? string
---@field shape? string
---@field material? string
---@field length? withy.Length
---@field taper? withy.Taper
---@field modulus? withy.Modulus
---@field density? withy.Density
---@field mass? withy.Mass
---@field balance_from_butt? withy.Length
---@field spine? withy.Angle
---@field natural_bend? withy.Angle
---@field aligned_on? withy.Alignment
---@field spare_for? string
---@field splice? withy.Splice
---@field surface? string
---@field item? withy.Item

---@class withy.Taper
---@field reading? withy.Reading
---@field stations withy.Station[]

---@class withy.Reading
---@field source? string
---@field at_plus_minus? withy.Length
---@field diameter_plus_minus? withy.Length
---@field instrument? string
---@field date? string

---@class withy.Station
---@field at? withy.Length
---@field outer? withy.Length
---@field wall? withy.Length
---@field inner? withy.Length
---@field outer_across? withy.Length

---@class withy.Modulus
---@field unit? string the author's unit
---@field gpa? number
---@field msi? number
---@field plus_minus? number
---@field source? string

---@class withy.Density
---@field unit? string the author's unit
---@field g_per_cm3? number
---@field plus_minus? number
---@field source? string

---@class withy.Alignment
---@field used? string
---@field reason? string

---@class withy.Splice
---@field at? withy.Length
---@field material? string
---@field modulus? withy.Modulus
---@field density? withy.Density

---@class withy.Item
---@field catalogue? string
---@field number? string
---@field content_hash? string
---@field price? withy.Money
---@field note? string

---@class withy.Money
---@field currency? string
---@field amount? string

---@class withy.Joint
---@field id? string
---@field kind? string
---@field lower? string
---@field upper? string
---@field overlap? withy.Length
---@field gap? withy.Length
---@field spigot? withy.Spigot
---@field mass? withy.Mass
---@field bond? string
---@field mark? withy.Angle

---@class withy.Spigot
---@field length? withy.Length
---@field standing_out? withy.Length
---@field taper? withy.Taper
---@field fixed_in? string
---@field mass? withy.Mass

---@class withy.ForceRange
---@field min? withy.Force
---@field max? withy.Force

---@class withy.BenchReading
---@field id? string
---@field date? string
---@field clamp? withy.Length
---@field drop? withy.Drop
---@field beat? withy.Beat

---@class withy.Drop
---@field load? withy.Mass
---@field load_at? withy.Length
---@field read_at? withy.Length
---@field drop? withy.Length

---@class withy.Beat
---@field cycles? integer
---@field time? withy.Time
---@field mounted? withy.Mass
---@field mounted_at? withy.Length

---@class withy.Time
---@field unit? string the author's unit
---@field seconds? number
---@field minutes? number
---@field hours? number
---@field days? number
---@field plus_minus? number
---@field source? string

---@class withy.PlannedCut
---@field section? string
---@field at_end? string
---@field amount? withy.Length
---@field reason? string

---@class withy.Handle
---@field parts withy.Part[]
---@field blank_butt_from_butt? withy.Length

---@class withy.Part
---@field id? string
---@field kind? string
---@field name? string
---@field material? string
---@field place? withy.Place
---@field length? withy.Length
---@field outer withy.Ring[]
---@field bore withy.Ring[]
---@field plugs withy.PlugReading[]
---@field bore_known? string
---@field fitting? withy.Fitting
---@field mass? withy.Mass
---@field density? withy.Density
---@field balance_from_own_butt? withy.Length
---@field slides_on_from? string
---@field clamps_on boolean
---@field on? string
---@field bond? string
---@field loose boolean
---@field travel? withy.Length
---@field angle? withy.Angle
---@field seat? withy.Seat
---@field arbors withy.Arbor[]
---@field cavity? withy.Cavity
---@field weights? withy.Weights
---@field rings withy.GripRing[]
---@field layers withy.Layer[]
---@field held_by? string
---@field item? withy.Item

---@class withy.Place
---@field from_butt? withy.Length
---@field from_tip? withy.Length
---@field from_section_butt? withy.Length
---@field after? string
---@field before? string
---@field section? string
---@field gap? withy.Length

---@class withy.Ring
---@field at? withy.Length
---@field diameter? withy.Length

---@class withy.PlugReading
---@field plug? withy.Length
---@field depth? withy.Length
---@field entered_at? string

---@class withy.Fitting
---@field kind? string
---@field limit? number
---@field reamed boolean
---@field glue_clearance? withy.Length
---@field stop? withy.Length

---@class withy.Seat
---@field size? string
---@field foot_center? withy.Length
---@field thread_length? withy.Length
---@field fixed_hood? string
---@field neck? withy.Length
---@field insert_material? string
---@field trigger boolean

---@class withy.Arbor
---@field id? string
---@field kind? string
---@field at? withy.Length
---@field length? withy.Length
---@field outer? withy.Length
---@field bore withy.Ring[]
---@field tape_thickness? withy.Length
---@field density? withy.Density
---@field mass? withy.Mass
---@field bond? string

---@class withy.Cavity
---@field at? withy.Length
---@field length? withy.Length
---@field diameter? withy.Length

---@class withy.Weights
---@field count? integer
---@field unit_mass? withy.Mass
---@field unit_length? withy.Length
---@field unit_diameter? withy.Length
---@field material? string
---@field bond? string
---@field potted? string
---@field cover? withy.Length

---@class withy.GripRing
---@field material? string
---@field thickness? withy.Length

---@class withy.Layer
---@field material? string
---@field outer? withy.Length
---@field density? withy.Density

---@class withy.GuideModel
---@field id? string
---@field name? string
---@field form? string
---@field ring_outer? withy.Length
---@field ring_inner? withy.Length
---@field ring_height? withy.Length
---@field foot_length? withy.Length
---@field foot_width? withy.Length
---@field foot_thickness? withy.Length
---@field mass? withy.Mass
---@field frame_material? string
---@field ring_material? string
---@field item? withy.Item

---@class withy.Guide
---@field id? string
---@field model? string
---@field from_tip? withy.Length
---@field angle? withy.Angle
---@field foot_towards? string
---@field locked boolean

---@class withy.TipTop
---@field id? string
---@field name? string
---@field tube_bore? withy.Length
---@field tube_length? withy.Length
---@field ring_outer? withy.Length
---@field ring_inner? withy.Length
---@field ring_height? withy.Length
---@field end_beyond_tube? withy.Length
---@field ring_center_beyond_tube? withy.Length
---@field mass? withy.Mass
---@field bond? string
---@field item? withy.Item
---@field angle? withy.Angle

---@class withy.Thread
---@field id? string
---@field size? string
---@field turns_per_10_mm? number
---@field diameter? withy.Length
---@field tex? number
---@field color? string
---@field material? string
---@field preserved boolean
---@field spool_length? withy.Length
---@field item? withy.Item

---@class withy.Wrap
---@field id? string
---@field kind? string
---@field on string[]
---@field place? withy.Place
---@field length? withy.Length
---@field beyond_foot? withy.Length
---@field before_ring? withy.Length
---@field thread? string
---@field layers? integer
---@field turns? integer
---@field ramp? withy.Ramp
---@field pattern? withy.Pattern
---@field coats string[]
---@field joint_side? string
---@field changes withy.ThreadChange[]

---@class withy.Ramp
---@field high_end? string
---@field high? withy.Length

---@class withy.Pattern
---@field name? string
---@field axes? integer
---@field repeats? integer
---@field crossing? withy.Angle
---@field threads string[]

---@class withy.ThreadChange
---@field at? withy.Length
---@field thread? string

---@class withy.Inscription
---@field id? string
---@field text? string
---@field kind? string
---@field place? withy.Place
---@field length? withy.Length
---@field angle? withy.Angle
---@field coats string[]

---@class withy.Adhesive
---@field id? string
---@field name? string
---@field kind? string
---@field mix? withy.Mix
---@field item? withy.Item
---@field pack? withy.Volume

---@class withy.Mix
---@field by_volume? withy.Parts
---@field by_mass? withy.Parts
---@field density? withy.Density
---@field solids? number
---@field pot_life? withy.Time
---@field pot_life_at? withy.Temperature
---@field pot_life_mass? withy.Mass
---@field set? withy.Time
---@field full_cure? withy.Time
---@field cure_at? withy.Temperature

---@class withy.Parts
---@field resin? number
---@field hardener? number

---@class withy.Temperature
---@field unit? string the author's unit
---@field celsius? number
---@field fahrenheit? number
---@field plus_minus? number
---@field source? string

---@class withy.Volume
---@field unit? string the author's unit
---@field ml? number
---@field fl_oz? number
---@field plus_minus? number
---@field source? string

---@class withy.Finish
---@field id? string
---@field name? string
---@field kind? string
---@field mix? withy.Mix
---@field coats? integer
---@field film? withy.Length
---@field beyond_thread? withy.Length
---@field recoat_after? withy.Time
---@field recoat_before? withy.Time
---@field item? withy.Item
---@field pack? withy.Volume

---@class withy.Shop
---@field rates withy.Rate[]
---@field smallest_batch? withy.Volume
---@field thread_waste? number
---@field adhesive_waste? number
---@field counterweight_unit? withy.Mass
---@field saw_kerf? withy.Length
---@field largest_single_cut? withy.Length
---@field temperature? withy.Temperature
---@field margin? number
---@field tax? number
---@field exchange withy.Exchange[]
---@field consumables withy.Consumable[]
---@field last_cut? withy.Length
---@field winding_check_bores withy.Length[]
---@field gluing_time? withy.Time

---@class withy.Rate
---@field work? string
---@field per_hour? withy.Money

---@class withy.Exchange
---@field currency? string
---@field costs? withy.Money
---@field date? string

---@class withy.Consumable
---@field name? string
---@field per_rod? withy.Money

---@class withy.Wish
---@field first? string
---@field later? string
---@field reason? string

---@class withy.Entry
---@field date? string
---@field by? string
---@field note? string
---@field cut? withy.Cut
---@field fit? withy.Fit
---@field weighed? withy.Weighed
---@field calipered? withy.Calipered
---@field glued? withy.Glued
---@field coated? withy.Coated
---@field placed? withy.Placed
---@field done? withy.Done
---@field correction? withy.Correction
---@field removed? withy.Removed
---@field breakage? withy.Breakage
---@field static_test? withy.StaticTest
---@field test_cast? withy.TestCast
---@field potted? withy.Potted
---@field id? string
---@field instead_of? string

---@class withy.Cut
---@field section? string
---@field at_end? string
---@field amount? withy.Length

---@class withy.Fit
---@field part? string
---@field overall? withy.Length
---@field stand_out? withy.Length
---@field arbors_on boolean

---@class withy.Weighed
---@field what string[]
---@field mass? withy.Mass
---@field balance_from_butt? withy.Length
---@field with_reel boolean
---@field weights? integer
---@field missing string[]

---@class withy.Calipered
---@field section? string
---@field taper? withy.Taper

---@class withy.Glued
---@field what string[]
---@field bond? string
---@field lot? string
---@field mixed? withy.Mass
---@field temperature? withy.Temperature
---@field by_volume? withy.Parts
---@field by_mass? withy.Parts

---@class withy.Coated
---@field what string[]
---@field finish? string
---@field lot? string
---@field temperature? withy.Temperature

---@class withy.Placed
---@field what? string
---@field place? withy.Place

---@class withy.Done
---@field step? string
---@field what string[]

---@class withy.Correction
---@field entry? string
---@field reason? string

---@class withy.Removed
---@field what string[]
---@field reason? string

---@class withy.Breakage
---@field what? string
---@field from_tip? withy.Length
---@field cause? string

---@class withy.StaticTest
---@field lifted? withy.Mass
---@field butt_angle? withy.Angle
---@field line_touched boolean
---@field observation? string
---@field line_angle? withy.Angle
---@field clamp_from_butt? withy.Length
---@field tip_drop? withy.Length
---@field touched_after string[]

---@class withy.TestCast
---@field weight? withy.Mass
---@field distance? withy.Length
---@field observation? string

---@class withy.Potted
---@field part? string
---@field count? integer
---@field bond? string
---@field mixed? withy.Mass
---@field lot? string

---@class withy.Waiver
---@field code? string
---@field at? string
---@field reason? string
---@field by? string
---@field date? string

---@class withy.Accessory
---@field name? string
---@field inner_length? withy.Length
---@field item? withy.Item

---@class withy.Rod
---@field technique? string
---@field overall_length_mm? number
---@field blank_butt_mm? number
---@field blank_tip_mm? number
---@field tip_ring_mm? number
---@field blank withy.ProfileRow[]
---@field sections withy.RodSection[]
---@field parts withy.RodPart[]
---@field guides withy.RodGuide[]
---@field wraps withy.RodWrap[]
---@field tip_top? withy.RodTipTop
---@field reel_foot_mm? number

---@class withy.ProfileRow
---@field at_mm? number
---@field diameter_mm? number

---@class withy.RodSection
---@field id? string
---@field start_mm? number
---@field length_mm? number
---@field cut_butt_mm? number
---@field cut_tip_mm? number
---@field inner withy.ProfileRow[]

---@class withy.RodPart
---@field id? string
---@field kind? string
---@field start_mm? number
---@field length_mm? number
---@field outer withy.ProfileRow[]
---@field bore withy.ProfileRow[]
---@field mass_g? number
---@field on? string
---@field loose boolean
---@field bore_known? string
---@field fitting? string
---@field cavity? withy.RodCavity
---@field weights? withy.RodWeights

---@class withy.RodCavity
---@field start_mm? number
---@field length_mm? number
---@field diameter_mm? number

---@class withy.RodWeights
---@field count? integer
---@field unit_mass_g? number
---@field unit_length_mm? number
---@field unit_diameter_mm? number
---@field cover_mm? number

---@class withy.RodGuide
---@field id? string
---@field model? string
---@field form? string
---@field from_butt_mm? number
---@field from_tip_mm? number
---@field angle_deg? number
---@field ring_outer_mm? number
---@field ring_inner_mm? number
---@field ring_height_mm? number
---@field foot_length_mm? number
---@field mass_g? number
---@field locked boolean

---@class withy.RodWrap
---@field id? string
---@field kind? string
---@field on? string
---@field thread? string
---@field start_mm? number
---@field length_mm? number
---@field layers? integer

---@class withy.RodTipTop
---@field id? string
---@field tube_bore_mm? number
---@field tube_length_mm? number
---@field mass_g? number

---@class withy.Report
---@field format? string
---@field design_digest? string
---@field assumptions withy.Assumption[]
---@field unknown withy.Unknown[]
---@field sections? withy.SectionsReport
---@field fit? withy.FitReport
---@field guides? withy.GuidesReport
---@field wraps? withy.WrapsReport
---@field balance? withy.BalanceReport
---@field bonding? withy.BondingReport
---@field bending? withy.BendingReport
---@field line_load? withy.LineLoadReport
---@field placement? withy.PlacementReport
---@field closed withy.ClosedFact[]
---@field findings withy.FindingRecord[]

---@class withy.Assumption
---@field at? string
---@field used? string
---@field why? string

---@class withy.Unknown
---@field figure? string
---@field measure? string

---@class withy.SectionsReport
---@field sections withy.SectionReport[]
---@field pieces? integer
---@field packed_length_mm? number
---@field packed_length_plus_minus_mm? number
---@field blank_length_mm? number
---@field blank_length_plus_minus_mm? number
---@field tip_diameter_mm? number
---@field tip_diameter_plus_minus_mm? number
---@field butt_diameter_mm? number
---@field butt_diameter_plus_minus_mm? number

---@class withy.SectionReport
---@field id? string
---@field cut_butt_mm? number
---@field cut_tip_mm? number
---@field length_mm? number
---@field mass_g? number
---@field mass_plus_minus_g? number
---@field balance_from_butt_mm? number
---@field balance_from_butt_plus_minus_mm? number
---@field mass_from? string
---@field at_mm number[]
---@field outer_mm number[]
---@field wall_mm number[]
---@field ei_n_m2 number[]
---@field inertia_at_balance_kg_m2? number

---@class withy.FitReport
---@field overall_length_mm? number
---@field overall_length_plus_minus_mm? number
---@field short_of_target_mm? number
---@field blank_butt_mm? number
---@field blank_tip_mm? number
---@field parts withy.FittedPart[]
---@field tip_ring_mm? number
---@field tip_tube_clearance_mm? number
---@field rest_from? string
---@field cut_plan? withy.CutPlan
---@field mouth_play_mm? number
---@field tip_off_axis_mm? number
---@field reaming withy.ReamTable[]
---@field winding_checks withy.WindingCheckFit[]
---@field tip_off_axis_with_arbors_mm? number

---@class withy.FittedPart
---@field id? string
---@field start_mm? number
---@field length_mm? number
---@field blank_at_start_mm? number
---@field blank_at_tip_side_mm? number
---@field clearance_mm? number
---@field arbors withy.FittedArbor[]

---@class withy.FittedArbor
---@field id? string
---@field start_mm? number
---@field length_mm? number
---@field blank_mm? number
---@field bore_mm? number
---@field outer_mm? number
---@field turns? integer
---@field tape_length_mm? number
---@field gap_mm? number
---@field place? string
---@field proposed boolean

---@class withy.CutPlan
---@field host? string
---@field bore_from? string
---@field cut_done_mm? number
---@field cut_planned_mm? number
---@field cut_for_target_mm? number
---@field cut_for_target_plus_minus_mm? number
---@field outcome? string
---@field nearest_below_mm? number
---@field nearest_above_mm? number
---@field verdict? string
---@field measure? string
---@field jump_near boolean
---@field tighter_than_read_mm? number
---@field lengths withy.LengthAtCut[]
---@field stages withy.StagedCut[]
---@field dry_fits withy.DryFitSeen[]
---@field remedies withy.Remedy[]
---@field tip? withy.TipLever
---@field now? withy.Resting
---@field planned? withy.Resting

---@class withy.LengthAtCut
---@field cut_mm? number
---@field overall_mm? number
---@field overall_before_mm? number
---@field shorter_per_mm? number

---@class withy.StagedCut
---@field take_mm? number
---@field total_mm? number
---@field leave_mm? number
---@field expect_mm? number
---@field expect_from_mm? number
---@field expect_to_mm? number
---@field overall_mm? number
---@field depth_mark_mm? number
---@field decides boolean

---@class withy.DryFitSeen
---@field at? string
---@field cut_mm? number
---@field read_mm? number
---@field expected_mm? number
---@field tighter_mm? number
---@field rest_mm? number
---@field bore_mm? number

---@class withy.Remedy
---@field kind? string
---@field blocked_by? string
---@field text? string
---@field overall_mm? number

---@class withy.TipLever
---@field cut_mm? number
---@field tip_diameter_mm? number
---@field tube_in64? number
---@field stiffer? number

---@class withy.Resting
---@field butt_mm? number
---@field depth_mm? number
---@field shorter_per_mm? number
---@field contacts withy.Contact[]

---@class withy.Contact
---@field kind? string
---@field from_mm? number
---@field to_mm? number
---@field bore_mm? number
---@field on_blank_mm? number

---@class withy.ReamTable
---@field part? string
---@field rows withy.ReamRow[]

---@class withy.ReamRow
---@field at_mm? number
---@field blank_mm? number
---@field ream_mm? number
---@field bore_mm? number

---@class withy.WindingCheckFit
---@field part? string
---@field blank_mm? number
---@field bore_mm? number
---@field gap_mm? number
---@field next_bore_mm? number
---@field next_stops_ahead_mm? number
---@field ream_mm? number

---@class withy.GuidesReport
---@field guides withy.PlacedGuide[]

---@class withy.PlacedGuide
---@field id? string
---@field from_tip_mm? number
---@field from_butt_mm? number
---@field ring_height_mm? number
---@field ring_inner_mm? number
---@field blank_diameter_mm? number
---@field mass_g? number
---@field model? string

---@class withy.WrapsReport
---@field wraps withy.PlacedWrap[]
---@field threads withy.ThreadTotal[]

---@class withy.PlacedWrap
---@field id? string
---@field on? string
---@field thread? string
---@field start_mm? number
---@field length_mm? number
---@field turns? number
---@field thread_length_mm? number
---@field mass_g? number

---@class withy.ThreadTotal
---@field id? string
---@field length_mm? number

---@class withy.BalanceReport
---@field mass_g? number
---@field mass_plus_minus_g? number
---@field balance_from_butt_mm? number
---@field balance_from_butt_plus_minus_mm? number
---@field mass_with_reel_g? number
---@field balance_with_reel_mm? number
---@field balance_with_reel_plus_minus_mm? number
---@field moment_about_hold_n_m? number
---@field inertia_about_hold_kg_m2? number
---@field parts withy.PlacedPart[]
---@field remainder_g? number
---@field swing_inertia_kg_m2? number
---@field moment_about_hold_plus_minus_n_m? number
---@field counterweights? withy.CounterweightPlan
---@field instead withy.BalanceRemedy[]
---@field rests_on? string
---@field aim_from_butt_mm? number
---@field aim? string

---@class withy.PlacedPart
---@field id? string
---@field at? string
---@field start_mm? number
---@field length_mm? number
---@field mass_g? number
---@field mass_plus_minus_g? number
---@field center_mm? number
---@field mass_from? string
---@field weights_of? string

---@class withy.CounterweightPlan
---@field part? string
---@field status? string
---@field count? integer
---@field count_planned? integer
---@field fit? integer
---@field side_by_side? integer
---@field unit_mass_g? number
---@field mass_g? number
---@field potting_g? number
---@field potting_ml? number
---@field moment_without_n_m? number
---@field moment_before_potting_n_m? number
---@field moment_after_n_m? number
---@field moment_after_plus_minus_n_m? number
---@field moment_with_one_more_n_m? number
---@field count_if_potting_ignored? integer
---@field stop_short_at_tip_g? number
---@field added_mass_g? number
---@field added_inertia_kg_m2? number
---@field confidence? string
---@field potted? string
---@field balance_after_mm? number

---@class withy.BalanceRemedy
---@field kind? string
---@field what? string
---@field mass_g? number
---@field longer_mm? number
---@field text? string

---@class withy.BondingReport
---@field joints withy.GluedJoint[]
---@field batches withy.MixedBatch[]
---@field totals withy.AdhesiveTotal[]

---@class withy.GluedJoint
---@field what? string
---@field at? string
---@field adhesive? string
---@field potting boolean
---@field from_mm? number
---@field to_mm? number
---@field area_cm2? number
---@field gap_mm? number
---@field volume_ml? number
---@field arbors_ml? number
---@field fillets_ml? number
---@field mass_g? number
---@field done boolean
---@field working_minutes? number
---@field pot_life_minutes? number
---@field volume_after_cuts_ml? number
---@field proposed_arbors_ml? number

---@class withy.MixedBatch
---@field adhesive? string
---@field joints string[]
---@field need_ml? number
---@field mix_ml? number
---@field smallest_decides boolean
---@field resin_ml? number
---@field hardener_ml? number
---@field resin_g? number
---@field hardener_g? number
---@field working_minutes? number
---@field pot_life_minutes? number
---@field at_celsius? number
---@field set_minutes? number
---@field joint_at string[]
---@field potting boolean
---@field mix_after_cuts_ml? number

---@class withy.AdhesiveTotal
---@field adhesive? string
---@field mix_ml? number
---@field mix_g? number

---@class withy.BendingReport
---@field bare? withy.BendingOf
---@field finished? withy.BendingOf
---@field losses withy.FrequencyLoss[]
---@field train_costs_hz? number
---@field modulus_from? string

---@class withy.BendingOf
---@field clamp_mm? number
---@field free_length_mm? number
---@field at_mm number[]
---@field ei_n_m2 number[]
---@field cases withy.BentShape[]
---@field power? withy.PowerReading
---@field frequency_hz number[]
---@field frequency_plus_minus_hz? number

---@class withy.BentShape
---@field id? string
---@field at? string
---@field state? string
---@field reached? number
---@field load_n? number
---@field load_angle_deg? number
---@field butt_angle_deg? number
---@field at_mm number[]
---@field forward_mm number[]
---@field up_mm number[]
---@field moment_n_m number[]
---@field strain_millistrain number[]
---@field tip_drop_mm? number
---@field tip_drop_plus_minus_mm? number
---@field tip_angle_deg? number
---@field clamp_moment_n_m? number
---@field clamp_moment_plus_minus_n_m? number
---@field peak_strain_millistrain? number
---@field peak_strain_plus_minus_millistrain? number
---@field peak_at_mm? number
---@field strain_energy_j? number
---@field error_mm? number
---@field clamp_mm? number

---@class withy.PowerReading
---@field load_g? number
---@field load_plus_minus_g? number
---@field coins? number
---@field tip_angle_deg? number
---@field action? string
---@field line_number? number

---@class withy.FrequencyLoss
---@field id? string
---@field at? string
---@field hz? number

---@class withy.LineLoadReport
---@field cases withy.StrungRod[]

---@class withy.StrungRod
---@field id? string
---@field at? string
---@field state? string
---@field reached? number
---@field tension_n? number
---@field tension_plus_minus_n? number
---@field line_angle_deg? number
---@field butt_angle_deg? number
---@field clamp_mm? number
---@field rings_stand? string
---@field reel_mm? number
---@field reel_height_mm? number
---@field reel_forward_mm? number
---@field reel_up_mm? number
---@field at_mm number[]
---@field forward_mm number[]
---@field up_mm number[]
---@field moment_n_m number[]
---@field guides_moment_n_m number[]
---@field strain_millistrain number[]
---@field rings withy.RingUnderLine[]
---@field spans withy.LineSpan[]
---@field tip_angle_deg? number
---@field tip_angle_plus_minus_deg? number
---@field tip_to_line_deg? number
---@field tip_drop_mm? number
---@field tip_drop_plus_minus_mm? number
---@field clamp_moment_n_m? number
---@field clamp_moment_plus_minus_n_m? number
---@field peak_strain_millistrain? number
---@field peak_at_mm? number
---@field strain_energy_j? number
---@field tension_at_reel_n? number
---@field friction_loss_percent? number
---@field clearance_mm? number
---@field clearance_at_mm? number
---@field most_turned? string
---@field most_turn_deg? number
---@field most_turn_plus_minus_deg? number
---@field line_path_mm? number
---@field error_mm? number

---@class withy.RingUnderLine
---@field id? string
---@field at? string
---@field from_butt_mm? number
---@field offset_mm? number
---@field forward_mm? number
---@field up_mm? number
---@field aside_mm? number
---@field blank_angle_deg? number
---@field line_in_deg? number
---@field line_out_deg? number
---@field turn_deg? number
---@field force_n? number
---@field force_along_n? number
---@field force_across_n? number
---@field tension_in_n? number
---@field tension_out_n? number

---@class withy.LineSpan
---@field from_ring? string
---@field to_ring? string
---@field length_mm? number
---@field direction_deg? number
---@field tension_n? number
---@field clearance_mm? number
---@field clearance_at_mm? number

---@class withy.PlacementReport
---@field state? string
---@field why? string
---@field loads withy.PlacementLoad[]
---@field gaps_never_grow boolean
---@field grid_mm? number
---@field guides withy.PlacedFor[]
---@field now? withy.GuideLayout
---@field proposed? withy.GuideLayout
---@field classics withy.GuideLayout[]
---@field other_rule? withy.GuideLayout
---@field one_fewer? withy.GuideLayout
---@field one_more? withy.GuideLayout
---@field one_off_by_3_mm_percent? number
---@field most_critical? string
---@field notes string[]
---@field solutions? integer

---@class withy.PlacementLoad
---@field id? string
---@field at? string
---@field tension_n? number
---@field line_angle_deg? number
---@field weight? number
---@field clearance_mm? number

---@class withy.PlacedFor
---@field id? string
---@field model? string
---@field model_was? string
---@field from_tip_mm? number
---@field from_tip_was_mm? number
---@field from_butt_mm? number
---@field offset_mm? number
---@field locked boolean
---@field turn_deg? number
---@field under? string
---@field off_by_3_mm_percent? number
---@field bound_by? string

---@class withy.GuideLayout
---@field name? string
---@field from_tip_mm number[]
---@field turn_deg? number
---@field at_guide? string
---@field under? string
---@field blank_turn_deg? number
---@field clearance_mm? number
---@field keeps_limits boolean
---@field breaks? string
---@field cases withy.StrungRod[]

---@class withy.ClosedFact
---@field kind? string
---@field what? string
---@field at? string
---@field at_end? string
---@field amount_mm? number
---@field count? integer

---@class withy.FindingRecord
---@field code? string
---@field severity? string
---@field at? string
---@field related string[]
---@field numbers withy.NamedNumber[]
---@field message? string
---@field help? string
---@field from_tip_mm? number
---@field line? integer
---@field column? integer
---@field offset? integer

---@class withy.NamedNumber
---@field name? string
---@field value? number

