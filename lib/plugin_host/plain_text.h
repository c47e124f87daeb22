// What text from a plugin may be: it ends up on terminals, in file names and in other people's scripts.
#ifndef WITHY_PLUGIN_HOST_PLAIN_TEXT_H_
#define WITHY_PLUGIN_HOST_PLAIN_TEXT_H_

#include <string>
#include <string_view>

namespace withy::plugin {

bool IsUtf8(std::string_view text);

// UTF-8 of at most `longest` bytes without control characters or invisible formatting characters; so one line.
bool IsPlainLine(std::string_view text, std::size_t longest = 2000);

// `text` with what IsPlainLine refuses written out, cut to `longest` bytes.
std::string AsPlainLine(std::string_view text, std::size_t longest = 2000);

// Lower-case letters, digits and '-', beginning with a letter, at most 64: names of plugins, checks, exporters.
bool IsSlug(std::string_view text);

// Letters, digits and '_', beginning with a letter: names of options, numbers and of what a plugin names in Lua.
bool IsIdentifier(std::string_view text);

// A file name that means the same on every system: [A-Za-z0-9._ -], no leading dot or blank, no trailing dot or blank,
// at most 120 bytes.
bool IsPlainFileName(std::string_view text);

// `text` with every character that IsPlainFileName refuses as '_'; never empty.
std::string AsPlainFileName(std::string_view text);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PLAIN_TEXT_H_
