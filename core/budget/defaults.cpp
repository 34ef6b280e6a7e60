#include "core/budget/defaults.h"

#include "core/base/size.h"

namespace snug {

std::int64_t usual_reserve(std::int64_t installed_mib) {
  if (installed_mib <= 16 * kMibPerGib) return 4 * kMibPerGib;
  return (installed_mib < 64 * kMibPerGib ? 6 : 8) * kMibPerGib;
}

std::int64_t usual_keep_free(std::int64_t installed_mib) {
  return (installed_mib <= 16 * kMibPerGib ? 1 : 2) * kMibPerGib;
}

std::int64_t usable(const Pc& pc) { return pc.usable.value_or(pc.installed); }
std::int64_t reserved(const Pc& pc) { return pc.reserved.value_or(usual_reserve(pc.installed)); }
std::int64_t keep_free(const Pc& pc) { return pc.keep_free.value_or(usual_keep_free(pc.installed)); }

} // namespace snug
