#include "tests/support/scale.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>

namespace snug::test {

int scaled(int full) {
  const char* scale = std::getenv("SNUG_TEST_SCALE");
  return scale != nullptr && std::string_view(scale) == "full" ? full : std::max(1, full / 10);
}

} // namespace snug::test
