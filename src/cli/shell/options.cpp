#include "options.hpp"

#include "fluewright/io/drawing/draw.hpp"

#include <array>

namespace fluewright::cli {
namespace {

constexpr std::array<std::string_view, 3> colors{"auto", "always", "never"};
constexpr std::array<std::string_view, 4> batch_formats{"table", "ndjson", "csv", "html"};
constexpr std::array<std::string_view, 4> chart_formats{"text", "json", "csv", "svg"};
constexpr std::array<std::string_view, 2> formats{"text", "json"};
constexpr std::array<std::string_view, 4> picture_formats{"text", "json", "svg", "html"};
constexpr std::array<std::string_view, 5> study_formats{"text", "json", "csv", "svg", "html"};
constexpr std::array<std::string_view, 3> table_formats{"text", "json", "csv"};
constexpr std::array<std::string_view, 3> methods{"physics", "en13384", "handbook"};
constexpr std::array<std::string_view, 2> bases{"as-built", "listing"};
constexpr std::array<std::string_view, 6> rule_bodies{"us", "uk", "ca", "au", "de", "none"};
constexpr std::array<std::string_view, 2> size_systems{"inch", "metric"};
constexpr std::array<std::string_view, 5> outcomes{"passing", "open", "failing", "short", "fault"};
constexpr std::array<std::string_view, 2> schemas{"installation", "result"};
constexpr std::array<std::string_view, 2> unit_systems{"us", "metric"};

} // namespace

namespace option {

constexpr OptionInfo ask{
    "--ask", "", "", "ask for one check after another, reading the answers line by line", {}};
constexpr OptionInfo basis{"--basis",
                           "",
                           "BASIS",
                           "as-built is the default; listing judges a gas appliance by the "
                           "appliance, air and fittings behind the fuel-gas tables",
                           bases};
constexpr OptionInfo batch_format{
    "--format",
    "",
    "FORMAT",
    "one line a record: table (the default), ndjson or csv; or html, a page "
    "about all",
    batch_formats};
constexpr OptionInfo budget{
    "--budget", "", "COST", "the most a plan may cost, in effort or in your prices", {}};
constexpr OptionInfo chart_format{
    "--format",
    "",
    "FORMAT",
    "what to write; text is the default, json and csv are in SI, svg is a chart",
    chart_formats};
constexpr OptionInfo color{
    "--color", "", "WHEN", "color in text; auto (the default) means on a terminal", colors};
constexpr OptionInfo condition{
    "--condition",
    "",
    "NAME",
    "the condition to draw, as check names it: \"low fire, frost\"; default by what is shown",
    {}};
constexpr OptionInfo details{"--details",
                             "",
                             "",
                             "everything: all weathers, the profile along the run, joints, parts, "
                             "every check, every size, what was assumed and understood",
                             {}};
constexpr OptionInfo fields{
    "--fields",
    "",
    "NAMES",
    "columns to write, separated by commas; `all` for every one, `help` lists them",
    {}};
constexpr OptionInfo force{
    "--force",
    "",
    "",
    "let --output write into a device or pipe, or replace an unfinished file of another run",
    {}};
constexpr OptionInfo format{
    "--format", "", "FORMAT", "what to write; text is the default, json is in SI", formats};
constexpr OptionInfo heights{"--heights",
                             "",
                             "RANGE",
                             "heights of the chimney top above the outlet to try, such as 3..7m:5",
                             {}};
constexpr OptionInfo help{"--help", "-h", "", "print this help", {}};
constexpr OptionInfo jobs{
    "--jobs", "-j", "N", "how many to work on at once; default all cores", {}};
constexpr OptionInfo json{"--json", "", "", "short for --format json", {}};
constexpr OptionInfo method{"--method",
                            "",
                            "METHOD",
                            "how to compute; physics is the default, en13384 the European "
                            "calculation, handbook the chimney equation, both term by term",
                            methods};
constexpr OptionInfo minutes{
    "--minutes", "", "N", "how long to look at; default until an hour after the fire", {}};
constexpr OptionInfo no_size_search{
    "--no-size-search", "", "", "do not look for a better pipe size", {}};
constexpr OptionInfo most{"--most", "", "N", "how many changes to show; default 5", {}};
constexpr OptionInfo only{"--only",
                          "",
                          "WHICH",
                          "write only these records: passing, open, which leaves what counts "
                          "undecided, or failing, which "
                          "means short or at fault",
                          outcomes};
constexpr OptionInfo output{
    "--output", "-o", "FILE", "write to FILE, whole or not at all, instead of the screen", {}};
constexpr OptionInfo only_kinds{
    "--only", "", "KIND,...", "try changes of these kinds only, such as raise-top", {}, 1, true};
constexpr OptionInfo over{"--over",
                          "",
                          "NAME=RANGE",
                          "a number and its values, such as outdoor=-20..15degC:8",
                          {},
                          1,
                          true};
constexpr OptionInfo pairs{
    "--pairs", "", "", "two changes together, even where one alone suffices", {}};
constexpr OptionInfo picture_format{"--format",
                                    "",
                                    "FORMAT",
                                    "what to write; text is the default, json is in SI, svg is a "
                                    "chart, html a page",
                                    picture_formats};
constexpr OptionInfo piece_prices{
    "--prices", "", "FILE", "prices of pieces and lengths; the cheapest choice is bought", {}};
constexpr OptionInfo price_template{
    "--price-template", "", "", "a list of what this run can ask for, to put prices in", {}};
constexpr OptionInfo profile{"--profile",
                             "",
                             "",
                             "pressure, gas and wall along the run, with the limits of the parts, "
                             "in place of the elevation",
                             {}};
constexpr OptionInfo prices{
    "--prices", "", "FILE", "rank by your own prices instead of effort", {}};
constexpr OptionInfo resume{
    "--resume",
    "",
    "",
    "go on where an interrupted run of the same command with --output ended",
    {}};
constexpr OptionInfo schema_of{"--of",
                               "",
                               "WHAT",
                               "what it describes: installation, the input file (the default), or "
                               "result, the answers in JSON",
                               schemas};
constexpr OptionInfo size{
    "--size", "", "", "look for the pipe size of each, too, which takes ten times as long", {}};
constexpr OptionInfo summary{
    "--summary",
    "",
    "",
    "say at the end, on standard error, what share passes and what is found most often",
    {}};
constexpr OptionInfo values{"--values",
                            "",
                            "NAMES",
                            "numbers of each installation to write beside the answers, in SI, by "
                            "the names vary takes, separated by commas: outdoor,height",
                            {}};
constexpr OptionInfo rules{"--rules",
                           "",
                           "BODY",
                           "rules of installation to check the file against; default what the file "
                           "says, else us with US units",
                           rule_bodies};
constexpr OptionInfo requirements{
    "--requirements",
    "",
    "",
    "only what the checks require where the file does not say, a line each along the run",
    {}};
constexpr OptionInfo require{
    "--require",
    "",
    "LIST",
    "what has to be decided and pass: fire, draft, reloading, upkeep, separated by commas; default "
    "fire,draft, "
    "and reloading where the door smokes opened less than a quarter",
    {}};
constexpr OptionInfo samples{
    "--samples", "", "N", "runs over the values with a \u00b1; default 2000", {}};
constexpr std::array<std::string_view, 2> sequences{"latin-hypercube", "sobol"};
constexpr OptionInfo sequence{"--sequence",
                              "",
                              "KIND",
                              "how samples are spread; default latin-hypercube; sobol goes on "
                              "where fewer samples ended",
                              sequences};
constexpr OptionInfo seed{"--seed",
                          "",
                          "N",
                          "where the random draws start; default 1; the same seed, the same answer",
                          {}};
constexpr OptionInfo show{"--show",
                          "",
                          "WHAT",
                          "what the colors tell: temperature of the gas (the default), surface of "
                          "the pipe, pressure, creosote, or the cut-list",
                          show_words};
constexpr OptionInfo separate{"--separate", "", "", "connector and chimney may differ in size", {}};
constexpr OptionInfo sizes{
    "--sizes", "", "SYSTEM", "trade sizes to choose from; default by the units", size_systems};
constexpr OptionInfo spread_samples{
    "--samples", "", "N", "N samples spread evenly in place of every combination", {}};
constexpr OptionInfo step{
    "--step", "", "SECONDS", "greatest step in time; default 20 s, any is stable", {}};
constexpr OptionInfo from_box{
    "--from-box", "", "", "what the pieces at hand give alone, and what is short", {}};
constexpr OptionInfo stock{
    "--stock",
    "",
    "FILE",
    "pipe and fittings at hand, as {\"stock\": [{\"wall\": \"single-wall steel\", \"length\": "
    "\"1 m\", \"count\": 2}]}; they are used first",
    {}};
constexpr OptionInfo study_format{"--format",
                                  "",
                                  "FORMAT",
                                  "what to write; text is the default, json and csv are in SI, svg "
                                  "is a chart, html a page",
                                  study_formats};
constexpr OptionInfo thermometer{
    "--thermometer", "", "", "list a thermometer of the kind that reads on the pipe", {}};
constexpr OptionInfo table_format{"--format",
                                  "",
                                  "FORMAT",
                                  "what to write; text is the default, json and csv are in SI",
                                  table_formats};
constexpr OptionInfo units{
    "--units", "", "SYSTEM", "units of text; default those the file uses most", unit_systems};
constexpr OptionInfo version{"--version", "", "", "print the version", {}};
constexpr OptionInfo without{"--without",
                             "",
                             "KIND,...",
                             "leave changes of these kinds out, such as lower-door-opening",
                             {},
                             1,
                             true};
constexpr OptionInfo write_plan{"--write-plan",
                                "",
                                "N FILE",
                                "write the installation with change number N made to FILE",
                                {},
                                2};

} // namespace option

std::span<const OptionInfo* const> common_options() {
    static constexpr std::array<const OptionInfo*, 2> rows{&option::color, &option::help};
    return rows;
}

std::span<const OptionInfo* const> all_options() {
    // One a line, so that two changes seldom meet.
    // clang-format off
    static constexpr std::array rows{
        &option::ask,
        &option::basis,
        &option::batch_format,
        &option::budget,
        &option::chart_format,
        &option::color,
        &option::condition,
        &option::details,
        &option::fields,
        &option::force,
        &option::format,
        &option::from_box,
        &option::heights,
        &option::help,
        &option::jobs,
        &option::json,
        &option::method,
        &option::minutes,
        &option::most,
        &option::no_size_search,
        &option::only,
        &option::only_kinds,
        &option::output,
        &option::over,
        &option::pairs,
        &option::picture_format,
        &option::piece_prices,
        &option::plan_ceiling,
        &option::plan_collar,
        &option::plan_collar_height,
        &option::plan_distance,
        &option::plan_entry,
        &option::plan_fire,
        &option::plan_flue,
        &option::plan_front,
        &option::plan_heater,
        &option::plan_pitch,
        &option::plan_ridge,
        &option::plan_clearance,
        &option::plan_pass,
        &option::plan_roof,
        &option::plan_top,
        &option::plan_way,
        &option::price_template,
        &option::prices,
        &option::profile,
        &option::require,
        &option::requirements,
        &option::resume,
        &option::rules,
        &option::samples,
        &option::schema_of,
        &option::seed,
        &option::separate,
        &option::sequence,
        &option::show,
        &option::size,
        &option::sizes,
        &option::spread_samples,
        &option::step,
        &option::stock,
        &option::study_format,
        &option::summary,
        &option::table_format,
        &option::thermometer,
        &option::units,
        &option::values,
        &option::version,
        &option::without,
        &option::write_plan};
    // clang-format on
    return rows;
}

} // namespace fluewright::cli
