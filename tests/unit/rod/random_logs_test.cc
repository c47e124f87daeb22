// 10,000 random logs, appended entry by entry: what is closed stays closed, by its own correction, removal or breakage
// alone does it change, and the law of the cut stays a law.
//
// Truth is worked out a second way: of each thing by itself, from the definition of a correction (an entry counts unless a
// later correction that counts names it) and of what an entry closes or opens.
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include "gtest/gtest.h"
#include "support/random_log.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

using Kind = Closed::Kind;
using Key = std::tuple<Kind, std::string, End>;
using Facts = std::map<Key, double>;

#ifdef NDEBUG
constexpr int kLogs = 10000;
#else
constexpr int kLogs = 500;
#endif
constexpr int kMostEntries = 12;

const char* const kThings[] = {"butt", "top", "joint", "cap", "module", "check", "rear", "g1", "tip", "w-guides", "band"};

bool Names(const google::protobuf::RepeatedPtrField<std::string>& what, const std::string& id) {
  for (const std::string& name : what) {
    if (name == id) return true;
  }
  return false;
}

int Times(const google::protobuf::RepeatedPtrField<std::string>& what, const std::string& id) {
  int times = 0;
  for (const std::string& name : what) times += name == id;
  return times;
}

// The earliest entry of that id is the one that is named.
bool CorrectsEntry(const v1::Design& design, int correction, int entry) {
  const v1::Entry& by = design.log(correction);
  const std::string& id = design.log(entry).id();
  if (!by.has_correction() || id.empty() || by.correction().entry() != id || entry >= correction) return false;
  for (int i = 0; i < entry; ++i) {
    if (design.log(i).id() == id) return false;
  }
  return true;
}

bool SharesIdWithCounting(const v1::Design& design, int entry);

bool Counts(const v1::Design& design, int entry) {
  if (SharesIdWithCounting(design, entry)) return false;
  for (int i = entry + 1; i < design.log_size(); ++i) {
    if (CorrectsEntry(design, i, entry) && Counts(design, i)) return false;
  }
  return true;
}

// Ids are unique in a design; where they are not, a correction takes the later ones along.
bool SharesIdWithCounting(const v1::Design& design, int entry) {
  const std::string& id = design.log(entry).id();
  for (int first = 0; first < entry && !id.empty(); ++first) {
    if (design.log(first).id() != id) continue;
    for (int i = entry + 1; i < design.log_size(); ++i) {
      if (CorrectsEntry(design, i, first) && Counts(design, i)) return true;
    }
    return false;
  }
  return false;
}

// Metres; unset = no usable amount. Inches and millimetres, as the schema defines them.
std::optional<double> Amount(const v1::Length& length) {
  if (length.unit_case() == v1::Length::UNIT_NOT_SET) return std::nullopt;
  const double meters = (length.has_inch() ? length.inch() * 25.4 : length.mm()) / 1000;
  return std::isfinite(meters) && meters >= 0 && meters <= 1e6 ? std::optional<double>(meters) : std::nullopt;
}

// What one entry adds to a fact; unset = nothing.
std::optional<double> Adds(const v1::Entry& entry, const Key& key) {
  const auto& [kind, id, end] = key;
  const auto if_named = [](bool named) { return named ? std::optional<double>(0) : std::nullopt; };
  switch (kind) {
    case Kind::kCut: {
      if (!entry.has_cut() || entry.cut().section() != id || !v1::End::Value_IsValid(entry.cut().at_end())) return {};
      const bool tip = entry.cut().at_end() == v1::End::TIP;
      return tip == (end == End::kTip) ? Amount(entry.cut().amount()) : std::nullopt;
    }
    case Kind::kGlued: return if_named(entry.has_glued() && Names(entry.glued().what(), id));
    case Kind::kPotted:
      if (!entry.has_potted() || entry.potted().part() != id) return std::nullopt;
      return entry.potted().has_count() ? entry.potted().count() : id == "module" ? 2 : 0;
    case Kind::kReamed: return if_named(entry.has_done() && entry.done().step() == "reamed" && Names(entry.done().what(), id));
    case Kind::kWrapped: {
      const bool wrapped = entry.has_done() && entry.done().step() == "wrapped";
      const bool all = entry.done().what().empty() && (id == "w-guides" || id == "band");
      return if_named(wrapped && (all || Names(entry.done().what(), id)));
    }
    case Kind::kCoated: {
      const int times = entry.has_coated() ? Times(entry.coated().what(), id) : 0;
      return times > 0 ? std::optional<double>(times) : std::nullopt;
    }
  }
  return std::nullopt;
}

bool Opens(const v1::Entry& entry, const std::string& id) {
  return (entry.has_removed() && Names(entry.removed().what(), id)) || (entry.has_breakage() && entry.breakage().what() == id);
}

