"""Air, heads, units, tubes, needles, and the flows through a chamber: mpmath at 50 digits, beside packages that know the answer.

What is written out here is held, row by row, against a second way before it is kept: pint with its own units and its own
arithmetic (decimal), a profile across the tube, a root, or the network as linear equations.
"""
from decimal import Decimal

from ambiance import Atmosphere
from CoolProp.CoolProp import PropsSI
from iapws._iapws import _Liquid, _Viscosity
from mpmath import diff, exp, findroot, lu_solve, matrix, mp, mpf, pi, quad, sqrt
from pint import UnitRegistry

from atmosphere import EARTH, EXPONENT, G, L, MMHG, P0, T0, geopotential, pressure
from sheet import Sheet, digits
from units import AMOUNTS, PLAIN
from water import region4

CHAIN = ("5e-14", "a few roundings of a double")
POWERS = ("1e-12", "a few roundings of a double and of its power, root or exponential function")
U = UnitRegistry(non_int_type=Decimal)  # decimals of 50 digits, by units.py
PI = Decimal(mp.nstr(pi, 48))
ML_MIN = mpf("1e-6") / 60  # m3/s


def ident(*parts):
    return "-".join(str(p) for p in parts)


def rows(keys, text):
    return [dict(zip(keys.split(), line.split(), strict=True)) for line in text.strip().splitlines()]


def numbers(given):
    return {k: mpf(v) for k, v in given.items()}


def close(a, b, relative="1e-28", scale=None):
    a, b = mpf(a), mpf(b)
    assert abs(a - b) <= mpf(relative) * (abs(a) if scale is None else scale), (a, b)


def put(sheet, id, what, given, x, unit, source, how=CHAIN, scale=None, mark="two", note=None):
    """scale: the largest term of a sum, where the sum itself may be small."""
    relative, why = how
    sheet.add(id=id, what=what, given=given, expect=x, tolerance=f"{float((abs(x) if scale is None else scale) * mpf(relative)):.1e}", unit=unit,
              kind="derived", mark=mark, source=source, note=note or why + (", of the largest term" if scale is not None else ""))


def q(value, unit):
    return U.Quantity(Decimal(value), unit)


def in_units(quantity, unit):
    return mpf(str(quantity.to(unit).magnitude))


# Air and water


def altitude(pa):
    """Geometric (map height), m."""
    h = T0 / L * (1 - (mpf(pa) / P0)**(1 / EXPONENT))
    return EARTH * h / (EARTH - h)


def magnus(t):
    return 100 * mpf("6.112") * exp(mpf("17.62") * mpf(t) / (mpf("243.12") + mpf(t)))


def tanaka(t):
    c = mpf(t)
    return mpf("999.974950") * (1 - (c - mpf("3.983035"))**2 * (c + mpf("301.797")) / (mpf("522528.9") * (c + mpf("69.34881"))))


def viscosity(t):
    """Of water at 0.1 MPa, mPa.s."""
    x = (mpf(t) + mpf("273.15")) / 300
    return sum(mpf(a) * x**mpf(b) for a, b in (("280.68", "-1.9"), ("511.45", "-7.7"), ("61.131", "-19.6"), ("0.45903", "-40"))) / 1000


