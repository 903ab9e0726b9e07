"""How sure an answer is: slopes of the predicted refraction, chances of the normal distribution, label tolerances.

A slope is the numerical derivative (mpmath.diff, 50 digits) of the whole method, clamps and switches included.
"""
from mpmath import diff, erf, mpf, sqrt
from scipy.special import erf as scipy_erf
from scipy.stats import norm

from hard_eyes import DOUBLE, NOTHING, TWO, double, haigisl, numbers, rows, run, shammas
from lens import DERIVED, METHODS, N, refraction, to_spectacles
from sheet import Sheet

HALF_DIGITS = mpf("1e-25")
ORDINARY = "axial_length_mm k_d keratometric_index acd_mm a_constant target_d vertex_mm iol_power_d"
EYES = rows(ORDINARY, """
23.50 43.80 1.3375 3.20 118.4  0.00 12.00  20.00
22.10 44.50 1.3375 2.90 118.7  0.00 12.00  26.00
18.20 47.00 1.3375 2.40 118.4  0.00 12.00  42.50
21.00 46.00 1.3375 2.80 118.4 -0.50 13.75  29.50
24.80 43.00 1.3375 3.40 118.9  0.00 12.00  18.00
26.40 42.00 1.3375 3.55 118.7  0.00 12.00  14.00
29.00 41.00 1.3375 3.65 118.4  0.00 12.00   7.50
31.60 42.00 1.3375 3.80 118.0 -3.00 12.00   1.50
22.60 49.00 1.3375 3.00 118.9  0.00 12.00  17.50
""")
# 18.20 and 31.60: Hoffer's clamped length. 24.80 and longer: SRK/T's length above 24.2. 26.40 and longer: Holladay's AG at
# its limit. 49.00: Holladay's radius held at 7.
ORDINARY_EYES = {"srkt": [1, 4, 5, 7], "t2": [1, 2, 7], "holladay1": [1, 4, 6, 9], "hofferq": [1, 2, 3, 7, 8], "haigis": [1, 4, 7]}
HAIGISL = rows(ORDINARY, """
25.20 38.98 1.3375 3.40 118.4  0.00 12.00  22.50
22.40 41.25 1.3375 2.95 118.9 -0.50 13.75  29.00
29.30 34.25 1.3375 3.70 118.7  0.00 12.00  19.50
""")
SHAMMAS = rows("axial_length_mm k_d a_constant target_d vertex_mm iol_power_d laser", """
25.20 38.98 118.4  0.00 12.00 22.50 myopic_laser
29.30 34.25 118.9 -0.50 13.75 19.50 myopic_laser
21.60 47.50 118.4  0.00 12.00 22.00 hyperopic_laser
""")
DOUBLES = rows("axial_length_mm k_before_d k_after_d a_constant target_d vertex_mm iol_power_d", """
25.20 44.00 38.40 118.4  0.00 12.00 22.50
22.30 42.25 46.00 118.9 -0.50 13.75 24.50
31.60 43.50 38.00 118.0  0.00 12.00  8.00
23.70 48.75 43.00 118.4  0.00 12.00 21.00
18.20 45.00 47.00 118.4  0.00 12.00 40.50
""")
DOUBLE_EYES = {"double-srkt": [1, 2, 3], "double-holladay1": [1, 2, 3, 4], "double-hofferq": [1, 2, 3, 5]}
SLOPE = {**DERIVED, "tolerance": "1e-10"}
WHERE = {"al": ("measured axial length", "D/mm", "axial_length_mm"), "k": ("mean corneal power at 1.3375", "1", "k_d"),
         "acd": ("anterior chamber depth", "D/mm", "acd_mm"), "elp": ("lens position, all else held", "D/mm", None),
         "lens": ("lens power", "1", "iol_power_d"), "kbefore": ("K before laser", "1", "k_before_d")}


def carried(e):
    """The radius follows K inside the derivative."""
    r = mpf("337.5") / e["k_d"]
    return {**e, "r": r, "K": mpf("337.5") / r}


def slope_of(whole, e, key):
    return diff(lambda x: whole({**e, key: x})["Rx"], e[key])


