"""A flue in each of its states by the equations of docs/theory.md: fires, opened door, idle flue and
kindling. The march is that of march_scipy.py; what a file leaves out is taken from
state_constants.py."""

import math

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

import state_constants as known
from march_gas import AIR, GAS_CONSTANT, MOLAR, NASA, Gas, burnt, saturation_pa
from march_scipy import Run, air_density, si
from march_wall import GRAVITY
from state_house import House


def enthalpy(gas, t):
    """J/kg, from an arbitrary zero."""
    powers = np.array([-1.0 / t, math.log(t), t, t ** 2 / 2, t ** 3 / 3, t ** 4 / 4, t ** 5 / 5])
    return GAS_CONSTANT * (gas.x @ (NASA @ powers)) / gas.molar


def temperature(gas, wanted):
    return brentq(lambda t: enthalpy(gas, t) - wanted, 200.0, 1500.0, xtol=1e-9)


def greatest_root(surplus, flow):
    """The greatest flow at which the surplus, below nought beyond it, vanishes."""
    step = 1.3 if surplus(flow) > 0 else 1 / 1.3
    while (surplus(flow * step) > 0) == (step > 1):
        flow *= step
    return brentq(surplus, *sorted((flow, flow * step)), xtol=1e-9, rtol=1e-7)


class Fire:
    def __init__(self, gas, flow, fuel, t, needed):
        self.gas, self.flow, self.fuel, self.t, self.needed = gas, flow, fuel, t, needed


def completed(written):
    """The file with what every march needs filled in."""
    site = dict(written["site"])
    room = dict(site.get("room", {}))
    weather = dict(site["weather"][0])
    room.setdefault("temperature", "%.12g degC" % (known.ROOM_K - 273.15))
    room.setdefault("humidity", "%.12g %%" % (100 * known.ROOM_HUMIDITY))
    room.setdefault("pressure", "0 Pa")
    weather.setdefault("wind", "0 m/s")
    weather.setdefault("humidity", "%.12g %%" % (100 * known.OUTDOOR_HUMIDITY))
    inside, outside = si(room["temperature"]), si(weather["outdoor_temperature"])
    for zone, share in (("attic", known.ATTIC_SHARE), ("chase", known.CHASE_SHARE)):
        between = inside + share * (outside - inside)
        site.setdefault(zone + "_temperature", "%.12g degC" % (between - 273.15))
    site.update(room=room, weather=[weather])
    heater = dict(written["appliance"])
    for name in ("carbon_dioxide", "gas_flow", "gas_temperature"):
        heater[name] = heater[name]["high"]
    return dict(written, site=site, appliance=heater)


