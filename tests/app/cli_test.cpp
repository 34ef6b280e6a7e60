// The command line as a function: arguments, exit code, output and words (CONVENTIONS 33).

#include "core/document/lock.h"
#include "core/document/read.h"
#include "tests/app/cli_case.h"

#include <nlohmann/json.hpp>

namespace snug::cli {
namespace {

TEST_F(Cli, DashReadsTheInput) {
  const auto piped = [](const std::vector<std::string>& args, const std::string& bytes) {
    std::istringstream in(bytes);
    std::ostringstream out, err;
    const int code = run(args, {out, err, {}, &in});
    return Outcome{code, out.str(), err.str()};
  };
  const std::string bytes(find_sample("skerry-ferries")->bytes);
  EXPECT_EQ(piped({"check", "-"}, bytes).out, call({"check", ferry()}).out);
  const Outcome bad = piped({"check", "-"}, "{\n oops");
  EXPECT_EQ(bad.code, kUnreadable);
  EXPECT_NE(bad.err.find("standard input:2:"), std::string::npos) << bad.err;
  const Outcome applied = piped({"addresses", "apply", "-"}, bytes);
  EXPECT_EQ(applied.code, kFine) << applied.err;
  EXPECT_TRUE(read_lab(applied.out, "out").has_value());
  EXPECT_FALSE(std::filesystem::exists("-"));
  EXPECT_EQ(call({"check", "-"}).code, kUnreadable) << "no input";
}

TEST_F(Cli, HelpGoesToTheOutput) {
  for (const std::vector<std::string>& args :
       {std::vector<std::string>{"--help"}, {"check", "--help"}, {"addresses", "apply", "--help"}}) {
    const Outcome o = call(args);
    EXPECT_EQ(o.code, kFine);
    EXPECT_EQ(o.err, "");
    EXPECT_NE(o.out.find("Usage"), std::string::npos) << o.out;
  }
}

TEST_F(Cli, VersionSaysProgramAndFormat) {
  const Outcome o = call({"version"});
  EXPECT_EQ(o.code, kFine);
  EXPECT_EQ(o.out.rfind("snuglab-cli ", 0), 0U);
  EXPECT_NE(o.out.find("format version 1"), std::string::npos);
}

TEST_F(Cli, CheckFindsTheConflictOfTheMainSample) {
  const Outcome o = call({"check", ferry()});
  EXPECT_EQ(o.code, kFindings);
  EXPECT_NE(o.out.find("172.22.10.31"), std::string::npos) << o.out;
  EXPECT_NE(o.out.find("[address-twice]"), std::string::npos) << o.out;
}

TEST_F(Cli, CheckOfAnEmptyPcIsFine) {
  const Outcome o = call({"check", empty()});
  EXPECT_EQ(o.code, kFine) << o.out;
  EXPECT_NE(o.out.find("0 errors"), std::string::npos);
}

TEST_F(Cli, CheckJsonHasTheShapeThatWasDecided) {
  const Outcome o = call({"check", ferry(), "--json", "--exercise", "Move a running guest"});
  const auto j = nlohmann::json::parse(o.out);
  for (const char* key : {"lab", "exercise", "budgets", "findings"}) EXPECT_TRUE(j.contains(key)) << key;
  ASSERT_FALSE(j["budgets"].empty());
  for (const auto& b : j["budgets"])
    for (const char* key : {"of", "kind", "unit", "budget", "taken", "headroom", "verdict"})
      EXPECT_TRUE(b.contains(key)) << key;
  EXPECT_EQ(j["budgets"][0]["of"]["id"], "pc");
  EXPECT_EQ(j["budgets"][0]["budget"].get<int>() - j["budgets"][0]["taken"].get<int>(),
            j["budgets"][0]["headroom"].get<int>());
  ASSERT_FALSE(j["findings"].empty());
  for (const auto& f : j["findings"])
    for (const char* key : {"id", "severity", "message", "places", "exercises", "accepted", "fix"})
      EXPECT_TRUE(f.contains(key)) << key;
}

TEST_F(Cli, TablesComeInEveryFormat) {
  for (const std::string of : {"addresses", "segments", "machines", "exercises"}) {
    for (const std::string format : {"csv", "markdown", "html", "json"}) {
      const Outcome o = call({"table", ferry(), "--of", of, "--format", format});
      EXPECT_EQ(o.code, kFine) << of << format << o.err;
      EXPECT_GT(o.out.size(), 100U) << of << format;
    }
  }
  const Outcome o = call({"table", ferry(), "--format", "csv", "-o", path("t.csv")});
  EXPECT_EQ(o.code, kFine);
  EXPECT_EQ(o.out, "");
  EXPECT_NE(get(path("t.csv")).find("beacon.skerry.home.arpa"), std::string::npos);
}

TEST_F(Cli, DrawWritesSvgWithoutAPainterAndSaysWhatItLacks) {
  const Outcome o = call({"draw", ferry(), "-o", path("lab.svg")});
  EXPECT_EQ(o.code, kFine) << o.err;
  EXPECT_NE(get(path("lab.svg")).find("wheelhouse"), std::string::npos);
  const Outcome png = call({"draw", ferry(), "-o", path("lab.png")});
  EXPECT_EQ(png.code, kCannotWrite);
  EXPECT_FALSE(std::filesystem::exists(path("lab.png")));
}

TEST_F(Cli, NewMakesALabThatCheckReadsAndDoesNotOverwrite) {
  EXPECT_EQ(call({"new", path("mine.snuglab"), "--title", "My lab"}).code, kFine);
  EXPECT_EQ(call({"check", path("mine.snuglab")}).code, kFine);
  const auto lab = load_file(path("mine.snuglab"));
  ASSERT_TRUE(lab.has_value());
  EXPECT_EQ(lab->lab.facts.title, "My lab");
  EXPECT_EQ(lab->lab.facts.uid.size(), 32U);
  EXPECT_EQ(call({"new", path("mine.snuglab")}).code, kCannotWrite);
  EXPECT_EQ(call({"new", path("mine.snuglab"), "--replace"}).code, kFine);
  EXPECT_NE(load_file(path("mine.snuglab"))->lab.facts.uid, lab->lab.facts.uid);
  const Outcome list = call({"new", "--list"});
  EXPECT_EQ(list.code, kFine);
  EXPECT_NE(list.out.find("skerry-ferries"), std::string::npos);
}

TEST_F(Cli, EverySampleCanBeBegunFrom) {
  for (const EmbeddedFile& f : embedded_samples()) {
    const std::string file = path(std::string(f.name) + ".snuglab");
    EXPECT_EQ(call({"new", file, "--sample", std::string(f.name)}).code, kFine) << f.name;
    EXPECT_LE(call({"check", file}).code, kFindings) << f.name;
  }
}

TEST_F(Cli, AddressesSuggestWritesNothingAndApplyKeepsThePreviousFile) {
  const std::string file = put("plan.snuglab", R"({"format": "snuglab", "version": 1,
    "numbering": {"block": "172.30.0.0/16"},
    "segments": [{"id": "s1", "name": "Steering"}],
    "machines": [{"id": "m2", "name": "beacon"}],
    "cards": [{"id": "c3", "machine": "m2", "segment": "s1"}]})");
  const std::string before = get(file);
  const Outcome see = call({"addresses", "suggest", file});
  EXPECT_EQ(see.code, kFine) << see.err;
  EXPECT_NE(see.out.find("172.30.1."), std::string::npos) << see.out;
  EXPECT_EQ(get(file), before);
  const Outcome set = call({"addresses", "apply", file});
  EXPECT_EQ(set.code, kFine) << set.err;
  EXPECT_EQ(set.out, see.out);
  EXPECT_EQ(get(file + "~"), before);
  EXPECT_NE(get(file).find("172.30.1."), std::string::npos);
  EXPECT_EQ(call({"addresses", "suggest", file}).out, "no differences\n");
}

TEST_F(Cli, AddressesApplyWaitsForNobodyWhoHasTheFileOpen) {
  const std::string file = ferry();
  const auto held = FileLock::take(file);
  ASSERT_TRUE(held.has_value());
  const std::string before = get(file);
  const Outcome o = call({"addresses", "apply", file});
  EXPECT_EQ(o.code, kCannotWrite) << o.err;
  EXPECT_EQ(get(file), before);
}

TEST_F(Cli, FixMakesTheRepairThatCheckOffers) {
  const std::string file = ferry();
  const std::string before = get(file);
  EXPECT_EQ(call({"fix", file, "address-twice"}).out,
            "changed  deck-b card 1: addresses from typed 172.22.10.31 to typed 172.22.10.32\n")
      << "deck-b is .32 on its other cards";
  EXPECT_EQ(get(file + "~"), before);
  EXPECT_EQ(call({"check", file}).code, kFine);
  EXPECT_EQ(call({"fix", file, "address-twice"}).code, kFindings);
  EXPECT_EQ(call({"fix", file, "no-such-rule"}).code, kUsage);
  EXPECT_EQ(call({"fix", ferry(), "address-twice", "--place", "c28"}).code, kFindings);
}

// Either place may be repaired: check says both, --place takes the other one.
TEST_F(Cli, FixTakesThePlaceThatIsNamed) {
  const std::string checked = call({"check", ferry()}).out;
  EXPECT_NE(checked.find("    fix: Move deck-b to .32\n         c41 "), std::string::npos) << checked;
  EXPECT_NE(checked.find("     or: Move deck-a to .11\n         c36 "), std::string::npos) << checked;
  const auto j = nlohmann::json::parse(call({"check", ferry(), "--json"}).out);
  for (const auto& f : j.at("findings")) {
    const bool twice = f.at("id") == "address-twice";
    EXPECT_EQ(f.at("other_fix").is_null(), !twice) << f.at("id");
    if (twice) {
      EXPECT_EQ(f.at("other_fix").at("label"), "Move deck-a to .11");
    }
  }
  EXPECT_EQ(call({"fix", ferry(), "address-twice", "--place", "c36"}).out,
            "changed  deck-a card 1: addresses from typed 172.22.10.31 to typed 172.22.10.11\n");
}

TEST_F(Cli, FixSaysWhatToDoWhereThereIsNoRepair) {
  const std::string file = put("small.snuglab", R"({"format": "snuglab", "version": 1, "lab": {"next_id": 9},
    "pc": {"installed": 8192, "usable": 8192, "cores": 4, "threads": 8},
    "exercises": [{"id": "e5", "name": "Dusk", "on": ["m2"]}],
    "machines": [{"id": "m2", "name": "beacon", "memory": 16384}]})");
  const std::string before = get(file);
  const auto j = nlohmann::json::parse(call({"check", file, "--exercise", "Dusk", "--json"}).out);
  int tried = 0;
  for (const auto& f : j.at("findings")) {
    if (!f.at("fix").is_null()) continue;
    const Outcome o = call({"fix", file, f.at("id").get<std::string>()});
    EXPECT_EQ(o.code, kFindings);
    EXPECT_EQ(o.out, "");
    EXPECT_NE(o.err.find(f.at("message").get<std::string>() + ". There is no automatic repair"),
              std::string::npos)
        << o.err;
    EXPECT_NE(o.err.find(f.at("reason").get<std::string>()), std::string::npos) << o.err;
    ++tried;
  }
  EXPECT_GT(tried, 0);
  EXPECT_EQ(get(file), before);
  const Outcome none = call({"fix", file, "address-twice"});
  EXPECT_EQ(none.code, kFindings);
  EXPECT_NE(none.err.find("has no open finding here; \"snuglab-cli check " + file), std::string::npos)
      << none.err;
  EXPECT_NE(call({"fix", file, "address-twice", "--place", "m2"}).err.find("about m2"), std::string::npos);
}

