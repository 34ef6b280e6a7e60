#pragma once
// Locales in which numbers and letters look different (RELIABILITY row 19 of the design).

#include <array>
#include <clocale>
#include <locale>
#include <string>

namespace snug::test {

// Groups by threes with '.' and has ',' as decimal point, as German does, whether or not such a locale is
// installed.
class Grouping : public std::numpunct<char> {
 protected:
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

// Puts the locale back at its end.
class Locales {
 public:
  Locales() : global_(std::locale()), c_(std::setlocale(LC_ALL, nullptr)) {}
  ~Locales() {
    std::setlocale(LC_ALL, c_.c_str());
    std::locale::global(global_);
  }
  Locales(const Locales&) = delete;
  Locales& operator=(const Locales&) = delete;
  Locales(Locales&&) = delete;
  Locales& operator=(Locales&&) = delete;

 private:
  std::locale global_;
  std::string c_;
};

inline constexpr std::array kLocaleNames{"C", "de_DE.UTF-8", "tr_TR.UTF-8", "ar_EG.UTF-8"};

// C++ streams group and write commas; C takes the locale of this name where it is installed.
inline void wear_locale(const char* name) {
  std::locale::global(std::locale(std::locale::classic(), new Grouping));
  std::setlocale(LC_ALL, name);
}

} // namespace snug::test
