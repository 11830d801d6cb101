"""Terms that ordinary cases hardly show, each worked from its own equation where it tells."""

import math

import numpy as np

import second_copy
from march_gas import CONDUCTIVITY, NAMES, VISCOSITY, Gas
from table import Table

COMMON = dict(tolerance="0.0005", tolerance_kind="relative", mark="computed",
              source="separate-calculation", reason="method: same equation, other code")

# EN 13384-1 as remembered: bends before 30 diameters of straight, and before less.
BENDS = {10: (0.1, 0.1), 30: (0.2, 0.3), 45: (0.3, 0.4), 60: (0.5, 0.7), 90: (1.2, 1.6)}


def heating_values(rows):
    for c, h, o, n, s, ash in ((60, 6, 20, 10, 2, 2), (50, 6, 38, 0, 0, 6)):
        value = 0.3491 * c + 1.1783 * h + 0.1005 * s - 0.1034 * o - 0.0151 * n - 0.0211 * ash
        rows.add("gross_heating_value_channiwala", dict(c=c, h=h, o=o, n=n, s=s, ash=ash), value,
                 tolerance="0.00001", place="Channiwala and Parikh 2002",
                 topic="Heating value: rich in nitrogen or ash")


def gas_amounts(rows):
    """A fuel with a tenth of nitrogen: what is not air or carbon must leave, too."""
    for n in (5, 15):
        shares = {12.011: 0.55, 1.00794: 0.06, 15.9994: 0.39 - n / 100.0, 14.0067: n / 100.0}
        moles = {molar: share / molar for molar, share in shares.items()}
        oxygen = moles[12.011] + moles[1.00794] / 4 - moles[15.9994] / 2

        def missing(air):
            carbon = moles[12.011] + 0.000319 / (0.78084 + 0.209476 + 0.000319 + 0.009365) * air
            return carbon / (air - oxygen + moles[12.011] + moles[14.0067] / 2) - 0.10

        low, high = 0.01, 10.0
        for _ in range(100):
            middle = 0.5 * (low + high)
            low, high = (middle, high) if missing(middle) > 0 else (low, middle)
        rows.add("air_per_fuel", dict(c=55, h=6, o=39 - n, n=n, co2_pct=10), low * 28.9651,
                 tolerance="0.0001", place="balance of masses",
                 topic="Air per fuel: rich in nitrogen")


def emissivities(rows):
    """Carbon dioxide and water, in paths so short and air so thin or dense that the pressure term
    tells."""
    for pascal in (60000.0, 300000.0):
        for carbon, water in ((0.3, 0.0), (0.0, 0.3), (0.15, 0.15)):
            for t, length_m in ((500.0, 0.01), (500.0, 0.1), (900.0, 0.01), (1300.0, 0.02)):
                # A trace of the other gas adds nothing and keeps the logarithms finite.
                fractions = np.array([1 - carbon - water, 0, max(carbon, 1e-15),
                                      max(water, 1e-15), 0, 0])
                value = Gas(fractions, pascal).emissivity(t, length_m / 0.95)
                rows.add("gas_emissivity",
                         dict(x_co2=carbon, x_h2o=water, length_m=length_m, t_k=t,
                              pressure_pa=pascal), value,
                         place="Leckner 1972 in Modest's form",
                         topic="Gas emissivity: away from the pressure of the sea")


def single_gases(rows):
    """Each gas by the fits the theory page names, the coefficients entered twice."""
    for number, name in enumerate(NAMES):
        for t in (300.0, 450.0, 900.0):
            a, b, c, d = VISCOSITY[number]
            rows.add("species_viscosity", dict(species=name, t_k="%g" % t),
                     0.1 * math.exp(a * math.log(t) + b / t + c / t ** 2 + d),
                     tolerance="0.00002", place="NASA TM-4513", topic="Viscosity of gases: fits")
            rows.add("species_conductivity", dict(species=name, t_k="%g" % t),
                     float(CONDUCTIVITY[number] @ (t / 1000.0) ** np.arange(4)),
                     tolerance="0.00002", place="cubic fits of theory eq. 9",
                     topic="Conductivity of gases: fits")
        at_end = float(CONDUCTIVITY[number] @ 1.1 ** np.arange(4))
        rows.add("species_conductivity", dict(species=name, t_k="1400"),
                 at_end * (1400.0 / 1100.0) ** 0.75, place="beyond the fits by a power",
                 topic="Conductivity of gases: fits")


