#include "core/report/svg.h"

#include "core/report/escape.h"

#include <array>
#include <charconv>

namespace snug {

namespace {

// Readers of SVG Tiny take a list of fonts for one name and do not know @media; all others take the list.
constexpr std::string_view kFonts =
    "<style>@media screen,print{text{font-family:Inter,'Helvetica Neue',Arial,'DejaVu Sans',sans-serif}}"
    "</style>\n";

class SvgWriter {
 public:
  SvgWriter(const Drawing& drawing, const SvgOptions& options)
      : drawing_(drawing), palette_(palette(options.theme)) {
    out_.reserve(2048 + drawing.shapes.size() * 150 + drawing.groups.size() * 300);
  }

  std::string write() {
    head();
    auto group = drawing_.groups.begin();
    std::uint32_t open_until = 0;
    bool open = false;
    for (std::uint32_t i = 0; i <= drawing_.shapes.size(); ++i) {
      if (open && i == open_until) {
        out_ += "</g>\n";
        open = false;
      }
      for (; group != drawing_.groups.end() && group->first == i; ++group) {
        begin(*group);
        open_until = group->end;
        open = group->end > i;
        if (!open) out_ += "</g>\n";
      }
      if (i < drawing_.shapes.size()) std::visit([this](const auto& s) { shape(s); }, drawing_.shapes[i]);
    }
    out_ += "</svg>\n";
    return std::move(out_);
  }

 private:
  void head() {
    out_ += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"";
    number(" width", drawing_.width);
    number(" height", drawing_.height);
    out_ += " viewBox=\"0 0 ";
    integer(drawing_.width);
    out_ += ' ';
    integer(drawing_.height);
    out_ += "\" role=\"img\" aria-labelledby=\"diagram-title diagram-description\" font-family=\"Inter\" "
            "font-weight=\"400\">\n<title id=\"diagram-title\">";
    out_ += xml(drawing_.title);
    out_ += "</title>\n<desc id=\"diagram-description\">";
    out_ += xml(drawing_.description);
    out_ += "</desc>\n";
    out_ += kFonts;
  }
  void begin(const Group& g) {
    out_ += "<g";
    if (g.of) {
      out_ += " id=\"";
      out_ += to_text(g.of);
      out_ += '"';
    }
    out_ += ">\n";
    if (!g.title.empty()) element("title", g.title);
    if (!g.description.empty()) element("desc", g.description);
  }
  void element(std::string_view name, const std::string& text) {
    out_ += '<';
    out_ += name;
    out_ += '>';
    out_ += xml(text);
    out_ += "</";
    out_ += name;
    out_ += ">\n";
  }

  void shape(const BoxShape& s) {
    out_ += "<rect";
    number(" x", s.box.x);
    number(" y", s.box.y);
    number(" width", s.box.w);
    number(" height", s.box.h);
    if (s.radius > 0) number(" rx", s.radius);
    fill(s.fill);
    stroke(s.stroke, s.stroke_width, s.dash);
    out_ += "/>\n";
  }
  void shape(const LineShape& s) {
    line(s, s.width, s.dash == Dash::ticks ? Dash::solid : s.dash);
    if (s.dash == Dash::ticks) line(s, kTickWidth, s.dash);
  }
  void line(const LineShape& s, int width, Dash dash) {
    out_ += "<line";
    number(" x1", s.from.x);
    number(" y1", s.from.y);
    number(" x2", s.to.x);
    number(" y2", s.to.y);
    stroke(s.ink, width, dash);
    out_ += "/>\n";
  }
  void shape(const CircleShape& s) {
    out_ += "<circle";
    number(" cx", s.centre.x);
    number(" cy", s.centre.y);
    number(" r", s.radius);
    fill(s.fill);
    stroke(s.stroke, s.stroke_width, Dash::solid);
    out_ += "/>\n";
  }
  void shape(const PolygonShape& s) {
    out_ += "<polygon points=\"";
    for (std::size_t i = 0; i < s.points.size(); ++i) {
      if (i > 0) out_ += ' ';
      integer(s.points[i].x);
      out_ += ',';
      integer(s.points[i].y);
    }
    out_ += '"';
    fill(s.fill);
    stroke(s.stroke, s.stroke_width, Dash::solid);
    out_ += "/>\n";
  }
  void shape(const TextShape& s) {
    out_ += "<text";
    number(" x", s.anchor_x());
    number(" y", s.baseline);
    number(" font-size", s.size);
    fill(s.ink);
    if (s.weight == Weight::semibold) out_ += " font-weight=\"600\"";
    if (s.anchor == Anchor::middle) out_ += " text-anchor=\"middle\"";
    if (s.anchor == Anchor::end) out_ += " text-anchor=\"end\"";
    out_ += " textLength=\"";
    decimal(s.length, kPixel);
    out_ += "\">";
    out_ += xml(s.text);
    out_ += "</text>\n";
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
    constexpr std::string_view kDigits = "0123456789abcdef";
    const std::uint32_t rgb = palette_.of(ink);
    out_ += '#';
    for (unsigned shift = 24; shift > 0; shift -= 4) out_ += kDigits[(rgb >> (shift - 4)) & 0xfU];
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

  const Drawing& drawing_;
  const Palette& palette_;
  std::string out_;
};

} // namespace

std::string svg(const Drawing& drawing, const SvgOptions& options) {
  return SvgWriter(drawing, options).write();
}

} // namespace snug
