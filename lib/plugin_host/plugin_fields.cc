// The tables that a plugin writes.
#include "api_table.h"

namespace withy::plugin {

const std::vector<ApiField>& PluginFields() {
  static const std::vector<ApiField> fields = {
      {"api", "integer", "Version of this API that the plugin was written for: 1. Read before anything else.", true},
      {"name", "string", "Lower-case letters, digits and '-'. The first half of every code the plugin gives.", true},
      {"version", "string", "The plugin's own version, as people should see it.", true},
      {"license", "string", "SPDX expression.", true},
      {"summary", "string", "What it does, in one line without a full stop.", true},
      {"checks", "Check[]", "Checks it adds."},
      {"exporters", "Exporter[]", "Exporters it adds."},
      {"importers", "Importer[]", "Importers it adds."},
      {"practices", "Practice[]",
       "What is usual for guides, technique by technique, in place of withy's own figures. Of several plugins the one "
       "that "
       "is named first counts."},
  };
  return fields;
}

const std::vector<ApiField>& CheckFields() {
  static const std::vector<ApiField> fields = {
      {"code", "string", "Names the check; its findings have the code `plugin/code`.", true},
      {"severity", "string", "`\"error\"`, `\"warning\"` or `\"advice\"`.", true},
      {"summary", "string", "What is wrong when it speaks, in one line.", true},
      {"run", "function", "Looks at the design: `function(ctx)`.", true},
  };
  return fields;
}

const std::vector<ApiField>& ExporterFields() {
  static const std::vector<ApiField> fields = {
      {"name", "string", "Names the exporter.", true},
      {"extension", "string", "Ending of its main file, without the dot.", true},
      {"summary", "string", "What it writes, in one line.", true},
      {"options", "table", "Options by name, each an Option."},
      {"wants", "string[]",
       "Parts of the report that take long and are left out unless asked for. `\"placement\"`: where the guides would "
       "best "
       "stand (`ctx.report.placement`)."},
      {"run", "function", "Writes the files: `function(ctx)`.", true},
  };
  return fields;
}

const std::vector<ApiField>& ImporterFields() {
  static const std::vector<ApiField> fields = {
      {"name", "string", "Names the importer.", true},
      {"extensions", "string[]", "Endings of the files it reads, without the dot.", true},
      {"summary", "string", "What it reads, in one line.", true},
      {"options", "table", "Options by name, each an Option."},
      {"run", "function", "Reads the input: `function(ctx)`, returns a design as a table.", true},
  };
  return fields;
}

const std::vector<ApiField>& OptionFields() {
  static const std::vector<ApiField> fields = {
      {"type", "string", "`\"string\"`, `\"number\"` or `\"boolean\"`.", true},
      {"summary", "string", "What it chooses, in one line.", true},
      {"default", "any", "Its value where it is not given; without one it is then nil."},
  };
  return fields;
}

const std::vector<ApiField>& PracticeFields() {
  static const std::vector<ApiField> fields = {
      {"technique", "string", "A word of `intent.technique`, or `\"other: ...\"`.", true},
      {"source", "string", "Who says so, in at most 200 bytes; every finding that follows quotes it.", true},
      {"butt_guide_from_reel_mm", "number[]",
       "`{ least, most }`: middle of the reel's foot to the centre of the butt guide's ring. This and the next stand "
       "in "
       "place of both of withy's own."},
      {"butt_guide_from_butt_mm", "number[]", "`{ least, most }`: likewise from the butt end of the rod."},
      {"butt_ring_mm", "number[]", "`{ least, most }`: outer diameter of the butt guide's ring."},
      {"running_ring_mm", "number[]", "`{ least, most }`: likewise of the guide next to the tip-top."},
      {"guides", "number[]", "`{ least, most }`: how many guides, the tip-top not counted."},
      {"guides_per_foot", "number",
       "So many for each foot (304.8 mm) of the rod; `guides` then counts beyond that, as `{ 0, 2 }`. The sums are "
       "rounded "
       "to whole numbers."},
  };
  return fields;
}

const std::vector<ApiField>& RemarkFields() {
  static const std::vector<ApiField> fields = {
      {"message", "string", "What is wrong, in one line without a full stop.", true},
      {"at", "any",
       "Where: a value read from the design, a path (`\"guides[g5].from_tip\"`), or `{ value, \"field\" }`."},
      {"help", "string", "What to do at the bench."},
      {"numbers", "table", "Numbers it speaks of, by name; the unit is the end of the name: `{ length_mm = 1750 }`."},
      {"severity", "string", "Instead of the check's own; of an importer's remark `\"advice\"` unless given."},
      {"line", "integer", "Importers: line of the input, from 1."},
      {"column", "integer", "Importers: column of the input, from 1."},
  };
  return fields;
}

const std::vector<ApiField>& InputPlaceFields() {
  static const std::vector<ApiField> fields = {
      {"line", "integer", "Line of the input, from 1.", true},
      {"column", "integer", "Column of the input, from 1."},
  };
  return fields;
}

}  // namespace withy::plugin
