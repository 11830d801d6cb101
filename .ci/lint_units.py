"""Writes the units of a build as files of their own, for the linter.

    python3 lint_units.py BUILD FOLDER

A unit includes its sources; to the static analyzer they are headers, which it passes over unless it
is made to look into those of every library as well. With their text in one file they are what is
looked at, and the libraries are not: half the time. FOLDER gets the files and their compile commands.
"""

import json
import pathlib
import re
import sys

build, folder = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
folder.mkdir(parents=True, exist_ok=True)
for old in folder.glob("unit_*.cpp"):
    old.unlink()
included = re.compile(r'^#include "(.*)"$', re.MULTILINE)


def text_of(source):
    """The source with what it includes from its own folder named in full."""
    def in_full(line):
        beside = source.parent / line[1]
        return f'#include "{beside}"' if beside.exists() else line[0]
    return included.sub(in_full, source.read_text())


commands, known = [], set()
for command in json.loads((build / "compile_commands.json").read_text()):
    unit = pathlib.Path(command["directory"], command["file"])
    if not unit.is_relative_to(build / "src") and "/src/" not in command["file"]:
        continue
    sources = [unit]
    if unit.suffix == ".cxx":
        sources = [pathlib.Path(name) for name in included.findall(unit.read_text())]
    if known >= set(sources):
        continue
    known |= set(sources)
    target = folder / f"unit_{len(commands)}.cpp"
    target.write_text("".join(f"// {source}\n{text_of(source)}\n" for source in sources))
    commands.append({"directory": command["directory"], "file": str(target),
                     "command": command["command"].replace(command["file"], str(target))})
(folder / "compile_commands.json").write_text(json.dumps(commands, indent=1))
