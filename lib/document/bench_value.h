// Quantities as people write them at the bench, where a file takes a decimal number under the name of its unit: how far
// such a value goes, and what to write instead.
//
//   BenchText("36 7/8\" } id: ...")                     // `36 7/8"`
//   HowToWriteNumber("Length", "mm", "93.7 cm")         // "Write `mm: 937`."
//   HowToWriteQuantity("from_tip", "Length", "36 7/8")  // "Write `from_tip { inch: 36.875 }`."
//   HowToWriteUnit("Length", "ft", "7")                 // "Write `inch: 84`."
//
// Only called where a value has turned out not to be a plain number. Sentences are whole, of the text form, and empty
// where nothing can be told. `kind` is the schema's name of a quantity ("Length") or any other message's. A fraction
// that names no unit is taken as one of an inch.
#ifndef WITHY_DOCUMENT_BENCH_VALUE_H_
#define WITHY_DOCUMENT_BENCH_VALUE_H_

#include <string>
#include <string_view>

namespace withy {

// The value that `rest` begins with: to the end of the line, or a bracket, comma, comment or field name before it. Not
// empty where `rest` begins with a number.
std::string_view BenchText(std::string_view rest);

// For `text` as the value of the number `field` ("inch", "plus_minus") of a message of `kind`.
std::string HowToWriteNumber(std::string_view kind, std::string_view field, std::string_view text);

// For `text` as the value of the field `name`, which is a quantity of `kind`.
std::string HowToWriteQuantity(std::string_view name, std::string_view kind, std::string_view text);

// For `text` alone between the braces of a quantity of `kind`.
std::string HowToWriteNameless(std::string_view kind, std::string_view text);

// For a field `word` that `kind` does not have, with the value `text` (empty where it is not at hand): what that unit
// is in one the schema has, or of what other kind it is. Empty where `word` is no unit or `kind` no quantity.
std::string HowToWriteUnit(std::string_view kind, std::string_view word, std::string_view text);

// "`mm`, `inch` or `in64`": the fields that a quantity of `kind` may be written under.
std::string UnitsInWords(std::string_view kind);

}  // namespace withy

#endif  // WITHY_DOCUMENT_BENCH_VALUE_H_
