#pragma once

#include <cstddef>
#include <span>
#include <string_view>

/// The table of options. Parser, help and error texts are made from these rows; a command names the
/// rows it takes.
namespace fluewright::cli {

struct OptionInfo {
    std::string_view name;       ///< "--format"
    std::string_view short_name; ///< "-o", or empty
    std::string_view value_name; ///< "FILE"; empty for a flag
    std::string_view text;       ///< what it does, for help
    std::span<const std::string_view> choices;
    std::size_t values{1}; ///< how many it takes, where it takes any
    bool repeats{false};   ///< may be given more than once, and every time counts

    [[nodiscard]] bool takes_value() const { return !value_name.empty(); }
};

namespace option {
extern const OptionInfo ask;
extern const OptionInfo basis;
extern const OptionInfo batch_format;
extern const OptionInfo budget;
extern const OptionInfo chart_format;
extern const OptionInfo color;
extern const OptionInfo condition;
extern const OptionInfo details;
extern const OptionInfo requirements;
extern const OptionInfo fields;
extern const OptionInfo force;
extern const OptionInfo format;
extern const OptionInfo from_box;
extern const OptionInfo heights;
extern const OptionInfo help;
extern const OptionInfo jobs;
extern const OptionInfo json;
extern const OptionInfo method;
extern const OptionInfo minutes;
extern const OptionInfo no_size_search;
extern const OptionInfo most;
extern const OptionInfo size;
extern const OptionInfo summary;
extern const OptionInfo values;
extern const OptionInfo only;
extern const OptionInfo output;
extern const OptionInfo only_kinds;
extern const OptionInfo over;
extern const OptionInfo pairs;
extern const OptionInfo picture_format;
extern const OptionInfo piece_prices;
extern const OptionInfo plan_ceiling;
extern const OptionInfo plan_collar;
extern const OptionInfo plan_collar_height;
extern const OptionInfo plan_distance;
extern const OptionInfo plan_entry;
extern const OptionInfo plan_fire;
extern const OptionInfo plan_flue;
extern const OptionInfo plan_front;
extern const OptionInfo plan_heater;
extern const OptionInfo plan_pitch;
extern const OptionInfo plan_ridge;
extern const OptionInfo plan_clearance;
extern const OptionInfo plan_pass;
extern const OptionInfo plan_roof;
extern const OptionInfo plan_top;
extern const OptionInfo plan_way;
extern const OptionInfo profile;
extern const OptionInfo price_template;
extern const OptionInfo prices;
extern const OptionInfo require;
extern const OptionInfo resume;
extern const OptionInfo rules;
extern const OptionInfo separate;
extern const OptionInfo samples;
extern const OptionInfo schema_of;
extern const OptionInfo seed;
extern const OptionInfo sequence;
extern const OptionInfo show;
extern const OptionInfo sizes;
extern const OptionInfo spread_samples;
extern const OptionInfo step;
extern const OptionInfo stock;
extern const OptionInfo study_format;
extern const OptionInfo table_format;
extern const OptionInfo thermometer;
extern const OptionInfo units;
extern const OptionInfo version;
extern const OptionInfo without;
extern const OptionInfo write_plan;
} // namespace option

/// The options every command takes.
[[nodiscard]] std::span<const OptionInfo* const> common_options();

/// Every row, by name.
[[nodiscard]] std::span<const OptionInfo* const> all_options();

} // namespace fluewright::cli
