"""Lens power: every method written out again from its equations, at 50 digits.

Lengths in mm, powers in dioptres. A transcription, so its values are derived, never published.
"""
from mpmath import mpf, pi, sqrt, tan

from sheet import Sheet

N = mpf("1.336")

# axial_length_mm, k_d, keratometric_index, acd_mm, a_constant, target_d, vertex_mm, iol_power_d
EYES = [line.split() for line in """
23.50 43.80 1.3375 3.20 118.4  0.00 12.00  20.00
23.50 43.80 1.3375 3.20 118.4 -2.50 12.00  23.50
23.50 43.80 1.3375 3.20 118.4  1.00 13.75  18.50
23.45 44.00 1.332  3.10 118.9  0.00 12.00  21.00
23.45 44.00 1.3315 3.10 118.9 -0.25 12.00  21.50
14.00 45.00 1.3375 2.40 118.0  0.00 12.00  68.00
16.50 56.00 1.3375 2.20 118.4  0.00 12.00  40.00
18.00 50.00 1.3375 2.30 119.1 -2.50 13.75  46.00
18.50 47.50 1.3375 2.45 118.4  0.00 12.00  42.00
18.60 47.50 1.332  2.45 118.4  1.00 12.00  40.00
19.95 46.00 1.3375 2.60 118.7  0.00 12.00  36.00
20.00 46.00 1.3375 2.60 118.7  0.00 12.00  36.00
20.50 45.25 1.3375 2.70 118.4 -1.00 12.00  35.50
21.00 46.00 1.3375 2.80 118.4  0.00 12.00  30.00
21.30 42.10 1.3375 2.75 118.9  0.00 12.00  33.50
21.95 44.10 1.3375 2.90 118.2 -0.50 12.00  27.00
22.00 44.10 1.3375 2.90 118.2 -0.50 12.00  27.00
22.60 48.00 1.3375 3.00 118.9  0.00 12.00  19.00
22.95 44.88 1.3375 3.05 118.4  0.00 12.00  21.00
23.00 44.88 1.3375 3.05 118.4  0.00 12.00  21.00
23.05 44.88 1.3375 3.05 118.4  0.00 12.00  21.00
23.20 34.00 1.3375 3.15 119.3  0.00 12.00  34.50
23.90 42.75 1.3375 3.30 112.0  0.00 12.00  14.50
24.10 41.50 1.3375 3.35 122.0 -2.50 12.00  27.50
24.15 43.25 1.3375 3.30 118.4  0.00 12.00  18.50
24.20 43.25 1.3375 3.30 118.4  0.00 12.00  18.50
24.25 43.25 1.3375 3.30 118.4  0.00 12.00  18.50
24.45 43.50 1.3375 3.40 118.4  0.00 12.00  17.50
24.50 43.50 1.3375 3.40 118.4  0.00 12.00  17.50
24.50 39.00 1.3375 3.40 118.9  0.00 12.00  23.50
24.50 32.00 1.3375 3.40 118.9  0.00 12.00  31.00
25.30 42.00 1.3375 3.50 119.1 -2.50 13.75  19.50
25.33 42.00 1.3375 3.50 119.1  1.00 12.00  15.00
25.40 48.20 1.3375 3.55 118.5  0.00 12.00   9.00
25.40 48.22 1.3375 3.55 118.5  0.00 12.00   9.00
25.50 49.00 1.3375 3.60 118.4  0.00 12.00   8.50
26.50 41.00 1.332  3.60 118.7 -0.75 12.00  15.50
26.30 48.00 1.3375 3.60 118.9  0.00 12.00   6.00
22.10 55.00 1.3375 3.10 118.4  0.00 12.00  12.00
27.80 40.00 1.3375 3.70 118.4 -3.00 12.00  16.50
29.00 41.00 1.3375 3.65 118.4  0.00 12.00   7.00
30.95 43.00 1.3375 3.80 118.4  0.00 12.00   1.00
31.00 43.00 1.3375 3.80 118.4  0.00 12.00   0.00
31.10 38.50 1.3375 3.75 118.4 -2.50 13.75   8.00
32.38 42.00 1.3375 3.90 118.0 -3.00 12.00   1.00
34.00 46.00 1.3375 3.90 118.4  0.00 12.00  -9.00
36.20 39.00 1.3375 4.10 117.5 -4.00 12.00   1.00
38.00 36.00 1.3375 4.20 118.4  1.00 12.00  -4.00
""".split("\n") if line.strip()]
NAMES = "axial_length_mm k_d keratometric_index acd_mm a_constant target_d vertex_mm iol_power_d".split()


