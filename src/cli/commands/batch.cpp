#include "cli/batch/batch_counts.hpp"
#include "cli/batch/batch_output.hpp"
#include "cli/batch/batch_wanted.hpp"
#include "cli/batch/record_source.hpp"
#include "cli/batch/stop_signal.hpp"
#include "cli/files/files.hpp"
#include "cli/shell/command.hpp"
#include "cli/shell/help.hpp"
#include "cli/shell/open_case.hpp"
#include "cli/shell/progress.hpp"
#include "fluewright/core/ordered_pipeline.hpp"
#include "fluewright/io/batch/batch_row.hpp"
#include "fluewright/io/batch/batch_tally.hpp"
#include "fluewright/io/page/batch_page.hpp"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <iostream>
#include <sstream>

namespace fluewright::cli {
namespace {

/// Records go through the pipeline in packs, so that handing them over costs little.
constexpr std::size_t pack_size = 32;
constexpr std::size_t packs_in_flight_per_worker = 4;
constexpr int status_of_signal = 128; ///< plus its number, as shells have it

struct Pack {
    std::vector<BatchRecord> records;
    std::optional<double> share_done;
    std::uint64_t input_sum{}; ///< over all records up to its last
};

struct PackDone {
    std::string lines;
    BatchProgress gain; ///< its input_sum is that of the pack
    BatchTally tally;
    std::optional<double> share_done;
    bool whole{true}; ///< false when it was broken off by a signal
};

PackDone work_on(const Pack& pack, const BatchWanted& wanted) {
    PackDone done;
    done.tally = BatchTally{wanted.keeps()};
    done.share_done = pack.share_done;
    done.gain.input_sum = pack.input_sum;
    for (const BatchRecord& record : pack.records) {
        if (asked_to_stop()) {
            done.whole = false;
            return done;
        }
        const BatchRow row = assess_record(record, wanted.asked);
        done.gain.records += 1;
        done.gain.pass += row.outcome == Outcome::pass ? 1U : 0U;
        done.gain.undecided += row.outcome == Outcome::open ? 1U : 0U;
        done.gain.short_of_draft += row.outcome == Outcome::short_of_draft ? 1U : 0U;
        done.gain.fault += row.outcome == Outcome::fault ? 1U : 0U;
        done.gain.failed += row.outcome == Outcome::failed ? 1U : 0U;
        done.gain.off_method += row.is_off_method() ? 1U : 0U;
        if (wanted.summary || wanted.format == BatchFormat::html) {
            done.tally.add(row);
        }
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
        case BatchFormat::html:
            break;
        }
    }
    return done;
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
output_of(const Context& context, const BatchWanted& wanted, std::ostream& nowhere) {
    if (wanted.format == BatchFormat::html) {
        // A page comes at the end; that it may be written is better known before.
        if (context.arguments.has(option::output)) {
            const auto place = output_place(std::string{context.arguments.value(option::output)},
                                            context.files_read,
                                            context.arguments.has(option::force));
            if (!place) {
                return Failure{place.error()};
            }
        }
        return BatchOutput{nowhere, wanted.format};
    }
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
    if (resume && wanted.summary) {
        return Failure{Refusal{wrong_input,
                               "--summary counts the reasons of a whole run; leave out --resume"}};
    }
    auto place = output_place(
        std::string{context.arguments.value(option::output)}, context.files_read, force);
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

std::string page_of(const Context& context,
                    const BatchWanted& wanted,
                    const BatchTally& tally,
                    std::string sentence) {
    sentence.back() = '.'; // in place of the end of its line
    return batch_page(tally,
                      {.version = version_number(),
                       .sentence = sentence,
                       .from = fmt::format("{}", fmt::join(context.arguments.words, ", ")),
                       .rules = wanted.asked.rules});
}

int cannot_write(const Context& context) {
    return refuse(context, no_access, "cannot write the answer: " + system_reason());
}

int run_batch(const Context& context) {
    if (context.arguments.value(option::fields) == "help") {
        return write_answer(context, columns_help(), all_pass);
    }
    const Result<BatchWanted, std::string> wanted = batch_wanted_of(context);
    if (!wanted) {
        return refuse(context, wrong_input, wanted.error());
    }
    Result<RecordSource, std::string> source = RecordSource::open(
        context.arguments.words, context.streams.in, context.files_read, asked_to_stop);
    if (!source) {
        return refuse(context, no_access, source.error());
    }
    std::ostringstream no_lines;
    Result<BatchOutput, Refusal> output = output_of(context, *wanted, no_lines);
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
    BatchTally tally{wanted->keeps()};
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
            all.undecided += done.gain.undecided;
            all.short_of_draft += done.gain.short_of_draft;
            all.fault += done.gain.fault;
            all.failed += done.gain.failed;
            all.off_method += done.gain.off_method;
            all.input_sum = done.gain.input_sum;
            tally.add(done.tally);
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
                            << counted(all, before, progress.seconds());
        return status_of_signal + signal;
    }
    if (wanted->format == BatchFormat::html) {
        const std::string page = page_of(context, *wanted, tally, counted(all, before, 0.0));
        if (const int status = write_answer(context, page, all_pass); status != all_pass) {
            return status;
        }
    } else if (const auto refused = output->finish()) {
        return refuse(context, refused->status, refused->message);
    }
    context.streams.err << counted(all, before, progress.seconds());
    if (wanted->summary) {
        context.streams.err << tally.text();
    }
    if (!source->unreadable().empty()) {
        return refuse(context, no_access, source->unreadable());
    }
    if (all.records == 0) {
        return refuse(context, wrong_input, "no installation came in");
    }
    if (all.failed > 0) {
        return unless_given_up(context, true, program_failed);
    }
    return all.fault > 0                                             ? wrong_input
           : all.short_of_draft + all.undecided + all.off_method > 0 ? falls_short
                                                                     : all_pass;
}

constexpr std::array<const OptionInfo*, 13> batch_options{&option::batch_format,
                                                          &option::fields,
                                                          &option::values,
                                                          &option::only,
                                                          &option::require,
                                                          &option::rules,
                                                          &option::method,
                                                          &option::size,
                                                          &option::summary,
                                                          &option::units,
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
        "becomes a line that says so, and the rest goes on. With --method the physics is "
        "computed all the same, and the columns of the method stand beside it, in the table on a "
        "line of their own. --format html sums all up on one page. Ends with status 1 when one "
        "falls short, leaves what counts undecided or does not meet the method. It ends with 2 "
        "when one is at fault or none came in, and with 4 when the solver gave one up.",
    .word = {.name = "PATH...",
             .text = "files, folders or patterns; - reads standard input, one installation a line",
             .required = true,
             .many = true},
    .options = batch_options,
    .example = "fluewright batch layouts/ --rules uk --output layouts.csv",
    .run = run_batch};

} // namespace fluewright::cli
