#include "core/document/save.h"

#include "core/document/read.h"
#include "core/text/document_text.h"
#include "core/text/file_text.h"

#include <new>
#include <system_error>

#if defined(__unix__) || defined(__APPLE__)
#include "core/document/save_target.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#else
#include <filesystem>
#include <fstream>
#endif

namespace snug {

namespace {

bool changed_since(std::uint64_t hash, const std::string& path) {
  const auto now = read_file(path);
  return !now || content_hash(*now) != hash;
}

} // namespace

#if defined(__unix__) || defined(__APPLE__)

namespace {

using detail::Descriptor;
using detail::SaveTarget;

constexpr std::size_t kLongName = 200; // octets; names have at most 255

// A file that does not have its name yet.
struct Fresh {
  Descriptor file;
  std::string name; // empty: unnamed
};

std::string saving_name(const std::string& name) {
  const bool fits = name.size() <= kLongName;
  return "." + (fits ? name : std::to_string(content_hash(name))) + ".saving";
}

// Unnamed, or nothing where the file system cannot do that.
Fresh make_unnamed(const SaveTarget& t) {
#if defined(O_TMPFILE)
  return {Descriptor(::openat(t.folder.number(), ".", O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666)), {}};
#else
  errno = EOPNOTSUPP;
  return {};
#endif
}

Fresh make_named(const SaveTarget& t) {
  const std::string stem = saving_name(t.name) + "-" + std::to_string(::getpid()) + "-";
  for (int n = 0; n < 1000; ++n) {
    std::string name = stem + std::to_string(n);
    constexpr int kFlags = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC;
    Descriptor file(::openat(t.folder.number(), name.c_str(), kFlags, 0666));
    if (file.is_open()) return {std::move(file), std::move(name)};
    if (errno != EEXIST) return {};
  }
  return {};
}

// These return 0 or an errno.
int take_over_rights(const SaveTarget& t, int file) {
  if (!t.exists) return 0;
  struct stat now {};
  if (::fstat(file, &now) != 0) return errno;
  const bool other = now.st_uid != t.owner || now.st_gid != t.group;
  if (other && ::fchown(file, t.owner, t.group) != 0) errno = 0; // only a privileged process may
  return ::fchmod(file, t.mode) == 0 ? 0 : errno;
}

int write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ::ssize_t n = ::write(file, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    if (n == 0) return ENOSPC;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}

int sync(int file) {
  int error = 0;
  do {
    error = ::fsync(file) == 0 ? 0 : errno;
  } while (error == EINTR);
  return error;
}

int link_unnamed(const SaveTarget& t, int file, const std::string& name) {
  const std::string open_file = "/proc/self/fd/" + std::to_string(file);
  return ::linkat(AT_FDCWD, open_file.c_str(), t.folder.number(), name.c_str(), AT_SYMLINK_FOLLOW) == 0
             ? 0
             : errno;
}

int rename_over(const SaveTarget& t, const std::string& from) {
  const int folder = t.folder.number();
  return ::renameat(folder, from.c_str(), folder, t.name.c_str()) == 0 ? 0 : errno;
}

// Gives an unnamed file the target's name. The name in between is the same for every save of this target:
// what a killed process left is taken away here, and two processes at once both end with a whole file.
int place_unnamed(const SaveTarget& t, int file, bool& linked) {
  if (!t.exists) {
    const int error = link_unnamed(t, file, t.name);
    linked = error == 0;
    if (error != EEXIST) return error;
  }
  const std::string between = saving_name(t.name);
  constexpr int kTries = 1000;
  for (int i = 0; i < kTries; ++i) {
    int error = link_unnamed(t, file, between);
    if (error == EEXIST) {
      if (::unlinkat(t.folder.number(), between.c_str(), 0) != 0 && errno != ENOENT) return errno;
      continue;
    }
    if (error != 0) return error;
    linked = true;
    error = rename_over(t, between);
    if (error == ENOENT) linked = false; // another process took the name away; it cannot be given twice
    if (error != 0 && linked) ::unlinkat(t.folder.number(), between.c_str(), 0);
    return error;
  }
  return EBUSY;
}

bool keep_previous_version(const SaveTarget& t, const std::string& path) {
  const int folder = t.folder.number();
  const std::string previous = t.name + "~";
  if (::unlinkat(folder, previous.c_str(), 0) != 0 && errno != ENOENT) return false;
  if (::linkat(folder, t.name.c_str(), folder, previous.c_str(), 0) == 0) return true;
  const auto old = read_file(path, SIZE_MAX);
  return old && save_file(t.folder_name + "/" + previous, *old).has_value();
}

struct Outcome {
  int error = 0;
  bool could_not_link = false; // unnamed files cannot be named here
  Saved saved;
};

Outcome write_and_place(const SaveTarget& t, Fresh fresh, std::string_view bytes, bool keep) {
  Outcome o;
  const int file = fresh.file.number();
  const std::string path = t.folder_name + "/" + t.name;
  if (!fresh.file.is_open()) return {errno == 0 ? EIO : errno, false, {}};
  o.error = take_over_rights(t, file);
  if (o.error == 0) o.error = write_all(file, bytes);
  if (o.error == 0) o.error = sync(file);
  if (o.error == 0 && keep && t.exists) o.saved.previous_kept = keep_previous_version(t, path);
  if (o.error == 0 && fresh.name.empty()) {
    bool linked = false;
    o.error = place_unnamed(t, file, linked);
    o.could_not_link = !linked;
  } else if (o.error == 0) {
    o.error = rename_over(t, fresh.name);
  }
  if (o.error != 0 && !fresh.name.empty()) ::unlinkat(t.folder.number(), fresh.name.c_str(), 0);
  return o;
}

Message reason(int error, const SaveTarget& t) {
  switch (error) {
  case ENOSPC:
  case EDQUOT:
    return say(text::save_full);
  case EFBIG:
    return say(text::save_too_large);
  case EACCES:
  case EPERM:
  case EROFS:
    return say(text::save_folder_denied, t.folder_name);
  default:
    return say(text::save_failed, std::generic_category().message(error));
  }
}

Result<Saved> save(const std::string& path, std::string_view bytes, SaveOptions options) {
  const auto target = detail::save_target(path);
  if (!target) return fail(target.error());
  const SaveTarget& t = *target;
  if (t.exists && options.loaded_hash && changed_since(*options.loaded_hash, path))
    return fail(Problem{say(text::save_changed), path, 0, 0, {}});
  Fresh fresh = make_unnamed(t);
  const bool unnamed = fresh.file.is_open();
  Outcome o;
  if (unnamed) o = write_and_place(t, std::move(fresh), bytes, options.keep_previous);
  if (!unnamed || o.could_not_link) o = write_and_place(t, make_named(t), bytes, options.keep_previous);
  if (o.error != 0) return fail(Problem{reason(o.error, t), path, 0, 0, {}});
  const int unsure = sync(t.folder.number());
  if (unsure != 0 && unsure != EINVAL && unsure != ENOTSUP)
    return fail(
        Problem{say(text::save_unconfirmed, std::generic_category().message(unsure)), path, 0, 0, {}});
  return o.saved;
}

} // namespace

#else // not tested: the project is built on Linux only

namespace {

Result<Saved> save(const std::string& path, std::string_view bytes, SaveOptions options) {
  namespace fs = std::filesystem;
  std::error_code error;
  const fs::path real = fs::weakly_canonical(path, error);
  const auto refuse = [&path](Message m) { return fail(Problem{std::move(m), path, 0, 0, {}}); };
  if (fs::is_directory(real)) return refuse(say(text::file_folder));
  if (!fs::is_directory(real.parent_path()))
    return refuse(say(text::save_no_folder, real.parent_path().string()));
  if (options.loaded_hash && fs::exists(real) && changed_since(*options.loaded_hash, path))
    return refuse(say(text::save_changed));
  const fs::path fresh = real.string() + ".saving";
  std::ofstream out(fresh, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out) {
    fs::remove(fresh, error);
    return refuse(say(text::save_full));
  }
  Saved saved;
  if (options.keep_previous && fs::exists(real))
    saved.previous_kept =
        fs::copy_file(real, real.string() + "~", fs::copy_options::overwrite_existing, error);
  fs::rename(fresh, real, error);
  if (!error) return saved;
  const std::string words = error.message();
  fs::remove(fresh, error);
  return refuse(say(text::save_failed, words));
}

} // namespace

#endif

Result<Saved> save_file(const std::string& path, std::string_view bytes, SaveOptions options) {
  try {
    return save(path, bytes, options);
  } catch (const std::bad_alloc&) {
    return fail(Problem{say(text::document_memory), path, 0, 0, {}});
  }
}

} // namespace snug
