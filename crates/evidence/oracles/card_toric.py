"""Numbers on the card about astigmatism: the planned cornea, toric lenses, the lens chosen, turning it, what an operation changed.

Every number is worked out from the entries by the functions of lens.py, astigmatism.py and vectors.py, at 50 digits. Astigmatism
is a vector at its steep meridian. A refraction R is a power matrix: the spectacle correction, so its vector lies where it is
strongest, which is the axis of its minus cylinder and across the axis of its plus cylinder.
"""
from mpmath import atan2, cos, matrix, mpf, pi, sin, sqrt

from astigmatism import ONE, at_lens, matrix_of, minus_cylinder, rad, residual, vector, vector_of
from lens import METHODS, refraction, to_cornea, to_spectacles
from sheet import Sheet
from vectors import EDGES, PAPERS, TINY, WORST, axis, between, by_class, exactly, length, mean_length, moments, rule, steep

FAR = {"tolerance": "1e-9", "note": "far above double rounding"}
USUAL = {"eye": "right", "axial_length_mm": "23.50", "acd_mm": "3.20", "target_d": "0.00", "keratometric_index": "1.3375", "vertex_mm": "12"}
SOURCES = "none", "measured", "regression_2016", "eom_2015", "goggin_2015"
NAKED = {"axial_length_mm": "23.50", "k1_d": "44.80", "k1_axis_deg": "98", "k2_d": "42.90", "k2_axis_deg": "8", "acd_mm": "3.20", "a_constant": "118.4"}
A = {**NAKED, "incision_site_deg": "150", "incision_flattening_d": "0.30"}
SHORT = {"eye": "left", "axial_length_mm": "21.90", "k1_d": "44.05", "k1_axis_deg": "112", "k2_d": "45.80", "k2_axis_deg": "22", "acd_mm": "2.85", "a_constant": "118.7", "target_d": "-0.50"}
B = {**SHORT, "incision_site_deg": "10", "incision_flattening_d": "0.40"}
LONG = {"axial_length_mm": "26.40", "k1_d": "41.20", "k1_axis_deg": "140", "k2_d": "43.90", "k2_axis_deg": "50", "acd_mm": "3.55", "a_constant": "118.9", "target_d": "-0.25", "vertex_mm": "13.5"}
C = {**LONG, "incision_site_deg": "100", "incision_flattening_d": "0.50"}
BACK = {"posterior_r1_mm": "6.62", "posterior_r1_axis_deg": "14", "posterior_r2_mm": "6.27", "posterior_r2_axis_deg": "104", "corneal_thickness_um": "545"}
MEASURED = {"posterior_from": "measured", **BACK}


def labels(power, plane, *cylinders):
    return {"label_power": power, "cylinder_plane": plane, **{f"cylinder_{i}_d": c for i, c in enumerate(cylinders, 1)}}


# The toric lenses: an eye, labels, a lens power; and the lens chosen.
TA = {**A, **labels("spherical_equivalent", "lens", "1.50", "2.25", "3.00"), "iol_power_d": "20.00"}
TB = {**B, **labels("flattest_meridian", "cornea", "0.75", "1.25", "1.75", "2.25"), "iol_power_d": "24.50"}
TC = {**C, **labels("flattest_meridian", "lens", "2.25", "3.00", "3.75", "4.50"), "iol_power_d": "12.00"}
TD = {**A, **labels("spherical_equivalent", "cornea", "1.00", "1.50", "2.00"), "iol_power_d": "20.50"}
CHOSEN_A = {**TA, "iol_cylinder_d": "2.25", "iol_axis_deg": "103"}
CHOSEN_B = {**TB, "iol_cylinder_d": "1.75", "iol_axis_deg": "14"}
CHOSEN_C = {**TC, "iol_cylinder_d": "3.75", "iol_axis_deg": "48"}
CHOSEN_D = {**TD, "iol_cylinder_d": "2.00", "iol_axis_deg": "85"}

