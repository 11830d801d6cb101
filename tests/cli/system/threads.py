"""One, two and seven threads give the same bytes, in everything that works on several.

    threads.py PROGRAM EXAMPLES SCRATCH

Run on the preset `threads`, it is the test for races as well.
"""

from processes import begin, examples, expect, finish, run, write

begin()
# A file with tolerances, one that falls short, one with what was observed.
SPREAD = f"{examples}/weigh-house.json"
SHORT = f"{examples}/cider-press.json"
SEEN = f"{examples}/tannery.json"
lines = b""
for i in range(70):
    with open(SHORT if i % 7 else SPREAD, encoding="utf-8") as file:
        text = " ".join(" ".join(l for l in file.read().splitlines() if not l.strip().startswith("//")).split())
    lines += text.encode() + b"\n" if i % 11 else b'{"id": /\n'
write("records.ndjson", lines)

COMMANDS = [
    ["check", SPREAD, "--samples", "100", "--json"],
    ["batch", "records.ndjson", "--format", "ndjson"],
    ["sweep", SHORT, "--over", "outdoor=-10..10degC:4", "--over", "height=5..7m:3", "--json"],
    ["improve", SHORT, "--pairs", "--most", "3", "--json"],
    ["size", SHORT, "--json"],
    ["compare", SHORT, SPREAD, "--json"],
    ["diagnose", SEEN, "--json"],
]
on_several = 0
for command in COMMANDS:
    if b"--jobs" not in run("help", command[0])[1]:
        status, out, error = run(*command)
        expect(status in (0, 1), f"{command[0]}: {status} {error[:300]}")
        expect(run(*command)[1] == out, f"{command[0]}: twice the same")
        continue
    on_several += 1
    first = run(*command, "--jobs", "1")
    for jobs in ("2", "7"):
        status, out, error = run(*command, "--jobs", jobs)
        expect((status, out) == first[:2], f"{command[0]} on {jobs} threads: {status} {error[:300]}")
        expect("ThreadSanitizer" not in error, f"{command[0]} on {jobs} threads: {error[:2000]}")
expect(on_several >= 3, f"only {on_several} commands on several threads")
finish()
