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