# Sources.
VECTORS = "sum of vectors at the steep meridian: a cut flattens its own meridian and steepens the one across by half each"
AT_LENS = "v = k/(1 - (d/n) k) in both principal meridians, n = 1.336, at the method's own lens position"
MATRICES = "2x2 power matrices and their inverses, n = 1.336, at the method's own lens position"
VERTEXED = "; to spectacles by R (I + vR)^-1"
EXPECTED = "mean and variance of |Y e^(i 2(d + p)) - N + noise|^2 in closed form, p normal; the mean length as if that were gamma-distributed"
SD = "J Cataract Refract Surg 2011;37:1394-1402: 4.9 +/- 2.1 deg"
LYING = "; lying, Br J Ophthalmol 2015;99:49-53: 1.43 +/- 3.41 deg; root of the sum of squares"
SECTION = "K = E + C_L (cos 2m, sin 2m), E at the cornea by R (I - vR)^-1, C_L by 2x2 power matrices"
CHANGE = "Alpins, J Cataract Refract Surg 1993;19:524-533, 2001;27:31-49; the astigmatism left is minus the correction still needed"
ALONG = "Naeser, J Cataract Refract Surg 1990;16:162-168"


def entries(given):
    e = {}
    for key, text in {**USUAL, **given}.items():
        try:
            e[key] = mpf(text)
        except ValueError:
            e[key] = text
    return e


# The cornea.

def scaled(e, k):
    """An entered K at index 1.3375."""
    return k * mpf("337.5") / (1000 * (e["keratometric_index"] - 1))


def front(e, when=""):
    return steep(scaled(e, e[when + "k1_d"] - e[when + "k2_d"]), e[when + "k1_axis_deg"])


def mean_k(e):
    return scaled(e, (e["k1_d"] + e["k2_d"]) / 2)


def site(e):
    if "incision_site_deg" in e:
        return e["incision_site_deg"]
    temple, nose = (180, 0) if e["eye"] == "right" else (0, 180)
    if "incision_site_word" in e:
        word = e["incision_site_word"]
        high = 90 if word.startswith("super") else 270 if word.startswith("infer") else None
        side = temple if word.endswith("temporal") else nose if word.endswith("nasal") else None
        if high is None or side is None:
            return mpf(side if high is None else high)
        x, y = cos(rad(mpf(high))) + cos(rad(mpf(side))), sin(rad(mpf(high))) + sin(rad(mpf(side)))
        return (atan2(y, x) * 180 / pi) % 360
    # 6 o'clock lies where the observer sits, and the hours run clockwise for him
    six = {"facing": 270, "superior": 90, "temporal": temple}[e["clock_seen_from"]]
    return (six + 30 * (6 - e["incision_clock_h"])) % 360


def incisions(e):
    v = matrix([0, 0])
    if "incision_flattening_d" in e:
        v += steep(e["incision_flattening_d"], site(e) + 90)
    if "paired_flattening_d" in e:
        v += steep(e["paired_flattening_d"], site(e) + 180 + 90)
    if "other_flattening_d" in e:
        v += steep(e["other_flattening_d"], e["other_site_deg"] + 90)
    if "sia_centroid_d" in e:
        v += steep(e["sia_centroid_d"], e["sia_centroid_axis_deg"])
    return v


def surface(power, one, one_axis, other, other_axis):
    """Power over radius in each of two meridians across each other."""
    assert abs(between(one_axis - other_axis)) == 90
    (f1, f2), a = (power / one, power / other), 2 * rad(one_axis)
    return matrix_of((f1 + f2) / 2, (f1 - f2) / 2 * cos(a), (f1 - f2) / 2 * sin(a))


def with_back(source, e):
    """The cornea of both surfaces as a steep-meridian vector, before the incisions."""
    v = front(e)
    n, a = length(v), axis(v)
    if source == "measured":
        f1 = surface(mpf(376), mpf("337.5") / scaled(e, e["k1_d"]), e["k1_axis_deg"], mpf("337.5") / scaled(e, e["k2_d"]), e["k2_axis_deg"])
        f2 = surface(mpf(-40), e["posterior_r1_mm"], e["posterior_r1_axis_deg"], e["posterior_r2_mm"], e["posterior_r2_axis_deg"])
        reduced = e["corneal_thickness_um"] / mpf(10)**6 / mpf("1.376")
        _, j0, j45 = vector_of(f1 + f2 - reduced * (f1 * f2 + f2 * f1) / 2)
        return matrix([2 * j0, 2 * j45])
    if source == "regression_2016":
        return matrix([mpf("0.508") + mpf("0.926") * v[0], mpf("0.009") + mpf("0.932") * v[1]])
    if source == "none":
        return v
    return by_class(source, n, a, rule(a))


def planned(e):
    return with_back(e.get("posterior_from", "none"), e) + incisions(e)


