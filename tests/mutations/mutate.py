"""Changes every constant the physics uses by a few per cent, one at a time, and tells which test sees it.

    python3 mutate.py BUILD SCRATCH [--factor 1.05] [--only REGEX] [--jobs N] > table

BUILD is a build folder whose tests are built. The sources of physics, march, states, warm-up and the
catalog are copied to SCRATCH with each constant wrapped in a call that changes it when FW_MUTANT names
it, are compiled once, and linked before the library: a mutant is a run, not a build. Not run by ctest.
Tests that compare with past output (golden, agreement) are left out: they would see any change and
say nothing about which side is right. A constant inside a constant expression cannot be wrapped; it
is listed at the end as not tried."""

import argparse
import concurrent.futures
import json
import os
import pathlib
import re
import shlex
import subprocess
import sys

import constants

ROOT = pathlib.Path(__file__).resolve().parents[2]
# What sees most first, then fastest first; the run of a mutant ends at the first that fails.
TESTS = ("published/published", "unit/unit_methods", "unit/unit_catalog", "unit/unit_house",
         "unit/unit_model", "unit/unit_leaks", "unit/unit_physics", "unit/unit_warmup")
HOOK = """#pragma once
#include <cstdlib>
inline int fw_active = -1;
inline double fw_factor = 1.0;
__attribute__((constructor(101))) static void fw_read() {
    const char* which = std::getenv("FW_MUTANT");
    const char* by = std::getenv("FW_FACTOR");
    fw_active = which ? std::atoi(which) : -1;
    fw_factor = by ? std::atof(by) : 1.0;
}
inline double fw_mutant(int id, double value) { return id == fw_active ? value * fw_factor : value; }
"""


class Sources:
    """The copies with wrapped constants, and the mutants in them."""

    def __init__(self, scratch, commands):
        self.scratch, self.commands = scratch, commands
        self.mutants, self.not_tried, self.named = [], [], {}
        self.copies = {}

    def number_of(self, file, line, text):
        """Uses of a constant of a header share a number."""
        if text in self.named:
            return self.named[text]
        is_named = not text[0].isdigit()
        name = text if is_named else "%s:%d" % (file.relative_to(ROOT), line)
        one = constants.Mutant(len(self.mutants), name, text)
        one.place = None if is_named else (file, line)
        self.mutants.append(one)
        if is_named:
            self.named[text] = one.number
        return one.number

    def copy(self, file):
        lines = file.read_text().splitlines()
        fresh = []
        for number, line in enumerate(lines, 1):
            fresh.append(constants.rewritten(line, lambda text, whole: "fw_mutant(%d, %s)" % (
                self.number_of(file, number, text), whole)))
        self.copies[file] = lines, fresh

    def compiled(self, file):
        """Compiles the copy; lines that do not compile get their constants back."""
        lines, fresh = self.copies[file]
        out = self.scratch / (file.stem + ".cpp")
        target = self.scratch / (file.stem + ".o")
        for _ in range(12):
            out.write_text("\n".join(fresh) + "\n")
            command = [word for word in shlex.split(self.commands[str(file)]) if word != "-Werror"]
            command[command.index("-o") + 1] = str(target)
            command[command.index("-c") + 1] = str(out)
            command[1:1] = ["-w", "-I" + str(self.scratch), "-I" + str(file.parent), "-include",
                            str(self.scratch / "fw_mutant.hpp")]
            told = subprocess.run(command, capture_output=True, text=True)
            if told.returncode == 0:
                return target
            bad = {int(n) for n in re.findall(re.escape(str(out)) + r":(\d+):", told.stderr)}
            bad = {n for n in bad if fresh[n - 1] != lines[n - 1]}
            if not bad:
                raise SystemExit(told.stderr)
            for n in bad:
                fresh[n - 1] = lines[n - 1]
                self.not_tried += [m for m in self.mutants if m.place == (file, n)]
        raise SystemExit("%s does not compile" % file)


