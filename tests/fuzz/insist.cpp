#include "cli/shell/run.hpp"
#include "io/input/json_document.hpp"
#include "takers.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <sstream>

using namespace fluewright;

namespace fuzz {

std::size_t pick(std::string_view text, std::size_t count) {
    return std::hash<std::string_view>{}(text) % count;
}

void insist(bool holds, std::string_view what, std::string_view text) {
    if (!holds) {
        std::fprintf(stderr,
                     "%.*s for the input:\n%.*s\n",
                     static_cast<int>(what.size()),
                     what.data(),
                     static_cast<int>(text.size()),
                     text.data());
        std::abort();
    }
}

void insist_visible(std::string_view written, std::string_view text) {
    insist(json::find_invalid_utf8(written) == std::string_view::npos,
           "an answer that is no UTF-8",
           text);
    std::string line{written};
    std::replace_if(
        line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
    insist(json::find_unprintable(line) == std::string_view::npos,
           "a character that steers the terminal",
           text);
}

void insist_solved(const Assessment& assessed, std::string_view text) {
    for (const StateResult& state : assessed.solution.states) {
        insist(state.status != Status::no_answer, "the solver gave up", text);
        insist(std::isfinite(state.draft_pa) && std::isfinite(state.gas_flow_kg_s)
                   && std::isfinite(state.flow.top_temperature_k),
               "a figure is not finite",
               text);
        for (const Station& station : state.stations) {
            insist(std::isfinite(station.gas_temperature_k) && std::isfinite(station.pressure_pa)
                       && std::isfinite(station.outer_wall_k),
                   "a station is not finite",
                   text);
        }
    }
}

std::string run_program(const std::vector<std::string>& arguments, std::string_view text) {
    cli::Environment environment;
    environment.variables["LANG"] = "C.UTF-8";
    std::istringstream in{std::string{text}};
    std::ostringstream out;
    std::ostringstream err;
    const int status = cli::run(arguments, environment, in, out, err);
    insist(status >= 0 && status <= 2, "exit status " + std::to_string(status), text);
    insist(status != 2 || !out.str().empty() || !err.str().empty(), "refused without a word", text);
    insist_visible(out.str(), text);
    insist_visible(err.str(), text);
    return out.str();
}

} // namespace fuzz
