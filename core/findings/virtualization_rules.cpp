#include "core/findings/tools.h"
#include "core/text/processor_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";
constexpr AnyId kPc{Kind::pc, 0};

bool has_guests(const Context& c) { return !c.lab.machines.empty(); }
bool has_hypervisors(const Context& c) { return !c.index.hypervisors().empty(); }

// A fact of the PC that is no or unknown where it matters.
void about_pc(const Context& c, Severity severity, const Template& what, const Template& why,
              std::vector<Finding>& out) {
  out.push_back(found(severity, say(what, c.name(kPc)), say(why), {kPc}));
}

void check_off(const Context& c, std::vector<Finding>& out) {
  if (has_guests(c) && c.lab.pc.firmware_virtualization == Known::no)
    about_pc(c, Severity::error, text::virtualization_off, text::virtualization_off_why, out);
}
void check_unknown(const Context& c, std::vector<Finding>& out) {
  if (has_guests(c) && c.lab.pc.firmware_virtualization == Known::unknown)
    about_pc(c, Severity::note, text::virtualization_unknown, text::virtualization_unknown_why, out);
}
void check_occupied(const Context& c, std::vector<Finding>& out) {
  if (!has_guests(c) || c.lab.pc.virtualization_occupied != Known::yes) return;
  if (has_hypervisors(c))
    about_pc(c, Severity::error, text::virtualization_occupied, text::virtualization_occupied_nested_why,
             out);
  else
    about_pc(c, Severity::caution, text::virtualization_occupied, text::virtualization_occupied_why, out);
}
void check_occupied_unknown(const Context& c, std::vector<Finding>& out) {
  if (has_hypervisors(c) && c.lab.pc.virtualization_occupied == Known::unknown)
    about_pc(c, Severity::note, text::occupied_unknown, text::occupied_unknown_why, out);
}
void check_nested_off(const Context& c, std::vector<Finding>& out) {
  if (has_hypervisors(c) && c.lab.pc.nested_virtualization == Known::no)
    about_pc(c, Severity::error, text::nested_off, text::nested_off_why, out);
}
void check_nested_unknown(const Context& c, std::vector<Finding>& out) {
  if (has_hypervisors(c) && c.lab.pc.nested_virtualization == Known::unknown)
    about_pc(c, Severity::note, text::nested_unknown, text::nested_unknown_why, out);
}
void check_second_level_off(const Context& c, std::vector<Finding>& out) {
  if (has_hypervisors(c) && c.lab.pc.second_level_translation == Known::no)
    about_pc(c, Severity::error, text::second_level_off, text::second_level_off_why, out);
}
void check_second_level_unknown(const Context& c, std::vector<Finding>& out) {
  if (has_hypervisors(c) && c.lab.pc.second_level_translation == Known::unknown)
    about_pc(c, Severity::note, text::second_level_unknown, text::second_level_unknown_why, out);
}

std::int64_t count_64_bit(const Context& c) {
  const auto machines = c.index.machines();
  return std::count_if(machines.begin(), machines.end(), [](const MachineColumn& m) { return m.is_64_bit; });
}

void check_32_bit(const Context& c, std::vector<Finding>& out) {
  if (c.lab.pc.is_64_bit != Known::no) return;
  const std::int64_t guests = count_64_bit(c);
  if (guests > 0)
    out.push_back(found(Severity::error, say(text::pc_32_bit, c.name(kPc), Count{guests}),
                        say(text::pc_32_bit_why), {kPc}));
}
void check_bits_unknown(const Context& c, std::vector<Finding>& out) {
  if (c.lab.pc.is_64_bit == Known::unknown && count_64_bit(c) > 0)
    about_pc(c, Severity::note, text::pc_bits_unknown, text::pc_bits_unknown_why, out);
}

