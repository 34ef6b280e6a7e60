#include "core/budget/budget.h"

#include "core/budget/disk.h"
#include "core/budget/memory.h"
#include "core/budget/processors.h"
#include "core/budget/segments.h"

#include <numeric>

namespace snug {

namespace {

std::vector<std::uint8_t> running_of(const Index& index, const Exercise* exercise) {
  if (!exercise) return std::vector<std::uint8_t>(index.machines().size(), 1);
  std::vector<std::uint8_t> machines(index.machines().size(), 0);
  const std::span<std::uint8_t> on = machines;
  for (const MachineId id : exercise->on)
    if (const std::uint32_t p = index.place(id); p != kNowhere) on[p] = 1;
  for (const std::uint32_t h : index.hypervisors_carriers_first())
    if (!on[h])
      for (const std::uint32_t guest : index.guests_of(h)) on[guest] = 0;
  return machines;
}

// What an exercise in which everything is on has, is what everything on has.
bool is_everything(const ExerciseBudgets& b) { return b.running_count == b.running.size(); }

} // namespace

std::vector<std::uint8_t> running(const Index& index, ExerciseId exercise) {
  const std::uint32_t p = index.place(exercise);
  return running_of(index, p == kNowhere ? nullptr : &index.lab().exercises[p]);
}

std::vector<ExerciseBudgets> budgets_of(const Index& index, const AddressesInUse& addresses) {
  const Lab& lab = index.lab();
  const GuestCosts costs = guest_costs(index);
  const std::vector<Seat> sitting = seats(index, costs);
  const DiskPlan disks = disk_plan(index);
  const std::vector<SegmentBudget> segments = address_budgets(index, addresses);

  std::vector<ExerciseBudgets> out(lab.exercises.size() + 1);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Exercise* exercise = i == 0 ? nullptr : &lab.exercises[i - 1];
    ExerciseBudgets& b = out[i];
    b.running = running_of(index, exercise);
    b.running_count = std::accumulate(b.running.begin(), b.running.end(), std::size_t{0});
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
    b.segments = segments;
    add_memory(sitting, b.running, b.segments);
  }
  return out;
}

} // namespace snug
