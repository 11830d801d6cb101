#pragma once

#include <map>
#include <string_view>
#include <vector>

/// Jobs with the list a fitter would write, written before the program was asked. A count is of all
/// lines whose name holds the words.
namespace fluewright::fitter {

struct FitterJob {
    std::string_view name;
    std::string_view heater; ///< type, fuel, outlet and firing
    std::string_view run;
    std::string_view site;
    std::map<std::string_view, double> counts;
};

inline constexpr std::string_view wood_6_in = R"("type": "stove", "fuel": "oak",
    "outlet": {"diameter": "6 in", "height": "30 in"},
    "burn_rate": "5 lb/h", "draft_needed": "0.05 inH2O", "efficiency": "70 %")";
inline constexpr std::string_view wood_150_mm = R"("type": "stove", "fuel": "beech",
    "outlet": {"diameter": "150 mm", "height": "0.8 m"},
    "burn_rate": "2 kg/h", "draft_needed": "12 Pa", "efficiency": "70 %")";

inline const FitterJob up_through_roof{
    "metric straight up",
    wood_150_mm,
    R"({"part": "straight", "up": "1.2 m", "diameter": "150 mm", "wall": "single-wall steel", "zone": "room"},
       {"part": "straight", "up": "0.8 m", "wall": "insulated 25 mm"},
       {"part": "straight", "up": "1.5 m", "zone": "attic"},
       {"part": "straight", "up": "2 m", "zone": "outdoors"})",
    R"(, "roof": {"pitch": "35 deg", "top_above_roof": "1.7 m"})",
    {{"adapter from pipe", 1},
     {"slip joint", 1},
     {"ceiling support", 1},
     {"firestop", 1},
     {"trim collar", 1},
     {"attic shield", 1},
     {"pitch of 35 deg", 1},
     {"storm collar", 1},
     {"roof brace", 1},
     {"plain cap", 1},
     {"paint", 1},
     {"screws", 9},
     {"wall band", 0},
     {"hanger", 0},
     {"thimble", 0},
     {"telescoping", 0}}};

inline const FitterJob double_wall_up{
    "us double wall up",
    wood_6_in,
    R"({"part": "straight", "up": "5 ft 6 in", "diameter": "6 in", "wall": "double-wall connector", "zone": "room"},
       {"part": "straight", "up": "4 ft", "wall": "insulated 25 mm", "zone": "attic"},
       {"part": "straight", "up": "6 ft", "zone": "outdoors"})",
    "",
    {{"adapter", 2},
     {"slip joint", 0}, // a telescoping piece takes the growth up
     {"telescoping", 2},
     {"ceiling support", 1},
     {"attic support", 0},
     {"paint", 0}}};

inline const FitterJob brick{
    "us through brick",
    wood_6_in,
    R"({"part": "straight", "up": "3 ft", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "straight", "across": "2 ft", "rise": "1/2 in"},
       {"part": "tee", "wall": "clay-lined masonry", "width": "7 in", "depth": "7 in", "cleanout": true},
       {"part": "straight", "up": "20 ft", "width": "7 in", "depth": "7 in"},
       {"part": "straight", "up": "2 ft", "zone": "outdoors"})",
    "",
    {{"thimble for the masonry", 1},
     {"trim collar", 1},
     {"elbow", 1},
     {"cleanout", 0}, // a door in the brick
     {"locking", 0},
     {"support", 0},
     {"storm collar", 0},
     {"adapter", 0},
     {"slip joint", 0}}};

inline const FitterJob flexible{
    "us flexible liner",
    wood_6_in,
    R"({"part": "straight", "up": "2 ft", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "straight", "across": "18 in", "rise": "1/2 in"},
       {"part": "tee", "wall": "flexible liner", "cleanout": true},
       {"part": "straight", "up": "24 ft", "wall": "flexible liner"},
       {"part": "straight", "up": "6 in", "zone": "outdoors"})",
    "",
    {{"flexible liner, length", 1},
     {"flexible liner, tee", 1},
     {"cleanout plug", 1},
     {"top plate", 1},
     {"liner connector", 0}, // the tee is one
     {"rivets", 0},
     {"flashing", 0}}};

