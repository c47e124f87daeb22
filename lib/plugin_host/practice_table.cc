#include "practice_table.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "plain_text.h"
#include "schema_names.h"
#include "table_reader.h"
#include "withy/v1/intent.pb.h"
#include "withy/v1/words.pb.h"

namespace withy::plugin {
namespace {

constexpr std::size_t kLongestSource = 200;
constexpr char kGuides[] = "guides";
constexpr double kMostGuides = 100, kMostPerFoot = 10;

// A range of lengths: its name in the table, its place in the library, and what it may not exceed (own bounds, beyond
// those that the schema calls plausible).
struct LengthRange {
  const char* name;
  std::optional<UsualRange> Practice::*place;
  double most_mm;
};
constexpr LengthRange kLengths[] = {
    {"butt_guide_from_reel_mm", &Practice::butt_guide_from_reel, 8000},
    {"butt_guide_from_butt_mm", &Practice::butt_guide_from_butt, 8000},
    {"butt_ring_mm", &Practice::butt_ring, 100},
    {"running_ring_mm", &Practice::running_ring, 100},
};

// "" where `range` is one.
std::string WhatIsWrongWith(const host::v1::UsualRange& range, double least, double most) {
  // said so that NaN is out of it
  if (range.least() >= least && range.least() <= range.most() && range.most() <= most) return "";
  return absl::StrCat("'", range.name(), "' is { least, most }, from ", least, " to ", most);
}

std::vector<std::string_view> Techniques() {
  const auto& options = v1::Intent::descriptor()->FindFieldByName("technique")->options();
  std::vector<std::string_view> words;
  for (int i = 0; i < options.ExtensionSize(v1::word); ++i) words.push_back(options.GetExtension(v1::word, i));
  return words;
}

std::string WhatIsWrongWithTechnique(const std::string& technique) {
  const std::vector<std::string_view> known = Techniques();
  if (std::find(known.begin(), known.end(), technique) != known.end()) return "";
  if (absl::StartsWith(technique, "other: ")) return "";
  return absl::StrCat("there is no technique '", technique, "'", DidYouMean(technique, known));
}

std::string WhatIsWrongWithRange(const host::v1::Practice& practice, const host::v1::UsualRange& range) {
  if (range.name() == kGuides) {
    return WhatIsWrongWith(range, practice.has_guides_per_foot() ? -kMostGuides : 1, kMostGuides);
  }
  for (const LengthRange& length : kLengths) {
    if (range.name() == length.name) return WhatIsWrongWith(range, 0, length.most_mm);
  }
  return "a range that there is not";
}

std::string WhatIsWrongWithPerFoot(const host::v1::Practice& practice) {
  if (!practice.has_guides_per_foot()) return "";
  const auto& ranges = practice.ranges();
  if (std::none_of(ranges.begin(), ranges.end(), [](const auto& range) { return range.name() == kGuides; })) {
    return "'guides_per_foot' needs 'guides': how many fewer or more are usual, as { -1, 2 }";
  }
  if (practice.guides_per_foot() > 0 && practice.guides_per_foot() <= kMostPerFoot) return "";
  return absl::StrCat("'guides_per_foot' is above 0, at most ", kMostPerFoot);
}

// What keeps `practice` from being one; "" where nothing does.
std::string WhatIsWrongWith(const host::v1::Practice& practice) {
  if (std::string wrong = WhatIsWrongWithTechnique(practice.technique()); !wrong.empty()) return wrong;
  if (practice.source().empty() || !IsPlainLine(practice.source(), kLongestSource)) {
    return absl::StrCat("'source' says whose rule it is, in one line of at most ", kLongestSource, " bytes");
  }
  if (std::string wrong = WhatIsWrongWithPerFoot(practice); !wrong.empty()) return wrong;
  if (practice.ranges().empty()) return "it says nothing: give it a range";
  for (const host::v1::UsualRange& range : practice.ranges()) {
    if (std::string wrong = WhatIsWrongWithRange(practice, range); !wrong.empty()) return wrong;
  }
  return "";
}

// Takes the list `name` of two numbers, where it is there.
void ReadRange(lua_State* lua, const TableReader& table, const char* name, host::v1::Practice& practice) {
  const int size = table.PushList(name);
  if (!lua_isnil(lua, -1)) {
    double bounds[2] = {};
    if (size != 2) table.Refuse(absl::StrCat("'", name, "' is { least, most }"));
    for (int i = 0; i < 2; ++i) {
      if (lua_rawgeti(lua, -1, i + 1) != LUA_TNUMBER) table.Refuse(absl::StrCat("'", name, "' is two numbers"));
      bounds[i] = lua_tonumber(lua, -1);
      lua_pop(lua, 1);
    }
    host::v1::UsualRange& range = *practice.add_ranges();
    range.set_name(name);
    range.set_least(bounds[0]);
    range.set_most(bounds[1]);
  }
  lua_pop(lua, 1);
}

}  // namespace

host::v1::Practice ReadPractice(lua_State* lua, const std::string& what) {
  const TableReader table(lua, -1, what, PracticeFields());
  host::v1::Practice practice;
  practice.set_technique(table.Text("technique"));
  practice.set_source(table.Text("source"));
  for (const LengthRange& length : kLengths) ReadRange(lua, table, length.name, practice);
  ReadRange(lua, table, kGuides, practice);
  if (const auto per_foot = table.Number("guides_per_foot")) practice.set_guides_per_foot(*per_foot);
  if (const std::string wrong = WhatIsWrongWith(practice); !wrong.empty()) table.Refuse(wrong);
  return practice;
}

std::optional<Practice> PracticeFrom(const host::v1::Practice& message, const std::string& plugin) {
  if (!IsPlainLine(message.technique()) || !WhatIsWrongWith(message).empty()) return std::nullopt;
  Practice practice;
  practice.technique = message.technique();
  for (const host::v1::UsualRange& range : message.ranges()) {
    if (range.name() == kGuides) {
      practice.guides = UsualCount{message.guides_per_foot(), range.least(), range.most(), message.source(), plugin};
    }
    for (const LengthRange& length : kLengths) {
      if (range.name() != length.name) continue;
      practice.*length.place = UsualRange{range.least() / 1000, range.most() / 1000, message.source(), plugin};
    }
  }
  return practice;
}

}  // namespace withy::plugin
