#include "core/document/header.h"

#include "core/base/quote.h"
#include "core/document/json_walk.h"
#include "core/document/read.h"
#include "core/text/document_text.h"

#include <algorithm>

namespace snug::detail {

namespace {

using Json = nlohmann::json;

// Walks any JSON and looks at the members of the document itself.
class Header {
 public:
  explicit Header(bool whole) : whole_(whole) {} // false: only until both header members stand
  bool null() { return scalar(); }
  bool boolean(bool) { return scalar(); }
  bool number_integer(Json::number_integer_t n) { return number(n); }
  bool number_unsigned(Json::number_unsigned_t n) {
    return number(static_cast<std::int64_t>(std::min<std::uint64_t>(n, INT64_MAX)));
  }
  bool number_float(Json::number_float_t, const std::string&) { return scalar(); }
  bool string(std::string& s) {
    if (awaits("format")) format = s;
    return scalar();
  }
  bool binary(Json::binary_t&) { return false; }
  bool start_object(std::size_t) { return open(false); }
  bool start_array(std::size_t) { return open(true); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& k) {
    key_ = k;
    if (trail_.key(k)) return true;
    const std::string pointer = trail_.pointer();
    fault = Fault{say(text::json_twice, excerpt(k)), {pointer, Part::key, 2}, Spot{pointer, Part::key, 1}};
    return false;
  }
  bool parse_error(std::size_t position, const std::string& t, const nlohmann::detail::exception& e) {
    offset = position > 0 ? position - 1 : 0;
    token = t;
    too_large = e.id == 406;
    ill_formed = true;
    return false;
  }
  std::optional<std::string> format; // where it is a text
  std::optional<std::int64_t> version;
  bool has_format = false, has_version = false, is_object = false;
  std::optional<Fault> fault;
  bool ill_formed = false, too_large = false;
  std::size_t offset = 0;
  std::string token;

 private:
  bool awaits(std::string_view k) const { return is_object && trail_.depth() == 1 && key_ == k; }
  bool number(std::int64_t n) {
    if (awaits("version")) version = n;
    return scalar();
  }
  bool scalar() {
    trail_.value();
    has_format = has_format || awaits("format");
    has_version = has_version || awaits("version");
    return whole_ || !has_format || !has_version;
  }
  bool open(bool list) {
    trail_.value();
    has_format = has_format || awaits("format");
    has_version = has_version || awaits("version");
    if (trail_.depth() == kMostDepth) {
      fault = Fault{say(text::json_deep, Count{kMostDepth}), {trail_.pointer()}, {}};
      return false;
    }
    if (trail_.depth() == 0) is_object = !list;
    trail_.open(list);
    return true;
  }
  bool close() {
    trail_.close();
    return true;
  }

  bool whole_;
  std::string key_; // the last one
  Trail trail_;
};

std::optional<Problem> walk_problem(const Header& h, std::string_view bytes, std::string_view file_name) {
  if (h.fault) return located(*h.fault, bytes, file_name);
  if (!h.ill_formed) return std::nullopt;
  if (h.too_large) return problem_at(say(text::json_number, excerpt(h.token)), bytes, h.offset, file_name);
  return syntax_problem(bytes, h.offset, h.token, file_name);
}

Fault at(Message m, std::string pointer) { return Fault{std::move(m), {std::move(pointer)}, {}}; }

std::optional<Fault> judge(const Header& h, std::int64_t oldest, std::int64_t newest,
                           const DocumentForm& form) {
  if (!h.is_object) return at(say(*form.not_object), {});
  if (!h.format) return at(say(*form.foreign, Count{newest}), {});
  if (*h.format != form.format) return at(say(*form.other_format, excerpt(*h.format)), "/format");
  if (!h.has_version) return at(say(text::document_no_version, Count{newest}), {});
  if (!h.version || *h.version < oldest)
    return at(say(text::document_version_form, Count{newest}), "/version");
  if (*h.version > newest) return at(say(*form.newer, Count{*h.version}, Count{newest}), "/version");
  return std::nullopt;
}

} // namespace

const DocumentForm kLabForm{"snuglab", &text::document_not_object, &text::document_foreign,
                            &text::document_other_format, &text::document_newer};

std::optional<Problem> check_octets(std::string_view bytes, std::string_view file_name) {
  const auto refuse = [file_name](Message m) {
    return Problem{std::move(m), std::string(file_name), 0, 0, {}};
  };
  if (bytes.empty()) return refuse(say(text::document_empty));
  if (bytes.size() > kMostDocumentOctets)
    return refuse(say(text::document_large, Count{static_cast<std::int64_t>(bytes.size())},
                      Count{static_cast<std::int64_t>(kMostDocumentOctets)}));
  if (bytes.starts_with("\x1F\x8B")) return refuse(say(text::document_gzip));
  if (bytes.starts_with("PK\x03\x04")) return refuse(say(text::document_zip));
  if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF"))
    return refuse(say(text::document_utf16));
  if (bytes.starts_with("\xEF\xBB\xBF")) return refuse(say(text::document_bom));
  const std::size_t zero = bytes.find('\0');
  if (zero != std::string_view::npos) return problem_at(say(text::document_nul), bytes, zero, file_name);
  return std::nullopt;
}

Result<std::int64_t> read_version(std::string_view bytes, std::string_view file_name, std::int64_t oldest,
                                  std::int64_t newest, const DocumentForm& form) {
  Header header(false);
  const char* seen = nullptr;
  walk(bytes, seen, header);
  if (auto problem = walk_problem(header, bytes, file_name)) return fail(std::move(*problem));
  if (auto fault = judge(header, oldest, newest, form))
    return fail(located(std::move(*fault), bytes, file_name));
  return *header.version;
}

std::optional<Problem> check_json(std::string_view bytes, std::string_view file_name) {
  Header header(true);
  const char* seen = nullptr;
  walk(bytes, seen, header);
  return walk_problem(header, bytes, file_name);
}

} // namespace snug::detail
