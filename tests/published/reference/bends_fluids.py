"""Bends and mitres of the fluids library at the flow of a stove pipe: 150 mm, 1 mm rough, Re 2e4
(mitres 0.1 mm, Re 2e5), by each method the library has."""

from fluids.fittings import bend_miter, bend_rounded

from table import Table

DIAMETER_M = 0.15
ANGLES = (15, 30, 45, 60, 90)
RADII = (0.75, 1.0, 1.5)
COMMON = dict(tolerance_kind="absolute", source="fluids-library", mark="computed")


def smooth(angle, radius, method):
    return bend_rounded(Di=DIAMETER_M, angle=angle, fd=0.036, rc=DIAMETER_M * radius, Re=2e4,
                        roughness=1e-3, method=method)


def mitered(angle, method):
    return bend_miter(angle=angle, Di=DIAMETER_M, Re=2e5, roughness=1e-4, L_unimpeded=3.0,
                      method=method)


def table():
    rows = Table("bends_fluids", "BD", **COMMON)
    for angle in ANGLES:
        for radius in RADII:
            inputs = dict(angle_deg=angle, radius_over_diameter=radius)
            methods = ("Rennels", "Miller", "Crane", "Ito")
            values = [smooth(angle, radius, method) for method in methods]
            rows.add("bend_smooth", inputs, sum(values) / len(values), tolerance="0.0006",
                     reason="printed: the table in the code has three decimals",
                     place="fittings.bend_rounded; mean of Rennels, Miller, Crane and Ito",
                     topic="Loss of smooth bends")
            for method, value in zip(methods, values):
                rows.add("bend_smooth", inputs, value, tolerance="0.37",
                         reason="method: one of the four whose mean is taken; they differ by a "
                                "factor of two",
                         place="fittings.bend_rounded; " + method,
                         topic="Loss of smooth bends: single methods")
    for angle in ANGLES:
        inputs = dict(angle_deg=angle)
        rows.add("bend_mitered", inputs, mitered(angle, "Rennels"), tolerance="0.0006",
                 reason="printed: the table in the code has three decimals",
                 place="fittings.bend_miter; Rennels", topic="Loss of mitres")
        for method in ("Miller", "Crane", "Blevins"):
            rows.add("bend_mitered", inputs, mitered(angle, method), tolerance="0.31",
                     reason="method: sibling of the method taken", topic="Loss of mitres",
                     place="fittings.bend_miter; " + method)
    return rows


if __name__ == "__main__":
    table().write()
