#include "core/base/heap.h"

#if __has_include(<malloc.h>)
#include <malloc.h>
#endif

namespace snug {

void keep_freed_memory() {
#ifdef __GLIBC__
  mallopt(M_MMAP_THRESHOLD, 32 << 20); // the largest that glibc takes
  mallopt(M_TRIM_THRESHOLD, 256 << 20);
#endif
}

} // namespace snug
