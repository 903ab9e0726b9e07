"""SRK/T for a table of eyes, in NumPy: an independent second writing of the method, and a yardstick for speed.

Run by hand (needs NumPy, and a release build of `ocellus`):

    python eyes.py 1000000 > /tmp/eyes.csv
    time python srkt.py /tmp/eyes.csv > /tmp/srkt.csv
    time ocellus batch /tmp/eyes.csv > /tmp/batch.csv
    python compare.py /tmp/srkt.csv /tmp/batch.csv

Reads the columns axial_length_mm, k1_d, k2_d, target_d and a_constant (keratometric index 1.3375, vertex 12 mm), writes
id and srkt_power_d, and says on standard error how long each part took. Retzlaff, Sanders, Kraff, J Cataract Refract
Surg 1990;16:333-340, erratum 1990;16:528.
"""

import sys
from time import perf_counter

import numpy as np

N, VERTEX = 1.336, 12.0


def srkt(al, k, target, a):
    """The lens power for a target, D."""
    r = 337.5 / k
    lcor = np.where(al > 24.2, -3.446 + 1.716 * al - 0.0237 * al**2, al)
    width = -5.41 + 0.58412 * lcor + 0.098 * k
    height = r - np.sqrt(np.maximum(r**2 - width**2 / 4, 0))
    position = height + 0.62467 * a - 68.747 - 3.336
    optical = al + 0.65696 - 0.02029 * al
    cornea = 333 / r + target / (1 - VERTEX * target / 1000)
    return 1000 * N / (optical - position) - 1000 * N / (1000 * N / cornea - position)


if __name__ == "__main__":
    start = perf_counter()
    with open(sys.argv[1]) as table:
        header = table.readline().strip().split(",")
        wanted = ["id", "axial_length_mm", "k1_d", "k2_d", "target_d", "a_constant"]
        columns = np.loadtxt(table, delimiter=",", usecols=[header.index(name) for name in wanted], unpack=True)
    label, al, k1, k2, target, a = columns
    read = perf_counter()
    power = srkt(al, (k1 + k2) / 2, target, a)
    computed = perf_counter()
    sys.stdout.write("id,srkt_power_d\n")
    sys.stdout.writelines(f"{i:.0f},{p!r}\n" for i, p in zip(label.tolist(), power.tolist()))
    written = perf_counter()
    for what, seconds in [("read", read - start), ("compute", computed - read), ("write", written - computed)]:
        print(f"{what} {seconds:.3f} s, {len(al) / seconds:,.0f} rows/s", file=sys.stderr)
