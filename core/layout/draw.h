#pragma once
// From an analysed lab to its picture.

#include "core/analyse/analyse.h"
#include "core/base/size.h"
#include "core/base/tongue.h"
#include "core/layout/drawing.h"

#include <memory>
#include <span>

namespace snug {

struct DrawOptions {
  ExerciseId exercise;            // none: everything on
  bool full_addresses = true;     // beside every pin; else the last part only (".12")
  bool inner_addresses = true;    // under the squares of inner guests
  bool show_ruler = true;         // the PC's memory to scale
  bool show_state = true;         // without ruler: what runs and what is left, in the frame's head
  bool show_findings = true;      // badges; accepted findings have none
  bool show_legend = true;        // legend and title block
  bool show_held = false;         // a mark on machines that are kept in place
  bool show_bands = false;        // names of bands, where there are several
  bool offer_power = false;       // power marks where everything is on as well, if there are exercises
  bool invite = false;            // where nothing runs: how a part comes there
  bool describe = true;           // titles and descriptions of machines
  const Tongue* tongue = nullptr; // of its words and numbers; null: English, as in files
  Box only;                       // machines and wires that do not meet it are left out; empty: none is
  std::string words(const Message& m) const { return tongue ? tongue->say(m) : english(m); }
  // One of the texts that come with the program, as the title of a role; any other is left as it is.
  std::string word(std::string_view w) const { return tongue ? tongue->say(Term{w}) : std::string(w); }
  std::string size(std::int64_t mib) const { return tongue ? tongue->size(mib) : mib_text(mib); }
};

// Placement (DECISIONS 10, 22): machines stand in bands in their order; a wide band is broken into rows; each
// row has its own stretch of the segments it uses. Cards before a changed one in its band, and the guests of
// all other hypervisors, keep their place.
Drawing draw(const Analysis&, const DrawOptions& = {});

// Draws labs one after the other that differ in little: what is said of machines that are as they were is
// kept.
class Redrawing {
 public:
  Redrawing();
  ~Redrawing();
  // Equal to draw(analysis, options). `touched`: at least every element in which this lab differs from the
  // one drawn last. Anything else than machines, cards and disks, other options or descriptions: all is made
  // anew.
  Drawing draw(const Analysis&, const DrawOptions&, std::span<const AnyId> touched);
  void forget(); // the next lab has nothing to do with the one drawn last
  // How many machines' content was made anew, in all drawings.
  std::int64_t made() const { return made_; }

 private:
  struct Kept;
  void keep_what_is_untouched(const Index&, std::span<const AnyId> touched);
  std::unique_ptr<Kept> kept_;
  std::int64_t made_ = 0;
};

// The PC's memory to scale alone, as wide as asked (at least 200): what stands over the canvas. The block of
// a machine is the first box of Part::ruler that is of it.
// `beside`: over it what another exercise takes (none: everything on); the scale stays.
Drawing draw_ruler(const Analysis&, ExerciseId exercise, int width,
                   std::optional<ExerciseId> beside = std::nullopt, const Tongue* tongue = nullptr);
// How many MiB of memory a pixel of that bar is; at least 1.
std::int64_t mib_per_pixel(const Analysis&, ExerciseId exercise, int width);

} // namespace snug
