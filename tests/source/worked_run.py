"""Fails unless the run worked by hand in docs/theory.md is worked right, and fluewright comes to the
same within what the page allows.

    python3 worked_run.py FLUEWRIGHT CHECKOUT

A line of the calculation is "name = expression -> value unit note", in the order it is worked; one that begins with "# " is a
note on the next.
"""

import json
import math
import pathlib
import re
import subprocess
import sys

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
chapter = (root / "docs/theory.md").read_text().split("worked by hand\n", 1)[1]
file = re.search(r"```json worked\.json\n(.*?)```", chapter, re.S).group(1)
lines = re.search(r"```text\n(.*?)```", chapter, re.S).group(1).strip().split("\n")
faults = []
known = {"pi": math.pi, "log": math.log, "exp": math.exp}
for line in lines:
    if line.startswith("# "):
        continue
    name, expression, printed = re.match(r"(\w+) *= (.*?) *-> +(\S+)", line).groups()
    known[name] = eval(expression, {"__builtins__": {}}, known)
    if f"{known[name]:.4g}" != printed:
        faults.append(f"{name} is {known[name]:.4g}, not {printed}")
answer = json.loads(
    subprocess.run(
        [program, "check", "-", "--json", "--details"], input=file, capture_output=True, text=True, check=False
    ).stdout
)
states = answer["result"]["states"]
high = next(state for state in states if state["state"] == "high fire")
limits = dict(re.findall(r"\| ([a-z ]+) \|[^|]*\|[^|]*\| ([\d.]+) (?:K|Pa) \|", chapter))
pairs = {
    "gas at the chimney top": (known["T_top"], high["top_temperature_k"]),
    "draft at the outlet": (known["draft"], high["draft_pa"]),
}
for name, (hand, computed) in pairs.items():
    if abs(hand - computed) > float(limits[name]):
        faults.append(f"{name}: {hand:.4g} by hand, {computed:.4g} computed")
print("\n".join(faults) or f"{len(lines)} lines worked, {len(pairs)} figures agree")
sys.exit(1 if faults else 0)
