#pragma once
// What a drawing says, before anything has a place: every text, number and connection, taken from an
// analysis.

#include "core/analyse/analyse.h"
#include "core/layout/draw.h"
#include "core/layout/machine_text.h"

namespace snug::layout {

struct RailText {
  SegmentId id;
  std::string letter, name;
  std::vector<std::string> details;
  std::string title, description;
  SegmentKind type = SegmentKind::isolated;
  Ink ink = Ink::slate;
  Dash dash = Dash::solid;
  std::uint32_t lan = kNone; // place in Content::lans, when it leaves the frame
  bool socket = false;
  std::string socket_text;
  bool names_machines = false; // in its details
  Mark mark;
};

struct LanText {
  LanId id; // none: a network that the plan does not name
  std::string name;
  std::vector<std::string> lines;
  std::string title, description;
  Mark mark;
};

struct RulerText {
  std::int64_t size = 0; // MiB the PC can use
  std::int64_t reserved = 0;
  std::int64_t taken = 0;
  std::int64_t expected = 0; // of what is taken
  Verdict verdict = Verdict::fits;
  std::string name, state, reserved_name;
  std::string expected_name, expected_state; // empty: everything is expected to be used
};

struct Content {
  std::string pc_name, pc_facts, pc_state;
  Mark pc_mark;
  MachineTexts machines;          // carriers before what they carry
  std::vector<bool> is_made;      // of each machine: anew, not kept
  std::vector<std::uint32_t> top; // those directly on the PC, by band and order
  std::vector<RailText> rails;    // from the top
  std::vector<LanText> lans;
  RulerText ruler;
  std::string title, author, date, exercise;
  bool any_inner_plug = false, any_hollow = false, any_off = false, any_mark = false;
  bool power = false; // machines have power marks
};

Content content_of(const Analysis&, const DrawOptions&);
// The same from what was made before, without descriptions and for the same options. `as_it_was`: by place in
// lab.machines, the place in `before` of a machine that is in nothing else than it was; kNone: it may be.
// Neither segments nor what they refer to have changed.
struct Before {
  Content content;
  std::vector<std::uint32_t> as_it_was;
  bool rails_are_as_they_were = false;
  std::int64_t made = 0; // counts machines that are made anew
};
Content content_of(const Analysis&, const DrawOptions&, Before&);
// Only what the ruler says: the PC's memory and the machines directly on it.
Content ruler_content_of(const Analysis&, const DrawOptions&);

} // namespace snug::layout
