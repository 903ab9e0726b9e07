"""Power vectors, vertex distance, incisions and toric lenses, written out again at 50 digits.

Powers in dioptres, lengths in mm, axes in degrees. A power is a symmetric 2x2 matrix here: its value in meridian t is
u'Fu with u = (cos t, sin t). What is left over is found with real matrix inverses, never by principal meridians.
"""
import numpy
from mpmath import atan2, cos, matrix, mpf, pi, sin, sqrt

from sheet import Sheet

N = mpf("1.336")
ONE = matrix([[1, 0], [0, 1]])
EXACT = dict(tolerance="1e-11", kind="derived", mark="two", note="far above double rounding, far below one unit in any last printed digit")


def rad(x):
    return x * pi / 180


def matrix_of(m, j0, j45):
    return matrix([[m + j0, j45], [j45, m - j0]])


def vector_of(f):
    assert abs(f[0, 1] - f[1, 0]) < mpf("1e-40")
    return (f[0, 0] + f[1, 1]) / 2, (f[0, 0] - f[1, 1]) / 2, f[0, 1]


def vector(s, c, a):
    """Thibos, Wheeler, Horner 1997."""
    return s + c / 2, -c / 2 * cos(2 * rad(a)), -c / 2 * sin(2 * rad(a))


def half_angle(y, x):
    """Axis of a double-angle vector, in [0, 180)."""
    return (atan2(y, x) / 2 * 180 / pi) % 180


def minus_cylinder(m, j0, j45):
    c = -2 * sqrt(j0**2 + j45**2)
    return m - c / 2, c, half_angle(j45, j0)


def rows(*lines):
    return [line.split() for line in lines]


def sphero(text):
    s, c, a = text.split()
    return {"sphere_d": s, "cylinder_d": c, "axis_deg": a}, vector(mpf(s), mpf(c), mpf(a))


def named(sheet, prefix, what, given, names, values, units, source, **rest):
    for name, value, unit in zip(names, values, units):
        sheet.add(id=f"{prefix}-{name.lower()}", what=f"{what}: {name}", given=given, expect=value, unit=unit, source=source, **{**EXACT, **rest})


VECTOR, SPHERO = ("M", "J0", "J45"), ("S", "C", "A")
D3, DDdeg = ("D", "D", "D"), ("D", "D", "deg")
REFRACTIONS = ["+1.50 -2.25 17", "-3.00 +1.25 100", "+0.50 -2.00 30", "-16.75 -2.00 179", "+8.75 -2.25 5", "-1.62 +1.75 115", "+2.00 -0.50 90", "-0.25 -4.75 45", "+12.50 -3.00 137.5", "-9.00 +6.00 178", "+1.25 -2.50 163"]


def refractions(sheet):
    for i, text in enumerate(REFRACTIONS, 1):
        given, v = sphero(text)
        named(sheet, f"vector-{i}", "power vector", given, VECTOR + ("B",), v + (sqrt(sum(x**2 for x in v)),), D3 + ("D",), "Thibos, Wheeler, Horner, Optom Vis Sci 1997;74:367-375")
        s, c, a = (mpf(given[k]) for k in ("sphere_d", "cylinder_d", "axis_deg"))
        named(sheet, f"transposed-{i}", "transposition", given, SPHERO, (s + c, -c, (a + 90) % 180), DDdeg, "S' = S + C, C' = -C, A' = A + 90")
        for v_mm in "12", "13.75":
            d = mpf(v_mm) / 1000
            # at the cornea by the matrix R (I - dR)^-1, at the spectacles by R (I + dR)^-1
            for where, sign in ("cornea", -1), ("spectacles", 1):
                r = matrix_of(*v)
                moved = vector_of(r * (ONE + sign * d * r)**-1)
                s2, c2, a2 = minus_cylinder(*moved)
                if c > 0:
                    s2, c2, a2 = s2 + c2, -c2, (a2 + 90) % 180
                named(sheet, f"{where}-{i}-{v_mm}", f"sphero-cylinder moved to the {where}", {**given, "vertex_mm": v_mm}, SPHERO, (s2, c2, a2), DDdeg, "R (I - dR)^-1 of the 2x2 power matrix, cylinder sign kept")
    for m, j0, j45 in ("0.375", "0.9", "-0.3"), ("-2.5", "-0.62", "0.41"), ("1", "-0.15", "-1.2"), ("-6.25", "0.01", "0.02"), ("3", "-0.5", "0"), ("0", "0", "0.75"), ("0", "0", "-0.75"):
        named(sheet, f"sphero-{m}-{j0}-{j45}", "minus cylinder of a power vector", {"m_d": m, "j0_d": j0, "j45_d": j45}, SPHERO, minus_cylinder(*map(mpf, (m, j0, j45))), DDdeg, "Thibos, Wheeler, Horner, Optom Vis Sci 1997;74:367-375")
    for s, c, a, t in rows("0.5 -2 30 45", "-1 3 110 122", "-16.75 -2 179 17.3", "8.75 -2.25 5 151"):
        x = mpf(s) + mpf(c) * sin(rad(mpf(t) - mpf(a)))**2
        named(sheet, f"in-meridian-{s}-{c}-{a}-{t}", "power in a meridian", {"sphere_d": s, "cylinder_d": c, "axis_deg": a, "meridian_deg": t}, ("F",), (x,), ("D",), "S + C sin^2(t - A)")


