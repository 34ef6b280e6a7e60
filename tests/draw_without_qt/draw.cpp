// Writes the main sample's diagram to standard output.
#include "core/layout/draw.h"
#include "core/document/read.h"
#include "core/embedded/embedded.h"
#include "core/report/svg.h"

#include <iostream>

int main() {
  using namespace snug;
  const EmbeddedFile& sample = embedded_samples().front();
  const auto lab = read_lab(sample.bytes, std::string(sample.name));
  if (!lab) {
    std::cerr << english(lab.error()) << '\n';
    return 1;
  }
  std::cout << svg(draw(analyse(*lab)));
  return 0;
}
