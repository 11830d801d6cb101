#include "cli/batch/batch_output.hpp"
#include "cli/batch/record_source.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/count_option.hpp"
#include "cli/shell/files.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/progress.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/ordered_pipeline.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <array>
#include <csignal>
#include <ctime>
#include <fmt/format.h>
#include <iostream>
#include <poll.h>
#include <unistd.h>

namespace fluewright::cli {
namespace {

/// Records go through the pipeline in packs, so that handing them over costs little.
constexpr std::size_t pack_size = 32;
constexpr std::size_t packs_in_flight_per_worker = 4;
constexpr int status_of_signal = 128; ///< plus its number, as shells have it

/// The number of the signal that asks to stop, and when it came. A handler can reach nothing else.
volatile std::sig_atomic_t stop_signal = 0;
volatile std::sig_atomic_t stop_second = 0;

extern "C" void note_signal(int number) {
    // Whoever stops a group of processes may send the same signal twice at once; one that comes
    // later is from somebody who will not wait, and ends the program.
    constexpr int patience_s = 1;
    timespec now{};
    ::clock_gettime(CLOCK_MONOTONIC, &now);
    const auto second = static_cast<std::sig_atomic_t>(now.tv_sec);
    if (stop_signal == 0) {
        stop_signal = number;
        stop_second = second;
    } else if (second - stop_second > patience_s) {
        ::signal(number, SIG_DFL);
        ::raise(number);
    }
}

/// Takes the signals while a batch runs and gives them back.
class SignalWatch {
public:
    SignalWatch() {
        stop_signal = 0;

        struct sigaction action {};

        action.sa_handler = note_signal;
        ::sigemptyset(&action.sa_mask);
        ::sigaction(SIGINT, &action, &interrupt_before_);
        ::sigaction(SIGTERM, &action, &terminate_before_);
    }

    ~SignalWatch() {
        ::sigaction(SIGINT, &interrupt_before_, nullptr);
        ::sigaction(SIGTERM, &terminate_before_, nullptr);
    }

    SignalWatch(const SignalWatch&) = delete;
    SignalWatch& operator=(const SignalWatch&) = delete;

private:
    struct sigaction interrupt_before_ {};

    struct sigaction terminate_before_ {};
};

/// Waits until standard input has something, or a signal came. The signal may reach any thread, so
/// a read that waits would not be broken off by it.
bool wait_for_line(std::istream& in) {
    if (&in != &std::cin) {
        return true;
    }
    constexpr int look_again_ms = 100;
    while (stop_signal == 0 && in.rdbuf()->in_avail() <= 0) {
        pollfd input{.fd = STDIN_FILENO, .events = POLLIN, .revents = 0};
        if (::poll(&input, 1, look_again_ms) > 0) {
            break;
        }
    }
    return stop_signal == 0;
}

struct Wanted {
    BatchFormat format{BatchFormat::table};
    BatchColumns columns;
    std::string_view only;
    unsigned jobs{1};
};

struct Tally {
    std::size_t pass{};
    std::size_t short_of_draft{};
    std::size_t fault{};

    [[nodiscard]] std::size_t all() const { return pass + short_of_draft + fault; }