// An error where guests inside wait for it, else a caution.
void check_not_exposed(const Context& c, std::vector<Finding>& out) {
  for (const std::uint32_t h : c.index.hypervisors()) {
    const MachineColumn& m = c.index.machines()[h];
    if (m.exposes_virtualization) continue;
    const AnyId id = c.lab.machines[h].id;
    out.push_back(found(m.has_guests ? Severity::error : Severity::caution,
                        say(text::not_exposed, c.name(id)), say(text::not_exposed_why), {id}));
  }
}
std::optional<Fix> fix_not_exposed(const Context& c, const Finding& f) {
  return set_one(c, say(text::fix_expose, c.name(f.places[0])), f.places[0], "expose_virtualization", true);
}

void check_nesting(const Context& c, std::vector<Finding>& out) {
  const std::int32_t most = c.lab.rules.nesting_depth;
  for (const std::uint32_t h : c.index.hypervisors()) {
    const std::int32_t level = c.index.depth_of(h) + 1;
    if (level <= most) continue;
    const AnyId id = c.lab.machines[h].id;
    out.push_back(found(Severity::caution, say(text::nesting_deep, c.name(id), Count{level}),
                        say(text::nesting_deep_why, Count{most}), {id}));
  }
}

void check_carrier_role(const Context& c, std::vector<Finding>& out) {
  for (const std::uint32_t h : c.index.hypervisors()) {
    const MachineColumn& m = c.index.machines()[h];
    if (m.role == kNowhere || c.lab.roles[m.role].is_hypervisor) continue;
    const AnyId id = c.lab.machines[h].id;
    const auto guests = static_cast<std::int64_t>(c.index.guests_of(h).size());
    out.push_back(found(Severity::error,
                        say(text::carrier_role, Count{guests}, c.name(id), c.name(c.lab.roles[m.role].id)),
                        say(text::carrier_role_why), {id}));
  }
}

} // namespace

std::span<const Rule> virtualization_rules() {
  static const std::array list{
      Rule{"virtualization-off", Topic::processors, Severity::error,
           "The PC's hardware virtualization is off", kPractice, check_off},
      Rule{"virtualization-occupied", Topic::processors, Severity::error,
           "The PC's own system uses hardware virtualization itself", kPractice, check_occupied},
      Rule{"nested-off", Topic::processors, Severity::error, "The PC's nested virtualization is off",
           kPractice, check_nested_off},
      Rule{"second-level-off", Topic::processors, Severity::error,
           "The PC has no second-level address translation", kPractice, check_second_level_off},
      Rule{"pc-32-bit", Topic::processors, Severity::error, "64-bit guests on a PC that is none",
           "common practice, no published source", check_32_bit},
      Rule{"virtualization-not-exposed", Topic::processors, Severity::error,
           "Hardware virtualization is not passed on to a hypervisor", kPractice, check_not_exposed,
           fix_not_exposed},
      Rule{"carrier-role", Topic::processors, Severity::error,
           "A machine that is no hypervisor carries guests", "a guest runs inside a hypervisor",
           check_carrier_role},
      Rule{"nesting-deep", Topic::processors, Severity::caution, "Many hypervisors inside each other",
           kPractice, check_nesting},
      Rule{"virtualization-unknown", Topic::processors, Severity::note,
           "Not known: whether hardware virtualization is on", kPractice, check_unknown},
      Rule{"occupied-unknown", Topic::processors, Severity::note,
           "Not known: whether the PC's own system uses hardware virtualization", kPractice,
           check_occupied_unknown},
      Rule{"nested-unknown", Topic::processors, Severity::note,
           "Not known: whether the PC can run hypervisors as guests", kPractice, check_nested_unknown},
      Rule{"second-level-unknown", Topic::processors, Severity::note,
           "Not known: whether the PC has second-level address translation", kPractice,
           check_second_level_unknown},
      Rule{"pc-bits-unknown", Topic::processors, Severity::note, "Not known: whether the PC is 64-bit",
           kPractice, check_bits_unknown},
  };
  return list;
}

} // namespace snug