def printed(v):
    a = axis(v)
    assert 1 < a < 179, "an axis near the seam says nothing more and prints differently"
    return a


# The eye and its lens.

def solve(key, e):
    k = mean_k(e)
    eye = {"iol_power_d": mpf(0), **e, "K": k, "k_d": k, "r": mpf("337.5") / k}
    return {symbol: value for symbol, value, _ in METHODS[key][1](eye)}


def steeper(out, e, astigmatism):
    """Lens cylinder that a cornea of this astigmatism asks for, so that the eye is left with its target."""
    k = out["Kc"] + to_cornea(e["target_d"], e["vertex_mm"])
    return at_lens(k + astigmatism / 2, out["ELP"]) - at_lens(k - astigmatism / 2, out["ELP"])


class Lens:
    """A toric lens in a method's eye: mean power and cylinder at the lens, and the light it asks of the cornea."""

    def __init__(self, key, e, label, more=0):
        self.e, self.out = e, solve(key, e)
        self.cylinder = label if e["cylinder_plane"] == "lens" else steeper(self.out, e, label)
        if "iol_power_d" not in e:
            self.mean = self.out["P"]
        else:
            self.mean = e["iol_power_d"] + (self.cylinder / 2 if e["label_power"] == "flattest_meridian" else 0)
        self.mean += more

    def refraction(self, kc, n, a, mark):
        """What the cornea (Kc, N at a) still needs: M, J0, J45."""
        along, across = self.mean - self.cylinder / 2, self.mean + self.cylinder / 2
        return residual(self.out["AL'"], self.out["ELP"], kc, n, a, along, across, mark)

    def at_cornea(self, mark):
        """Y as a vector: with no cornea there, the refraction still needed is all that must leave it."""
        _, j0, j45 = self.refraction(mpf(0), mpf(0), mpf(0), mark)
        v = matrix([2 * j0, 2 * j45])
        assert abs(between(axis(v) - mark)) < TINY
        return v

    def size(self):
        return length(self.at_cornea(mpf(30)))

    def left(self, mark):
        """R in this eye; its vector is Y - N."""
        n = planned(self.e)
        r = self.refraction(self.out["Kc"], length(n), axis(n), mark)
        assert length(matrix([2 * r[1], 2 * r[2]]) - (self.at_cornea(mark) - n)) < TINY
        return r


def seen_at(r, v_mm, sign):
    """From the cornea to the spectacles (1) or back (-1)."""
    f = matrix_of(*r)
    return vector_of(f * (ONE + sign * v_mm / 1000 * f)**-1)


def found(e):
    """The refraction after it, at the cornea."""
    return seen_at(vector(e["after_sphere_d"], e["after_cylinder_d"], e["after_axis_deg"]), e["vertex_mm"], -1)


def excess(r):
    """The eye's astigmatism: where too strong, the correction is weakest. The same vector has E, the plus cylinder at its axis."""
    return matrix([-2 * r[1], -2 * r[2]])


# steep against the rule needs minus cylinder axis 90; with the rule, minus cylinder axis 180
assert all(abs(between(axis(excess(vector(mpf(1), mpf(-1), mpf(a)))) - where)) < TINY for a, where in ((90, 0), (180, 90)))


class Card(Sheet):
    def put(self, id, what, item, given, expect, unit, source, mark="two", method=None, row=None):
        named = {"item": item, **({"method": method} if method else {}), **({"row": str(row)} if row is not None else {}), **given}
        self.add(id="card-toric-" + id, what=what + (f", {METHODS[method][0]}" if method else ""), given=named, expect=expect, unit=unit, kind="derived", mark=mark, source=source, **FAR)


def sites(card):
    for i, more in enumerate((
        {"eye": "right", "incision_site_word": "superotemporal"}, {"eye": "left", "incision_site_word": "superotemporal"}, {"eye": "left", "incision_site_word": "inferonasal"},
        {"eye": "right", "incision_site_word": "temporal"}, {"eye": "right", "incision_clock_h": "10.5", "clock_seen_from": "facing"}, {"eye": "left", "incision_clock_h": "5.5", "clock_seen_from": "superior"},
        {"eye": "right", "incision_clock_h": "7.2", "clock_seen_from": "temporal"}, {"eye": "left", "incision_clock_h": "4.7", "clock_seen_from": "temporal"},
    ), 1):
        given = {**NAKED, **more, "incision_flattening_d": "0.35"}
        e = entries(given)
        source = "ISO 8429; a right eye's temple is at 180 seen from the front, a left eye's at 0" + ("; 6 o'clock lies where the observer sits" if "clock_seen_from" in more else "")
        card.put(f"site-{i}", "site of the incision, seen from the front", "incision_site_at_deg", given, site(e), "deg", source, "common practice")
        if i in (2, 6, 7):
            planned_pair(card, f"site-{i}", given)


