#include "one_input.hpp"

#include "fluewright/advice/assessment.hpp"
#include "fluewright/core/quantity/quantity.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/input/diagnostic.hpp"
#include "fluewright/io/input/json_reader.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>

using namespace fluewright;

namespace {

void insist(bool holds, const char* what, std::string_view bytes) {
    if (!holds) {
        std::fprintf(stderr,
                     "%s for the input:\n%.*s\n",
                     what,
                     static_cast<int>(bytes.size()),
                     bytes.data());
        std::abort();
    }
}

} // namespace

void take_one_input(std::string_view bytes) {
    for (const Kind kind : all_kinds()) {
        if (const Result<Quantity, QuantityError> quantity = parse_quantity(bytes, kind)) {
            insist(std::isfinite(quantity->value), "a quantity is not finite", bytes);
        }
    }
    // The same bytes as a record of a stream and as a file of a folder: a faulty one is asked for
    // its id.
    for (const std::size_t line : {0U, 7U}) {
        BatchRecord record;
        record.text = std::string{bytes};
        record.source = "fuzz.json";
        record.line = line;
        static_cast<void>(assess_record(record));
    }
    const ReadResult read = read_installation(bytes, "fuzz.json");
    if (!read) {
        insist(!read.error().empty(), "refused without a reason", bytes);
        static_cast<void>(diagnostics_text(read.error()));
        static_cast<void>(diagnostics_json(read.error(), "check", {}));
        return;
    }
    AssessOptions options;
    options.size_search = false;
    const Result<Assessment, Faults> assessed = assess(*read, options);
    if (!assessed) {
        insist(!assessed.error().empty(), "not resolved, without a reason", bytes);
        static_cast<void>(locate(assessed.error(), bytes, "fuzz.json"));
        return;
    }
    for (const StateResult& state : assessed->solution.states) {
        insist(state.status != Status::no_answer, "the solver gave up", bytes);
        insist(std::isfinite(state.draft_pa) && std::isfinite(state.gas_flow_kg_s)
                   && std::isfinite(state.flow.mouth_temperature_k),
               "a figure is not finite",
               bytes);
        for (const Station& station : state.stations) {
            insist(std::isfinite(station.gas_temperature_k) && std::isfinite(station.pressure_pa)
                       && std::isfinite(station.outer_wall_k),
                   "a station is not finite",
                   bytes);
        }
    }
}
