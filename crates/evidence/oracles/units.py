"""Pressure units and heads by pint, which keeps its own definitions of them, in exact decimals."""
from decimal import Decimal, getcontext

from pint import UnitRegistry

from sheet import Sheet

getcontext().prec = 50
# our name: pint's name
UNITS = {"Pa": "Pa", "hPa": "hPa", "kPa": "kPa", "mmHg": "mmHg", "torr": "torr", "cmH2O": "cmH2O", "inHg": "inHg", "psi": "psi", "atm": "atm", "bar": "bar"}
AMOUNTS = "1 37.5 -612.25".split()
# relative tolerance and its reason, widest of the two units in the pair
PLAIN = (Decimal("5e-15"), "some roundings of a double, and no more")
LOOSE = {
    "inHg": (Decimal("1.5e-10"), "pint's inch of mercury is 25.4 mmHg = 3386.388640341 Pa; where it is printed as 3386.388640 that is 1.01e-10 less"),
    "psi": (Decimal("8e-14"), "pint's psi is 6894.757293168361... Pa; where it is printed as 6894.757293168 that is 5.3e-14 less"),
}


def main():
    u = UnitRegistry(non_int_type=Decimal)
    sheet = Sheet("units.py", ["Pint"], "Every pressure unit into every other, and heads of water, by pint.")
    for name, theirs in UNITS.items():
        pa = u.Quantity(Decimal(1), theirs).to("Pa").magnitude
        sheet.add(id=f"pint-{name}-in-pa", what="pressure unit in pascal", given={"unit": name}, expect=f"{pa:.30g}".rstrip("0").rstrip(".") if "." in f"{pa:.30g}" else f"{pa:f}",
                  tolerance=f"{pa * LOOSE.get(name, PLAIN)[0]:.2g}", unit="Pa", kind="reference-library", mark="two", source=f"pint, 1 {theirs}", note=LOOSE.get(name, PLAIN)[1])
    for a, theirs_a in UNITS.items():
        for b, theirs_b in UNITS.items():
            if a == b:
                continue
            relative, why = max(LOOSE.get(a, PLAIN), LOOSE.get(b, PLAIN))
            for amount in AMOUNTS:
                x = u.Quantity(Decimal(amount), theirs_a).to(theirs_b).magnitude
                sheet.add(id=f"pint-{a}-{b}-{amount}", what="pressure in another unit", given={"value": amount, "from": a, "to": b}, expect=f"{x:.20g}",
                          tolerance=f"{abs(x) * relative:.2g}", unit=b, kind="reference-library", mark="two", source=f"pint, ({amount} {theirs_a}).to({theirs_b})", note=why)
    for density, height in ("1000", "1"), ("1000", "15"), ("1000", "110"), ("998.2", "75"), ("1004.6", "130"), ("1000", "-12.5"):
        x = (u.Quantity(Decimal(density), "kg/m^3") * u.Quantity(Decimal(1), "g_0") * u.Quantity(Decimal(height), "cm")).to("mmHg").magnitude
        sheet.add(id=f"pint-head-{density}-{height}", what="head to pressure, nothing flowing", given={"density_kg_m3": density, "height_cm": height}, expect=f"{x:.20g}",
                  tolerance=f"{abs(x) * PLAIN[0]:.2g}", unit="mmHg", kind="reference-library", mark="two", source=f"pint, ({density} kg/m^3 * g_0 * {height} cm).to(mmHg)", note=PLAIN[1])
    sheet.save("units.toml")


if __name__ == "__main__":
    main()
