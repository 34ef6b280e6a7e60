#!/usr/bin/env bash
# Packages of Debian 12 that Snuglab needs, and how they are installed. Sourced by app/start and tests/run.
# No package here starts a service.

# group|package|why
snug_packages() {
  cat <<'TABLE'
build|g++|compiles the program
build|cmake|describes the build
build|ninja-build|runs the build
build|pkg-config|finds libraries
build|qt6-base-dev|pictures, PDF and the window
build|qt6-svg-dev|reads the SVG of the diagram
build|nlohmann-json3-dev|reads and writes documents
build|libexpected-dev|results that say what went wrong (tl::expected)
build|libcli11-dev|reads the arguments of the command line
build|fonts-inter|the font whose widths core knows
test|git|lists the files to check
test|libgtest-dev|unit tests
test|googletest|unit tests, sources
test|librapidcheck-dev|property tests
test|libbenchmark-dev|measurements
test|libboost-dev|independent interval maps as a measure
test|clang-format|layout of the code
test|clang-tidy|mistakes in the code
test|shellcheck|mistakes in scripts
test|python3|independent addresses, the test runner
test|python3-jsonschema|independent check of documents
test|libxml2-utils|independent check of SVG and HTML
test|cmark-gfm|independent reader of Markdown
test|ieee-data|assigned MAC prefixes
test|poppler-utils|reads text and pages of PDF
test|mandoc|checks the man page
test|strace|order of write, fsync and rename
test|fiu-utils|injects faults into system calls
test|xvfb|a display for tests of the window
test|qt6-l10n-tools|makes a translated file, for the plural forms of other languages
test|xclip|asks what is offered on the clipboard
test|librsvg2-bin|independent renderer of SVG
test|xdotool|moves the pointer and types on that display
test|dbus|a session bus for what is told to a screen reader
test|at-spi2-core|the bus on which a screen reader listens
test|python3-pyatspi|listens there as a screen reader does
test|util-linux|limits and namespaces for fault tests
test|iproute2|builds labs as namespaces of the kernel
test|nftables|translation in these namespaces
TABLE
}

# snug_missing GROUP...: the packages of these groups that are not installed, one a line.
snug_missing() {
  local want=" $* " group package
  while IFS='|' read -r group package _; do
    [[ $want == *" $group "* ]] || continue
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || echo "$package"
  done < <(snug_packages)
}

# snug_setup GROUP...: installs what is missing. Returns 1 after a sentence on standard error when it cannot.
snug_setup() {
  if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "This is not a Debian system: install a C++20 compiler, CMake, Ninja, Qt 6.4 (base, svg), nlohmann-json," \
      "tl-expected, CLI11 and the font Inter yourself; building goes on with what is there." >&2
    return 0
  fi
  local missing root=()
  mapfile -t missing < <(snug_missing "$@")
  [ ${#missing[@]} -gt 0 ] || return 0
  local install="apt-get install --no-install-recommends ${missing[*]}"
  if [ "$(id -u)" != 0 ]; then
    if command -v sudo >/dev/null && sudo -n true 2>/dev/null; then
      root=(sudo -n)
    else
      printf '%s\n' "These packages are missing and only root can install them: ${missing[*]}." \
        "Run this as root, then start again: apt-get update && $install" >&2
      return 1
    fi
  fi
  echo "Installing with apt: ${missing[*]}"
  snug_apt "${missing[@]}" && return 0
  mapfile -t missing < <(snug_missing "$@")
  [ ${#missing[@]} -gt 0 ] || return 0
  printf '%s\n' "These packages cannot be had: ${missing[*]}. The last lines of apt are above." \
    "Check the network and /etc/apt/sources.list, then start again, or install them yourself: apt-get update && apt-get install --no-install-recommends ${missing[*]}" >&2
  return 1
}

# snug_apt PACKAGE...: update, then install without questions; shows the end of apt's output when it fails.
snug_apt() {
  local log options=(-q -o DPkg::Lock::Timeout=300 -o Acquire::Retries=2 -o Acquire::http::Timeout=30)
  log=$(mktemp)
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get "${options[@]}" update </dev/null >"$log" 2>&1
  if "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get "${options[@]}" install -y --no-install-recommends "$@" \
    </dev/null >>"$log" 2>&1; then
    rm -f "$log"
    return 0
  fi
  tail -n 15 "$log" >&2
  rm -f "$log"
  return 1
}
