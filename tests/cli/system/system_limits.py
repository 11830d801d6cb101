"""What the system does not give: memory, threads, room on the disk, a folder to write to, a reader.

    system_limits.py PROGRAM EXAMPLES SCRATCH

Exit status and words as documented, and what stood in a file before stays.
"""

import ctypes
import glob
import os
import pwd
import resource
import signal
import subprocess
import time

from processes import begin, examples, expect, finish, program, read, run, write

begin()
PLAN = f"{examples}/toll-house.json"
ANSWERS = [
    ["check", PLAN], ["check", PLAN, "--json"], ["report", PLAN], ["draw", PLAN], ["size", PLAN], ["warmup", PLAN],
    ["parts", PLAN], ["improve", PLAN, "--most", "1"], ["diagnose", PLAN], ["compare", PLAN, f"{examples}/tannery.json"],
    ["sweep", PLAN, "--over", "height=5..9m:3"], ["vary", PLAN, "--over", "height=5..9m:100"],
    ["batch", PLAN], ["catalog", "fuels"], ["template"], ["schema"], ["manual"],
    ["completions", "bash"],
]


def begun(arguments, limits=(), user=None, **more):
    """The program with less than it is used to. Without a user of its own root is bound by little."""
    libc = ctypes.CDLL(None)

    def before():
        for what, most in limits:
            resource.setrlimit(what, (most, most))
        if user is not None:
            os.setgroups([])
            os.setgid(user.pw_gid)
            os.setuid(user.pw_uid)
        libc.prctl(1, signal.SIGKILL)  # ends with this test

    return subprocess.run([program, *arguments], capture_output=True, preexec_fn=before, timeout=120, **more)


sanitized = b"Sanitizer" in begun(["schema"], [(resource.RLIMIT_AS, 400_000_000)]).stderr

# A disk that is full, by a limit on the size of files: the old answer stays, nothing is left aside.
for arguments in ANSWERS:
    write("answer", b"old\n")
    done = begun([*arguments, "--output", "answer"], [(resource.RLIMIT_FSIZE, 100)])
    what = f"{arguments[0]} on a full disk"
    expect(done.returncode == 3, f"{what}: status {done.returncode} {done.stderr[:200]}")
    expect(done.stderr.count(b"\n") == 1 and b"cannot write" in done.stderr, f"{what}: {done.stderr[:200]}")
    expect(read("answer") == b"old\n", f"{what}: the old answer is lost")
    for left in glob.glob("answer.*"):
        os.remove(left)  # of a batch: what is done so far
    expect(os.listdir(".") == ["answer"], f"{what}: leaves {os.listdir('.')}")
write("plan.json", b"old\n")
done = begun(["improve", f"{examples}/cider-press.json", "--write-plan", "1", "plan.json"], [(resource.RLIMIT_FSIZE, 100)])
expect(done.returncode == 3 and read("plan.json") == b"old\n", f"a plan on a full disk: {done.returncode} {done.stderr[:200]}")
os.remove("plan.json")

# Nobody reads the answer any more.
for arguments in ANSWERS:
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run([program, *arguments], stdout=writing, stderr=subprocess.PIPE, timeout=120)
    os.close(writing)
    expect(done.returncode == 3 and done.stderr.count(b"\n") <= 2 and b"cannot write" in done.stderr,
           f"{arguments[0]} to a closed pipe: {done.returncode} {done.stderr[:200]}")
    with open("/dev/full", "wb") as full:
        done = subprocess.run([program, *arguments], stdout=full, stderr=subprocess.PIPE, timeout=120)
    expect(done.returncode == 3 and b"cannot write" in done.stderr, f"{arguments[0]} to a full device: {done.returncode}")
# Nor what goes wrong.
for closed in ("2>&-", "2>/dev/full"):
    done = subprocess.run(f"'{program}' check no-such-file {closed}", shell=True, capture_output=True)
    expect(done.returncode == 3, f"complaints with {closed}: {done.returncode}")
done = subprocess.run(f"'{program}' schema >&-", shell=True, capture_output=True)
expect(done.returncode == 3, f"standard output closed: {done.returncode}")

# A folder nobody may write to.
user = pwd.getpwnam("nobody") if os.getuid() == 0 else None
os.mkdir("shut")
write("shut/answer", b"old\n")
os.chmod("shut/answer", 0o666)
os.chmod("shut", 0o555)
reachable = begun(["schema"], user=user, cwd="/") if os.access(program, os.X_OK) else None
if reachable is not None and reachable.returncode == 0:
    for arguments in ANSWERS:
        done = begun([*arguments, "--output", os.path.abspath("shut/answer")], user=user)
        expect(done.returncode == 3 and b"cannot write" in done.stderr,
               f"{arguments[0]} into a folder that is shut: {done.returncode} {done.stderr[:200]}")
        expect(read("shut/answer") == b"old\n" and os.listdir("shut") == ["answer"], f"{arguments[0]}: changes it")
os.chmod("shut", 0o755)

# Memory: an end in words, whatever is asked for; nothing half written.
if not sanitized:
    write("large.json", b'{"run": [' + b'{"part": "straight"},' * 700_000 + b"{}]}")
    for most in (60_000_000, 100_000_000, 160_000_000):
        for arguments in (["check", "large.json"], ["check", "large.json", "--json"], ["batch", "large.json"], ["report", "large.json"],
                          ["check", PLAN, "--samples", "1000000", "--jobs", "1"]):
            write("answer", b"old\n")
            done = begun([*arguments, "--output", "answer", *(["--force"] if arguments[0] == "batch" else [])], [(resource.RLIMIT_AS, most)])
            what = f"{arguments[:2]} in {most} bytes"
            expect(done.returncode in (0, 1, 2, 4), f"{what}: status {done.returncode} {done.stderr[:200]}")
            expect(done.returncode != 4 or b"memory" in done.stderr, f"{what}: {done.stderr[:200]}")
            expect(done.returncode < 2 or arguments[-1] == "--json" or done.returncode == 2 or read("answer") == b"old\n", f"{what}: half an answer")

    # Threads: fewer, and the same answer.
    few = [(resource.RLIMIT_AS, 300_000_000)]
    for arguments in (["check", f"{examples}/weigh-house.json", "--samples", "200"], ["improve", PLAN, "--most", "1"],
                      ["sweep", PLAN, "--over", "height=5..9m:3"], ["compare", PLAN, f"{examples}/tannery.json"],
                      ["batch", PLAN, f"{examples}/tannery.json", "--format", "ndjson"]):
        if subprocess.run([program, *arguments, "--jobs", "1"], capture_output=True).returncode == 2:
            continue  # knows no --jobs
        done = begun([*arguments, "--jobs", "1024"], few)
        one = run(*arguments, "--jobs", "1")
        expect(done.returncode == one[0] and done.stdout == one[1],
               f"{arguments[0]} with few threads: {done.returncode} {done.stderr[:200]}")

# Ended at any moment: the old answer or the whole new one, never half of it.
new = run("vary", PLAN, "--over", "height=5..9m:1000")[1]
for i in range(20):
    write("answer", b"old\n")
    process = subprocess.Popen([program, "vary", PLAN, "--over", "height=5..9m:1000", "--output", "answer"],
                               stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    time.sleep(0.002 * i)
    process.kill()
    process.wait()
    expect(read("answer") in (b"old\n", new), "half an answer behind a kill")

finish()
