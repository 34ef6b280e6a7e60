#pragma once
// What a drawing says, before anything has a place: every text, number and connection, taken from an
// analysis.

#include "core/analyse/analyse.h"
#include "core/layout/draw.h"

#include <iterator>
#include <memory>

namespace snug::layout {

inline constexpr std::uint32_t kNone = 0xffff'ffff;

// The worst finding at an element.
struct Mark {
  bool any = false;
  Severity severity = Severity::note;
  int count = 0;
  std::string words; // the sentences, for a tooltip
};

// A connection of a card to a segment. Cards with a trunk, or that carry, have several.
struct Plug {
  CardId card;
  std::uint32_t rail = kNone; // none: not plugged
  bool hollow = false;        // only carries
  bool connected = true;
  bool joined = true; // an inner guest's: every carrier above carries the segment
  std::vector<std::string> lines;
  int lines_width = 0;                // pixels of the widest, with the marks of duties
  bool gateway = false, dhcp = false; // its duties on the segment; an inner guest's stand in the lines
};

struct Bar {
  std::int64_t part = 0;
  std::int64_t whole = 0; // 0: no bar
  Verdict verdict = Verdict::fits;
  friend bool operator==(const Bar&, const Bar&) = default;
};

struct MachineText {
  MachineId id;
  std::string name, role, memory, processors;
  std::string title, description;
  bool hypervisor = false;
  bool on = true;
  bool held = false; // a person keeps it in its place
  int band = 0;
  std::uint32_t carrier = kNone;     // place in Content::machines
  std::vector<std::uint32_t> guests; // in drawing order
  std::vector<Plug> plugs;           // ordered as the pins stand, left to right
  Bar bar;                           // memory expected to be used, or a hypervisor's inner budget
  std::string bar_text, room_text;   // hypervisors only
  bool room_over = false;
  std::int64_t room = -1;             // MiB that another guest could have
  std::int64_t takes = 0;             // MiB; 0 when off
  std::vector<std::uint32_t> carried; // rails that its guests reach
  int text_width = -1;                // pixels of the widest line on its card; below 0: not measured yet
  Mark mark;
};

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

// Each by itself: what is kept from one drawing to the next does not move.
class MachineTexts {
  using List = std::vector<std::unique_ptr<MachineText>>;
  template <typename At, typename Text>
  class Step {
   public:
    using iterator_category = std::forward_iterator_tag;
    using value_type = Text;
    using difference_type = std::ptrdiff_t;
    using reference = Text&;
    using pointer = Text*;
    Step() = default;
    explicit Step(At at) : at_(at) {}
    Text& operator*() const { return **at_; }
    Text* operator->() const { return at_->get(); }
    Step& operator++() { return ++at_, *this; }
    Step operator++(int) { return Step(at_++); }
    friend bool operator==(const Step&, const Step&) = default;

   private:
    At at_{};
  };

 public:
  std::size_t size() const { return list_.size(); }
  bool empty() const { return list_.empty(); }
  void reserve(std::size_t n) { list_.reserve(n); }
  MachineText& operator[](std::size_t i) { return *list_[i]; }
  const MachineText& operator[](std::size_t i) const { return *list_[i]; }
  auto begin() { return Step<List::iterator, MachineText>(list_.begin()); }
  auto end() { return Step<List::iterator, MachineText>(list_.end()); }
  auto begin() const { return Step<List::const_iterator, const MachineText>(list_.begin()); }
  auto end() const { return Step<List::const_iterator, const MachineText>(list_.end()); }
  MachineText& add(std::unique_ptr<MachineText> m) { return *list_.emplace_back(std::move(m)); }
  std::unique_ptr<MachineText> take(std::size_t i) { return std::move(list_[i]); } // nothing is left there

 private:
  List list_;
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
Content ruler_content_of(const Analysis&, ExerciseId exercise);

} // namespace snug::layout
