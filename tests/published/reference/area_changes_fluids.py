"""Cones, steps, grills and screens of the fluids library, in the coefficient of the small section
(cones, steps) or of the pipe (grills, screens)."""

from fluids.filters import round_edge_screen, square_edge_grill
from fluids.fittings import (contraction_conical, contraction_conical_Crane, contraction_sharp,
                             diffuser_conical, diffuser_conical_Crane, diffuser_sharp)

from table import Table

COMMON = dict(tolerance_kind="absolute", source="fluids-library", mark="computed")
PIPES = ((0.15, 0.2), (0.125, 0.15), (0.1, 0.15))
ANGLES = (10, 20, 30, 40, 60, 90, 120)


def add_cones(rows, small, large, angle):
    inputs = dict(small_m=small, large_m=large, angle_deg=angle)
    flow = dict(angle=angle, fd=0.035, Re=2e4, roughness=1e-3)
    exact = dict(tolerance="1e-9", reason="method: same formula, other code",
                 topic="Loss of cones")
    peer = dict(topic="Loss of cones: other method",
                reason="method: Rennels counts wall friction and the shape of the stream, Crane, "
                       "taken here, the angle alone")
    rows.add("increaser", inputs, diffuser_conical_Crane(Di1=small, Di2=large, angle=angle),
             place="fittings.diffuser_conical_Crane", **exact)
    rows.add("reducer", inputs, contraction_conical_Crane(Di1=large, Di2=small, angle=angle),
             place="fittings.contraction_conical_Crane", **exact)
    rows.add("increaser", inputs, diffuser_conical(Di1=small, Di2=large, method="Rennels", **flow),
             place="fittings.diffuser_conical; Rennels", tolerance="0.12", **peer)
    rows.add("reducer", inputs,
             contraction_conical(Di1=large, Di2=small, method="Rennels", **flow),
             place="fittings.contraction_conical; Rennels", tolerance="0.12", **peer)


def add_steps(rows, ratio):
    inputs = dict(area_ratio="%.12g" % ratio ** 2)
    rows.add("sudden_enlargement", inputs, diffuser_sharp(Di1=ratio, Di2=1.0), tolerance="1e-9",
             reason="method: same formula, other code", place="fittings.diffuser_sharp",
             topic="Loss of steps")
    rows.add("sudden_contraction", inputs, contraction_sharp(Di1=1.0, Di2=ratio),
             tolerance="0.13", reason="method: handbook form against the newer one of Rennels",
             place="fittings.contraction_sharp; Rennels", topic="Loss of steps")


def table():
    rows = Table("area_changes_fluids", "AC", **COMMON)
    for small, large in PIPES:
        for angle in ANGLES:
            add_cones(rows, small, large, angle)
    for ratio in (0.95, 0.9, 0.8333, 0.8, 0.75, 0.7143, 0.6667, 0.5):
        add_steps(rows, ratio)
    for free in (0.5, 0.64, 0.7, 0.8):
        inputs = dict(free_area=free)
        rows.add("screen", inputs, round_edge_screen(free, 1000.0), tolerance="0.10",
                 reason="method: measured curve for round wire at Re 1000 against the formula",
                 place="filters.round_edge_screen at Re 1000", topic="Loss of openings")
        rows.add("obstruction", inputs, square_edge_grill(free), tolerance="0.40",
                 reason="method: grill of square bars against a thin sharp plate",
                 place="filters.square_edge_grill", topic="Loss of openings")
    return rows


if __name__ == "__main__":
    table().write()
