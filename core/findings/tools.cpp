#include "core/findings/tools.h"

namespace snug {

Fix set_one(const Context& c, Message label, AnyId id, std::string_view key, Value value) {
  return build_fix(c, std::move(label), [&](EditBuilder& b) { b.set(id, key, std::move(value)); });
}

} // namespace snug
