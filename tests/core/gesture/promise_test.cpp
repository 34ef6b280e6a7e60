#include "core/gesture/promise.h"

#include "core/gesture/set.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

constexpr AnyId kOutside{Kind::outside, 0};

ReachQuestion between(AnyId from, AnyId to) {
  ReachQuestion q;
  q.from = from;
  q.to = to;
  return q;
}

class PromiseEdits : public ::testing::Test {
 protected:
  Result<Edit> set(const char* key, const Value& value) {
    return set_fields(lab, std::vector<AnyId>{lab.promises.back().id}, *info_of(Kind::promise).field(key),
                      value);
  }
  void change(const char* key, const Value& value) {
    const auto edit = set(key, value);
    ASSERT_TRUE(edit) << english(edit.error());
    ASSERT_TRUE(apply(lab, *edit));
  }
  const Promise& last() { return lab.promises.back(); }
  Lab lab = sample("skerry-ferries");
  ReachQuestion q = between(machine(lab, "beacon").id, machine(lab, "hold").id);
};

TEST_F(PromiseEdits, AnAnswerBecomesAPromise) {
  q.transport = Transport::tcp;
  q.port = 443;
  const ExerciseId now = exercise(lab, "A shared hold");
  const auto kept = promise_that(lab, q, Reached::reaches, now);
  ASSERT_TRUE(kept);
  EXPECT_EQ(english(kept->edit.label), "Promise that beacon reaches hold on tcp 443");
  ASSERT_TRUE(apply(lab, kept->edit));
  EXPECT_EQ(AnyId(last().id), kept->id);
  EXPECT_EQ(last().must, PromiseKind::reach);
  EXPECT_EQ(last().exercises, std::vector{now});
  EXPECT_EQ(promise_that(lab, q, Reached::reaches, now).error().message.id(), "gesture-promised");
  const auto never = promise_that(lab, q, Reached::does_not_reach, {});
  ASSERT_TRUE(apply(lab, never->edit));
  EXPECT_EQ(last().must, PromiseKind::never);
  EXPECT_TRUE(last().exercises.empty());
  for (const Reached half : {Reached::one_way, Reached::unreliable}) {
    const auto must = promise_that(lab, q, half, {});
    Lab after = lab;
    ASSERT_TRUE(apply(after, must->edit));
    EXPECT_EQ(after.promises.back().must, PromiseKind::reach);
  }
}

TEST_F(PromiseEdits, WhatNoPromiseSpeaksOfIsRefused) {
  const auto refused = [&](const ReachQuestion& asked) {
    const auto added = promise_that(lab, asked, Reached::reaches, {});
    return added ? std::string() : std::string(added.error().message.id());
  };
  EXPECT_EQ(refused(between({Kind::pc, 0}, kOutside)), "gesture-no-subject");
  EXPECT_EQ(refused(between(kOutside, lab.lans.front().id)), "gesture-no-subject");
  EXPECT_EQ(refused(between(q.from, q.from)), "gesture-one-subject");
  q.full_size = true;
  EXPECT_EQ(refused(q), "gesture-small-only");
}

TEST_F(PromiseEdits, OneToBeChangedHasTwoEnds) {
  for (const ReachQuestion& asked : {q, between({Kind::pc, 0}, kOutside), between(kOutside, q.to),
                                     between(kOutside, kOutside), between(q.from, q.from)}) {
    const auto added = add_promise(lab, asked, {});
    ASSERT_TRUE(added);
    Lab after = lab;
    ASSERT_TRUE(apply(after, added->edit));
    EXPECT_NE(after.promises.back().from, after.promises.back().to);
    EXPECT_EQ(AnyId(after.promises.back().id), added->id);
  }
}

TEST_F(PromiseEdits, EveryFieldIsChangedInANamedStep) {
  ASSERT_TRUE(apply(lab, add_promise(lab, q, {})->edit));
  EXPECT_EQ(add_promise(lab, q, {}).error().message.id(), "gesture-promised") << "a second time";
  EXPECT_EQ(english(set("must", Value(std::string("never")))->label),
            "Change the promise that beacon reaches hold");
  change("must", Value(std::string("never")));
  change("to", Value(kOutside));
  change("from", Value(AnyId(lab.segments.front().id)));
  EXPECT_EQ(last().must, PromiseKind::never);
  EXPECT_EQ(last().to, kOutside);
  change("port", Value(std::int64_t{443})); // a port is one of TCP
  EXPECT_EQ(last().transport, Transport::tcp);
  change("transport", Value(std::string("udp")));
  EXPECT_EQ(last().port, 443);
  change("transport", Value(std::string("icmp"))); // which has none
  EXPECT_EQ(last().port, 0);
  change("from", Value(AnyId(q.from)));
  EXPECT_EQ(set("to", Value(q.from)).error().message.id(), "gesture-one-subject");
}

TEST_F(PromiseEdits, TakingBackIsUndone) {
  const Lab before = lab;
  const PromiseId id = lab.promises.front().id;
  const Edit edit = remove_promise(lab, id);
  EXPECT_EQ(english(edit.label), "Take back the promise that " + name_of(lab, id));
  ASSERT_TRUE(apply(lab, edit));
  EXPECT_EQ(lab.promises.size() + 1, before.promises.size());
  ASSERT_TRUE(apply(lab, inverse(edit)));
  EXPECT_TRUE(lab == before);
}

TEST_F(PromiseEdits, NamesSayWhatIsPromised) {
  EXPECT_EQ(name_of(lab, lab.promises[0].id), "Cargo never reaches the outside");
  EXPECT_EQ(name_of(lab, lab.promises[3].id), "wheelhouse reaches beacon on udp 53");
  lab.promises[3].port = 0;
  EXPECT_EQ(name_of(lab, lab.promises[3].id), "wheelhouse reaches beacon by udp");
  lab.promises[3].from = {Kind::everyone, 0};
  EXPECT_EQ(name_of(lab, lab.promises[3].id), "every machine reaches beacon by udp");
}

} // namespace
} // namespace snug::test
