#include "core/document/journal_step.h"

#include "core/base/crc32c.h"
#include "core/base/quote.h"
#include "core/document/members.h"
#include "core/document/read.h"
#include "core/document/read_edit.h"
#include "core/edit/edit_json.h"
#include "core/model/json_text.h"
#include "core/text/journal_text.h"

#include <charconv>
#include <filesystem>

namespace snug {

namespace {

constexpr std::string_view kFormat = "snuglab-journal";
constexpr std::string_view kHex = "0123456789abcdef";

std::string hex(std::uint64_t n, int digits) {
  std::string out(static_cast<std::size_t>(digits), '0');
  for (auto at = out.rbegin(); at != out.rend(); ++at, n >>= 4U) *at = kHex[n & 15U];
  return out;
}

std::optional<std::uint64_t> from_hex(std::string_view text, std::size_t digits) {
  std::uint64_t n = 0;
  if (text.size() != digits || text.find_first_not_of(kHex) != std::string_view::npos) return std::nullopt;
  std::from_chars(text.data(), text.data() + text.size(), n, 16);
  return n;
}

bool is_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const CodePoint c = code_point_at(text, i);
    if (!c.valid) return false;
    i += c.length;
  }
  return true;
}

// Names of files need not be UTF-8: such a path stands in hexadecimal digits.
void append_path(std::string& out, const std::string& path) {
  if (is_utf8(path)) {
    out += "\"document\": ";
    append_json_string(out, path);
    return;
  }
  out += "\"document_octets\": \"";
  for (const char c : path) out += hex(static_cast<unsigned char>(c), 2);
  out += '"';
}

Result<std::string> octets_in(const detail::Member& m) {
  const auto text = detail::text_in(m);
  if (!text) return fail(text.error());
  std::string out;
  for (std::size_t i = 0; i < text->size(); i += 2) {
    const auto octet = from_hex(std::string_view(*text).substr(i, 2), 2);
    if (!octet) return fail(text::edit_form, m.key, say(text::form_text));
    out += static_cast<char>(*octet);
  }
  return out;
}

void append_base(std::string& out, const JournalBase& base) {
  out += '{';
  if (base.document.empty()) {
    out += "\"bytes\": ";
    append_json_string(out, base.bytes);
  } else {
    append_path(out, base.document);
  }
  ((out += ", \"hash\": \"") += hash_text(base.hash)) += "\", \"size\": ";
  (out += std::to_string(base.size)) += '}';
}

Result<void> set_base_member(JournalBase& base, const detail::Member& m) {
  if (m.key == "size") {
    const auto n = detail::number_in(m);
    if (!n) return fail(n.error());
    base.size = *n;
    return {};
  }
  const bool octets = m.key == "document_octets";
  auto word = octets ? octets_in(m) : detail::text_in(m);
  if (!word) return fail(std::move(word.error()));
  if (m.key == "hash") {
    const auto hash = from_hex(*word, 16);
    if (!hash) return fail(text::edit_form, m.key, say(text::form_text));
    base.hash = *hash;
  } else if (m.key == "bytes") {
    base.bytes = std::move(*word);
  } else if (octets || m.key == "document") {
    base.document = std::move(*word);
  } else {
    return fail(text::edit_member, excerpt(m.key));
  }
  return {};
}

Result<JournalBase> read_base(std::string_view json) {
  const auto members = detail::members_of(json);
  if (!members) return fail(members.error());
  JournalBase base;
  for (const detail::Member& m : *members)
    if (auto set = set_base_member(base, m); !set) return fail(std::move(set.error()));
  if (members->size() != 3) return fail(text::edit_member_missing, "base");
  if (base.document.empty() && (content_hash(base.bytes) != base.hash || base.bytes.size() != base.size))
    return fail(text::edit_form, "bytes", say(text::form_text));
  return base;
}

void append_done(std::string& out, std::string_view what, const std::optional<Edit>& edit) {
  ((out += '"') += what) += "\": ";
  if (edit) {
    append_edit(out, *edit);
  } else {
    out += "true";
  }
}

Result<void> set_done(JournalStep& step, JournalStep::What what, std::string_view json) {
  step.what = what;
  if (what != JournalStep::What::edit && json == "true") return {};
  auto edit = read_edit(json);
  if (!edit) return fail(std::move(edit.error()));
  step.edit = std::move(*edit);
  return {};
}

Result<void> set_step_member(JournalStep& step, const detail::Member& m) {
  using What = JournalStep::What;
  if (m.key == "edit") return set_done(step, What::edit, m.text);
  if (m.key == "undo") return set_done(step, What::undo, m.text);
  if (m.key == "redo") return set_done(step, What::redo, m.text);
  if (m.key != "saved") return fail(text::edit_member, excerpt(m.key));
  auto base = read_base(m.text);
  if (!base) return fail(std::move(base.error()));
  step.what = What::saved;
  step.saved = std::move(*base);
  return {};
}

