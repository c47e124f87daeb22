// Reads the values of the text form that are not messages: text, numbers, words.
#ifndef WITHY_DOCUMENT_TEXT_SCALAR_H_
#define WITHY_DOCUMENT_TEXT_SCALAR_H_

#include <cstdint>

#include "field_sink.h"
#include "reading.h"
#include "text_cursor.h"

namespace withy {

class TextScalarReader {
 public:
  TextScalarReader(TextCursor* cursor, FieldSink* sink, Reading* reading)
      : cursor_(*cursor), sink_(*sink), reading_(*reading) {}

  // Reads the value at hand into the field that the sink began last. A value of another kind is reported and passed.
  // False where no value is at hand at all: then nothing is reported. `in_list`: commas separate items.
  bool Read(bool in_list);

 private:
  void ReadText();
  // False where the field takes no number, or no bare word.
  bool ReadNumber(bool negative, std::uint32_t offset, bool in_list);
  bool ReadWord();
  void ReadDouble(bool negative, std::uint32_t offset, bool in_list);
  // Reports the number that begins at `offset` as one of the bench (`36 7/8`) and passes it.
  void RefuseBenchNumber(std::uint32_t offset);

  TextCursor& cursor_;
  FieldSink& sink_;
  Reading& reading_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_SCALAR_H_
