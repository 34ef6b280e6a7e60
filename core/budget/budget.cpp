#include "core/budget/budget.h"

#include "core/budget/disk.h"
#include "core/budget/memory.h"
#include "core/budget/processors.h"
#include "core/budget/segments.h"

#include <algorithm>

namespace snug {

namespace {

std::vector<std::uint8_t> running_of(const Index& index, const Exercise* exercise) {
  if (!exercise) return std::vector<std::uint8_t>(index.machines().size(), 1);
  std::vector<std::uint8_t> on(index.machines().size(), 0);
  for (const MachineId id : exercise->on)
    if (const std::uint32_t p = index.place(id); p != kNowhere) on[p] = 1;
  for (const std::uint32_t m : index.carriers_first()) {
    const std::uint32_t carrier = index.carrier_of(m);
    if (carrier != kNowhere) on[m] &= on[carrier];
  }
  return on;
}

} // namespace

std::vector<std::uint8_t> running(const Index& index, ExerciseId exercise) {
  const std::uint32_t p = index.place(exercise);
  return running_of(index, p == kNowhere ? nullptr : &index.lab().exercises[p]);
}

std::vector<ExerciseBudgets> budgets_of(const Index& index, const AddressesInUse& addresses) {
  const Lab& lab = index.lab();
  const GuestCosts costs = guest_costs(index);
  const std::vector<Seat> sitting = seats(index);
  const DiskPlan disks = disk_plan(index);
  const std::vector<SegmentBudget> segments = address_budgets(index, addresses);

  std::vector<ExerciseBudgets> out(lab.exercises.size() + 1);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Exercise* exercise = i == 0 ? nullptr : &lab.exercises[i - 1];
    ExerciseBudgets& b = out[i];
    b.exercise = exercise ? exercise->id : ExerciseId{};
    b.running = running_of(index, exercise);
    b.running_count = static_cast<std::size_t>(std::count(b.running.begin(), b.running.end(), 1));
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
