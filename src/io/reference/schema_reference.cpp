#include "fluewright/io/reference/schema.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/structure.hpp"
#include "schema_text.hpp"

#include <algorithm>
#include <fmt/core.h>

namespace fluewright {

namespace {

constexpr std::string_view introduction =
    R"(# The input file

One file describes one installation. It is JSON in UTF-8, with comments (`//` to the end of the line,
`/* */`) and without commas after the last entry. This page is made from the table the reader works
by; do not edit it by hand.

- A value with a unit is a text: `"150 mm"`, `"6 in"`, `"3 ft 4 1/2 in"`, `"20 degF"`. A bare number
  where a unit is due is an error. A plain number stands where the table shows one.
- A spread may follow a value: `"4.2 m ± 0.1 m"` or `"12 Pa ± 10 %"`. `check` then
  tells how far each margin holds (uniform over the limits); the limits must themselves be allowed.
- A value that changes with the fire is written once, for high fire, or as
  `{"low": "1.1 kg/h", "high": "3.8 kg/h"}`.
- A part of the run that leaves out a key marked *carries on* has the value of the part before it.
- Keys and words are checked. An unknown one is an error that names the nearest known one; two equal
  keys in one object are an error too.
- At most 16 MB and 32 levels of nesting, here as in a record of a batch; 1,000 bytes in a text or a
  name. A list has as many entries as its row says.
- `sweep` solves at most 20,000 points, `vary` writes at most 100,000,000 variations, `compare` takes
  100 files, `check` draws 1,000,000 samples of a spread.
)";

class Reference {
public:
    template <class T>
    void object(const std::string& path, std::string_view meaning, T& object) {
        text_ += fmt::format(
            "\n## {}\n\n{}\n", path.empty() ? "The whole file" : '`' + path + '`', meaning);
        text_ += "\n| key | meaning | example | allowed | left out |\n"
                 "| --- | --- | --- | --- | --- |\n";
        for (const auto& field : fields<T>()) {
            row(field);
        }
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            text_ +=
                fmt::format("| `{}` | {} | see below | {} | {} |\n",
                            child.key,
                            child.meaning,
                            child.most > 0 ? fmt::format("at most {} entries", child.most) : "",
                            child.required ? "an error" : "");
            static_cast<void>(member);
        });
        for_each_child(object, [&](const ChildInfo& child, auto& member) {
            const auto below = (path.empty() ? "" : path + '.') + std::string{child.key};
            list_or_object(below, child.meaning, member);
        });
    }

    void units() {
        text_ += "\n## Units\n\n| kind | units | example |\n| --- | --- | --- |\n";
        for (const auto kind : kinds_) {
            text_ += fmt::format(
                "| {} | {} | `{}` |\n", name(kind), accepted_units(kind), example(kind));
        }
    }

    [[nodiscard]] std::string& text() { return text_; }

private:
    template <class T>
    void list_or_object(const std::string& path, std::string_view meaning, T& member) {
        object(path, meaning, member);
    }

    template <class T>
    void
    list_or_object(const std::string& path, std::string_view meaning, std::vector<T>& /*member*/) {
        T entry;
        object(path + (Named<T> ? ".NAME" : "[]"), meaning, entry);
    }

    template <class T>
    void row(const Field<T>& field) {
        const auto& info = field.info;
        std::string meaning{info.meaning};
        if (info.parts != part_kind::any) {
            meaning += fmt::format(" For: {}.", part_kind::list(info.parts));
        }
        const bool flag = std::holds_alternative<Flag T::*>(field.member);
        const bool quantity = takes_number(field);
        const bool bare = flag || (quantity && info.kind == Kind::number);
        std::string allowed;
        if (quantity) {
            allowed = fmt::format(
                "{}: {}", info.whole ? "whole number" : name(info.kind), range_in_words(info));
            if (info.kind != Kind::number
                && std::find(kinds_.begin(), kinds_.end(), info.kind) == kinds_.end()) {
                kinds_.push_back(info.kind);
            }
            if (std::holds_alternative<HighLow T::*>(field.member)) {
                allowed += "; low and high";
            }
        } else {
            allowed = flag ? "true or false" : words(info);
        }
        auto left_out = info.required     ? "an error"
                        : info.carries_on ? "carries on"
                                          : default_in_words(info);
        text_ +=
            fmt::format("| `{}` | {} | `{}` | {} | {} |\n",
                        info.key,
                        meaning,
                        bare ? std::string{info.example} : '"' + std::string{info.example} + '"',
                        allowed,
                        left_out);
    }

    static std::string words(const FieldInfo& info) {
        switch (info.words) {
        case Words::choices:
            return joined(info.choices);
        case Words::fuels:
            return "a name in `fuels` or the catalog of fuels";
        case Words::walls:
            return "a name in `walls` or the catalog of walls";
        case Words::clay_liners:
            return "a clay liner of the catalog";
        case Words::fittings:
            return "a name in `fittings` or the catalog of fittings";
        case Words::materials:
            return "a material of the catalog, or air gap";
        case Words::any_text:
            break;
        }
        return info.may_be_whole_number ? "a text or a whole number" : "any text";
    }

    std::string text_{introduction};
    std::vector<Kind> kinds_;
};

} // namespace

std::string input_reference_markdown() {
    Reference reference;
    Installation installation;
    reference.object("", "What stands in the outermost braces.", installation);
    reference.units();
    return std::move(reference.text());
}

} // namespace fluewright
