#include "cli/batch/batch_output.hpp"
#include "cli/batch/record_source.hpp"
#include "cli/batch/stop_signal.hpp"
#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "cli/values/count_option.hpp"
#include "cli/values/require_option.hpp"
#include "fluewright/core/nearest_word.hpp"
#include "fluewright/core/ordered_pipeline.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <iostream>

namespace fluewright::cli {
namespace {

/// Records go through the pipeline in packs, so that handing them over costs little.
constexpr std::size_t pack_size = 32;
constexpr std::size_t packs_in_flight_per_worker = 4;
constexpr int status_of_signal = 128; ///< plus its number, as shells have it

struct Wanted {
    BatchFormat format{BatchFormat::table};
    BatchColumns columns;
    std::string_view only;
    Required required;
    unsigned jobs{1};
};

struct Pack {
    std::vector<BatchRecord> records;
    std::optional<double> share_done;
    std::uint64_t input_sum{}; ///< over all records up to its last
};

struct PackDone {
    std::string lines;
    BatchProgress gain; ///< its input_sum is that of the pack
    std::optional<double> share_done;
    bool whole{true}; ///< false when it was broken off by a signal
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
    const auto required = required_of(context);
    if (!jobs || !required) {
        return Failure{!jobs ? jobs.error() : required.error()};
    }
    wanted.jobs = *jobs;
    wanted.required = *required;
    return wanted;
}

bool is_wanted(const BatchRow& row, std::string_view only) {
    return only.empty() || (only == "failing" && row.outcome != Outcome::pass)
           || only == name(row.outcome);
}

PackDone work_on(const Pack& pack, const Wanted& wanted) {
    PackDone done;
    done.share_done = pack.share_done;
    done.gain.input_sum = pack.input_sum;
    for (const BatchRecord& record : pack.records) {
        if (asked_to_stop()) {
            done.whole = false;
            return done;
        }
        const BatchRow row = assess_record(record, wanted.required);
        done.gain.records += 1;
        done.gain.pass += row.outcome == Outcome::pass ? 1U : 0U;
        done.gain.short_of_draft += row.outcome == Outcome::short_of_draft ? 1U : 0U;
        done.gain.fault += row.outcome == Outcome::fault ? 1U : 0U;
        done.gain.failed += row.outcome == Outcome::failed ? 1U : 0U;
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

std::string header_of(const Wanted& wanted) {
    std::string header;
    if (wanted.format == BatchFormat::csv) {
        append_csv_header(wanted.columns, header);
    } else if (wanted.format == BatchFormat::table) {
        append_table_header(header);
    }
    return header;
}

/// The command as far as the answer depends on it, and the version that gives it.
std::string command_of(const Wanted& wanted) {
    std::vector<std::string_view> columns;
    for (const auto* column : wanted.columns) {
        columns.push_back(column->key);
    }
    std::string command = fmt::format("fluewright {} batch --format {} --fields {}",
                                      version_number(),
                                      name(wanted.format),
                                      fmt::join(columns, ","));
    if (!wanted.only.empty()) {
        command += fmt::format(" --only {}", wanted.only);
    }
    if (wanted.required != Required{}) {
        command += fmt::format(" --require {}", list_of(wanted.required));
    }
    return command;
}

std::string summary(const BatchProgress& all, const BatchProgress& before, double seconds) {
    std::string text = fmt::format("{} installations: {} pass, {} fall short, {} at fault",
                                   all.records,
                                   all.pass,
                                   all.short_of_draft,
                                   all.fault);
    if (all.failed > 0) {
        text += fmt::format(", {} without an answer of the solver", all.failed);
    }
    if (before.records > 0) {
        text += fmt::format("; {} of them were done before", before.records);
    }
    if (seconds > 1.0) {
        text += fmt::format("; {:.0f} a second",
                            static_cast<double>(all.records - before.records) / seconds);
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

/// Takes the records out of their source in packs and sums them up; passes over those that an
/// earlier run has done, if they are the same.
class PackReader {
public:
    PackReader(RecordSource& source, const BatchProgress& before, bool sums)
        : source_(source), before_(before), sums_(sums) {}

    std::optional<Pack> next() {
        Pack pack;
        while (pack.records.size() < pack_size && !asked_to_stop() && !differs_) {
            std::optional<BatchRecord> record = source_.next();
            if (!record) {
                differs_ = differs_ || (taken_ < before_.records && !asked_to_stop());
                break;
            }
            if (sums_) {
                sum_.add(
                    fmt::format("{}:{}:{}:", record->source, record->line, record->text.size()));
                sum_.add(record->text);
            }
            ++taken_;
            if (taken_ > before_.records) {
                pack.records.push_back(std::move(*record));
            } else if (taken_ == before_.records) {
                differs_ = sum_.value() != before_.input_sum;
            }
        }
        pack.share_done = source_.share_done();
        pack.input_sum = sum_.value();
        return pack.records.empty() ? std::nullopt : std::optional<Pack>{std::move(pack)};
    }

    /// Whether the input is not that of the run before.
    [[nodiscard]] bool differs() const { return differs_; }

private:
    RecordSource& source_;
    const BatchProgress& before_;
    bool sums_;
    TextSum sum_;
    std::uint64_t taken_{};
    bool differs_{};
};

Result<BatchOutput, Refusal>
output_of(const Context& context, const Wanted& wanted, const FilesRead& files_read) {
    const bool resume = context.arguments.has(option::resume);
    if (!context.arguments.has(option::output)) {
        if (resume) {
            return Failure{
                Refusal{wrong_input, "--resume goes with the --output of the run before"}};
        }
        return BatchOutput{context.streams.out, wanted.format};
    }
    const bool force = context.arguments.has(option::force);
    if (resume && force) {
        return Failure{Refusal{
            wrong_input, "--resume goes on with an unfinished file, --force begins anew: choose"}};
    }
    auto place =
        output_place(std::string{context.arguments.value(option::output)}, files_read, force);
    if (!place) {
        return Failure{place.error()};
    }
    const std::string command = command_of(wanted);
    auto partial = resume ? PartialFile::take_up(*place, name(wanted.format), command)
                          : PartialFile::begin(*place, name(wanted.format), command, force);
    if (!partial) {
        return Failure{partial.error()};
    }
    return BatchOutput{std::move(place).value(), std::move(partial).value(), wanted.format};
}

int cannot_write(const Context& context) {
    return refuse(context, no_access, "cannot write the answer: " + system_reason());
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
        RecordSource::open(context.arguments.words, context.streams.in, asked_to_stop);
    if (!source) {
        return refuse(context, no_access, source.error());
    }
    Result<BatchOutput, Refusal> output = output_of(context, *wanted, source->files_read());
    if (!output) {
        return refuse(context, output.error().status, output.error().message);
    }

    const StopSignals signals;
    Progress progress(context.streams.terminal, context.environment.error_is_terminal);
    const BatchProgress before = output->before();
    BatchProgress all = before;
    if (output->wants_header() && !output->write(header_of(*wanted), before)) {
        return cannot_write(context);
    }
    bool written = true;
    PackReader packs(*source, before, context.arguments.has(option::output));
    const unsigned workers = run_ordered<Pack>(
        {.workers = wanted->jobs, .most_in_flight = packs_in_flight_per_worker * wanted->jobs},
        [&] { return packs.next(); },
        [&](const Pack& pack) { return work_on(pack, *wanted); },
        [&](const PackDone& done) {
            if (!done.whole) {
                return false;
            }
            all.records += done.gain.records;
            all.pass += done.gain.pass;
            all.short_of_draft += done.gain.short_of_draft;
            all.fault += done.gain.fault;
            all.failed += done.gain.failed;
            all.input_sum = done.gain.input_sum;
            written = output->write(done.lines, all);
            progress.tell(all.records - before.records, done.share_done);
            return written;
        });
    progress.clear();
    if (workers < wanted->jobs) {
        context.streams.err << fmt::format(
            "fluewright: the system gave {} of {} threads\n", workers, wanted->jobs);
    }
    if (packs.differs()) {
        return refuse(context,
                      wrong_input,
                      fmt::format("the input is not that of the run before: its first {} "
                                  "installations differ; --force begins anew",
                                  before.records));
    }
    if (!written) {
        return cannot_write(context);
    }
    if (const int signal = stop_signal(); signal != 0) {
        output->stop_early(all.records);
        context.streams.err << "fluewright: interrupted; "
                            << summary(all, before, progress.seconds());
        return status_of_signal + signal;
    }
    if (const auto refused = output->finish()) {
        return refuse(context, refused->status, refused->message);
    }
    context.streams.err << summary(all, before, progress.seconds());
    if (!source->unreadable().empty()) {
        return refuse(context, no_access, source->unreadable());
    }
    if (all.failed > 0) {
        return unless_given_up(context, true, program_failed);
    }
    return all.fault > 0 ? wrong_input : all.short_of_draft > 0 ? falls_short : all_pass;
}

constexpr std::array<const OptionInfo*, 7> batch_options{&option::batch_format,
                                                         &option::fields,
                                                         &option::only,
                                                         &option::require,
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
        "short, 2 when one is at fault and 4 when the solver gave one up.",
    .word = {.name = "PATH...",
             .text = "files, folders or patterns; - reads standard input, one installation a line",
             .required = true,
             .many = true},
    .options = batch_options,
    .example = "fluewright batch layouts/ --format csv --output layouts.csv",
    .run = run_batch};

} // namespace fluewright::cli
