#include "explain_pages.hpp"
#include "fluewright/io/text/text_layout.hpp"

#include <array>
#include <string>

namespace fluewright::explaining {
namespace {

struct QuestionSection {
    std::string_view title;
    std::string_view text;
};

struct TradeQuestion {
    std::string_view id;
    std::string_view title;
    std::array<QuestionSection, 5> sections;
};

constexpr std::array questions{TradeQuestion{
    "crimp-direction",
    "which way the crimped end points",
    {{{"The rule",
       "At every joint the crimped or plain end of the upper part goes down into the part below "
       "it: the crimp points to the heater."},
      {"Will smoke not leak out of the laps?",
       "It looks so, since the gas rises past an edge that opens upwards on the outside. But a "
       "working flue has less pressure inside than the room has: through every gap air goes in, "
       "not smoke out, whichever way the lap lies. Smoke comes out of joints where the pressure "
       "inside is above that of the room: while the flue is cold, while a fan draws on the room, "
       "where something blocks the way. Then it comes out of either lap alike, and the cure is the "
       "draft, screws and cement, not the crimp turned round. `check` says at which joints and in "
       "which states that happens (smoke-at-joints)."},
      {"What the crimp is for",
       "Water, and creosote from a wood fire, condense in the flue and run down its inside. With "
       "the crimp down they run from the upper pipe into the lower one and on to the fire. With "
       "the crimp up they run into the lap and out of it, over the hot pipe and onto the heater, "
       "where they stink and may catch fire. A gas heater has no creosote, but its gas holds much "
       "more water, and what runs out corrodes the joint."},
      {"Where it does not fit",
       "Turn the part round where its ends are the wrong way. Where two plain ends meet, crimp the "
       "upper one with crimping pliers, as deep as the lap. Thick pipe goes together by sockets "
       "that open upwards. Where neither helps, `parts` names the adapter with the end and the "
       "size of both its sides."},
      {"Source",
       "Rules of bodies are listed under crimp-points-up; that a flue under draft takes air in "
       "through its gaps follows from the pressures that `check --details` lists. The rest is "
       "trade practice, no source."}}}}};

} // namespace

std::vector<std::string_view> trade_names() {
    std::vector<std::string_view> ids;
    ids.reserve(questions.size());
    for (const TradeQuestion& question : questions) {
        ids.push_back(question.id);
    }
    return ids;
}

std::string trade_page(std::string_view id, const Style& style) {
    std::string out;
    for (const TradeQuestion& question : questions) {
        if (question.id == id) {
            out = title_line(std::string{id} + ": " + std::string{question.title}
                                 + " (a question of the trade)",
                             style);
            for (const QuestionSection& part : question.sections) {
                out += section(part.title, part.text, style);
            }
        }
    }
    return style.unicode ? out : in_plain_letters(out);
}

} // namespace fluewright::explaining