Facts Truth(const v1::Design& design) {
  std::vector<bool> counts;
  for (int i = 0; i < design.log_size(); ++i) counts.push_back(Counts(design, i));
  Facts facts;
  const auto follow = [&](const Key& key) {
    std::optional<double> fact;
    for (int i = 0; i < design.log_size(); ++i) {
      if (!counts[i]) continue;
      const bool cut = std::get<Kind>(key) == Kind::kCut;
      if (!cut && Opens(design.log(i), std::get<std::string>(key))) fact.reset();
      const auto adds = Adds(design.log(i), key);
      if (!adds) continue;
      const bool latest = std::get<Kind>(key) == Kind::kPotted;  // it says how many are in, not how many more
      fact = latest ? *adds : fact.value_or(0) + *adds;
    }
    if (fact) facts[key] = *fact;
  };
  for (const char* id : kThings) {
    follow({Kind::kCut, id, End::kButt});
    follow({Kind::kCut, id, End::kTip});
    for (const Kind kind : {Kind::kGlued, Kind::kPotted, Kind::kReamed, Kind::kWrapped, Kind::kCoated}) {
      follow({kind, id, End::kUnknown});
    }
  }
  return facts;
}

Facts FactsOf(const Rod& rod) {
  Facts facts;
  for (const Closed& closed : rod.closed) facts[{closed.kind, closed.id, closed.end}] = closed.amount;
  return facts;
}

// Inches are converted the other way round in the code: equal to rounding.
void ExpectSame(const Facts& facts, const Facts& truth) {
  ASSERT_EQ(facts.size(), truth.size());
  for (auto a = facts.begin(), b = truth.begin(); a != facts.end(); ++a, ++b) {
    ASSERT_EQ(a->first, b->first);
    ASSERT_NEAR(a->second, b->second, 1e-12 * std::max(1.0, b->second)) << std::get<std::string>(a->first);
  }
}

// Nothing but a correction, or what names the thing, alters it; and what it has only grows (of what is potted the latest says).
void ExpectKept(const Rod& before, const Rod& after, const v1::Entry& entry) {
  for (const Closed& closed : before.closed) {
    const Key key{closed.kind, closed.id, closed.end};
    const Closed* now = after.FindClosed(closed.kind, closed.id, closed.end);
    if (closed.kind != Kind::kCut && Opens(entry, closed.id)) continue;
    ASSERT_NE(now, nullptr) << closed.id;
    EXPECT_EQ(now->rest_m, closed.rest_m) << closed.id;
    if (Adds(entry, key) && closed.kind == Kind::kPotted) {
      EXPECT_EQ(now->amount, *Adds(entry, key)) << closed.id;
    } else if (Adds(entry, key)) {
      EXPECT_GE(now->amount, closed.amount) << closed.id;
    } else {
      EXPECT_EQ(now->amount, closed.amount) << closed.id;
      EXPECT_EQ(now->at, closed.at) << closed.id;
    }
  }
}

void ExpectFinite(const std::optional<Uncertain>& figure) {
  if (!figure) return;
  EXPECT_TRUE(std::isfinite(figure->value()));
  EXPECT_TRUE(std::isfinite(figure->plus_minus()));
}

void ExpectLaw(const RestLaw& law) {
  double before = std::numeric_limits<double>::infinity();
  for (const double share : {0.0, 0.01, 0.03, 0.1, 0.5, 0.99}) {
    const double cut = share * law.blank_m();
    const RestLaw::Band band = law.LengthAt(cut);
    EXPECT_TRUE(std::isfinite(band.low) && std::isfinite(band.high));
    EXPECT_LE(band.low, band.value);
    EXPECT_LE(band.value, band.high);
    EXPECT_LE(band.value, before + 1e-9) << "more off, and longer";
    EXPECT_GE(law.ShorterPer(cut), 0);
    EXPECT_GE(law.DiameterErrorAt(cut), 0);
    before = band.value;
    if (const auto least = law.LeastCut(band.value)) {
      EXPECT_LE(*least, cut + 1e-6);
      EXPECT_LE(law.LengthAt(*least).value, band.value + 1e-6);
    }
  }
}

TEST(RandomLogs, NothingClosedEverChanges) {
  const ReadResult read = ReadDesign("test", kRodForLogs);
  ASSERT_TRUE(read.document);
  RandomLog entries(20260322);
  int laws = 0, glued = 0;
  for (int log = 0; log < kLogs; ++log) {
    Document document = *read.document;
    Rod before = Resolve(document);
    for (std::uint64_t n = 1 + entries.Below(kMostEntries); n > 0; --n) {
      const v1::Entry& entry = entries.AppendTo(document.design);
      Rod rod = Resolve(document);
      ExpectSame(FactsOf(rod), Truth(document.design));
      if (!entry.has_correction()) ExpectKept(before, rod, entry);
      for (const auto& figure : {rod.blank_butt_m, rod.blank_tip_m, rod.overall_m, rod.blank.length_m}) ExpectFinite(figure);
      if (rod.rest_law) ExpectLaw(*rod.rest_law);
      ASSERT_FALSE(HasFailure()) << "log " << log << ", after entry " << entry.ShortDebugString();
      laws += rod.rest_law.has_value();
      for (const Closed& closed : rod.closed) glued += closed.rest_m.has_value();
      before = std::move(rod);
    }
  }
  // The logs are worth it: most leave a law, and many a blank that is held where a dry fit saw it.
  EXPECT_GT(laws, kLogs);
  EXPECT_GT(glued, kLogs / 50);
}

}  // namespace
}  // namespace withy::testing
