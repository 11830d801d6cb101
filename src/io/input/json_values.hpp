#pragma once

#include "fluewright/model/fields/fields.hpp"
#include "json_document.hpp"

#include <optional>

/// Single values of the file: from a node of the document to a number, word or flag, by the row of
/// the field table; every fault text about a single value is made here.
namespace fluewright::json {

/// Collects what is wrong; past a thousand faults the rest would help nobody.
class Troubles {
public:
    explicit Troubles(const Document& document) : document_{document} {}

    /// A fault of the value of `node`.
    void at_value(const Node& node, std::string message, std::string allowed, std::string help);
    /// A fault of the key of `node`.
    void at_key(const Node& node, std::string message, std::string allowed, std::string help);
    /// Something that `node` lacks.
    void missing_in(const Node& node, std::string message, std::string help);

    [[nodiscard]] std::vector<Trouble>& list() { return list_; }

    /// The units that most of the file has, counted when first asked for: a file may hold as many
    /// faults as values.
    [[nodiscard]] std::optional<UnitSystem> units_of_file();

    /// Whether there are so many that reading on would help nobody.
    [[nodiscard]] bool is_full() const;

private:
    void add(std::size_t offset, Fault fault);

    const Document& document_;
    std::vector<Trouble> list_;
    std::optional<std::optional<UnitSystem>> units_;
};

/// What the file mixes: counted to choose the units of the output.
struct UnitCount {
    int us{0};
    int metric{0};
};

struct ReadNumber {
    double value;
    double tolerance;
};

[[nodiscard]] std::optional<ReadNumber> read_number(const Document& document,
                                                    const Node& node,
                                                    const FieldInfo& field,
                                                    UnitCount& units,
                                                    Troubles& troubles);

/// The text lives as long as the document.
[[nodiscard]] std::optional<std::string_view>
read_word(const Document& document, const Node& node, const FieldInfo& field, Troubles& troubles);

[[nodiscard]] std::optional<bool>
read_flag(const Node& node, const FieldInfo& field, Troubles& troubles);

/// A value of the wrong JSON type; `wanted` completes "must be".
void wrong_type(const Node& node,
                std::string_view key,
                std::string_view wanted,
                std::string_view example,
                Troubles& troubles);

} // namespace fluewright::json
