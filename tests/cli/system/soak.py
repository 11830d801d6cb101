"""A batch without an end, with faults in it: its memory stays what it was.

    soak.py PROGRAM EXAMPLES SCRATCH [SECONDS]

To be run by hand; prints the memory over time. Ends with status 1 where it grows by more than a tenth.
"""

import glob
import subprocess
import sys
import threading
import time

from processes import begin, examples, expect, finish, program

seconds = float(sys.argv[4]) if len(sys.argv) > 4 else 120.0
begin()
records = []
for path in sorted(glob.glob(examples + "/*.json")):
    with open(path, encoding="utf-8") as file:
        lines = [line for line in file if not line.strip().startswith("//")]
    records.append(" ".join(" ".join(lines).split()).encode() + b"\n")
records += [b'{"id": /\n', b"\xff\xfe\n", b'{"id": "' + b"x" * 3_000_000 + b'"}\n', b"[" * 1000 + b"\n"]

process = subprocess.Popen([program, "batch", "-", "--format", "ndjson", "-o", "endless.ndjson"], stdin=subprocess.PIPE,
                           stderr=subprocess.PIPE)
ending = time.monotonic() + seconds
fed = 0


def feed():
    global fed
    while time.monotonic() < ending:
        for record in records:
            process.stdin.write(record)
            fed += 1
    process.stdin.close()


feeder = threading.Thread(target=feed)
feeder.start()
seen = []
while feeder.is_alive():
    time.sleep(min(5.0, seconds / 12.0))
    try:
        with open(f"/proc/{process.pid}/status", encoding="ascii") as status:
            seen.append(next(int(line.split()[1]) for line in status if line.startswith("VmRSS")))
    except (OSError, StopIteration):
        break
feeder.join()
process.stderr.read()
process.wait()
print(f"{fed} records in {seconds:.0f} s; resident kB over time:", *seen)
third = len(seen) // 3
expect(process.returncode == 2, f"status {process.returncode}")
expect(third > 0 and max(seen[2 * third :]) < 1.1 * max(seen[: 2 * third]), "the memory grows")
finish()
