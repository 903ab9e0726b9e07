"""The standard atmosphere below 11 km: a package, and the formula written out again at 50 digits."""
from ambiance import Atmosphere
from mpmath import mpf

from sheet import Sheet
from water import region4

G, M, R, L, T0, P0, EARTH = map(mpf, "9.80665 0.0289644 8.31432 0.0065 288.15 101325 6356766".split())
EXPONENT = G * M / (R * L)
MMHG = mpf("133.322387415")
ALTITUDES = "-400 -100 0 35 500 1000 1609 2000 2500 3127 3415 4150 5000 5500".split()
FORMULA = "US Standard Atmosphere 1976 = ISO 2533 below 11 km"


def geopotential(z):
    return EARTH * z / (EARTH + z)


def pressure(h):
    return P0 * (1 - L * h / T0)**EXPONENT


def main():
    sheet = Sheet("atmosphere.py", ["ambiance", "mpmath"], "Pressure of the standard atmosphere, and the ceiling it puts on vacuum. altitude_m is geometric (map height), height_m geopotential.")
    exact = dict(kind="derived", mark="two", source=f"{FORMULA}, written out at 50 digits")
    sheet.add(id="atmosphere-exponent", what="exponent g M/(R L)", given={}, expect=EXPONENT, tolerance="1e-14", unit="1", note="some roundings of a double", **exact)
    for z in ALTITUDES:
        given = {"altitude_m": z}
        value = float(Atmosphere(float(z)).pressure[0])
        sheet.add(id=f"ambiance-{z}", what="pressure at a geometric altitude", given=given, expect=repr(value), tolerance=f"{value * 6e-7:.1e}", unit="Pa", kind="reference-library", mark="two",
                  source=f"ambiance, Atmosphere({float(z)}).pressure, which takes the geometric altitude", note="six parts in 1e7: ambiance follows ICAO 1993, M = 28.96442 for 28.9644, and below sea level starts from a rounded pressure at -5 km")
        h = geopotential(mpf(z))
        sheet.add(id=f"geopotential-{z}", what="geopotential height of a geometric altitude", given=given, expect=h, tolerance="4e-12", unit="m", note="some roundings of a double", **exact)
        sheet.add(id=f"atmosphere-{z}", what="pressure at a geometric altitude", given=given, expect=pressure(h), tolerance="1e-9", unit="Pa", note="some roundings of a double and of its power function", **exact)
    for h in "-500 250 500 1500 5000 11000".split():
        sheet.add(id=f"atmosphere-geopotential-{h}", what="pressure at a geopotential height", given={"height_m": h}, expect=pressure(mpf(h)), tolerance="1e-9", unit="Pa", note="some roundings of a double and of its power function", **exact)
    for z, t in ("0", "20"), ("0", "37"), ("1609", "20"), ("2500", "25"), ("3127", "20"), ("3415", "20"), ("5500", "30"):
        x = (pressure(geopotential(mpf(z))) - region4(t)[-1]) / MMHG
        sheet.add(id=f"ceiling-{z}-{t}", what="greatest gauge vacuum, p_atm - p_sat", given={"altitude_m": z, "temperature_C": t}, expect=x, tolerance="1e-11", unit="mmHg", note="some roundings of a double", kind="derived", mark="two", source=f"{FORMULA} less IAPWS-IF97 region 4, written out at 50 digits")
    sheet.save("atmosphere.toml")


if __name__ == "__main__":
    main()
