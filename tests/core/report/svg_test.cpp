#include "core/report/svg.h"

#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <regex>

namespace snug {
namespace {

std::size_t count(const std::string& text, std::string_view piece) {
  std::size_t n = 0;
  for (std::size_t at = text.find(piece); at != std::string::npos; at = text.find(piece, at + piece.size()))
    ++n;
  return n;
}

std::string sample_svg(std::string_view name) { return svg(draw(Analysis(test::sample(name)))); }

TEST(Svg, ShapesByTheLetter) {
  Drawing d;
  d.width = 30;
  d.height = 20;
  d.title = "a < b";
  BoxShape box;
  box.box = {1, 2, 3, 4};
  box.radius = 2;
  box.fill = Ink::card;
  box.stroke = Ink::edge;
  box.stroke_width = 12;
  LineShape line;
  line.from = {0, 1};
  line.to = {5, 1};
  line.ink = Ink::moss;
  line.width = 40;
  line.dash = Dash::dots;
  TextShape text;
  text.box = {4, 5, 10, 9};
  text.baseline = 12;
  text.size = 11;
  text.anchor = Anchor::end;
  text.length = 9 * kPixel + 32;
  text.text = "R&D";
  d.shapes = {box, line, text};
  d.groups = {{MachineId{12}, Part::machine, 0, 1, box.box, "beacon", ""}};
  const std::string out = svg(d);
  EXPECT_NE(out.find("<title id=\"diagram-title\">a &lt; b</title>"), std::string::npos);
  EXPECT_NE(
      out.find(
          "<g id=\"m12\">\n<title>beacon</title>\n<rect x=\"1\" y=\"2\" width=\"3\" height=\"4\" rx=\"2\" "
          "fill=\"#fffdf9\" stroke=\"#b3ab98\" stroke-width=\"1.2\"/>\n</g>\n"),
      std::string::npos);
  EXPECT_NE(out.find("<line x1=\"0\" y1=\"1\" x2=\"5\" y2=\"1\" stroke=\"#24840d\" stroke-width=\"4\" "
                     "stroke-dasharray=\"3 3\"/>"),
            std::string::npos);
  EXPECT_NE(out.find("<text x=\"14\" y=\"12\" font-size=\"11\" fill=\"#1b2430\" text-anchor=\"end\" "
                     "textLength=\"9.5\">R&amp;D</text>"),
            std::string::npos);
}

TEST(Svg, EveryMachineAndSegmentHasIdAndTitle) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Lab lab = test::sample(file.name);
    const std::string out = sample_svg(file.name);
    for (const Machine& m : lab.machines)
      EXPECT_EQ(count(out, "<g id=\"" + to_text(m.id) + "\">\n<title>"), 1U) << file.name << " " << m.name;
    for (const Segment& s : lab.segments)
      EXPECT_EQ(count(out, "<g id=\"" + to_text(s.id) + "\">\n<title>"), 1U) << file.name << " " << s.name;
  }
}

TEST(Svg, IsSelfContained) {
  const std::string out = sample_svg("sixty");
  for (const std::string_view piece :
       {"<script", "href", "url(", "<image", "<use", "@import", "<foreignObject"})
    EXPECT_EQ(count(out, piece), 0U) << piece;
  EXPECT_FALSE(std::regex_search(out, std::regex(" on[a-z]+=")));
  EXPECT_EQ(count(out, "http"), 1U) << "the namespace and nothing else";
}

TEST(Svg, EveryTextSaysItsLength) {
  const std::string out = sample_svg("mistakes");
  EXPECT_GT(count(out, "<text "), 50U);
  EXPECT_EQ(count(out, "<text "), count(out, " textLength=\""));
}

TEST(Svg, SameBytesEachTime) { EXPECT_EQ(sample_svg("skerry-ferries"), sample_svg("skerry-ferries")); }

TEST(Svg, ThemesDifferInColoursOnly) {
  const Lab lab = test::sample("skerry-ferries");
  const Drawing d = draw(Analysis(lab));
  const std::string light = svg(d);
  const std::string dark = svg(d, {Theme::dark});
  ASSERT_EQ(light.size(), dark.size());
  EXPECT_NE(light, dark);
}

TEST(Svg, GroupsCloseInOrder) {
  const std::string out = sample_svg("sixty");
  EXPECT_EQ(count(out, "<g"), count(out, "</g>"));
}

} // namespace
} // namespace snug
