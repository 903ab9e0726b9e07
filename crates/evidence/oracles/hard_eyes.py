"""Long eyes, eyes after corneal laser surgery, a second lens, constants the other way: written out at 50 digits.

Lengths in mm, powers in dioptres. A transcription, so its values are derived, never published.
"""
from mpmath import mpf

from lens import (DERIVED, METHODS, N, acd_const, haigis, haigis_a0, hofferq, holladay1, optics, pacd, power, refraction, srkt,
                  surgeon_factor, to_cornea, to_spectacles)
from sheet import Sheet

TWO = {**DERIVED, "mark": "two"}
NOTHING = mpf("1e-45")  # what 50 digits leave of a zero


def numbers(given):
    """Every entry that is a number, as one."""
    out = {}
    for key, text in given.items():
        try:
            out[key] = mpf(text)
        except ValueError:
            pass
    return out


def rows(names, text):
    return [dict(zip(names.split(), line.split())) for line in text.strip().split("\n")]


def ordinary(given):
    """What the functions of lens.py want: the radius carried through, K converted from it."""
    e = numbers(given)
    e["r"] = 1000 * (e["keratometric_index"] - 1) / e["k_d"]
    e["K"] = mpf("337.5") / e["r"]
    return e


def run(method, e):
    return {symbol: value for symbol, value, _ in method(e)}


# Long eyes: a line for the axial length, strictly above an edge.

WANG_2011 = "Wang, Shirayama, Ma, Kohnen, Koch, J Cataract Refract Surg 2011;37:2018-2027"
SETS = {
    "first_2011": (WANG_2011 + ", first set", {
        "holladay1": ("0.8289", "4.2663", "25.0"), "haigis": ("0.9286", "1.562", "25.0"),
        "srkt": ("0.8544", "3.7222", "25.0"), "hofferq": ("0.8530", "3.5794", "25.0")}),
    "second_2011": (WANG_2011 + ", second set", {
        "holladay1": ("0.8814", "2.8701", "25.0"), "haigis": ("0.9621", "0.6763", "25.0"),
        "srkt": ("0.8981", "2.5637", "25.0"), "hofferq": ("0.8776", "2.9269", "25.0")}),
    "set_2018": ("Wang, Koch, J Cataract Refract Surg 2018;44:1396-1397", {
        "holladay1": ("0.817", "4.7013", "26.5"), "srkt": ("0.8453", "4.0773", "27.0")}),
}
LONG_NAMES = "axial_length_mm k_d keratometric_index acd_mm a_constant target_d vertex_mm"
LONG = rows(LONG_NAMES, """
25.00 43.25 1.3375 3.40 118.4  0.00 12.00
25.01 43.25 1.3375 3.40 118.4  0.00 12.00
26.50 42.50 1.332  3.50 118.7 -0.50 12.00
26.60 42.50 1.3375 3.50 118.7 -0.50 12.00
27.00 44.00 1.3375 3.55 118.9  0.00 13.75
27.01 44.00 1.3375 3.55 118.9  0.00 13.75
29.30 41.50 1.3375 3.65 119.1 -2.50 12.00
31.00 42.75 1.3315 3.80 118.4 -3.00 12.00
25.40 43.00 1.3375 3.45 118.4  0.00 12.00
32.20 40.50 1.3375 3.85 118.0 -1.00 12.00
""")
# 25.40: Holladay's AG is at its limit with the measured length, below it with the adjusted one.
# 32.20: beyond Hoffer's 31, as measured and as adjusted (31.05 mm by the first set, 31.19 mm by the second).
EXTRA = {"holladay1": [9], "hofferq": [10]}


def adjusted(slope, add, edge, al):
    return mpf(slope) * al + mpf(add) if al > mpf(edge) else al


