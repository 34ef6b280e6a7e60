#include "core/model/use.h"

#include "core/model/store.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace snug {
namespace {

std::set<std::string> unused(const Lab& lab, AnyId id) {
  std::set<std::string> out;
  for (const FieldInfo& f : info_of(id.kind).fields)
    if (!is_used(lab, id, f)) out.emplace(f.key);
  return out;
}

TEST(FieldUse, ATranslatorIsThereOnlyWhereASegmentTranslates) {
  Lab lab;
  Segment& s = lab.segments.emplace_back();
  s.id.number = 1;
  const std::set<std::string> translator{"translator4", "translator_dhcp", "translator_names", "ranges",
                                         "forwards"};
  std::set<std::string> isolated = translator;
  isolated.insert({"lan", "pc_address4", "pc_address6"});
  EXPECT_EQ(unused(lab, s.id), isolated);
  s.pc_socket = true;
  s.type = SegmentKind::bridged;
  EXPECT_EQ(unused(lab, s.id), translator);
  s.type = SegmentKind::nat;
  EXPECT_TRUE(unused(lab, s.id).empty());
}

TEST(FieldUse, PingHasNoPort) {
  Lab lab;
  Promise& p = lab.promises.emplace_back();
  p.id.number = 1;
  p.transport = Transport::icmp;
  EXPECT_EQ(unused(lab, p.id), std::set<std::string>{"port"});
  p.port = 443; // typed: to be seen
  EXPECT_TRUE(unused(lab, p.id).empty());
  p.transport = Transport::tcp;
  p.port = 0;
  EXPECT_TRUE(unused(lab, p.id).empty());
}

} // namespace
} // namespace snug
