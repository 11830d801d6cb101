#include "fluewright/advice/trial/change.hpp"

#include "flaw_gone.hpp"
#include "other_pipe.hpp"

namespace fluewright {
namespace {

using Made = Result<Installation, std::string>;

struct Make {
    const Installation& written;

    Made operator()(const AsItStands& /*change*/) const { return written; }

    Made operator()(const Remedy& remedy) const {
        std::optional<Installation> after = apply(remedy, written);
        if (!after) {
            return Failure{std::string{"there is nothing here that it would change"}};
        }
        return std::move(*after);
    }

    Made operator()(const OtherPipe& pipe) const { return with_other_pipe(written, pipe); }

    Made operator()(const OtherClayLiner& other) const {
        return with_other_clay_liner(written, other);
    }

    Made operator()(const OtherValue& other) const {
        return with_value(written, other.key, other.value);
    }

    Made operator()(const FlawGone& flaw) const { return without_flaw(written, flaw.cause); }
};

bool goes_by_pointer(const Change& change) {
    const auto* other = std::get_if<OtherValue>(&change);
    return other != nullptr && !other->key.pointers.empty();
}

} // namespace

Made changed(const Change& change, const Installation& written) {
    return std::visit(Make{written}, change);
}

Made changed(std::span<const Change> changes, const Installation& written) {
    Made made = written;
    // A pointer leads to a place of the file as written; another size may drop a part and move it.
    for (const bool by_pointer : {true, false}) {
        for (const Change& change : changes) {
            if (made && goes_by_pointer(change) == by_pointer) {
                made = changed(change, *made);
            }
        }
    }
    return made;
}

} // namespace fluewright
