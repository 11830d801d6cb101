"""The march integrated by scipy: gas temperature and pressure along the run by solve_ivp, the wall
by a root search over the layers at every step, no fits and no splines in between."""

import json
import math
import re


from scipy.integrate import solve_ivp
from scipy.optimize import brentq

import second_copy
from march_gas import AIR_GAS, Gas, products, saturation_pa
from march_installations import FILE, installations
from march_wall import GRAVITY, SIGMA, Wall
from table import Table

CLOSE = 1e-3  # between machines and versions, for drafts that are nearly nothing

FACTORS = {"mm": 1e-3, "m": 1.0, "g/s": 1e-3, "%": 1e-2, "Pa": 1.0, "m/s": 1.0}


def si(text):
    number, unit = re.fullmatch(r"(-?[\d.e+-]+) (\S+)", text).groups()
    return float(number) + 273.15 if unit == "degC" else float(number) * FACTORS[unit]


def air_density(pressure, kelvin, humidity):
    vapour = humidity * saturation_pa(kelvin)
    ratio = 18.01528 / 28.9651
    return (pressure - (1 - ratio) * vapour) / (AIR_GAS * kelvin)


class Piece:
    """A straight, or a loss at a point, with the size that holds there."""

    def __init__(self, part, before):
        self.wall = part.get("wall", before.wall if before else None)
        self.zone = part.get("zone", before.zone if before else None)
        self.size = ((si(part["diameter"]),) if "diameter" in part
                     else (si(part["width"]), si(part["depth"])) if "width" in part
                     else before.size)
        if len(self.size) == 1:
            self.area, self.perimeter = math.pi / 4 * self.size[0] ** 2, math.pi * self.size[0]
        else:
            self.area, self.perimeter = self.size[0] * self.size[1], 2 * sum(self.size)
        self.diameter = 4 * self.area / self.perimeter
        self.loss = part.get("loss", 0.0)
        self.straight = part["part"] == "straight"
        across = si(part["across"]) if "across" in part else 0.0
        self.rise = si(part["up"]) if "up" in part else si(part["rise"]) if across else 0.0
        self.length = math.hypot(across, self.rise)
        self.upright = self.rise > 0.5 * self.length

    def place(self):
        return self.wall, self.zone, self.size, self.upright


