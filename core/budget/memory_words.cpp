#include "core/budget/memory_words.h"

#include "core/text/layout_text.h"

#include <algorithm>

namespace snug {

std::int64_t room_in(const MemoryBudget& b) { return std::max<std::int64_t>(b.budget, 0); }

Message running_words(const MemoryBudget& b) {
  const bool over = b.verdict() == Verdict::over;
  const Template& words = over                            ? text::layout_state_over
                          : b.verdict() == Verdict::tight ? text::layout_state_tight
                                                          : text::layout_state_fits;
  return say(words, Mib{b.taken}, Mib{room_in(b)}, Mib{over ? -b.headroom() : b.headroom()});
}

} // namespace snug
