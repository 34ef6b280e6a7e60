// Repairs of findings: one, or many at once.

#include "core/analyse/analyse.h"

#include <algorithm>
#include <atomic>
#include <cassert>
#include <future>
#include <system_error>
#include <thread>

namespace snug {

namespace {

// Machines times findings from which a thread of its own, with a copy of the lab and an analysis, is worth
// it.
constexpr std::size_t kWorthThread = 20'000;
constexpr std::size_t kMostThreads = 8;

std::size_t helpers(std::size_t machines, std::size_t findings) {
  const std::size_t cores = std::clamp<std::size_t>(std::thread::hardware_concurrency(), 1, kMostThreads);
  return std::min(cores - 1, machines * findings / kWorthThread);
}

} // namespace

std::optional<Fix> Analysis::fix(const Finding& finding) const {
  assert(finding.rule);
  auto fix = finding.rule->fix ? finding.rule->fix(context(), finding) : std::nullopt;
  if (fix && !RepairTrial(lab()).mends(finding, fix->edit)) fix.reset();
  return fix;
}

std::vector<Fix> Analysis::fixes(const Finding& finding, RepairTrial& trial) const {
  std::vector<Fix> out;
  for (const auto make : {finding.rule->fix, finding.rule->other_fix}) {
    auto fix = make ? make(context(), finding) : std::nullopt;
    if (fix && trial.mends(finding, fix->edit)) out.push_back(std::move(*fix));
  }
  return out;
}

std::vector<Fix> Analysis::fixes(const Finding& finding) const {
  RepairTrial trial(lab());
  return fixes(finding, trial);
}

// Each thread has its own analysis: who reaches whom is found when a repair asks for it.
std::vector<std::vector<Fix>> Analysis::fixes(std::span<const Finding* const> findings) const {
  std::vector<std::vector<Fix>> out(findings.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&](const Analysis& a) {
    RepairTrial trial(a.lab());
    for (std::size_t i = next++; i < findings.size(); i = next++) out[i] = a.fixes(*findings[i], trial);
  };
  std::vector<std::future<void>> beside;
  try {
    for (std::size_t n = helpers(lab().machines.size(), findings.size()); n > 0; --n)
      beside.push_back(std::async(std::launch::async, [&] { work(Analysis(lab())); }));
  } catch (const std::system_error&) { // those that there are do it all
  }
  work(*this);
  for (std::future<void>& f : beside) f.get();
  return out;
}

} // namespace snug