def air():
    sheet = Sheet("fluids.py", ["ambiance", "CoolProp", "iapws", "mpmath"], "Altitude from pressure below 11 km, and water: vapour pressure (Magnus), density, viscosity. Altitudes are geometric (map height).")
    for p in "30000 40000 50000 60000 70000 80000 84556 89874.6 90000 95000 100000 101325 104000 110000".split():
        given = {"pressure_Pa": p}
        z = altitude(p)
        close(pressure(geopotential(z)), p)
        put(sheet, f"altitude-of-{p}", "geometric altitude of a pressure", given, z, "m", "US Standard Atmosphere 1976 = ISO 2533 below 11 km, solved for the altitude at 50 digits",
            ("5e-11", ""), scale=1, note="ten roundings of the power: near sea level one of them is 5e-12 m whatever the altitude")
        value = float(Atmosphere.from_pressure(float(p)).h[0])
        tolerance = max(0.006, abs(value) * 7e-6)
        assert abs(value - z) < tolerance, (p, value, z)
        sheet.add(id=f"ambiance-altitude-of-{p}", what="geometric altitude of a pressure", given=given, expect=f"{value:.7f}".replace("-0.0000000", "0.0000000"), tolerance=f"{tolerance:.1e}", unit="m", kind="reference-library", mark="two",
                  source=f"ambiance, Atmosphere.from_pressure({float(p)}).h, which takes the pressure and gives the geometric altitude",
                  note="six parts in 1e7 of the pressure at 8 km a scale height, or 7 parts in 1e6 of the altitude: ambiance follows ICAO 1993, M = 28.96442 for 28.9644, and below sea level starts from a rounded pressure at -5 km")
    for t in "0.01 10 20 25 30 37 50 60".split():
        x = magnus(t)
        close(x, region4(t)[-1], "3.5e-3")
        put(sheet, f"magnus-{t}", "saturation pressure of water, Magnus", {"temperature_C": t}, x, "Pa", "WMO No. 8, 6.112 exp(17.62 t/(243.12 + t)) hPa over water, written out at 50 digits", POWERS, mark="memory",
            note="the constants are recalled; IAPWS-IF97 agrees within 3.5 parts in 1e3, which is Magnus's own error. " + POWERS[1])
    for t in "0.01 4 10 15 20 25 30 34 37 40".split():
        x, given = tanaka(t), {"temperature_C": t}
        kelvin = float(mpf(t) + mpf("273.15"))
        value = PropsSI("D", "T", kelvin, "P", 101325, "HEOS::Water")
        close(x, value, "0.002", scale=1)
        put(sheet, f"tanaka-{t}", "density of water", given, x, "kg/m3", "Tanaka et al., Metrologia 2001;38:301-309, written out at 50 digits", note="a few roundings of a double; the equation of state beside it agrees within 0.002 kg/m3")
        sheet.add(id=f"coolprop-density-{t}", what="density of water at 101325 Pa", given=given, expect=digits(value, 14), tolerance="0.02", unit="kg/m3", kind="reference-library", mark="two",
                  source=f"CoolProp, PropsSI('D', 'T', {kelvin!r}, 'P', 101325, 'HEOS::Water')", note="another equation of state (IAPWS-95), and water with its own isotopes; measured here, the two differ by less than 0.002")
    for t in "0.01 4 10 15 20 25 30 34 37 40 50 60".split():
        mu, given = viscosity(t), {"temperature_C": t}
        put(sheet, f"viscosity-{t}", "viscosity of water at 0.1 MPa", given, mu, "mPa.s", "IAPWS SR6-08, simplified viscosity at 0.1 MPa, written out at 50 digits", POWERS)
        kelvin = float(mpf(t) + mpf("273.15"))
        value = _Liquid(kelvin)["mu"] * 1e3
        close(mu, value, "1e-13")
        sheet.add(id=f"iapws-viscosity-{t}", what="viscosity of water at 0.1 MPa", given=given, expect=digits(value, 15), tolerance=f"{value * 1e-12:.1e}", unit="mPa.s", kind="reference-library", mark="two",
                  source=f"iapws, _Liquid({kelvin!r})['mu'], its own copy of the same release", note=POWERS[1])
        value = _Viscosity(_Liquid(kelvin)["rho"], kelvin) * 1e3
        close(mu, value, "1e-3")
        sheet.add(id=f"iapws-viscosity-full-{t}", what="viscosity of water at 0.1 MPa", given=given, expect=digits(value, 14), tolerance=f"{value * 1e-3:.1e}", unit="mPa.s", kind="reference-library", mark="two",
                  source=f"iapws, _Viscosity(_Liquid({kelvin!r})['rho'], {kelvin!r}), the full formulation of 2008", note="0.1 %: another formulation, which the simplified one approximates")
        value = PropsSI("V", "T", kelvin, "P", 1e5, "HEOS::Water") * 1e3
        close(mu, value, "1e-3")
        sheet.add(id=f"coolprop-viscosity-{t}", what="viscosity of water at 0.1 MPa", given=given, expect=digits(value, 14), tolerance=f"{value * 1e-3:.1e}", unit="mPa.s", kind="reference-library", mark="two",
                  source=f"CoolProp, PropsSI('V', 'T', {kelvin!r}, 'P', 1e5, 'HEOS::Water')", note="0.1 %: another formulation, which the simplified one approximates")
    sheet.save("fluids_air.toml")


