#pragma once
// Puts messages into words: English, unless a front end brings a language.

#include "core/base/message.h"

#include <optional>

namespace snug {

class Tongue {
 public:
  virtual ~Tongue() = default;

  std::string say(const Message&) const;
  std::string say(const Argument&) const;
  // Exactly, as a size field shows it: "3.5 GiB"; in 0 … kMaxMib.
  std::string size(std::int64_t mib) const;
  // Where it stands alone: begins with a capital letter unless it begins with a name.
  std::string sentence(const Message&) const;

 protected:
  // The pattern of a template; n: its first Count, if it has one. May be kept in `room`.
  virtual std::string_view pattern(const Template&, std::optional<std::int64_t> n, std::string& room) const;
  // What documents write in small letters is spelt as people do: "nat" is NAT.
  virtual std::string term(std::string_view word) const;
  // "-10.2" as this language writes it.
  virtual std::string number(std::string digits) const { return digits; }

 private:
  std::string filled(const Template&, const std::string& one) const;
  std::string list(std::vector<std::string> parts) const;
  std::string mib(std::int64_t n) const;
  std::string seconds(std::int64_t n) const;
  friend struct Renderer;
};

} // namespace snug
