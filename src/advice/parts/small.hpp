#pragma once

#include "fluewright/model/catalog/catalog.hpp"
#include "stretches.hpp"

#include <string>
#include <string_view>

/// Everything that is not pipe: by what it does.
namespace fluewright::parts {

/// Adds a line unless its count is nothing.
void add(const Job& job, PartsLine line);

/// The part of the run of this index; null where the run has none.
[[nodiscard]] const checking::Piece* piece_of(const Job& job, int part);

/// Who says a figure, as the list has it: the key of the source, or "trade practice".
[[nodiscard]] std::string source_of(DefaultId id);

/// Size and diameter of a part that goes round a piece.
void take_size(const Job& job, const checking::Piece& piece, PartsLine& line);

/// The tee of the run in whose free end a draft regulator sits; null where it takes a tee of its
/// own, or is none. A tee with a cleanout has no end free.
[[nodiscard]] const checking::Piece* tee_of_regulator(const Job& job,
                                                      const checking::Piece& regulator);

/// Whether a part is a draft regulator for which a tee is bought that the run does not name.
[[nodiscard]] bool takes_a_tee(const Job& job, const checking::Piece& piece);

[[nodiscard]] bool is_metal_chimney(const checking::Piece& piece);

void level_supports(const Job& job);   ///< hangers of level pipe
void chimney_supports(const Job& job); ///< what bears the chimney, bands and brace
void liner_extras(const Job& job);     ///< top plate and fill of a liner
void passages(const Job& job);         ///< what stands where the run goes through the house

} // namespace fluewright::parts
