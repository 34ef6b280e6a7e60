#include "core/document/members.h"

#include "core/base/quote.h"
#include "core/document/json_walk.h"
#include "core/text/document_text.h"
#include "core/text/journal_text.h"

#include <charconv>

namespace snug::detail {

namespace {

constexpr std::size_t kMostLevels = kMostDepth + 8; // an element of a document stands some levels deeper here

// Notes where the values of the outermost object or list stand.
class Splitter {
 public:
  Splitter(std::string_view text, const char*& seen) : text_(text), seen_(seen) {}
  bool null() { return scalar(false); }
  bool boolean(bool) { return scalar(false); }
  bool number_integer(std::int64_t) { return scalar(true); }
  bool number_unsigned(std::uint64_t) { return scalar(true); }
  // nlohmann's interface names the type
  bool number_float(nlohmann::json::number_float_t, const std::string&) { return scalar(true); }
  bool string(std::string&) { return scalar(false); }
  bool binary(nlohmann::json::binary_t&) { return false; }
  bool start_object(std::size_t) { return open(false); }
  bool start_array(std::size_t) { return open(true); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& k) {
    if (trail_.depth() == 1) {
      key_ = k;
      from_ = seen_;
    }
    if (trail_.key(k)) return true;
    fault = say(text::json_twice, excerpt(k), trail_.pointer());
    return false;
  }
  bool parse_error(std::size_t, const std::string& token, const nlohmann::detail::exception&) {
    const std::string cut = excerpt(token);
    fault = say(text::json_unexpected, "\"" + cut + "\"");
    return false;
  }

  std::vector<Member> members;
  std::optional<Message> fault;
  bool object = false, list = false;

 private:
  bool scalar(bool number) {
    trail_.value();
    if (trail_.depth() == 1) keep(number ? end_of_number(text_, seen_) : seen_);
    return true;
  }
  bool open(bool is_list) {
    trail_.value();
    if (trail_.depth() == kMostLevels) {
      fault = say(text::json_deep, Count{kMostLevels});
      return false;
    }
    if (trail_.depth() == 0) {
      (is_list ? list : object) = true;
      from_ = seen_;
    }
    trail_.open(is_list);
    return true;
  }
  bool close() {
    trail_.close();
    if (trail_.depth() == 1) keep(seen_);
    return true;
  }
  void keep(const char* end) {
    while (is_blank(*from_) || *from_ == ':' || *from_ == ',') ++from_;
    members.push_back({std::move(key_), std::string_view(from_, static_cast<std::size_t>(end - from_))});
    key_.clear();
    from_ = end;
  }

  std::string_view text_;
  const char*& seen_;
  const char* from_ = nullptr;
  std::string key_;
  Trail trail_;
};

Result<std::vector<Member>> split(std::string_view text, bool list) {
  const char* seen = nullptr;
  Splitter s(text, seen);
  if (!walk(text, seen, s)) return fail(Problem{s.fault.value_or(say(text::json_end)), {}, 0, 0, {}});
  if (list ? !s.list : !s.object)
    return fail(text::edit_form, excerpt(text), say(list ? text::form_list : text::form_object));
  return std::move(s.members);
}

} // namespace

Result<std::vector<Member>> members_of(std::string_view object) { return split(object, false); }
Result<std::vector<Member>> entries_of(std::string_view list) { return split(list, true); }

Result<std::string> text_in(const Member& m) {
  const auto value = nlohmann::json::parse(m.text, nullptr, false);
  if (!value.is_string()) return fail(text::edit_form, m.key, say(text::form_text));
  return value.get<std::string>();
}

Result<std::uint64_t> number_in(const Member& m) {
  std::uint64_t n = 0;
  const char* end = m.text.data() + m.text.size();
  const auto [stop, error] = std::from_chars(m.text.data(), end, n);
  if (error != std::errc() || stop != end) return fail(text::edit_form, m.key, say(text::form_number));
  return n;
}

} // namespace snug::detail
