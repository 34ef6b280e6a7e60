#include "core/findings/rule.h"

namespace snug {

std::span<const Rule> limit_rules() { return {}; }

} // namespace snug
