#pragma once

/// What the layers of a wall have in common wherever their heat is worked out.
namespace fluewright::wall_layer {

/// The conductivities of data/materials.csv hold at this temperature.
inline constexpr double conductivity_reference_k = 293.15;

/// A rectangular flue conducts like a round one of its hydraulic diameter with this factor on the
/// resistance of each layer.
///
/// Source   EN 13384-1, shape factor   [en13384-1, from memory]
inline constexpr double rectangular_shape_factor = 1.1;

/// Air gaps are closed at the joints of pipe lengths: no cell of a gap is taller.
///
/// Source   judgement: the usual length of pipe   [judgement]
inline constexpr double tallest_gap_cell_m = 1.0;

} // namespace fluewright::wall_layer
