"""A scratch folder, the program in it, and what did not hold: for tests of whole processes.

Call a test as `TEST.py PROGRAM EXAMPLES SCRATCH`; end it with `finish()`.
"""

import os
import shutil
import subprocess
import sys

program, examples, scratch = sys.argv[1:4]
failures = []


def begin():
    """Makes the scratch folder anew and goes there."""
    shutil.rmtree(scratch, ignore_errors=True)
    os.makedirs(scratch)
    os.chdir(scratch)


def expect(condition, what):
    if not condition:
        failures.append(what)
        print("FAILED:", what)


def run(*arguments, text=b""):
    """Exit status, standard output as bytes, and complaints as text."""
    done = subprocess.run([program, *arguments], input=text, capture_output=True, timeout=120)
    return done.returncode, done.stdout, done.stderr.decode(errors="replace")


def read(path):
    with open(path, "rb") as file:
        return file.read()


def write(path, data):
    with open(path, "wb") as file:
        file.write(data)


def finish():
    print("failures:", len(failures))
    sys.exit(1 if failures else 0)
