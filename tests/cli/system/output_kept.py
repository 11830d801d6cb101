"""Nothing is lost: no command writes over what it reads, and a file is there whole or not at all.

    output_kept.py PROGRAM EXAMPLES SCRATCH
"""

import os
import shutil
import stat
import subprocess

from processes import begin, examples, expect, finish, program, read, run, write

begin()
plan = read(os.path.join(examples, "toll-house.json"))
stock = b'{"stock": [{"wall": "single-wall steel", "diameter": "6 in", "length": "4 ft", "count": 1}]}'
prices = b'{"currency": "crowns", "prices": {"air-inlet": 60}}'


def fresh():
    for name in os.listdir("."):
        shutil.rmtree(name) if os.path.isdir(name) and not os.path.islink(name) else os.remove(name)
    write("plan.json", plan)
    write("second.json", plan)
    write("stock.json", stock)
    write("prices.json", prices)
    os.symlink("plan.json", "link.json")
    os.link("plan.json", "hard.json")
    os.symlink("second.json", "second-link.json")


commands = [
    ("check", "plan.json"),
    ("check", "plan.json", "--json"),
    ("size", "plan.json"),
    ("warmup", "plan.json"),
    ("parts", "plan.json"),
    ("improve", "plan.json", "--most", "1"),
    ("diagnose", "plan.json"),
    ("sweep", "plan.json", "--over", "height=3..5m:2"),
    ("vary", "plan.json", "--over", "height=3..5m:2"),
    ("batch", "plan.json", "second.json"),
    ("compare", "plan.json", "second.json"),
]
for command in commands:
    for target in ("plan.json", "./plan.json", "link.json", "hard.json"):
        fresh()
        before = sorted(os.listdir("."))
        status, out, error = run(*command, "-o", target)
        expect(status == 2 and "input" in error, f"{command} -o {target}: {status} {error}")
        expect(read("plan.json") == plan, f"{command} -o {target}: the input is lost")
        expect(sorted(os.listdir(".")) == before, f"{command} -o {target}: leaves a file")

for command, target in [
    (("compare", "plan.json", "second.json"), "second.json"),
    (("compare", "plan.json", "second.json"), "second-link.json"),
    (("batch", "plan.json", "second.json"), "second.json"),
    (("batch", "."), "second.json"),
    (("parts", "plan.json", "--stock", "stock.json"), "stock.json"),
    (("improve", "plan.json", "--prices", "prices.json"), "prices.json"),
]:
    fresh()
    status, out, error = run(*command, "-o", target)
    expect(status == 2, f"{command} -o {target}: {status} {error}")
    for name, text in (("plan.json", plan), ("second.json", plan), ("stock.json", stock), ("prices.json", prices)):
        expect(read(name) == text, f"{command} -o {target}: {name} is lost")
fresh()
status, out, error = run("improve", "plan.json", "--write-plan", "1", "hard.json")
expect(status == 2 and read("plan.json") == plan, f"a plan over its input: {error}")
with open("plan.json", "rb") as given:
    done = subprocess.run([program, "check", "-", "-o", "plan.json"], stdin=given, capture_output=True)
expect(done.returncode == 2 and read("plan.json") == plan, "an input given as standard input is known")

# Links are followed, devices and pipes left alone, circles refused.
fresh()
os.symlink("made.txt", "dangling.txt")
expect(run("explain", "run", "-o", "dangling.txt")[0] in (0, 2), "a link to nothing yet")
status, out, error = run("schema", "-o", "dangling.txt")
expect(status == 0 and os.path.islink("dangling.txt") and os.path.exists("made.txt"), error)
os.chmod("made.txt", 0o640)
run("schema", "-o", "dangling.txt")
expect(stat.S_IMODE(os.stat("made.txt").st_mode) == 0o640, "the mode is kept")
os.symlink("b", "a")
os.symlink("a", "b")
status, out, error = run("schema", "-o", "a")
expect(status == 3 and "circle" in error, f"links in a circle: {status} {error}")
os.mkfifo("pipe")
for device in ("pipe", "/dev/null"):
    for command in (("schema",), ("vary", "plan.json", "--over", "height=3..5m:2"), ("batch", "plan.json")):
        before = os.stat(device)
        status, out, error = run(*command, "-o", device)
        expect(status == 3 and "--force" in error, f"{command} -o {device}: {status} {error}")
        after = os.stat(device)
        expect((before.st_ino, before.st_mode) == (after.st_ino, after.st_mode), f"{device} is kept")
expect(run("schema", "-o", "/dev/null", "--force")[0] == 0, "a device with --force")
status, out, error = run("schema", "-o", ".")
expect(status == 3 and "folder" in error, error)
status, out, error = run("schema", "-o", "no/such/folder/x")
expect(status == 3 and "No such file" in error, error)
expect(run("schema", "-o", "n" * 300)[0] == 3, "a name too long")
write("x.csv.partial", b"letters to my grandmother\n")
status, out, error = run("batch", "plan.json", "--format", "csv", "-o", "x.csv")
expect(status == 3 and read("x.csv.partial").startswith(b"letters"), "somebody's file is kept")

# A full disk: what stood there stays.
if os.path.exists("/dev/full"):
    status, out, error = run("schema", "-o", "/dev/full", "--force")
    expect(status == 3 and "space" in error, error)
    full = subprocess.run(f"'{program}' schema >/dev/full", shell=True, capture_output=True)
    expect(full.returncode == 3, "standard output that is full")

# What stands in a file or an argument cannot steer the terminal, nor a table program.
escape = plan.replace(b'"title": "', b'"title": "\\u001b[2J', 1)
write("escape.json", escape)
status, out, error = run("check", "escape.json")
expect(status == 2 and "U+001B" in error and "\x1b" not in error, f"an escape in a title: {error}")
for code in ("\\u202e", "\\u0085", "\\ufffe", "\\u0000", "\\n"):
    write("escape.json", plan.replace(b'"title": "', b'"title": "' + code.encode(), 1))
    expect(run("check", "escape.json")[0] == 2, f"{code} in a title")
for arguments in (["che\x1b[31mck"], ["check", "no\x1b[2Jfile\u202e"], ["explain", "\x1b]0;x\x07"],
                  ["check", "plan.json", "--rules", "\x1b[1m"], ["size", "plan.json", "--heights", "\x1bc"],
                  ["sweep", "plan.json", "--over", "\x1b=1"], ["catalog", "\x9b"]):
    status, out, error = run(*arguments)
    expect(status in (2, 3), f"{arguments}: {status}")
    expect(not any(c in error for c in "\x1b\x07\u202e\x9b"), f"{arguments}: raw in {error!r}")
status, out, error = run("check", "n" * 100_000)
expect(status == 3 or status == 2, f"{status}")
expect(len(error) < 5000, f"a long name makes a message of {len(error)}")
formula = plan.replace(b'"title": "', b'"id": "=1+1", "title": "@', 1)
if b'"id"' not in plan:
    write("formula.json", formula)
    status, out, error = run("batch", "formula.json", "--format", "csv", "--fields", "all")
    expect(b",=1" not in out and b"'=1+1" in out and b"'@" in out, f"a formula in a cell: {out!r} {error}")

finish()