def planned_pair(card, name, given):
    e = entries(given)
    v = planned(e)
    source, mark = corneas(e.get("posterior_from", "none"))
    card.put(f"planned-{name}", "astigmatism planned for", "planned_astigmatism_d", given, length(v), "D", source, mark)
    card.put(f"planned-axis-{name}", "steep meridian planned for", "planned_axis_deg", given, printed(v), "deg", source, mark)


def corneas(source):
    """Where a cornea comes from, and how sure."""
    if source == "none":
        return VECTORS, "two"
    if source == "measured":
        return "symmetric part of F1 + F2 - (t/n)(F1 F2 + F2 F1)/2 with 376/r, -40/r, n = 1.376; " + VECTORS, "two"
    return PAPERS[source][0] + "; " + VECTORS, PAPERS[source][1]


CORNEAS = {
    "pair": {**A, "paired_flattening_d": "0.25"},
    "other": {**B, "other_site_deg": "245", "other_flattening_d": "0.45"},
    "three": {**C, "paired_flattening_d": "0.50", "other_site_deg": "305", "other_flattening_d": "0.35"},
    "centroid": {**NAKED, "sia_centroid_d": "0.35", "sia_centroid_axis_deg": "63"},
    "centroid-site": {**SHORT, "incision_site_deg": "5", "sia_centroid_d": "0.28", "sia_centroid_axis_deg": "101"},
    "index": {**A, "keratometric_index": "1.332"},
    "regression-a": {**A, "posterior_from": "regression_2016"},
    "regression-b": {**B, "posterior_from": "regression_2016", "paired_flattening_d": "0.20"},
    "eom-a": {**A, "posterior_from": "eom_2015"},
    "eom-b": {**B, "posterior_from": "eom_2015"},
    "eom-c": {**C, "posterior_from": "eom_2015"},
    "goggin-a": {**A, "posterior_from": "goggin_2015"},
    "goggin-b": {**B, "posterior_from": "goggin_2015"},
    "goggin-c": {**C, "posterior_from": "goggin_2015"},
    "measured-a": {**A, **MEASURED},
    "measured-b": {**B, **MEASURED, "posterior_r1_mm": "5.98", "posterior_r1_axis_deg": "71", "posterior_r2_mm": "6.40", "posterior_r2_axis_deg": "161", "corneal_thickness_um": "602"},
    "measured-index": {**NAKED, **MEASURED, "keratometric_index": "1.332", "sia_centroid_d": "0.22", "sia_centroid_axis_deg": "40"},
}


def cornea(card):
    for name, given in CORNEAS.items():
        planned_pair(card, name, given)
    for name in "pair", "three", "centroid", "eom-b", "measured-a":
        e = entries(CORNEAS[name])
        half = length(front(e) + incisions(e)) / 2
        source = "mean K less and more half of the front's astigmatism after the incisions; the back plays no part"
        card.put(f"planned-flat-{name}", "K of the flat meridian planned for", "planned_flat_k_d", CORNEAS[name], mean_k(e) - half, "D", source)
        card.put(f"planned-steep-{name}", "K of the steep meridian planned for", "planned_steep_k_d", CORNEAS[name], mean_k(e) + half, "D", source)