def slopes_of(sheet, key, title, i, given, whole, held, paper, also=()):
    """whole(e) is the method; held(e, out, elp) its refraction with the lens somewhere else."""
    e = numbers(given)
    out = whole(e)
    results = {}
    for part in ("al", "k", *also, "elp", "lens"):
        what, unit, entry = WHERE[part]
        if part == "k" and "k_after_d" in e:
            what, entry = "K after laser", "k_after_d"
        results[part] = diff(lambda d: held(e, out, d), out["ELP"]) if part == "elp" else slope_of(whole, e, entry)
        assert abs(results[part]) < NOTHING or abs(results[part]) > mpf("1e-3"), (key, i, part)
        sheet.add(id=f"slope-{key}-{i:02}-{part}", what=f"{title}: slope of Rx on {what}", given={"method": key, **given}, expect=results[part], unit=unit,
                  source=f"{paper}, differentiated at 50 digits (mpmath.diff)", **SLOPE)
    assert abs(held(e, out, out["ELP"]) - out["Rx"]) < NOTHING
    return e, out, results


def by_hand(al, kc, d, p, v):
    """Slopes on lens position and lens power in closed form: (Vc/V)^2 (P^2 + 2 P V)/(1000 n), and -(Vc/V)^2."""
    n = 1000 * N
    x = n / (al - d) - p
    vc = n * x / (d * x + n)
    back = 1 / (1 + v * (vc - kc) / 1000) ** 2
    return back * (vc / x) ** 2 * (p**2 + 2 * p * x) / n, -back * (vc / x) ** 2


def slopes():
    sheet = Sheet("certainty.py", ["mpmath"], "Slopes of the predicted spectacle refraction for the lens chosen: on each measurement, on lens position, on lens power.")

    def skeleton_held(e, out, d):
        return to_spectacles(refraction(out["AL'"], d, out["Kc"], e["iol_power_d"]), e["vertex_mm"])

    def checked(e, out, results):
        elp, lens = by_hand(out["AL'"], out["Kc"], out["ELP"], e["iol_power_d"], e["vertex_mm"])
        assert abs(elp - results["elp"]) < HALF_DIGITS and abs(lens - results["lens"]) < HALF_DIGITS

    for key, eyes in ORDINARY_EYES.items():
        title, method, paper = METHODS[key]
        for i in eyes:
            checked(*slopes_of(sheet, key, title, i, EYES[i - 1], lambda e: run(method, carried(e)), skeleton_held, paper, ["acd"] if key == "haigis" else []))
    for i, given in enumerate(SHAMMAS, 1):
        laser = given["laser"]
        slopes_of(sheet, "shammas", "Shammas-PL", i, given, lambda e: shammas(e, laser), lambda e, out, d: shammas(e, laser, d)["Rx"],
                  "Shammas, Shammas, J Cataract Refract Surg 2007;33:31-36 (hyperopic: 2013;39:739-744)")
    for i, given in enumerate(HAIGISL, 1):
        checked(*slopes_of(sheet, "haigisl", "Haigis-L", i, given, lambda e: haigisl(carried(e)), skeleton_held, "Haigis, J Cataract Refract Surg 2008;34:1658-1663", ["acd"]))
    for key, eyes in DOUBLE_EYES.items():
        title, method = DOUBLE[key]
        for i in eyes:
            checked(*slopes_of(sheet, key, f"Double-K {title}", i, DOUBLES[i - 1], lambda e: double(method, e), skeleton_held,
                               f"Aramberri, J Cataract Refract Surg 2003;29:2063-2068, with {title}", ["kbefore"]))

    # The approximation in print, beside the exact slope for the power that leaves nothing (SRK/T).
    given = {"method": "srkt", **EYES[0]}
    e = carried(numbers(given))
    out = run(METHODS["srkt"][1], e)
    exact, _ = by_hand(out["AL'"], out["Kc"], out["ELP"], out["P"], e["vertex_mm"])
    printed = mpf("0.0006") * (out["P"] ** 2 + 2 * e["K"] * out["P"])
    off = abs(exact - printed)
    print(f"slope-published: P {float(out['P']):.4f}, printed {float(printed):.5f}, exact {float(exact):.5f}, off {float(off / exact) * 100:.2f} %")
    assert off < mpf("0.05")
    sheet.add(id="slope-published", what="slope of Rx on lens position, by the rule in print, for the exact power", given=given, expect=printed, tolerance="0.05", unit="D/mm",
              kind="memory", mark="two", source="0.0006 (P^2 + 2 K P), a published approximation, recalled without its paper; P by SRK/T, K at 1.3375",
              note=f"an approximation with one digit in its factor; the exact slope at P is {float(exact):.4f}, so it is held to 0.05")
    sheet.save("slopes.toml")


