#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

/// How a typed name finds its places in a file.
namespace fluewright::varied_names {

/// "run.0.up" and "burn-rate" as steps and words of a pointer.
[[nodiscard]] std::string normal(std::string_view name);

/// A pointer of a value at high fire also stands for the value where the file gives but one.
[[nodiscard]] std::string_view without_high(std::string_view pointer);

/// Those of `all` that a name means: the pointer itself, else those that end in its steps, else in
/// its words; of several those of site, heater and run, and of these those the file gives.
[[nodiscard]] std::vector<std::string>
pointers_meant(const std::vector<std::string>& all,
               const std::string& name,
               const std::function<bool(const std::string&)>& is_given);

/// "/run/0/up, /run/2/up or /run/4/up"
[[nodiscard]] std::string or_list(const std::vector<std::string>& pointers);

/// "up of straight 3", "moisture (fuel)", "draft needed at high fire".
[[nodiscard]] std::string label_of(std::string_view pointer, const Installation& written);

} // namespace fluewright::varied_names
