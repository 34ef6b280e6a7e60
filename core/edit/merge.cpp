#include "core/edit/edit.h"

#include <algorithm>

namespace snug {

namespace {

AnyId subject(const Primitive& p) {
  if (const auto* s = std::get_if<SetField>(&p)) return s->id;
  if (const auto* s = std::get_if<SetUnknown>(&p)) return s->id;
  if (const auto* s = std::get_if<InsertElement>(&p)) return id_of(*s->element);
  return id_of(*std::get<RemoveElement>(p).element);
}

bool is_structural(const Primitive& p) {
  return std::holds_alternative<InsertElement>(p) || std::holds_alternative<RemoveElement>(p);
}

// Joins `next` with an earlier change of the same field, as long as no step between them inserts or removes
// that element. Returns whether it did.
bool join(std::vector<Primitive>& steps, const SetField& next) {
  for (std::size_t i = steps.size(); i-- > 0;) {
    if (subject(steps[i]) != next.id) continue;
    if (is_structural(steps[i])) return false;
    auto* s = std::get_if<SetField>(&steps[i]);
    if (!s || s->field != next.field) continue;
    s->after = next.after;
    if (s->before == s->after) steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(i));
    return true;
  }
  return false;
}

// An insertion right before the removal of the same element leaves nothing.
bool cancels(const std::vector<Primitive>& steps, const Primitive& next) {
  const auto* removed = std::get_if<RemoveElement>(&next);
  if (!removed || steps.empty()) return false;
  const auto* inserted = std::get_if<InsertElement>(&steps.back());
  return inserted && inserted->place == removed->place && *inserted->element == *removed->element;
}

} // namespace

Edit merged(const Edit& first, const Edit& second) {
  Edit out{second.label.empty() ? first.label : second.label, first.steps};
  for (const Primitive& p : second.steps) {
    if (const auto* s = std::get_if<SetField>(&p)) {
      if (!join(out.steps, *s) && !(s->before == s->after)) out.steps.push_back(p);
    } else if (cancels(out.steps, p)) {
      out.steps.pop_back();
    } else {
      out.steps.push_back(p);
    }
  }
  return out;
}

} // namespace snug
