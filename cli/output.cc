#include "output.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <set>

#include "absl/strings/str_cat.h"
#include "exit_status.h"
#include "io.h"
#include "signals.h"

namespace withy {
namespace {

absl::Status Failed(const std::string& path, int error) {
  return absl::ErrnoToStatus(error, absl::StrCat(path, ": not written"));
}

absl::Status WriteTo(int fd, const std::string& bytes, const std::string& path) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    ssize_t written = write(fd, bytes.data() + done, bytes.size() - done);
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return Failed(path, errno);
    done += static_cast<std::size_t>(written);
  }
  return absl::OkStatus();
}

std::string FolderOf(const std::string& path) {
  std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

// The file that a path of links ends at; the path itself where there is none yet.
std::string Resolved(const std::string& path) {
  char* real = realpath(path.c_str(), nullptr);
  std::string resolved = real ? real : path;
  std::free(real);
  return resolved;
}

mode_t UsualMode() {
  mode_t mask = umask(0);
  umask(mask);
  return 0666 & ~mask;
}

// One file on its way to its name.
class Staged {
 public:
  Staged(std::string path, Existing existing) : path_(std::move(path)), target_(Resolved(path_)), existing_(existing) {}
  Staged(const Staged&) = delete;
  Staged& operator=(const Staged&) = delete;
  ~Staged() {
    if (!temporary_.empty()) unlink(temporary_.c_str());
    ForgetTemporary(temporary_);
    if (!backup_.empty()) unlink(backup_.c_str());
  }

  // Looks at what is there, and writes the bytes beside it.
  absl::Status Stage(const std::string& bytes) {
    struct stat there;
    exists_ = stat(target_.c_str(), &there) == 0;
    if (exists_ && S_ISDIR(there.st_mode)) return Failed(path_, EISDIR);
    direct_ = exists_ && !S_ISREG(there.st_mode);
    if (direct_) {
      bytes_ = bytes;
      return absl::OkStatus();
    }
    if (exists_ && existing_ == Existing::kRefuse) return AlreadyThere();
    if (exists_ && access(target_.c_str(), W_OK) != 0) return Failed(path_, errno);
    int fd = MakeTemporary();
    if (fd < 0) return Failed(path_, errno);
    absl::Status status = Fill(fd, bytes, there);
    if (close(fd) != 0 && status.ok()) status = Failed(path_, errno);
    return status;
  }

  // Gives the file its name.
  absl::Status Place() {
    if (direct_) return WriteDirectly();
    if (existing_ == Existing::kRefuse) return PlaceNew();
    if (exists_) KeepOld();
    if (rename(temporary_.c_str(), target_.c_str()) != 0) return Failed(path_, errno);
    SetPlaced();
    return absl::OkStatus();
  }

  // Puts back what was there before Place.
  void Undo() {
    if (!placed_) return;
    if (!backup_.empty() && rename(backup_.c_str(), target_.c_str()) == 0) {
      backup_.clear();
    } else if (!exists_) {
      unlink(target_.c_str());
    }
  }

  std::string folder() const { return FolderOf(target_); }

 private:
  absl::Status AlreadyThere() const {
    return absl::AlreadyExistsError(absl::StrCat(path_, ": exists already; --force replaces it"));
  }

  // The new file beside the target, open; -1 and errno where there is none.
  int MakeTemporary() {
    const SignalsHeld held;  // none comes between the file and the note of it
    std::string name = FolderOf(target_) + "/.withy-XXXXXX";
    int fd = mkstemp(name.data());
    if (fd < 0) return fd;
    temporary_ = name;
    NoteTemporary(temporary_);
    return fd;
  }

  void SetPlaced() {
    ForgetTemporary(temporary_);
    temporary_.clear();
    placed_ = true;
  }

  absl::Status Fill(int fd, const std::string& bytes, const struct stat& there) {
    fchmod(fd, exists_ ? there.st_mode & 07777 : UsualMode());
    if (exists_ && fchown(fd, there.st_uid, there.st_gid) != 0) {
      // Only a privileged user can give files away; the file is then the writer's.
    }
    absl::Status status = WriteTo(fd, bytes, path_);
    if (status.ok() && fsync(fd) != 0) status = Failed(path_, errno);
    return status;
  }

  // A hard link never replaces; file systems without hard links have a rename that does not either.
  absl::Status PlaceNew() {
    if (link(temporary_.c_str(), target_.c_str()) == 0) {
      unlink(temporary_.c_str());
    } else if (errno == EEXIST) {
      return AlreadyThere();
    } else if (renameat2(AT_FDCWD, temporary_.c_str(), AT_FDCWD, target_.c_str(), RENAME_NOREPLACE) != 0) {
      return errno == EEXIST ? AlreadyThere() : Failed(path_, errno);
    }
    SetPlaced();
    return absl::OkStatus();
  }

  void KeepOld() {
    std::string name = temporary_ + ".old";
    if (link(target_.c_str(), name.c_str()) == 0) backup_ = name;
  }

  absl::Status WriteDirectly() const {
    int fd = open(target_.c_str(), O_WRONLY | O_CLOEXEC);
    if (fd < 0) return Failed(path_, errno);
    absl::Status status = WriteTo(fd, bytes_, path_);
    if (close(fd) != 0 && status.ok()) status = Failed(path_, errno);
    return status;
  }

  std::string path_, target_, temporary_, backup_, bytes_;
  Existing existing_;
  bool exists_ = false, direct_ = false, placed_ = false;
};

// The names last through a power cut only when their folder is written, too. Not every file system can; that is no
// error.
void SyncFolders(const std::set<std::string>& folders) {
  for (const std::string& folder : folders) {
    int fd = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (fd < 0) continue;
    fsync(fd);
    close(fd);
  }
}

// A signal waits until all are placed or none: it would leave some of them, and the old ones under a second name.
absl::Status PlaceAll(std::vector<std::unique_ptr<Staged>> staged) {
  std::set<std::string> folders;
  for (std::size_t i = 0; i < staged.size(); ++i) {
    if (absl::Status status = staged[i]->Place(); !status.ok()) {
      while (i-- > 0) staged[i]->Undo();
      return status;
    }
    folders.insert(staged[i]->folder());
  }
  SyncFolders(folders);
  return absl::OkStatus();
}

}  // namespace

absl::Status WriteFiles(const std::vector<FileToWrite>& files, Existing existing) {
  std::vector<std::unique_ptr<Staged>> staged;
  for (const FileToWrite& file : files) {
    staged.push_back(std::make_unique<Staged>(file.path, existing));
    if (absl::Status status = staged.back()->Stage(file.bytes); !status.ok()) return status;
  }
  const SignalsHeld held;
  return PlaceAll(std::move(staged));
}

int Deliver(const std::string& path, const std::string& bytes, bool binary, bool force, Io& io) {
  bool standard_output = path.empty() || path == "-";
  absl::Status status = standard_output ? io.OutBytes(bytes, binary)
                                        : WriteFiles({{path, bytes}}, force ? Existing::kReplace : Existing::kRefuse);
  if (!status.ok()) {
    io.Complain(std::string(status.message()));
    return kNoOutput;
  }
  if (!standard_output) io.Note("wrote " + path);
  return kDone;
}

}  // namespace withy
