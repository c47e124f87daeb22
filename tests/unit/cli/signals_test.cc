// What signals leave behind, seen from outside of a process of its own (a death test) that gets one.
#include "signals.h"

#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cstdlib>
#include <string>

#include "output.h"

namespace withy {
namespace {

std::string NewFile() {
  std::string name = ::testing::TempDir() + "withy-signals-XXXXXX";
  const int fd = mkstemp(name.data());
  EXPECT_GE(fd, 0);
  close(fd);
  return name;
}

class Ending : public ::testing::TestWithParam<int> {};

TEST_P(Ending, RemovesWhatIsNotedAndEndsTheProgram) {
  const std::string noted = NewFile(), forgotten = NewFile();
  EXPECT_EXIT(
      {
        HandleSignals();
        NoteTemporary(forgotten);
        NoteTemporary(noted);
        ForgetTemporary(forgotten);
        raise(GetParam());
      },
      ::testing::KilledBySignal(GetParam()), "");
  EXPECT_NE(access(noted.c_str(), F_OK), 0);
  EXPECT_EQ(unlink(forgotten.c_str()), 0);
}

TEST_P(Ending, WaitsWhileHeld) {
  EXPECT_EXIT(
      {
        HandleSignals();
        {
          const SignalsHeld held;
          raise(GetParam());
          write(STDERR_FILENO, "held", 4);
        }
        std::_Exit(0);
      },
      ::testing::KilledBySignal(GetParam()), "held");
}

TEST_P(Ending, StaysIgnoredWhereItIs) {
  EXPECT_EXIT(
      {
        std::signal(GetParam(), SIG_IGN);
        HandleSignals();
        raise(GetParam());
        std::_Exit(0);
      },
      ::testing::ExitedWithCode(0), "");
}

INSTANTIATE_TEST_SUITE_P(Signals, Ending, ::testing::Values(SIGINT, SIGTERM, SIGHUP));

bool WritesUnderALimitOf4096(const std::string& path) {
  HandleSignals();
  const rlimit limit = {4096, 4096};
  setrlimit(RLIMIT_FSIZE, &limit);
  return WriteFiles({{path, std::string(10000, 'x')}}, Existing::kRefuse).ok();
}

// setrlimit(2): a write beyond RLIMIT_FSIZE sends SIGXFSZ, and fails with EFBIG where that is ignored.
TEST(HandleSignals, AFileSizeLimitIsAnErrorOfTheWrite) {
  std::string folder = ::testing::TempDir() + "withy-signals-XXXXXX";
  ASSERT_NE(mkdtemp(folder.data()), nullptr);
  EXPECT_EXIT(std::_Exit(WritesUnderALimitOf4096(folder + "/a") ? 1 : 0), ::testing::ExitedWithCode(0), "");
  EXPECT_EQ(rmdir(folder.c_str()), 0);  // only an empty one can be removed
}

}  // namespace
}  // namespace withy