# One optical skeleton, whatever the method.

def to_cornea(rx, v):
    return rx / (1 - v * rx / 1000)


def to_spectacles(rc, v):
    return rc / (1 + v * rc / 1000)


def power(al, d, kc, rc):
    return 1000 * N / (al - d) - 1000 * N / (1000 * N / (kc + rc) - d)


def refraction(al, d, kc, p):
    x = 1000 * N / (al - d) - p
    return 1000 * N * x / (d * x + 1000 * N) - kc


# Constants into each other.

def acd_const(a):
    return mpf("0.62467") * a - mpf("68.747")


def surgeon_factor(a):
    return mpf("0.5663") * a - mpf("65.60")


def pacd(sf):
    return (sf + mpf("3.595")) / mpf("0.9704")


def haigis_a0(a):
    return mpf("0.62467") * a - mpf("72.434")


# The methods. Each gives its intermediate values, then the optics add AL', Kc, P and Rx.

def optics(e, al, kc, elp):
    rc = to_cornea(e["target_d"], e["vertex_mm"])
    p = power(al, elp, kc, rc)
    rx = to_spectacles(refraction(al, elp, kc, e["iol_power_d"]), e["vertex_mm"])
    return [("AL'", al, "mm"), ("Kc", kc, "D"), ("P", p, "D"), ("Rx", rx, "D")]


def srk2(e):
    al, a = e["axial_length_mm"], e["a_constant"]
    step = 3 if al < 20 else 2 if al < 21 else 1 if al < 22 else 0 if al < mpf("24.5") else mpf("-0.5")
    a1 = a + step
    p0 = a1 - mpf("0.9") * e["K"] - mpf("2.5") * al
    cr = mpf("1.25") if p0 > 14 else mpf(1)
    return [("A1", a1, "1"), ("P0", p0, "D"), ("CR", cr, "1"), ("P", p0 - cr * e["target_d"], "D"), ("Rx", (p0 - e["iol_power_d"]) / cr, "D")]


def retina(al):
    return al + mpf("0.65696") - mpf("0.02029") * al


def srkt(e):
    al, r = e["axial_length_mm"], e["r"]
    lcor = al if al <= mpf("24.2") else mpf("-3.446") + mpf("1.716") * al - mpf("0.0237") * al**2
    cw = mpf("-5.41") + mpf("0.58412") * lcor + mpf("0.098") * e["K"]
    radicand = r**2 - cw**2 / 4
    h = r - sqrt(radicand) if radicand >= 0 else r
    offset = acd_const(e["a_constant"]) - mpf("3.336")
    elp = h + offset
    return [("LCOR", lcor, "mm"), ("Cw", cw, "mm"), ("radicand", radicand, "mm2"), ("H", h, "mm"), ("offset", offset, "mm"), ("ELP", elp, "mm")] + optics(e, retina(al), 333 / r, elp)


def t2(e):
    al = e["axial_length_mm"]
    h2 = mpf("-10.326") + mpf("0.32630") * al + mpf("0.13533") * e["K"]
    elp = h2 + acd_const(e["a_constant"]) - mpf("3.336")
    return [("H2", h2, "mm"), ("ELP", elp, "mm")] + optics(e, retina(al), 333 / e["r"], elp)


