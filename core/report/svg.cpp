#include "core/report/svg.h"

#include "core/report/escape.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace snug {

namespace {

// Readers of SVG Tiny take a list of fonts for one name and do not know @media; all others take the list.
constexpr std::string_view kFonts =
    "<style>@media screen,print{text{font-family:Inter,'Helvetica Neue',Arial,'DejaVu Sans',sans-serif}}"
    "</style>\n";

using Colour = std::array<char, 7>; // #rrggbb

Colour hex(std::uint32_t rgb) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  Colour out{'#'};
  for (std::size_t i = 6; i > 0; --i, rgb >>= 4U) out[i] = kDigits[rgb & 0xfU];
  return out;
}

// Text that xml() leaves as it is, which nearly all is.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) {
    return c >= ' ' && c <= '~' && c != '&' && c != '<' && c != '>' && c != '"' && c != '\'';
  });
}

// The bytes of the file so far, and the attributes that shapes have in common.
class SvgBytes {
 public:
  SvgBytes(const Palette& palette, std::size_t expected) {
    out_.reserve(expected);
    for (std::size_t i = 0; i < colours_.size(); ++i) colours_[i] = hex(palette.rgb[i]);
  }
  void add(std::string_view text) { out_ += text; }
  std::string take() { return std::move(out_); }
  void escaped(const std::string& text) {
    if (is_plain(text)) {
      out_ += text;
    } else {
      out_ += xml(text);
    }
  }
  void element(std::string_view name, const std::string& text) {
    out_ += '<';
    out_ += name;
    out_ += '>';
    escaped(text);
    out_ += "</";
    out_ += name;
    out_ += ">\n";
  }
  void fill(Ink ink) {
    out_ += " fill=\"";
    colour(ink);
    out_ += '"';
  }
  void stroke(Ink ink, int width, Dash dash) {
    if (ink == Ink::none || width == 0) return;
    out_ += " stroke=\"";
    colour(ink);
    out_ += '"';
    if (width != 10) {
      out_ += " stroke-width=\"";
      decimal(width, 10);
      out_ += '"';
    }
    const DashPattern pattern = dash_pattern(dash);
    if (pattern.count == 0) return;
    out_ += " stroke-dasharray=\"";
    for (int i = 0; i < pattern.count; ++i) {
      if (i > 0) out_ += ' ';
      decimal(pattern.lengths[static_cast<std::size_t>(i)], 10);
    }
    out_ += '"';
  }
  void colour(Ink ink) {
    if (ink == Ink::none) {
      out_ += "none";
      return;
    }
    const Colour& c = colours_[static_cast<std::size_t>(ink)];
    out_.append(c.data(), c.size());
  }
  void number(std::string_view name, int n) {
    out_ += name;
    out_ += "=\"";
    integer(n);
    out_ += '"';
  }
  void integer(int n) {
    std::array<char, 16> digits{};
    out_.append(digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), n).ptr);
  }
  // n / unit with up to two decimals, rounded down; n ≥ 0.
  void decimal(int n, int unit) {
    integer(n / unit);
    const int hundredths = n % unit * 100 / unit;
    if (hundredths == 0) return;
    out_ += '.';
    out_ += static_cast<char>('0' + hundredths / 10);
    if (hundredths % 10 != 0) out_ += static_cast<char>('0' + hundredths % 10);
  }

 private:
  std::string out_;
  std::array<Colour, kInkCount> colours_{};
};

