#pragma once
// Sentences of core as Qt strings, in the language of the screens.

#include "core/base/result.h"
#include "core/base/size.h"
#include "ui/session/tongue.h"

#include <QString>

#include <string_view>

namespace snug {

inline QString as_qt(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}
inline QString words(const Message& m) { return as_qt(spoken().say(m)); }
inline QString words(const Argument& a) { return as_qt(spoken().say(a)); }
inline QString words(Term t) { return words(Argument(t)); }
inline QString words(const Problem& p) { return as_qt(place_of(p)) + words(p.message); }
// Where it stands alone.
inline QString whole_words(const Message& m) { return as_qt(spoken().sentence(m)); }
// Exactly, as a size field shows it: "3.5 GiB"; in 0 … kMaxMib.
inline QString size_words(std::int64_t mib) { return in_locale(as_qt(mib_text(mib))); }
template <typename... A>
QString words(const Template& t, A&&... args) {
  return words(say(t, std::forward<A>(args)...));
}

} // namespace snug
