#pragma once

#include "fluewright/advice/checks/harm.hpp"
#include "fluewright/core/result.hpp"
#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/case.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

/// What has to pass: the choice of the one who asks.
namespace fluewright {

/// The kinds of harm that decide exit status, outcome of a batch, goal of a search for changes and
/// probability. As it is made: fire, draft, and reloading where it cannot be done at all.
struct Required {
    std::array<bool, harm_count> asked{true, true, false, false};
    /// Reloading counts, though not asked for, where smoke comes out of a door that is opened less
    /// far than `door_opening_least`.
    bool narrow_door{true};
    /// Smoke was seen at the opened door: reloading is asked for on that account.
    bool door_smoked{};

    [[nodiscard]] constexpr bool asks(Harm harm) const {
        return asked[static_cast<std::size_t>(harm)];
    }

    [[nodiscard]] bool operator==(const Required&) const = default;
};

/// What a list may name: every kind of harm, in order.
[[nodiscard]] std::vector<std::string_view> harm_names();

/// Reads "fire,draft". Failure: what is wrong with the list, a sentence without its full stop.
[[nodiscard]] Result<Required, std::string> read_required(std::string_view list);

/// What has to pass of a file where nobody chose: whoever has seen smoke at the opened door wants
/// it to stay in, so reloading counts as if it were asked for. What was chosen stays as it is.
/// `resolved` is the same installation; an open front is no matter of reloading.
[[nodiscard]] Required
required_of_file(const Required& required, const Installation& written, const Case& resolved);

/// The list that reads so; empty for what counts where nothing is chosen.
[[nodiscard]] std::string list_of(const Required& required);

/// "fire, draft; reloading if the door smokes less than 25 % open", for a person.
[[nodiscard]] std::string in_words(const Required& required);

} // namespace fluewright
