"""Room pressure by the balance of a house's air, theory eq. 31."""

import math

from scipy.optimize import brentq

import state_constants as known
from march_scipy import si
from march_wall import GRAVITY


class House:
    """The house of a file, or the assumed one, in the air of its weather."""

    def __init__(self, site, outlet_m, outdoor_density, room_density, wind):
        written = site.get("house", {})
        self.outdoor, self.room = outdoor_density, room_density
        height = (si(written["height"]) if "height" in written
                  else written["storeys"] * known.STOREY_M if "storeys" in written
                  else known.HOUSE_HEIGHT_M)
        outlet = outlet_m + (si(written["appliance_level"]) if "appliance_level" in written else 0.0)
        changes = (float(written["air_changes_at_50_pa"].split()[0])
                   if "air_changes_at_50_pa" in written
                   else known.CHANGES_TIGHT_1_H if site.get("tight_house")
                   else known.CHANGES_50_PA_1_H)
        volume = (float(written["volume"].split()[0]) if "volume" in written else known.VOLUME_M3)
        leak = volume * changes / 3600.0 / 50.0 ** known.LEAK_EXPONENT
        top = 0.5
        if "neutral_level" in written:  # warm inside: in below, out above
            neutral = si(written["neutral_level"])
            below = (self.outdoor * neutral) ** known.LEAK_EXPONENT
            above = (self.room * (height - neutral)) ** known.LEAK_EXPONENT
            top = below / (below + above)
        head = 0.5 * self.outdoor * (known.HOUSE_WIND_SHARE * wind) ** 2
        self.cracks, self.openings = [], []
        for level, share in ((0.0, 1.0 - top), (height, top)):
            for walls, wind_share in ((0.25, known.WINDWARD), (0.25, known.LEE),
                                      (0.5, known.SIDES)):
                self.cracks.append((level - outlet, leak * share * walls, wind_share * head))
        for entry in written.get("openings", []):
            side = known.WINDWARD if entry.get("side") == "windward" else known.LEE
            self.openings.append((si(entry["height"]) - outlet_m, self.area(entry["area"]),
                                  side * head))
        if "air_inlet" in site:
            self.openings.append((0.0, self.area(site["air_inlet"]), known.LEE * head))
        self.fans = sum(float(fan["flow"].split()[0]) * 1e-3 * self.room
                        for fan in written.get("fans", []))

    @staticmethod
    def area(text):
        return float(text.split()[0]) * 1e-4

    def surplus(self, pressure, taken):
        lift = (self.outdoor - self.room) * GRAVITY
        air = -taken - self.fans
        for height, leak, wind in self.cracks:
            inwards = wind - pressure - lift * height
            density = self.outdoor if inwards > 0 else self.room
            flow = leak * abs(inwards) ** known.LEAK_EXPONENT
            air += math.copysign(density * (known.TEST_DENSITY / density)
                                 ** (1 - known.LEAK_EXPONENT) * flow, inwards)
        for height, area, wind in self.openings:
            inwards = wind - pressure - lift * height
            density = self.outdoor if inwards > 0 else self.room
            air += math.copysign(known.ORIFICE * area * math.sqrt(2 * density * abs(inwards)),
                                 inwards)
        return air

    def pressure(self, taken):
        return brentq(self.surplus, -500.0, 500.0, args=(taken,), xtol=1e-9)