# Heads


def column(e, top, bottom):
    """The pressure of a column, mmHg: here, and by pint."""
    x = mpf(e["density_kg_m3"]) * G * (mpf(e[top]) - mpf(e[bottom])) / 100 / MMHG
    close(x, in_units(q(e["density_kg_m3"], "kg/m^3") * q(1, "g_0") * (q(e[top], "cm") - q(e[bottom], "cm")), "mmHg"), scale=1)
    return x


def head():
    sheet = Sheet("fluids.py", ["mpmath", "Pint"], "What a height does to a pressure, nothing flowing. A machine set by pressure takes the eye to be at assumed_cm. Vacuum is positive, all heights from one floor.")
    source = "hydrostatics, written out at 50 digits, and by pint"
    for e in rows("set_mmhg assumed_cm eye_cm density_kg_m3", """
60 0 0 1000
60 0 15 1000
60 15 0 1000
55.5 75 82.5 1004.6
28 110 95 998.2
80 100 130 1000
40 -10 -25 1006
120 72 68.4 997.05
10 0 30 1000
"""):
        rise = column(e, "assumed_cm", "eye_cm")
        put(sheet, ident("set-head", *e.values()), "pressure at the eye of a machine set by pressure", e, mpf(e["set_mmhg"]) + rise, "mmHg", source, scale=max(abs(rise), mpf(e["set_mmhg"])))
    for e in rows("wanted_mmhg gas_mmhg eye_cm density_kg_m3", """
60 0 75 1000
60 0 0 1000
60 40 75 1000
40 60 75 1000
55.5 12.5 82.5 1004.6
25 0 110 998.2
60 60 75 1000
110 0 -12.5 1006
30 5 95 997.05
"""):
        n = numbers(e)
        rise = 100 * (n["wanted_mmhg"] - n["gas_mmhg"]) * MMHG / (n["density_kg_m3"] * G)
        level = n["eye_cm"] + rise
        close(rise, in_units((q(e["wanted_mmhg"], "mmHg") - q(e["gas_mmhg"], "mmHg")) / q(e["density_kg_m3"], "kg/m^3") / q(1, "g_0"), "cm"), scale=1)
        put(sheet, ident("level-for", *e.values()), "open level that puts a pressure on the eye", e, level, "cm", source, scale=max(abs(rise), abs(n["eye_cm"])))
    for e in rows("wanted_mmhg assumed_cm eye_cm density_kg_m3", """
60 0 0 1000
60 0 15 1000
60 15 0 1000
55.5 75 82.5 1004.6
28 110 95 998.2
20 130 95 1000
40 -10 -25 1006
"""):
        rise = column(e, "assumed_cm", "eye_cm")
        put(sheet, ident("setting-for", *e.values()), "setting that puts a pressure on the eye", e, mpf(e["wanted_mmhg"]) - rise, "mmHg", source, scale=max(abs(rise), mpf(e["wanted_mmhg"])))
    for e in rows("vacuum_mmhg ceiling_mmhg eye_cm pump_cm density_kg_m3", """
400 742.5 75 75 1000
400 742.5 90 60 1000
400 742.5 60 90 1000
735 742.5 90 60 1000
742.5 742.5 90 60 1000
742.5 742.5 60 90 1000
760 742.5 90 60 1000
760 742.5 60 90 1000
760 742.5 75 75 1000
650 551.2 102.5 88 1004.6
540 551.2 88 102.5 998.2
0 742.5 90 60 1000
5 742.5 0 100 1000
"""):
        n, s = numbers(e), column(e, "eye_cm", "pump_cm")
        v, c = n["vacuum_mmhg"], n["ceiling_mmhg"]
        x = (c if v > c else v) + s
        if x > c:
            x = c
        assert x == min(min(v, c) + s, c)
        put(sheet, ident("tip", *e.values()), "vacuum at the tip, nothing flowing", e, x, "mmHg", "hydrostatics and the ceiling min(min(V, C) + s, C), written out at 50 digits", scale=max(abs(s), v))
    sheet.save("fluids_head.toml")


