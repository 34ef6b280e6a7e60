#pragma once
// Sentences of core as Qt strings. Translations are looked up by the template's id (DECISIONS 6).

#include "core/base/message.h"

#include <QString>

#include <string_view>

namespace snug {

inline QString as_qt(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}
inline QString words(const Message& m) { return as_qt(english(m)); }
// Where it stands alone.
inline QString whole_words(const Message& m) { return as_qt(sentence(m)); }
template <typename... A>
QString words(const Template& t, A&&... args) {
  return words(say(t, std::forward<A>(args)...));
}

} // namespace snug
