#pragma once
// Asks for memory that is read soon, where the processor cannot guess it.

namespace snug {

inline void prefetch(const void* at) { __builtin_prefetch(at); }

} // namespace snug