// The budgets of MODEL for segments beside those for memory, processors and disk.
TEST_F(Cli, CheckShowsTheAddressesOfSegments) {
  const std::string file = put("seg.snuglab", R"({"format": "snuglab", "version": 1, "lab": {"next_id": 9},
    "segments": [{"id": "s1", "name": "Crew", "prefix4": "172.30.1.0/29"}, {"id": "s4", "name": "Hold"}],
    "machines": [{"id": "m2", "name": "beacon", "memory": 1024}],
    "cards": [{"id": "c3", "machine": "m2", "segment": "s1", "addresses": [{"address": "172.30.1.2"}],
               "dhcp": "server", "ranges": [{"first": "172.30.1.4", "last": "172.30.1.6"}]}]})");
  const std::string out = call({"check", file}).out;
  EXPECT_NE(
      out.find("    Crew, addresses: fits, 1 used, 3 reserved, 2 free, of 6 in 172.30.1.0/29; DHCP gives out "
               "172.30.1.4 to 172.30.1.6; machines on it take 1.2 GiB\n"),
      std::string::npos)
      << out;
  EXPECT_NE(out.find("    Hold, addresses: no IPv4 prefix\n"), std::string::npos) << out;
}

TEST_F(Cli, AddressesSayWhoIsLeftWithoutAWayOut) {
  const std::string file = put("nat.snuglab", R"({"format": "snuglab", "version": 1, "lab": {"next_id": 9},
    "segments": [{"id": "s1", "name": "Way out", "type": "nat", "prefix4": "172.30.1.0/24"}],
    "machines": [{"id": "m2", "name": "beacon"}],
    "cards": [{"id": "c3", "machine": "m2", "segment": "s1"}]})");
  const Outcome set = call({"addresses", "apply", file});
  EXPECT_EQ(set.code, kFine);
  EXPECT_EQ(std::count(set.err.begin(), set.err.end(), '\n'), 1) << set.err;
  EXPECT_NE(set.err.find("beacon has no default route"), std::string::npos) << set.err;
  EXPECT_NE(call({"check", file}).out.find("Give beacon a default route by 172.30.1.1"), std::string::npos);
  EXPECT_EQ(call({"fix", file, "default-missing"}).code, kFine);
  EXPECT_EQ(call({"addresses", "apply", file}).err, "");
  EXPECT_EQ(call({"check", file}).out.find("default-missing"), std::string::npos);
}