def holladay1(e):
    al, r = e["axial_length_mm"], e["r"]
    rag = max(r, mpf(7))
    ag = min(mpf("12.5") * al / mpf("23.45"), mpf("13.5"))
    sf = surgeon_factor(e["a_constant"])
    elp = mpf("0.56") + rag - sqrt(rag**2 - ag**2 / 4) + sf
    return [("Rag", rag, "mm"), ("AG", ag, "mm"), ("SF", sf, "mm"), ("ELP", elp, "mm")] + optics(e, al + mpf("0.200"), mpf(1000) / 3 / r, elp)


def tand(x):
    return tan(x * pi / 180)


def hofferq(e):
    al = e["axial_length_mm"]
    a = min(max(al, mpf("18.5")), mpf(31))
    m, g = (1, mpf(28)) if a <= 23 else (-1, mpf("23.5"))
    constant = pacd(surgeon_factor(e["a_constant"]))
    acd = constant + mpf("0.3") * (a - mpf("23.5")) + tand(e["K"])**2 + mpf("0.1") * m * (mpf("23.5") - a)**2 * tand(mpf("0.1") * (g - a)**2) - mpf("0.99166")
    elp = acd + mpf("0.05")
    return [("A'", a, "mm"), ("pACD", constant, "mm"), ("ACD", acd, "mm"), ("ELP", elp, "mm")] + optics(e, al, e["K"], elp)


def haigis(e):
    a0 = haigis_a0(e["a_constant"])
    elp = a0 + mpf("0.4") * e["acd_mm"] + mpf("0.1") * e["axial_length_mm"]
    return [("a0", a0, "mm"), ("ELP", elp, "mm")] + optics(e, e["axial_length_mm"], mpf("331.5") / e["r"], elp)


METHODS = {
    "srk2": ("SRK II", srk2, "Sanders, Retzlaff, Kraff, J Cataract Refract Surg 1988;14:136-141"),
    "srkt": ("SRK/T", srkt, "Retzlaff, Sanders, Kraff, J Cataract Refract Surg 1990;16:333-340, erratum 528"),
    "t2": ("T2", t2, "Sheard, Smith, Cooke, J Cataract Refract Surg 2010;36:1829-1834"),
    "holladay1": ("Holladay 1", holladay1, "Holladay et al., J Cataract Refract Surg 1988;14:17-24"),
    "hofferq": ("Hoffer Q", hofferq, "Hoffer, J Cataract Refract Surg 1993;19:700-712, errata 1994;20:677 and 2007;33:2"),
    "haigis": ("Haigis", haigis, "Haigis in Shammas (ed.) 2004; Haigis et al., Graefes Arch 2000;238:765-773"),
}
DERIVED = dict(tolerance="1e-11", kind="derived", mark="memory", note="far above double rounding, far below one unit in any last printed digit")


def eye(line):
    e = {k: mpf(x) for k, x in zip(NAMES, line)}
    e["r"] = 1000 * (e["keratometric_index"] - 1) / e["k_d"]
    e["K"] = mpf("337.5") / e["r"]
    return e


def ident(symbol):
    return symbol.lower().replace("'", "-used")


def methods():
    for key, (name, method, paper) in METHODS.items():
        sheet = Sheet("lens.py", ["mpmath"], f"{name}: its own intermediate values, the exact power for the target (P) and the refraction for the label power (Rx).")
        for i, line in enumerate(EYES, 1):
            given = {"method": key, **dict(zip(NAMES, line))}
            for symbol, value, unit in method(eye(line)):
                sheet.add(id=f"{key}-{i:02}-{ident(symbol)}", what=f"{name}: {symbol}", given=given, expect=value, unit=unit, source=f"{paper}, transcribed at 50 digits", **DERIVED)
        sheet.save(f"{key}.toml")


