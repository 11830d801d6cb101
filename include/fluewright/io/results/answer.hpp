#pragma once

#include "fluewright/model/fields/installation.hpp"
#include "fluewright/model/run/heater_kind.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What an answer is an answer to.
namespace fluewright {

/// An input file as the answer names it.
struct AnswerFile {
    std::string name;                   ///< as the user gave it; "<stdin>" for standard input
    std::string id;                     ///< of the installation; empty where it has none
    std::string title;                  ///< of the installation; empty where it has none
    std::optional<HeaterKind> heater{}; ///< none where the file does not tell
};

struct AnswerInput {
    std::string_view version{}; ///< of the program
    std::vector<AnswerFile> files{};

    /// The name of the only or first file; empty for none.
    [[nodiscard]] std::string_view file() const {
        return files.empty() ? std::string_view{} : std::string_view{files.front().name};
    }

    /// The kind of heater of all files; none where they differ or do not tell.
    [[nodiscard]] std::optional<HeaterKind> heater() const {
        std::optional<HeaterKind> kind;
        for (const AnswerFile& f : files) {
            if (!f.heater || (kind && kind != f.heater)) {
                return std::nullopt;
            }
            kind = f.heater;
        }
        return kind;
    }
};

[[nodiscard]] inline AnswerFile answer_file(std::string_view name, const Installation& written) {
    return {.name = std::string{name},
            .id = written.id.value_or(""),
            .title = written.title.value_or(""),
            .heater = kind_of(written)};
}

} // namespace fluewright
