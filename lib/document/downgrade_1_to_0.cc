// The step back from version 1 to version 0.
//
// It works on a copy of the design: what version 0 can say is taken out of the copy as it is written, and what is left
// in the copy at the end is lost. So nothing can be forgotten, whatever is added to the schema later.
#include <google/protobuf/descriptor.h>
#include <google/protobuf/util/message_differencer.h>

#include <algorithm>
#include <string>
#include <utility>

#include "absl/strings/str_cat.h"
#include "upgrade_0_to_1.h"
#include "withy/document/upgrade.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::util::MessageDifferencer;

// The unit that lengths along the rod are written in: the first that the author used.
std::string UnitOf(const v1::Design& design) {
  const auto known = [](const v1::Length& length) { return length.has_mm() || length.has_inch(); };
  const v1::Length* first = &design.intent().overall_length();
  if (!known(*first) && design.blank().sections_size() > 0) {
    const v1::Section& section = design.blank().sections(0);
    first = &section.length();
    if (!known(*first) && section.taper().stations_size() > 0) first = &section.taper().stations(0).at();
  }
  if (!known(*first) && design.guides_size() > 0) first = &design.guides(0).from_tip();
  return first->has_inch() ? "inch" : "mm";
}

// Takes the number out of `length`, in `unit` ("mm" or "inch"), and says so where that is not the author's unit.
class Taker {
 public:
  Taker(std::string unit, std::vector<Loss>* losses) : unit_(std::move(unit)), losses_(losses) {}

  double Along(v1::Length* length, const FieldPath& at) { return In(unit_, length, at); }
  double Across(v1::Length* length, const FieldPath& at) { return In("mm", length, at); }
  double Grams(v1::Mass* mass, const FieldPath& at) {
    const Mass value = mass->has_oz()      ? Mass::Ounces(mass->oz())
                       : mass->has_grain() ? Mass::Grains(mass->grain())
                                           : Mass::Grams(mass->g());
    if (!mass->has_g()) Converted(at, value.grams(), "g");
    mass->clear_unit();
    return value.grams();
  }

 private:
  double In(const std::string& unit, v1::Length* length, const FieldPath& at) {
    const Length value = length->has_inch()   ? Length::Inches(length->inch())
                         : length->has_in64() ? Length::In64(length->in64())
                                              : Length::Mm(length->mm());
    const bool as_written = unit == "inch" ? length->has_inch() : length->has_mm();
    double number = unit == "inch" ? value.inches() : value.mm();
    if (as_written) {
      number = unit == "inch" ? length->inch() : length->mm();  // exactly as written
    } else {
      Converted(at, number, unit);
    }
    length->clear_unit();
    return number;
  }
  void Converted(const FieldPath& at, double number, const std::string& unit) {
    losses_->push_back({at, absl::StrCat("its own unit; written as ", number, " ", unit)});
  }

  std::string unit_;
  std::vector<Loss>* losses_;
};

bool Known(const v1::Length& length) {
  return length.unit_case() != v1::Length::UNIT_NOT_SET;
}

void TakeSection(v1::Section* section, const FieldPath& at, Taker* taker, v0::Blank* blank) {
  bool taken = false;
  if (Known(section->length())) {
    blank->set_length(taker->Along(section->mutable_length(), FieldPath(at).Field("length")));
    taken = true;
  }
  for (int i = 0; i < section->taper().stations_size(); ++i) {
    v1::Station* station = section->mutable_taper()->mutable_stations(i);
    if (!Known(station->at()) || !Known(station->outer())) continue;
    const FieldPath row = FieldPath(at).Field("taper").Field("stations").Item("", i);
    v0::Station* old = blank->add_stations();
    old->set_at(taker->Along(station->mutable_at(), FieldPath(row).Field("at")));
    old->set_outer_mm(taker->Across(station->mutable_outer(), FieldPath(row).Field("outer")));
    taken = true;
  }
  if (section->mass().unit_case() != v1::Mass::UNIT_NOT_SET) {
    blank->set_mass_g(taker->Grams(section->mutable_mass(), FieldPath(at).Field("mass")));
    if (section->mass().source() == v1::Source::MEASURED) section->mutable_mass()->clear_source();
    taken = true;
  }
  if (taken && section->id() == kSectionIdFrom0) section->clear_id();
}

