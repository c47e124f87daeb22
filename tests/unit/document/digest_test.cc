#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "support/mutation.h"
#include "support/random_design.h"
#include "withy/document/document.h"

namespace withy {
namespace {

// The digest is a promise: it stands in files (`parent_digest`). The hash of each of these byte strings was taken with
// sha256sum of GNU coreutils, the bytes typed by hand after the encoding that proto/README.md gives:
//
//   printf 'withy-digest/1\n'                                                            header
//   printf '\x01\0\0\0s\x07\0\0\0\0\0\0\0withy/1'                                        1 format, string, 7 bytes
//   printf '\0\0\0\0\0\0\0\0'                                                            end of Design
TEST(DesignDigest, SmallestDesignByHand) {
  v1::Design design;
  design.set_format("withy/1");
  EXPECT_EQ(DesignDigest(design), "sha256:18846a740070e0f4325ddaa717b50ea19cda361e4321d391fd4bd88894e22256");
}

//   header, format as above, then
//   printf '\x08\0\0\0l\x01\0\0\0\0\0\0\0'                                               8 guides, list of 1
//   printf 'm\x01\0\0\0s\x02\0\0\0\0\0\0\0g1'                                            message: 1 id "g1"
//   printf '\x03\0\0\0m\x02\0\0\0d\0\0\0\0\0\0\x22\x40'                                  3 from_tip: 2 inch, double 9.0
//   printf '\x04\0\0\0e\x02\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0'                               4 source, enum 2; end of
//   Length printf '\x06\0\0\0b\x01\0\0\0\0\0\0\0\0'                                             6 locked, true; end of
//   Guide printf '\x13\0\0\0p\x01\0\0\0\0\0\0\0s\x01\0\0\0\0\0\0\0km'                          19 extensions, map of 1,
//   key "k" ... printf '\0\0\0\0\0\0\0\0'                                                            ... to an empty
//   Struct printf '\0\0\0\0\x84\x03\0\0v\x05\0\0\0\0\0\0\0'                                     unknown 900, varint 5
//   printf '\0\0\0\0\0\0\0\0'                                                            end of Design
TEST(DesignDigest, EveryKindByHand) {
  v1::Design design;
  design.set_format("withy/1");
  v1::Guide* guide = design.add_guides();
  guide->set_id("g1");
  guide->mutable_from_tip()->set_inch(9);
  guide->mutable_from_tip()->set_source(v1::Source::MEASURED);
  guide->set_locked(true);
  (*design.mutable_extensions())["k"];
  design.GetReflection()->MutableUnknownFields(&design)->AddVarint(900, 5);
  EXPECT_EQ(DesignDigest(design), "sha256:4f63b4666ff625d19e017bc0681a65a8230087ee3fb56c2aeefb0228a2157379");
}

TEST(DesignDigest, IsTheSameInEveryForm) {
  RandomDesignOptions options;
  options.unknown_enums = true;
  RandomDesigns designs(21, options);
  for (int i = 0; i < 60; ++i) {
    const v1::Design design = designs.Next();
    const std::string digest = DesignDigest(design);
    for (const Form form : {Form::kText, Form::kJson, Form::kBinary}) {
      const std::string bytes = WriteDesign(design, form);
      const ReadResult read = ReadDesign("test", bytes);
      ASSERT_TRUE(read.document) << bytes << (read.findings.empty() ? "" : read.findings[0].message);
      ASSERT_EQ(read.document->form, form);
      ASSERT_EQ(DesignDigest(read.document->design), digest) << bytes;
      ASSERT_EQ(WriteDesign(read.document->design, form), bytes);
    }
  }
}

TEST(DesignDigest, CountsUnknownFieldsInTextAndBinary) {
  RandomDesignOptions options;
  options.unknown_fields = true;
  RandomDesigns designs(22, options);
  for (int i = 0; i < 40; ++i) {
    const v1::Design design = designs.Next();
    for (const Form form : {Form::kText, Form::kBinary}) {
      const ReadResult read = ReadDesign("test", WriteDesign(design, form));
      ASSERT_TRUE(read.document) << (read.findings.empty() ? "" : read.findings.back().message);
      ASSERT_EQ(DesignDigest(read.document->design), DesignDigest(design)) << WriteDesign(design, form);
    }
  }
}

TEST(DesignDigest, DiffersWhereverMeaningDiffers) {
  RandomDesignOptions options;
  options.fill = 0.4;
  options.unknown_fields = true;
  RandomDesigns designs(23, options);
  int mutations = 0;
  for (int i = 0; i < 6; ++i) {
    v1::Design design = designs.Next();
    const std::string before = DesignDigest(design);
    ForEachMutation(&design, [&](const std::string& what) {
      ++mutations;
      EXPECT_NE(DesignDigest(design), before) << what;
    });
    ASSERT_EQ(DesignDigest(design), before);
  }
  EXPECT_GT(mutations, 1000);
}

// Presence, by the rules in proto/README.md.
TEST(DesignDigest, TellsUnsetFromZero) {
  v1::Design unset, zero;
  unset.mutable_shop();
  zero.mutable_shop()->set_margin(0);
  EXPECT_NE(DesignDigest(unset), DesignDigest(zero));
  EXPECT_NE(DesignDigest(unset), DesignDigest(v1::Design()));
  v1::Design negative;
  negative.mutable_shop()->set_margin(-0.0);
  EXPECT_NE(DesignDigest(negative), DesignDigest(zero));
}

TEST(DesignDigest, EmptyTextAndFalseAreUnset) {
  v1::Design unset, empty;
  unset.add_guides();
  empty.add_guides()->set_id("");
  empty.mutable_guides(0)->set_locked(false);
  EXPECT_EQ(DesignDigest(unset), DesignDigest(empty));
}

TEST(DesignDigest, MapOrderAndWireOrderOfUnknownsDoNotCount) {
  v1::Design a, b;
  (*a.mutable_extensions())["x"], (*a.mutable_extensions())["y"];
  (*b.mutable_extensions())["y"], (*b.mutable_extensions())["x"];
  auto* in_a = a.GetReflection()->MutableUnknownFields(&a);
  auto* in_b = b.GetReflection()->MutableUnknownFields(&b);
  in_a->AddVarint(900, 1), in_a->AddVarint(901, 2);
  in_b->AddVarint(901, 2), in_b->AddVarint(900, 1);
  EXPECT_EQ(DesignDigest(a), DesignDigest(b));
  in_a->AddVarint(900, 7);
  in_b->AddFixed32(900, 7);
  EXPECT_NE(DesignDigest(a), DesignDigest(b));
}

TEST(DesignDigest, ValueWithoutAKindIsNull) {
  v1::Design a, b;
  (*(*a.mutable_extensions())["x"].mutable_fields())["f"];
  (*(*b.mutable_extensions())["x"].mutable_fields())["f"].set_null_value(google::protobuf::NULL_VALUE);
  EXPECT_EQ(DesignDigest(a), DesignDigest(b));
}

// Neighbouring texts must not run into one another.
TEST(DesignDigest, BoundariesCount) {
  v1::Design a, b;
  a.mutable_identity()->add_tags("ab"), a.mutable_identity()->add_tags("c");
  b.mutable_identity()->add_tags("a"), b.mutable_identity()->add_tags("bc");
  EXPECT_NE(DesignDigest(a), DesignDigest(b));
}

}  // namespace
}  // namespace withy