def catalog_copy(scratch, build, mutants, factor):
    """The tables as variables, and what changes a cell before the program begins."""
    folder = scratch / "fluewright_data"
    folder.mkdir(exist_ok=True)
    for table in (build / "data/generated/fluewright_data").iterdir():
        text = table.read_text().replace("inline constexpr auto", "inline auto")
        (folder / table.name).write_text(text)
    text = (ROOT / "src/model/catalog/catalog.cpp").read_text()
    text = re.sub(r"static_assert\(.*?\);\n(?=\n|static_assert)", "", text, flags=re.S)
    rows = {"defaults": "default_rows", "walls": "wall_rows", "materials": "material_rows",
            "fuels": "fuel_rows", "fittings": "fitting_rows",
            "appliance_defaults": "appliance_default_rows"}
    changes = []
    for m in mutants:
        table, row, column = m.cell
        if column.startswith("layer "):
            changes.append('    case %d: %s[%d].layers = "%s"; break;'
                           % (m.number, rows[table], row, constants.thickened(m, factor)))
            continue
        member = re.sub(r"_mm$", "_m", re.sub(r"_pct$", "", column)).replace("_mj_kg", "_j_kg")
        changes.append("    case %d: %s[%d].%s *= fw_factor; break;"
                       % (m.number, rows[table], row, member))
    last = text.rindex('#include "fluewright_data')
    end = text.index("\n", last) + 1
    return (text[:end] + "__attribute__((constructor(102))) void fw_change() {\n"
            "    switch (fw_active) {\n" + "\n".join(changes) + "\n    }\n}\n" + text[end:])


def linked(scratch, build, objects):
    """The tests with the copies in place of the library's own files."""
    programs = []
    for test in TESTS:
        told = subprocess.run(["ninja", "-C", str(build), "-t", "commands", "-s", "tests/" + test],
                              check=True, capture_output=True, text=True).stdout
        command = shlex.split(told.split("&&")[1])
        program = scratch / pathlib.Path(test).name
        command[command.index("-o") + 1] = str(program)
        library = next(i for i, word in enumerate(command) if word.endswith("libfluewright.a"))
        command[library:library] = [str(o) for o in objects]
        subprocess.run(command, check=True, cwd=build)
        programs.append(program)
    return programs


def killer(programs, mutant, factor):
    """The test that sees it, and in the tables of published figures the first row that does."""
    env = dict(os.environ, FW_MUTANT=str(mutant.number), FW_FACTOR=str(factor))
    for program in programs:
        try:
            told = subprocess.run([program], env=env, capture_output=True, text=True, timeout=120,
                                  errors="replace")
        except subprocess.TimeoutExpired:
            return program.name + " (never ends)"
        if told.returncode != 0:
            tables = dict.fromkeys(re.findall(r"^(\w+)\.csv:\d+: row", told.stdout, re.M))
            return program.name + (": " + ", ".join(list(tables)[:4]) if tables else "")
    return None


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("build", type=pathlib.Path)
    ask.add_argument("scratch", type=pathlib.Path)
    ask.add_argument("--factor", type=float, default=1.05)
    ask.add_argument("--only", default="")
    ask.add_argument("--jobs", type=int, default=1)
    given = ask.parse_args()
    build, scratch = given.build.resolve(), given.scratch.resolve()
    scratch.mkdir(parents=True, exist_ok=True)
    (scratch / "fw_mutant.hpp").write_text(HOOK)
    commands = {e["file"]: e["command"]
                for e in json.loads((build / "compile_commands.json").read_text())}
    sources = Sources(scratch, commands)
    for folder in constants.SOURCES:
        for file in sorted((ROOT / folder).glob("*.cpp")):
            sources.copy(file)
    cells = constants.table_mutants(ROOT / "data", len(sources.mutants))
    os.chdir(build)
    with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
        objects = list(pool.map(sources.compiled, sources.copies))
        catalog = ROOT / "src/model/catalog/catalog.cpp"
        text = catalog_copy(scratch, build, cells, given.factor).splitlines()
        sources.copies[catalog] = text, text
        objects.append(sources.compiled(catalog))
        programs = linked(scratch, build, objects)
        sound = killer(programs, constants.Mutant(-1, "", ""), 1.0)
        if sound:
            raise SystemExit("without any change: " + sound)
        skipped = {m.number for m in sources.not_tried}
        tried = [m for m in sources.mutants + cells
                 if m.number not in skipped and re.search(given.only, m.name)]
        found = pool.map(lambda m: killer(programs, m, given.factor), tried)
        survived = 0
        for mutant, by in zip(tried, found):
            survived += by is None
            print("%s\t%s\t%s" % (mutant.name, mutant.text, by or "SURVIVED"), flush=True)
    for mutant in sources.not_tried:
        print("%s\t%s\tnot tried" % (mutant.name, mutant.text))
    print("%d constants, %d seen, %d survived, %d not tried" % (
        len(tried), len(tried) - survived, survived, len(sources.not_tried)), file=sys.stderr)


if __name__ == "__main__":
    main()
