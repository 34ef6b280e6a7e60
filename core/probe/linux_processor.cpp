// Processor and virtualization. Sources: Linux Documentation/admin-guide/cputopology,
// Documentation/arch/x86/cpuinfo; ABI sysfs-devices-system-cpu; arch/x86/kernel/cpu/feat_ctl.c.
#include "core/probe/linux_parts.h"

#include <algorithm>
#include <set>

namespace snug::system_facts {

namespace {

const std::string kCpus = "sys/devices/system/cpu/";

// Threads of one core have the same list.
std::optional<int> core_count(const SystemTree& tree, const std::vector<int>& threads) {
  std::set<std::string> cores;
  for (const int n : threads) {
    const std::string folder = kCpus + "cpu" + std::to_string(n) + "/topology/";
    auto siblings = tree.word(folder + "core_cpus_list");
    if (!siblings) siblings = tree.word(folder + "thread_siblings_list");
    if (!siblings) return std::nullopt;
    cores.insert(*siblings);
  }
  return static_cast<int>(cores.size());
}

std::optional<std::vector<int>> thread_list(const SystemTree& tree, const std::string& path) {
  const auto list = tree.word(path);
  return list ? number_list(*list) : std::nullopt;
}

std::optional<int> efficiency_cores(const SystemTree& tree) {
  if (!thread_list(tree, "sys/devices/cpu_core/cpus")) return std::nullopt;
  const auto small = thread_list(tree, "sys/devices/cpu_atom/cpus");
  return small ? core_count(tree, *small) : std::nullopt;
}

void set_counts(const SystemTree& tree, ProcessorFacts& facts) {
  const auto threads = thread_list(tree, kCpus + "online");
  if (!threads) return;
  facts.threads = static_cast<int>(threads->size());
  facts.cores = core_count(tree, *threads);
  facts.efficiency_cores = efficiency_cores(tree);
  if (facts.cores && facts.efficiency_cores && *facts.efficiency_cores > *facts.cores)
    facts.efficiency_cores.reset();
}

std::optional<bool> by_architecture(const SystemTree& tree) {
  const auto name = tree.word("proc/sys/kernel/arch");
  if (!name) return std::nullopt;
  for (const char* wide : {"x86_64", "aarch64", "riscv64", "ppc64le", "ppc64", "s390x", "loongarch64"})
    if (*name == wide) return true;
  return std::nullopt;
}

// Kernels from 5.6 on take the flag "vmx" away where the firmware has not switched it on.
bool kernel_clears_vmx(const SystemTree& tree) {
  const auto release = tree.word("proc/sys/kernel/osrelease");
  if (!release) return false;
  const std::size_t dot = release->find('.');
  if (dot == std::string::npos) return false;
  const std::size_t end = release->find_first_not_of("0123456789", dot + 1);
  const auto major = parse_number<int>(std::string_view(*release).substr(0, dot));
  const auto minor = parse_number<int>(std::string_view(*release).substr(dot + 1, end - dot - 1));
  return major && minor && (*major > 5 || (*major == 5 && *minor >= 6));
}

std::optional<bool> nested_setting(const SystemTree& tree, const std::string& module) {
  const auto setting = tree.word("sys/module/" + module + "/parameters/nested");
  if (!setting) return std::nullopt;
  if (*setting == "Y" || *setting == "1") return true;
  if (*setting == "N" || *setting == "0") return false;
  return std::nullopt;
}

} // namespace

ProcessorFacts linux_processor(const SystemTree& tree) {
  ProcessorFacts facts;
  set_counts(tree, facts);
  const auto text = tree.text("proc/cpuinfo");
  const auto line = text ? value_of(*text, "flags") : std::nullopt;
  if (!line || line->empty()) {
    facts.is_64_bit = by_architecture(tree);
    return facts;
  }
  const auto flags = words(*line);
  const auto has = [&](std::string_view flag) {
    return std::find(flags.begin(), flags.end(), flag) != flags.end();
  };
  const bool vmx = has("vmx");
  const bool svm = has("svm");
  facts.is_64_bit = has("lm");
  facts.under_hypervisor = has("hypervisor");
  facts.virtualization = vmx || svm;
  if (!vmx && !svm) return facts;
  facts.second_level_translation = has(vmx ? "ept" : "npt");
  // The device exists once the kernel's module found the hardware switched on.
  const std::string module = vmx ? "kvm_intel" : "kvm_amd";
  const bool in_use = tree.exists("sys/class/misc/kvm") && tree.exists("sys/module/" + module);
  if (in_use || (vmx && kernel_clears_vmx(tree))) facts.firmware_switch = true;
  facts.nested_virtualization = nested_setting(tree, module);
  return facts;
}

} // namespace snug::system_facts