def long_eyes():
    sheet = Sheet("hard_eyes.py", ["mpmath"], "Long eyes: the adjusted axial length, and what each method makes of it when it replaces the measured one everywhere.")
    for name, (paper, lines) in SETS.items():
        for method, (slope, add, edge) in lines.items():
            title, function, _ = METHODS[method]
            line = f"{title} {slope} AL + {add} above {edge} mm"
            source = f"{paper}: {line}, transcribed at 50 digits"
            eyes = {"25.0": [1, 2, 7, 8], "26.5": [2, 3, 4, 7], "27.0": [4, 5, 6, 7]}[edge] + ([] if name == "set_2018" else EXTRA.get(method, []))
            for i in sorted(eyes):
                given = {"set": name, "method": method, **LONG[i - 1]}
                e = ordinary(given)
                e["axial_length_mm"] = adjusted(slope, add, edge, e["axial_length_mm"])
                e["iol_power_d"] = mpf(0)
                out = run(function, e)
                for symbol, value, unit in ("AL", e["axial_length_mm"], "mm"), ("P", out["P"], "D"), ("ELP", out["ELP"], "mm"):
                    sheet.add(id=f"long-{name}-{method}-{i:02}-{symbol.lower()}", what=f"{title}, long eye: {symbol}", given=given, expect=value, unit=unit, source=source, **DERIVED)
            step = mpf(slope) * mpf(edge) + mpf(add) - mpf(edge)
            sheet.add(id=f"long-{name}-{method}-step", what=f"{title}, long eye: step where the line begins", given={"set": name, "method": method}, expect=step, unit="mm", source=f"{paper}: {line}, at its edge less the edge", **DERIVED)
    sheet.save("long_eyes.toml")


# After corneal laser surgery. Each returns ELP, P, Rx and what is its own.

SHAMMAS_K = {"myopic_laser": ("1.14", "6.8"), "hyperopic_laser": ("1.0457", "1.9538")}


def shammas(e, laser, elp=None):
    a, b = SHAMMAS_K[laser]
    kc = mpf(a) * e["k_d"] - mpf(b)
    al, n = e["axial_length_mm"], 1000 * N
    d = mpf("0.5835") * e["a_constant"] - mpf("64.40") + mpf("0.05") if elp is None else elp
    image = n / (al - mpf("0.1") * (al - 23) - d)
    ratio = mpf("1.0125")
    rc = to_cornea(e["target_d"], e["vertex_mm"])
    p = image - 1 / (ratio / (kc + rc) - d / n)
    # the other way: 1/(ratio/(kc + rc) - d/n) = image - lens
    y = image - e["iol_power_d"]
    left = ratio * y / (1 + y * d / n) - kc
    return {"Kc": kc, "ELP": d, "P": p, "Rx": to_spectacles(left, e["vertex_mm"])}


def haigisl(e):
    r = mpf("331.5") / (mpf("-5.1625") * e["r"] + mpf("82.2603") - mpf("0.35"))
    out = run(haigis, {**e, "r": r})
    return {"r": r, **out}


def double(method, e):
    """The lens position with the K before; AL' and Kc of the optics with the K after."""
    before, after = ({**e, "r": mpf("337.5") / e[k], "K": e[k]} for k in ("k_before_d", "k_after_d"))
    elp, late = run(method, before)["ELP"], run(method, after)
    return {"ELP": elp, **{symbol: value for symbol, value, _ in optics(e, late["AL'"], late["Kc"], elp)}}