# Units


def units():
    sheet = Sheet("fluids.py", ["Pint"], "More pressure units, into one another and into kPa and mmHg, by pint.")
    names = {"mbar": "mbar", "mmH2O": "mmH2O", "inH2O": "inH2O", "kgf/cm2": "kgf/cm**2", "MPa": "MPa"}
    for name, theirs in names.items():
        pa = q(1, theirs).to("Pa").magnitude
        sheet.add(id=f"pint-{name}-in-pa", what="pressure unit in pascal", given={"unit": name}, expect=f"{pa.normalize():f}", tolerance=f"{pa * PLAIN[0]:.2g}", unit="Pa", kind="reference-library", mark="two",
                  source=f"pint, 1 {theirs}", note=PLAIN[1] + (": 25.4 mm of conventional water is 249.08891 Pa exactly" if name == "inH2O" else ""))
    names |= {"kPa": "kPa", "mmHg": "mmHg"}
    for a, theirs_a in names.items():
        for b, theirs_b in names.items():
            if a == b or {a, b} == {"kPa", "mmHg"}:  # that pair is in units.toml
                continue
            for amount in AMOUNTS:
                x = q(amount, theirs_a).to(theirs_b).magnitude
                sheet.add(id=f"pint-{a}-{b}-{amount}", what="pressure in another unit", given={"value": amount, "from": a, "to": b}, expect=f"{x:.20g}", tolerance=f"{abs(x) * PLAIN[0]:.2g}", unit=b,
                          kind="reference-library", mark="two", source=f"pint, ({amount} {theirs_a}).to({theirs_b})", note=PLAIN[1])
    sheet.save("fluids_units.toml")


# Tubes

KINETIC = mpf("2.3")
TUBE = "Poiseuille's law, with 2.3 rho v^2/2 where the flow enters and leaves, written out at 50 digits"


class Tube:
    """One of n equal tubes side by side. SI inside; q is the flow of all of them."""

    def __init__(self, bore_mm, length_mm, n, mu_mpa_s, rho):
        self.d, self.l, self.n, self.mu, self.rho = mpf(bore_mm) / 1000, mpf(length_mm) / 1000, mpf(n), mpf(mu_mpa_s) / 1000, mpf(rho)

    def velocity(self, q):
        return 4 * q / self.n / (pi * self.d**2)

    def reynolds(self, q):
        return 4 * self.rho * q / self.n / (pi * self.d * self.mu)

    def shear(self, q):
        return 32 * q / self.n / (pi * self.d**3)

    def laminar(self, q):
        return 128 * self.mu * self.l * q / self.n / (pi * self.d**4)

    def kinetic(self, q):
        return KINETIC * self.rho * self.velocity(q)**2 / 2

    def drop(self, q):
        return self.laminar(q) + self.kinetic(q)

    def entrance(self, q):
        return mpf("0.056") * self.reynolds(q) * self.d

    def check(self, q):
        """The same from the profile across the bore: a parabola that carries the flow, and the wall's pull on it."""
        mean = q / self.n / (pi * (self.d / 2)**2)
        u = lambda r: 2 * mean * (1 - (2 * r / self.d)**2)
        close(quad(lambda r: 2 * pi * r * u(r), [0, self.d / 2]), q / self.n, "1e-25")
        close(mean, self.velocity(q))
        pull = -diff(u, self.d / 2)
        close(pull, self.shear(q), "1e-15")
        close(pull * self.mu * pi * self.d * self.l / (pi * self.d**2 / 4), self.laminar(q), "1e-15")
        close(self.rho * mean * self.d / self.mu, self.reynolds(q))


