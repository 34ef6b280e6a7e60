#pragma once
// How long loops of tests run.

namespace snug::test {

// `full` when the environment says SNUG_TEST_SCALE=full, else a tenth of it, at least 1.
int scaled(int full);

} // namespace snug::test