DOUBLE = {"double-srkt": ("SRK/T", srkt), "double-holladay1": ("Holladay 1", holladay1), "double-hofferq": ("Hoffer Q", hofferq)}
SHAMMAS = rows("axial_length_mm k_d a_constant target_d vertex_mm iol_power_d laser", """
23.00 39.00 118.4  0.00 12.00 23.00 myopic_laser
25.20 38.98 118.4  0.00 12.00 19.00 myopic_laser
26.60 36.50 118.9 -0.50 13.75 20.00 myopic_laser
29.30 34.25 119.1 -2.50 12.00 16.50 myopic_laser
21.80 41.00 117.5  1.00 12.00 23.50 myopic_laser
31.50 40.00 118.0  0.00 12.00 -2.00 myopic_laser
21.60 47.50 118.4  0.00 12.00 22.50 hyperopic_laser
23.00 46.00 118.7 -1.25 13.75 21.50 hyperopic_laser
19.80 49.25 118.9 -0.25 12.00 30.00 hyperopic_laser
""")
HAIGISL = rows("axial_length_mm k_d keratometric_index acd_mm a_constant target_d vertex_mm iol_power_d", """
25.20 38.98 1.3375 3.40 118.4  0.00 12.00 20.50
23.50 40.50 1.332  3.20 118.4  0.00 12.00 23.50
26.60 36.50 1.3375 3.55 118.9 -0.50 13.75 20.50
29.30 34.25 1.3315 3.70 119.1 -2.50 12.00 17.50
31.50 40.00 1.3375 3.80 118.0 -3.00 12.00  2.00
21.80 42.00 1.3375 2.90 117.5  1.00 12.00 24.50
27.40 30.00 1.3375 3.45 118.7  0.00 12.00 30.00
""")
DOUBLES = rows("axial_length_mm k_before_d k_after_d a_constant target_d vertex_mm iol_power_d", """
25.20 44.00 38.40 118.4  0.00 12.00 19.00
23.50 43.80 43.80 118.4  0.00 12.00 20.00
26.60 42.50 36.25 118.9 -0.50 13.75 20.50
29.30 45.00 34.00 119.1 -2.50 12.00 18.00
22.40 43.50 40.00 118.0  1.00 12.00 25.50
21.60 42.25 47.00 118.4  0.00 12.00 24.00
24.00 48.75 42.00 118.7  0.00 12.00 20.00
31.60 44.50 38.00 118.0 -3.00 12.00  4.50
18.30 46.00 48.50 118.9 -0.25 12.00 40.50
24.60 51.00 45.00 118.4  0.00 12.00 16.00
""")
# 48.75 before: Holladay's radius is held at 7 for the K before only. 24.60 with 51.00 before: SRK/T's radicand is negative.
HISTORY = rows("k_before_d refraction_before_d refraction_after_d vertex_mm", """
44.00  -6.00  0.00 12.00
43.25  -9.50 -0.50 13.75
42.75  -2.25  0.25 12.00
45.50 -12.00 -1.00 12.00
43.00   3.00  0.00 12.00
44.50   5.50 -0.75 13.75
43.80  -1.00 -1.00 12.00
""")