def in_pint(e):
    """Drop in mmHg, speed, Reynolds number: every unit left to pint."""
    d, l, flow = q(e["bore_mm"], "mm"), q(e["length_mm"], "mm"), q(e["flow_ml_min"], "mL/min") / Decimal(e["side_by_side"])
    mu, rho = q(e["viscosity_mpa_s"], "mPa*s"), q(e["density_kg_m3"], "kg/m^3")
    v = flow / (PI * d * d / 4)
    return in_units(32 * mu * l * v / (d * d), "mmHg"), in_units(Decimal("2.3") * rho * v * v / 2, "mmHg"), in_units(v, "m/s"), in_units(rho * v * d / mu, "")


def tube():
    sheet = Sheet("fluids.py", ["mpmath", "Pint"], "Smooth round tubes, laminar flow. flow_ml_min is the flow of all the tubes that lie side by side; a second tube carries the whole of it.")
    keys = "bore_mm length_mm side_by_side flow_ml_min viscosity_mpa_s density_kg_m3"
    measures = [("velocity", "mean speed in the tube", "m/s"), ("reynolds", "Reynolds number", "1"), ("shear", "shear rate at the wall", "1/s"), ("laminar", "drop by viscosity", "mmHg"),
                ("kinetic", "drop by the kinetic energy", "mmHg"), ("drop", "drop over the tube", "mmHg"), ("entrance", "length over which the profile forms", "mm")]
    for e in rows(keys, """
0.210 13 1 10 1.0016 1000
0.210 13 1 2.5 1.0016 998.2
0.337 13 1 10 1.0016 1000
0.337 13 1 25 0.6913 993.33
1.1 2000 1 30 1.0016 1000
1.1 2000 1 60 0.8900 997.05
0.9 2000 1 25 1.0016 1000
0.9 20 3 75 1.0016 1000
0.603 25.4 2 20 1.0016 1000
0.514 16 1 1.5 50 1005
0.260 13 1 0.4 50 1005
0.838 38 1 3 4000 1010
4.0 2400 1 60 1.0016 1000
"""):
        t, flow = Tube(*(e[k] for k in "bore_mm length_mm side_by_side viscosity_mpa_s density_kg_m3".split())), mpf(e["flow_ml_min"]) * ML_MIN
        assert t.reynolds(flow) < 2300
        t.check(flow)
        for a, b in zip((t.laminar(flow) / MMHG, t.kinetic(flow) / MMHG, t.velocity(flow), t.reynolds(flow)), in_pint(e)):
            close(a, b)
        for name, what, unit in measures:
            x = getattr(t, name)(flow) * {"mmHg": 1 / MMHG, "mm": 1000}.get(unit, 1)
            put(sheet, ident("tube", name, *e.values()), what, e, x, unit, TUBE if unit == "mmHg" else "flow in a round tube, written out at 50 digits" if name != "entrance" else "0.056 Re D, written out at 50 digits")
    keys = "bore_mm length_mm side_by_side viscosity_mpa_s density_kg_m3 drive_mmhg"
    for e in rows(keys, """
0.210 13 1 1.0016 1000 60
0.210 13 1 1.0016 998.2 400
0.337 13 1 1.0016 1000 60
1.1 2000 1 1.0016 1000 60
0.9 2000 1 0.6913 993.33 44.2
0.9 20 3 1.0016 1000 5
0.514 16 1 50 1005 600
0.838 38 1 4000 1010 1500
0.603 13 2 1.0016 1000 0.1
"""):
        flow_of(sheet, "tube-flow", "flow that a drive pushes through a tube", e, [Tube(*(e[k] for k in keys.split()[:5]))])
    keys = "bore_mm length_mm side_by_side bore_2_mm length_2_mm viscosity_mpa_s density_kg_m3"
    pairs = """
0.337 13 1 1.1 2000 1.0016 1000
0.603 25.4 1 0.9 2000 1.0016 1000
0.9 20 3 4.0 2400 1.0016 1000
0.210 13 2 1.1 2000 0.6913 993.33
0.514 16 1 1.4 60 50 1005
"""
    for e, drive, flow in zip(rows(keys, pairs), "60 350 3 500 600".split(), "25 22.5 60 8 1.25".split()):
        rest = (e["viscosity_mpa_s"], e["density_kg_m3"])
        two = [Tube(e["bore_mm"], e["length_mm"], e["side_by_side"], *rest), Tube(e["bore_2_mm"], e["length_2_mm"], 1, *rest)]
        flow_of(sheet, "tubes-flow", "flow that a drive pushes through two tubes in series", {**e, "drive_mmhg": drive}, two)
        e = {**e, "flow_ml_min": flow}
        x = mpf(flow) * ML_MIN
        assert all(t.reynolds(x) < 2300 for t in two)
        other = {**e, "bore_mm": e["bore_2_mm"], "length_mm": e["length_2_mm"], "side_by_side": "1"}
        close(sum(t.drop(x) for t in two) / MMHG, sum(in_pint(e)[:2] + in_pint(other)[:2]))
        put(sheet, ident("tubes-drop", *e.values()), "drop over two tubes in series", e, sum(t.drop(x) for t in two) / MMHG, "mmHg", TUBE)
    for e in rows("r1 r2 r3", "0.25 0.5 1\n3 3 3\n0.125 40 7.5\n1e-3 2 500"):
        r = list(numbers(e).values())
        x = 1 / sum(1 / i for i in r)
        close(x, r[0] * r[1] * r[2] / (r[0] * r[1] + r[1] * r[2] + r[2] * r[0]))
        put(sheet, ident("parallel", *e.values()), "resistances side by side", e, x, "mmHg min/mL", "1/(1/r1 + 1/r2 + 1/r3), at 50 digits")
        put(sheet, ident("series", *e.values()), "resistances one after another", e, sum(r), "mmHg min/mL", "r1 + r2 + r3, at 50 digits")
    for e in rows("diameter_mm drive_mmhg discharge density_kg_m3", "0.3 60 0.6 1000\n0.9 400 0.62 1000\n0.5 550 0.8 1004.6\n1.1 12.5 1 998.2"):
        n = numbers(e)
        x = n["discharge"] * pi * (n["diameter_mm"] / 2000)**2 * sqrt(2 * n["drive_mmhg"] * MMHG / n["density_kg_m3"]) / ML_MIN
        speed = (2 * q(e["drive_mmhg"], "mmHg") / q(e["density_kg_m3"], "kg/m^3")).to("m^2/s^2") ** Decimal("0.5")
        close(x, in_units(Decimal(e["discharge"]) * PI * q(e["diameter_mm"], "mm")**2 / 4 * speed, "mL/min"))
        put(sheet, ident("orifice", *e.values()), "flow through a thin opening", e, x, "mL/min", "Cd A sqrt(2 dP/rho), at 50 digits and by pint", POWERS)
    for e in rows("drop_mmhg syringe_bore_mm friction_n", "600 8.65 2.5\n1500 6.35 1\n45 19.05 0\n2400 4.78 3.2"):
        n = numbers(e)
        x = n["drop_mmhg"] * MMHG * pi * (n["syringe_bore_mm"] / 1000)**2 / 4 + n["friction_n"]
        close(x, in_units(q(e["drop_mmhg"], "mmHg") * PI * q(e["syringe_bore_mm"], "mm")**2 / 4 + q(e["friction_n"], "N"), "N"))
        put(sheet, ident("plunger", *e.values()), "force on the plunger", e, x, "N", "dP pi D^2/4 + friction, at 50 digits and by pint")
    for e in rows("vacuum_mmhg eye_mmhg bore_mm", "400 60 0.9\n550 0 0.7\n100 35.5 0.337\n600 110 1.1\n0 60 0.9"):
        n = numbers(e)
        x = (n["vacuum_mmhg"] + n["eye_mmhg"]) * MMHG * pi * (n["bore_mm"] / 1000)**2 / 4 * 1000
        close(x, in_units((q(e["vacuum_mmhg"], "mmHg") + q(e["eye_mmhg"], "mmHg")) * PI * q(e["bore_mm"], "mm")**2 / 4, "mN"))
        put(sheet, ident("hold", *e.values()), "force that holds a piece on the tip", e, x, "mN", "(V + P) pi d^2/4, at 50 digits and by pint")
    sheet.save("fluids_tube.toml")


