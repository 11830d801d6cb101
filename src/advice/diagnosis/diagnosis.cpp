#include "fluewright/advice/diagnosis/diagnosis.hpp"

#include "advice/seen_trouble.hpp"
#include "flaws/cures.hpp"
#include "flaws/design.hpp"
#include "fluewright/advice/remedies/improve.hpp"
#include "fluewright/model/fields/range.hpp"
#include "fluewright/model/resolve/resolve.hpp"
#include "next_check.hpp"
#include "outcome.hpp"
#include "sizes.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace fluewright {

namespace {

constexpr std::size_t leading_rows = 3;

std::string key_of(const diagnosis::Candidate& candidate) {
    return std::string{candidate.check->id} + ' ' + candidate.blank.at.value_or("");
}

} // namespace

struct Diagnoser::Work {
    Work(const Installation& given, Case made)
        : written(given), resolved(std::move(made)), engine(written, resolved) {}

    Installation written;
    Case resolved;
    diagnosis::Engine engine;
    std::vector<diagnosis::Candidate> offered; ///< with the latest diagnosis
    std::set<std::string> skipped;
};

Diagnoser::Diagnoser(std::unique_ptr<Work> work) : work_(std::move(work)) {}

Diagnoser::Diagnoser(Diagnoser&&) noexcept = default;
Diagnoser& Diagnoser::operator=(Diagnoser&&) noexcept = default;
Diagnoser::~Diagnoser() = default;

Result<Diagnoser, Faults> Diagnoser::open(const Installation& written) {
    auto resolved = resolve(written);
    if (!resolved) {
        return Failure{std::move(resolved).error()};
    }
    return Diagnoser{std::make_unique<Work>(written, std::move(resolved).value())};
}

Diagnosis Diagnoser::diagnose() {
    Work& w = *work_;
    const std::vector<diagnosis::Evidence> evidence = diagnosis::evidence_in(w.written, w.resolved);
    w.engine.weigh(evidence);
    diagnosis::OutcomeBuilder builder(w.written, w.resolved, w.engine, evidence);
    Diagnosis result = builder.build();

    std::vector<diagnosis::Candidate> open = diagnosis::candidates(w.written, w.resolved);
    std::erase_if(open,
                  [&](const diagnosis::Candidate& c) { return w.skipped.contains(key_of(c)); });
    std::erase_if(open, [&](const diagnosis::Candidate& c) {
        return !diagnosis::may_be_made(*c.check, builder.urgent(), result.no_fire);
    });
    const std::vector<std::size_t> leading = builder.leading(leading_rows);
    std::vector<diagnosis::Ranked> ranked =
        diagnosis::rank_checks(w.engine, w.written, std::move(open), leading);
    w.offered.clear();
    for (diagnosis::Ranked& entry : ranked) {
        NextCheck check = builder.next_check(entry);
        if (!diagnosis::tells_apart(check)) {
            continue;
        }
        check.number = w.offered.size();
        result.checks.push_back(std::move(check));
        w.offered.push_back(std::move(entry.candidate));
    }
    return result;
}

bool Diagnoser::answer(const NextCheck& check, const Reply& reply) {
    if (check.number >= work_->offered.size()) {
        return false;
    }
    const diagnosis::Candidate& candidate = work_->offered[check.number];
    if (candidate.answers == diagnosis::AnswerKind::quantity) {
        if (!reply.value) {
            return false;
        }
        const FieldInfo* const field = field_of(check);
        if (field == nullptr || !is_in_range(*reply.value, *field)) {
            return false;
        }
        work_->written.observed.push_back(diagnosis::answered(candidate, *reply.value));
        return true;
    }
    for (const diagnosis::Answer answer : diagnosis::answers_of(candidate)) {
        if (reply.word == diagnosis::reply_word(answer)) {
            work_->written.observed.push_back(diagnosis::answered(candidate, answer));
            return true;
        }
    }
    return false;
}

void Diagnoser::see(Observation seen) {
    work_->written.observed.push_back(std::move(seen));
}

const FieldInfo* field_of(const NextCheck& check) {
    return diagnosis::reading_field(check.entry);
}

void Diagnoser::skip(const NextCheck& check) {
    if (check.number < work_->offered.size()) {
        work_->skipped.insert(key_of(work_->offered[check.number]));
    }
}

const Installation& Diagnoser::installation() const {
    return work_->written;
}

UnitSystem Diagnoser::units() const {
    return work_->resolved.units;
}

std::span<const std::string_view> reply_words(ReplyKind kind) {
    static constexpr std::array<std::string_view, 2> yes_no{"yes", "no"};
    static constexpr std::array<std::string_view, 3> stick{"in", "out", "still"};
    static constexpr std::array<std::string_view, 3> course{"over weeks", "overnight", "steady"};
    switch (kind) {
    case ReplyKind::yes_no:
        return yes_no;
    case ReplyKind::stick:
        return stick;
    case ReplyKind::course:
        return course;
    case ReplyKind::quantity:
        break;
    }
    return {};
}

bool asks_for_no_cure(const Diagnosis& diagnosis) {
    return diagnosis.urgent.empty() && diagnosis.dangers.empty()
           && (diagnosis.explanations.front().causes.empty() || diagnosis.measured_enough);
}

void add_better_design(Diagnosis& diagnosis, const Installation& written) {
    const auto& explanations = diagnosis.explanations;
    const bool short_of_draft =
        std::any_of(explanations.begin(), explanations.end(), [](const Explanation& e) {
            return e.causes.empty() || e.causes.front().has_size ? e.cured && !e.cured->works
                                                                 : true;
        });
    // What is short of draft is no cure for a fire that cannot be held down.
    if (!short_of_draft || diagnosis.alarm_has_sounded
        || tells_of_a_roaring_fire(written.observed)) {
        return;
    }
    Installation plain = written;
    plain.observed.clear();
    const auto improvement = improve(plain, {.most = 1});
    if (!improvement || improvement->plans.empty() || improvement->present.works()) {
        return;
    }
    const Plan& plan = improvement->plans.front();
    BetterDesign better;
    for (const Remedy& step : plan.steps) {
        better.steps.push_back(step.what);
    }
    better.outcome = diagnosis::once_cured(plan);
    diagnosis.better = std::move(better);
}

Result<Diagnosis, Faults> diagnose(const Installation& written) {
    auto diagnoser = Diagnoser::open(written);
    if (!diagnoser) {
        return Failure{std::move(diagnoser).error()};
    }
    Diagnosis diagnosis = diagnoser->diagnose();
    add_better_design(diagnosis, written);
    return diagnosis;
}

} // namespace fluewright
