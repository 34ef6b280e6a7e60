#include "core/document/read.h"
#include "core/text/document_text.h"
#include "core/text/file_text.h"

#include <system_error>

#if defined(__unix__) || defined(__APPLE__)
#include "core/document/descriptor.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#else
#include <filesystem>
#include <fstream>
#endif

namespace snug {

namespace {

tl::unexpected<Problem> refuse(Message m, const std::string& path) {
  return fail(Problem{std::move(m), path, 0, 0, {}});
}

tl::unexpected<Problem> too_large(std::uintmax_t octets, std::size_t most, const std::string& path) {
  return refuse(say(text::document_large, Count{static_cast<std::int64_t>(octets)},
                    Count{static_cast<std::int64_t>(most)}),
                path);
}

} // namespace

#if defined(__unix__) || defined(__APPLE__)

namespace {

tl::unexpected<Problem> refuse_errno(int error, const std::string& path) {
  if (error == ENOENT || error == ENOTDIR) return refuse(say(text::file_missing), path);
  if (error == EACCES || error == EPERM) return refuse(say(text::file_denied), path);
  return refuse(say(text::file_read, std::generic_category().message(error)), path);
}

} // namespace

Result<std::string> read_file(const std::string& path, std::size_t most) {
  const detail::Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY));
  if (file.number() < 0 && errno == ENXIO) return refuse(say(text::file_special), path);
  if (file.number() < 0) return refuse_errno(errno, path);
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0) return refuse_errno(errno, path);
  if (S_ISDIR(facts.st_mode)) return refuse(say(text::file_folder), path);
  if (!S_ISREG(facts.st_mode)) return refuse(say(text::file_special), path);
  const auto size = static_cast<std::uintmax_t>(facts.st_size);
  if (size > most) return too_large(size, most, path);
  try {
    std::string bytes(static_cast<std::size_t>(size) + 1, '\0'); // one more: notices that it grows
    std::size_t have = 0;
    while (have < bytes.size()) {
      const ::ssize_t n = ::read(file.number(), bytes.data() + have, bytes.size() - have);
      if (n < 0 && errno == EINTR) continue;
      if (n < 0) return refuse_errno(errno, path);
      if (n == 0) break;
      have += static_cast<std::size_t>(n);
      if (have > most) return too_large(have, most, path);
      if (have == bytes.size()) bytes.resize(bytes.size() * 2);
    }
    bytes.resize(have);
    return bytes;
  } catch (const std::bad_alloc&) {
    return refuse(say(text::document_memory), path);
  }
}

#else // not tested: the project is built on Linux only

Result<std::string> read_file(const std::string& path, std::size_t most) {
  std::error_code error;
  const auto kind = std::filesystem::status(path, error).type();
  if (kind == std::filesystem::file_type::not_found) return refuse(say(text::file_missing), path);
  if (kind == std::filesystem::file_type::directory) return refuse(say(text::file_folder), path);
  if (kind != std::filesystem::file_type::regular) return refuse(say(text::file_special), path);
  const std::uintmax_t size = std::filesystem::file_size(path, error);
  if (!error && size > most) return too_large(size, most, path);
  std::ifstream in(path, std::ios::binary);
  std::string bytes(std::istreambuf_iterator<char>(in), {});
  if (!in.is_open() || in.bad()) return refuse(say(text::file_denied), path);
  if (bytes.size() > most) return too_large(bytes.size(), most, path);
  return bytes;
}

#endif

} // namespace snug
