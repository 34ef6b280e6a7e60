// Memory. Sources: Linux admin-guide "proc" (meminfo); DMTF DSP0134 (SMBIOS) 7.18 for the memory modules,
// either as udev keeps them for everybody (MEMORY_DEVICE_n_SIZE, bytes) or in the firmware's own table, which
// only root reads.
#include "core/probe/linux_parts.h"

namespace snug::system_facts {

namespace {

constexpr std::int64_t kMibBytes = 1 << 20;
constexpr std::int64_t kMostMib = std::int64_t{1} << 32U;

std::optional<std::int64_t> usable(const SystemTree& tree) {
  const auto text = tree.text("proc/meminfo");
  if (!text) return std::nullopt;
  const auto total = value_of(*text, "MemTotal");
  if (!total) return std::nullopt;
  const auto parts = words(*total);
  if (parts.size() != 2 || parts[1] != "kB") return std::nullopt;
  const auto kib = parse_number<std::int64_t>(parts[0]);
  if (!kib || *kib < 1024 || *kib / 1024 > kMostMib) return std::nullopt;
  return *kib / 1024;
}

std::optional<std::int64_t> modules_by_udev(const SystemTree& tree) {
  const auto text = tree.text("run/udev/data/+dmi:id");
  if (!text) return std::nullopt;
  std::int64_t sum = 0;
  for (const std::string_view line : lines(*text)) {
    const std::size_t equals = line.find("_SIZE=");
    if (!line.starts_with("E:MEMORY_DEVICE_") || equals == std::string_view::npos) continue;
    if (!parse_number<int>(line.substr(16, equals - 16)))
      continue; // MEMORY_DEVICE_0_VOLATILE_SIZE and the like
    const auto bytes = parse_number<std::int64_t>(line.substr(equals + 6));
    if (!bytes || *bytes < 0 || *bytes / kMibBytes > kMostMib) return std::nullopt;
    sum += *bytes / kMibBytes;
  }
  return sum > 0 ? std::optional(sum) : std::nullopt;
}

// Size of a structure of type 17 in MiB; nothing if the firmware does not know it.
std::optional<std::int64_t> module_size(std::string_view structure) {
  const auto byte = [&](std::size_t at) -> std::int64_t {
    return at < structure.size() ? static_cast<unsigned char>(structure[at]) : 0;
  };
  const std::int64_t size = byte(0x0c) | (byte(0x0d) << 8U);
  if (structure.size() < 0x0e || size == 0xffff) return std::nullopt;
  if (size == 0x7fff)
    return (byte(0x1c) | (byte(0x1d) << 8U) | (byte(0x1e) << 16U) | (byte(0x1f) << 24U)) & 0x7fffffff;
  return (size & 0x8000) != 0 ? (size & 0x7fff) / 1024 : size;
}

std::optional<std::int64_t> modules_by_table(const SystemTree& tree) {
  const auto text = tree.text("sys/firmware/dmi/tables/DMI");
  if (!text) return std::nullopt;
  std::int64_t sum = 0;
  std::string_view rest = *text;
  while (rest.size() >= 4) {
    const auto length = static_cast<unsigned char>(rest[1]);
    const std::size_t end = rest.find(std::string_view("\0\0", 2), length);
    if (length < 4 || end == std::string_view::npos) return std::nullopt;
    if (rest[0] == 17) {
      const auto size = module_size(rest.substr(0, length));
      if (!size) return std::nullopt;
      sum += *size;
    }
    rest.remove_prefix(end + 2);
  }
  return sum > 0 ? std::optional(sum) : std::nullopt;
}

} // namespace

MemoryFacts linux_memory(const SystemTree& tree) {
  MemoryFacts facts;
  facts.usable_mib = usable(tree);
  facts.installed_mib = modules_by_udev(tree);
  if (!facts.installed_mib) facts.installed_mib = modules_by_table(tree);
  // Less installed than usable: the firmware's list is wrong.
  if (facts.installed_mib && facts.usable_mib && *facts.installed_mib < *facts.usable_mib)
    facts.installed_mib.reset();
  return facts;
}

} // namespace snug::system_facts
