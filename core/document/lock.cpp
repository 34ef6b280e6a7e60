#include "core/document/lock.h"

#include <utility>

#if defined(__unix__) || defined(__APPLE__)
#include "core/base/clean.h"
#include "core/document/save_target.h"
#include "core/text/file_text.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <system_error>
#endif

namespace snug {

FileLock::FileLock(FileLock&& other) noexcept
    : file_(std::exchange(other.file_, -1)), lock_path_(std::move(other.lock_path_)) {}

FileLock& FileLock::operator=(FileLock&& other) noexcept {
  std::swap(file_, other.file_);
  std::swap(lock_path_, other.lock_path_);
  return *this;
}

#if defined(__unix__) || defined(__APPLE__)

namespace {

constexpr std::size_t kMostOwner = 300; // octets read of who holds it

std::string this_owner() {
  std::string host(256, '\0');
  if (::gethostname(host.data(), host.size() - 1) != 0) host.clear();
  host.resize(host.find('\0') == std::string::npos ? host.size() : host.find('\0'));
  return "process " + std::to_string(::getpid()) + " on " + (host.empty() ? "this PC" : host);
}

std::string owner_in(int file) {
  std::string text(kMostOwner, '\0');
  const ::ssize_t n = ::pread(file, text.data(), text.size(), 0);
  text.resize(n > 0 ? static_cast<std::size_t>(n) : 0);
  return text.empty() ? "another program" : clean(text);
}

void write_owner(int file) {
  const std::string owner = this_owner();
  if (::ftruncate(file, 0) != 0) return; // only the name of the holder is missing then
  [[maybe_unused]] const ::ssize_t n = ::pwrite(file, owner.data(), owner.size(), 0);
}

// Whether the open file still has this name: its holder may have taken it away meanwhile.
bool has_name(int file, const std::string& path) {
  struct stat open_file {};
  struct stat named {};
  return ::fstat(file, &open_file) == 0 && ::lstat(path.c_str(), &named) == 0 &&
         open_file.st_ino == named.st_ino && open_file.st_dev == named.st_dev;
}

// Of a lock file that may only be read.
enum class Foreign { none, held, taken_away };

// What another user left is taken away where the folder allows it, as its holder would have done.
Foreign look_at_foreign(const std::string& lock_path, std::string& owner) {
  const detail::Descriptor file(::open(lock_path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK));
  if (!file.is_open()) return Foreign::none;
  if (::flock(file.number(), LOCK_EX | LOCK_NB) != 0) {
    if (errno != EWOULDBLOCK) return Foreign::none;
    owner = owner_in(file.number());
    return Foreign::held;
  }
  const bool gone = !has_name(file.number(), lock_path) || ::unlink(lock_path.c_str()) == 0;
  return gone ? Foreign::taken_away : Foreign::none;
}

} // namespace

Result<FileLock> FileLock::take(const std::string& path) {
  const auto real = detail::follow_links(path);
  if (!real) return fail(real.error());
  const auto [folder, name] = detail::split_path(*real);
  FileLock lock;
  lock.lock_path_ = folder + "/." + name + ".lock";
  const auto refuse = [&path](Message m) { return fail(Problem{std::move(m), path, 0, 0, {}}); };
  constexpr int kTries = 1000;
  for (int i = 0; i < kTries; ++i) {
    detail::Descriptor file(::open(lock.lock_path_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0644));
    if (!file.is_open() && (errno == EACCES || errno == EROFS || errno == EPERM)) {
      std::string owner;
      const Foreign foreign = look_at_foreign(lock.lock_path_, owner);
      if (foreign == Foreign::held) return refuse(say(text::lock_held, owner));
      if (foreign == Foreign::taken_away) continue;
      return lock;
    }
    if (!file.is_open()) return refuse(say(text::lock_failed, std::generic_category().message(errno)));
    if (::flock(file.number(), LOCK_EX | LOCK_NB) != 0) {
      if (errno == EINTR) continue;
      if (errno != EWOULDBLOCK) return refuse(say(text::lock_failed, std::generic_category().message(errno)));
      return refuse(say(text::lock_held, owner_in(file.number())));
    }
    if (!has_name(file.number(), lock.lock_path_)) continue;
    write_owner(file.number());
    lock.file_ = file.release();
    return lock;
  }
  return refuse(say(text::lock_failed, std::generic_category().message(EBUSY)));
}

FileLock::~FileLock() {
  if (file_ < 0) return;
  ::unlink(lock_path_.c_str()); // while it is held, so that nobody locks what has no name
  ::close(file_);
}

#else // not tested: the project is built on Linux only

Result<FileLock> FileLock::take(const std::string&) { return FileLock(); }
FileLock::~FileLock() = default;

#endif

} // namespace snug