class Run:
    accuracy = 1e-7

    def __init__(self, written, walls, materials, fuels):
        site, heater = written["site"], written["appliance"]
        weather = site["weather"][0]
        geopotential = 6356766.0 * si(site["altitude"]) / (6356766.0 + si(site["altitude"]))
        self.pressure = 101325.0 * (1 - 0.0065 * geopotential / 288.15) ** 5.255876
        outdoor = si(weather["outdoor_temperature"])
        room = si(site["room"]["temperature"])
        self.room_pressure = si(site["room"]["pressure"])
        self.outdoor_density = air_density(self.pressure, outdoor, si(weather["humidity"]))
        air = {"room": room, "outdoors": outdoor, "attic": si(site["attic_temperature"]),
               "chase": si(site["chase_temperature"])}
        vapour = si(site["room"]["humidity"]) * saturation_pa(room)
        humidity = 18.01528 / 28.9651 * vapour / (self.pressure - vapour)
        fuel = heater["fuel"]
        self.gas = Gas(products(fuels[fuel["name"]], si(fuel["moisture"]),
                                si(heater["carbon_dioxide"]), humidity), self.pressure)
        self.flow, self.inlet = si(heater["gas_flow"]), si(heater["gas_temperature"])
        self.warming, self.room_air_k = second_copy.WARMED_PIPE.get(heater["type"], 0.0), room
        self.along = 0.0
        for name, own in written.get("walls", {}).items():
            layers = "|".join("%s %g" % (layer["material"], 1e3 * si(layer["thickness"]))
                              for layer in own["layers"])
            walls = dict(walls, **{name: dict(own, layers=layers,
                                              roughness_mm=1e3 * si(own["roughness"]))})
        self.pieces = []
        for part in written["run"]:
            self.pieces.append(Piece(part, self.pieces[-1] if self.pieces else None))
        heights = {}
        for piece in self.pieces:
            if piece.straight:
                heights[piece.place()] = heights.get(piece.place(), 0.0) + piece.length
        self.walls = {}
        for piece in self.pieces:
            if piece.straight and piece.place() not in self.walls:
                self.walls[piece.place()] = Wall(
                    walls[piece.wall], materials, piece.diameter, air_k=air[piece.zone],
                    wind=si(weather["wind"]) if piece.zone == "outdoors" else 0.0,
                    height=heights[piece.place()], upright=piece.upright,
                    rectangular=len(piece.size) == 2, pressure=self.pressure)

    def memory(self, piece, place):
        """What a wall still holds of a fire before, W/(m2 K), and its temperature then."""
        return 0.0, 0.0

    def heat_and_wall(self, piece, t, since, place=0.0):
        """Heat lost [W/m] and inner wall temperature, `since` metres behind a disturbance and
        `place` metres up the straight."""
        wall, gas = self.walls[piece.place()], self.gas
        mu, k = gas.transport(t)
        pr = gas.specific_heat(t) * mu / k
        reynolds = self.flow / piece.area * piece.diameter / mu
        floored = (reynolds ** 8 + 2300.0 ** 8) ** 0.125
        entry = 1 + (piece.diameter / (since + 0.1 * piece.diameter)) ** (2 / 3) / 3
        forced = entry * 0.0214 * (floored ** 0.8 - 100) * pr ** 0.4 * k / piece.diameter
        # Limit of the upright plate at great height, with the Prandtl number of flue gas.
        tall = 0.387 ** 2 / (1 + (0.492 / 0.72) ** (9 / 16)) ** (16 / 27)
        nu = mu / gas.density(t)
        glow = gas.emissivity(t, piece.diameter) * t ** 4
        grey = 0.5 * (wall.inner_emissivity + 1) * SIGMA

        kept, before = self.memory(piece, place)
        per_metre = piece.diameter * math.pi

        warmer = self.warming * max(0.0, self.inlet - self.room_air_k) / (
            1 + ((self.along + place) / second_copy.WARMED_HALF_M) ** 2)
        warmer = min(warmer, 0.5 * max(0.0, t - wall.air_k)) if piece.zone == "room" else 0.0

        def taken(face):
            heat, inner = wall.from_outside(face)
            if warmer:
                heat *= 1 - warmer / (inner - wall.air_k)
            return heat + kept * (inner - before) * per_metre, inner

        def surplus(face):
            heat, inner = taken(face)
            free = tall * k * (GRAVITY * abs(t - inner) * pr / (t * nu ** 2)) ** (1 / 3)
            h = (forced ** 3 + free ** 3) ** (1 / 3)
            glowing = grey * (glow - gas.absorptivity(t, inner, piece.diameter) * inner ** 4)
            return (h * (t - inner) + glowing) * per_metre - heat

        end = max(t, before) if kept else t
        # From the air upwards: far beyond the answer a wall of wool has no inner face at all.
        share, near = 0.08, wall.air_k + 1e-4 * (end - wall.air_k)
        far = wall.air_k + share * (end - wall.air_k)
        while surplus(far) * surplus(near) > 0:
            near, share = far, share + 0.4 * (1 - share)
            far = wall.air_k + share * (end - wall.air_k)
        face = brentq(surplus, near, far, xtol=1e-6, rtol=1e-12)
        heat, inner = taken(face)
        # The layers are cylinders of the hydraulic diameter: heat is per their face, not per corner.
        return heat * piece.perimeter / (math.pi * piece.diameter), inner

    def friction_factor(self, reynolds, roughness):
        a = (2.457 * math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * roughness))) ** 16
        b = (37530 / reynolds) ** 16
        return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12)

    def followed(self, piece, solved, since):
        """Told of each straight as it was integrated."""

    def head(self, area, t):
        return 0.5 * (self.flow / area) ** 2 / self.gas.density(t)

    def march(self):
        t, pressure, height, since = self.inlet, 0.0, 0.0, 0.0
        self.along = 0.0
        area = self.pieces[0].area
        inner = t
        for piece in self.pieces:
            pressure -= (1 + piece.loss) * self.head(piece.area, t) - self.head(area, t)
            area = piece.area
            if not piece.straight:
                since = 0.0
                continue
            slope = piece.rise / piece.length
            wall = self.walls[piece.place()]

            def rates(x, state):
                here = state[0]
                heat, _ = self.heat_and_wall(piece, here, since + x, x)
                mu, _ = self.gas.transport(here)
                density = self.gas.density(here)
                f = self.friction_factor(self.flow / piece.area * piece.diameter / mu,
                                         wall.roughness / piece.diameter)
                thinner = 1 - self.outdoor_density * GRAVITY * (height + slope * x) / self.pressure
                return [-heat / (self.flow * self.gas.specific_heat(here)),
                        (self.outdoor_density - density) * thinner * GRAVITY * slope
                        - f / piece.diameter * self.head(piece.area, here)]

            start = t
            solved = solve_ivp(rates, (0.0, piece.length), [t, pressure], method="LSODA",
                               rtol=self.accuracy, atol=[1e-5, 1e-6])
            self.followed(piece, solved, since)
            t, pressure = solved.y[:, -1]
            pressure -= (self.flow / piece.area) ** 2 * (1 / self.gas.density(t)
                                                         - 1 / self.gas.density(start))
            height += piece.rise
            since += piece.length
            _, inner = self.heat_and_wall(piece, t, since, piece.length)
            self.along += piece.length
        return t, inner, self.room_pressure + pressure


def table(every=1):
    """Of every so manieth installation; all of them make the table that is committed."""
    walls, materials, fuels = second_copy.walls(), second_copy.materials(), second_copy.fuels()
    rows = Table("march_scipy", "MS", source="scipy-library", mark="computed",
                 place="integrate.solve_ivp, method LSODA")
    lines = FILE.read_text().splitlines()
    if [json.loads(line) for line in lines] != installations():
        raise SystemExit("%s is not what march_installations.py makes" % FILE.name)
    for number, line in list(enumerate(lines))[::every]:
        t, inner, draft = Run(json.loads(line), walls, materials, fuels).march()
        inputs = dict(installation=number)
        rows.add("march_top_temperature", inputs, "%.8g" % (t - 273.15), tolerance="0.1",
                 tolerance_kind="absolute", topic="March: gas at the top",
                 reason="method: same equations, integrated by other code without fits")
        rows.add("march_top_wall", inputs, "%.8g" % (inner - 273.15), tolerance="0.08",
                 tolerance_kind="absolute", topic="March: inner wall at the top",
                 reason="method: same equations, integrated by other code without fits")
        # A per mille, but of no less than 4 Pa: a smaller draft is what is left of larger terms.
        small = abs(draft) < 4.0
        rows.add("march_draft", inputs, "%.8g" % draft, tolerance="0.003" if small else "0.001",
                 tolerance_kind="absolute" if small else "relative",
                 topic="March: draft at the outlet",
                 reason="method: same equations, integrated by other code without fits")
    return rows


if __name__ == "__main__":
    table().write()
