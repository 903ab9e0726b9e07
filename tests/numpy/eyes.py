"""Writes a table of random eyes for `ocellus batch` and `srkt.py`.

    python eyes.py 1000000 > /tmp/eyes.csv

The same count always gives the same table. Values have the decimals of a printout, and go beyond the eyes that are met,
so that SRK/T's long and steep eyes are among them. Needs NumPy.
"""

import sys

import numpy as np

random = np.random.default_rng(1990)
count = int(sys.argv[1])
length = random.normal(23.6, 1.6, count).clip(18, 34)
k1 = random.normal(43.5, 1.8, count).clip(36, 52)
k2 = k1 + random.exponential(0.9, count).clip(0, 6)
depth = random.normal(3.1, 0.4, count).clip(1.8, 5.0)
target = random.choice([0.0, -0.25, -0.5, -2.5], count)
a = random.choice([118.0, 118.4, 118.9, 119.3], count)
lens = random.choice(np.arange(10, 28, 0.5), count)

print("id,eye,axial_length_mm,k1_d,k2_d,acd_mm,target_d,a_constant,iol_power_d")
rows = zip(*(column.tolist() for column in (length, k1, k2, depth, target, a, lens)))
sys.stdout.writelines(
    f"{i},{('right', 'left')[i % 2]},{al:.2f},{k:.2f},{l:.2f},{acd:.2f},{rx:.2f},{con:.1f},{p:.2f}\n"
    for i, (al, k, l, acd, rx, con, p) in enumerate(rows)
)