inline const FitterJob rigid{
    "us rigid liner",
    wood_6_in,
    R"({"part": "straight", "up": "2 ft", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
       {"part": "straight", "up": "18 ft", "wall": "rigid liner"},
       {"part": "straight", "up": "1 ft", "zone": "outdoors"})",
    "",
    {{"rigid liner, length", 5}, // 228 in out of 48 in with a lap of 2 in
     {"rivets", 12},
     {"top plate", 1},
     {"liner connector", 1}}};

inline const FitterJob hood{
    "us gas hood",
    R"("type": "draft-hood", "fuel": "natural gas", "outlet": {"diameter": "5 in", "height": "5 ft"},
       "heat_input": "60000 Btu/h", "efficiency": "78 %")",
    R"({"part": "draft hood"},
       {"part": "straight", "up": "3 ft", "diameter": "5 in", "wall": "type b vent", "zone": "room"},
       {"part": "straight", "up": "5 ft", "zone": "attic"},
       {"part": "straight", "up": "3 ft", "zone": "outdoors"})",
    "",
    {{"draft hood", 1},
     {"paint", 0},
     {"furnace cement", 0},
     {"sealant", 0},
     {"ceiling support", 1},
     {"firestop", 1},
     {"storm collar", 1}}};

inline const FitterJob beside_wall{
    "us up beside the wall",
    wood_6_in,
    R"({"part": "straight", "up": "30 in", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "straight", "across": "20 in", "rise": "1/2 in"},
       {"part": "straight", "across": "20 in", "wall": "insulated 25 mm", "zone": "room", "passes": "wall"},
       {"part": "tee", "cleanout": true, "zone": "outdoors"},
       {"part": "straight", "up": "18 ft"})",
    R"(, "roof": {"top_above_roof": "3 ft"})",
    {{"wall support with a plate", 1},
     {"ceiling support", 0},
     {"wall band", 1},
     {"wall thimble", 1},
     {"trim collar", 1},
     {"cleanout plug", 1},
     {"flashing", 0},
     {"roof brace", 0}}};

inline const FitterJob pellet{
    "us pellet vent",
    R"("type": "stove", "fuel": "wood pellets", "outlet": {"diameter": "3 in", "height": "12 in"},
       "burn_rate": "3 lb/h", "efficiency": "80 %")",
    R"({"part": "straight", "across": "14 in", "diameter": "3 in", "wall": "pellet vent", "zone": "room", "passes": "wall"},
       {"part": "tee", "cleanout": true, "zone": "outdoors"},
       {"part": "straight", "up": "10 ft"})",
    "",
    {{"wall support with a plate", 1},
     {"roof support", 0},
     {"wall band", 1},
     {"wall thimble", 1},
     {"cleanout plug", 1},
     {"furnace cement", 0},
     {"paint", 0}}};

inline const FitterJob two_systems{
    "us on a metric collar",
    R"("type": "stove", "fuel": "oak", "outlet": {"diameter": "150 mm", "height": "30 in"},
       "burn_rate": "5 lb/h", "draft_needed": "0.05 inH2O", "efficiency": "70 %")",
    R"({"part": "straight", "up": "4 ft", "diameter": "6 in", "wall": "single-wall steel", "zone": "room"},
       {"part": "straight", "up": "4 ft", "wall": "insulated 25 mm"},
       {"part": "straight", "up": "4 ft", "zone": "outdoors"})",
    "",
    {{"inch-to-metric adapter, 150 mm crimped below, 6 in plain above", 1}, {"adapter", 2}}};

inline const FitterJob oval{
    "us oval collar",
    R"("type": "stove", "fuel": "oak",
       "outlet": {"shape": "oval", "width": "8 in", "depth": "5 in", "height": "30 in"},
       "burn_rate": "5 lb/h", "draft_needed": "0.05 inH2O", "efficiency": "70 %")",
    two_systems.run,
    "",
    {{"oval-to-round adapter, 8 in x 5 in crimped below, 6 in plain above", 1}, {"adapter", 2}}};

inline const FitterJob thick{
    "metric thick then thin",
    wood_150_mm,
    R"({"part": "straight", "up": "1.1 m", "diameter": "150 mm", "wall": "single-wall steel heavy", "zone": "room"},
       {"part": "elbow", "angle": "45 deg"},
       {"part": "straight", "across": "0.5 m", "rise": "0.5 m", "wall": "single-wall steel"},
       {"part": "elbow", "angle": "45 deg"},
       {"part": "straight", "up": "0.7 m"},
       {"part": "straight", "up": "3 m", "wall": "insulated 50 mm", "zone": "outdoors"})",
    "",
    {{"adapter", 1}, {"heavy, elbow", 1}, {"steel, elbow", 1}, {"slip joint", 0}}};