TEST_F(Cli, RolesListTheCatalogueAndGoIntoANewLab) {
  EXPECT_NE(call({"roles"}).out.find("directory-server"), std::string::npos);
  EXPECT_TRUE(nlohmann::json::accept(call({"roles", "--json"}).out));
  const auto role = nlohmann::json::parse(call({"roles", "nested-hypervisor"}).out);
  EXPECT_EQ(role["key"], "nested-hypervisor");
  EXPECT_EQ(call({"roles", "clown"}).code, kUsage);
  EXPECT_EQ(call({"new", path("r.snuglab"), "--roles"}).code, kFine);
  EXPECT_GE(load_file(path("r.snuglab"))->lab.roles.size(), 14U);
}

TEST_F(Cli, TheEndingOfTheOutputSaysTheFormatOfATable) {
  EXPECT_EQ(call({"table", ferry(), "-o", path("t.html")}).code, kFine);
  EXPECT_EQ(get(path("t.html")).rfind("<!DOCTYPE html>", 0), 0U);
  EXPECT_EQ(call({"table", ferry(), "-o", path("t.csv")}).code, kFine);
  EXPECT_EQ(get(path("t.csv")).rfind("Machine,", 0), 0U);
  EXPECT_EQ(call({"table", ferry(), "-o", path("t.csv"), "--format", "json"}).code, kFine);
  EXPECT_TRUE(nlohmann::json::accept(get(path("t.csv"))));
}

