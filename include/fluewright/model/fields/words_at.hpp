#pragma once

#include "fluewright/model/fields/fields.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What stands at a JSON pointer of an installation, read without changing it; and the words there.
namespace fluewright {

/// The number at a pointer, as find_value() means it; empty where the file gives none.
[[nodiscard]] Given number_at(const Installation& installation, std::string_view pointer);

/// The row of the field at a pointer; null where there is none.
[[nodiscard]] const FieldInfo* field_at(const Installation& installation, std::string_view pointer);

/// The word at a pointer as the file has it, of yes and no "true" or "false"; empty where none
/// stands.
[[nodiscard]] Word word_at(const Installation& installation, std::string_view pointer);

/// Whether a pointer leads to a place where a word can stand.
[[nodiscard]] bool takes_word(const Installation& installation, std::string_view pointer);

/// Sets it. False where no word can stand, or where the field does not take it; names of fuels,
/// walls and fittings are taken as they are.
[[nodiscard]] bool
set_word(Installation& installation, std::string_view pointer, std::string_view word);

/// Those of value_pointers() that a name may mean: of keys that it ends in.
[[nodiscard]] std::vector<std::string> value_pointers_of(const Installation& installation,
                                                         std::string_view name);

/// Pointers to every place where one of some words can stand, or yes and no; texts have none. Of a
/// name those of keys that it ends in.
[[nodiscard]] std::vector<std::string> word_pointers(const Installation& installation,
                                                     std::string_view name = {});

/// "false" and "true".
[[nodiscard]] std::span<const std::string_view> words_of_flags();

/// Whether a key of this name takes one of some words, or yes and no, in any object of a file.
[[nodiscard]] bool is_word_key(std::string_view key);

} // namespace fluewright
