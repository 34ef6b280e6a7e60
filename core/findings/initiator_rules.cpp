#include "core/base/quote.h"
#include "core/findings/tools.h"
#include "core/text/disk_text.h"

#include <algorithm>
#include <array>
#include <map>

namespace snug {

namespace {

constexpr std::string_view kNames = "RFC 7143 4.2.7 (iSCSI names)";

std::string lower_case(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), lower);
  return out;
}

bool has_initiator(const Context& c, std::uint32_t machine) {
  return (c.addresses.facts().machine_marks[machine] & MachineMark::initiator) != 0;
}

void check_missing(const Context& c, std::vector<Finding>& out) {
  std::vector<MachineId> told;
  for (const Share& s : c.lab.shares) {
    if (s.protocol != ShareProtocol::iscsi) continue;
    for (const MachineId id : s.clients) {
      const std::uint32_t m = c.index.place(id);
      if (m == kNowhere || has_initiator(c, m)) continue;
      if (std::find(told.begin(), told.end(), id) != told.end()) continue;
      told.push_back(id);
      out.push_back(found(Severity::caution,
                          say(text::initiator_missing, c.name(id), s.name.empty() ? c.name(s.id) : s.name),
                          say(text::initiator_missing_why, c.name(id)), {id}));
    }
  }
}

// Letter case does not tell names apart (RFC 3722).
void check_twice(const Context& c, std::vector<Finding>& out) {
  std::map<std::string, std::vector<std::uint32_t>> names;
  c.addresses.facts().each_machine(MachineMark::initiator, [&](std::uint32_t m) {
    names[lower_case(c.lab.machines[m].initiator_name)].push_back(m);
  });
  for (const auto& [initiator, machines] : names) {
    if (machines.size() < 2) continue;
    std::vector<AnyId> places;
    std::vector<std::string> who;
    for (const std::uint32_t m : machines) {
      places.push_back(c.lab.machines[m].id);
      who.push_back(c.name(places.back()));
    }
    out.push_back(found(Severity::error, say(text::initiator_twice, who, excerpt(initiator)),
                        say(text::initiator_twice_why), places));
  }
}

// The first keeps its name; the others get the first free number behind it.
std::optional<Fix> fix_twice(const Context& c, const Finding& f) {
  std::vector<std::string> taken;
  for (const Machine& m : c.lab.machines)
    if (!m.initiator_name.empty()) taken.push_back(lower_case(m.initiator_name));
  const std::string base = c.lab.machines[c.index.place(f.places[0])].initiator_name;
  if (!base.starts_with("iqn.") || base.size() > 200) return std::nullopt;
  return build_fix(c, say(text::fix_initiator), [&](EditBuilder& b) {
    int number = 2;
    for (std::size_t i = 1; i < f.places.size(); ++i) {
      std::string name;
      do {
        name = base + "-" + std::to_string(number++);
      } while (std::find(taken.begin(), taken.end(), lower_case(name)) != taken.end());
      taken.push_back(lower_case(name));
      b.set(f.places[i], "initiator_name", name);
    }
  });
}

bool all_hex(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char ch) { return hex_value(ch) >= 0; });
}

// iqn.yyyy-mm.domain[:word], eui. and 16 hexadecimal digits, naa. and 16 or 32 (RFC 7143 4.2.7.4 to 4.2.7.6).
bool is_well_formed(std::string_view name) {
  const std::string text = lower_case(name);
  const std::string_view t = text;
  if (t.starts_with("eui.")) return t.size() == 4 + 16 && all_hex(t.substr(4));
  if (t.starts_with("naa.")) return (t.size() == 4 + 16 || t.size() == 4 + 32) && all_hex(t.substr(4));
  if (!t.starts_with("iqn.") || t.size() < 13) return false;
  const std::string_view date = t.substr(4, 7);
  for (std::size_t i = 0; i < date.size(); ++i)
    if (i == 4 ? date[i] != '-' : !is_digit(date[i])) return false;
  const int month = (date[5] - '0') * 10 + (date[6] - '0');
  const std::string_view domain = t.substr(12, t.find(':') - 12);
  const auto allowed = [](char ch) {
    return is_letter(ch) || is_digit(ch) || ch == '-' || ch == '.' || ch == ':' ||
           static_cast<unsigned char>(ch) >= 0x80;
  };
  return t[11] == '.' && month >= 1 && month <= 12 && !domain.empty() && domain.front() != '.' &&
         std::all_of(t.begin(), t.end(), allowed);
}

void check_form(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::initiator, [&](std::uint32_t m) {
    const Machine& machine = c.lab.machines[m];
    if (is_well_formed(machine.initiator_name)) return;
    out.push_back(found(Severity::caution,
                        say(text::initiator_form, c.name(machine.id), excerpt(machine.initiator_name)),
                        say(text::initiator_form_why), {machine.id}));
  });
}

} // namespace

std::span<const Rule> initiator_rules() {
  static const std::array list{
      Rule{"initiator-twice", Topic::disk, Severity::error, "Machines have one initiator name", kNames,
           check_twice, fix_twice},
      Rule{"initiator-missing", Topic::disk, Severity::caution,
           "A client of an iSCSI share has no initiator name", kNames, check_missing},
      Rule{"initiator-form", Topic::disk, Severity::caution, "An initiator name is ill formed", kNames,
           check_form},
  };
  return list;
}

} // namespace snug
