#pragma once
// The allocator's manners, for the main function of a program only.

namespace snug {

// Memory that was freed stays with the process, so that the next analysis finds pages that were touched
// before: the first touch of a page costs more than all reading of it (DEVELOPERS, D20). With another C
// library than glibc nothing happens.
void keep_freed_memory();

} // namespace snug
