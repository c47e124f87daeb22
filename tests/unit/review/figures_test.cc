// The declarations of figures against the schema: the descriptors of withy.v1.Report and withy.v1.Design are the
// outside.
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "declared_path.h"
#include "google/protobuf/descriptor.h"
#include "withy/review/why.h"
#include "withy/v1/design.pb.h"

namespace withy {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

const Descriptor& Report() {
  return *v1::Report::descriptor();
}
const Descriptor& Design() {
  return *v1::Design::descriptor();
}

// What is no result: what was assumed, is not known or was found; ids, references and paths.
const std::set<std::string> kNoResultMessages = {"Assumption", "Unknown", "FindingRecord"};
const std::set<std::string> kNoResultFields = {"format",   "design_digest", "id",       "at",         "on",
                                               "thread",   "model",         "host",     "part",       "what",
                                               "adhesive", "joints",        "joint_at", "blocked_by", "weights_of"};

// "mass_plus_minus_g" belongs to "mass_g".
bool IsPlusMinus(const FieldDescriptor& field) {
  return field.name().find("_plus_minus_") != std::string::npos;
}

void Collect(const Descriptor& type, const std::string& path, std::set<std::string>& results) {
  for (int i = 0; i < type.field_count(); ++i) {
    const FieldDescriptor& field = *type.field(i);
    const std::string here = path + (path.empty() ? "" : ".") + field.name();
    if (const Descriptor* inner = field.message_type()) {
      if (!kNoResultMessages.contains(inner->name()))
        Collect(*inner, here + (field.is_repeated() ? "[]" : ""), results);
    } else if (!IsPlusMinus(field) && !kNoResultFields.contains(field.name())) {
      results.insert(here);
    }
  }
}

std::set<std::string> Results() {
  std::set<std::string> results;
  Collect(Report(), "", results);
  return results;
}

TEST(Figures, EveryResultOfTheReportHasOne) {
  std::set<std::string> declared;
  for (const Figure& figure : Figures()) {
    EXPECT_TRUE(declared.insert(std::string(figure.name)).second) << figure.name << " is declared twice";
  }
  const std::set<std::string> results = Results();
  EXPECT_GT(results.size(), 150u);
  for (const std::string& result : results) EXPECT_TRUE(declared.contains(result)) << result << " has no Figure";
  for (const std::string& name : declared) EXPECT_TRUE(results.contains(name)) << name << " is no result of the report";
}

TEST(Figures, SayFormulaAndSource) {
  for (const Figure& figure : Figures()) {
    EXPECT_FALSE(figure.formula.empty()) << figure.name;
    EXPECT_FALSE(figure.source.empty()) << figure.name;
    for (const std::string_view text : {figure.formula, figure.source}) {
      EXPECT_NE(text.back(), '.') << figure.name << ": one line, no full stop";
    }
  }
}

TEST(Figures, EveryUncertaintyBelongsToAFigure) {
  // A name with _plus_minus left out is that of a figure beside it.
  std::vector<const Descriptor*> types = {&Report()};
  std::set<const Descriptor*> seen;
  while (!types.empty()) {
    const Descriptor* type = types.back();
    types.pop_back();
    if (!seen.insert(type).second) continue;
    for (int i = 0; i < type->field_count(); ++i) {
      const FieldDescriptor& field = *type->field(i);
      if (field.message_type() != nullptr) types.push_back(field.message_type());
      if (!IsPlusMinus(field)) continue;
      std::string figure = field.name();
      figure.erase(figure.find("_plus_minus"), std::string("_plus_minus").size());
      EXPECT_NE(type->FindFieldByName(figure), nullptr) << field.full_name();
    }
  }
}

TEST(Figures, InputsExistInReportOrDesign) {
  for (const Figure& figure : Figures()) {
    for (const std::string_view declared : figure.from)
      for (const std::string_view from : AlternativesOf(declared)) {
        EXPECT_TRUE(CanExist(from, Report()) || CanExist(from, Design())) << figure.name << " from " << from;
      }
  }
}

TEST(Figures, APathThatCannotExistIsNoticed) {
  EXPECT_TRUE(CanExist("handle.parts[=].bore", Design()));
  EXPECT_TRUE(CanExist("log[cut.section=&cut.at_end!=TIP].cut.amount", Design()));
  EXPECT_FALSE(CanExist("handle.parts.bore", Design()));             // which part?
  EXPECT_FALSE(CanExist("handle.parts[=].lenght", Design()));        // misspelt
  EXPECT_FALSE(CanExist("log[cut.sektion=].cut.amount", Design()));  // misspelt in brackets
  EXPECT_TRUE(CanExist("@Part.balance_from_own_butt", Design()));
  EXPECT_FALSE(CanExist("@Part.from_tip", Design()));           // that is a guide's
  EXPECT_FALSE(CanExist("@Peg.mass", Design()));                // no such thing
  EXPECT_FALSE(CanExist("fit.overall_length_mm[]", Report()));  // no list
}

// Depth first; a name that is met again on its own way is a circle.
class Circles {
 public:
  Circles() {
    for (const Figure& figure : Figures()) {
      for (const std::string_view declared : figure.from)
        for (const std::string_view from : AlternativesOf(declared))
          inputs_[std::string(figure.name)].push_back(Plain(from, Report()));
    }
  }
  void Visit(const std::string& name, std::vector<std::string> way) {
    for (const std::string& before : way) {
      if (before != name) continue;
      std::string chain;
      for (const std::string& step : way) chain += step + " <- ";
      ADD_FAILURE() << chain << name;
      return;
    }
    if (!done_.insert(name).second) return;
    way.push_back(name);
    for (const std::string& input : inputs_[name]) Visit(input, way);
  }

 private:
  std::map<std::string, std::vector<std::string>> inputs_;
  std::set<std::string> done_;
};

TEST(Figures, NothingIsWorkedOutFromItself) {
  Circles circles;
  for (const Figure& figure : Figures()) circles.Visit(std::string(figure.name), {});
}

}  // namespace
}  // namespace withy