void TakeGuides(v1::Design* rest, Taker* taker, v0::Design* old) {
  for (int i = 0; i < rest->guides_size(); ++i) {
    v1::Guide* guide = rest->mutable_guides(i);
    if (!Known(guide->from_tip())) continue;
    const FieldPath at = FieldPath().Field("guides").Item(guide->id(), i).Field("from_tip");
    if (guide->id() == GuideIdFrom0(old->guides_from_tip_size())) guide->clear_id();
    old->add_guides_from_tip(taker->Along(guide->mutable_from_tip(), at));
  }
  std::reverse(old->mutable_guides_from_tip()->begin(), old->mutable_guides_from_tip()->end());
}

std::string IdOf(const Message& message) {
  const FieldDescriptor* id = message.GetDescriptor()->FindFieldByName("id");
  if (id == nullptr || id->is_repeated() || id->cpp_type() != FieldDescriptor::CPPTYPE_STRING) return "";
  return message.GetReflection()->GetString(message, id);
}

// Appends the outermost fields of `rest` that are as they were in `whole`. `rest` is `whole` less what was taken.
void ListWhatIsLeft(const Message& whole, const Message& rest, const FieldPath& at, std::vector<Loss>* losses) {
  const auto lose = [losses](FieldPath path) {
    std::string what = absl::StrCat("version 0 has no place for '", path.ToString(), "'");
    losses->push_back({std::move(path), std::move(what)});
  };
  const auto sub = [&](const Message& before, const Message& after, const FieldPath& path) {
    if (MessageDifferencer::Equals(before, after)) {
      lose(path);
    } else {
      ListWhatIsLeft(before, after, path, losses);
    }
  };
  std::vector<const FieldDescriptor*> fields;
  rest.GetReflection()->ListFields(rest, &fields);
  for (const FieldDescriptor* field : fields) {
    const FieldPath path = FieldPath(at).Field(field->name());
    if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE || field->is_map()) {
      lose(path);
    } else if (!field->is_repeated()) {
      sub(whole.GetReflection()->GetMessage(whole, field), rest.GetReflection()->GetMessage(rest, field), path);
    } else {
      for (int i = 0; i < rest.GetReflection()->FieldSize(rest, field); ++i) {
        const Message& before = whole.GetReflection()->GetRepeatedMessage(whole, field, i);
        sub(before, rest.GetReflection()->GetRepeatedMessage(rest, field, i), FieldPath(path).Item(IdOf(before), i));
      }
    }
  }
  const auto& unknown = rest.GetReflection()->GetUnknownFields(rest);
  for (int i = 0; i < unknown.field_count(); ++i) lose(FieldPath(at).Field(absl::StrCat(unknown.field(i).number())));
}

}  // namespace

v0::Design DowngradeTo0(const v1::Design& design, std::vector<Loss>* losses) {
  v0::Design old;
  v1::Design rest = design;
  old.set_format("withy/0");
  rest.clear_format();
  old.set_unit(UnitOf(design));
  Taker taker(old.unit(), losses);
  if (rest.has_identity()) {
    old.set_name(rest.identity().name());
    old.set_note(rest.identity().description());
    rest.mutable_identity()->clear_name();
    rest.mutable_identity()->clear_description();
  }
  if (rest.has_intent()) {
    old.set_technique(rest.intent().technique());
    rest.mutable_intent()->clear_technique();
    if (Known(rest.intent().overall_length())) {
      const FieldPath at = FieldPath().Field("intent").Field("overall_length");
      old.set_overall_length(taker.Along(rest.mutable_intent()->mutable_overall_length(), at));
    }
  }
  if (rest.has_blank()) {
    v0::Blank* blank = old.mutable_blank();
    blank->set_name(rest.blank().name());
    rest.mutable_blank()->clear_name();
    if (rest.blank().sections_size() > 0) {
      const FieldPath at = FieldPath().Field("blank").Field("sections").Item(rest.blank().sections(0).id(), 0);
      TakeSection(rest.mutable_blank()->mutable_sections(0), at, &taker, blank);
    }
    if (rest.blank().ByteSizeLong() == 0) rest.clear_blank();
  }
  TakeGuides(&rest, &taker, &old);
  ListWhatIsLeft(design, rest, FieldPath(), losses);
  return old;
}

}  // namespace withy
