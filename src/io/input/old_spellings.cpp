#include "old_spellings.hpp"

#include <algorithm>
#include <array>

namespace fluewright::json {
namespace {

struct OldKey {
    std::string_view old_key;
    std::string_view key;
};

struct OldWord {
    std::string_view key; ///< where the word may stand
    std::string_view old_word;
    std::string_view word;
};

constexpr std::array old_keys{OldKey{"mouth_above_roof", "top_above_roof"},
                              OldKey{"below_mouth", "below_top"},
                              OldKey{"mouth_position", "top_position"},
                              OldKey{"storeys", "stories"},
                              OldKey{"sulphur", "sulfur"}};

constexpr std::array old_words{
    OldWord{"state", "free burn", "air control open"},
    OldWord{"state", "door open, high fire", "reloading on a high fire"},
    OldWord{"state", "door open, embers", "reloading on embers"},
    OldWord{"state", "standing", "idle"},
    OldWord{"at", "mouth", "chimney top"},
    OldWord{"at", "top", "chimney top"},
    OldWord{"floor", "burnable", "combustible"},
    OldWord{"material", "aluminium", "aluminum"},
    OldWord{"material", "enamelled steel", "enameled steel"},
    OldWord{"material", "ceramic fibre blanket", "ceramic fiber blanket"},
    OldWord{"build", "mitred", "mitered"},
    OldWord{"fitting", "elbow mitred 15", "elbow mitered 15"},
    OldWord{"fitting", "elbow mitred 30", "elbow mitered 30"},
    OldWord{"fitting", "elbow mitred 45", "elbow mitered 45"},
    OldWord{"fitting", "elbow mitred 60", "elbow mitered 60"},
    OldWord{"fitting", "elbow mitred 75", "elbow mitered 75"},
    OldWord{"fitting", "elbow mitred 90", "elbow mitered 90"}};

} // namespace

void modernize(Document& document) {
    for (Node& node : document.nodes()) {
        const auto* key = std::find_if(old_keys.begin(), old_keys.end(), [&](const OldKey& each) {
            return each.old_key == node.key;
        });
        if (key != old_keys.end()) {
            node.key = key->key;
        }
        const auto* word =
            std::find_if(old_words.begin(), old_words.end(), [&](const OldWord& each) {
                return node.type == Type::string && each.key == node.key
                       && each.old_word == node.text;
            });
        if (word != old_words.end()) {
            node.text = word->word;
        }
    }
}

Parsed parse_installation(std::string_view text) {
    Parsed parsed = parse(text);
    modernize(parsed.document);
    return parsed;
}

} // namespace fluewright::json