TEST_F(Cli, ReachSaysTheWayAndWhereItEnds) {
  const Outcome ok = call({"reach", ferry(), "tickets-1", "tickets-db", "--service", "tcp/7450", "--exercise",
                           "The ticket office opens"});
  EXPECT_EQ(ok.code, 0) << ok.err;
  EXPECT_NE(ok.out.find("tickets-1 reaches tickets-db at 172.22.40.42"), std::string::npos) << ok.out;
  EXPECT_NE(ok.out.find("and back:"), std::string::npos);
  const Outcome no = call({"reach", ferry(), "hold", "outside", "--json", "--exercise", "A shared hold"});
  EXPECT_EQ(no.code, 0) << no.err;
  const auto j = nlohmann::json::parse(no.out);
  EXPECT_EQ(j.at("verdict"), "does not reach");
  EXPECT_EQ(j.at("from").at("name"), "hold");
  EXPECT_EQ(j.at("hops").back().at("decision"), "no-route");
  EXPECT_EQ(j.at("hops").back().at("node").at("name"), "hold");
}

// wheelhouse was promised deck-b, whose address deck-a has too.
TEST_F(Cli, ReachIsOneWhereAPromiseIsBroken) {
  EXPECT_EQ(call({"reach", ferry(), "beacon", "hold"}).code, 1);
  EXPECT_EQ(call({"reach", ferry(), "--all", "--exercise", "Hands on the wheel"}).code, 1);
  EXPECT_EQ(call({"reach", ferry(), "--all", "--exercise", "Names and logins"}).code, 0);
}

