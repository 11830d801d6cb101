"""Fails on a folder of the code with too many files to find one's way, and on a file too long to read.

    python3 folders.py CHECKOUT

Tables and golden outputs do not count.
"""

import pathlib
import sys

MOST_FILES = 25
MOST_LINES = 400
# A folder that has more, and why.
root = pathlib.Path(sys.argv[1])
faults, seen = [], 0
for top in ("include", "src", "tests", "data/embed", "examples/cpp"):
    folders = [root / top] + sorted(path for path in (root / top).rglob("*") if path.is_dir())
    for folder in folders:
        files = [path for path in sorted(folder.iterdir()) if path.suffix in (".cpp", ".hpp", ".py", ".cmake", ".sh")]
        seen += len(files)
        name = folder.relative_to(root).as_posix()
        if len(files) > MOST_FILES:
            faults.append(f"{name}: {len(files)} files, more than {MOST_FILES}: give it folders")
        for path in files:
            name = path.relative_to(root).as_posix()
            lines = path.read_text().count("\n")
            if lines > MOST_LINES:
                faults.append(f"{name}: {lines} lines, more than {MOST_LINES}")
if seen == 0:
    faults.append("no files found")
if faults:
    sys.exit("\n".join(faults))
