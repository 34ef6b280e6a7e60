#include "core/layout/content.h"

#include "core/base/clean.h"
#include "core/base/size.h"
#include "core/budget/defaults.h"
#include "core/budget/memory.h"
#include "core/budget/memory_words.h"
#include "core/layout/content_steps.h"
#include "core/text/base_text.h"
#include "core/text/layout_text.h"

#include <algorithm>
#include <cassert>

namespace snug::layout {

namespace {

std::string joined(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : " · ") + part;
  return out;
}

// Exact where it is short, else as people say it.
std::string memory_words(const DrawOptions& o, std::int64_t mib) {
  return mib % (kMibPerGib / 2) == 0 || mib < kMibPerGib ? o.size(mib) : o.words(say(text::plain, Mib{mib}));
}

void read_pc(const Source& source, Content& content) {
  const Pc& pc = source.lab.pc;
  content.pc_name = clean(pc.name.empty() ? source.options.words(say(text::layout_no_name)) : pc.name);
  std::vector<std::string> facts;
  const std::int64_t size = usable(pc);
  facts.push_back(size == pc.installed
                      ? memory_words(source.options, pc.installed)
                      : source.options.words(say(text::layout_usable, memory_words(source.options, size),
                                                 memory_words(source.options, pc.installed))));
  facts.push_back(source.options.words(say(text::layout_cores, Count{pc.cores})));
  facts.push_back(source.options.words(say(text::layout_threads, Count{pc.threads})));
  if (pc.nested_virtualization == Known::yes)
    facts.push_back(source.options.words(say(text::layout_nested_on)));
  if (pc.nested_virtualization == Known::no)
    facts.push_back(source.options.words(say(text::layout_nested_off)));
  content.pc_facts = joined(facts);
}

void read_title(const Source& source, Content& content) {
  const LabFacts& facts = source.lab.facts;
  content.title = clean(facts.title);
  if (content.title.empty()) content.title = source.options.words(say(text::title_untitled));
  content.author = clean(facts.author);
  if (facts.date) content.date = to_text(*facts.date);
  if (const Exercise* e = find<Exercise>(source.lab, source.options.exercise))
    content.exercise = clean(name_of(source.lab, e->id));
}

// What name_of says, without a search.
std::string name_at(const Machine& m) { return m.name.empty() ? "machine " + to_text(m.id) : m.name; }

// The order of a carrier's guests on the drawing.
std::vector<std::uint32_t> in_order(const Lab& lab, std::span<const std::uint32_t> places) {
  std::vector<std::uint32_t> order(places.begin(), places.end());
  std::stable_sort(order.begin(), order.end(), [&lab](std::uint32_t a, std::uint32_t b) {
    const Machine& x = lab.machines[a];
    const Machine& y = lab.machines[b];
    return std::tuple(x.band, x.order, a) < std::tuple(y.band, y.order, b);
  });
  return order;
}

void say_machine(const Source& source, std::uint32_t place, MachineText& t) {
  const Machine& m = source.lab.machines[place];
  const Index& index = source.analysis.index();
  t.id = m.id;
  t.name = clean(m.name);
  if (source.options.describe) t.title = clean(name_at(m));
  if (t.name.empty()) t.name = source.options.words(say(text::layout_no_name));
  t.hypervisor = index.is_hypervisor(place);
  if (source.ruler_only) return;
  const Role* role = index.role(m.role);
  t.role = role != nullptr ? clean(source.options.word(role->title))
                           : source.options.words(say(text::layout_no_role));
  t.memory = source.options.size(m.memory);
  t.processors = source.options.words(say(text::layout_processors, Count{m.processors}));
  t.band = m.band;
  t.held = m.pinned;
  t.bar = {m.expected_percent, 100, Verdict::fits};
  if (!source.options.describe) return;
  const std::uint32_t under = index.place(m.carrier);
  const std::string carrier =
      under != kNowhere ? name_at(source.lab.machines[under]) : name_of(source.lab, AnyId{Kind::pc, 0});
  t.description =
      source.options.words(say(text::layout_machine, t.role, clean(carrier), t.memory)) + ", " + t.processors;
  if (t.held) t.description += ", " + source.options.words(say(text::layout_held));
}

// What was made before, where the machine is as it was and its carrier too. A first or last guest may make it
// a hypervisor or a plain machine.
std::unique_ptr<MachineText> kept(const Source& source, std::uint32_t place) {
  if (!source.before || source.before->as_it_was[place] == kNone) return nullptr;
  MachineTexts& before = source.before->content.machines;
  const std::uint32_t was = source.before->as_it_was[place];
  if (before[was].hypervisor != source.analysis.index().is_hypervisor(place)) return nullptr;
  std::unique_ptr<MachineText> t = before.take(was);
  t->guests.clear();
  t->description.clear();
  t->mark = {};
  t->takes = 0;
  return t;
}

std::vector<std::uint8_t> running(const Source& source) {
  const Lab& lab = source.lab;
  const Exercise* exercise = find<Exercise>(lab, source.options.exercise);
  std::vector<std::uint8_t> on(lab.machines.size(), exercise == nullptr ? 1 : 0);
  if (exercise == nullptr) return on;
  for (const MachineId id : exercise->on) {
    const std::uint32_t place = source.analysis.index().place(id);
    if (place != kNowhere) on[place] = 1;
  }
  return on;
}

} // namespace

