#include "core/findings/tools.h"
#include "core/text/processor_text.h"

#include <array>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";
constexpr AnyId kPc{Kind::pc, 0};

std::int32_t processors_of_carrier(const Context& c, std::uint32_t machine) {
  const std::uint32_t carrier = c.index.carrier_of(machine);
  return carrier == kNowhere ? c.lab.pc.threads : c.index.machines()[carrier].processors;
}

void check_carrier(const Context& c, std::vector<Finding>& out) {
  const auto machines = c.index.machines();
  const std::int32_t threads = c.lab.pc.threads;
  for (std::uint32_t m = 0; m < machines.size(); ++m) {
    const std::uint32_t carried_by = machines[m].carrier;
    const std::int32_t most = carried_by == kNowhere ? threads : machines[carried_by].processors;
    if (machines[m].processors <= most) continue;
    const bool inner = carried_by != kNowhere;
    const AnyId id = c.lab.machines[m].id;
    const AnyId carrier = inner ? AnyId(c.lab.machines[carried_by].id) : kPc;
    out.push_back(found(Severity::error,
                        say(inner ? text::processors_carrier : text::processors_carrier_pc,
                            Count{machines[m].processors}, c.name(id), c.name(carrier), Count{most}),
                        say(text::processors_carrier_why), {id, carrier}));
  }
}

// A hypervisor is not set below the two that it needs.
std::optional<Fix> fix_carrier(const Context& c, const Finding& f) {
  const std::uint32_t m = c.index.place(f.places[0]);
  const std::int32_t most = processors_of_carrier(c, m);
  if (c.index.is_hypervisor(m) && most < 2) return std::nullopt;
  return set_one(c, say(text::fix_processors, Count{most}, c.name(f.places[0])), f.places[0], "processors",
                 std::int64_t{most});
}

void check_ratio(const Context& c, std::vector<Finding>& out) {
  for (std::size_t s = 0; s < c.budgets[0].processors.size(); ++s) {
    const Trouble t = trouble(c, [s](const ExerciseBudgets& b) {
      const ProcessorBudget& p = b.processors[s];
      return p.verdict() == Verdict::over ? p.ratio - p.limit : 0;
    });
    if (!t) continue;
    const ProcessorBudget& b = c.budgets[t.worst].processors[s];
    const std::string name = c.name(b.of);
    if (s == 0)
      out.push_back(
          found(Severity::caution,
                say_when(c, t.worst, text::processors_ratio, text::processors_ratio_all, name,
                         Count{b.running}, Hundredths{b.power}, Hundredths{b.ratio}, Hundredths{b.limit}),
                say(text::processors_ratio_why), {b.of}));
    else
      out.push_back(found(Severity::caution,
                          say_when(c, t.worst, text::processors_ratio_inner, text::processors_ratio_inner_all,
                                   name, Count{b.running}, Count{b.power / 100}, Hundredths{b.ratio},
                                   Hundredths{b.limit}, Hundredths{b.product}),
                          say(text::processors_ratio_inner_why, name), {b.of}));
    out.back().when = t.when;
  }
}

void check_one_processor(const Context& c, std::vector<Finding>& out) {
  for (const std::uint32_t h : c.index.hypervisors()) {
    if (c.index.machines()[h].processors > 1) continue;
    const AnyId id = c.lab.machines[h].id;
    out.push_back(found(Severity::error, say(text::hypervisor_one_processor, c.name(id)),
                        say(text::hypervisor_one_processor_why), {id}));
  }
}

std::optional<Fix> fix_one_processor(const Context& c, const Finding& f) {
  if (processors_of_carrier(c, c.index.place(f.places[0])) < 2) return std::nullopt;
  return set_one(c, say(text::fix_processors, Count{2}, c.name(f.places[0])), f.places[0], "processors",
                 std::int64_t{2});
}

void check_efficiency(const Context& c, std::vector<Finding>& out) {
  const Pc& pc = c.lab.pc;
  if (pc.efficiency_cores <= pc.cores) return;
  out.push_back(found(Severity::error,
                      say(text::efficiency_cores, c.name(kPc), Count{pc.efficiency_cores}, Count{pc.cores}),
                      say(text::efficiency_cores_why), {kPc}));
}

std::optional<Fix> fix_efficiency(const Context& c, const Finding&) {
  const std::int64_t cores = c.lab.pc.cores;
  return set_one(c, say(text::fix_efficiency, Count{cores}), kPc, "efficiency_cores", cores);
}

void check_threads(const Context& c, std::vector<Finding>& out) {
  const Pc& pc = c.lab.pc;
  if (pc.threads >= pc.cores) return;
  out.push_back(found(Severity::error,
                      say(text::threads_cores, c.name(kPc), Count{pc.threads}, Count{pc.cores}),
                      say(text::threads_cores_why), {kPc}));
}

std::optional<Fix> fix_threads(const Context& c, const Finding&) {
  const std::int64_t cores = c.lab.pc.cores;
  return set_one(c, say(text::fix_threads, Count{cores}), kPc, "threads", cores);
}

} // namespace

std::span<const Rule> processor_rules() {
  static const std::array list{
      Rule{"processors-carrier", Topic::processors, Severity::error,
           "A machine has more processors than what carries it", kPractice, check_carrier, fix_carrier},
      Rule{"hypervisor-one-processor", Topic::processors, Severity::error, "A hypervisor has one processor",
           kPractice, check_one_processor, fix_one_processor},
      Rule{"efficiency-cores", Topic::processors, Severity::error, "More efficiency cores than cores",
           "arithmetic", check_efficiency, fix_efficiency},
      Rule{"threads-cores", Topic::processors, Severity::error, "Fewer threads than cores", "arithmetic",
           check_threads, fix_threads},
      Rule{"processors-ratio", Topic::processors, Severity::caution,
           "Many running virtual processors for the cores there are", kPractice, check_ratio},
  };
  return list;
}

} // namespace snug
