#pragma once

#include "fluewright/core/fault.hpp"
#include "fluewright/core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <deque>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// A JSON text as a flat list of nodes that know where they stand. Comments are allowed. The
/// packaged JSON library keeps no places, takes the last of two equal keys in silence and words its
/// errors for programmers; a reader of our own gives all three for less time than that library's.
namespace fluewright::json {

enum class Type : std::uint8_t { nothing, boolean, number, string, array, object };

inline constexpr std::uint32_t no_node = UINT32_MAX;
inline constexpr std::size_t greatest_size = 16U << 20U;
inline constexpr int greatest_depth = 32;

struct Node {
    Type type{Type::nothing};
    bool truth{false};
    std::uint32_t begin{0}; ///< first byte of the value in the text
    std::uint32_t end{0};   ///< one past its last byte
    std::uint32_t key_begin{0};
    std::uint32_t parent{no_node};
    std::uint32_t first{no_node}; ///< first child of an object or array
    std::uint32_t next{no_node};  ///< next child of the same parent
    std::uint32_t place{0};       ///< among the children of its parent, from 0
    double number{0.0};
    std::string_view key;  ///< without quotes, escapes resolved
    std::string_view text; ///< of a string: without quotes, escapes resolved
};

/// A fault and the byte where it is.
struct Trouble {
    std::size_t offset;
    Fault fault;
};

/// The views in the nodes point into the text given to parse(), which must outlive the document.
class Document {
public:
    /// The outermost value; a node of nothing where the text holds none.
    [[nodiscard]] const Node& root() const { return nodes_.empty() ? nothing() : nodes_.front(); }

    [[nodiscard]] const Node& at(std::uint32_t index) const { return nodes_[index]; }

    [[nodiscard]] std::uint32_t size() const { return static_cast<std::uint32_t>(nodes_.size()); }

    /// The value as typed.
    [[nodiscard]] std::string_view typed(const Node& node) const {
        return text_.substr(node.begin, node.end - node.begin);
    }

    [[nodiscard]] std::string pointer_to(const Node& node) const;

    /// Of an object or array.
    [[nodiscard]] std::size_t child_count(const Node& node) const;

    /// The node the pointer (RFC 6901) leads to, or the last one on the way that exists.
    [[nodiscard]] const Node& nearest_to(std::string_view pointer, bool& exact) const;

    /// To be spelled anew in place; their number and places stay.
    [[nodiscard]] std::span<Node> nodes() { return nodes_; }

    [[nodiscard]] std::string_view whole_text() const { return text_; }

private:
    friend class Parser;

    [[nodiscard]] static const Node& nothing() {
        static const Node none;
        return none;
    }

    std::string_view text_;
    std::vector<Node> nodes_;
    std::deque<std::string> resolved_; ///< strings that held escapes; a deque keeps views valid
};

struct Parsed {
    Document document;
    std::vector<Trouble>
        troubles;         ///< duplicate keys, then at most one fault that ended the reading
    bool complete{false}; ///< the document holds the whole text
};

[[nodiscard]] Parsed parse(std::string_view text);

struct Place {
    int line;
    int column; ///< counted in characters, from 1
};

/// Line and column of a byte; a byte order mark at the beginning takes no column.
[[nodiscard]] Place place_of(std::string_view text, std::size_t offset);

/// Byte of the first fault in the encoding, or npos.
[[nodiscard]] std::size_t find_invalid_utf8(std::string_view text);

/// Byte of the first character that does not show or that steers how others are shown: control
/// characters of both halves, marks of direction and of line ends, and codes that are no characters
/// (The Unicode Standard, 23.1, 23.2 and 23.7, from memory). npos for none. The text is UTF-8.
[[nodiscard]] std::size_t find_unprintable(std::string_view text);

/// "U+001B", the code of the character at that byte.
[[nodiscard]] std::string code_of(std::string_view text, std::size_t at);

/// The text with such characters and bytes that are no UTF-8 escaped, so that neither a file nor an
/// argument can steer the terminal; the ends of lines and tabs become blanks.
[[nodiscard]] std::string visible(std::string_view text);

/// The same, cut after `longest` bytes, which is where a text gets too long to quote.
[[nodiscard]] std::string shown(std::string_view text, std::size_t longest = 72);

} // namespace fluewright::json