    void add(const Tally& other) {
        pass += other.pass;
        short_of_draft += other.short_of_draft;
        fault += other.fault;
    }
};

struct Pack {
    std::vector<BatchRecord> records;
    std::optional<double> share_done;
};

struct PackDone {
    std::string lines;
    Tally tally;
    std::optional<double> share_done;
};

/// The columns of --fields. A run that can be taken up again needs the number of the record.
Result<BatchColumns, std::string> columns_named(std::string_view names, bool to_file) {
    if (names.empty()) {
        return default_batch_columns();
    }
    BatchColumns chosen;
    std::vector<std::string_view> known;
    for (const results::ColumnInfo& column : batch_columns()) {
        known.push_back(column.key);
        if (names == "all" || (to_file && column.key == "record")) {
            chosen.push_back(&column);
        }
    }
    while (names != "all" && !names.empty()) {
        const std::size_t comma = std::min(names.find(','), names.size());
        const std::string_view name = names.substr(0, comma);
        names.remove_prefix(std::min(comma + 1, names.size()));
        const auto found = std::find(known.begin(), known.end(), name);
        if (found == known.end()) {
            const auto nearest = nearest_word(name, known);
            return Failure{fmt::format("`{}` is not a column; {}",
                                       name,
                                       nearest
                                           ? fmt::format("did you mean `{}`?", *nearest)
                                           : fmt::format("there are {}", fmt::join(known, ", ")))};
        }
        const results::ColumnInfo* column =
            &batch_columns()[static_cast<std::size_t>(found - known.begin())];
        if (std::find(chosen.begin(), chosen.end(), column) == chosen.end()) {
            chosen.push_back(column);
        }
    }
    return chosen;
}

Result<Wanted, std::string> wanted_of(const Context& context) {
    Wanted wanted;
    const std::string_view format = context.arguments.value(option::batch_format);
    wanted.format = format == "ndjson" ? BatchFormat::ndjson
                    : format == "csv"  ? BatchFormat::csv
                                       : BatchFormat::table;
    Result<BatchColumns, std::string> columns = columns_named(
        context.arguments.value(option::fields), context.arguments.has(option::output));
    if (!columns) {
        return Failure{std::move(columns).error()};
    }
    wanted.columns = std::move(columns).value();
    wanted.only = context.arguments.value(option::only);
    const auto jobs = read_jobs(context);
    if (!jobs) {
        return Failure{jobs.error()};
    }
    wanted.jobs = *jobs;
    return wanted;
}

bool is_wanted(const BatchRow& row, std::string_view only) {
    return only.empty() || (only == "failing" && row.outcome != Outcome::pass)
           || only == name(row.outcome);
}

PackDone work_on(const Pack& pack, const Wanted& wanted) {
    PackDone done;
    done.share_done = pack.share_done;
    for (const BatchRecord& record : pack.records) {
        const BatchRow row = assess_record(record);
        done.tally.pass += row.outcome == Outcome::pass ? 1U : 0U;
        done.tally.short_of_draft += row.outcome == Outcome::short_of_draft ? 1U : 0U;
        done.tally.fault += row.outcome == Outcome::fault ? 1U : 0U;
        if (!is_wanted(row, wanted.only)) {
            continue;
        }
        switch (wanted.format) {
        case BatchFormat::ndjson:
            append_ndjson(row, wanted.columns, done.lines);
            break;
        case BatchFormat::csv:
            append_csv(row, wanted.columns, done.lines);
            break;
        case BatchFormat::table:
            append_table_row(row, done.lines);
            break;
        }
    }
    return done;
}

void write_header(const Wanted& wanted, BatchOutput& output) {
    std::string header;
    if (wanted.format == BatchFormat::csv) {
        append_csv_header(wanted.columns, header);
    } else if (wanted.format == BatchFormat::table) {
        append_table_header(header);
    }
    output.write(header);
}

std::string summary(const Tally& tally, std::size_t before, double seconds) {
    std::string text = fmt::format("{} installations: {} pass, {} fall short, {} at fault",
                                   tally.all(),
                                   tally.pass,
                                   tally.short_of_draft,
                                   tally.fault);
    if (before > 0) {
        text += fmt::format("; {} were done before", before);
    }
    if (seconds > 1.0) {
        text += fmt::format("; {:.0f} a second", static_cast<double>(tally.all()) / seconds);
    }
    return text + '\n';
}

/// The columns with what they mean, for --fields help.
std::string columns_help() {
    std::string text;
    for (const results::ColumnInfo& column : batch_columns()) {
        const std::string_view unit = si_unit(column.kind);
        text += fmt::format("{}{}\n", column.key, column.by_default ? " *" : "");
        text += paragraph(unit.empty() ? std::string{column.meaning}
                                       : fmt::format("{} [{}]", column.meaning, unit),
                          {.first = 4, .rest = 4},
                          Style{}.width);
    }
    return text + "* written where --fields is not given\n";
}

int run_batch(const Context& context) {
    if (context.arguments.value(option::fields) == "help") {
        return write_answer(context, columns_help(), all_pass);
    }
    const Result<Wanted, std::string> wanted = wanted_of(context);
    if (!wanted) {
        return refuse(context, wrong_input, wanted.error());
    }
    Result<RecordSource, std::string> source =
        RecordSource::open(context.arguments.words, context.streams.in, wait_for_line);
    if (!source) {
        return refuse(context, no_access, source.error());
    }
    const std::string path{context.arguments.value(option::output)};
    const bool resume = context.arguments.has(option::resume);
    if (resume && path.empty()) {
        return refuse(context, wrong_input, "--resume goes with the --output of the run before");
    }
    Result<BatchOutput, std::string> output =
        path.empty()
            ? Result<BatchOutput, std::string>{BatchOutput{context.streams.out, wanted->format}}
            : BatchOutput::to_file(path, wanted->format, resume);
    if (!output) {
        return refuse(context, no_access, output.error());
    }

    const SignalWatch watch;
    Progress progress(context.streams.err, context.environment.error_is_terminal);
    Tally tally;
    bool written = true;
    if (output->wants_header()) {
        write_header(*wanted, *output);
    }
    const std::size_t before = output->records_before();
    const auto read = [&]() -> std::optional<Pack> {
        Pack pack;
        while (pack.records.size() < pack_size && stop_signal == 0) {
            std::optional<BatchRecord> record = source->next();
            if (!record) {
                break;
            }
            if (record->number > before) {
                pack.records.push_back(std::move(*record));
            }
        }
        pack.share_done = source->share_done();
        return pack.records.empty() ? std::nullopt : std::optional<Pack>{std::move(pack)};
    };
    run_ordered<Pack>(
        {.workers = wanted->jobs, .most_in_flight = packs_in_flight_per_worker * wanted->jobs},
        read,
        [&](const Pack& pack) { return work_on(pack, *wanted); },
        [&](const PackDone& done) {
            tally.add(done.tally);
            written = output->write(done.lines);
            progress.tell(tally.all(), done.share_done);
            return written;
        });
    progress.clear();
    if (stop_signal != 0) {
        output->mark_partial(before + tally.all());
        context.streams.err << "fluewright: interrupted; "
                            << summary(tally, before, progress.seconds());
        return status_of_signal + stop_signal;
    }
    if (!written || !output->finish()) {
        return refuse(context, no_access, "cannot write the answer");
    }
    context.streams.err << summary(tally, before, progress.seconds());
    if (source->unreadable()) {
        return refuse(context, no_access, "a file could not be read; its record says which");
    }
    return tally.fault > 0 ? wrong_input : tally.short_of_draft > 0 ? falls_short : all_pass;
}

constexpr std::array<const OptionInfo*, 6> batch_options{&option::batch_format,
                                                         &option::fields,
                                                         &option::only,
                                                         &option::jobs,
                                                         &option::output,
                                                         &option::resume};

} // namespace

extern const Command batch_command;
const Command batch_command{
    .name = "batch",
    .summary = "check many installations, one line each",
    .about =
        "Checks every installation of the files, folders and patterns given, or of standard input "
        "with one installation a line, on all cores, in the order given. A record at fault "
        "becomes a line that says so, and the rest goes on. Ends with status 1 when one falls "
        "short and 2 when one is at fault.",
    .word = {.name = "PATH...",
             .text = "files, folders or patterns; - reads standard input, one installation a line",
             .required = true,
             .many = true},
    .options = batch_options,
    .example = "fluewright batch layouts/ --format csv --output layouts.csv",
    .run = run_batch};

} // namespace fluewright::cli