def after_laser():
    sheet = Sheet("hard_eyes.py", ["mpmath"], "After corneal laser surgery: Shammas-PL, Haigis-L, the Double-K methods, and the K after from the refractions before and after.")
    source = "Shammas, Shammas, J Cataract Refract Surg 2007;33:31-36 (hyperopic: 2013;39:739-744), transcribed at 50 digits"
    for i, given in enumerate(SHAMMAS, 1):
        out = shammas(numbers(given), given["laser"])
        again = shammas({**numbers(given), "target_d": out["Rx"]}, given["laser"])
        assert abs(again["P"] - mpf(given["iol_power_d"])) < NOTHING
        for symbol, unit in ("Kc", "D"), ("ELP", "mm"), ("P", "D"), ("Rx", "D"):
            sheet.add(id=f"shammas-{i:02}-{symbol.lower()}", what=f"Shammas-PL: {symbol}", given=given, expect=out[symbol], unit=unit, source=source, **{**DERIVED, "mark": "read" if symbol == "Kc" else "memory"})
    source = "Haigis, J Cataract Refract Surg 2008;34:1658-1663 (the radius as read in a tutorial), a0, a1, a2 unoptimised, transcribed at 50 digits"
    for i, given in enumerate(HAIGISL, 1):
        out = haigisl(ordinary(given))
        for symbol, unit in ("r", "mm"), ("ELP", "mm"), ("P", "D"), ("Rx", "D"):
            what = "r'" if symbol == "r" else symbol
            sheet.add(id=f"haigisl-{i:02}-{symbol.lower()}", what=f"Haigis-L: {what}", given=given, expect=out[symbol], unit=unit, source=source, **{**DERIVED, "mark": "read" if symbol == "r" else "memory"})
    for key, (title, method) in DOUBLE.items():
        source = f"Aramberri, J Cataract Refract Surg 2003;29:2063-2068, with {title}, transcribed at 50 digits"
        for i, given in enumerate(DOUBLES, 1):
            out = double(method, numbers(given))
            for symbol, unit in ("ELP", "mm"), ("P", "D"), ("Rx", "D"):
                sheet.add(id=f"{key}-{i:02}-{symbol.lower()}", what=f"Double-K {title}: {symbol}", given=given, expect=out[symbol], unit=unit, source=source, **DERIVED)
    for i, given in enumerate(HISTORY, 1):
        e = numbers(given)
        k = e["k_before_d"] - (to_cornea(e["refraction_after_d"], e["vertex_mm"]) - to_cornea(e["refraction_before_d"], e["vertex_mm"]))
        sheet.add(id=f"history-{i:02}", what="K after laser, from the refractions before and after", given=given, expect=k, unit="D", source="the cornea loses what the refraction at the cornea gains: K before - (Rc after - Rc before)", **TWO)
    sheet.save("after_laser.toml")


# A second lens, an exchange, an eye without a lens.

SECOND = rows("k_d position_mm refraction_now_d target_d vertex_mm lens_in_eye_d power_d", """
43.80 5.25  12.00  0.00 12.00   0.00  21.00
43.80 4.50   3.25 -0.25 12.00  18.00   5.00
44.50 4.60  -4.00 -0.50 13.75  22.50  -4.50
41.00 3.10 -14.50  0.00 12.00   0.00 -17.00
46.00 5.00  16.00  1.00 12.00   0.00  26.00
38.40 5.10   2.50  0.00 12.00  19.50   3.50
48.00 4.20  -0.75 -0.75 12.00  30.00   0.50
42.50 3.40 -20.00 -2.50 13.75  10.00 -18.00
43.00 0.00   5.00  0.00 12.00   0.00   5.00
""")


def before_lens(k, rx, v, d):
    """Vergence that arrives at the plane of the lens."""
    return 1000 * N / (1000 * N / (k + to_cornea(rx, v)) - d)