def backs(card):
    card.put("source", "source for the back of the cornea", "posterior_source", CORNEAS["measured-a"], "2", "1", "the place of regression_2016 among the sources", "chosen here", row=2)
    for name in "measured-a", "measured-b", "eom-b", "regression-b":
        for row, source in enumerate(SOURCES):
            if source == "measured" and not name.startswith("measured"):
                continue
            given = CORNEAS[name]
            e = entries(given)
            v = with_back(source, e) + incisions(e)
            if source == e["posterior_from"]:
                assert length(v - planned(e)) < TINY
            text, mark = corneas(source)
            card.put(f"back-{name}-{row}", f"astigmatism with the back {source}, after the incisions", "posterior_astigmatism_d", given, length(v), "D", text, mark, row=row)
            card.put(f"back-axis-{name}-{row}", f"steep meridian with the back {source}, after the incisions", "posterior_axis_deg", given, printed(v), "deg", text, mark, row=row)
    for name in "eom-a", "eom-b", "eom-c", "goggin-a", "goggin-b", "goggin-c":
        e = entries(CORNEAS[name])
        source = e["posterior_from"]
        v = front(e)
        distance, edge = min((abs(between(axis(v) - x)), x) for x in EDGES)
        one, other = (by_class(source, length(v), mpf(edge), kind) for kind in {rule(mpf(edge) - 1), rule(mpf(edge) + 1)})
        text = PAPERS[source][0] + "; classes end at 30, 60, 120, 150, of the cornea as measured"
        card.put(f"edge-{name}", "distance to the nearest edge of a class", "class_edge_deg", CORNEAS[name], distance, "deg", text, PAPERS[source][1])
        card.put(f"edge-step-{name}", "step at that edge", "class_step_d", CORNEAS[name], length(one - other), "D", text, PAPERS[source][1])


# Toric labels.

def alignment(e):
    s = e["alignment_sd_deg"]**2 if "alignment_sd_deg" in e else mpf("4.9")**2 + mpf("2.1")**2
    return sqrt(s + (mpf("1.43")**2 + mpf("3.41")**2 if e.get("axis_marked") == "lying" else 0))


def expect(y, n, apart, e):
    """Both scatters are of one component of the vector."""
    g = sqrt(e.get("astigmatism_sd_d", mpf("0.20"))**2 + e.get("incision_sd_d", mpf("0.20"))**2)
    x = y, n, apart, alignment(e), g
    value = mean_length(*moments(*x))
    assert abs(value - exactly(*map(float, x))) < float(WORST)
    return value


def aligned(card):
    for i, more in enumerate(({}, {"axis_marked": "lying"}, {"alignment_sd_deg": "3.0", "axis_marked": "lying"}, {"alignment_sd_deg": "3.5", "axis_marked": "upright"}), 1):
        given = {**CHOSEN_A, **more}
        source = ("as entered" if "alignment_sd_deg" in more else SD) + (LYING if more.get("axis_marked") == "lying" else "")
        card.put(f"alignment-{i}", "SD of the angle at which the lens lies", "alignment_sd_taken_deg", given, alignment(entries(given)), "deg", source, "read" if source != "as entered" else "two")


def without(given, *keys):
    return {k: v for k, v in given.items() if k not in keys}


# Labels next to the cylinder needed: those further off are not on the card.
LABELS = (
    (TA, ("2.25", "3.00"), ("srkt", "t2")),
    (TB, ("1.25", "1.75"), ("holladay1", "hofferq")),
    (TC, ("3.75", "4.50"), ("srkt", "hofferq")),
    (TD, ("1.50", "2.00"), ("t2", "holladay1")),
    ({**TA, "posterior_from": "regression_2016", "axis_marked": "lying", "astigmatism_sd_d": "0.15", "incision_sd_d": "0.26"}, ("1.50",), ("srkt", "holladay1")),
    ({**TD, **MEASURED, "alignment_sd_deg": "3.0"}, ("1.50",), ("t2", "hofferq")),
    (without(TA, "iol_power_d"), ("2.25",), ("t2", "holladay1")),
    (without(TC, "iol_power_d"), ("3.75",), ("srkt", "t2")),
)


def toric_labels(card):
    for i, (given, cylinders, keys) in enumerate(LABELS, 1):
        e = entries(given)
        v = planned(e)
        n, a = length(v), axis(v)
        for key in keys:
            for c in cylinders:
                x = Lens(key, e, mpf(c))
                name, row = f"{i}-{key}-{c}", f"label {c}"
                card.put(f"beyond-{name}", "cylinder of this label at the lens, less the needed one", "beyond_need_d", given, x.cylinder - steeper(x.out, e, n), "D", AT_LENS, method=key, row=row)
                y = x.at_cornea(a)
                card.put(f"expected-{name}", "cylinder to expect with this label, mark on the steep meridian", "expected_d", given, expect(length(y), n, mpf(0), e), "D", f"{MATRICES}; {EXPECTED}", "chosen here", key, row)


# The lens chosen.

