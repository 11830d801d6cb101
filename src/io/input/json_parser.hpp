#pragma once

#include "json_document.hpp"

#include <optional>

namespace fluewright::json {

/// Recursive descent over the grammar of RFC 8259 with comments; stops at the first fault of
/// grammar, goes on after a duplicate key.
class Parser {
public:
    explicit Parser(std::string_view text);
    [[nodiscard]] Parsed run();

private:
    /// Where a value stands, as its node has it.
    struct Start {
        std::uint32_t parent{no_node};
        std::uint32_t place{0};
        std::uint32_t key_begin{0};
        std::string_view key{};
    };

    bool value(const Start& start, int depth);
    bool members(std::uint32_t object, int depth);
    bool elements(std::uint32_t array, int depth);
    bool quoted(std::string_view& out);
    bool escape(std::string& out);
    std::optional<unsigned> four_hex_digits();
    bool number(Node& node);
    bool word(Node& node);
    bool skip_space();
    /// What to write where a unit follows a number without quotes: 4 ft.
    [[nodiscard]] std::optional<std::string> bare_quantity_help() const;
    bool separator(char close, std::uint32_t owner, bool& done);
    void note_duplicate(std::uint32_t object, std::uint32_t member);

    /// Ends the reading: the fault stands at byte `offset`, in the value being read.
    bool stop(std::size_t offset, std::string message, std::string help = {});

    [[nodiscard]] char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }

    [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }

    [[nodiscard]] std::string seen() const;
    /// Whether a quotation mark of a word processor stands here.
    [[nodiscard]] bool begins_curly() const;

    std::string_view text_;
    std::size_t at_{0};
    std::uint32_t open_{no_node}; ///< the object or array being read
    Parsed parsed_;
    bool told_unprintable_{};
};

} // namespace fluewright::json