TEST_F(Cli, ReachOfAllPairsIsATable) {
  const Outcome all = call({"reach", ferry(), "--all", "--json"});
  const auto rows = nlohmann::json::parse(all.out).at("rows");
  EXPECT_EQ(rows.size(), 10U * 9U + 10U); // nine machines and the PC; from each also to the outside
  const Outcome csv = call({"reach", ferry(), "--all", "--csv", "--service", "udp"});
  EXPECT_EQ(csv.out.substr(0, 5), "From,");
}

// Of several addresses the best, or the one that is asked for.
TEST_F(Cli, ReachTakesACardOrAnAddress) {
  for (const char* to : {"tickets-db/Crew", "tickets-db/2", "tickets-db/c48", "172.22.50.42"}) {
    const Outcome o =
        call({"reach", ferry(), "manifest", to, "--exercise", "The ticket office opens", "--json"});
    const auto j = nlohmann::json::parse(o.out);
    EXPECT_EQ(j.at("address"), "172.22.50.42") << to;
    EXPECT_EQ(j.at("to").at("name"), "tickets-db") << to;
  }
  EXPECT_NE(call({"reach", ferry(), "manifest", "tickets-db/Cargo"}).err.find("has no card \"Cargo\""),
            std::string::npos);
  EXPECT_NE(call({"reach", ferry(), "manifest", "10.1.2.3"}).err.find("nobody in this lab has 10.1.2.3"),
            std::string::npos);
  EXPECT_EQ(call({"reach", ferry(), "tickets-db/Crew", "manifest"}).code, 2);
}

// For people a table is plain text; Markdown where it is asked for.
TEST_F(Cli, TablesForPeopleArePlainText) {
  const std::string plain = call({"what-if", ferry(), "--off", "gangway"}).out;
  EXPECT_EQ(plain.find('|'), std::string::npos) << plain;
  EXPECT_NE(plain.find("\nFails "), std::string::npos) << plain;
  EXPECT_EQ(plain.rfind("What fails without gangway\n\n", 0), 0U) << plain;
  const std::string marked = call({"what-if", ferry(), "--off", "gangway", "--markdown"}).out;
  EXPECT_NE(marked.find("| Fails | Who |"), std::string::npos) << marked;
  EXPECT_EQ(call({"reach", ferry(), "--all"}).out.find('|'), std::string::npos);
  EXPECT_NE(call({"reach", ferry(), "--all", "--markdown"}).out.find("| From |"), std::string::npos);
}

