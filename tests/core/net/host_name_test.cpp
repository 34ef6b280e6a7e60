#include "core/net/host_name.h"

#include "tests/support/csv.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

// RFC 952, 1035, 1123, 2181, 4343: tests/data/checks/hostnames.csv.
TEST(HostName, AgreesWithTheStandards) {
  std::map<std::string, int> rows;
  for (const auto& row : test::read_checks("hostnames.csv")) {
    const std::string &kind = row.at("kind"), &name = row.at("name");
    const bool good = row.at("host_ok") == "yes";
    ++rows[kind];
    if (kind.starts_with("label")) {
      EXPECT_EQ(check_host_label(name).has_value(), good) << name;
    }
    if (kind == "label" && !name.empty() && name != "123") {

      EXPECT_EQ(check_domain_name(name).has_value(), good) << name;
    }
    if (kind == "name") {
      EXPECT_EQ(check_domain_name(name).has_value(), good) << name;
    }
    if (kind == "compare") {
      const std::size_t bar = name.find(" | ");
      EXPECT_EQ(same_name(name.substr(0, bar), name.substr(bar + 3)), row.at("host_ok") == "same") << name;
    }
  }
  EXPECT_EQ(rows["label"], 22);
  EXPECT_EQ(rows["label-with-dot"], 1);
  EXPECT_EQ(rows["name"], 9);
  EXPECT_EQ(rows["compare"], 5);
  EXPECT_EQ(rows["reserved"], 5);
}

// hostnames.csv kind reserved: RFC 6761 6.3, RFC 2606, RFC 8375, RFC 6762 (from memory).
TEST(HostName, KnowsReservedNames) {
  for (const char* name : {"home.arpa", "HOME.ARPA.", "web1.lab.home.arpa", "test", "skerry.test"})
    EXPECT_TRUE(is_offered_private_domain(name)) << name;
  for (const char* name : {"arpa", "athome.arpa", "latest", "test.example", "internal", "", "."})
    EXPECT_FALSE(is_offered_private_domain(name)) << name;
  for (const char* name : {"local", "web1.Local", "lab.local."})
    EXPECT_TRUE(is_multicast_dns_domain(name)) << name;
  for (const char* name : {"local.example", "mylocal", "localhost"})
    EXPECT_FALSE(is_multicast_dns_domain(name)) << name;
  EXPECT_TRUE(is_localhost_name("localhost") && is_localhost_name("a.LOCALHOST"));
  EXPECT_FALSE(is_localhost_name("notlocalhost") || is_localhost_name("localhost.example"));
  for (const char* name : {"example", "lab.example", "example.com", "www.example.org", "EXAMPLE.net"})
    EXPECT_TRUE(is_documentation_domain(name)) << name;
  EXPECT_FALSE(is_documentation_domain("example.edu") || is_documentation_domain("myexample"));
}

TEST(HostName, RefusesWithASentence) {
  struct Row {
    std::string name;
    std::string sentence;
  };
  const std::string long_label(64, 'a');
  const Row rows[] = {
      {"", "a name is missing: write letters, digits and hyphens"},
      {"-web", "\"-web\" starts with a hyphen: a name starts with a letter or a digit"},
      {"web-", "\"web-\" ends with a hyphen: a name ends with a letter or a digit"},
      {"web_1", "\"web_1\" has an underscore, which host names do not allow: write web-1"},
      {"Ticket desk", "\"Ticket desk\" has a space, which host names do not allow: write ticket-desk"},
      {"web.1", "\"web.1\" has a dot, which separates the parts of a name: write one part, like web-1"},
      {"w\u0430b", "\"w\u0430b\": \u0430 (U+0430) is not allowed: a host name has the letters a to z, digits "
                   "and hyphens"},
      {"web\u200b",
       "\"web\u200b\": U+200B is not allowed: a host name has the letters a to z, digits and hyphens"},
      {"web\xe9",
       "\"web\xe9\": byte E9 is not allowed: a host name has the letters a to z, digits and hyphens"},
      {"web!", "\"web!\": ! is not allowed: a host name has the letters a to z, digits and hyphens"},
      {long_label, "\"" + long_label + "\" has 64 characters: a part of a name has at most 63"},
  };
  for (const Row& row : rows) {
    const auto ok = check_host_label(row.name);
    ASSERT_FALSE(ok.has_value()) << row.name;
    EXPECT_EQ(english(ok.error().message), row.sentence);
  }
}

TEST(HostName, RefusesDomainNamesWithASentence) {
  struct Row {
    std::string name;
    std::string sentence;
  };
  const Row rows[] = {
      {"", "a name is missing: write letters, digits and hyphens"},
      {".", "\".\" has an empty part: dots separate the parts of a name"},
      {"a..b", "\"a..b\" has an empty part: dots separate the parts of a name"},
      {".a", "\".a\" has an empty part: dots separate the parts of a name"},
      {"a..", "\"a..\" has an empty part: dots separate the parts of a name"},
      {"10.2.0.52", "\"10.2.0.52\" ends in a part of digits only and could be taken for an address"},
      {"lab.-x.example", "\"-x\" starts with a hyphen: a name starts with a letter or a digit"},
  };
  for (const Row& row : rows) {
    const auto ok = check_domain_name(row.name);
    ASSERT_FALSE(ok.has_value()) << row.name;
    EXPECT_EQ(english(ok.error().message), row.sentence);
  }
}

TEST(HostName, MakesALabelFromAnyText) {
  struct Row {
    std::string text;
    std::string label;
  };
  const Row rows[] = {
      {"Ticket desk", "ticket-desk"},
      {"  web 1!  ", "web-1"},
      {"web1", "web1"},
      {"", "machine"},
      {"---", "machine"},
      {"\u65e5\u672c", "machine"},
      {"a--b__c", "a-b-c"},
      {std::string(100, 'x'), std::string(63, 'x')},
      {std::string(62, 'x') + " y", std::string(62, 'x')},
      {"DB (copy 2)", "db-copy-2"},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(host_label_from(row.text), row.label);
    EXPECT_TRUE(check_host_label(host_label_from(row.text)).has_value()) << row.text;
  }
}

} // namespace
} // namespace snug