def driven(tubes, drive):
    """a Q^2 + b Q = drive (Pa): the positive root, and the same found by trial."""
    a, b = sum(t.kinetic(mpf(1)) for t in tubes), sum(t.laminar(mpf(1)) for t in tubes)
    x = (sqrt(b**2 + 4 * a * drive) - b) / (2 * a)
    start = drive / b
    close(x, findroot(lambda y: sum(t.drop(y) for t in tubes) / drive - 1, (start / 2, start)), "1e-20")
    assert all(t.reynolds(x) < 2300 for t in tubes), [t.reynolds(x) for t in tubes]
    return x


def flow_of(sheet, id, what, e, tubes):
    put(sheet, ident(id, *e.values()), what, e, driven(tubes, mpf(e["drive_mmhg"]) * MMHG) / ML_MIN, "mL/min", TUBE + "; the positive root, and by trial", POWERS)


# Needles

NEEDLES = """18 1.270 0.838 0.790 0.910
19 1.067 0.686 0.648 0.750
20 0.9081 0.603 0.560 0.635
21 0.8192 0.514 0.490 0.547
22 0.7176 0.413 0.390 0.440
23 0.6414 0.337 0.317 0.370
24 0.5652 0.311 0.280 0.343
25 0.5144 0.260 0.232 0.292
26 0.4636 0.260 0.232 0.292
27 0.4128 0.210 0.184 0.241
28 0.3620 0.184 0.133 0.190
29 0.3366 0.184 0.133 0.190
30 0.3112 0.159 0.133 0.165
31 0.2604 0.133 0.114 0.125"""