def crossed(sheet):
    for i, (first, second) in enumerate([("+1.75 +0.50 45", "-2.25 -1.00 120"), ("-1.00 -2.00 10", "+0.50 -1.50 80"), ("+2.00 +3.00 175", "-2.00 +3.00 5"), ("0.00 -1.25 90", "0.00 -1.25 60")], 1):
        (a, va), (b, vb) = sphero(first), sphero(second)
        total = vector_of(matrix_of(*va) + matrix_of(*vb))
        named(sheet, f"crossed-sum-{i}", "sum of two sphero-cylinders, minus cylinder", {**{f"first_{k}": x for k, x in a.items()}, **{f"second_{k}": x for k, x in b.items()}}, SPHERO, minus_cylinder(*total), DDdeg, "sum of the 2x2 power matrices")


def incisions(sheet):
    for i, (n, a, s, t) in enumerate(rows("1.50 90 0.30 180", "1.50 90 0.30 90", "0.75 12 0.50 350", "2.25 171 0.25 45", "1.00 135 0.71 225", "0.40 5 0.62 0", "3.10 63 0.20 300"), 1):
        given = {"corneal_astigmatism_d": n, "steep_deg": a, "flattening_d": s, "site_deg": t}
        x = mpf(n) * cos(2 * rad(mpf(a))) + mpf(s) * cos(2 * rad(mpf(t) + 90))
        y = mpf(n) * sin(2 * rad(mpf(a))) + mpf(s) * sin(2 * rad(mpf(t) + 90))
        named(sheet, f"incision-{i}", "cornea after an incision", given, ("x", "y", "N", "a"), (x, y, sqrt(x**2 + y**2), half_angle(y, x)), ("D", "D", "D", "deg"), "measured cornea + flattening at t + 90, as steep-meridian vectors")


def at_lens(k, d):
    return k / (1 - d / 1000 / N * k)


def lens_cylinder(sheet):
    for i, (n, kc, elp, rx, v) in enumerate(rows("1.50 43.50 5.20 0.00 12", "0.75 41.20 4.60 -0.50 12", "3.00 45.75 5.60 0.00 13.75", "4.25 39.00 6.10 -2.50 12", "2.25 48.00 4.20 1.00 12"), 1):
        given = {"corneal_astigmatism_d": n, "corneal_power_d": kc, "elp_mm": elp, "target_d": rx, "vertex_mm": v}
        n, kc, d, rx, v = map(mpf, (n, kc, elp, rx, v))
        rc = rx / (1 - v * rx / 1000)
        k = kc + rc
        steep, flat = at_lens(k + n / 2, d), at_lens(k - n / 2, d)
        named(sheet, f"lens-cylinder-{i}", "toric lens", given, ("v_steep", "v_flat", "cylinder", "local_ratio"), (steep, flat, steep - flat, 1 / (1 - d * k / (1000 * N))**2), ("D", "D", "D", "1"), "v = k/(1 - (d/n) k) in both principal meridians, n = 1.336")
        back = steep / (1 + d / 1000 / N * steep)
        named(sheet, f"lens-back-{i}", "from the lens plane back to the cornea", {"vergence_d": sheet.values[-4]["expect"], "elp_mm": elp}, ("k",), (back,), ("D",), "k = v/(1 + (d/n) v), n = 1.336")


# optical length, ELP, corneal power, corneal astigmatism, steep meridian, lens power along its mark, lens power across it
TORIC = ["23.85 5.20 43.20 2.00 90 19.00 21.75", "24.60 5.40 42.10 1.25 8 17.50 19.25", "22.30 4.70 45.00 3.50 172 23.00 28.50", "26.40 5.70 41.00 4.00 135 10.50 16.00", "23.10 4.90 44.40 0.90 60 21.50 22.50"]


