#include "fluewright/advice/diagnosis/diagnosis.hpp"
#include "report.hpp"

#include <algorithm>
#include <chrono>
#include <ctime>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <string_view>

// diagnosis_benchmark                  all cases and dialogues; prints the report
// diagnosis_benchmark --report FILE    writes it
// diagnosis_benchmark --check FILE     fails when the report on disk differs from a fresh one, so
//                                      also when fewer causes are found than it says
// diagnosis_benchmark --smoke N        N cases and one dialogue, only to see that they run
// diagnosis_benchmark --from FIRST     300 other cases, for choosing spreads and weights

namespace {

using namespace bench;
using namespace fluewright;

/// The spreads and thresholds were chosen while looking at cases 0 to 299; these were not looked
/// at.
constexpr std::uint64_t first_case = 1000;
constexpr std::size_t all_cases = 300;
constexpr std::size_t all_dialogues = 20;
constexpr std::size_t most_checks = 25;
constexpr double settled = 0.8;

std::string id_of(const Explanation& explanation) {
    // The design as a whole is no flaw one could name: nothing is hidden either way.
    if (explanation.causes.empty() || explanation.causes.front().cause->id == "design-whole") {
        return "nothing";
    }
    std::string id;
    for (const SizedCause& sized : explanation.causes) {
        id += (id.empty() ? "" : "+") + std::string{sized.cause->id};
    }
    return id;
}

Scored score(std::uint64_t number) {
    CaseOfBench made = make_case(number);
    Scored scored;
    scored.truth = made.truth.planted().cause;
    const std::clock_t start = std::clock();
    auto diagnoser = Diagnoser::open(made.written);
    const std::optional<Diagnosis> diagnosis = diagnoser->diagnose();
    scored.seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    for (const Explanation& explanation : diagnosis->explanations) {
        const std::string id = id_of(explanation);
        const auto known = std::find_if(scored.answers.begin(),
                                        scored.answers.end(),
                                        [&](const GivenAnswer& a) { return a.id == id; });
        if (known != scored.answers.end()) {
            known->probability += explanation.probability;
            continue;
        }
        scored.answers.push_back({id, explanation.probability});
        if (id == scored.truth && !explanation.causes.empty()
            && explanation.causes.front().has_size) {
            const SizedCause& sized = explanation.causes.front();
            scored.size_error = std::abs(sized.size / made.truth.planted().size - 1.0);
            scored.size_covered = made.truth.planted().size >= sized.size_low
                                  && made.truth.planted().size <= sized.size_high;
        }
    }
    std::stable_sort(
        scored.answers.begin(),
        scored.answers.end(),
        [](const GivenAnswer& a, const GivenAnswer& b) { return a.probability > b.probability; });
    return scored;
}

enum class Order { suggested, random };

/// Asks check after check until the true cause stands alone, or nothing is left to ask.
Walk walk(std::uint64_t number, Order order) {
    CaseOfBench made = make_complaint(number);
    Dice dice(0xd1ce0000ULL + number);
    auto diagnoser = Diagnoser::open(made.written);
    Walk result;
    while (true) {
        const Diagnosis diagnosis = diagnoser->diagnose();
        const Explanation& first = diagnosis.explanations.front();
        if (id_of(first) == made.truth.planted().cause && first.probability >= settled) {
            result.found = true;
            return result;
        }
        if (diagnosis.checks.empty() || result.checks >= most_checks) {
            return result;
        }
        const NextCheck& check = order == Order::suggested
                                     ? diagnosis.checks.front()
                                     : diagnosis.checks[dice.below(diagnosis.checks.size())];
        const auto seen = made.truth.answer(
            std::string{check.check->kind}, std::string{check.check->look}, check.at);
        ++result.checks;
        result.effort += check.check->effort;
        if (!seen || !diagnoser->answer(check, reply_of(*seen))) {
            diagnoser->skip(check);
        }
    }
}

void tell_times(const Results& results) {
    double seconds = 0.0;
    double longest = 0.0;
    for (const Scored& scored : results.scored) {
        seconds += scored.seconds;
        longest = std::max(longest, scored.seconds);
    }
    fmt::print(stderr,
               "{:.3f} s a case, {:.3f} s at most\n",
               seconds / static_cast<double>(results.scored.size()),
               longest);
}

} // namespace

int main(int count, char** arguments) {
    const std::string_view option = count > 2 ? arguments[1] : "";
    const std::string file = count > 2 ? arguments[2] : "";
    const bool smoke = option == "--smoke";
    const std::size_t cases = smoke ? std::stoul(file) : all_cases;
    const bool other = option == "--from";
    const std::uint64_t first = other ? std::stoull(file) : first_case;
    const std::size_t dialogues = smoke ? 1 : other ? 0 : all_dialogues;
    Results results;
    for (std::size_t i = 0; i < cases; ++i) {
        results.scored.push_back(score(first + i));
    }
    for (std::size_t i = 0; i < dialogues; ++i) {
        results.suggested.push_back(walk(first + i, Order::suggested));
        results.random.push_back(walk(first + i, Order::random));
    }
    const std::string text = report(results);
    tell_times(results);
    if (option == "--report") {
        std::ofstream(file) << text;
    } else if (option == "--check") {
        std::ifstream in(file);
        const std::string known{std::istreambuf_iterator<char>(in), {}};
        if (known != text) {
            fmt::print("{}\n{} differs from the report above; --report writes it. A hit rate that "
                       "fell is a defect to be found, not a figure to be replaced.\n",
                       text,
                       file);
            return 1;
        }
    } else {
        fmt::print("{}", text);
    }
    return 0;
}