def needles():
    sheet = Sheet("fluids.py", ["mpmath"], "Needles by gauge: the customary outer diameter and bore, and the least bores of ISO 9626 (regular and thin wall). All recalled, none read.")
    kinds = [("outer", "outer diameter, customary", "the customary needle gauge"), ("bore", "bore, customary", "the customary needle gauge"),
             ("least", "least bore, regular wall", "ISO 9626"), ("thin", "least bore, thin wall", "ISO 9626")]
    for e in rows("gauge outer bore least thin", NEEDLES):
        n = numbers(e)
        assert n["least"] < n["bore"] < n["outer"] and n["least"] < n["thin"] < n["outer"]
        for name, what, source in kinds:
            x = e[name]
            sheet.add(id=f"needle-{name}-{e['gauge']}", what=what, given={"gauge": e["gauge"]}, expect=x, tolerance=f"5e-{len(x.split('.')[1]) + 1}", unit="mm", kind="memory", mark="memory",
                      source=f"{source}, recalled", note="half the last digit")
    sheet.save("fluids_needles.toml")


# A chamber, nothing changing with time


def network(r_in, g, r_asp, head, aspiration=None, vacuum=None):
    """Eye and line as linear equations, unknowns P and Pt: what flows in flows out."""
    line = [1 / r_asp, -1 / r_asp] if vacuum is None else [mpf(0), mpf(1)]
    p, pt = lu_solve(matrix([[1 / r_in + 1 / r_asp + g, -1 / r_asp], line]), matrix([head / r_in, aspiration if vacuum is None else -vacuum]))
    return p, pt


