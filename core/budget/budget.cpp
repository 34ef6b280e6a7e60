#include "core/budget/budget.h"

#include "core/budget/disk.h"
#include "core/budget/memory.h"
#include "core/budget/processors.h"
#include "core/budget/segments.h"

namespace snug {

namespace {

struct Running {
  std::vector<std::uint8_t> machines; // 1 or 0 by place
  std::size_t count = 0;
};

Running running_of(const Index& index, const Exercise* exercise) {
  const std::size_t all = index.machines().size();
  if (!exercise) return {std::vector<std::uint8_t>(all, 1), all};
  Running out{std::vector<std::uint8_t>(all, 0), 0};
  const std::span<std::uint8_t> on = out.machines;
  std::size_t count = 0;
  const auto turn = [&](std::uint32_t m, std::uint8_t to) {
    count += to;
    count -= on[m];
    on[m] = to;
  };
  for (const MachineId id : exercise->on)
    if (const std::uint32_t p = index.place(id); p != kNowhere) turn(p, 1);
  for (const std::uint32_t h : index.hypervisors_carriers_first())
    if (!on[h])
      for (const std::uint32_t guest : index.guests_of(h)) turn(guest, 0);
  out.count = count;
  return out;
}

// What an exercise in which everything is on has, is what everything on has.
bool is_everything(const ExerciseBudgets& b) { return b.running_count == b.running.size(); }

} // namespace

std::vector<std::uint8_t> running(const Index& index, ExerciseId exercise) {
  const std::uint32_t p = index.place(exercise);
  return running_of(index, p == kNowhere ? nullptr : &index.lab().exercises[p]).machines;
}

std::vector<ExerciseBudgets> budgets_of(const Index& index, const AddressesInUse& addresses) {
  std::vector<ExerciseBudgets> out = budgets_without_addresses(index);
  add_addresses(out, index, addresses);
  return out;
}

void add_addresses(std::vector<ExerciseBudgets>& budgets, const Index& index,
                   const AddressesInUse& addresses) {
  const std::vector<SegmentBudget> segments = address_budgets(index, addresses);
  for (ExerciseBudgets& b : budgets)
    for (std::size_t s = 0; s < segments.size(); ++s) {
      const std::int64_t memory = b.segments[s].memory;
      b.segments[s] = segments[s];
      b.segments[s].memory = memory;
    }
}

std::vector<ExerciseBudgets> budgets_without_addresses(const Index& index) {
  const Lab& lab = index.lab();
  const GuestCosts costs = guest_costs(index);
  const std::vector<Seat> sitting = seats(index, costs);
  const DiskPlan disks = disk_plan(index);

  std::vector<ExerciseBudgets> out(lab.exercises.size() + 1);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Exercise* exercise = i == 0 ? nullptr : &lab.exercises[i - 1];
    ExerciseBudgets& b = out[i];
    Running running = running_of(index, exercise);
    b.running = std::move(running.machines);
    b.running_count = running.count;
    if (exercise && is_everything(b)) {
      b = out.front();
      b.exercise = exercise->id;
      continue;
    }
    b.exercise = exercise ? exercise->id : ExerciseId{};
    const std::vector<Inside> inside = insides(costs, b.running);
    b.memory = memory_budgets(lab.pc, costs, inside);
    b.processors = processor_budgets(lab, costs, inside);
    b.disks = disk_budgets(index, disks, b.running);
    b.segments.resize(lab.segments.size());
    add_memory(sitting, b.running, b.segments);
  }
  return out;
}

} // namespace snug
