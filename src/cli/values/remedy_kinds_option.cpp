#include "remedy_kinds_option.hpp"

#include "fluewright/core/name_list.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <charconv>

namespace fluewright::cli {
namespace {

Result<RemedyKind, std::string> kind_named(std::string_view word, const OptionInfo& option) {
    const auto rows = catalog::remedy_efforts();
    const auto row =
        std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.id == word; });
    if (row != rows.end()) {
        return static_cast<RemedyKind>(row - rows.begin());
    }
    std::vector<std::string_view> ids;
    std::string all;
    for (const catalog::RemedyEffort& effort : rows) {
        ids.push_back(effort.id);
        all += (all.empty() ? "" : ", ") + std::string{effort.id};
    }
    const auto near = nearest_word(word, ids);
    return Failure{
        std::string{option.name} + ": `" + std::string{word} + "` is no kind of change"
        + (near ? "; did you mean `" + std::string{*near} + "`?" : "; the kinds are " + all)};
}

} // namespace

Result<std::vector<RemedyKind>, std::string> read_remedy_kinds(const Context& context,
                                                               const OptionInfo& option) {
    std::vector<RemedyKind> kinds;
    for (const std::string& given : context.arguments.values(option)) {
        for (const std::string_view word : names_of_list(given)) {
            const auto kind = kind_named(word, option);
            if (!kind) {
                return Failure{kind.error()};
            }
            kinds.push_back(*kind);
        }
    }
    return kinds;
}

Result<std::optional<double>, std::string> read_budget(const Context& context) {
    if (!context.arguments.has(option::budget)) {
        return std::optional<double>{};
    }
    const std::string_view typed = context.arguments.value(option::budget);
    constexpr double most = 1e9;
    double value = 0.0;
    const auto [end, fault] = std::from_chars(typed.data(), typed.data() + typed.size(), value);
    if (fault != std::errc{} || end != typed.data() + typed.size()
        || !(value > 0.0 && value <= most)) {
        return Failure{"--budget: `" + std::string{typed}
                       + "` is no cost; write a number above 0 and up to 1000000000"};
    }
    return std::optional{value};
}

} // namespace fluewright::cli
