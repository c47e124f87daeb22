// Locks of flock(2): two descriptors of one process stand for two processes, as the manual says ("an attempt to lock the
// file using one of these file descriptors may be denied by a lock ... via another").
#include "file_lock.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <optional>

namespace withy {
namespace {

namespace fs = std::filesystem;

class FileLockTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = ::testing::TempDir() + "withy-lock-XXXXXX";
    folder_ = mkdtemp(name.data());
    path_ = folder_ / "design";
    std::ofstream(path_) << "old";
  }
  void TearDown() override { fs::remove_all(folder_); }

  fs::path folder_, path_;
};

TEST_F(FileLockTest, IsHeldByOneAtATime) {
  {
    const auto first = FileLock::Take(path_);
    ASSERT_TRUE(first.ok()) << first.status();
    EXPECT_TRUE(absl::IsUnavailable(FileLock::Take(path_).status()));
  }
  EXPECT_TRUE(FileLock::Take(path_).ok());
}

// The holder gives the name to a new file, which nobody holds: who opened the old one must not take it for the new.
TEST_F(FileLockTest, HoldsTheFileAndNotItsName) {
  const auto first = FileLock::Take(path_);
  ASSERT_TRUE(first.ok());
  std::ofstream(folder_ / "new") << "new";
  fs::rename(folder_ / "new", path_);
  EXPECT_TRUE(FileLock::Take(path_).ok());
}

TEST_F(FileLockTest, CountsTheNames) {
  EXPECT_EQ(FileLock::Take(path_)->names(), 1u);
  fs::create_hard_link(path_, folder_ / "second");
  EXPECT_EQ(FileLock::Take(path_)->names(), 2u);
}

TEST_F(FileLockTest, SaysWhyThereIsNone) {
  EXPECT_TRUE(absl::IsNotFound(FileLock::Take(folder_ / "nothing").status()));
  EXPECT_TRUE(FileLock::Take("/dev/null").ok());
}

}  // namespace
}  // namespace withy
