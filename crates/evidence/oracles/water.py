"""Saturation pressure of water: two packages, and IAPWS-IF97 region 4 written out again at 50 digits."""
import inspect
import re

from CoolProp.CoolProp import PropsSI
from iapws.iapws97 import _PSat_T
from mpmath import mpf, sqrt

from sheet import Sheet

TEMPERATURES = "0.01 4 10 15 20 25 30 34 37 45 50".split()
IF97 = "IAPWS-IF97 (2007) region 4"
# typed from the release, not taken from a package
COEFFICIENTS = """0.11670521452767e4 -0.72421316703206e6 -0.17073846940092e2 0.12020824702470e5 -0.32325550322333e7
0.14915108613530e2 -0.48232657361591e4 0.40511340542057e6 -0.23855557567849e0 0.65017534844798e3""".split()


def region4(t_c):
    n = [None, *map(mpf, COEFFICIENTS)]
    t = mpf(t_c) + mpf("273.15")
    theta = t + n[9] / (t - n[10])
    a = theta**2 + n[1] * theta + n[2]
    b = n[3] * theta**2 + n[4] * theta + n[5]
    c = n[6] * theta**2 + n[7] * theta + n[8]
    return theta, a, b, c, 10**6 * (2 * c / (-b + sqrt(b**2 - 4 * a * c)))**4


def printed():
    """The coefficients as the iapws package's own source prints them."""
    found = re.search(r"n = \(0,(.*?)\)", inspect.getsource(_PSat_T), re.S).group(1)
    return [re.sub(r"E([+-])0*(\d+)", lambda m: f"e{m[1].strip('+')}{m[2]}", x) for x in re.findall(r"-?[\d.]+E[+-]\d+", found)]


def main():
    sheet = Sheet("water.py", ["iapws", "CoolProp", "mpmath"], "Saturation pressure of water and what it is made of.")
    coefficients = printed()
    assert [float(x) for x in coefficients] == [float(x) for x in COEFFICIENTS]
    for i, x in enumerate(coefficients, 1):
        mantissa, power = x.split("e")
        sheet.add(id=f"if97-n{i}", what="coefficient of IF97 region 4", given={"n": str(i)}, expect=x, tolerance=f"5e{int(power) - len(mantissa.split('.')[1]) - 1}", unit="1",
                  kind="reference-library", mark="two", source="iapws, source of iapws.iapws97._PSat_T", note="half the last printed place")
    for t in TEMPERATURES:
        kelvin = float(mpf(t) + mpf("273.15"))
        given = {"temperature_C": t}
        value = _PSat_T(kelvin) * 1e6
        sheet.add(id=f"iapws-psat-{t}", what="saturation pressure of water", given=given, expect=repr(value), tolerance=f"{value * 1e-12:.1e}", unit="Pa",
                  kind="reference-library", mark="two", source=f"iapws.iapws97._PSat_T({kelvin!r})", note="one part in 1e12: both are doubles, and a difference of near numbers is in it")
        value = PropsSI("P", "T", kelvin, "Q", 0, "IF97::Water")
        sheet.add(id=f"coolprop-psat-{t}", what="saturation pressure of water", given=given, expect=repr(value), tolerance=f"{value * 1e-12:.1e}", unit="Pa",
                  kind="reference-library", mark="two", source=f"CoolProp, PropsSI('P', 'T', {kelvin!r}, 'Q', 0, 'IF97::Water')", note="one part in 1e12: both are doubles, and a difference of near numbers is in it")
        value = PropsSI("P", "T", kelvin, "Q", 0, "HEOS::Water")
        sheet.add(id=f"iapws95-psat-{t}", what="saturation pressure of water", given=given, expect=repr(value), tolerance=f"{value * 1e-4:.1e}", unit="Pa",
                  kind="reference-library", mark="two", source=f"CoolProp, PropsSI('P', 'T', {kelvin!r}, 'Q', 0, 'HEOS::Water')", note="another equation of state (IAPWS-95): the two releases differ by less than one part in 1e4 here")
        for symbol, x, tolerance, why in zip(("theta", "A", "B", "C", "psat"), region4(t), ("2e-13", "2e-9", "5e-9", "2e-9", None), 4 * ["a few roundings of a double; one unit in a coefficient's last digit moves A, B or C by at least 1e-8"] + ["one part in 1e13"]):
            sheet.add(id=f"if97-{symbol.lower()}-{t}", what=f"IF97 region 4: {symbol}", given=given, expect=x, tolerance=tolerance or f"{float(x) * 1e-13:.1e}", unit="K" if symbol == "theta" else "Pa" if symbol == "psat" else "1",
                      kind="derived", mark="two", source=f"{IF97}, written out at 50 digits", note=why)
    sheet.save("water.toml")


if __name__ == "__main__":
    main()
