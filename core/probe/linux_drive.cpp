// Kind of the drives below a block device. Sources: Linux Documentation/block/queue-sysfs (rotational), ABI
// sysfs-block (partition, slaves).
#include "core/probe/linux_parts.h"

#include <set>

namespace snug::system_facts {

namespace {

constexpr int kMostLevels = 8;

std::string last_name(const std::string& path) { return path.substr(path.rfind('/') + 1); }

// What a guest's own system says about the drives that its hypervisor shows it means nothing.
bool is_of_a_guest(const std::string& path) {
  const std::string name = last_name(path);
  return path.find("/virtio") != std::string::npos || name.starts_with("vd") || name.starts_with("xvd");
}

std::optional<DriveKind> disk_kind(const SystemTree& tree, const std::string& path) {
  const std::string name = last_name(path);
  if (is_of_a_guest(path)) return std::nullopt;
  if (path.find("/usb") != std::string::npos) return DriveKind::usb;
  if (name.starts_with("nvme")) return DriveKind::nvme;
  const auto rotational = tree.number(path + "/queue/rotational");
  if (!rotational || path.find("/virtual/") != std::string::npos) return std::nullopt;
  if (*rotational == 1) return DriveKind::spinning;
  return *rotational == 0 ? std::optional(DriveKind::flash) : std::nullopt;
}

std::optional<DriveKind> kind(const SystemTree& tree, std::string path, int level) {
  if (path.empty() || level > kMostLevels) return std::nullopt;
  if (tree.exists(path + "/partition")) path = path.substr(0, path.rfind('/'));
  const auto below = tree.names(path + "/slaves");
  if (!below || below->empty()) return disk_kind(tree, path);
  const std::string folder = path + "/slaves/";
  std::set<std::optional<DriveKind>> kinds;
  for (const std::string& name : *below)
    kinds.insert(kind(tree, tree.real(std::string(folder).append(name)), level + 1));
  return kinds.size() == 1 ? *kinds.begin() : std::nullopt;
}

} // namespace

std::optional<DriveKind> linux_drive_kind(const SystemTree& tree, const std::string& block_device) {
  return kind(tree, tree.real("sys/class/block/" + block_device), 0);
}

} // namespace snug::system_facts
