#if defined(__unix__) || defined(__APPLE__)

#include "core/document/save_target.h"

#include "core/text/file_text.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>

namespace snug::detail {

namespace {

constexpr int kMostLinks = 40; // as Linux, path_resolution(7)

tl::unexpected<Problem> refuse(Message m, const std::string& path) {
  return fail(Problem{std::move(m), path, 0, 0, {}});
}

// Target of a link, or nothing.
std::string link_text(const std::string& path) {
  std::string text(256, '\0');
  for (;;) {
    const ::ssize_t n = ::readlink(path.c_str(), text.data(), text.size());
    if (n < 0) return {};
    if (static_cast<std::size_t>(n) < text.size()) {
      text.resize(static_cast<std::size_t>(n));
      return text;
    }
    text.resize(text.size() * 2);
  }
}

Result<void> judge_existing(SaveTarget& t, const std::string& path) {
  struct stat facts {};
  if (::fstatat(t.folder.number(), t.name.c_str(), &facts, AT_SYMLINK_NOFOLLOW) != 0) {
    if (errno == ENOENT) return {};
    return refuse(say(text::save_failed, std::generic_category().message(errno)), path);
  }
  if (S_ISDIR(facts.st_mode)) return refuse(say(text::file_folder), path);
  if (!S_ISREG(facts.st_mode)) return refuse(say(text::file_special), path);
  if (::faccessat(t.folder.number(), t.name.c_str(), W_OK, AT_EACCESS) != 0)
    return refuse(say(text::save_read_only), path);
  t.exists = true;
  t.mode = facts.st_mode & 07777U;
  t.owner = facts.st_uid;
  t.group = facts.st_gid;
  return {};
}

} // namespace

std::pair<std::string, std::string> split_path(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return {".", path};
  return {slash == 0 ? "/" : path.substr(0, slash), path.substr(slash + 1)};
}

Result<std::string> follow_links(const std::string& path) {
  std::string at = path;
  for (int i = 0; i < kMostLinks; ++i) {
    const std::string next = link_text(at);
    if (next.empty()) return at;
    at = next.starts_with('/') ? next : split_path(at).first.append("/").append(next);
  }
  return refuse(say(text::save_links), path);
}

Result<SaveTarget> save_target(const std::string& path) {
  const auto real = follow_links(path);
  if (!real) return fail(real.error());
  SaveTarget t;
  std::tie(t.folder_name, t.name) = split_path(*real);
  const bool names_folder = t.name.empty() || t.name == "." || t.name == "..";
  if (path.empty()) return refuse(say(text::save_name_empty), path);
  t.folder = Descriptor(::open(t.folder_name.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!t.folder.is_open()) {
    if (errno == ENOENT || errno == ENOTDIR) return refuse(say(text::save_no_folder, t.folder_name), path);
    if (errno == EACCES) return refuse(say(text::save_folder_denied, t.folder_name), path);
    return refuse(say(text::save_failed, std::generic_category().message(errno)), path);
  }
  if (names_folder) return refuse(say(text::file_folder), path);
  if (auto fine = judge_existing(t, path); !fine) return fail(fine.error());
  return t;
}

} // namespace snug::detail

#endif
