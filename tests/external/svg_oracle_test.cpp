// Written SVG through libxml2 (xmllint): well-formed whatever the names are, and nothing but text comes of
// them.
#include "core/report/svg.h"

#include "core/base/clean.h"
#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "tests/support/hostile.h"
#include "tests/support/process.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::run_program;

std::string element_names(const std::string& svg) {
  std::string known;
  for (const char* name : {"svg", "g", "title", "desc", "style", "rect", "line", "circle", "polygon", "text"})
    known += (known.empty() ? "local-name()='" : " or local-name()='") + std::string(name) + "'";
  const std::string others = "//*[not(self::*[" + known + "])]";
  return run_program({"xmllint", "--nonet", "--xpath", others, "-"}, svg).out;
}

TEST(SvgOracle, SamplesAreWellFormed) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const auto ran =
        run_program({"xmllint", "--noout", "--nonet", "-"}, svg(draw(Analysis(test::sample(file.name)))));
    EXPECT_EQ(ran.code, 0) << file.name << ": " << ran.err;
  }
}

// RELIABILITY 21, 22, 26.
TEST(SvgOracle, HostileNamesStayText) {
  std::mt19937 random(21);
  for (int i = 0; i < test::scaled(100); ++i) {
    Lab lab = test::sample("skerry-ferries");
    for (Machine& m : lab.machines) m.name = test::hostile_label(random);
    for (Segment& s : lab.segments) s.name = test::hostile_label(random);
    for (Lan& l : lab.lans) l.name = l.router = test::hostile_label(random);
    for (Role& r : lab.roles) r.title = test::hostile_label(random);
    lab.pc.name = test::hostile_label(random);
    lab.facts.title = lab.facts.author = test::hostile_label(random);
    const std::string out = svg(draw(Analysis(lab)));
    const auto ran = run_program({"xmllint", "--noout", "--nonet", "-"}, out);
    ASSERT_EQ(ran.code, 0) << ran.err;
    EXPECT_EQ(element_names(out), "") << "only our own elements";
    const auto title = run_program({"xmllint", "--nonet", "--xpath", "string(/*/*[1])", "-"}, out);
    const std::string wanted = clean(lab.facts.title);
    if (!wanted.empty()) {
      EXPECT_EQ(title.out, wanted + "\n");
    }
    EXPECT_EQ(clean_lines(out), out) << "nothing is left to clean";
  }
}

} // namespace
} // namespace snug
