#include "core/gesture/accept.h"

#include "core/base/quote.h"
#include "core/text/gesture_text.h"

namespace snug {

Result<Edit> accept_finding(const Lab& lab, std::string_view rule, std::span<const AnyId> places,
                            std::string_view reason) {
  const std::string_view bare = trimmed(reason);
  if (bare.empty()) return fail(text::gesture_no_reason);
  Accepted accepted;
  accepted.rule = rule;
  accepted.places.assign(places.begin(), places.end());
  accepted.reason = bare;
  EditBuilder edit(lab);
  edit.add(std::move(accepted));
  return std::move(edit).take(say(text::gesture_accept));
}

} // namespace snug