CHANCES = rows("half_width_d sd_d", """
0.00 0.50
0.01 0.80
0.25 0.45
0.50 0.45
0.50 0.35
0.50 0.437
1.00 0.473
1.00 0.60
1.25 0.45
2.00 0.40
6.00 0.80
9.00 0.40
""")
LABELS = (("0.00", "0.3"), ("6.00", "0.3"), ("15.00", "0.3"), ("15.50", "0.4"), ("20.00", "0.4"), ("25.00", "0.4"), ("25.50", "0.5"), ("30.00", "0.5"), ("30.50", "1.0"),
          ("40.00", "1.0"), ("-5.00", "0.3"), ("-15.00", "0.3"), ("-15.50", "0.4"))


def chance():
    sheet = Sheet("certainty.py", ["scipy", "mpmath"], "Chances of the normal distribution, its quantiles, and the tolerance of a label power.")
    fixed = {"tolerance": "1e-11", "kind": "reference-library", "mark": "two"}
    for i, given in enumerate(CHANCES, 1):
        half, sd = float(given["half_width_d"]), float(given["sd_d"])
        value = 100 * float(scipy_erf(half / sd / 2**0.5))
        exact = 100 * erf(mpf(given["half_width_d"]) / mpf(given["sd_d"]) / sqrt(2))
        assert abs(value - exact) < mpf("5e-13") and abs(value - 100 * (norm.cdf(half / sd) - norm.cdf(-half / sd))) < 5e-13
        sheet.add(id=f"chance-{i:02}", what="chance of an error within the half width", given=given, expect=f"{value:.17g}", unit="%",
                  source="scipy.special.erf(half width/(sd sqrt 2)), and scipy.stats.norm.cdf; mpmath.erf at 50 digits agrees to 5e-13", note="far above double rounding of a percentage", **fixed)
    for i, (off, half, sd) in enumerate((("0.40", "0.50", "0.45"), ("-1.20", "0.50", "0.45"), ("6.70", "1.00", "0.40"), ("0.50", "0.50", "0.60")), 1):
        o, h, s = float(off), float(half), float(sd)
        value = 50 * float(scipy_erf((h - o) / s / 2**0.5) + scipy_erf((h + o) / s / 2**0.5))
        assert abs(value - 100 * (norm.cdf((h - o) / s) - norm.cdf((-h - o) / s))) < 1e-11
        sheet.add(id=f"chance-off-{i}", what="chance to lie within the half width of a place that is off", given={"off_d": off, "half_width_d": half, "sd_d": sd}, expect=f"{value:.17g}", unit="%",
                  source="scipy.special.erf, and scipy.stats.norm.cdf", note="far above double rounding of a percentage", **fixed)
    for name, share in ("50", 0.75), ("95", 0.975):
        value = float(norm.ppf(share))
        assert abs(erf(mpf(value) / sqrt(2)) - (2 * mpf(str(share)) - 1)) < mpf("1e-15")
        sheet.add(id=f"normal-{name}", what=f"half width that holds {name} % of a normal distribution, in standard deviations", given={"share_percent": name}, expect=f"{value:.17g}", unit="1",
                  source=f"scipy.stats.norm.ppf({share}); mpmath.erf at 50 digits agrees to 1e-15", note="half a unit in the last digit of a quantile of 11 decimals", **{**fixed, "tolerance": "5e-12"})
    for i, (power, tolerance) in enumerate(LABELS, 1):
        sheet.add(id=f"label-tolerance-{i:02}", what="tolerance of the label power", given={"iol_power_d": power}, expect=tolerance, tolerance="1e-12", unit="D", kind="memory", mark="memory",
                  source="ISO 11979-2, figures read in a tutorial; the edges (up to and including 15, 25, 30) and the use of size for minus powers recalled", note="an entry of a table, so exact")
    sheet.save("chance.toml")


if __name__ == "__main__":
    slopes()
    chance()
