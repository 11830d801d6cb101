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

constexpr Indent inset{.first = 2, .rest = 4};
constexpr Indent inner{.first = 4, .rest = 4};

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

std::string origin(const catalog::Rule& rule) {
    return rule.source == "practice" || rule.source == "judgement"
               ? "common practice, no source"
               : fmt::format("{}, {}", rule.source, rule.mark);
}

std::string heading_of(const RuleResult& result, const Style& style) {
    const bool advice = result.rule->strength == "advice";
    const bool failed = result.outcome == RuleOutcome::not_met;
    return fmt::format("{} {}{}{}",
                       inked(failed ? "NOT MET" : name(result.outcome),
                             failed ? (advice ? Ink::warning : Ink::bad) : Ink::plain,
                             style),
                       result.rule->id,
                       advice ? " (advice)" : "",
                       result.place.empty() ? "" : ", " + result.place);
}

void add_result(const RuleResult& result, const Style& style, std::string& out) {
    out += "  " + heading_of(result, style) + '\n';
    std::string body =
        fmt::format("{}. Asked: {}. [{}]", result.message, result.rule->says, origin(*result.rule));
    if (!body.empty() && body.front() >= 'a' && body.front() <= 'z') {
        body.front() = static_cast<char>(body.front() - 'a' + 'A');
    }
    out += paragraph(body, inner, style.width);
    if (!result.rule->disagrees.empty()) {
        out += paragraph(
            fmt::format("Another source: {}.", result.rule->disagrees), inner, style.width);
    }
}

std::string left_open(const RuleReport& rules, const Style& style) {
    std::vector<std::string> missing;
    for (const RuleResult& result : rules.results) {
        if (result.outcome == RuleOutcome::cannot_tell) {
            missing.insert(missing.end(), result.missing.begin(), result.missing.end());
        }
    }
    if (missing.empty()) {
        return {};
    }
    return paragraph(fmt::format("What would decide the open ones: {}.", keys_in_words(missing)),
                     inset,
                     style.width);
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

std::string rules_text(const RuleReport& rules, const Style& style, bool details) {
    if (rules.results.empty()) {
        return {};
    }
    std::string out = heading(fmt::format("Rules of installation: {}", rules.body->name), style);
    out += paragraph(
        fmt::format("{} not met, {} open, {} met, {} do not apply. Met means that a figure of this "
                    "file meets a figure of a rule; {} decides. The listing and instructions of "
                    "heater and pipe come first, then local law, then these.",
                    rules.count(RuleOutcome::not_met),
                    rules.count(RuleOutcome::cannot_tell),
                    rules.count(RuleOutcome::met),
                    rules.count(RuleOutcome::does_not_apply),
                    rules.body->decides),
        inset,
        style.width);
    // What a rule asks goes before what is only advised.
    for (const std::string_view strength : {"rule", "advice"}) {
        for (const RuleResult& result : rules.results) {
            if (result.outcome == RuleOutcome::not_met && result.rule->strength == strength) {
                add_result(result, style, out);
            }
        }
    }
    out += left_open(rules, style);
    if (details) {
        for (const RuleOutcome outcome : {RuleOutcome::met, RuleOutcome::does_not_apply}) {
            for (const RuleResult& result : rules.results) {
                if (result.outcome == outcome) {
                    out += paragraph(fmt::format("{}: {}{}: {}",
                                                 name(outcome),
                                                 result.rule->id,
                                                 result.place.empty() ? "" : ", " + result.place,
                                                 result.message),
                                     inset,
                                     style.width);
                }
            }
        }
    }
    return out;
}

} // namespace fluewright::report