Result<void> check_form(const std::vector<detail::Member>& members) {
  std::string format, program = "?";
  std::uint64_t version = 0;
  for (const detail::Member& m : members) {
    if (m.key == "format") format = detail::text_in(m).value_or("");
    if (m.key == "program") program = detail::text_in(m).value_or("?");
    if (m.key == "version") version = detail::number_in(m).value_or(0);
  }
  if (format != kFormat || version == 0) return fail(text::journal_foreign);
  if (version != detail::kJournalVersion)
    return fail(text::journal_newer, Count{static_cast<std::int64_t>(version)},
                Count{detail::kJournalVersion}, excerpt(program));
  return {};
}

} // namespace

JournalBase journal_base(const std::string& path, std::string_view bytes) {
  JournalBase base{path, content_hash(bytes), bytes.size(), {}};
  std::error_code error;
  if (path.empty()) {
    base.bytes = bytes;
  } else if (auto full = std::filesystem::absolute(path, error); !error) {
    base.document = full.lexically_normal().string();
  }
  return base;
}

std::string hash_text(std::uint64_t hash) { return hex(hash, 16); }

namespace detail {

std::string journal_line(std::uint64_t number, std::string_view json) {
  std::string rest = std::to_string(number);
  (rest += ' ') += json;
  return hex(crc32c(rest), 8) + " " + rest + "\n";
}

std::optional<std::string_view> open_line(std::string_view line, std::uint64_t& number) {
  constexpr std::size_t kSum = 8;
  if (line.size() <= kSum || line[kSum] != ' ') return std::nullopt;
  const auto sum = from_hex(line.substr(0, kSum), kSum);
  const std::string_view rest = line.substr(kSum + 1);
  if (!sum || *sum != crc32c(rest)) return std::nullopt;
  const auto [stop, error] = std::from_chars(rest.data(), rest.data() + rest.size(), number);
  const auto digits = static_cast<std::size_t>(stop - rest.data());
  if (error != std::errc() || digits >= rest.size() || rest[digits] != ' ') return std::nullopt;
  return rest.substr(digits + 1);
}

std::string to_json(const JournalHead& head) {
  std::string out = "{\"format\": \"";
  ((out += kFormat) += "\", \"version\": ") += std::to_string(kJournalVersion);
  out += ", \"program\": ";
  append_json_string(out, head.program);
  out += ", \"uid\": ";
  append_json_string(out, head.uid);
  out += ", \"base\": ";
  append_base(out, head.base);
  return out += '}';
}

std::string to_json(const JournalStep& step) {
  std::string out = "{";
  switch (step.what) {
  case JournalStep::What::edit:
    append_done(out, "edit", step.edit);
    if (step.joins) out += ", \"joins\": true";
    break;
  case JournalStep::What::undo:
    append_done(out, "undo", step.edit);
    break;
  case JournalStep::What::redo:
    append_done(out, "redo", step.edit);
    break;
  case JournalStep::What::saved:
    out += "\"saved\": ";
    append_base(out, step.saved);
    break;
  }
  return out += '}';
}

Result<JournalHead> read_head(std::string_view json) {
  const auto members = members_of(json);
  if (!members) return fail(text::journal_foreign);
  if (auto form = check_form(*members); !form) return fail(std::move(form.error()));
  JournalHead head;
  for (const Member& m : *members) {
    if (m.key == "base") {
      auto base = read_base(m.text);
      if (!base) return fail(std::move(base.error()));
      head.base = std::move(*base);
    } else if (m.key == "uid" || m.key == "program") {
      auto word = text_in(m);
      if (!word) return fail(std::move(word.error()));
      (m.key == "uid" ? head.uid : head.program) = std::move(*word);
    } else if (m.key != "format" && m.key != "version") {
      return fail(text::edit_member, excerpt(m.key));
    }
  }
  if (members->size() != 5) return fail(text::edit_member_missing, "base");
  return head;
}

Result<JournalStep> read_step(std::string_view json) {
  const auto members = members_of(json);
  if (!members) return fail(members.error());
  JournalStep step;
  bool said = false;
  for (const Member& m : *members) {
    if (m.key == "joins" && m.text == "true") {
      step.joins = true;
      continue;
    }
    if (said) return fail(text::journal_what);
    said = true;
    if (auto set = set_step_member(step, m); !set) return fail(std::move(set.error()));
  }
  if (!said || (step.joins && step.what != JournalStep::What::edit)) return fail(text::journal_what);
  return step;
}

} // namespace detail

} // namespace snug
