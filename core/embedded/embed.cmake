# snug_embed(OUT FILE...): writes a source at configure time that holds the bytes of each file (core/embedded/embedded.h). A file that
# changes brings a new configure.
function(snug_embed out)
  set(data "")
  set(table "")
  set(index 0)
  foreach(path IN LISTS ARGN)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${path})
    file(READ ${path} hex HEX)
    string(REGEX REPLACE "(................................)" "\\1\n" hex "${hex}")
    string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${hex}")
    get_filename_component(name ${path} NAME_WE)
    string(APPEND data "constexpr char kFile${index}[] = {\n${bytes}'\\0'};\n")
    string(APPEND table "    {\"${name}\", {kFile${index}, sizeof kFile${index} - 1}},\n")
    math(EXPR index "${index} + 1")
  endforeach()
  file(CONFIGURE OUTPUT ${out} @ONLY CONTENT "// Made by core/embedded/embed.cmake.
#include \"core/embedded/embedded.h\"

namespace snug::detail {

namespace {

${data}
constexpr EmbeddedFile kFiles[] = {
${table}};

} // namespace

std::span<const EmbeddedFile> embedded_files() { return kFiles; }

} // namespace snug::detail
")
endfunction()
