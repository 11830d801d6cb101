"""Runs the commands of docs/guide/layouts.md as they stand there.

Usage: guide_layouts.py PROGRAM ROOT SCRATCH; status 77 where pandas or matplotlib is missing.
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys

try:
    import matplotlib  # noqa: F401
    import pandas
except ImportError:
    sys.exit(77)

program, root, scratch = (pathlib.Path(word).resolve() for word in sys.argv[1:4])
page = (root / "docs/guide/layouts.md").read_text()
blocks = re.findall(r"^```(sh|python)\n(.*?)^```$", page, re.S | re.M)
assert [kind for kind, _ in blocks] == ["sh"] * 5 + ["python"] * 2, "the page has other blocks"

shutil.rmtree(scratch, ignore_errors=True)
scratch.mkdir(parents=True)
for name in ("boat-shed", "pump-house", "weaving-mill"):
    shutil.copy(root / f"examples/{name}.json", scratch)
paths = dict(os.environ, PATH=f"{program.parent}:{os.environ['PATH']}", HOME=str(scratch))


def run(words, text):
    done = subprocess.run(words, input=text, cwd=scratch, env=paths, text=True, capture_output=True)
    assert done.returncode == 0, f"{text}\nstatus {done.returncode}\n{done.stdout}{done.stderr}"
    return done.stdout + done.stderr


told = [run(["bash", "-eu"], text) for kind, text in blocks if kind == "sh"]
assert "2 installations" in told[1] and "FAULT" not in told[1], told[1]
assert "pump-house" in told[2], told[2]
assert "500 installations" in told[3] and "found most often" in told[3], told[3]
python = "".join(text for kind, text in blocks if kind == "python")
printed = run([sys.executable, "-B", "-"], python)

layouts = pandas.read_csv(scratch / "layouts.csv")
assert len(layouts) == 500
for column in ("outdoor_k", "height_m", "diameter_m", "moisture_wet_basis", "margin_pa", "rules_not_met"):
    assert layouts[column].dtype.kind in "if", f"{column} is no number: {layouts[column].dtype}"
assert set(layouts.fuel) == {"beech", "pine"} and set(layouts.cap) == {"rain", "open"}
assert (layouts.fuel == "pine").sum() == 250
assert layouts.id[0].startswith("boat-shed-001 outdoor="), layouts.id[0]
assert layouts.outdoor_k.between(255.1, 283.2).all()
assert layouts.height_m.between(2.49, 7.01).all()
assert abs(layouts.moisture_wet_basis.mean() - 0.18) < 0.002
assert layouts.diameter_m.nunique() > 3
assert len(pandas.read_csv(scratch / "by-hand.csv")) == 3
assert re.search(r"^503 \d+ \d+ \d+$", printed, re.M), printed
assert (scratch / "margin.svg").read_text().rstrip().endswith("</svg>")
