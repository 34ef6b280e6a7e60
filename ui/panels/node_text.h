#pragma once
// Who a question or a promise is about, in the language of the screens.

#include "core/reach/explain.h"
#include "core/text/reach_text.h"
#include "ui/session/words.h"

namespace snug {

inline QString node_text(const Lab& lab, AnyId id) {
  if (id.kind == Kind::pc) return words(text::node_pc);
  if (id.kind == Kind::outside) return words(text::node_outside);
  if (id.kind == Kind::everyone) return words(text::node_everyone);
  if (id.kind == Kind::segment) return words(text::node_translator, name_of(lab, id));
  return as_qt(reach_name(lab, id));
}

} // namespace snug
