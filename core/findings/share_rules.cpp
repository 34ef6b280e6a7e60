#include "core/findings/rule.h"

namespace snug {

std::span<const Rule> share_rules() { return {}; }

} // namespace snug
