#pragma once
// Budgets of memory, processors, disk and addresses (MODEL: Memory, Processors, Disk, Networks). Integers
// only.

#include "core/addressing/in_use.h"
#include "core/model/index.h"

#include <vector>

namespace snug {

enum class Verdict : std::uint8_t { fits, tight, over };

// Memory in MiB of the PC or of a hypervisor, for one exercise.
struct MemoryBudget {
  AnyId of; // pc or a machine
  std::int64_t budget = 0;
  std::int64_t taken = 0;     // by running children, overhead included; the PC's own reserve is not in it
  std::int64_t expected = 0;  // taken if guests use what is expected of them
  std::int64_t keep_free = 0; // PC only, else 0
  std::int64_t headroom() const { return budget - taken; }
  std::int64_t expected_headroom() const { return budget - expected; }
  Verdict verdict() const {
    return headroom() < 0 ? Verdict::over : headroom() < keep_free ? Verdict::tight : Verdict::fits;
  }
  friend bool operator==(const MemoryBudget&, const MemoryBudget&) = default;
};

// Running virtual processors against what carries them.
struct ProcessorBudget {
  AnyId of;
  std::int64_t running = 0; // virtual processors of running children
  std::int64_t power = 0;   // hundredths of a core: cores, efficiency cores and second threads weighed by the
                            // rules; a hypervisor: 100 for each of its processors
  std::int64_t ratio = 0;   // hundredths: running / power, rounded up
  std::int64_t limit = 0;   // hundredths, from the rules
  std::int64_t product = 0; // hundredths: this ratio times those of all carriers above, rounded up
  Verdict verdict() const { return ratio > limit ? Verdict::over : Verdict::fits; }
  friend bool operator==(const ProcessorBudget&, const ProcessorBudget&) = default;
};

// Disk in MiB of a volume, a share or a hypervisor's disk that is a store.
struct DiskBudget {
  AnyId of;
  std::int64_t budget = 0; // free before the lab, less what is kept free; a share's or disk's size
  std::int64_t expected = 0;
  std::int64_t worst = 0;
  Verdict verdict() const {
    return expected > budget ? Verdict::over : worst > budget ? Verdict::tight : Verdict::fits;
  }
  friend bool operator==(const DiskBudget&, const DiskBudget&) = default;
};

// Addresses of a segment (IPv4) and the memory of the running machines on it.
struct SegmentBudget {
  SegmentId of;
  std::int64_t usable = 0;   // host addresses of the prefix; 0 without one
  std::int64_t used = 0;     // by cards, PC socket, gateway held by a LAN's router, translator
  std::int64_t reserved = 0; // DHCP ranges and kept ranges, without used ones
  std::int64_t wanted = 0;   // by cards that wait for a suggestion
  std::int64_t memory = 0;   // MiB taken by running machines with a card on it
  std::int64_t free() const { return usable - used - reserved; }
  Verdict verdict() const { return usable > 0 && free() < wanted ? Verdict::over : Verdict::fits; }
  friend bool operator==(const SegmentBudget&, const SegmentBudget&) = default;
};

struct ExerciseBudgets {
  ExerciseId exercise;                     // none: everything on
  std::vector<std::uint8_t> running;       // 1 or 0 for each of lab.machines
  std::size_t running_count = 0;           // machines that run
  std::vector<MemoryBudget> memory;        // the PC first, then hypervisors in the order of the lab
  std::vector<ProcessorBudget> processors; // as memory
  std::vector<DiskBudget> disks;           // volumes, shares, then hypervisors' disks that are stores
  std::vector<SegmentBudget> segments;     // order of the lab
};

// Budgets of everything on, then of each exercise in the order of the lab.
std::vector<ExerciseBudgets> budgets_of(const Index&, const AddressesInUse&);

// Which machines run in an exercise (none: everything on), 1 or 0 by place: those listed whose carriers all
// run (MODEL: a running inner guest needs every carrier above it running).
std::vector<std::uint8_t> running(const Index&, ExerciseId exercise);

} // namespace snug
