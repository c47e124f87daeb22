// The JSON form of a message, described as a JSON Schema (draft 2020-12) for editors and validators.
//
//   WriteFile("withy.schema.json", JsonSchema("Design"));
//
// Made from the schema and its comments: each field with its comment, range and what it refers to; known words as an
// `enum` beside `string`, so that an editor completes them and accepts others; exactly one unit in a quantity, by
// `if`/`then`, which names the field at fault where `oneOf` would not. Fields are listed by the schema's names; their
// lowerCamelCase names are accepted and not offered. A name that the schema does not have is refused, except in
// `extensions`, which hold what plugins like.
//
// The structure is what is described: ranges, dates and references are `CheckDocument`'s. The bytes are the same on any
// machine.
#ifndef WITHY_DOCUMENT_JSON_SCHEMA_H_
#define WITHY_DOCUMENT_JSON_SCHEMA_H_

#include <string>
#include <string_view>
#include <vector>

namespace withy {

// The messages that are files of their own: "Design", "Report", "CheckReport", "WorkPlan", "WhyReport",
// "Calibration".
std::vector<std::string_view> JsonSchemaNames();

// The schema of one of them, with a line feed at the end; empty for any other name.
std::string JsonSchema(std::string_view message);

}  // namespace withy

#endif  // WITHY_DOCUMENT_JSON_SCHEMA_H_
