#include "core/reach/reach.h"
#include "tests/bench/routed_lab.h"
#include "tests/support/network_lab.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <new>

namespace {
std::size_t taken = 0; // pieces of memory since the start
void* take(std::size_t size) {
  ++taken;
  if (void* p = std::malloc(size == 0 ? 1 : size)) return p;
  throw std::bad_alloc();
}
} // namespace

void* operator new(std::size_t size) { return take(size); }
void* operator new[](std::size_t size) { return take(size); }
void* operator new(std::size_t size, const std::nothrow_t&) noexcept { return ++taken, std::malloc(size); }
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept { return ++taken, std::malloc(size); }
void operator delete(void* p) noexcept { std::free(p); }
void operator delete[](void* p) noexcept { std::free(p); }
void operator delete(void* p, std::size_t) noexcept { std::free(p); }
void operator delete[](void* p, std::size_t) noexcept { std::free(p); }

namespace snug::test {
namespace {

// Every pair once, then again: gives what the second time took.
std::size_t second_time(const Lab& lab, ReachQuestion q) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  std::size_t before = 0;
  for (int round = 0; round < 2; ++round) {
    before = taken;
    for (const Machine& a : lab.machines)
      for (const Machine& b : lab.machines) {
        q.from = a.id;
        q.to = b.id;
        reach.verdict(q);
      }
  }
  return taken - before;
}

TEST(Query, TakesNoMemoryOnceItsOwnHasGrown) {
  const std::size_t before = taken;
  const Lab lab = bench::routed_lab(60);
  EXPECT_GT(taken, before) << "nothing is counted";
  ReachQuestion small, full, transfer;
  full.full_size = transfer.full_size = true;
  transfer.transport = Transport::tcp;
  for (const ReachQuestion& q : {small, full, transfer}) {
    EXPECT_EQ(second_time(lab, q), 0U);
    for (std::uint64_t seed = 0; seed < 50; ++seed) {
      SCOPED_TRACE(seed);
      Random r(seed);
      EXPECT_EQ(second_time(network_lab(r, {20, 6}), q), 0U);
    }
  }
}

} // namespace
} // namespace snug::test
