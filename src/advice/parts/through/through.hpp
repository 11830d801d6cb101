#pragma once

#include "advice/parts/stretches.hpp"
#include "fluewright/model/fields/part_words.hpp"

#include <optional>
#include <string>
#include <string_view>

/// What stands where the run goes through a wall, a ceiling or a roof.
namespace fluewright::parts {

/// A thimble round a piece; taken out of the box where it lies there.
void thimble(const Job& job,
             const checking::Piece& piece,
             std::string what,
             std::string where,
             std::string why);

/// A line for what stands at a piece, of its size.
void at_piece(const Job& job,
              const checking::Piece& piece,
              std::string what,
              std::string where,
              std::string why);

void trim_collar(const Job& job, const checking::Piece& piece, const std::string& where);

/// What a way through a wall is made of. `way` is empty where the file does not tell it. `next` is
/// the next length of the run; null at its end.
void through_wall(const Job& job,
                  const checking::Piece& piece,
                  const checking::Piece* next,
                  std::optional<PassThrough> way,
                  const std::string& where);

/// ": frame an opening of 12 in by 12 in clear of combustibles", for a chimney that goes by its
/// label; what is usual where the file has no label. Empty for single-wall pipe and masonry.
[[nodiscard]] std::string opening_by_label(const Job& job, const checking::Piece& piece);

} // namespace fluewright::parts
