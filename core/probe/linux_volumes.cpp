// Mounted volumes. Source: proc(5), /proc/[pid]/mountinfo.
#include "core/probe/linux_parts.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

namespace snug::system_facts {

namespace {

struct Mount {
  std::string device; // name of the block device; empty: none
  std::string root;   // the part of the file system that is mounted
  std::string point;
  std::string file_system;
};

// Three octal digits after a backslash stand for a space, tab, line feed or backslash.
std::string unescaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto code = text[at] == '\\' ? parse_number<unsigned>(text.substr(at + 1, 3), 8) : std::nullopt;
    if (code && *code < 256) {
      out += static_cast<char>(static_cast<unsigned char>(*code));
      at += 3;
    } else {
      out += text[at];
    }
  }
  return out;
}

// By number where the tree knows it, else by the name of the source (file systems over several devices).
std::string device_of(const SystemTree& tree, std::string_view number, std::string_view source) {
  if (number.find_first_not_of("0123456789:") == std::string_view::npos) {
    const std::string path = tree.real("sys/dev/block/" + std::string(number));
    if (!path.empty()) return path.substr(path.rfind('/') + 1);
  }
  if (!source.starts_with("/dev/")) return {};
  const std::string name(source.substr(source.rfind('/') + 1));
  const bool known = !name.empty() && name != "." && name != ".." && tree.exists("sys/class/block/" + name);
  return known ? name : std::string();
}

bool carries_nothing(const Mount& mount) {
  static constexpr std::array<std::string_view, 4> kReadOnly{"squashfs", "iso9660", "udf", "erofs"};
  static constexpr std::array<std::string_view, 5> kDevices{"loop", "ram", "zram", "sr", "fd"};
  const auto starts = [](std::string_view text, std::string_view part) { return text.starts_with(part); };
  return std::find(kReadOnly.begin(), kReadOnly.end(), mount.file_system) != kReadOnly.end() ||
         std::any_of(kDevices.begin(), kDevices.end(),
                     [&](auto part) { return starts(mount.device, part); }) ||
         mount.point == "/boot" || mount.point == "/efi" || starts(mount.point, "/boot/");
}

std::optional<Mount> parse(const SystemTree& tree, std::string_view line) {
  const auto parts = words(line);
  const auto dash = std::find(parts.begin(), parts.end(), "-");
  if (dash - parts.begin() < 6 || parts.end() - dash < 3) return std::nullopt;
  if (parts[5] == "ro" || parts[5].starts_with("ro,")) return std::nullopt;
  Mount mount{device_of(tree, parts[2], unescaped(dash[2])), unescaped(parts[3]), unescaped(parts[4]),
              std::string(dash[1])};
  if (mount.device.empty() || carries_nothing(mount)) return std::nullopt;
  return mount;
}

// The whole file system before a part of it, then the shorter path.
bool is_better(const Mount& a, const Mount& b) {
  const auto key = [](const Mount& m) {
    return std::tuple(m.root != "/", m.point.size(), std::string_view(m.point));
  };
  return key(a) < key(b);
}

std::int64_t mib(std::uint64_t bytes) { return static_cast<std::int64_t>(bytes >> 20U); }

VolumeFacts facts_of(const SystemTree& tree, const Mount& mount, const ProbeRoot& from) {
  VolumeFacts facts{mount.point, mount.device, mount.file_system,
                    {},          {},           linux_drive_kind(tree, mount.device)};
  const auto space = from.space ? from.space(mount.point) : std::nullopt;
  if (space && space->size_bytes > 0 && space->free_bytes <= space->size_bytes) {
    facts.size_mib = mib(space->size_bytes);
    facts.free_mib = mib(space->free_bytes);
  }
  return facts;
}

} // namespace

std::optional<std::vector<VolumeFacts>> linux_volumes(const SystemTree& tree, const ProbeRoot& from) {
  const auto text = tree.text("proc/self/mountinfo");
  if (!text || text->empty()) return std::nullopt;
  std::map<std::string, Mount> best; // by device: a volume counts once, however often it is mounted
  for (const std::string_view line : lines(*text)) {
    const auto mount = parse(tree, line);
    if (!mount) continue;
    const auto [at, is_new] = best.try_emplace(mount->device, *mount);
    if (!is_new && is_better(*mount, at->second)) at->second = *mount;
  }
  std::vector<VolumeFacts> out;
  out.reserve(best.size());
  for (const auto& [device, mount] : best) out.push_back(facts_of(tree, mount, from));
  std::sort(out.begin(), out.end(),
            [](const auto& a, const auto& b) { return a.mount_point < b.mount_point; });
  return out;
}

} // namespace snug::system_facts