class Flue(Run):
    accuracy = 1e-6

    def __init__(self, written, walls, materials, fuels):
        full = completed(written)
        super().__init__(full, walls, materials, fuels)
        site, heater = full["site"], written["appliance"]
        weather = site["weather"][0]
        wind = si(weather["wind"])
        self.room_k = si(site["room"]["temperature"])
        damp = si(site["room"]["humidity"])
        self.room_density = air_density(self.pressure, self.room_k, damp)
        vapour = damp * saturation_pa(self.room_k) / self.pressure
        self.room_air = AIR * (1 - vapour)
        self.room_air[3] = vapour
        self.outlet_area = math.pi / 4 * si(heater["outlet"]["diameter"]) ** 2
        self.outlet_m = (si(heater["outlet"]["height"]) if "height" in heater["outlet"]
                         else known.OUTLET_HEIGHT_M)
        top = full["run"][-1]
        coefficient = {"clear": known.MOUTH_CAPPED if top["part"] == "cap" else known.MOUTH_OPEN,
                       "adverse": known.MOUTH_ADVERSE, "none": 0.0}[
                           site.get("top_position", "none")]
        self.top = coefficient * 0.5 * self.outdoor_density * wind ** 2
        self.house = None
        if "pressure" not in written["site"].get("room", {}):
            self.house = House(site, self.outlet_m, self.outdoor_density, self.room_density, wind)
        self.given_room = si(site["room"]["pressure"])
        self.fires = {end: self._fire(heater, fuels, end) for end in ("high", "low")}
        self.heater, self.materials, self.rows = heater, materials, walls
        self.air = {"room": (self.room_k, damp)}
        outside = si(weather["outdoor_temperature"]), si(weather["humidity"])
        self.air["outdoors"] = outside
        for zone in ("attic", "chase"):
            self.air[zone] = si(site[zone + "_temperature"]), outside[1]
        self.memories, self.watched = None, None

    def _fire(self, heater, fuels, end):
        fuel = heater["fuel"]
        moisture = si(fuel["moisture"])
        vapour = self.room_air[3] / (1 - self.room_air[3]) * 18.01528 / 28.9651
        moles = burnt(fuels[fuel["name"]], moisture, si(heater["carbon_dioxide"][end]), vapour)
        flow = si(heater["gas_flow"][end])
        per_fuel = (moles @ MOLAR) * (1 - moisture)
        return Fire(Gas(moles / moles.sum(), self.pressure), flow, flow / per_fuel,
                    si(heater["gas_temperature"][end]), si(heater["draft_needed"][end]))

    def room_at(self, taken):
        return self.house.pressure(max(taken, 0.0)) if self.house else self.given_room

    def lift(self, gas, flow, t):
        """What the run draws of itself: draft at the outlet less the pressure of the room."""
        self.gas, self.flow, self.inlet = gas, flow, t
        return self.march()[2] - self.given_room - self.top

    def draft(self, gas, flow, t, taken):
        return self.lift(gas, flow, t) + self.room_at(taken)

    # The wall of a run whose door was opened, eq. 68.

    def followed(self, piece, solved, since):
        if self.watched is not None:
            places = np.linspace(0.0, piece.length, 12) ** 3 / piece.length ** 2
            walls = [self.heat_and_wall(piece, float(np.interp(x, solved.t, solved.y[0])),
                                        since + x, x)[1] for x in places]
            self.watched[id(piece)] = places, walls

    def memory(self, piece, place):
        if self.memories is None:
            return 0.0, 0.0
        places, walls = self.memories[id(piece)]
        return self.kept(piece), float(np.interp(place, places, walls))

    def kept(self, piece):
        name, millimetres = self.rows[piece.wall]["layers"].split("|")[0].rsplit(" ", 1)
        row = self.materials[name]
        stored = float(row["density_kg_m3"]) * float(row["specific_heat_j_kgk"])
        reached = math.sqrt(math.pi * float(row["conductivity_w_mk"]) / stored * known.OPEN_S) / 2
        stored *= min(float(millimetres) * 1e-3, reached)
        return known.BOTH_FACES_W_M2K / math.expm1(known.BOTH_FACES_W_M2K * known.OPEN_S / stored)

    def remember(self, fire):
        self.memories, self.watched = None, {}
        self.lift(fire.gas, fire.flow, fire.t)
        self.memories, self.watched = self.watched, None

    # Kindling, eq. 29 and the cold start.

    def kindling_lift(self):
        """Forced flow alone carries heat, without entry effect, into walls as cold as their air."""
        low, flow = self.fires["low"].gas, known.KINDLING_SHARE * self.fires["high"].flow
        self.gas, self.flow = low, flow
        t, lift, area = known.KINDLING_K, 0.0, self.outlet_area
        for piece in self.pieces:
            lift -= (1 + piece.loss) * self.head(piece.area, t) - self.head(area, t)
            area = piece.area
            if not piece.straight:
                continue
            wall_k = self.air[piece.zone][0]
            roughness = self.walls[piece.place()].roughness / piece.diameter

            def rates(x, state):
                here = state[0]
                mu, k = low.transport(here)
                reynolds = flow / piece.area * piece.diameter / mu
                floored = (reynolds ** 8 + 2300.0 ** 8) ** 0.125
                pr = low.specific_heat(here) * mu / k
                h = 0.0214 * (floored ** 0.8 - 100) * pr ** 0.4 * k / piece.diameter
                return [-h * piece.perimeter * (here - wall_k) / (flow * low.specific_heat(here)),
                        (self.outdoor_density - low.density(here)) * GRAVITY
                        * piece.rise / piece.length
                        - self.friction_factor(reynolds, roughness) / piece.diameter
                        * self.head(piece.area, here)]

            before = t
            solved = solve_ivp(rates, (0.0, piece.length), [t, lift], method="LSODA", rtol=1e-8,
                               atol=1e-7)
            t, lift = solved.y[:, -1]
            lift -= 2 * (self.head(piece.area, t) - self.head(piece.area, before))
        return lift - self.top

    def idle(self):
        """Draft of the idle flue, temperature at which it turns, and the preheat that does it."""
        room = self.room_at(0.0)
        height = column = 0.0
        for piece in self.pieces:
            t, damp = self.air[piece.zone] if piece.zone else self.air["room"]
            height += piece.rise
            column += piece.rise * (self.outdoor_density - air_density(self.pressure, t, damp))
        idle_pa = room - self.top + column * GRAVITY
        turning_density = self.outdoor_density - (self.top - room) / (GRAVITY * height)
        turning = self.room_k * self.room_density / turning_density
        gas = self.fires["low"].gas
        power = known.KINDLING_SHARE * self.fires["high"].flow * (
            enthalpy(gas, known.KINDLING_K) - enthalpy(gas, self.room_k))
        seconds = 0.0 if idle_pa > 0 else brentq(
            lambda s: self._preheat(turning, s) - power * s, 1e-3, 1e6)
        return idle_pa, turning, seconds

    def _preheat(self, goal, seconds):
        heat = 0.0
        for piece in self.pieces:
            t, damp = self.air[piece.zone] if piece.zone else self.air["room"]
            if not piece.straight or goal <= t:
                continue
            name, millimetres = self.rows[piece.wall]["layers"].split("|")[0].rsplit(" ", 1)
            row = self.materials[name]
            stored = float(row["density_kg_m3"]) * float(row["specific_heat_j_kgk"])
            depth = min(float(millimetres) * 1e-3,
                        math.sqrt(float(row["conductivity_w_mk"]) / stored * seconds))
            heat += (goal - t) * piece.length * (
                piece.area * air_density(self.pressure, t, damp) * known.AIR_J_KGK
                + piece.perimeter * depth * stored)
        return heat
