"""The opened door, theory eq. 27 and 68 to 70."""

import math

import state_constants as known
from march_gas import Gas
from march_scipy import si
from march_wall import GRAVITY
from state_flue import enthalpy, greatest_root, temperature


class Door:
    """A door of a flue: wide open on a high fire or on embers, a minute after it was opened."""

    def __init__(self, flue, embers):
        heater = flue.heater
        door = heater.get("door", {})
        self.flue = flue
        self.width = si(door["width"]) if "width" in door else known.DOOR_WIDTH_M
        self.height = si(door["height"]) if "height" in door else known.DOOR_HEIGHT_M
        self.below = (flue.outlet_m - si(door["sill"]) - self.height if "sill" in door
                      else known.TOP_BELOW_OUTLET_M)
        high = flue.fires["high"]
        self.open_front = heater["type"] == "fireplace"
        embers_share = known.HEARTH_EMBERS_SHARE if self.open_front else known.EMBERS_SHARE
        share = embers_share if embers else 1.0
        self.wanted = known.FACE_M_S * (share ** (1 / 3) if self.open_front else 1.0)
        self.high, self.fuel, self.fire_flow = high, share * high.fuel, share * high.flow
        self.heat = share * high.flow * (enthalpy(high.gas, high.t)
                                         - enthalpy(high.gas, flue.room_k))
        before = flue.fires["low" if embers else "high"]
        self.lining_k = before.t
        self.start = 2.5 * high.flow
        flue.memories = None
        if not self.open_front:
            flue.remember(before)

    def gas(self, flow):
        """The fire's gas with room air up to this flow."""
        fire = min(self.fire_flow / flow, 1.0)
        gas_moles = fire / self.high.gas.molar * self.high.gas.x
        air = Gas(self.flue.room_air, self.flue.pressure)
        moles = gas_moles + (1 - fire) / air.molar * air.x
        return Gas(moles / moles.sum(), self.flue.pressure)

    def box(self, flow):
        gas, room_k = self.gas(flow), self.flue.room_k
        warmth = enthalpy(gas, room_k) + self.heat / max(flow, self.fire_flow)
        area, mass = known.LINING[self.flue.heater["type"]]
        stream = flow * gas.specific_heat(room_k)
        share = 1 - math.exp(-known.LINING_W_M2K * area / stream)
        if self.open_front:
            share = 0.0
        share *= math.exp(-share * stream * known.OPEN_S / (mass * known.LINING_J_KGK))
        warmth += share * max(0.0, enthalpy(gas, self.lining_k) - warmth)
        return gas, temperature(gas, warmth)

    def top_edge(self, flow):
        """Room less box at the top edge of the opening, and density in the box."""
        flue = self.flue
        gas, t = self.box(flow)
        density = gas.density(t)
        head = 0.5 * (flow / flue.outlet_area) ** 2 / density
        passages = (known.PASSAGE_SHARE * self.high.needed * (flow / self.high.flow) ** 2
                    * t / self.high.t) if not self.open_front else 0.0
        draft = flue.draft(gas, flow, t, flow - self.fuel)
        column = (flue.room_density - density) * GRAVITY * self.below
        return draft + column - known.VELOCITY_HEADS * head - passages, density

    def net_inflow(self, top, density):
        """Air in less gas out through the whole opening."""
        room = self.flue.room_density
        lift = (room - density) * GRAVITY
        neutral = min(max(-top / lift, 0.0), self.height)  # below the top edge

        def passed(begin, end, rho, sign):
            # integral of sqrt(2 rho |top + lift y|) dy
            a, b = abs(top + lift * begin), abs(top + lift * end)
            return sign * math.sqrt(2 * rho) * abs(b ** 1.5 - a ** 1.5) / (1.5 * lift)

        return known.DOORWAY * self.width * (passed(0.0, neutral, density, -1.0)
                                             + passed(neutral, self.height, room, 1.0))

    def working_point(self):
        """Flow of the run wide open and temperature of the box."""
        flow = greatest_root(
            lambda m: self.net_inflow(*self.top_edge(m)) - (m - self.fuel), self.start)
        return flow, self.box(flow)[1]

    def shares(self):
        """How far it may be opened by face velocity and by the mixed box."""
        flow = greatest_root(lambda m: self.top_edge(m)[0], self.start)
        gas, t = self.box(flow)
        air = flow - self.fuel
        face = self.wanted * self.flue.room_density * self.width * self.height
        return air / face, air / self.net_inflow(0.0, gas.density(t))