TEST_F(Cli, ReachRefusesWhatItDoesNotKnow) {
  for (const std::vector<std::string>& more : {std::vector<std::string>{},
                                               {"tickets-1"},
                                               {"tickets-1", "nobody"},
                                               {"tickets-1", "deck-a", "--service", "tcp/0"},
                                               {"tickets-1", "deck-a", "--service", "sctp"},
                                               {"tickets-1", "deck-a", "--csv"}}) {
    std::vector<std::string> args{"reach", ferry()};
    args.insert(args.end(), more.begin(), more.end());
    const Outcome o = call(args);
    EXPECT_EQ(o.code, 2);
    EXPECT_TRUE(o.out.empty());
    EXPECT_EQ(std::count(o.err.begin(), o.err.end(), '\n'), 1) << o.err;
  }
}

TEST_F(Cli, WhatIfListsWhatFails) {
  const Outcome o =
      call({"what-if", ferry(), "--off", "gangway", "--json", "--exercise", "The ticket office opens"});
  EXPECT_EQ(o.code, 1) << o.err; // Passengers reach the outside through it
  const auto rows = nlohmann::json::parse(o.out).at("rows");
  const auto has = [&](const char* fails, const char* who) {
    return std::any_of(rows.begin(), rows.end(),
                       [&](const auto& r) { return r.at("fails") == fails && r.at("who") == who; });
  };
  EXPECT_TRUE(has("is off", "gangway"));
  EXPECT_TRUE(has("promise", "Passengers"));
  EXPECT_TRUE(has("reach", "tickets-1"));
  EXPECT_EQ(call({"what-if", ferry(), "--off", "nobody"}).code, 2);
  EXPECT_EQ(call({"what-if", ferry()}).code, 2);
}

TEST_F(Cli, AllExercisesAsJsonAreAListOfOccasions) {
  const auto j = nlohmann::json::parse(call({"check", ferry(), "--all", "--json"}).out);
  ASSERT_TRUE(j.is_array());
  EXPECT_GT(j.size(), 3U);
  EXPECT_TRUE(j[0]["exercise"].is_null());
  EXPECT_EQ(j[1]["exercise"]["name"], "Names and logins");
}

TEST_F(Cli, ChangesSpeakOfNames) {
  const std::string a = ferry();
  std::string text = get(a);
  const std::string from = "\"name\": \"wheelhouse\"";
  text.replace(text.find(from), from.size(), "\"name\": \"bridge\"");
  const std::string b = put("after.snuglab", text);
  const Outcome o = call({"changes", a, b});
  EXPECT_EQ(o.code, kFine);
  EXPECT_EQ(o.out, "changed  bridge: name from wheelhouse to bridge\n");
  EXPECT_EQ(nlohmann::json::parse(call({"changes", a, b, "--json"}).out)["changes"].size(), 1U);
}

TEST_F(Cli, PcSaysUnknownRatherThanGuess) {
  const Outcome o = call({"pc"});
  EXPECT_EQ(o.code, kFine);
  for (const char* word : {"memory installed", "threads", "nested virtualization"})
    EXPECT_NE(o.out.find(word), std::string::npos) << o.out;
  EXPECT_TRUE(nlohmann::json::accept(call({"pc", "--json"}).out));
}

TEST_F(Cli, RulesListTheirSources) {
  const Outcome o = call({"rules"});
  EXPECT_EQ(o.code, kFine);
  EXPECT_NE(o.out.find("address-twice"), std::string::npos);
  EXPECT_NE(o.out.find("source: "), std::string::npos);
  EXPECT_EQ(call({"rules", "address-twice"}).out.rfind("address-twice\n", 0), 0U);
}

TEST_F(Cli, FormatIsAPageOrASchema) {
  EXPECT_NE(call({"format"}).out.find("memory"), std::string::npos);
  EXPECT_TRUE(nlohmann::json::accept(call({"format", "--schema"}).out));
}

} // namespace
} // namespace snug::cli
