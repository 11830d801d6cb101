#include "options.hpp"

#include <array>

namespace fluewright::cli {
namespace {

constexpr std::array<std::string_view, 3> colors{"auto", "always", "never"};
constexpr std::array<std::string_view, 2> formats{"text", "json"};
constexpr std::array<std::string_view, 3> table_formats{"text", "json", "csv"};
constexpr std::array<std::string_view, 2> size_systems{"inch", "metric"};
constexpr std::array<std::string_view, 2> unit_systems{"us", "metric"};

} // namespace

namespace option {

constexpr OptionInfo color{
    "--color", "", "WHEN", "colour in text; auto (the default) means on a terminal", colors};
constexpr OptionInfo details{
    "--details", "", "", "add the profile along the run in every state, and every size tried", {}};
constexpr OptionInfo format{
    "--format", "", "FORMAT", "what to write; text is the default, json is in SI", formats};
constexpr OptionInfo help{"--help", "-h", "", "print this help", {}};
constexpr OptionInfo json{"--json", "", "", "short for --format json", {}};
constexpr OptionInfo no_size_search{
    "--no-size-search", "", "", "do not look for a better pipe size", {}};
constexpr OptionInfo output{
    "--output", "-o", "FILE", "write to FILE, whole or not at all, instead of the screen", {}};
constexpr OptionInfo sizes{
    "--sizes", "", "SYSTEM", "trade sizes to choose from; default by the units", size_systems};
constexpr OptionInfo table_format{"--format",
                                  "",
                                  "FORMAT",
                                  "what to write; text is the default, json and csv are in SI",
                                  table_formats};
constexpr OptionInfo units{
    "--units", "", "SYSTEM", "units of text; default those the file uses most", unit_systems};
constexpr OptionInfo version{"--version", "", "", "print the version", {}};

} // namespace option

std::span<const OptionInfo* const> common_options() {
    static constexpr std::array<const OptionInfo*, 2> rows{&option::color, &option::help};
    return rows;
}

std::span<const OptionInfo* const> all_options() {
    static constexpr std::array<const OptionInfo*, 11> rows{&option::color,
                                                            &option::details,
                                                            &option::format,
                                                            &option::help,
                                                            &option::json,
                                                            &option::no_size_search,
                                                            &option::output,
                                                            &option::sizes,
                                                            &option::table_format,
                                                            &option::units,
                                                            &option::version};
    return rows;
}

} // namespace fluewright::cli
