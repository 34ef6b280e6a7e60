// Facts of the machine that runs the tests against other programs' answers: getconf, df, lscpu, Python.
#include "core/probe/facts.h"

#include "core/base/quote.h"
#include "tests/support/process.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>

namespace snug {
namespace {

using test::run_program;

std::int64_t number(std::string_view text) {
  std::int64_t value = -1;
  text = trimmed(text);
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

#ifdef __linux__
TEST(ProbeOracle, ThreadsAndMemoryAsGetconfSays) {
  const PcFacts facts = probe(this_pc());
  EXPECT_EQ(facts.processor.threads, number(run_program({"getconf", "_NPROCESSORS_ONLN"}).out));
  const std::int64_t pages = number(run_program({"getconf", "_PHYS_PAGES"}).out);
  const std::int64_t page = number(run_program({"getconf", "PAGE_SIZE"}).out);
  EXPECT_EQ(facts.memory.usable_mib, pages * page / (1 << 20));
  EXPECT_GE(facts.memory.installed_mib.value_or(pages * page / (1 << 20)), pages * page / (1 << 20));
}

// coreutils df: size to the MiB, free within 256 MiB (other programs write meanwhile), no volume twice.
TEST(ProbeOracle, VolumesAsDfSays) {
  const PcFacts facts = probe(this_pc());
  ASSERT_TRUE(facts.volumes.has_value());
  for (const VolumeFacts& volume : *facts.volumes) {
    const auto ran = run_program({"df", "-B1", "--output=size,avail", volume.mount_point});
    ASSERT_EQ(ran.code, 0) << ran.err;
    const std::string row = std::string(trimmed(ran.out.substr(ran.out.find('\n') + 1)));
    EXPECT_EQ(volume.size_mib, number(row) >> 20) << volume.mount_point;
    EXPECT_LT(std::abs(volume.free_mib.value() - (number(row.substr(row.find(' '))) >> 20)), 256)
        << volume.mount_point;
  }
}

// util-linux lscpu counts cores from its own reading of the topology.
TEST(ProbeOracle, CoresAsLscpuSays) {
  const auto ran = run_program({"lscpu", "-p=CORE,SOCKET"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  std::vector<std::string> cores;
  for (std::size_t at = 0; at < ran.out.size();) {
    const std::size_t end = std::min(ran.out.find('\n', at), ran.out.size());
    const std::string row = ran.out.substr(at, end - at);
    if (!row.empty() && row[0] != '#' && std::find(cores.begin(), cores.end(), row) == cores.end())
      cores.push_back(row);
    at = end + 1;
  }
  const PcFacts facts = probe(this_pc());
  EXPECT_EQ(facts.processor.cores.value_or(static_cast<int>(cores.size())), static_cast<int>(cores.size()));
}

// Python's socket module asks the kernel for the interfaces' names.
TEST(ProbeOracle, CardsAsTheKernelNamesThem) {
  const auto ran =
      run_program({"/usr/bin/python3", "-c",
                   "import socket\nfor n in sorted(name for _, name in socket.if_nameindex()):\n"
                   "    if n != 'lo': print(n, open(f'/sys/class/net/{n}/mtu').read().strip())"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  std::string ours;
  const PcFacts facts = probe(this_pc());
  ASSERT_TRUE(facts.cards.has_value());
  for (const CardFacts& card : *facts.cards)
    if (card.mtu) ours += card.name + " " + std::to_string(*card.mtu) + "\n";
  EXPECT_EQ(ours, ran.out);
}
#else
TEST(ProbeOracle, ElsewhereNothingIsKnown) {
  EXPECT_FALSE(probe(this_pc()).memory.usable_mib.has_value());
  EXPECT_EQ(number("1"), 1);
}
#endif

} // namespace
} // namespace snug
