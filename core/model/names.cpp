#include "core/model/names.h"

#include "core/net/host_name.h"

namespace snug {

std::string host_name_of(const Machine& m) {
  return m.host_name.empty() ? host_label_from(m.name) : m.host_name;
}

std::string full_name_of(const Lab& lab, const Machine& m) {
  std::string name = host_name_of(m);
  if (name.find('.') != std::string::npos || lab.facts.domain.empty()) return name;
  return name + "." + lab.facts.domain;
}

} // namespace snug