struct ShapeWriter {
  SvgBytes& bytes;
  void operator()(const BoxShape& s) {
    bytes.add("<rect");
    bytes.number(" x", s.box.x);
    bytes.number(" y", s.box.y);
    bytes.number(" width", s.box.w);
    bytes.number(" height", s.box.h);
    if (s.radius > 0) bytes.number(" rx", s.radius);
    bytes.fill(s.fill);
    bytes.stroke(s.stroke, s.stroke_width, s.dash);
    bytes.add("/>\n");
  }
  void operator()(const LineShape& s) {
    line(s, s.width, s.dash == Dash::ticks ? Dash::solid : s.dash);
    if (s.dash == Dash::ticks) line(s, kTickWidth, s.dash);
  }
  void operator()(const CircleShape& s) {
    bytes.add("<circle");
    bytes.number(" cx", s.centre.x);
    bytes.number(" cy", s.centre.y);
    bytes.number(" r", s.radius);
    bytes.fill(s.fill);
    bytes.stroke(s.stroke, s.stroke_width, Dash::solid);
    bytes.add("/>\n");
  }
  void operator()(const PolygonShape& s) {
    bytes.add("<polygon points=\"");
    for (std::size_t i = 0; i < s.points.size(); ++i) {
      if (i > 0) bytes.add(" ");
      bytes.integer(s.points[i].x);
      bytes.add(",");
      bytes.integer(s.points[i].y);
    }
    bytes.add("\"");
    bytes.fill(s.fill);
    bytes.stroke(s.stroke, s.stroke_width, Dash::solid);
    bytes.add("/>\n");
  }
  void operator()(const TextShape& s) {
    bytes.add("<text");
    bytes.number(" x", s.anchor_x());
    bytes.number(" y", s.baseline);
    bytes.number(" font-size", s.size);
    bytes.fill(s.ink);
    if (s.weight == Weight::semibold) bytes.add(" font-weight=\"600\"");
    if (s.anchor == Anchor::middle) bytes.add(" text-anchor=\"middle\"");
    if (s.anchor == Anchor::end) bytes.add(" text-anchor=\"end\"");
    bytes.add(" textLength=\"");
    bytes.decimal(s.length, kPixel);
    bytes.add("\">");
    bytes.escaped(s.text);
    bytes.add("</text>\n");
  }
  void line(const LineShape& s, int width, Dash dash) {
    bytes.add("<line");
    bytes.number(" x1", s.from.x);
    bytes.number(" y1", s.from.y);
    bytes.number(" x2", s.to.x);
    bytes.number(" y2", s.to.y);
    bytes.stroke(s.ink, width, dash);
    bytes.add("/>\n");
  }
};

void write_head(SvgBytes& bytes, const Drawing& drawing) {
  bytes.add("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"");
  bytes.number(" width", drawing.width);
  bytes.number(" height", drawing.height);
  bytes.add(" viewBox=\"0 0 ");
  bytes.integer(drawing.width);
  bytes.add(" ");
  bytes.integer(drawing.height);
  bytes.add("\" role=\"img\" aria-labelledby=\"diagram-title diagram-description\" font-family=\"Inter\" "
            "font-weight=\"400\">\n<title id=\"diagram-title\">");
  bytes.escaped(drawing.title);
  bytes.add("</title>\n<desc id=\"diagram-description\">");
  bytes.escaped(drawing.description);
  bytes.add("</desc>\n");
  bytes.add(kFonts);
}

void begin_group(SvgBytes& bytes, const Group& g) {
  bytes.add("<g");
  if (g.of) {
    bytes.add(" id=\"");
    bytes.add(to_text(g.of));
    bytes.add("\"");
  }
  bytes.add(">\n");
  if (!g.title.empty()) bytes.element("title", g.title);
  if (!g.description.empty()) bytes.element("desc", g.description);
}

void write_shapes(SvgBytes& bytes, const Drawing& drawing) {
  ShapeWriter writer{bytes};
  auto group = drawing.groups.begin();
  std::uint32_t open_until = 0;
  bool open = false;
  for (std::uint32_t i = 0; i <= drawing.shapes.size(); ++i) {
    if (open && i == open_until) {
      bytes.add("</g>\n");
      open = false;
    }
    for (; group != drawing.groups.end() && group->first == i; ++group) {
      begin_group(bytes, *group);
      open_until = group->end;
      open = group->end > i;
      if (!open) bytes.add("</g>\n");
    }
    if (i < drawing.shapes.size()) std::visit(writer, drawing.shapes[i]);
  }
}

} // namespace

std::string svg(const Drawing& drawing, const SvgOptions& options) {
  SvgBytes bytes(palette(options.theme), 2048 + drawing.shapes.size() * 125 + drawing.groups.size() * 300);
  write_head(bytes, drawing);
  write_shapes(bytes, drawing);
  bytes.add("</svg>\n");
  return bytes.take();
}

} // namespace snug