ALIGNED = {**TA, "k1_axis_deg": "90", "k2_axis_deg": "180", "incision_site_deg": "180", "iol_cylinder_d": "3.00", "iol_axis_deg": "90"}
CHOSEN = (
    (CHOSEN_A, ("srkt", "t2")),
    (CHOSEN_B, ("holladay1", "hofferq")),
    (CHOSEN_C, ("srkt", "hofferq")),
    ({**CHOSEN_D, "axis_marked": "lying"}, ("t2", "holladay1")),
    ({**without(CHOSEN_A, "iol_power_d"), "posterior_from": "regression_2016"}, ("t2", "hofferq")),
)


def chosen(card):
    for i, (given, keys) in enumerate(CHOSEN, 1):
        e = entries(given)
        n, mark = planned(e), e["iol_axis_deg"]
        for key in keys:
            x = Lens(key, e, e["iol_cylinder_d"])
            apart = between(mark - axis(n))
            put = lambda item, what, value, unit, source, m="two": card.put(f"{item.rsplit('_', 1)[0].replace('_', '-')}-{i}-{key}", what, item, given, value, unit, source, m, key)
            put("chosen_expected_d", "cylinder to expect with the lens chosen", expect(x.size(), length(n), apart, e), "D", f"{MATRICES}; {EXPECTED}", "chosen here")
            r = x.left(mark)
            s, c, _ = minus_cylinder(*r)
            put("chosen_cornea_sphere_d", "sphere still needed at the cornea, plus cylinder", s + c, "D", MATRICES)
            s, c, a = minus_cylinder(*seen_at(r, e["vertex_mm"], 1))
            assert 1 < a < 179
            put("chosen_sphere_d", "sphere in spectacles, minus cylinder", s, "D", MATRICES + VERTEXED)
            put("chosen_cylinder_d", "minus cylinder in spectacles", c, "D", MATRICES + VERTEXED)
            put("chosen_axis_deg", "axis of that minus cylinder", a, "deg", MATRICES + VERTEXED)
            put("cylinder_per_sphere_d", "cylinder of the lens at the cornea, for a lens stronger by 1 D, less now", Lens(key, e, e["iol_cylinder_d"], 1).size() - x.size(), "D", MATRICES)
    card.put("off-by", "turned away from the meridian chosen by", "off_by_deg", CHOSEN_A, "-10", "deg", "-30 -10 -5 0 5 10 30", "chosen here", row=1)
    for i, (given, keys) in enumerate(((CHOSEN_A, ("srkt", "t2")), (CHOSEN_B, ("holladay1", "hofferq")), (ALIGNED, ("srkt", "hofferq"))), 1):
        e = entries(given)
        for key in keys:
            x = Lens(key, e, e["iol_cylinder_d"])
            for row, off in enumerate((-30, -10, -5, 0, 5, 10, 30)):
                if row in {1: (0, 2, 3, 5), 2: (1, 4, 6), 3: (1, 3, 5)}[i]:
                    _, c, _ = minus_cylinder(*x.left(e["iol_axis_deg"] + off))
                    card.put(f"off-residual-{i}-{key}-{row}", f"cylinder left with the lens {off} deg counter-clockwise of the meridian chosen", "off_residual_d", given, -c, "D", MATRICES, method=key, row=row)


# After the operation.

TURNS = (
    ({**CHOSEN_A, "mark_found_deg": "121", "after_sphere_d": "0.75", "after_cylinder_d": "-1.50", "after_axis_deg": "157"}, ("srkt", "t2"), (1, 2, 3)),
    ({**CHOSEN_B, "mark_found_deg": "176", "after_sphere_d": "-1.50", "after_cylinder_d": "2.00", "after_axis_deg": "54"}, ("holladay1", "hofferq"), (1, 2, 3)),
    ({**CHOSEN_C, "mark_found_deg": "85", "after_sphere_d": "1.00", "after_cylinder_d": "-3.75", "after_axis_deg": "111"}, ("srkt", "hofferq"), (1, 4, 6)),
    ({**CHOSEN_D, "mark_found_deg": "88", "after_sphere_d": "0.25", "after_cylinder_d": "-0.50", "after_axis_deg": "45"}, ("t2",), ()),
    ({**CHOSEN_A, "mark_found_deg": "121", "after_sphere_d": "0.75", "after_cylinder_d": "-0.75", "after_axis_deg": "142"}, ("holladay1", "hofferq"), (2,)),
)


