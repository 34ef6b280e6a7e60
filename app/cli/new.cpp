#include "app/cli/command.h"
#include "core/document/new_lab.h"
#include "core/document/save.h"
#include "core/document/write.h"
#include "core/embedded/embedded.h"
#include "core/probe/pc_element.h"
#include "core/roles/catalogue.h"
#include "core/roles/known_roles.h"
#include "core/text/cli_text.h"

#include <filesystem>

namespace snug::cli {

namespace {

struct NewWish {
  std::string file;
  std::string sample;
  std::string title;
  bool list = false;
  bool this_pc = false;
  bool roles = false;
  bool replace = false;
};

std::vector<std::string> sample_names() {
  std::vector<std::string> names;
  for (const EmbeddedFile& f : embedded_samples()) names.emplace_back(f.name);
  return names;
}

Result<Lab> begin(const NewWish& wish) {
  if (wish.sample.empty()) return blank_lab(random_uid());
  const EmbeddedFile* sample = find_sample(wish.sample);
  if (!sample) return fail(text::cli_no_sample, wish.sample, sample_names());
  auto lab = read_lab(sample->bytes, wish.sample);
  if (!lab) return lab;
  return copy_as_template(*lab, random_uid());
}

int list_samples(const Console& console) {
  std::string out;
  for (const EmbeddedFile& f : embedded_samples()) {
    const auto lab = read_lab(f.bytes, f.name);
    out += std::string(f.name) + (lab && !lab->facts.title.empty() ? "  " + lab->facts.title : "") + "\n";
  }
  return deliver(console, {}, out);
}

int make_lab(const Console& console, const NewWish& wish) {
  if (wish.list) return list_samples(console);
  auto lab = begin(wish);
  if (!lab) return complain(console, lab.error(), kUsage);
  if (!wish.title.empty()) lab->facts.title = wish.title;
  if (wish.roles) {
    const auto roles = known_roles(own_roles_file());
    if (!roles) return complain(console, roles.error(), kUnreadable);
    EditBuilder b(*lab);
    for (const Role& r : *roles) use_role(b, r);
    if (auto done = apply(*lab, std::move(b).take({})); !done)
      return complain(console, done.error(), kInternal);
  }
  if (wish.this_pc) put_facts(*lab, probe(this_pc()));
  const std::string bytes = write_lab(*lab);
  // What was given on the command line must be readable again: one check for titles and the PC's own names.
  if (auto again = read_lab(bytes, wish.file); !again) return complain(console, again.error(), kUsage);
  if (wish.file == "-") return deliver(console, {}, bytes);
  std::error_code ignored;
  if (!wish.replace && std::filesystem::exists(wish.file, ignored))
    return complain(console, Problem{say(text::cli_exists, wish.file), {}, 0, 0, {}}, kCannotWrite);
  return deliver(console, wish.file, bytes);
}

} // namespace

void add_new(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<NewWish>();
  CLI::App* sub = root.add_subcommand("new", "Begin a lab: empty, or a copy of a sample");
  CLI::Option* file = sub->add_option("FILE", wish->file, "the new lab; - writes it to the output");
  CLI::Option* sample = sub->add_option("--sample", wish->sample, "copy this sample");
  sub->add_option("--title", wish->title, "its title");
  sub->add_flag("--roles", wish->roles, "with the roles of the catalogue, for machines to name by id");
  sub->add_flag("--this-pc", wish->this_pc, "fill in what this computer tells about itself")
      ->excludes(sample);
  sub->add_flag("--replace", wish->replace, "overwrite FILE");
  CLI::Option* list = sub->add_flag("--list", wish->list, "name the samples");
  sub->callback([&plan, wish, file, list] {
    if (file->empty() && list->empty()) throw CLI::RequiredError("FILE");
    plan.action = [&plan, wish] { return make_lab(plan.console, *wish); };
  });
}

} // namespace snug::cli
