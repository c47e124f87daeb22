// Programs that a host could meet instead of its own child: what they do is told by their name.
#include <fcntl.h>
#include <unistd.h>

#include <csignal>
#include <cstring>
#include <string>

#include "frames.h"

namespace {

using withy::plugin::FrameOf;

void Say(const std::string& bytes) {
  for (std::size_t sent = 0; sent < bytes.size();) {
    ssize_t count = write(STDOUT_FILENO, bytes.data() + sent, bytes.size() - sent);
    if (count <= 0) _exit(3);
    sent += static_cast<std::size_t>(count);
  }
}

withy::host::v1::Info GoodInfo() {
  withy::host::v1::Info info;
  info.set_api(1);
  info.set_name("test");
  info.set_version("1");
  info.set_license("MIT");
  withy::host::v1::Entry& check = *info.add_entries();
  check.set_kind(withy::host::v1::Entry::CHECK);
  check.set_name("probe");
  check.set_severity(2);
  return info;
}

withy::host::v1::Remark GoodRemark() {
  withy::host::v1::Remark remark;
  remark.set_severity(2);
  remark.set_message("m");
  return remark;
}

void SayInfo() {
  Say(FrameOf(GoodInfo()));
}
void SayOutcome() {
  Say(FrameOf(withy::host::v1::Outcome()));
}

template <typename Change>
void SayRemark(Change change) {
  withy::host::v1::Remark remark = GoodRemark();
  change(remark);
  SayInfo();
  Say(FrameOf(remark));
  SayOutcome();
}

template <typename Change>
void SayChangedInfo(Change change) {
  withy::host::v1::Info info = GoodInfo();
  change(info);
  Say(FrameOf(info));
  SayOutcome();
}

// A description with one practice that `change` spoils.
template <typename Change>
void SayPractice(Change change) {
  return SayChangedInfo([&](withy::host::v1::Info& info) {
    withy::host::v1::Practice& practice = *info.add_practices();
    practice.set_technique("casting");
    practice.set_source("s");
    withy::host::v1::UsualRange& range = *practice.add_ranges();
    range.set_name("guides");
    range.set_least(8);
    range.set_most(9);
    change(info, practice, range);
  });
}

// Exit status 0 where the walls of the parent stand: 1 to 9 tell which does not.
int Walls() {
  if (::environ[0] != nullptr) return 1;
  if (open("/tmp", O_RDONLY) < 0) return 2;  // before CloseBehind a few files may be opened ...
  for (int i = 0; i < 20; ++i) (void)!open("/", O_RDONLY);
  if (open("/", O_RDONLY) >= 0) return 3;  // ... but not many
  for (int fd = 0; fd < 3; ++fd) {
    if (fcntl(fd, F_GETFD) < 0) return 4;
  }
  if (getppid() != getpgid(getppid()) && getpgid(0) != getpid()) return 5;
  return 0;
}

void Act(const std::string& name) {
  using namespace withy::host::v1;
  if (name == "good") return SayRemark([](Remark&) {});
  if (name == "silent") return;
  if (name == "hang")
    for (;;) pause();
  if (name == "hang-after-closing") {
    close(STDOUT_FILENO);
    for (;;) pause();
  }
  if (name == "deaf") {  // reads nothing, and answers
    close(STDIN_FILENO);
    return SayRemark([](Remark&) {});
  }
  if (name == "crash") raise(SIGTERM);
  if (name == "crash-after-info") {
    SayInfo();
    raise(SIGABRT);
  }
  if (name == "exit-7") _exit(7);
  if (name == "walls") _exit(Walls());
  if (name == "flood")
    for (const std::string block(1 << 16, 'x');;) Say(block);
  if (name == "flood-remarks") {
    SayInfo();
    for (const std::string frame = FrameOf(GoodRemark());;) Say(frame);
  }
  if (name == "garbage") return Say("\x7f this is no frame at all");
  if (name == "bad-message") return Say(std::string("\x00\x04\x00\x00\x00\xff\xff\xff\xff", 9));
  if (name == "cut-off") return Say(FrameOf(GoodInfo()).substr(0, 12));
  if (name == "large-remark") return Say(std::string("\x01\x00\x00\x00\x7f", 5));
  if (name == "no-info") return SayOutcome();
  if (name == "two-infos") return SayInfo(), SayInfo();
  if (name == "too-many-outcomes") return SayInfo(), SayOutcome(), SayOutcome(), SayOutcome();
  if (name == "escape-message") return SayRemark([](Remark& r) { r.set_message("\x1b]0;owned\x07"); });
  if (name == "bad-utf8") return SayRemark([](Remark& r) { r.set_help("\xff\xfe"); });
  if (name == "turned-around") return SayRemark([](Remark& r) { r.set_message("\u202egnp.exe"); });
  if (name == "bad-severity") return SayRemark([](Remark& r) { r.set_severity(77); });
  if (name == "bad-path") return SayRemark([](Remark& r) { r.set_at("a[[["); });
  if (name == "bad-number") {
    return SayRemark([](Remark& r) {
      r.add_numbers()->set_name("x");
      r.mutable_numbers(0)->set_value(__builtin_nan(""));
    });
  }
  if (name == "file-from-check") {
    SayInfo();
    File file;
    file.set_name("../../etc/passwd");
    return Say(FrameOf(file));
  }
  if (name == "bad-name") return SayChangedInfo([](Info& i) { i.set_name("../x"); });
  if (name == "taken-name") return SayChangedInfo([](Info& i) { i.set_name("guides"); });
  if (name == "other-api") return SayChangedInfo([](Info& i) { i.set_api(9); });
  if (name == "no-entries") return SayChangedInfo([](Info& i) { i.clear_entries(); });
  if (name == "good-practice") return SayPractice([](Info&, Practice&, UsualRange&) {});
  if (name == "practice-nan")
    return SayPractice([](Info&, Practice&, UsualRange& r) { r.set_most(__builtin_nan("")); });
  if (name == "practice-huge") return SayPractice([](Info&, Practice&, UsualRange& r) { r.set_most(1e300); });
  if (name == "practice-reversed") return SayPractice([](Info&, Practice&, UsualRange& r) { r.set_least(10); });
  if (name == "practice-other-range") return SayPractice([](Info&, Practice&, UsualRange& r) { r.set_name("x"); });
  if (name == "practice-per-foot") {
    return SayPractice([](Info&, Practice& p, UsualRange&) { p.set_guides_per_foot(-__builtin_inf()); });
  }
  if (name == "practice-escape") return SayPractice([](Info&, Practice& p, UsualRange&) { p.set_source("\x1b[31m"); });
  if (name == "practice-technique") return SayPractice([](Info&, Practice& p, UsualRange&) { p.set_technique("x"); });
  if (name == "practice-other-escape") {
    return SayPractice([](Info&, Practice& p, UsualRange&) { p.set_technique("other: \x1b[31m"); });
  }
  if (name == "practice-twice") {
    return SayPractice([](Info& i, Practice& p, UsualRange&) { i.add_practices()->CopyFrom(Practice(p)); });
  }
  if (name == "practice-many") {
    return SayPractice([](Info& i, Practice& p, UsualRange&) {
      const Practice one = p;
      for (int n = 0; n < 1000; ++n) {
        Practice& another = *i.add_practices();
        another = one;
        another.set_technique("other: " + std::to_string(n));
      }
    });
  }
  if (name == "wants-escape") {
    return SayChangedInfo([](Info& i) {
      Entry& entry = *i.add_entries();
      entry.set_kind(Entry::EXPORTER);
      entry.set_name("list");
      entry.add_extensions("csv");
      entry.add_wants("\x1b[31m");
    });
  }
  if (name == "bad-status") {
    SayInfo();
    Outcome outcome;
    outcome.set_status(4242);
    return Say(FrameOf(outcome));
  }
  _exit(99);
}

}  // namespace

int main(int, char** argv) {
  const char* slash = std::strrchr(argv[0], '/');
  Act(slash == nullptr ? argv[0] : slash + 1);
  return 0;
}
