#pragma once

#include "view.hpp"

#include <string>

/// Whether the distance on a label counts.
namespace fluewright::checking {

/// Least distance of bare pipe on gas from combustibles [m].
///
/// Source  mechanical codes, single-wall connectors of gas appliances   [memory]
inline constexpr double least_gas_pipe_m = 0.1524; // 6 in

/// Whether a piece stands by the distance of its label. Bare pipe has no listing of its own: its
/// label counts where it asks no less than is asked of bare pipe, or than a shield can leave where
/// the file has one.
[[nodiscard]] bool goes_by_label(const View& view, const Piece& piece);

/// "; its listed 9 in does not count: ..." where a piece has a label that does not count; else
/// empty.
[[nodiscard]] std::string uncounted_label(const View& view, const Piece& piece);

} // namespace fluewright::checking