inline const FitterJob stepped{
    "metric drum reduced",
    R"("type": "stove", "fuel": "beech", "outlet": {"diameter": "200 mm", "height": "0.8 m"},
       "burn_rate": "3 kg/h", "draft_needed": "12 Pa", "efficiency": "60 %")",
    R"({"part": "straight", "up": "0.3 m", "diameter": "200 mm", "wall": "single-wall steel", "zone": "room"},
       {"part": "reducer", "diameter": "150 mm"},
       {"part": "straight", "up": "1 m"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "straight", "across": "0.8 m", "rise": "0.03 m"},
       {"part": "tee", "cleanout": true, "wall": "insulated 25 mm", "zone": "outdoors"},
       {"part": "straight", "up": "5 m"})",
    "",
    {{"slip joint", 0}, // the reducer passes the growth on to the bend
     {"reducer", 1},
     {"wall support", 1},
     {"wall band", 2}}};

inline const FitterJob bare_outdoors{
    "metric bare pipe outdoors",
    wood_150_mm,
    R"({"part": "straight", "up": "0.9 m", "diameter": "150 mm", "wall": "single-wall stainless", "zone": "room"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "straight", "across": "0.9 m", "rise": "0.03 m"},
       {"part": "elbow", "angle": "90 deg", "zone": "outdoors"},
       {"part": "straight", "up": "3 m"})",
    "",
    {{"wall bracket", 2}, {"thimble", 1}, {"paint", 0}, {"flashing", 0}}};

inline const FitterJob chase{
    "metric chase with a step to the side",
    wood_150_mm,
    R"({"part": "straight", "up": "1 m", "diameter": "150 mm", "wall": "double-wall connector", "zone": "room"},
       {"part": "damper"},
       {"part": "straight", "up": "0.6 m", "wall": "insulated 50 mm", "zone": "room"},
       {"part": "straight", "up": "2.6 m", "zone": "chase", "passes": "floor"},
       {"part": "elbow", "angle": "30 deg"},
       {"part": "straight", "across": "0.5 m", "rise": "0.86 m"},
       {"part": "elbow", "angle": "30 deg"},
       {"part": "straight", "up": "1.5 m", "zone": "chase"},
       {"part": "straight", "up": "1.2 m", "zone": "outdoors"})",
    "",
    {{"floor firestop", 1},
     {"ceiling firestop", 0},
     {"chase cover", 1},
     {"storm collar", 1},
     {"flashing", 0},
     {"ceiling support", 1},
     {"above a bend", 1},
     {"key damper", 1},
     {"elbow of 30 deg", 2},
     {"slip joint", 0}}};

inline const FitterJob oil{
    "us oil furnace",
    R"("type": "furnace", "fuel": "heating oil", "outlet": {"diameter": "7 in", "height": "4 ft"},
       "burn_rate": "5 lb/h", "efficiency": "80 %", "draft_needed": "0.03 inH2O")",
    R"({"part": "straight", "up": "2 ft", "diameter": "7 in", "wall": "single-wall galvanized", "zone": "room"},
       {"part": "elbow", "angle": "90 deg"},
       {"part": "draft regulator"},
       {"part": "straight", "across": "12 ft", "rise": "3 in"},
       {"part": "tee", "wall": "clay-lined masonry", "width": "7 in", "depth": "7 in"},
       {"part": "straight", "up": "20 ft", "width": "7 in", "depth": "7 in"},
       {"part": "straight", "up": "3 ft", "zone": "outdoors"})",
    "",
    {{"draft regulator", 1},
     {"tee for the regulator", 1},
     {"hanger or bracket", 3},
     {"thimble for the masonry", 1},
     {"paint", 0}, // nobody paints zinc
     {"furnace cement", 0},
     {"sealant", 18.0 / 3.0 * 0.1}}};

inline const std::vector<const FitterJob*> jobs{&chase,
                                                &oil,
                                                &bare_outdoors,
                                                &stepped,
                                                &up_through_roof,
                                                &double_wall_up,
                                                &brick,
                                                &flexible,
                                                &rigid,
                                                &hood,
                                                &beside_wall,
                                                &pellet,
                                                &two_systems,
                                                &oval,
                                                &thick};

} // namespace fluewright::fitter