def residual(al, d, kc, n, a, along, across, mark):
    """Refraction still needed at the cornea: K + R = V (I + (d/n)V)^-1 with V = W I - L behind the cornea, at the lens."""
    k = matrix_of(kc, n / 2 * cos(2 * rad(a)), n / 2 * sin(2 * rad(a)))
    lens = matrix_of((along + across) / 2, (along - across) / 2 * cos(2 * rad(mark)), (along - across) / 2 * sin(2 * rad(mark)))
    v = 1000 * N / (al - d) * ONE - lens
    r = v * (ONE + d / 1000 / N * v)**-1 - k
    # the other way round, in numpy: K + R carried to the lens must meet it there
    kr = numpy.array((k + r).tolist(), dtype=float)
    there = kr @ numpy.linalg.inv(numpy.eye(2) - float(d / 1000 / N) * kr)
    assert numpy.allclose(there + numpy.array(lens.tolist(), dtype=float), float(1000 * N / (al - d)) * numpy.eye(2), atol=1e-9)
    return vector_of(r)


def rotated(sheet):
    names = "optical_length_mm elp_mm corneal_power_d corneal_astigmatism_d steep_deg lens_along_mark_d lens_across_mark_d".split()
    for i, line in enumerate(TORIC, 1):
        x = dict(zip(names, line.split()))
        for off in 0, 5, -5, 10, 30, 90:
            mark = mpf(x["steep_deg"]) + off
            v = residual(*map(mpf, x.values()), mark)
            given = {**x, "off_deg": str(off), "mark_deg": str(int(mark % 180))}
            named(sheet, f"rotated-{i}-{off}", "refraction at the cornea still needed", given, VECTOR, v, D3, "2x2 power matrices and their inverses, n = 1.336; the mark is the lens's meridian of least power")


def off_axis(sheet):
    for c, t, p in rows("2.00 90 5", "2.00 90 -5", "3.25 20 10", "1.50 175 30", "-2.50 60 12", "2.00 45 90"):
        j = [u - w for u, w in zip(vector(mpf(0), mpf(c), mpf(t)), vector(mpf(0), mpf(c), mpf(t) + mpf(p)))]
        named(sheet, f"off-axis-{c}-{t}-{p}", "correction still needed, cylinder placed off its axis", {"cylinder_d": c, "axis_deg": t, "off_deg": p}, VECTOR, j, D3, "correction wanted less correction placed, as power vectors")
    for p in "1 2.4 5 10 30 90".split():
        x = rad(mpf(p))
        named(sheet, f"off-axis-share-{p}", "off axis", {"off_deg": p}, ("residual_share", "effect_lost"), (2 * sin(x), 1 - cos(2 * x)), ("1", "1"), "2 sin p; 1 - cos 2p")
    for c1, c2, p in ("2.00", "2.50", "7"), ("3.00", "1.00", "40"):
        a, b, x = mpf(c1), mpf(c2), rad(mpf(p))
        named(sheet, f"off-axis-unequal-{c1}-{c2}-{p}", "off axis", {"first_d": c1, "second_d": c2, "off_deg": p}, ("residual",), (sqrt(a**2 + b**2 - 2 * a * b * cos(2 * x)),), ("D",), "sqrt(C1^2 + C2^2 - 2 C1 C2 cos 2p)")


def turned(sheet):
    """Turning a lens that sits wrong: refraction now (plus form, at the cornea), the lens's cylinder there and its mark."""
    for i, (c, a, lens, mark) in enumerate(rows("0.90 140 2.61 100", "1.20 35 2.00 80", "0.50 5 3.10 178", "2.40 60 1.50 15"), 1):
        e, ax, cl, m = map(mpf, (c, a, lens, mark))
        # an eye that needs plus cylinder c at axis a is too weak across it: its own astigmatism, steep-meridian form, is c at a
        kx = e * cos(2 * rad(ax)) + cl * cos(2 * rad(m))
        ky = e * sin(2 * rad(ax)) + cl * sin(2 * rad(m))
        best = half_angle(ky, kx)
        turn = (best - m + 90) % 180 - 90
        named(sheet, f"turn-{i}", "turning a toric lens", {"plus_cylinder_d": c, "axis_deg": a, "lens_cylinder_at_cornea_d": lens, "mark_deg": mark}, ("K", "best_mark", "turn", "left_over"), (sqrt(kx**2 + ky**2), best, turn, abs(sqrt(kx**2 + ky**2) - cl)), ("D", "deg", "deg", "D"), "K = E + C_L (cos 2m, sin 2m)")


def main():
    for name, parts, about, vary in (
        ("refraction.toml", (refractions, crossed), "Sphero-cylinders: power vectors, transposition, vertex distance, sums.", ""),
        ("toric.toml", (incisions, lens_cylinder, off_axis, rotated, turned), "Corneal astigmatism, toric lenses, and lenses that sit off their axis.", "off_deg mark_deg"),
    ):
        sheet = Sheet("astigmatism.py", ["mpmath", "numpy"], about, vary)
        for part in parts:
            part(sheet)
        sheet.save(name)


if __name__ == "__main__":
    main()
