"""Walls for the reference march: layers, air gaps and the outside, from the outer face inwards."""

import math

from scipy.optimize import brentq

SIGMA = 5.670374419e-8
GRAVITY = 9.80665
PRANDTL_AIR = 0.70
AIR_GAS_CONSTANT = 8.314462618 / 28.9651e-3


def air_viscosity(t):
    """Sutherland's formula."""
    return 1.55296e-6 * t ** 1.5 / (t + 139.66)


def air_conductivity(t):
    s = t / 1000.0
    return 1e-3 * (1.3818 + 94.6998 * s - 42.0716 * s ** 2 + 13.6950 * s ** 3)


def rayleigh(one, other, length, pressure):
    film = 0.5 * (one + other)
    nu = air_viscosity(film) * AIR_GAS_CONSTANT * film / pressure
    return GRAVITY * abs(one - other) * length ** 3 * PRANDTL_AIR / (film * nu ** 2)


def churchill_chu(ra, pr, upright):
    first, inner = (0.825, 0.492) if upright else (0.60, 0.559)
    return (first + 0.387 * ra ** (1 / 6) / (1 + (inner / pr) ** (9 / 16)) ** (8 / 27)) ** 2


def churchill_bernstein(re, pr):
    return 0.3 + (0.62 * math.sqrt(re) * pr ** (1 / 3) / (1 + (0.4 / pr) ** (2 / 3)) ** 0.25
                  * (1 + (re / 282000.0) ** 0.625) ** 0.8)


def gap_nusselt(ra, slenderness):
    """ISO 15099, vertical cavity."""
    if ra > 5e4:
        tall = 0.0673838 * ra ** (1 / 3)
    elif ra > 1e4:
        tall = 0.028154 * ra ** 0.4134
    else:
        tall = 1 + 1.7596678e-10 * ra ** 2.2984755
    return max(tall, 0.242 * (ra / slenderness) ** 0.272)


class Wall:
    """One wall of the catalog round a flue of a hydraulic diameter, in air of a temperature."""

    def __init__(self, row, materials, diameter, *, air_k, wind, height, upright, rectangular,
                 pressure):
        self.inner_emissivity = float(row["inner_emissivity"])
        self.outer_emissivity = float(row["outer_emissivity"])
        self.roughness = float(row["roughness_mm"]) * 1e-3
        self.air_k, self.wind, self.height, self.upright = air_k, wind, height, upright
        self.shape = 1.1 if rectangular else 1.0
        self.pressure, self.diameter = pressure, diameter
        self.layers = []
        radius = diameter / 2
        for item in row["layers"].split("|"):
            name, millimetres = item.rsplit(" ", 1)
            outer = radius + float(millimetres) * 1e-3
            self.layers.append((materials.get(name), radius, outer))
            radius = outer
        self.outside = 2 * radius

    def _outside_coefficient(self, face_k):
        film = 0.5 * (face_k + self.air_k)
        k = air_conductivity(film)
        length = self.height if self.upright else self.outside
        ra = rayleigh(face_k, self.air_k, length, self.pressure)
        h = k / length * churchill_chu(ra, PRANDTL_AIR, self.upright)
        if self.wind > 0:
            re = self.wind * self.outside * self.pressure / (
                AIR_GAS_CONSTANT * film * air_viscosity(film))
            forced = k / self.outside * churchill_bernstein(re, PRANDTL_AIR)
            h = (h ** 3 + forced ** 3) ** (1 / 3)
        return h + self.outer_emissivity * SIGMA * (face_k ** 2 + self.air_k ** 2) * (
            face_k + self.air_k)

    def _over_gap(self, index, cold_k, heat):
        """Hot face of an air gap that passes `heat` per metre."""
        _, inner, outer = self.layers[index]
        width, height = outer - inner, min(self.height, 1.0)
        hot_eps = (float(self.layers[index - 1][0]["emissivity"]) if index > 0
                   else self.inner_emissivity)
        cold_eps = (float(self.layers[index + 1][0]["emissivity"])
                    if index + 1 < len(self.layers) else self.outer_emissivity)
        exchange = 1 / hot_eps + inner / outer * (1 / cold_eps - 1)

        def surplus(hot_k):
            ra = rayleigh(hot_k, cold_k, width, self.pressure)
            h = (gap_nusselt(ra, height / width) * air_conductivity(0.5 * (hot_k + cold_k)) / width
                 + SIGMA * (hot_k ** 2 + cold_k ** 2) * (hot_k + cold_k) / exchange)
            return h * (hot_k - cold_k) * 2 * math.pi * inner - heat

        if heat == 0:
            return cold_k
        return (brentq(surplus, cold_k, cold_k + 2000, xtol=1e-7) if heat > 0
                else brentq(surplus, max(cold_k - 200, 50), cold_k, xtol=1e-7))

    def from_outside(self, face_k):
        """Heat [W/m of flue] and temperature of the inner face for one of the outer face."""
        heat = self._outside_coefficient(face_k) * (face_k - self.air_k) * math.pi * self.outside
        t = face_k
        for index in reversed(range(len(self.layers))):
            material, inner, outer = self.layers[index]
            if material is None:
                t = self._over_gap(index, t, heat)
                continue
            k20 = float(material["conductivity_w_mk"])
            slope = float(material["conductivity_slope_w_mk2"])
            drop_k = self.shape * heat * math.log(outer / inner) / (2 * math.pi)
            # Integral of k(T) from the outer to the inner face is drop_k.
            k_here = k20 + slope * (t - 293.15)
            t = (t + drop_k / k_here if slope == 0 else
                 t + (math.sqrt(max(k_here ** 2 + 2 * slope * drop_k, 0.0)) - k_here) / slope)
        return heat, t
