#pragma once
// A sentence for a person as data: a template and typed arguments (DECISIONS 6). Core never
// concatenates prose; front ends render, translate and format numbers by locale.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace snug {

// An English sentence with a stable id. Placeholders are {0} … {9}; "{{" is a brace. When `one` is not
// empty it is used instead of `other` if the first Count argument is exactly 1. Templates are constants
// with static storage (core/text/*.h); a Message keeps a pointer to its template.
struct Template {
  std::string_view id;
  std::string_view other;
  std::string_view one = {};
};

struct Count {
  std::int64_t n = 0;
  friend bool operator==(const Count&, const Count&) = default;
};
// Memory or disk in MiB; shown in GiB with one decimal from 1 GiB on (DECISIONS 19), may be negative.
struct Mib {
  std::int64_t n = 0;
  friend bool operator==(const Mib&, const Mib&) = default;
};
struct Seconds {
  std::int64_t n = 0;
  friend bool operator==(const Seconds&, const Seconds&) = default;
};
struct Percent {
  std::int64_t n = 0;
  friend bool operator==(const Percent&, const Percent&) = default;
};
// A ratio in hundredths: 350 is shown as 3.5.
struct Hundredths {
  std::int64_t n = 0;
  friend bool operator==(const Hundredths&, const Hundredths&) = default;
};
// A word of the program that stands inside sentences, such as a field's label; has static storage.
struct Term {
  std::string_view text;
  operator std::string_view() const { return text; }
  friend bool operator==(const Term&, const Term&) = default;
};
struct Message;
// Texts are names, addresses and what else no language changes. Lists are joined by whoever puts the message
// into words (core/base/tongue.h); one message in a list is a message inside another.
using Argument = std::variant<std::string, Count, Mib, Seconds, Percent, Hundredths, Term,
                              std::vector<std::string>, std::vector<Message>>;

struct Message {
  const Template* text = nullptr; // never null in a message that is shown
  std::vector<Argument> args;

  std::string_view id() const { return text ? text->id : std::string_view{}; }
  bool empty() const { return text == nullptr; }
  friend bool operator==(const Message&, const Message&) = default;
};

namespace detail {
inline Argument argument(std::string s) { return s; }
inline Argument argument(std::string_view s) { return std::string(s); }
inline Argument argument(const char* s) { return std::string(s); }
inline Argument argument(Argument a) { return a; }
inline Argument argument(Term t) { return t; }
inline Argument argument(Message m) {
  std::vector<Message> inner;
  inner.push_back(std::move(m));
  return inner;
}
template <typename T>
requires(!std::is_convertible_v<T, std::string_view> && !std::is_same_v<T, Argument> &&
         !std::is_same_v<T, Message>) Argument argument(T v) {
  return Argument(std::move(v));
}
} // namespace detail

template <typename... A>
Message say(const Template& t, A&&... args) {
  Message m{&t, {}};
  m.args.reserve(sizeof...(args));
  (m.args.push_back(detail::argument(std::forward<A>(args))), ...);
  return m;
}

// The English sentence with arguments filled in, for files and the command line. Numbers use '.' and no
// grouping, whatever the locale.
std::string english(const Message&);
std::string english(const Argument&);
// The same where it stands alone: begins with a capital letter unless it begins with a name.
std::string sentence(const Message&);

inline constexpr std::int64_t kShowGibFrom = 1024;
// "10.2 GiB", "768 MiB", "-1.5 GiB": IEC 80000-13 units, GiB with one decimal (rounded half away from
// zero) from 1024 MiB on, MiB below.
std::string show_mib(std::int64_t mib);
// n / unit with one decimal, rounded half away from zero: "10.2". unit: from 1 on.
std::string show_tenths(std::int64_t n, std::int64_t unit);

} // namespace snug
