#include "fluewright/advice/assessment.hpp"
#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/advice/sizing/size_table.hpp"
#include "fluewright/core/ordered_pipeline.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/drawing/draw.hpp"
#include "fluewright/io/input/json_reader.hpp"
#include "fluewright/io/json/json_writer.hpp"
#include "fluewright/io/json/report_json.hpp"
#include "fluewright/io/page/report_page.hpp"
#include "fluewright/io/report/report_text.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "fluewright/model/states/states.hpp"
#include "random_installation.hpp"
#include "timing.hpp"
#include "typical.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

/// How long the parts of the calculation take, on one core. `bench` prints a table, `bench --json`
/// the same for programs, `bench --kin` only what couples flow, leaks and house, `bench --records
/// plain 100` the plain run (or a kin of it, by its id) as lines for `batch`, whose instructions
/// valgrind counts. A new figure is one more line in measure().
namespace fluewright::bench {
namespace {

struct Figure {
    std::string_view id;
    std::string_view what;
    double microseconds;
};

template <class Work>
Figure timed(std::string_view id, std::string_view what, const Work& work) {
    return {id, what, 1e6 * seconds_per_call(work)};
}

/// Microseconds a record through the pipeline that a batch uses.
Figure
batch(std::string_view id, std::string_view what, const BatchRecord& record, unsigned workers) {
    constexpr std::size_t packs = 64; // the last ones leave a worker idle
    constexpr std::size_t records_in_pack = 32;
    const BatchColumns columns = default_batch_columns();
    const double seconds = seconds_per_call([&] {
        std::size_t left = packs;
        run_ordered<std::size_t>(
            {.workers = workers, .most_in_flight = 4 * workers},
            [&] { return left > 0 ? std::optional{left--} : std::nullopt; },
            [&](std::size_t) {
                std::string lines;
                for (std::size_t i = 0; i < records_in_pack; ++i) {
                    append_ndjson(assess_record(record), columns, lines);
                }
                return lines;
            },
            [](const std::string& lines) {
                keep(lines);
                return true;
            });
    });
    return {id, what, 1e6 * seconds / static_cast<double>(packs * records_in_pack)};
}

/// Every column, and numbers and words of the file beside them.
BatchColumns all_columns(const BatchAsked& asked) {
    BatchColumns columns;
    for (const auto& column : batch_columns()) {
        columns.answers.push_back(&column);
    }
    columns.values = asked.values;
    return columns;
}

BatchAsked asked_of_all() {
    BatchAsked asked;
    for (const std::string_view name : {"outdoor", "height", "diameter", "moisture", "fuel"}) {
        auto value = batch_value(name);
        if (value) {
            asked.values.push_back(*value);
        }
    }
    return asked;
}

/// A record of every kin of the typical run, beside the plain one.
void measure_kin(const Installation& plain, std::vector<Figure>& figures) {
    const auto record = [&](std::string_view id, std::string_view what, const Installation& one) {
        if (!resolve(one)) {
            fmt::print(stderr, "bench: {} cannot be resolved\n", what);
            std::exit(4);
        }
        const std::string text = write_installation(one);
        const BatchRecord read{.number = 1, .source = "<stdin>", .line = 1, .text = text};
        figures.push_back(timed(id, what, [&] { keep(assess_record(read)); }));
    };
    record("record_plain", "record: the plain run", plain);
    for (const Kin& kin : kin_of_typical()) {
        record(kin.id, kin.what, kin.installation);
    }
}

/// Random installations of the property generator, all states: mean and worst.
void measure_random(std::vector<Figure>& figures) {
    constexpr std::uint64_t count = 400;
    double sum_us = 0.0;
    double worst_us = 0.0;
    std::size_t solved = 0;
    for (std::uint64_t seed = 1; seed <= count; ++seed) {
        const auto made = resolve(property::random_installation(seed));
        if (!made) {
            continue;
        }
        const double us = 1e6 * seconds_once([&] { keep(solve(*made, Detail::totals)); });
        sum_us += us;
        worst_us = std::max(worst_us, us);
        ++solved;
    }
    figures.push_back(
        {"random_mean", "random installation, mean", sum_us / static_cast<double>(solved)});
    figures.push_back({"random_worst", "random installation, worst", worst_us});
}

std::vector<Figure> measure(const Installation& written, const Case& made) {
    const Surroundings air = surroundings_of(made, 0, Fire::burning);
    const Surroundings other_air = surroundings_of(made, made.weathers.size() - 1, Fire::burning);
    const FlueModel model(made, air);
    const Firing& high = made.appliance.high;
    const GasStream stream{.gas = GasChoice::high_fire,
                           .air_share = 0.0,
                           .flow_kg_s = high.gas_flow_kg_s,
                           .temperature_k = high.gas_temperature_k};
    const Section& chimney = made.sections[made.sections.size() - 2];
    const WallPlace place{.wall = &made.walls[chimney.wall],
                          .inside_diameter_m = chimney.diameter_m,
                          .ambient_k = air.temperature_k.back(),
                          .air_pressure_pa = air.air_pressure_pa,
                          .wind_m_s = air.wind_m_s,
                          .height_m = chimney.length_m,
                          .upright = true,
                          .rectangular = false};
    const std::string text = write_installation(written);
    const BatchRecord record{.number = 1, .source = "<stdin>", .line = 1, .text = text};
    const BatchRow row = assess_record(record);
    const BatchAsked asked = asked_of_all();
    const BatchColumns columns = all_columns(asked);
    const BatchRow full_row = assess_record(record, asked);
    const auto assessed = assess(written, {});
    AssessOptions plain;
    plain.size_search = plain.spread = false;
    const GasFit& gas = made.gas_high().products();
    std::vector<Station> stations(model.station_count());

    const auto state = [&](StateKind kind) {
        return [&model, kind] { keep(solve_state(model, kind, Detail::totals)); };
    };
    return {
        timed("march", "march at fixed flow", [&] { keep(model.march(stream, 0.0)); }),
        timed("march_profile",
              "the same with its profile",
              [&] { keep(model.march(stream, 0.0, stations)); }),
        timed("wall", "curve of one wall", [&] { keep(WallHeat(place)); }),
        timed(
            "emission",
            "radiation of one gas in one pipe",
            [&] {
                keep(EmissionFit(
                    gas.carbon_dioxide, gas.water_vapour, chimney.diameter_m, air.air_pressure_pa));
            }),
        timed("model", "model of a case in one weather", [&] { keep(FlueModel(made, air)); }),
        timed("model_other_air",
              "model taken over to other weather",
              [&] { keep(FlueModel(model, other_air)); }),
        timed("high_fire", "state: high fire", state(StateKind::high_fire)),
        timed("free_burn", "state: air control open and capacity", state(StateKind::free_burn)),
        timed("door_open", "state: door open on embers", state(StateKind::door_open_embers)),
        timed("resolve", "resolve an installation", [&] { keep(resolve(written)); }),
        timed("solve", "all states, two weathers", [&] { keep(solve(made, Detail::totals)); }),
        timed("solve_profiles",
              "the same with all profiles",
              [&] { keep(solve(made, Detail::stations)); }),
        timed(
            "check", "check with size search, from the input", [&] { keep(assess(written, {})); }),
        timed("check_plain",
              "check alone: states, verdict, findings",
              [&] { keep(assess(written, plain)); }),
        timed("parse", "read the file's text", [&] { keep(read_installation(text)); }),
        timed("report_text", "write the report as text", [&] { keep(report_text(*assessed, {})); }),
        timed("report_json", "write the report as JSON", [&] { keep(report_json(*assessed, {})); }),
        timed("draw", "draw the elevation", [&] { keep(draw_run(written, *assessed, {})); }),
        timed("draw_profile",
              "draw the profile",
              [&] { keep(draw_profile(written, *assessed, nullptr)); }),
        timed("report_page", "write the page", [&] { keep(report_page(written, *assessed, {})); }),
        timed("improve_pairs",
              "improve --pairs on one core",
              [&] { keep(improve(written, {.pairs = true})); }),
        timed("size", "table of sizes", [&] { keep(tabulate_sizes(written, {})); }),
        timed("diagnose", "causes of what was seen", [&] { keep(diagnose(written)); }),
        timed("write",
              "write one line of a batch",
              [&] {
                  std::string line;
                  append_ndjson(row, default_batch_columns(), line);
                  keep(line);
              }),
        timed("write_all_columns",
              "write one with all columns, 5 values",
              [&] {
                  std::string line;
                  append_ndjson(full_row, columns, line);
                  keep(line);
              }),
        timed("batch_record_all_columns",
              "one record with all of them",
              [&] {
                  std::string line;
                  append_ndjson(assess_record(record, asked), columns, line);
                  keep(line);
              }),
        batch("batch_1_thread", "a record of a batch, 1 thread", record, 1),
        batch("batch_2_threads", "a record of a batch, 2 threads", record, 2),
        timed("batch_record",
              "one record of a batch, read to line",
              [&] {
                  std::string line;
                  append_ndjson(assess_record(record), default_batch_columns(), line);
                  keep(line);
              }),
    };
}

void print(const std::vector<Figure>& figures, bool as_json) {
    if (!as_json) {
        for (const Figure& f : figures) {
            fmt::print("{:<36} {:>10.2f} us\n", f.what, f.microseconds);
        }
        return;
    }
    fmt::print("{{\n");
    for (std::size_t i = 0; i < figures.size(); ++i) {
        fmt::print("  \"{}_us\": {:.3f}{}\n",
                   figures[i].id,
                   figures[i].microseconds,
                   i + 1 < figures.size() ? "," : "");
    }
    fmt::print("}}\n");
}

/// Seconds to read, resolve, prepare and march every installation of a file, one a line, on a high
/// fire: what the plain reference in tests/published/reference does with them.
int print_march_seconds(const char* path) {
    std::ifstream file(path);
    std::vector<std::string> lines;
    for (std::string line; std::getline(file, line);) {
        lines.push_back(line);
    }
    const double seconds = seconds_per_call([&] {
        for (const std::string& line : lines) {
            const auto written = read_installation(line);
            const auto made = written ? resolve(*written) : Failure{Faults{}};
            if (!made) {
                continue;
            }
            const Firing& high = made->appliance.high;
            const FlueModel model(*made, surroundings_of(*made, 0, Fire::burning));
            keep(model.solve({.gas = GasChoice::high_fire,
                              .air_share = 0.0,
                              .flow_kg_s = high.gas_flow_kg_s,
                              .temperature_k = high.gas_temperature_k}));
        }
    });
    fmt::print("{:.9f}\n", seconds);
    return lines.empty() ? 3 : 0;
}

/// The plain run, or a kin of it by its id, as a batch of so many records: what callgrind counts.
int print_records(std::string_view kin, std::size_t count) {
    Installation asked = typical();
    for (const Kin& one : kin_of_typical()) {
        if (one.id == kin) {
            asked = one.installation;
        }
    }
    const std::string line = write_installation_line(asked);
    for (std::size_t i = 0; i < count; ++i) {
        fmt::print("{}", line);
    }
    return 0;
}

} // namespace
} // namespace fluewright::bench

int main(int argument_count, char** arguments) {
    if (argument_count > 2 && std::string_view{arguments[1]} == "--march") {
        return fluewright::bench::print_march_seconds(arguments[2]);
    }
    if (argument_count > 3 && std::string_view{arguments[1]} == "--records") {
        return fluewright::bench::print_records(arguments[2],
                                                std::strtoul(arguments[3], nullptr, 10));
    }
    const std::string_view option = argument_count > 1 ? arguments[1] : "";
    const bool as_json = option == "--json";
    const bool only_kin = option == "--kin";
    const fluewright::Installation written = fluewright::bench::typical();
    const auto made = fluewright::resolve(written);
    if (!made) {
        fmt::print(stderr, "bench: the typical installation cannot be resolved\n");
        return 4;
    }
    std::vector<fluewright::bench::Figure> figures =
        only_kin ? std::vector<fluewright::bench::Figure>{}
                 : fluewright::bench::measure(written, *made);
    fluewright::bench::measure_kin(written, figures);
    fluewright::bench::measure_random(figures);
    fluewright::bench::print(figures, as_json);
    return 0;
}
