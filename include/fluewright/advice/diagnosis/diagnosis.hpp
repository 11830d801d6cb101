#pragma once

#include "fluewright/advice/checks/present_dangers.hpp"
#include "fluewright/advice/diagnosis/tables.hpp"
#include "fluewright/core/fault.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/fields.hpp"
#include "fluewright/model/states/states.hpp"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Why a run does not do what it should: causes with their probabilities and sizes, worked out from
/// what was seen and measured, and the check worth making next.   [docs/diagnosis.md]
namespace fluewright {

/// A cause with the size that fits what was seen.
struct SizedCause {
    const diagnosis::Cause* cause{};
    std::string place; ///< "at part 4, the elbow"; empty where it has none
    bool has_size{};   ///< hidden causes have one; the design is as it is
    double size{};     ///< the median, in SI
    double size_low{}; ///< the range that holds it with 90 %
    double size_high{};
    std::string size_words; ///< "60 to 80 % of the section blocked"
};

/// What one piece of evidence says about an explanation.
struct Bearing {
    std::size_t seen{}; ///< index into Diagnosis::seen
    double
        likelier_times{}; ///< under this explanation against all others; under 1 it speaks against
};

/// A trouble that was seen and is to be expected after a cure as well.
struct LeftTrouble {
    std::string words; ///< "smoke at the opened door (reloading on embers)"
    double share{};    ///< of people who would report it then
};

/// How the run does once the cause is cured.
struct Cured {
    bool works{};      ///< in every state that counts
    std::string state; ///< that with least to spare
    StateKind kind{};
    Status status{}; ///< of that state; only a solved one has a draft
    double draft_pa{};
    double draft_needed_pa{};
    double opening_share{};        ///< of the door, where that is the limit
    double opening_wanted{1.0};    ///< what is required of it
    std::vector<LeftTrouble> left; ///< worth telling, the likeliest first
    Installation installation;     ///< that does so, as a file would hold it

