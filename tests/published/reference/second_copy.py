"""What the reference computations take of walls, materials and fuels: the figures of data/ entered a
second time, so that a slip in either is seen. Copied once: it holds what is changed by
mistake from then on, not a slip that was there before. Who changes a figure there changes it here, too, with
its source in hand."""

# layers from the gas outwards in mm; emissivity inside and outside; roughness in mm
WALLS = {
    "single-wall steel": ("carbon steel 0.6", 0.90, 0.90, 1.0),
    "single-wall steel heavy": ("carbon steel 2", 0.90, 0.90, 1.0),
    "single-wall stainless": ("stainless steel 0.6", 0.90, 0.50, 1.0),
    "single-wall galvanized": ("galvanized steel 0.6", 0.90, 0.28, 1.0),
    "single-wall aluminized": ("aluminized steel 0.6", 0.90, 0.20, 1.0),
    "single-wall enameled": ("enameled steel 0.8", 0.90, 0.90, 1.0),
    "cast-iron pipe": ("cast iron 5", 0.90, 0.70, 1.0),
    "double-wall connector": ("stainless steel 0.5|air gap 9|carbon steel 0.5", 0.90, 0.90, 1.0),
    "double-wall air 6 mm": ("stainless steel 0.5|air gap 6|carbon steel 0.5", 0.90, 0.90, 1.0),
    "double-wall air 12 mm": ("stainless steel 0.5|air gap 12|carbon steel 0.5", 0.90, 0.90, 1.0),
    "type b vent": ("aluminum 0.3|air gap 6|galvanized steel 0.5", 0.30, 0.28, 0.5),
    "insulated 25 mm": (
        "stainless steel 0.5|mineral wool hot 25|stainless steel 0.5",
        0.90, 0.40, 1.0),
    "insulated 50 mm": (
        "stainless steel 0.5|mineral wool hot 50|stainless steel 0.5",
        0.90, 0.40, 1.0),
    "clay-lined masonry": ("clay tile 16|air gap 12|fired brick 100", 0.93, 0.93, 1.5),
    "clay-lined masonry thick": ("clay tile 16|air gap 12|fired brick 215", 0.93, 0.93, 1.5),
    "unlined masonry": ("fired brick 100", 0.93, 0.93, 5.0),
    "unlined masonry thick": ("fired brick 215", 0.93, 0.93, 5.0),
    "clay liner block": (
        "clay tile 20|mineral wool hot 30|lightweight concrete 50",
        0.92, 0.92, 1.5),
    "pumice block": ("pumice concrete 75", 0.93, 0.92, 3.0),
    "concrete chimney": ("concrete 60", 0.94, 0.94, 3.0),
    "flexible liner": ("stainless steel 0.15|air gap 25|fired brick 100", 0.90, 0.93, 5.0),
    "flexible liner insulated": (
        "stainless steel 0.15|vermiculite loose 25|fired brick 100",
        0.90, 0.93, 5.0),
    "rigid liner": ("stainless steel 0.6|air gap 25|fired brick 100", 0.90, 0.93, 1.0),
    "rigid liner insulated": (
        "stainless steel 0.6|vermiculite loose 25|fired brick 100",
        0.90, 0.93, 1.0),
}

# W/(m K) at 20 degC, its change in W/(m K2), kg/m3, J/(kg K), emissivity
MATERIALS = {
    "carbon steel": (53.33, -0.0333, 7850, 440, 0.80),
    "stainless steel": (14.85, 0.0127, 7900, 456, 0.40),
    "ferritic stainless steel": (23.1, 0.0067, 7700, 460, 0.40),
    "galvanized steel": (53.33, -0.0333, 7800, 450, 0.28),
    "aluminized steel": (53.33, -0.0333, 7800, 450, 0.20),
    "aluminum": (160, 0, 2800, 880, 0.15),
    "cast iron": (50, 0, 7500, 450, 0.70),
    "enameled steel": (53.33, -0.0333, 7850, 440, 0.90),
    "clay tile": (1.0, 0, 2000, 800, 0.91),
    "fired brick": (0.895, 0, 1920, 800, 0.93),
    "concrete": (1.95, 0, 2240, 900, 0.94),
    "lightweight concrete": (0.535, 0, 1280, 840, 0.92),
    "pumice concrete": (0.33, 0, 960, 840, 0.92),
    "vermiculite concrete": (0.16, 0, 480, 795, 0.90),
    "cement mortar": (1.40, 0, 1920, 780, 0.92),
    "refractory": (0.966, 0.00022, 2150, 956, 0.75),
    "insulating firebrick": (0.102, 0.0001, 490, 942, 0.78),
    "vermiculite loose": (0.062, 0.000285, 80, 1340, 0.90),
    "perlite loose": (0.0475, 0.000243, 100, 1090, 0.90),
    "mineral wool": (0.035, 0, 97.5, 840, 0.90),
    "mineral wool hot": (0.0322, 0.000197, 120, 870, 0.90),
    "ceramic fiber blanket": (0.0178, 0.000225, 128, 1070, 0.90),
    "dry soot": (0.047, 0, 32, 800, 0.95),
    "flaky creosote": (0.08, 0, 250, 1300, 0.95),
    "glazed creosote": (0.20, 0, 1200, 1500, 0.90),
    "wood ash": (0.15, 0, 450, 840, 0.90),
}

