#include "core/model/promise_name.h"

#include "core/model/store.h"
#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

TEST(PromiseName, SaysWhoAndByWhat) {
  World w;
  Promise p;
  p.from = w.deck;
  p.to = AnyId{Kind::outside, 0};
  p.must = PromiseKind::never;
  const std::string deck = name_of(w.lab, w.deck), guest = name_of(w.lab, w.guest);
  EXPECT_EQ(english(promise_name(w.lab, p)), deck + " never reaches the outside");
  p = {};
  p.from = w.guest;
  p.to = AnyId{Kind::everyone, 0};
  p.transport = Transport::tcp;
  p.port = 3260;
  EXPECT_EQ(english(promise_name(w.lab, p)), guest + " reaches every machine on tcp 3260");
  p.transport = Transport::udp;
  p.port = 0;
  EXPECT_EQ(english(promise_name(w.lab, p)), guest + " reaches every machine by udp");
  p.from = {};
  EXPECT_FALSE(english(promise_name(w.lab, p)).empty());
}

} // namespace
} // namespace snug::test