    [[nodiscard]] double margin_pa() const { return draft_pa - draft_needed_pa; }
};

/// The change to the design that pays best, as `improve` finds it.
struct BetterDesign {
    std::vector<std::string> steps; ///< orders for the fitter, without a final stop
    Cured outcome;
};

/// One answer: a cause, or two together, or none.
struct Explanation {
    std::vector<SizedCause> causes; ///< empty: nothing is wrong
    double probability{};
    std::string title; ///< "a blockage in the flue at part 4, the elbow"
    std::string mechanism;
    std::string remedy;
    std::vector<Bearing> bearings; ///< strongest first
    std::optional<Cured> cured;
    const diagnosis::Check* confirm{};
};

/// A piece of evidence in words, and whether the leading explanation accounts for it.
struct SeenFact {
    std::string words;
    std::string expected;   ///< of a reading: under the leading explanation
    std::string as_written; ///< of a reading: by the file as it is, as `check` computes it
    bool fits{true};
    bool needs_fire{}; ///< to be watched or measured once more
};

/// A figure of the file that, were it another, would let the run show all that was seen.
struct WrongFigure {
    std::string pointer; ///< into the file
    Kind kind{Kind::number};
    double written{};      ///< SI
    double meant{};        ///< SI
    std::string_view slip; ///< how it may have come about: "a decimal point"
};

/// A reading that stands alone against an explanation of all the rest.
struct DoubtfulReading {
    std::size_t seen{};      ///< index into Diagnosis::seen
    std::string explanation; ///< of the rest, in words
};

enum class ReplyKind : std::uint8_t { yes_no, stick, course, quantity };

/// An answer to a check: a word ("yes", "no", "in", "out", "still", "over weeks", "overnight",
/// "steady") or a quantity in SI.
struct Reply {
    std::string word;
    std::optional<double> value;
};

/// What a check will show if a cause is the right one.
struct Expectation {
    std::string cause;
    std::string words;
};

/// A check that could be made next.
struct NextCheck {
    const diagnosis::Check* check{};
    std::string place; ///< "behind part 2, the elbow"; empty where the check says it all
    std::string at;    ///< the same as in a file: "outlet" or the number of a part
    ReplyKind reply{};
    Kind kind{Kind::number};           ///< of a quantity
    double example{};                  ///< about what to expect of a quantity, SI
    double bits{};                     ///< by how much it narrows the causes down, on the average
    double worth{};                    ///< bits for the effort
    std::vector<Expectation> expected; ///< under the leading explanations
    Observation entry;                 ///< as the file would have it with the answer yes, or with
                                       ///< the reading to expect under the first explanation
    std::size_t number{};              ///< for Diagnoser::answer()
};

/// The row of the number that a reading of the check is in the file, with its limits; null where
/// the check has no reading.
[[nodiscard]] const FieldInfo* field_of(const NextCheck& check);

struct Diagnosis {
    std::string title;
    UnitSystem units{};
    std::vector<std::string> urgent;    ///< what to do now; said first
    std::vector<PresentDanger> dangers; ///< that the file itself shows, whatever was seen
    std::string not_decided;            ///< fire_not_decided() of the file
    bool alarm_has_sounded{};
    bool no_fire{}; ///< nobody may light it, not for a check either: of what was seen, of a danger
                    ///< in the file, or since what leads leaves little of the flue open
    std::string sentence; ///< the outcome, for a person
    std::vector<SeenFact> seen;
    /// By probability; together 1 with those too unlikely to be shown.
    std::vector<Explanation> explanations;
    double design_probability{}; ///< that the run as described accounts for the trouble
    bool design_explains{};      ///< which is likelier than not
    bool measured_enough{};      ///< nobody complains, and the draft on a high fire is enough
    bool nothing_explains{};     ///< even the best explanation conflicts with something seen
    std::vector<WrongFigure> wrong_figures; ///< where nothing explains; the best fit first
    std::vector<DoubtfulReading> doubtful;  ///< likewise
    std::vector<NextCheck> checks;          ///< most worthwhile first
    std::string
        mend_first; ///< what was found bad and leads: it is mended before more is looked for
    std::optional<BetterDesign> better; ///< from add_better_design()
    std::vector<Assumption> assumptions;
};

/// Whether nothing has to be done at once, the file shows no danger, and what was seen is likeliest
/// of a run in which nothing is wrong, or of one that draws enough by the gauge.
[[nodiscard]] bool asks_for_no_cure(const Diagnosis& diagnosis);

/// Diagnosis step by step: what is computed once is kept between answers.
class Diagnoser {
public:
    /// Faults: those of resolve().
    [[nodiscard]] static Result<Diagnoser, Faults> open(const Installation& written);

    Diagnoser(Diagnoser&&) noexcept;
    Diagnoser& operator=(Diagnoser&&) noexcept;
    ~Diagnoser();

    /// What all that was seen so far says.
    [[nodiscard]] Diagnosis diagnose();

    /// Takes the answer to a check of the latest diagnosis into account; false where the reply does
    /// not suit the check, or is a reading that the file would not take.
    bool answer(const NextCheck& check, const Reply& reply);

    /// Takes in what a person tells without being asked for a check.
    void see(Observation seen);

    /// Never proposes that check again.
    void skip(const NextCheck& check);

    /// The installation with all answers so far among what was observed.
    [[nodiscard]] const Installation& installation() const;

    /// In which its texts give quantities.
    [[nodiscard]] UnitSystem units() const;

private:
    struct Work;
    explicit Diagnoser(std::unique_ptr<Work> work);

    std::unique_ptr<Work> work_;
};

/// Words a reply of each kind may have; empty for a quantity.
[[nodiscard]] std::span<const std::string_view> reply_words(ReplyKind kind);

/// Finds what to change where the run falls short even without a hidden cause; searches all
/// remedies, which takes longer than the diagnosis.
void add_better_design(Diagnosis& diagnosis, const Installation& written);

/// All in one go, with the better design. Faults: those of resolve().
[[nodiscard]] Result<Diagnosis, Faults> diagnose(const Installation& written);

} // namespace fluewright