void read_machines(const Source& source, Content& content, bool inner) {
  const Index& index = source.analysis.index();
  const std::vector<std::uint8_t> on = running(source);
  struct Next {
    std::uint32_t place, carrier; // in the lab, in the content
    bool made;                    // its carrier was
  };
  std::vector<Next> stack;
  const auto push = [&](std::uint32_t lab_place, std::uint32_t carrier, bool made) {
    auto guests = in_order(source.lab, index.guests_of(lab_place));
    std::reverse(guests.begin(), guests.end());
    for (const std::uint32_t g : guests) stack.push_back({g, carrier, made});
  };
  content.machines.reserve(source.lab.machines.size());
  push(kNowhere, kNone, false);
  while (!stack.empty()) {
    const Next next = stack.back();
    stack.pop_back();
    const auto place = static_cast<std::uint32_t>(content.machines.size());
    std::unique_ptr<MachineText> before = next.made ? nullptr : kept(source, next.place);
    const bool made = !before;
    MachineText& t = content.machines.add(made ? std::make_unique<MachineText>() : std::move(before));
    if (made) say_machine(source, next.place, t);
    t.carrier = next.carrier;
    t.on = on[next.place] != 0;
    if (t.on) t.takes = takes(index, next.place);
    if (!t.on) {
      content.any_off = true;
      if (source.options.describe) t.description += ", " + source.options.words(say(text::layout_off));
    }
    content.is_made.push_back(made);
    (next.carrier == kNone ? content.top : content.machines[next.carrier].guests).push_back(place);
    if (inner) push(next.place, place, made);
  }
}

std::vector<std::uint32_t> drawn_places(const Source& source, const Content& content) {
  std::vector<std::uint32_t> out(source.lab.machines.size(), kNone);
  for (std::uint32_t i = 0; i < content.machines.size(); ++i)
    out[source.analysis.index().place(content.machines[i].id)] = i;
  return out;
}

namespace {

Bar bar_of(const MemoryBudget& b) { return {b.taken, std::max<std::int64_t>(b.budget, 1), b.verdict()}; }

// The words follow from the numbers: equal ones are not said again.
void say_room(const DrawOptions& o, MachineText& m, const MemoryBudget& b, std::int64_t room) {
  const Bar bar = bar_of(b);
  if (m.room == room && m.bar == bar && b.budget >= 1 && !m.room_text.empty()) return;
  m.bar = bar;
  m.room = room;
  m.bar_text = o.words(say(text::layout_guests_take, Mib{b.taken}, Mib{room_in(b)}));
  m.room_over = b.verdict() == Verdict::over;
  m.room_text = o.words(m.room_over ? say(text::layout_over_by, Mib{-b.headroom()})
                        : room > 0  ? say(text::layout_room_for, Mib{room})
                                    : say(text::layout_no_room));
  m.text_width = -1;
}

void say_expected(const DrawOptions& o, RulerText& ruler, const MemoryBudget& b) {
  ruler.expected = b.expected;
  if (b.expected == b.taken) return;
  const bool swaps = b.headroom() < 0 && b.expected_headroom() >= 0;
  ruler.expected_name = o.words(say(text::layout_expected, Mib{b.expected}));
  ruler.expected_state = o.words(
      say(swaps ? text::layout_expected_swaps : text::layout_expected_is, Mib{b.expected}, Mib{room_in(b)}));
}

} // namespace

void read_memory(const Source& source, Content& content) {
  const Index& index = source.analysis.index();
  const std::vector<std::uint32_t> drawn = drawn_places(source, content);
  RulerText& ruler = content.ruler;
  ruler.size = usable(source.lab.pc);
  ruler.reserved = reserved(source.lab.pc);
  ruler.name = source.options.words(say(text::layout_ruler));
  ruler.reserved_name = source.options.words(say(text::layout_reserved, Mib{ruler.reserved}));
  for (const MemoryBudget& b : source.analysis.budgets(source.options.exercise).memory) {
    if (b.of.kind == Kind::pc) {
      ruler.taken = b.taken;
      ruler.verdict = b.verdict();
      ruler.state = source.options.words(running_words(b));
      say_expected(source.options, ruler, b);
      continue;
    }
    const std::uint32_t at = drawn[index.place(b.of)];
    if (at == kNone) continue;
    MachineText& m = content.machines[at];
    if (source.ruler_only) {
      m.bar = bar_of(b);
      continue;
    }
    say_room(source.options, m, b, room_for_guest(index, b));
    if (source.options.describe) m.description += ", " + m.bar_text + ", " + m.room_text;
  }
}

namespace {

Content read_all(const Source& source) {
  Content content;
  read_title(source, content);
  read_pc(source, content);
  read_lans(source, content);
  read_rails(source, content);
  read_machines(source, content);
  read_plugs(source, content);
  read_memory(source, content);
  measure(content);
  if (source.options.show_findings) read_marks(source, content);
  content.power = content.any_off || !content.exercise.empty() ||
                  (source.options.offer_power && !source.lab.exercises.empty());
  return content;
}

} // namespace

Content content_of(const Analysis& analysis, const DrawOptions& options) {
  return read_all({analysis, analysis.lab(), options});
}

Content content_of(const Analysis& analysis, const DrawOptions& options, Before& before) {
  assert(!options.describe);
  Content content = read_all({analysis, analysis.lab(), options, &before});
  before.made += std::count(content.is_made.begin(), content.is_made.end(), true);
  return content;
}

Content ruler_content_of(const Analysis& analysis, const DrawOptions& wanted) {
  DrawOptions options = wanted;
  options.describe = false;
  const Source source{analysis, analysis.lab(), options, nullptr, true};
  Content content;
  read_machines(source, content, false);
  read_memory(source, content);
  return content;
}

} // namespace snug::layout