def skeleton():
    sheet = Sheet("lens.py", ["mpmath"], "The optical skeleton by itself, vertex distance, keratometric index.")
    source = "thin-lens vergence, n = 1.336, written out at 50 digits"
    exact = {**DERIVED, "mark": "two"}
    for i, line in enumerate("23.70 5.25 43.20 0.00 12 21.00|21.00 5.00 43.00 -1.50 12 83.50|16.00 4.10 50.00 2.00 13.75 45.00|30.00 6.20 38.00 -3.00 12 -2.00|26.50 0.00 43.00 0.00 12 3.00|24.00 5.10 0.00 -10.00 14 55.00|23.35 4.50 43.27 -0.25 12 20.50".split("|"), 1):
        names = "optical_length_mm elp_mm corneal_power_d target_d vertex_mm iol_power_d".split()
        al, d, kc, rx, v, p = map(mpf, line.split())
        given = dict(zip(names, line.split()))
        rc = refraction(al, d, kc, p)
        for symbol, value in ("P", power(al, d, kc, to_cornea(rx, v))), ("Rc", rc), ("Rx", to_spectacles(rc, v)):
            sheet.add(id=f"skeleton-{i}-{symbol.lower()}", what=f"vergence: {symbol}", given=given, expect=value, unit="D", source=source, **exact)
    for rx in "-20.00 -10.00 -2.50 -0.25 1.00 10.00 14.25".split():
        for v in "12 13.75".split():
            given = {"refraction_d": rx, "vertex_mm": v}
            sheet.add(id=f"to-cornea-{rx}-{v}", what="vertex: spectacle plane to cornea", given=given, expect=to_cornea(mpf(rx), mpf(v)), unit="D", source="F/(1 - d F)", **exact)
            sheet.add(id=f"to-spectacles-{rx}-{v}", what="vertex: cornea to spectacle plane", given=given, expect=to_spectacles(mpf(rx), mpf(v)), unit="D", source="F/(1 + d F)", **exact)
    for k, index in ("43.80", "1.3375"), ("44.00", "1.332"), ("44.00", "1.3315"), ("38.17", "1.3333333333333333"), ("56.00", "1.336"):
        given = {"k_d": k, "keratometric_index": index}
        r = 1000 * (mpf(index) - 1) / mpf(k)
        sheet.add(id=f"radius-{k}-{index[:6]}", what="radius: r", given=given, expect=r, unit="mm", source="r = 1000 (index - 1)/K", **exact)
        sheet.add(id=f"k-1.3375-{k}-{index[:6]}", what="radius: K at index 1.3375", given=given, expect=mpf("337.5") / r, unit="D", source="K = 337.5/r", **exact)
    sheet.save("skeleton.toml")


def constants():
    sheet = Sheet("lens.py", ["mpmath"], "Lens constants converted into each other.")
    for a in "112.0 115.3 118.0 118.4 118.5 118.9 119.3 122.0".split():
        x = mpf(a)
        for symbol, value, source, mark in (
            ("SF", surgeon_factor(x), "SF = 0.5663 A - 65.60 (Holladay, J Cataract Refract Surg 2003;29:176-197)", "two"),
            ("pACD", pacd(surgeon_factor(x)), "pACD = (SF + 3.595)/0.9704 (Holladay, J Cataract Refract Surg 2003;29:176-197)", "two"),
            ("ACDconst", acd_const(x), "ACDconst = 0.62467 A - 68.747 (Retzlaff, Sanders, Kraff 1990)", "two"),
            ("a0", haigis_a0(x), "a0 = 0.62467 A - 72.434, with a1 = 0.4, a2 = 0.1 (unoptimised)", "two"),
        ):
            sheet.add(id=f"{symbol.lower()}-from-{a}", what=f"A-constant to {symbol}", given={"a_constant": a}, expect=value, unit="mm", source=source, **{**DERIVED, "mark": mark})
    for sf in "0.85 1.5066 2.10".split():
        sheet.add(id=f"pacd-from-sf-{sf}", what="surgeon factor to pACD", given={"surgeon_factor": sf}, expect=pacd(mpf(sf)), unit="mm", source="pACD = (SF + 3.595)/0.9704 (Holladay, J Cataract Refract Surg 2003;29:176-197)", **{**DERIVED, "mark": "two"})
    sheet.save("constants.toml")


if __name__ == "__main__":
    methods()
    skeleton()
    constants()
