#include "check_parts.hpp"
#include "fluewright/advice/checks/keys_in_words.hpp"
#include "fluewright/advice/checks/told.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <fmt/core.h>
#include <limits>
#include <tuple>

namespace fluewright {
namespace report {
namespace {

/// What one or more checks ask alike, at one place or several.
struct Requirement {
    std::vector<const fluewright::Check*> by;
    std::vector<const Asked*> places;

    [[nodiscard]] const Asked& first() const { return *places.front(); }
};

/// The heater comes first, then the run from heater to chimney top, then the roof and the house.
int order_of(const Asked& asked) {
    constexpr int behind_all = std::numeric_limits<int>::max();
    if (asked.part >= 0) {
        return asked.part;
    }
    return asked.place == "the heater"        ? -1
           : asked.place == "the chimney top" ? behind_all - 1
                                              : behind_all;
}

std::vector<Requirement> requirements_of(const Assessment& a) {
    std::vector<Requirement> list;
    for (const CheckResult& result : a.checks) {
        if (result.check->local || !is_told_to(result, kind_of(a.installation.appliance))) {
            continue;
        }
        for (const Asked& asked : result.asked) {
            const auto same = std::find_if(list.begin(), list.end(), [&](const Requirement& r) {
                return r.first().words == asked.words;
            });
            Requirement& one = same == list.end() ? list.emplace_back() : *same;
            one.places.push_back(&asked);
            if (one.by.empty() || one.by.back() != result.check) {
                one.by.push_back(result.check);
            }
        }
    }
    const auto key = [](const Requirement& r) {
        return std::tuple{order_of(r.first()), r.by.front()->severity};
    };
    std::stable_sort(list.begin(), list.end(), [&](const Requirement& x, const Requirement& y) {
        return key(x) < key(y);
    });
    return list;
}

/// "straight 1, straight 3"
std::string places_of(const Requirement& requirement) {
    std::string words;
    std::vector<std::string_view> said;
    for (const Asked* asked : requirement.places) {
        if (std::find(said.begin(), said.end(), asked->place) == said.end()) {
            said.emplace_back(asked->place);
            words += (words.empty() ? "" : ", ") + asked->place;
        }
    }
    return words;
}

/// "connector-clearance-single-wall; trade-pipe-distance, trade practice"
std::string rules_of(const Requirement& requirement) {
    std::string words;
    for (const fluewright::Check* check : requirement.by) {
        words += (words.empty() ? "" : "; ") + std::string{check->id};
        words += check->advice ? ", trade practice" : "";
    }
    return words;
}

std::string keys_of(const Requirement& requirement) {
    std::vector<std::string> keys;
    for (const Asked* asked : requirement.places) {
        keys.insert(keys.end(), asked->missing.begin(), asked->missing.end());
    }
    return keys_in_words(keys);
}

} // namespace

std::string how_to_ask_rules(const Assessment& a) {
    return a.body != nullptr && a.body->id == "none"
               ? "No rules are chosen: choose with --rules us, uk, ca, au or de, or `site.rules` "
                 "in the file."
               : std::string{};
}

std::string requirements_list(const Assessment& a, const Style& style) {
    const std::vector<Requirement> list = requirements_of(a);
    const bool no_body = a.body == nullptr || a.body->id == "none";
    std::string out = paragraph(
        fmt::format("Requirements along the run, before anything is built: {} that the file does "
                    "not decide; by {}. The listing and the makers' instructions come first.",
                    list.size() == 1 ? "1 thing" : fmt::format("{} things", list.size()),
                    no_body
                        ? "physics and trade practice"
                        : fmt::format("physics, trade practice and the rules of {}", a.body->name)),
        flush_left,
        style.width);
    if (const std::string how = how_to_ask_rules(a); !how.empty()) {
        out += paragraph(how, flush_left, style.width);
    }
    out += '\n';
    for (const Requirement& requirement : list) {
        out += paragraph(fmt::format("- {}: {} [{}]. Not in the file: {}.",
                                     places_of(requirement),
                                     requirement.first().words,
                                     rules_of(requirement),
                                     keys_of(requirement)),
                         {.first = 0, .rest = 2},
                         style.width);
    }
    return out;
}

} // namespace report

std::string requirements_text(const Assessment& a, const ReportOptions& options) {
    const Style& style = options.style;
    std::string out = report::requirements_list(a, style);
    out += report::cautions_in_short(kind_of(a.installation.appliance), style);
    return report::signed_off(std::move(out), options.version, options.file, style);
}

} // namespace fluewright
