#include "core/findings/rule.h"

namespace snug {

std::span<const Rule> plan_rules() { return {}; }

} // namespace snug
