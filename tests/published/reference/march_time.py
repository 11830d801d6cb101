"""How much longer scipy takes than the program for the same marches, in one run:
march_time.py BENCH_PROGRAM, as built by the target `bench`. Both read every installation, prepare
it and march it once on a high fire, on one core."""

import statistics
import subprocess
import sys
import time

from march_installations import FILE, installations
from march_scipy import Run
import second_copy

ROUNDS = 5


def ours(program):
    told = subprocess.run([program, "--march", str(FILE)], check=True, capture_output=True, text=True)
    return float(told.stdout)


def scipys(written, tables):
    start = time.perf_counter()
    for installation in written:
        Run(installation, *tables).march()
    return time.perf_counter() - start


if __name__ == "__main__":
    written = installations()
    tables = [second_copy.walls(), second_copy.materials(), second_copy.fuels()]
    fast = statistics.median(ours(sys.argv[1]) for _ in range(ROUNDS))
    slow = statistics.median(scipys(written, tables) for _ in range(ROUNDS))
    print("%d installations: scipy %.2f s, the program %.6f s, ratio %.0f"
          % (len(written), slow, fast, slow / fast))
