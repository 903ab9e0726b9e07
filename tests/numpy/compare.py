"""Compares the SRK/T powers of `srkt.py` and `ocellus batch`, row by row: `python compare.py SRKT.csv BATCH.csv`.

Fails when a row is missing, out of order or without a power, or when a power differs by more than 1e-9 D.
"""

import csv
import sys
from itertools import zip_longest

worst, rows = 0.0, 0
with open(sys.argv[1]) as ours, open(sys.argv[2]) as theirs:
    for left, right in zip_longest(csv.DictReader(ours), csv.DictReader(theirs)):
        if left is None or right is None or left["id"] != right["id"]:
            sys.exit(f"row {rows + 1}: {left} against {right}")
        apart = abs(float(left["srkt_power_d"]) - float(right["srkt_power_d"]))
        if not apart <= 1e-9:
            sys.exit(f"row {rows + 1}: {apart} D apart: {left} against {right}")
        worst, rows = max(worst, apart), rows + 1
print(f"{rows} rows, at most {worst:.1e} D apart")
