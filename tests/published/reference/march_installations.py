"""Writes the installations on which the march is held against scipy: one JSON object a line, in the
input format of the program. Deterministic: every property walks through its own list, and the
lengths of the lists share no factor, so that the combinations differ. Behind them stands one for each
wall, fuel and material of the catalog, laid out so that its figures tell: narrow, fast and hot."""

import json
import pathlib

import second_copy

FILE = pathlib.Path(__file__).resolve().parent / "march_installations.jsonl"
COUNT = 72

FUELS = (("wood", "20 %", "8 %"), ("spruce", "15 %", "11 %"), ("bituminous coal", "5 %", "9 %"),
         ("fuel oil no. 2", "0 %", "10 %"), ("natural gas", "0 %", "6 %"), ("pellets", "8 %", "12 %"),
         ("anthracite", "4 %", "7 %"))
CONNECTORS = ("single-wall steel", "single-wall galvanized", "double-wall connector",
              "cast-iron pipe", "single-wall stainless")
UPRIGHTS = ("insulated 25 mm", "clay-lined masonry", "single-wall steel", "flexible liner",
            "insulated 50 mm", "unlined masonry", "double-wall air 12 mm", "clay liner block",
            "rigid liner insulated", "type b vent", "concrete chimney")
DIAMETERS_MM = (100, 125, 150, 180, 200, 250, 300)
ZONES = ("outdoors", "room", "chase", "attic")
OUTDOOR_C = (-20, -5, 0, 8, 15, 25)
WIND_M_S = (0, 3, 8)
GAS_C = (120, 180, 240, 320, 420, 600, 90)
MASS_FLUX_KG_S_M2 = (0.25, 0.5, 0.9, 1.6, 3.0)
HEIGHTS_M = (3, 4.5, 6, 9, 14)
LATERALS_M = (0, 0.6, 1.5, 3)
ALTITUDES_M = (0, 300, 1200, 2600)


def pick(values, index):
    return values[index % len(values)]


def installation(i):
    fuel, moisture, dioxide = pick(FUELS, i)
    diameter = pick(DIAMETERS_MM, i + i // 7)
    area = 0.785398 * (diameter / 1000.0) ** 2
    flow = 1000.0 * area * pick(MASS_FLUX_KG_S_M2, i)
    connector = pick(CONNECTORS, i + i // 5)
    upright = pick(UPRIGHTS, i)
    run = [{"part": "straight", "up": "0.8 m", "diameter": "%d mm" % diameter, "wall": connector,
            "zone": "room"}]
    lateral = pick(LATERALS_M, i + i // 4)
    if lateral:
        run += [{"part": "fitting", "loss": 0.5},
                {"part": "straight", "across": "%g m" % lateral, "rise": "%g mm" % (20 * lateral)},
                {"part": "fitting", "loss": 1.1}]
    turn = pick(("same", "larger", "rectangular"), i + i // 3)
    chimney = {"part": "straight", "up": "%g m" % pick(HEIGHTS_M, i + i // 5), "wall": upright,
               "zone": pick(ZONES, i + i // 4)}
    if turn == "larger":
        run.append({"part": "increaser", "diameter": "%d mm" % (diameter * 6 // 5), "loss": 0.3})
    elif turn == "rectangular" and "masonry" in upright:
        run.append({"part": "increaser", "width": "%d mm" % diameter,
                    "depth": "%d mm" % (diameter * 5 // 4), "loss": 0.4})
    run += [chimney, {"part": "straight", "up": "1.2 m", "zone": "outdoors"},
            {"part": "cap", "loss": pick((0.0, 0.5, 1.2), i)}]
    return {
        "title": "march %d" % i,
        "site": {"altitude": "%d m" % pick(ALTITUDES_M, i + i // 4),
                 "attic_temperature": "%d degC" % pick((10, -2, 24), i),
                 "chase_temperature": "%d degC" % pick((14, 5), i),
                 "room": {"temperature": "%d degC" % pick((18, 21, 24), i),
                          "pressure": "%d Pa" % pick((0, -2, -4), i), "humidity": "45 %"},
                 "weather": [{"outdoor_temperature": "%d degC" % pick(OUTDOOR_C, i + i // 6),
                              "wind": "%d m/s" % pick(WIND_M_S, i + i // 3),
                              "humidity": "75 %"}]},
        "appliance": {"type": "boiler" if fuel in ("pellets", "natural gas", "fuel oil no. 2")
                      else "stove",
                      "fuel": {"name": fuel, "moisture": moisture},
                      "outlet": {"diameter": "%d mm" % diameter},
                      "carbon_dioxide": dioxide, "gas_flow": "%.6g g/s" % flow,
                      "gas_temperature": "%d degC" % pick(GAS_C, i + i // 7),
                      "efficiency": "75 %", "draft_needed": "10 Pa"},
        "run": run,
    }


def plain(title, fuel, wall, gas_c, own=None):
    """One upright pipe through room and open air."""
    greatest = {"natural gas": 10, "propane": 12}.get(fuel, 11)
    made = {
        "title": title,
        "site": {"altitude": "0 m", "attic_temperature": "10 degC", "chase_temperature": "10 degC",
                 "room": {"temperature": "20 degC", "pressure": "0 Pa", "humidity": "50 %"},
                 "weather": [{"outdoor_temperature": "0 degC", "wind": "0 m/s", "humidity": "80 %"}]},
        "appliance": {"type": "boiler", "fuel": {"name": fuel, "moisture": "0 %"},
                      "outlet": {"diameter": "100 mm"}, "carbon_dioxide": "%d %%" % greatest,
                      "gas_flow": "16 g/s", "gas_temperature": "%d degC" % gas_c,
                      "efficiency": "75 %", "draft_needed": "10 Pa"},
        "run": [{"part": "straight", "up": "6 m", "diameter": "100 mm", "wall": wall,
                 "zone": "room"},
                {"part": "straight", "up": "3 m", "zone": "outdoors"},
                {"part": "cap", "loss": 0.5}],
    }
    if own:
        made["walls"] = {wall: own}
    return made


def behind_a_gap(material):
    return {"kind": "masonry", "inner_emissivity": 0.9, "outer_emissivity": 0.9,
            "roughness": "1 mm",
            "layers": [{"material": "carbon steel", "thickness": "0.5 mm"},
                       {"material": "air gap", "thickness": "10 mm"},
                       {"material": material, "thickness": "40 mm"}]}


def every_entry():
    made = [plain("wall: " + wall, "wood", wall, 420) for wall in second_copy.WALLS]
    made += [plain("fuel: " + fuel, fuel, "insulated 25 mm", 600) for fuel in second_copy.FUELS]
    made += [plain("material: " + material, "wood", "own wall", 420, behind_a_gap(material))
             for material in second_copy.MATERIALS]
    return made + [short_pieces()]


def short_pieces():
    """Short pieces, every one behind a turn: all of it lies in the entry of the gas."""
    made = plain("short pieces", "wood", "single-wall steel", 600)
    piece = [{"part": "straight", "up": "0.04 m"}, {"part": "fitting", "loss": 0.1}]
    first, rest = made["run"][0], made["run"][2:]
    made["run"] = ([dict(first, up="0.04 m")] + piece[1:] + 50 * piece
                   + [{"part": "straight", "up": "0.04 m", "zone": "outdoors"}] + rest)
    return made


def installations():
    return [installation(i) for i in range(COUNT)] + every_entry()


if __name__ == "__main__":
    FILE.write_text("".join(json.dumps(one) + "\n" for one in installations()))
