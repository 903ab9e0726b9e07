"""Thick lenses, schematic eyes, a thick lens placed in an eye: by 2x2 ray-transfer matrices, at 50 digits.

A ray is (height, angle), lengths in mm. A radius is positive when its centre lies behind the surface; a radius of 0 means plane.
"""
from mpmath import matrix, mpf

from lens import DERIVED, N, refraction, to_spectacles
from sheet import Sheet
from hard_eyes import NOTHING, numbers, rows

TWO = {**DERIVED, "mark": "two"}


def gap(t):
    return matrix([[1, t], [0, 1]])


def surface(r, before, after):
    bend = (before - after) / (after * r) if r else mpf(0)
    return matrix([[1, 0], [bend, before / after]])


def thin(p, before, after):
    """A thin power, in dioptres."""
    return matrix([[1, 0], [-p / 1000 / after, before / after]])


def cardinal(m, before, after):
    """Power in dioptres; front principal plane behind the first vertex, back one behind the last, both in mm."""
    a, c, d = m[0, 0], m[1, 0], m[1, 1]
    front, back = (d - before / after) / c, (1 - a) / c
    between = gap(back) * m * gap(-front)  # from plane to plane: height kept, so these are the principal planes
    assert abs(between[0, 0] - 1) < NOTHING and abs(between[0, 1]) < mpf("1e-40") and abs(between[1, 1] - before / after) < NOTHING
    return -1000 * after * c, front, back


def lens(e):
    return surface(e["back_radius_mm"], e["lens_index"], N) * gap(e["thickness_mm"]) * surface(e["front_radius_mm"], N, e["lens_index"])


def textbook(e):
    n, t = e["lens_index"], e["thickness_mm"]
    p1, p2 = (1000 * x / r if r else mpf(0) for x, r in ((n - N, e["front_radius_mm"]), (N - n, e["back_radius_mm"])))
    return p1 + p2 - t / n * p1 * p2 / 1000


THICK = rows("front_radius_mm back_radius_mm thickness_mm lens_index", """
 13.60 -13.60 0.90 1.47
  9.20 -20.50 0.80 1.46
  6.70      0 0.90 1.47
     0  -6.70 0.90 1.47
 11.00  -8.40 1.45 1.49
  8.00  24.00 0.60 1.55
-30.00  -9.00 0.70 1.46
-25.00  25.00 0.45 1.47
 40.00  12.00 0.35 1.46
     0  30.00 0.30 1.43
 10.00  -6.00 3.60 1.4085
""")


def thick(sheet):
    source = "ray-transfer matrices, medium 1.336, at 50 digits; agrees with P1 + P2 - (t/n) P1 P2/1000"
    for i, given in enumerate(THICK, 1):
        e = numbers(given)
        p, front, back = cardinal(lens(e), N, N)
        assert abs(p - textbook(e)) < NOTHING
        for name, what, value, unit in (("p", "power in aqueous", p, "D"), ("front", "front principal plane, behind the front vertex", front, "mm"),
                                        ("back", "back principal plane, behind the front vertex", e["thickness_mm"] + back, "mm")):
            sheet.add(id=f"thick-{i:02}-{name}", what=f"thick lens: {what}", given=given, expect=value, unit=unit, source=source,
                      **{**TWO, "note": "a radius of 0 means plane; " + DERIVED["note"]})


# Radius, distance to the next surface, index after: each in mm, in order from the cornea.
SCHEMATIC = {
    "gullstrand": ("Gullstrand's exact eye, relaxed", "58.64", "published", "read",
                   "7.7 0.5 1.376|6.8 3.1 1.336|10 0.546 1.386|7.911 2.419 1.406|-5.76 0.635 1.386|-6 0 1.336"),
    "legrand": ("Le Grand's theoretical eye", "59.94", "memory", "memory",
                "7.8 0.55 1.3771|6.5 3.05 1.3374|10.2 4.0 1.42|-6 0 1.336"),
}


