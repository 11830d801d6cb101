#include "check_parts.hpp"
#include "fluewright/io/text/text_layout.hpp"
#include "fluewright/io/text/text_table.hpp"
#include "trade_text.hpp"

#include <algorithm>
#include <charconv>
#include <fmt/core.h>
#include <utility>

namespace fluewright::report {
namespace {

constexpr Indent listed{.first = 2, .rest = 4};

/// A key of the run and the numbers of its parts, or a key elsewhere.
struct KeyInWords {
    std::string key;
    std::vector<int> parts;
};

/// Entries of a list are counted from 1: "site.roof.near[1].distance".
std::string dotted(std::string_view pointer) {
    std::string text;
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const std::string_view step = pointer.substr(0, pointer.find('/'));
        pointer.remove_prefix(step.size());
        int index = 0;
        const auto read = std::from_chars(step.data(), step.data() + step.size(), index);
        if (read.ec == std::errc{} && read.ptr == step.data() + step.size()) {
            text += fmt::format("[{}]", index + 1);
        } else {
            text += (text.empty() ? "" : ".") + std::string{step};
        }
    }
    return text;
}

KeyInWords key_of(std::string_view pointer) {
    constexpr std::string_view run = "/run/";
    if (!pointer.starts_with(run)) {
        return {dotted(pointer), {}};
    }
    const std::string_view rest = pointer.substr(run.size());
    int index = 0;
    const auto end = std::from_chars(rest.data(), rest.data() + rest.size(), index).ptr;
    const auto used = static_cast<std::size_t>(end - rest.data());
    return {dotted(rest.substr(used)), {index + 1}};
}

std::string numbers_text(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        text += i == 0 ? "" : i + 1 == numbers.size() ? " and " : ", ";
        text += std::to_string(numbers[i]);
    }
    return text;
}

/// Figure and limit of a result that has no words of its own.
std::string figures_of(const CheckResult& result, const Style& style) {
    if (!result.figure) {
        return std::string{name(result.outcome)};
    }
    std::string words = format_quantity(*result.figure, result.kind, style.units);
    if (result.limit) {
        words += ", limit " + format_quantity(*result.limit, result.kind, style.units);
    }
    return words;
}

std::string result_words(const CheckResult& result, const Style& style) {
    std::string words = fmt::format("{}: {}{}{}: ",
                                    name(result.outcome),
                                    result.check->id,
                                    result.place.empty() ? "" : ", " + result.place,
                                    result.state.empty() ? "" : " (" + result.state + ')');
    if (!result.message.empty()) {
        return words + result.message;
    }
    return words
           + (result.outcome == CheckOutcome::does_not_apply
                  ? fmt::format("for {}.", result.check->applies)
                  : figures_of(result, style) + '.');
}

/// What would be asked, and the keys that are missing.
std::string open_words(const CheckResult& result) {
    return fmt::format("- {}, {}: {} [{}].",
                       keys_in_words(result.missing),
                       result.check->id,
                       result.check->rule,
                       origin_of(*result.check));
}

/// Open checks of fire and carbon monoxide with what they ask; of the others the keys only, but
/// with details.
std::string left_open(const Assessment& a, const Style& style, bool details) {
    std::string out;
    std::vector<std::string> other_keys;
    for (const CheckResult& result : a.checks) {
        if (result.outcome != CheckOutcome::undetermined) {
            continue;
        }
        if (details || result.check->severity == Severity::danger) {
            out += paragraph(open_words(result), listed, style.width);
        } else {
            other_keys.insert(other_keys.end(), result.missing.begin(), result.missing.end());
        }
    }
    if (!out.empty()) {
        out = paragraph("Undetermined, because the file does not say; asked is:",
                        {.first = 2, .rest = 2},
                        style.width)
              + out;
    }
    if (!other_keys.empty()) {
        out +=
            paragraph(fmt::format("What would decide the others: {}.", keys_in_words(other_keys)),
                      {.first = 2, .rest = 2},
                      style.width);
    }
    return out;
}

} // namespace

std::string keys_in_words(const std::vector<std::string>& pointers) {
    std::vector<KeyInWords> keys;
    for (const std::string& pointer : pointers) {
        const KeyInWords key = key_of(pointer);
        const auto known = std::find_if(keys.begin(), keys.end(), [&](const KeyInWords& k) {
            return k.key == key.key && k.parts.empty() == key.parts.empty();
        });
        if (known == keys.end()) {
            keys.push_back(key);
        } else if (!key.parts.empty()
                   && std::find(known->parts.begin(), known->parts.end(), key.parts.front())
                          == known->parts.end()) {
            known->parts.push_back(key.parts.front());
        }
    }
    std::string text;
    for (KeyInWords& key : keys) {
        std::sort(key.parts.begin(), key.parts.end());
        const std::string_view of = key.parts.size() == 1 ? " of part " : " of parts ";
        text += fmt::format("{}`{}`{}{}",
                            text.empty() ? "" : ", ",
                            key.key,
                            key.parts.empty() ? "" : of,
                            numbers_text(key.parts));
    }
    return text;
}

std::string checks_text(const Assessment& a, const Style& style, bool details) {
    if (a.body == nullptr) {
        return {};
    }
    const bool no_body = a.body->id == "none";
    std::string out = heading("Checks", style);
    const std::string held =
        no_body ? "physics and trade practice; no body of rules was asked for (--rules us, uk, ca, "
                  "au or de)"
                : fmt::format("physics, trade practice and the rules of {}", a.body->name);
    out += paragraph(
        fmt::format("Held against {}: {} not met, {} undetermined, {} met, {} do not apply. Met "
                    "means that a figure of this file meets a figure of a check; {}. The listing "
                    "and instructions of heater and pipe come first, then local law, then these.",
                    held,
                    count_of(a.checks, CheckOutcome::not_met),
                    count_of(a.checks, CheckOutcome::undetermined),
                    count_of(a.checks, CheckOutcome::met),
                    count_of(a.checks, CheckOutcome::does_not_apply),
                    no_body ? "who decides on the spot is named with each body of rules"
                            : fmt::format("{} decides", a.body->decides)),
        {.first = 2, .rest = 2},
        style.width);
    out += left_open(a, style, details);
    if (details) {
        for (const CheckOutcome outcome : {CheckOutcome::met, CheckOutcome::does_not_apply}) {
            for (const CheckResult& result : a.checks) {
                if (result.outcome == outcome) {
                    out += paragraph(result_words(result, style), listed, style.width);
                }
            }
        }
    }
    return out;
}

} // namespace fluewright::report