def bends(rows):
    for angle, (alone, followed) in BENDS.items():
        rows.add("bend_spacing_factor", dict(angle_deg=angle, spacing_over_diameter=0),
                 followed / alone, tolerance="0.001", source="en13384-1", mark="from memory",
                 place="table of bends", topic="Loss of a bend followed by a turn",
                 reason="printed: the table in the code has three decimals")
    for radius in (0.8, 0.9, 1.2):
        near = ((0.75, 0.660), (1.0, 0.474)) if radius < 1 else ((1.0, 0.474), (1.5, 0.340))
        (r0, k0), (r1, k1) = near
        rows.add("bend_smooth", dict(angle_deg=90, radius_over_diameter=radius),
                 k0 + (k1 - k0) * (radius - r0) / (r1 - r0), place="straight line over the radius",
                 topic="Loss of smooth bends: between the radii")
    rows.add("disc_damper", dict(angle_deg=0), 0.10, source="pipe-fittings-list",
             mark="from memory", place="Weisbach, butterfly valve",
             topic="Loss of a disc damper wide open")
    rows.add("disc_damper", dict(angle_deg=75), 751 * math.exp(1.0),
             place="as steep as from 65 to 70 degrees: ln(751/256)/5 = 0.215, taken 0.2",
             topic="Loss of a disc damper nearly shut")


def heat_capacities(rows):
    """Heat that a pipe of each material stores over what the gas gives it per second and kelvin."""
    inner, outer, inside = 0.075, 0.085, 10.0
    for name, (_, _, density, heat, _) in second_copy.MATERIALS.items():
        stored = density * heat * (outer ** 2 - inner ** 2) / (2 * inner)
        rows.add("warmup_time_constant",
                 {"layers": name + " 10", "diameter_mm": 150, "inside_w_m2k": 10},
                 stored / inside / 60.0, place="heat capacity over h A; materials entered twice",
                 topic="Warm-up time constant: every material")


def conductivities(rows):
    """Steels by EN 1993-1-2; the others by the second entry, at two temperatures."""
    steels = {"carbon steel": (54.0, -0.0333), "galvanized steel": (54.0, -0.0333),
              "stainless steel": (14.6, 0.0127)}
    for name, (at_20, slope, _, _, _) in second_copy.MATERIALS.items():
        for t in (20.0, 220.0):
            value = at_20 + slope * (t - 20.0)
            if name in steels:
                value = steels[name][0] + steels[name][1] * t
            rows.add("material_conductivity", dict(material=name, t_c="%g" % t), value,
                     source="en1993-1-2" if name in steels else COMMON["source"],
                     place="k = 54 - 0.0333 t; austenitic 14.6 + 0.0127 t" if name in steels
                     else "second entry",
                     topic="Conductivity of steel" if name in steels
                     else "Conductivity of wall materials: entered twice")


def wall_heats(rows):
    """Heat that each wall of the catalog stores; its layers entered twice."""
    for name, (layers, _, _, _) in second_copy.WALLS.items():
        radius, heat = 0.075, 0.0
        for layer in layers.split("|"):
            material, millimetres = layer.rsplit(" ", 1)
            outer = radius + float(millimetres) * 1e-3
            if material != "air gap":
                _, _, density, specific, _ = second_copy.MATERIALS[material]
                heat += density * specific * (outer ** 2 - radius ** 2) / (2 * 0.075)
            radius = outer
        rows.add("wall_heat", dict(wall=name), 1e-3 * heat, tolerance="0.00001",
                 place="sum over the layers",
                 topic="Heat stored in a wall")


def table():
    rows = Table("rare_terms", "RT", **COMMON)
    for add in (heating_values, gas_amounts, emissivities, single_gases, bends, heat_capacities,
                conductivities, wall_heats):
        add(rows)
    return rows


if __name__ == "__main__":
    table().write()