def turning(card):
    for i, (given, keys, rows) in enumerate(TURNS, 1):
        e = entries(given)
        r, m, v = found(e), e["mark_found_deg"], e["vertex_mm"]
        now = excess(r)
        source = "refraction found, to the cornea by R (I - vR)^-1"
        card.put(f"now-{i}", "plus cylinder at the cornea now", "now_cylinder_d", given, length(now), "D", source)
        card.put(f"now-axis-{i}", "axis of that plus cylinder", "now_axis_deg", given, printed(now), "deg", source)
        turns = set()
        for key in keys:
            x = Lens(key, e, e["iol_cylinder_d"])
            k = now + x.at_cornea(m)
            by = between(axis(k) - m)
            left = abs(length(k) - x.size())
            put = lambda item, what, value, unit, row=None, source=SECTION: card.put(f"{item.rsplit('_', 1)[0].replace('_', '-')}-{i}-{key}" + (f"-{row}" if row else ""), what, item, given, value, unit, source, method=key, row=row)
            put("turn_to_deg", "meridian to turn the mark to", printed(k), "deg")
            put("turn_counter_clockwise_deg", "counter-clockwise to there", by % 180, "deg")
            put("turn_clockwise_deg", "clockwise to there", -by % 180, "deg")
            put("turn_left_d", "cylinder left at the cornea after it", left, "D")

            def after(turn):
                """The refraction at the cornea with the lens turned by that: what its light is now less what it was."""
                step = x.at_cornea(m + turn) - x.at_cornea(m)
                return r[0], r[1] + step[0] / 2, r[2] + step[1] / 2

            assert abs(length(excess(after(by))) - left) < TINY
            s, c, a = minus_cylinder(*seen_at(after(by), v, 1))
            turned = SECTION + "; the mean power at the cornea stays; to spectacles by R (I + vR)^-1"
            put("turned_sphere_d", "sphere in spectacles after the best turn, minus cylinder", s, "D", source=turned)
            put("turned_cylinder_d", "minus cylinder in spectacles after the best turn", c, "D", source=turned)
            if left >= mpf("0.125"):  # the axis of less is not shown
                assert 1 < a < 179
                put("turned_axis_deg", "axis of that minus cylinder", a, "deg", source=turned)
            for row in rows:
                assert abs(by) > 5 * row
                turn = 5 * row * (1 if by > 0 else -1)
                turns.add((row, turn))
                put("turn_residual_d", "cylinder left at the cornea with that turn", length(k - x.at_cornea(m + turn)), "D", row)
        assert len(turns) == len(rows)  # the methods turn the same way
        for row, turn in sorted(turns):
            card.put(f"turn-by-{i}-{row}", "turned counter-clockwise by", "turn_by_deg", given, mpf(turn), "deg", "5 degrees a row, towards the best turn", "chosen here", row=row)


def errors(card):
    after = {"after_sphere_d": "0.50", "after_cylinder_d": "-0.75", "after_axis_deg": "85"}
    for i, (given, keys) in enumerate((({**NAKED, "iol_power_d": "20.50", **after}, ("srkt", "hofferq")), ({**SHORT, "iol_power_d": "25.00", "after_sphere_d": "-1.25", "after_cylinder_d": "1.25", "after_axis_deg": "20"}, ("t2", "holladay1")),
                                       ({**LONG, "iol_power_d": "13.50", **after}, ("srkt", "holladay1")), ({**CHOSEN_A, **after}, ("srkt", "t2")), ({**CHOSEN_C, **after}, ("t2", "hofferq"))), 1):
        e = entries(given)
        for key in keys:
            x = Lens(key, e, e["iol_cylinder_d"]) if "iol_cylinder_d" in e else None
            out = solve(key, e)
            rx = to_spectacles(refraction(out["AL'"], out["ELP"], out["Kc"], x.mean if x else e["iol_power_d"]), e["vertex_mm"])
            what = "spherical equivalent found less the refraction predicted" + (", toric lens" if x else "")
            source = "S + C/2 in spectacles, less the method's prediction by thin-lens vergence, n = 1.336" + (", at the mean power of the lens" if x else "")
            card.put(f"found-error-{i}-{key}", what, "found_error_d", given, e["after_sphere_d"] + e["after_cylinder_d"] / 2 - rx, "D", source, method=key)