# mass per cent of the dry fuel: C, H, O, N, S; gross heating value, MJ/kg dry; usual moisture, %
FUELS = {
    "wood": (50.0, 6.0, 43.4, 0.1, 0, 19.9, 20),
    "hardwood": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "oak": (50.2, 6.0, 43.3, 0.1, 0, 20.11, 20),
    "beech": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "birch": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "ash wood": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "alder": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "maple": (49.96, 5.92, 43.77, 0.03, 0.01, 19.88, 20),
    "poplar": (50.18, 6.06, 40.44, 0.60, 0.02, 20.41, 20),
    "softwood": (51.23, 5.98, 42.29, 0.06, 0.03, 20.55, 20),
    "fir": (51.23, 5.98, 42.29, 0.06, 0.03, 20.55, 20),
    "larch": (51.23, 5.98, 42.29, 0.06, 0.03, 20.55, 20),
    "spruce": (51.23, 5.98, 42.29, 0.06, 0.03, 20.55, 20),
    "pine": (51.23, 5.98, 42.29, 0.06, 0.03, 20.55, 20),
    "pellets": (50.5, 6.1, 42.7, 0.1, 0.01, 20.3, 8),
    "anthracite": (86.03, 3.37, 2.34, 1.31, 0.66, 33.67, 4.5),
    "bituminous coal": (79.12, 4.87, 9.65, 1.34, 0.57, 32.31, 5.3),
    "lignite": (59.30, 3.59, 19.38, 0.92, 0.33, 22.60, 36.9),
    "fuel oil no. 2": (87.0, 12.6, 0, 0.02, 0.3, 45.3, 0),
    "natural gas": (73.34, 24.05, 0.95, 1.66, 0, 53.62, 0),
    "methane": (74.87, 25.13, 0, 0, 0, 55.51, 0),
    "propane": (81.71, 18.29, 0, 0, 0, 50.33, 0),
}

# What a bare stove adds to the air round its pipe, and where half of it is left, m
WARMED_PIPE = {"stove": 0.16}
WARMED_HALF_M = 0.5

# air ratio at high and low fire; efficiency, unburned at high and low, % of the net heat; needed
# draft at high and low, Pa (of an open front and a draft hood it follows from the gas); low fire, % of high; load, kg/m3; hours of a load at high fire; lining, m2
# and kg
APPLIANCES = {
    "stove/wood": (1.9, 3.2, 70, 3, 12, 12, 6, 30, 112, 1.7, 0.8, 60),
    "stove/pellets": (2.2, 4.0, 83, 0.5, 2, 0, 0, 30, 650, 15, 0.8, 60),
    "stove/coal": (2.0, 3.0, 70, 5, 10, 12, 7.5, 25, 400, 6, 0.8, 60),
    "stove/oil": (1.8, 3.0, 70, 1, 3, 12, 6, 30, 0, 0, 0, 0),
    "fireplace/wood": (15, 20, 15, 5, 12, 5, 3, 40, 30, 1.0, 1.5, 300),
    "fireplace/coal": (12, 18, 20, 6, 12, 5, 3, 40, 60, 2.0, 1.5, 300),
    "furnace/wood": (2.0, 3.5, 65, 4, 12, 15, 8, 30, 112, 2.0, 1.5, 150),
    "furnace/coal": (1.9, 2.8, 65, 5, 10, 15, 8, 25, 400, 6, 1.5, 150),
    "furnace/oil": (1.69, 1.69, 82, 0.1, 0.1, 10, 10, 100, 0, 0, 0, 0),
    "furnace/gas": (1.44, 1.44, 87, 0.1, 0.1, 0, 0, 100, 0, 0, 0, 0),
    "boiler/wood": (1.8, 2.8, 75, 3, 10, 15, 8, 40, 112, 3.0, 0.4, 40),
    "boiler/pellets": (1.6, 2.2, 90, 0.2, 1, 8, 5, 30, 650, 20, 0.4, 40),
    "boiler/coal": (1.8, 2.6, 70, 5, 10, 15, 8, 25, 400, 6, 0.4, 40),
    "boiler/oil": (1.69, 1.69, 82, 0.1, 0.1, 10, 10, 100, 0, 0, 0, 0),
    "boiler/gas": (1.44, 1.44, 87, 0.1, 0.1, 0, 0, 100, 0, 0, 0, 0),
    "draft-hood/gas": (2.11, 2.11, 87, 0.1, 0.1, 1, 1, 100, 0, 0, 0, 0),
    "masonry-heater/wood": (2.6, 2.6, 80, 3, 3, 12, 12, 100, 80, 1.5, 1.5, 800),
}


def _rows(table, *columns):
    return {name: dict(zip(columns, map(str, row))) for name, row in table.items()}


def walls():
    return _rows(WALLS, "layers", "inner_emissivity", "outer_emissivity", "roughness_mm")


def materials():
    return _rows(MATERIALS, "conductivity_w_mk", "conductivity_slope_w_mk2", "density_kg_m3",
                 "specific_heat_j_kgk", "emissivity")


def fuels():
    return _rows(FUELS, "carbon_pct", "hydrogen_pct", "oxygen_pct", "nitrogen_pct", "sulphur_pct",
                 "gross_mj_kg", "moisture_pct")
