// Files are written whole or not at all. /dev/full (Linux, full(4)) refuses every write with ENOSPC: a full disk to
// order.
#include "output.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace withy {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

class Output : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = ::testing::TempDir() + "withy-output-XXXXXX";
    folder_ = mkdtemp(name.data());
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::string Path(const std::string& name) const { return (folder_ / name).string(); }
  void Put(const std::string& name, const std::string& bytes) const { std::ofstream(Path(name)) << bytes; }
  std::string Get(const std::string& name) const {
    std::ostringstream bytes;
    bytes << std::ifstream(Path(name)).rdbuf();
    return bytes.str();
  }
  std::vector<std::string> Names() const {
    std::vector<std::string> names;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder_)) names.push_back(entry.path().filename());
    return names;
  }

  fs::path folder_;
};

TEST_F(Output, WritesNewFilesAndLeavesNothingBeside) {
  ASSERT_TRUE(WriteFiles({{Path("a"), "one"}, {Path("b"), std::string("\0two", 4)}}, Existing::kRefuse).ok());
  EXPECT_EQ(Get("a"), "one");
  EXPECT_EQ(Get("b"), std::string("\0two", 4));
  EXPECT_THAT(Names(), UnorderedElementsAre("a", "b"));
}

TEST_F(Output, RefusesToReplaceUnlessTold) {
  Put("a", "old");
  absl::Status status = WriteFiles({{Path("b"), "new"}, {Path("a"), "new"}}, Existing::kRefuse);
  EXPECT_TRUE(absl::IsAlreadyExists(status));
  EXPECT_THAT(std::string(status.message()), HasSubstr(Path("a")));
  EXPECT_EQ(Get("a"), "old");
  EXPECT_THAT(Names(), UnorderedElementsAre("a"));  // b is not there either
  EXPECT_TRUE(WriteFiles({{Path("a"), "new"}}, Existing::kReplace).ok());
  EXPECT_EQ(Get("a"), "new");
}

TEST_F(Output, AFullDiskTakesBackWhatWasPlacedBefore) {
  Put("a", "old");
  EXPECT_FALSE(WriteFiles({{Path("a"), "new"}, {Path("b"), "new"}, {"/dev/full", "new"}}, Existing::kReplace).ok());
  EXPECT_EQ(Get("a"), "old");
  EXPECT_THAT(Names(), UnorderedElementsAre("a"));
}

TEST_F(Output, KeepsPermissionsAndFollowsLinks) {
  Put("a", "old");
  ASSERT_EQ(chmod(Path("a").c_str(), 0640), 0);
  fs::create_symlink("a", Path("link"));
  ASSERT_TRUE(WriteFiles({{Path("link"), "new"}}, Existing::kReplace).ok());
  EXPECT_EQ(Get("a"), "new");
  EXPECT_TRUE(fs::is_symlink(Path("link")));
  struct stat there;
  ASSERT_EQ(stat(Path("a").c_str(), &there), 0);
  EXPECT_EQ(there.st_mode & 07777, 0640u);
}

TEST_F(Output, NewFilesHaveTheUsualPermissions) {
  mode_t before = umask(027);
  ASSERT_TRUE(WriteFiles({{Path("a"), "new"}}, Existing::kRefuse).ok());
  umask(before);
  struct stat there;
  ASSERT_EQ(stat(Path("a").c_str(), &there), 0);
  EXPECT_EQ(there.st_mode & 07777, 0640u);  // 0666 less the mask (POSIX open)
}

TEST_F(Output, SaysWhichFileAndWhy) {
  absl::Status folder = WriteFiles({{folder_.string(), "new"}}, Existing::kReplace);
  EXPECT_THAT(std::string(folder.message()), HasSubstr("Is a directory"));
  absl::Status missing = WriteFiles({{Path("no/such"), "new"}}, Existing::kRefuse);
  EXPECT_THAT(std::string(missing.message()), HasSubstr("No such file or directory"));
  EXPECT_THAT(Names(), IsEmpty());
}

}  // namespace
}  // namespace withy
