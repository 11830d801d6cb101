#include "varied_names.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>

namespace fluewright::varied_names {
namespace {

bool ends_in_steps(std::string_view pointer, std::string_view steps) {
    return pointer == steps
           || (pointer.ends_with(steps) && pointer[pointer.size() - steps.size() - 1] == '/');
}

/// "outlet_diameter" for "/appliance/outlet/diameter".
bool ends_in_words(std::string_view pointer, std::string_view words) {
    std::string flat{pointer};
    std::replace(flat.begin(), flat.end(), '/', '_');
    return flat.size() > words.size() && flat.ends_with(words)
           && flat[flat.size() - words.size() - 1] == '_';
}

template <class Fits>
std::vector<std::string> those_that(const std::vector<std::string>& pointers, const Fits& fits) {
    std::vector<std::string> found;
    for (const std::string& pointer : pointers) {
        if (fits(pointer) || fits(without_high(pointer))) {
            found.push_back(pointer);
        }
    }
    return found;
}

/// Keeps those for which the predicate holds, unless it holds for none.
template <class Keep>
void prefer(std::vector<std::string>& pointers, const Keep& keep) {
    std::vector<std::string> kept;
    std::copy_if(pointers.begin(), pointers.end(), std::back_inserter(kept), keep);
    if (!kept.empty()) {
        pointers = std::move(kept);
    }
}

} // namespace

std::string normal(std::string_view name) {
    std::string out{name};
    for (char& c : out) {
        c = c == '.' ? '/' : c == '-' || c == ' ' ? '_' : c;
    }
    return out;
}

std::string_view without_high(std::string_view pointer) {
    constexpr std::string_view high = "/high";
    return pointer.ends_with(high) ? pointer.substr(0, pointer.size() - high.size()) : pointer;
}

std::vector<std::string> pointers_meant(const std::vector<std::string>& all,
                                        const std::string& name,
                                        const std::function<bool(const std::string&)>& is_given) {
    std::vector<std::string> found =
        those_that(all, [&](std::string_view pointer) { return pointer == name; });
    if (found.empty()) {
        found =
            those_that(all, [&](std::string_view pointer) { return ends_in_steps(pointer, name); });
    }
    if (found.empty()) {
        found =
            those_that(all, [&](std::string_view pointer) { return ends_in_words(pointer, name); });
    }
    prefer(found, [](const std::string& pointer) {
        return pointer.starts_with("/site/") || pointer.starts_with("/appliance/")
               || pointer.starts_with("/run/");
    });
    prefer(found, is_given);
    return found;
}

std::string or_list(const std::vector<std::string>& pointers) {
    constexpr std::size_t most_named = 6;
    std::string words;
    const std::size_t count = std::min(pointers.size(), most_named);
    for (std::size_t i = 0; i < count; ++i) {
        words += i == 0 ? "" : i + 1 == pointers.size() ? " or " : ", ";
        words += pointers[i];
    }
    return pointers.size() > most_named ? words + ", ..." : words;
}

std::string label_of(std::string_view pointer, const Installation& written) {
    const std::string_view whole = without_high(pointer);
    const bool high = whole.size() != pointer.size();
    const bool low = pointer.ends_with("/low");
    std::string_view path = low ? pointer.substr(0, pointer.rfind('/')) : whole;
    std::string label{path.substr(path.rfind('/') + 1)};
    std::replace(label.begin(), label.end(), '_', ' ');
    label += high ? " at high fire" : low ? " at low fire" : "";
    constexpr std::string_view run = "/run/";
    if (path.starts_with(run)) {
        const std::string_view digits = path.substr(run.size());
        std::size_t index = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), index);
        const auto& kind = written.run[index].part;
        return label + " of " + std::string{kind ? name(*kind) : "part"} + ' '
               + std::to_string(index + 1);
    }
    path = path.substr(0, path.rfind('/'));
    std::string owner{path.substr(path.rfind('/') + 1)};
    std::replace(owner.begin(), owner.end(), '_', ' ');
    const bool plain =
        owner == "appliance" || owner == "site" || path.find("/weather/") != std::string_view::npos;
    return plain || owner.empty() ? label : owner + ' ' + label;
}

} // namespace fluewright::varied_names
