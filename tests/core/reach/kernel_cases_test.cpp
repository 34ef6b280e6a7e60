// What a Linux kernel did with whole topologies: tests/data/checks/kernel-reachability.json (its kernel and
// how it was made stand in the file). SNUGLAB_KERNEL_CASES names one more file of that format.

#include "tests/support/kernel_case.h"

#include <cstdlib>
#include <gtest/gtest.h>
#include <iostream>
#include <set>

namespace snug::test {
namespace {

struct Counts {
  int agree = 0, differ = 0, not_expressible = 0;
};

std::string told(const ReachAnswer& a) {
  std::string out(word(a.verdict));
  for (const ReachStep& s : a.steps)
    out += "\n    " + to_text(s.node) + " " + to_text(s.card) + " " +
           std::to_string(static_cast<int>(s.what)) + " " + to_text(s.address) + (s.back ? " back" : "");
  return out;
}

bool agrees(const Observation& o, Reached r) {
  if (o.varies) return r == Reached::unreliable;
  if (o.ok) return r == Reached::reaches;
  if (o.question.transport == Transport::tcp) return r == Reached::does_not_reach;
  return r == (o.arrived ? Reached::one_way : Reached::does_not_reach);
}

// Observations of one case, in their order.
bool replay(const KernelCase& c) {
  const Index index(c.lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses, ExerciseId{}, c.assumptions);
  bool all = true;
  for (const Observation& o : c.observed) {
    const ReachAnswer a = reach.ask(o.question);
    if (agrees(o, a.verdict)) continue;
    ADD_FAILURE() << c.name << ": " << o.text << ": the kernel: "
                  << (o.varies    ? "varies"
                      : o.ok      ? "ok"
                      : o.arrived ? "arrives, no answer"
                                  : "no")
                  << "; the plan: " << told(a);
    all = false;
  }
  return all;
}

// What the model has no field for: packet filters, spanning tree, switches of the kernel beside those of
// forwarding and reverse paths, and a hypervisor's networks that are not a piece of one segment. Anything
// else must be expressed.
bool is_lacking(const std::string& why) {
  static const std::set<std::string> kLacking{
      "a loop of cables",
      "cables to inner segments",
      "a bridge with another MTU than its uplink",
      "a bridge with another MAC than its uplink",
      "an inner segment with another MTU than the segment it belongs to",
      "two inner networks of one hypervisor on one segment",
      "a machine with nics inside and outside a hypervisor",
      "a reverse-path filter on one nic of several",
  };
  if (kLacking.count(why) != 0) return true;
  if (why.starts_with("sysctl "))
    return why.find("forward") == std::string::npos && why.find("rp_filter") == std::string::npos;
  return why.find("nft") != std::string::npos || why.find("stp") != std::string::npos ||
         why.find("forward_delay") != std::string::npos;
}

Counts replay_file(const std::string& path) {
  Counts n;
  for (const KernelCase& c : read_kernel_cases(path)) {
    if (!c.not_expressible.empty()) {
      ++n.not_expressible;
      std::cout << "not expressible: " << c.name << ":";
      for (const std::string& why : c.not_expressible) {
        std::cout << " " << why << ";";
        EXPECT_TRUE(is_lacking(why)) << c.name << ": " << why;
      }
      std::cout << "\n";
    } else {
      ++(replay(c) ? n.agree : n.differ);
    }
  }
  std::cout << n.agree << " agree, " << n.differ << " differ, " << n.not_expressible << " not expressible"
            << std::endl;
  return n;
}

TEST(KernelCases, EveryObservationOfEveryCaseThatTheModelHasFieldsFor) {
  const Counts n = replay_file(SNUG_SOURCE_DIR "/tests/data/checks/kernel-reachability.json");
  EXPECT_EQ(n.differ, 0);
  EXPECT_EQ(n.agree, 94);
  EXPECT_EQ(n.not_expressible, 9);
}

TEST(KernelCases, UplinksWithoutCarrierAndSwitchesOfTheKernel) {
  const Counts n = replay_file(SNUG_SOURCE_DIR "/tests/data/checks/kernel-switches.json");
  EXPECT_EQ(n.differ, 0);
  EXPECT_EQ(n.agree, 8);
}

TEST(KernelCases, ThoseOfAFileThatTheEnvironmentNames) {
  const char* path = std::getenv("SNUGLAB_KERNEL_CASES");
  if (!path) GTEST_SKIP() << "skipped: not in CI: SNUGLAB_KERNEL_CASES names no file";
  EXPECT_EQ(replay_file(path).differ, 0);
}

} // namespace
} // namespace snug::test