def second_lens():
    sheet = Sheet("hard_eyes.py", ["mpmath"], "A second lens (or the first, in an eye without one), an exchange, and the refraction that a second lens leaves.")
    source = "Holladay, Am J Ophthalmol 1993;116:63-66, transcribed at 50 digits"
    for i, line in enumerate(SECOND, 1):
        given = {k: line[k] for k in "k_d position_mm refraction_now_d target_d vertex_mm".split()}
        e = numbers(line)
        k, d, v = e["k_d"], e["position_mm"], e["vertex_mm"]
        now = before_lens(k, e["refraction_now_d"], v, d)
        p = now - before_lens(k, e["target_d"], v, d)
        y = now - e["power_d"]
        rx = to_spectacles(1000 * N * y / (1000 * N + y * d) - k, v)
        assert abs(now - before_lens(k, rx, v, d) - e["power_d"]) < NOTHING
        # the same with the whole eye: a length at which the lens that is in it leaves the refraction now
        if d > 0:
            al = d + 1000 * N / (e["lens_in_eye_d"] + now)
            assert abs(power(al, d, k, to_cornea(e["target_d"], v)) - e["lens_in_eye_d"] - p) < NOTHING
            assert abs(to_spectacles(refraction(al, d, k, e["lens_in_eye_d"] + e["power_d"]), v) - rx) < NOTHING
        sheet.add(id=f"second-{i:02}-p", what="second lens: P", given=given, expect=p, unit="D", source=source, **DERIVED)
        if line["lens_in_eye_d"] != "0.00":
            sheet.add(id=f"exchange-{i:02}-p", what="exchange: P of the new lens", given={**given, "lens_in_eye_d": line["lens_in_eye_d"]}, expect=e["lens_in_eye_d"] + p, unit="D", source=source, **DERIVED)
            # out of the bag and into the sulcus, by the whole eye: the old lens lay 0.75 mm behind the new one
            e_mm, whole = mpf("0.75"), "thin-lens vergence through the whole eye, n = 1.336, at 50 digits"
            al = d + e_mm + 1000 * N / (e["lens_in_eye_d"] + before_lens(k, e["refraction_now_d"], v, d + e_mm))
            moved = {**given, "lens_in_eye_d": line["lens_in_eye_d"], "behind_mm": "0.75"}
            sheet.add(id=f"exchange-{i:02}-forward-p", what="exchange into another place: P of the new lens", given=moved, expect=power(al, d, k, to_cornea(e["target_d"], v)), unit="D", source=whole, **{**DERIVED, "mark": "two"})
            new = e["lens_in_eye_d"] + e["power_d"]
            sheet.add(id=f"second-{i:02}-forward-rx", what="exchange into another place: Rx", given={**moved, "power_d": str(new)}, expect=to_spectacles(refraction(al, d, k, new), v), unit="D", source=whole, **{**DERIVED, "mark": "two"})
        sheet.add(id=f"second-{i:02}-rx", what="second lens: Rx that its power leaves", given={**given, "power_d": line["power_d"]}, expect=rx, unit="D", source=source, **DERIVED)
    sheet.save("second_lens.toml")


# Constants the other way.

def constants_back():
    sheet = Sheet("hard_eyes.py", ["mpmath"], "Lens constants converted back: each way of constants.toml, backwards.")
    holladay, srk = "Holladay, J Cataract Refract Surg 2003;29:176-197", "Retzlaff, Sanders, Kraff 1990"
    for prefix, what, key, unit, source, there, back, values in (
        ("sf-to-a", "surgeon factor to A-constant", "surgeon_factor", "1", f"A = (SF + 65.60)/0.5663, from SF = 0.5663 A - 65.60 ({holladay})",
         surgeon_factor, lambda x: (x + mpf("65.60")) / mpf("0.5663"), "-2.17 0.85 1.44 1.51 2.10 3.49"),
        ("pacd-to-sf", "pACD to surgeon factor", "pacd_mm", "mm", f"SF = 0.9704 pACD - 3.595, from pACD = (SF + 3.595)/0.9704 ({holladay})",
         pacd, lambda x: mpf("0.9704") * x - mpf("3.595"), "2.50 4.58 5.20 5.26 5.87 7.00"),
        ("a0-to-a", "Haigis a0 to A-constant", "haigis_a0", "1", "A = (a0 + 72.434)/0.62467, from a0 = 0.62467 A - 72.434, with a1 = 0.4, a2 = 0.1 (unoptimised)",
         haigis_a0, lambda x: (x + mpf("72.434")) / mpf("0.62467"), "-2.47 0.62 1.277 1.527 2.00 3.78"),
        ("acdconst-to-a", "ACDconst to A-constant", "acd_const_mm", "1", f"A = (ACDconst + 68.747)/0.62467, from ACDconst = 0.62467 A - 68.747 ({srk})",
         acd_const, lambda x: (x + mpf("68.747")) / mpf("0.62467"), "1.22 4.96 5.21 5.276 5.78 7.46"),
    ):
        for text in values.split():
            assert abs(there(back(mpf(text))) - mpf(text)) < NOTHING
            sheet.add(id=f"{prefix}-{text}", what=what, given={key: text}, expect=back(mpf(text)), unit=unit, source=source, **TWO)
    sheet.save("constants_back.toml")


if __name__ == "__main__":
    long_eyes()
    after_laser()
    second_lens()
    constants_back()
