// Any octets: read_lab gives a lab that can be written and read again, or a sentence. See CMakeLists.txt.

#include "core/document/read.h"
#include "core/document/write.h"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto lab = snug::read_lab(bytes, "fuzz.snuglab");
  if (!lab) {
    if (snug::english(lab.error()).empty()) std::abort();
    return 0;
  }
  const auto again = snug::read_lab(snug::write_lab(*lab), "again.snuglab");
  if (!again || !(*again == *lab)) std::abort();
  return 0;
}