def chamber():
    sheet = Sheet("fluids.py", ["mpmath"], "A chamber fed through one resistance, leaking, and emptied through another: an illustration, not a living eye. Pressures mmHg, flows mL/min, resistances mmHg min/mL, leak mL/min a mmHg.")
    solved = "the network as linear equations, solved at 50 digits"
    for e in rows("flow_1 pressure_1 flow_2 pressure_2", "0 60 30 52\n10 55.5 40 46.2\n25 70 60 61.25\n5 41.3 20 38.1\n40 46.2 10 55.5"):
        n = numbers(e)
        p0, r = lu_solve(matrix([[1, -n["flow_1"]], [1, -n["flow_2"]]]), matrix([n["pressure_1"], n["pressure_2"]]))
        close(r, (n["pressure_1"] - n["pressure_2"]) / (n["flow_2"] - n["flow_1"]))
        close(p0, n["pressure_1"] + r * n["flow_1"])
        source = "the straight line P = P0 - R Q through two readings, solved at 50 digits"
        put(sheet, ident("readings-r", *e.values()), "resistance between two readings", e, r, "mmHg min/mL", source, ("1e-13", "a few roundings of a double, each larger by the subtraction of near pressures"))
        put(sheet, ident("readings-p0", *e.values()), "pressure with nothing flowing, from two readings", e, p0, "mmHg", source)
    for e in rows("head r_in leak_ml_min", "60 0.2 2\n80 0.15 5.5\n45.5 0.35 1.25\n110 0.1 12\n60 0.2 0"):
        n = numbers(e)
        p = n["head"] - n["r_in"] * n["leak_ml_min"]
        g = n["leak_ml_min"] / p
        close(network(n["r_in"], g, mpf(3), n["head"], aspiration=mpf(0))[0], p)
        put(sheet, ident("leak-g", *e.values()), "leak by pressure", e, g, "mL/min/mmHg", "Q0/(P_head - R_in Q0) at 50 digits, and back through the network", scale=None if g else mpf(1))
    for e in rows("head r_in g aspiration r_asp", "60 0.2 0.02 30 4\n80 0.15 0.05 45 3.2\n45.5 0.35 0.01 12.5 8\n110 0.1 0 60 2\n60 0.25 0.03 0 5\n70 0.4 0.05 22 2.75"):
        n = numbers(e)
        p, pt = network(n["r_in"], n["g"], n["r_asp"], n["head"], aspiration=n["aspiration"])
        close(p, (n["head"] - n["r_in"] * n["aspiration"]) / (1 + n["r_in"] * n["g"]))
        close(-pt, n["r_asp"] * n["aspiration"] - p)
        put(sheet, ident("flowpump-p", *e.values()), "pressure of the eye, a pump set by flow", e, p, "mmHg", solved)
        put(sheet, ident("flowpump-v", *e.values()), "vacuum in the line, a pump set by flow", e, -pt, "mmHg", solved, scale=max(p, n["r_asp"] * n["aspiration"]))
    for e in rows("head r_in g vacuum r_asp", "60 0.2 0.02 100 4\n80 0.15 0.05 300 3.2\n45.5 0.35 0.01 250 8\n110 0.1 0 550 2.5\n70 0.25 0.03 0 5\n90 0.3 0.05 400 6"):
        n = numbers(e)
        p, _ = network(n["r_in"], n["g"], n["r_asp"], n["head"], vacuum=n["vacuum"])
        close(p, (n["head"] / n["r_in"] - n["vacuum"] / n["r_asp"]) / (1 / n["r_in"] + 1 / n["r_asp"] + n["g"]))
        assert p > 0
        flow = (p + n["vacuum"]) / n["r_asp"]
        close(flow, (n["head"] - p) / n["r_in"] - n["g"] * p)
        put(sheet, ident("vacpump-p", *e.values()), "pressure of the eye, a pump set by vacuum", e, p, "mmHg", solved, scale=n["head"])
        put(sheet, ident("vacpump-q", *e.values()), "flow through the line, a pump set by vacuum", e, flow, "mL/min", solved)
    sheet.save("fluids_chamber.toml")


if __name__ == "__main__":
    air()
    head()
    units()
    tube()
    needles()
    chamber()
