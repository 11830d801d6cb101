"""States of a few installations by the equations of docs/theory.md: fires and idle flue in houses and
wind, an opened door on a fire and on embers, kindling and preheat. Code and constants are its own."""

import json
import math
import pathlib

import second_copy
import state_constants as known
from state_door import Door
from state_flue import Flue, greatest_root
from table import Table

CLOSE = 1e-3
FILE = pathlib.Path(__file__).resolve().parent / "state_installations.jsonl"
REASON = "method: same equations, other code without fits"


def free_burn(flue):
    """Flow at which the draft is what the appliance takes, its resistance growing with the square."""
    high = flue.fires["high"]

    def head(flow):
        return 0.5 * (flow / flue.outlet_area) ** 2 / high.gas.density(high.t)

    def draft(flow):
        return flue.draft(high.gas, flow, high.t, flow * (1 - high.fuel / high.flow))

    needed = max(high.needed, head(high.flow))
    flow = greatest_root(lambda m: draft(m) - needed * (m / high.flow) ** 2, high.flow)
    most = (greatest_root(lambda m: draft(m) - max(high.needed, head(m)), high.flow)
            if draft(high.flow) > high.needed else None)
    return flow, most


def figures(flue):
    """(check, state, figure, tolerance, kind, topic)"""
    for end, state in (("high", "high_fire"), ("low", "low_fire")):
        fire = flue.fires[end]
        draft = flue.draft(fire.gas, fire.flow, fire.t, fire.flow - fire.fuel)
        yield "state_draft", state, draft, "0.0003", "relative", "States: draft of a fire"
        if flue.house:
            yield ("state_room_pressure", state, flue.room_at(fire.flow - fire.fuel),
                   "0.0001", "relative", "States: room pressure in a house")
    high, low = flue.fires["high"], flue.fires["low"]
    power = (math.log((high.t - flue.room_k) / (low.t - flue.room_k))
             / math.log(high.flow / low.flow))
    held = flue.room_k + (high.t - flue.room_k) * 0.5 ** min(max(power, 0.0), known.STARVED_POWER)
    yield ("state_tended_temperature", "high_fire", held - 273.15, "0.001", "relative",
           "States: gas of a fire that gets half its air")
    flow, most = free_burn(flue)
    yield "state_flow", "free_burn", 1e3 * flow, "0.0005", "relative", "States: flow of a free burn"
    if most:
        yield ("state_capacity", "free_burn", 1e3 * most, "0.0006", "relative",
               "States: flow at which the needed draft is just met")
    for embers, state in ((False, "door_open_high"), (True, "door_open_embers")):
        door = Door(flue, embers)
        flow, box_k = door.working_point()
        velocity, mixed = door.shares()
        yield ("state_flow", state, 1e3 * flow, "0.005", "relative",
               "States: flow of the run with the door open")
        yield ("state_box_temperature", state, box_k - 273.15, "0.5", "absolute",
               "States: box behind an open door")
        yield ("state_opening_share", state, velocity, "0.005", "relative",
               "States: how far a door opens, by face velocity")
        yield ("state_opening_share_mixed", state, mixed, "0.006", "relative",
               "States: how far a door opens, mixed box")
    flue.memories = None
    idle_pa, turning, seconds = flue.idle()
    yield "state_draft", "idle", idle_pa, "0.0005", "absolute", "States: draft of an idle flue"
    yield ("state_turning", "idle", turning - 273.15, "0.002", "absolute",
           "States: temperature at which an idle flue turns")
    if seconds > 0:
        yield ("state_preheat", "idle", seconds, "0.0006", "relative",
               "States: preheat that turns an idle flue")
    # The program takes the coefficients at the lower end of each cell, which tells where the gas
    # loses much of its heat.
    kindling = flue.kindling_lift() + flue.room_at(0.0)
    yield ("state_draft", "cold_start", kindling, "0.001" if door.open_front else "0.004",
           "relative", "States: draft of kindling gas")


def table():
    rows = Table("states_scipy", "SS", source="scipy-library", mark="computed", reason=REASON,
                 place="integrate.solve_ivp, method LSODA; optimize.brentq")
    copies = second_copy.walls(), second_copy.materials(), second_copy.fuels()
    for number, line in enumerate(FILE.read_text().splitlines()):
        for check, state, value, tolerance, kind, topic in figures(Flue(json.loads(line), *copies)):
            rows.add(check, dict(installation=number, state=state), "%.7g" % value,
                     tolerance=tolerance, tolerance_kind=kind, topic=topic)
    return rows


if __name__ == "__main__":
    table().write()
