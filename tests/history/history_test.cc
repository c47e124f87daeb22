// Files of every version of the format, frozen when that version was current. See README.md here.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "withy/document/document.h"
#include "withy/document/upgrade.h"

namespace withy {
namespace {

const std::string kFolder = std::string(WITHY_SOURCE_DIR) + "/tests/history/";

std::string Bytes(const std::string& name) {
  std::ifstream file(kFolder + name, std::ios::binary);
  EXPECT_TRUE(file.good()) << name;
  std::stringstream bytes;
  bytes << file.rdbuf();
  return bytes.str();
}

Document Read(const std::string& name) {
  const ReadResult result = ReadDesign(name, Bytes(name));
  EXPECT_TRUE(result.findings.empty()) << name << ": " << (result.findings.empty() ? "" : result.findings[0].message);
  EXPECT_TRUE(result.document.has_value()) << name;
  return result.document.value_or(Document());
}

class FileOfVersion0 : public ::testing::TestWithParam<const char*> {};

TEST_P(FileOfVersion0, BecomesTheExpectedVersion1) {
  const std::string stem = "v0/" + std::string(GetParam());
  for (const char* form : {".txtpb", ".json", ".binpb"}) {
    const Document document = Read(stem + form);
    EXPECT_EQ(document.version, 0);
    EXPECT_EQ(WriteDesign(document.design, Form::kText), Bytes(stem + ".v1.txtpb")) << form;
  }
}

// The expected file is a design of the current version itself, and nothing in it is lost on the way back.
TEST_P(FileOfVersion0, GoesBackWithoutALoss) {
  const Document expected = Read("v0/" + std::string(GetParam()) + ".v1.txtpb");
  std::vector<Loss> losses;
  const v0::Design old = DowngradeTo0(expected.design, &losses);
  EXPECT_TRUE(losses.empty()) << losses[0].what;
  const absl::StatusOr<v1::Design> again = UpgradeFrom0(old);
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(DesignDigest(*again), DesignDigest(expected.design));
}

INSTANTIATE_TEST_SUITE_P(All, FileOfVersion0, ::testing::Values("notebook", "metric"));

TEST(FileOfVersion1, HasTheDigestItHadThen) {
  std::string digest = Bytes("v1/pond.digest");
  digest.resize(digest.find('\n'));
  for (const char* form : {".txtpb", ".json", ".binpb"}) {
    const Document document = Read("v1/pond" + std::string(form));
    EXPECT_EQ(document.version, 1);
    EXPECT_EQ(DesignDigest(document.design), digest) << form;
  }
}

TEST(Manifest, NamesEveryFrozenFile) {
  std::set<std::string> listed, found;
  std::istringstream manifest(Bytes("MANIFEST.sha256"));
  for (std::string hash, name; manifest >> hash >> name;) listed.insert(name);
  for (const auto& entry : std::filesystem::recursive_directory_iterator(kFolder)) {
    const std::string name = std::filesystem::relative(entry.path(), kFolder).string();
    if (entry.is_regular_file() && name.starts_with("v")) found.insert(name);
  }
  EXPECT_EQ(listed, found);
}

}  // namespace
}  // namespace withy
