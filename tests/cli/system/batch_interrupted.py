"""A batch that is interrupted, cut, taken up again, or asked to write where it must not.

    batch_interrupted.py PROGRAM EXAMPLES SCRATCH
"""

import fcntl
import glob
import os
import signal
import subprocess
import time

from processes import begin, examples, expect, finish, program, read, run, write

begin()


def batch(*arguments, text=b""):
    return run("batch", *arguments, text=text)


def one_line(path):
    lines = [l for l in open(path, encoding="utf-8") if not l.strip().startswith("//")]
    return " ".join(" ".join(lines).split()).encode() + b"\n"


records = [one_line(path) for path in sorted(glob.glob(examples + "/*.json"))]
records.insert(3, b'{"id": "=broken"}\n')
stream = b"".join((records * 6)[:110])


def interrupted(name, arguments, number, tail=b""):
    """A batch of the stream whose producer stalls; ended by a signal once something is written."""
    process = subprocess.Popen(
        [program, "batch", "-", *arguments, "-o", name], stdin=subprocess.PIPE, stderr=subprocess.PIPE
    )
    process.stdin.write(stream + tail)
    process.stdin.flush()
    partial = name + ".partial"
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline:
        if os.path.exists(partial) and read(partial).count(b"records=96 ") == 1:
            break
        time.sleep(0.02)
    begin = time.monotonic()
    process.send_signal(number)
    process.wait(timeout=30)
    took = time.monotonic() - begin
    process.stderr.close()
    process.stdin.close()
    return process.returncode, took


# Any signal that asks to stop is heard, also while the producer stalls within a line.
for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
    status, took = interrupted("signals.ndjson", ["--format", "ndjson", "--jobs", "2"], number, b'{"half')
    expect(status == 128 + number, f"signal {number}: status {status}")
    expect(took < 2.0, f"signal {number}: {took:.1f} s until the end")
    expect(not os.path.exists("signals.ndjson"), "no file before it is whole")
    os.remove("signals.ndjson.partial")