def schematic(sheet):
    for name, (title, printed, kind, mark, text) in SCHEMATIC.items():
        m, before, depth = matrix([[1, 0], [0, 1]]), mpf(1), mpf(0)
        for line in text.split("|"):
            r, t, after = map(mpf, line.split())
            m = gap(t) * surface(r, before, after) * m
            before, depth = after, depth + t
        p, front, back = cardinal(m, mpf(1), before)
        print(f"{name}: {float(p):.5f} D (printed {printed}), front {float(front):.4f}, back {float(depth + back):.4f} mm")
        given = {"eye": name, "surfaces": text.replace("|", "; ")}
        assert abs(p - mpf(printed)) < mpf("0.005")
        sheet.add(id=f"schematic-{name}", what=f"{title}: power", given=given, expect=printed, unit="D", kind=kind, mark=mark,
                  source=f"{title}, as tabulated: radius, distance to the next surface, index after")
        for part, what, value, unit in ("power", "power", p, "D"), ("front", "front principal plane, behind the cornea", front, "mm"), ("back", "back principal plane, behind the cornea", depth + back, "mm"):
            sheet.add(id=f"schematic-{name}-{part}", what=f"{title}: {what}", given=given, expect=value, unit=unit, source=f"ray-transfer matrices through the surfaces of {title}, at 50 digits", **{**TWO, "mark": mark})


PLACED = rows("corneal_power_d axial_length_mm vertex_position_mm front_radius_mm back_radius_mm thickness_mm lens_index vertex_mm", """
43.20 23.50 4.60  13.60 -13.60 0.90 1.47   12.00
43.20 23.50 4.60   6.70      0 0.90 1.47   12.00
43.20 23.50 4.60      0  -6.70 0.90 1.47   12.00
47.00 17.50 3.90   7.20  -6.60 1.60 1.47   12.00
45.50 20.80 4.10  11.00  -8.40 1.45 1.49   13.75
42.00 26.80 5.00  20.00 -24.00 0.70 1.46   12.00
41.00 31.50 5.40  60.00  24.00 0.50 1.46   12.00
44.00 35.50 5.60 -25.00  25.00 0.45 1.47   12.00
38.40 25.20 4.80   9.20 -20.50 0.80 1.46   12.00
34.00 28.40 4.90   8.00  24.00 0.60 1.55   13.75
43.80 24.10 3.60  13.60 -13.60 0.90 1.47   12.00
""")


def placed(sheet):
    for i, given in enumerate(PLACED, 1):
        e = numbers(given)
        m = lens(e)
        behind = e["axial_length_mm"] - e["vertex_position_mm"] - e["thickness_mm"]
        eye = gap(behind) * m * gap(e["vertex_position_mm"]) * thin(e["corneal_power_d"], mpf(1), N)
        seen = eye * gap(e["vertex_mm"])  # from just behind the spectacle lens
        rx = 1000 * seen[0, 0] / seen[0, 1]
        aimed = seen * thin(rx, mpf(1), mpf(1))  # a ray from far away, at any height, must end on the axis
        assert abs(aimed[0, 0]) < NOTHING
        # the thin skeleton agrees when it is given both principal planes
        p, front, back = cardinal(m, N, N)
        apart = e["thickness_mm"] + back - front
        thinned = refraction(e["axial_length_mm"] - apart, e["vertex_position_mm"] + front, e["corneal_power_d"], p)
        assert abs(to_spectacles(thinned, e["vertex_mm"]) - rx) < NOTHING
        sheet.add(id=f"placed-{i:02}-rx", what="thick lens placed in an eye: Rx", given=given, expect=rx, unit="D",
                  source="ray-transfer matrices from the spectacle lens to the retina, cornea thin, medium 1.336, at 50 digits", **{**TWO, "note": "a radius of 0 means plane; " + DERIVED["note"]})


if __name__ == "__main__":
    sheet = Sheet("thick.py", ["mpmath"], "Thick lenses, schematic eyes, and a thick lens placed in an eye, by ray-transfer matrices. A radius is positive when its centre lies behind the surface; a radius of 0 means plane.")
    thick(sheet)
    schematic(sheet)
    placed(sheet)
    sheet.save("thick.toml")