def induced(card):
    for i, given in enumerate((
        {**A, "after_k1_d": "44.70", "after_k1_axis_deg": "93", "after_k2_d": "43.05", "after_k2_axis_deg": "3"},
        {**B, "after_k1_d": "44.30", "after_k1_axis_deg": "119", "after_k2_d": "45.65", "after_k2_axis_deg": "29"},
        {**C, "after_k1_d": "44.10", "after_k1_axis_deg": "44", "after_k2_d": "40.90", "after_k2_axis_deg": "134"},
        {**A, "incision_site_deg": "315", "after_k1_d": "44.95", "after_k1_axis_deg": "100", "after_k2_d": "42.70", "after_k2_axis_deg": "10"},
    ), 1):
        e = entries(given)
        v, u = front(e, "after_") - front(e), steep(mpf(1), site(e))
        source = "K after less K before, as vectors at the steep meridian"
        card.put(f"induced-{i}", "astigmatism induced", "incision_sia_d", given, length(v), "D", source, "memory")
        card.put(f"induced-axis-{i}", "meridian it steepens", "incision_sia_axis_deg", given, printed(v), "deg", source, "memory")
        card.put(f"induced-flattened-{i}", "flattening along the incision", "incision_flattened_d", given, -(v[0] * u[0] + v[1] * u[1]), "D", f"{ALONG}: minus the polar value along the incision; {source}", "memory")
        card.put(f"induced-torque-{i}", "torque about the incision", "incision_torque_d", given, u[1] * v[0] - u[0] * v[1], "D", f"{ALONG}: oblique polar value about the meridian across the incision; {source}", "memory")


def change(card):
    for i, given in enumerate((
        {**NAKED, "after_sphere_d": "0.25", "after_cylinder_d": "-0.75", "after_axis_deg": "25"},
        {**SHORT, "after_sphere_d": "-1.25", "after_cylinder_d": "1.00", "after_axis_deg": "12"},
        {**CHOSEN_C, "after_sphere_d": "-0.75", "after_cylinder_d": "-1.50", "after_axis_deg": "157"},
        {**CHOSEN_A, "after_sphere_d": "0.75", "after_cylinder_d": "-0.50", "after_axis_deg": "90"},
    ), 1):
        e = entries(given)
        pre, achieved = front(e), excess(found(e))
        tia, sia = -pre, achieved - pre
        dv = tia - sia
        assert length(dv + achieved) < TINY
        t, s = length(tia), length(sia)
        angle = between(axis(sia) - axis(tia))
        effect, torque = (sia[0] * tia[0] + sia[1] * tia[1]) / t, (tia[0] * sia[1] - tia[1] * sia[0]) / t
        assert abs(effect - s * cos(2 * rad(angle))) < TINY and abs(torque - s * sin(2 * rad(angle))) < TINY
        for item, what, value, unit in (
            ("tia_d", "change intended", t, "D"), ("tia_axis_deg", "meridian it was to steepen", printed(tia), "deg"), ("sia_d", "change found", s, "D"), ("sia_axis_deg", "meridian it steepened", printed(sia), "deg"),
            ("dv_d", "change still wanted", length(dv), "D"), ("dv_axis_deg", "meridian to steepen still", printed(dv), "deg"), ("magnitude_error_d", "change found less intended, size", s - t, "D"), ("angle_error_deg", "angle from the change intended to that found", angle, "deg"),
            ("correction_index", "change found over intended", s / t, "1"), ("success_index", "change still wanted over intended", length(dv) / t, "1"), ("flattening_effect_d", "change along the one intended", effect, "D"), ("torque_d", "change across the one intended", torque, "D"),
        ):
            card.put(f"change-{i}-{item.removesuffix('_d').removesuffix('_deg').replace('_', '-')}", what, item, given, value, unit, CHANGE, "memory")


if __name__ == "__main__":
    card = Card("card_toric.py", ["mpmath", "numpy", "scipy"], "Numbers on the card about astigmatism, from entries: `item` is the number's name, `method` says whose, `row` which of several;\n# a row called `label N` is that of the label cylinder N.", vary="item method row")
    for part in sites, cornea, backs, aligned, toric_labels, chosen, turning, errors, induced, change:
        part(card)
    ids = [v["id"] for v in card.values]
    assert len(ids) == len(set(ids))
    card.save("card_toric.toml")