# Also while a named pipe has no writer yet, as a stream and as a whole file, or has one that stalls.
for name in ("pipe.ndjson", "pipe.json"):
    os.mkfifo(name)
    for jobs in ("1", "3"):
        for stalls in (False, True):
            process = subprocess.Popen([program, "batch", name, "--jobs", jobs], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
            time.sleep(0.3)
            if stalls:
                writer = os.open(name, os.O_WRONLY)
                os.write(writer, b'{"half')
            begin_s = time.monotonic()
            process.send_signal(signal.SIGTERM)
            try:
                process.wait(timeout=10)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
            took = time.monotonic() - begin_s
            expect(process.returncode == 128 + signal.SIGTERM and took < 2.0, f"{name}, {jobs} jobs: {process.returncode} in {took:.1f} s")
            process.stdout.close()
            process.stderr.close()
            if stalls:
                os.close(writer)
    # What comes late is waited for.
    process = subprocess.Popen([program, "batch", name, "--format", "ndjson"], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    time.sleep(0.3)
    write(name, records[0][:100] + records[0][100:])
    out, error = process.communicate(timeout=60)
    expect(process.returncode < 2 and out.count(b"\n") == 1, f"{name}: {process.returncode} {error}")
    os.remove(name)

# A partial file cut at any byte is taken up to the answer of a run that was never interrupted.
for form in ("ndjson", "csv", "table"):
    for only in ([], ["--only", "failing"]):
        arguments = ["--format", form, *only]
        whole = batch("-", *arguments, "-o", f"whole.{form}", text=stream)
        expect(whole[0] == 2, f"{form}: a fault counts: {whole}")
        answer = read(f"whole.{form}")
        expect(b"partial" not in answer, f"{form}: the answer holds no line of the partial file")
        interrupted(f"cut.{form}", [*arguments, "--jobs", "1"], signal.SIGTERM)
        partial = read(f"cut.{form}.partial")
        head = partial.index(b"\n") + 1
        places = list(range(head, len(partial), max(1, len(partial) // 10))) + [len(partial)]
        for at in places:
            for end in (b"", b"{\"partial\":\"records=5\"}\n" if at == places[3] else b"x"):
                write(f"cut.{form}.partial", partial[:at] + end)
                status, out, error = batch("-", *arguments, "-o", f"cut.{form}", "--resume", text=stream)
                expect(status == whole[0], f"{form} cut at {at}: status {status}, {error}")
                expect(read(f"cut.{form}") == answer, f"{form} cut at {at}: another answer")
                expect(not os.path.exists(f"cut.{form}.partial"), "nothing is left over")
        # Into its first line: not a file this program can know.
        write(f"cut.{form}.partial", partial[: head - 2])
        expect(
            batch("-", *arguments, "-o", f"cut.{form}", "--resume", text=stream)[0] == 2,
            f"{form}: a first line cut off is refused",
        )
        expect(read(f"cut.{form}.partial") == partial[: head - 2], "and left alone")
        # Of another command, or of another input.
        write(f"cut.{form}.partial", partial)
        other = [*arguments, "--fields", "id"] if not only else ["--format", form]
        status, out, error = batch("-", *other, "-o", f"cut.{form}", "--resume", text=stream)
        if form != "table" or only:
            expect(status == 2 and "was begun by" in error, f"{form}: another command: {error}")
        changed = stream.replace(b'"title"', b'"titel"', 1)
        status, out, error = batch("-", *arguments, "-o", f"cut.{form}", "--resume", text=changed)
        expect(status == 2 and "not that of the run before" in error, f"{form}: other input: {error}")
        status, out, error = batch("-", *arguments, "-o", f"cut.{form}", "--resume", text=records[0])
        expect(status == 2 and "not that of the run before" in error, f"{form}: less input: {error}")
        # What was done is still there, and is not lost to a run that does not ask for it.
        status, out, error = batch("-", *arguments, "-o", f"cut.{form}", text=stream)
        expect(status == 3 and "--resume" in error, f"{form}: an unfinished file is kept: {error}")
        status, out, error = batch("-", *arguments, "-o", f"cut.{form}", "--resume", text=stream)
        expect(read(f"cut.{form}") == answer, f"{form}: all the same in the end")

batch("-", "--format", "ndjson", "-o", "all.ndjson", text=stream)

# Killed outright.
process = subprocess.Popen(
    [program, "batch", "-", "--format", "ndjson", "-o", "killed.ndjson"], stdin=subprocess.PIPE
)
process.stdin.write(stream)
process.stdin.flush()
time.sleep(0.3)
process.kill()
process.wait()
process.stdin.close()
status, out, error = batch("-", "--format", "ndjson", "-o", "killed.ndjson", "--resume", text=stream)
if os.path.exists("killed.ndjson.partial"):
    # Too early for even the first line to be there.
    expect(status == 2 and read("killed.ndjson.partial") == b"", f"killed: {status} {error}")
else:
    expect(read("killed.ndjson") == read("all.ndjson"), f"killed: {error}")

# One batch at a time.
with open("held.ndjson.partial", "wb") as held:
    fcntl.flock(held, fcntl.LOCK_EX)
    status, out, error = batch("-", "--format", "ndjson", "-o", "held.ndjson", "--force", text=stream)
    expect(status == 3 and "another batch" in error, f"a locked file: {error}")

# Input that cannot be read is no end of the input.
closed = subprocess.run(f"'{program}' batch - <&-", shell=True, capture_output=True)
expect(closed.returncode == 3 and b"standard input" in closed.stderr, f"closed: {closed}")
folder = subprocess.run(f"'{program}' batch - <.", shell=True, capture_output=True)
expect(folder.returncode == 3, f"a folder as standard input: {folder}")
closed = subprocess.run(f"'{program}' check - <&-", shell=True, capture_output=True)
expect(closed.returncode == 3, f"check, closed: {closed}")

# A line longer than any installation is one fault, in bounded memory, and the rest goes on.
status, out, error = batch("-", "--format", "ndjson", text=b" {" + b"9" * 60_000_000 + b"}\n" + records[0])
lines = out.splitlines()
expect(len(lines) == 2 and b"MB" in lines[0], f"a long line: {lines[0][:200]}")

# More threads than the system gives: fewer, with a word, and the same answer.
limited = subprocess.run(
    ["sh", "-c", f"ulimit -v 2000000; exec '{program}' batch - --format ndjson --jobs 1024"],
    input=stream,
    capture_output=True,
)
sanitized = b"AddressSanitizer" in limited.stderr  # which needs more memory than that to begin
expect(sanitized or limited.returncode == 2, f"few threads: status {limited.returncode}, {limited.stderr[:200]}")
expect(sanitized or limited.stdout == read("all.ndjson"), "few threads: the same answer")
expect(sanitized or b"threads" in limited.stderr, f"few threads: said so: {limited.stderr}")

finish()
