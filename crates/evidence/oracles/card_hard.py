"""Numbers on the card for the harder half of it: long eyes, laser, rules for the label, certainty, the first eye, a second
lens, a thick lens, the rule of thumb for the sulcus. And budget.toml: the variances of a predicted refraction.

Every number is worked out from the entries by the functions of lens.py, hard_eyes.py and thick.py, at 50 digits.
"""
from mpmath import diff, erf, erfinv, mpf, sqrt
from scipy.special import erf as scipy_erf

from certainty import carried
from hard_eyes import DOUBLE, NOTHING, SETS, adjusted, before_lens, double, haigisl, numbers, run, shammas
from lens import METHODS, N, optics, power, refraction, to_cornea, to_spectacles
from sheet import Sheet, digits
from thick import cardinal, gap, lens, thin

FAR = {"tolerance": "1e-9", "note": "far above double rounding"}
USUAL = {"axial_length_mm": "23.50", "k_d": "43.50", "acd_mm": "3.20", "target_d": "0.00", "keratometric_index": "1.3375", "vertex_mm": "12"}
SCATTER = {"al": ("axial_length_sd_mm", "0.0177"), "k": ("k_sd_d", "0.18"), "acd": ("acd_sd_mm", "0.0247"),
           "position": ("lens_position_sd_mm", "0.25"), "refraction": ("refraction_sd_d", "0.30")}
AFTER = {"double_srkt": "double-srkt", "double_holladay1": "double-holladay1", "double_hofferq": "double-hofferq"}
NAMES = {**{key: title for key, (title, _, _) in METHODS.items()}, "shammas_pl": "Shammas-PL", "haigis_l": "Haigis-L",
         **{key: "Double-K " + DOUBLE[long][0] for key, long in AFTER.items()}}
COVERT = "Covert, Henry, Koenig, Ophthalmology 2010;117:49-54"
REPEAT = "PLOS ONE 10.1371/journal.pone.0321786, within-subject SD in 266 eyes"
HOLLADAY = "Holladay, Am J Ophthalmol 1993;116:63-66, transcribed at 50 digits"
SLOPES = "partial derivatives of the method (mpmath.diff) at 50 digits, times"
VERGENCE = "the method and thin-lens vergence, n = 1.336, at 50 digits"


def entries(given):
    """As numbers; a surgeon factor or a pACD also as the A-constant that lens.py would make it from."""
    e = carried_at_index(numbers({**USUAL, **given}))
    if "pacd_mm" in e:
        e["a_for_hofferq"] = (mpf("0.9704") * e["pacd_mm"] - mpf("3.595") + mpf("65.60")) / mpf("0.5663")
    if "surgeon_factor" in e:
        e["a_for_holladay1"] = (e["surgeon_factor"] + mpf("65.60")) / mpf("0.5663")
    return e


def carried_at_index(e):
    """The entered K at its index becomes K at 1.3375, by its radius."""
    r = 1000 * (e["keratometric_index"] - 1) / e["k_d"]
    return carried({**e, "k_d": mpf("337.5") / r})


def with_own_constants(e):
    """Haigis with a0, a1 and a2 entered."""
    elp = e["haigis_a0"] + e["haigis_a1"] * e["acd_mm"] + e["haigis_a2"] * e["axial_length_mm"]
    return [("ELP", elp, "mm")] + optics(e, e["axial_length_mm"], mpf("331.5") / e["r"], elp)


def solve(key, e):
    """ELP, P, Rx (with `iol_power_d`), and AL' and Kc where the skeleton is used as it is."""
    e = {"iol_power_d": mpf(0), **e}
    if f"a_for_{key}" in e:
        e["a_constant"] = e[f"a_for_{key}"]
    if key == "shammas_pl":
        return shammas(e, "myopic_laser")
    if key == "haigis_l":
        return haigisl(e)
    if key in AFTER:
        return double(DOUBLE[AFTER[key]][1], e)
    if key == "haigis" and "haigis_a1" in e:
        return run(with_own_constants, e)
    return run(METHODS[key][1], e)


def at(out, elp, e, p=None):
    """Refraction of this method's eye with a lens somewhere else."""
    return to_spectacles(refraction(out["AL'"], elp, out["Kc"], e["iol_power_d"] if p is None else p), e["vertex_mm"])


def slopes(key, e):
    """dRx on AL, K, ACD, lens position and lens power, for the lens chosen."""
    k = "k_after_d" if key in AFTER else "k_d"
    out = solve(key, e)

    def by(name):
        return diff(lambda x: solve(key, carried({**e, name: x}))["Rx"], e[name])

    return {"al": by("axial_length_mm"), "k": by(k), "acd": by("acd_mm"), "position": diff(lambda d: at(out, d, e), out["ELP"]), "label": by("iol_power_d")}


def label_tolerance(p):
    p = abs(p)
    return mpf("0.3") if p <= 15 else mpf("0.4") if p <= 25 else mpf("0.5") if p <= 30 else mpf("1.0")


def variances(slope, sd):
    """In dioptres squared: AL, K, ACD, position, label (uniform within its tolerance), refraction."""
    out = {part: (slope[part] * sd[part]) ** 2 for part in ("al", "k", "acd", "position")}
    return {**out, "label": (slope["label"] * sd["label"]) ** 2 / 3, "refraction": sd["refraction"] ** 2}


def quantile(share):
    return sqrt(mpf(2)) * erfinv(mpf(share))


class Card(Sheet):
    def put(self, id, what, item, given, expect, unit, source, mark, method=None, kind="derived", **more):
        named = {"item": item, **({"method": method} if method else {}), **given}
        exact = {} if "tolerance" in more else FAR
        self.add(id="card-" + id, what=what + (f", {NAMES[method]}" if method else ""), given=named, expect=expect, unit=unit, kind=kind, mark=mark, source=source, **exact, **more)


EYE = {"axial_length_mm": "23.50", "k_d": "43.80", "acd_mm": "3.20", "a_constant": "118.4"}
SHORT = {"axial_length_mm": "21.80", "k_d": "45.10", "acd_mm": "2.85", "a_constant": "118.7", "target_d": "-0.50"}
LONG = {"axial_length_mm": "27.60", "k_d": "42.30", "acd_mm": "3.55", "a_constant": "118.9"}
LASER = {"previous_surgery": "myopic_laser", "axial_length_mm": "27.40", "k_d": "38.98", "acd_mm": "3.55", "a_constant": "118.4", "k_before_d": "44.00"}


def history(card):
    given = {**LASER, "refraction_before_d": "-6.50", "refraction_after_d": "-0.50", "k_after_from": "history"}
    e = entries(given)
    k = e["k_before_d"] - (to_cornea(e["refraction_after_d"], e["vertex_mm"]) - to_cornea(e["refraction_before_d"], e["vertex_mm"]))
    source = "the cornea loses what the refraction at the cornea gains: K before - (Rc after - Rc before)"
    card.put("k-after-history", "K after laser, from the refractions before and after", "k_after_history_d", given, k, "D", source, "memory")
    out = solve("double_srkt", {**e, "k_after_d": k})
    card.put("k-after-history-power", "exact power for the target, K after from history", "power_d", given, out["P"], "D", "the method with that K, at 50 digits", "memory", method="double_srkt")


def after_laser(card):
    given = {**LASER, "k_after_d": "38.40", "k_after_from": "contact_lens"}
    e = entries(given)
    for key in "shammas_pl", "haigis_l", "double_srkt":
        out, name = solve(key, e), key.replace("_", "-")
        card.put(f"power-{name}", "exact power for the target, long eye after laser", "power_d", given, out["P"], "D", VERGENCE, "memory", method=key)
        card.put(f"position-{name}", "lens position, long eye after laser", "lens_position_mm", given, out["ELP"], "mm", VERGENCE, "memory", method=key)


def long_eyes(card):
    for set_, (paper, lines) in SETS.items():
        for key in ("srkt", "holladay1") if set_ == "set_2018" else ("srkt", "haigis", "hofferq"):
            slope, add, edge = lines[key]
            source = f"{paper}: {slope} AL + {add} above {edge} mm"
            step = mpf(slope) * mpf(edge) + mpf(add) - mpf(edge)
            name = f"{set_.replace('_', '-')}-{key}"
            given = {**LONG, "long_eye_adjustment": set_}
            e = entries(given)
            al = adjusted(slope, add, edge, e["axial_length_mm"])
            p = solve(key, {**e, "axial_length_mm": al})["P"]
            card.put(f"adjusted-length-{name}", "axial length, adjusted", "adjusted_length_mm", given, al, "mm", source, "memory", method=key)
            card.put(f"adjustment-step-{name}", "step where the adjustment begins", "adjustment_step_mm", given, step, "mm", source + ", at its edge less the edge", "two", method=key)
            card.put(f"adjusted-power-{name}", "exact power for the target, length adjusted", "power_d", given, p, "D", source + ", in the whole method", "memory", method=key)
            given = {**LONG, "long_eye_adjustment": "compared"}
            card.put(f"compared-power-{name}", "power with this set, shown beside", f"{set_}_power_d", given, p, "D", source + ", in the whole method", "memory", method=key)
            card.put(f"compared-step-{name}", "step where this set begins", f"{set_}_step_mm", given, step, "mm", source + ", at its edge less the edge", "memory", method=key)
    # measured beyond Hoffer's 31 mm, adjusted within it
    for set_ in "first_2011", "second_2011":
        paper, lines = SETS[set_]
        given = {**LONG, "axial_length_mm": "31.40", "long_eye_adjustment": set_}
        e = entries(given)
        al = adjusted(*lines["hofferq"], e["axial_length_mm"])
        assert al < 31 < e["axial_length_mm"]
        for item, what, value, unit in ("power_d", "exact power for the target", "P", "D"), ("lens_position_mm", "lens position", "ELP", "mm"):
            card.put(f"clamp-{item.split('_')[0]}-{set_.replace('_', '-')}-hofferq", f"{what}, measured beyond the clamp, adjusted within it", item, given,
                     solve("hofferq", {**e, "axial_length_mm": al})[value], unit, paper + ", in the whole method", "memory", method="hofferq")


def by_rule(key, e):
    """Every label from the weakest up; the weakest that leaves the eye myopic, and the one nearest to the target."""
    step, least = e.get("lens_step_d", mpf("0.5")), e.get("lens_least_d", mpf(0))
    left = {p: solve(key, {**e, "iol_power_d": p})["Rx"] for p in (least + i * step for i in range(100)) if p <= 45}
    near = sorted(left, key=lambda p: abs(left[p] - e["target_d"]))
    assert abs(left[near[1]] - e["target_d"]) - abs(left[near[0]] - e["target_d"]) > mpf("1e-5")
    return {"first_myopic": min(p for p in left if left[p] < 0), "nearest": near[0]}, left


def rules(card):
    for i, (rule, key, more) in enumerate((
        ("first_myopic", "srkt", EYE), ("first_myopic", "haigis", {**EYE, "target_d": "-0.50"}), ("first_myopic", "hofferq", {**SHORT, "lens_step_d": "1.00", "lens_least_d": "5.50"}),
        ("nearest", "t2", EYE), ("nearest", "holladay1", SHORT), ("nearest", "haigis", {**SHORT, "lens_step_d": "1.00", "lens_least_d": "5.50"}),
    ), 1):
        given = {**more, "label_rule": rule}
        which, left = by_rule(key, entries(given))
        p = which[rule]
        what = {"first_myopic": "weakest label that leaves the eye myopic", "nearest": "label that leaves the eye nearest to the target"}[rule]
        card.put(f"rule-power-{i}", what, "rule_power_d", given, p, "D", "every label tried, at 50 digits", "chosen here", method=key)
        card.put(f"rule-refraction-{i}", f"refraction with the {what}", "rule_refraction_d", given, left[p], "D", "every label tried, at 50 digits", "memory", method=key)


def meant(card):
    sf, published, haigis = mpf("1.720"), "Holladay, J Cataract Refract Surg 2003;29:176-197", "a0 = 0.62467 A - 72.434, the other way round"
    given = {"axial_length_mm": "23.50", "k_d": "43.80", "acd_mm": "3.20"}
    card.put("a-of-sf", "A-constant that a surgeon factor means", "a_of_surgeon_factor", {**given, "surgeon_factor": "1.720"}, (sf + mpf("65.60")) / mpf("0.5663"), "1", published, "two")
    card.put("a-of-pacd", "A-constant that a pACD means", "a_of_pacd", {**given, "pacd_mm": "5.480"}, (mpf("0.9704") * mpf("5.480") - mpf("3.595") + mpf("65.60")) / mpf("0.5663"), "1", published, "two")
    card.put("a-of-a0", "A-constant that an a0 with the usual slopes means", "a_of_haigis_a0", {**given, "haigis_a0": "1.527"}, (mpf("1.527") + mpf("72.434")) / mpf("0.62467"), "1", haigis, "two")


def labels(card):
    for p in "20.00", "26.50":
        card.put(f"label-tolerance-{p[:2]}", "tolerance of the label power", "label_tolerance_d", {**EYE, "iol_power_d": p}, label_tolerance(mpf(p)), "D",
                 "ISO 11979-2, figures read in a tutorial", "read", kind="memory", tolerance="1e-12", note="an entry of a table, so exact")


OWN = {"surgeon_factor": "1.720", "pacd_mm": "5.480", "haigis_a0": "0.420", "haigis_a1": "0.235", "haigis_a2": "0.170"}  # invented
CONSTANT = {"srkt": mpf("0.62467"), "t2": mpf("0.62467"), "holladay1": mpf(1), "hofferq": mpf(1), "haigis": mpf(1)}


def errors(card):
    for i, (more, keys) in enumerate((({**EYE, "iol_power_d": "20.00"}, CONSTANT), ({**SHORT, "iol_power_d": "27.50"}, ("srkt", "hofferq", "haigis")),
                                      ({**LONG, "iol_power_d": "9.50"}, ("holladay1", "t2"))), 1):
        for key in keys:
            e = entries(more)
            s = slopes(key, e)
            for part, what, value, by in (
                ("al", "left if the length was entered 0.1 mm too long", mpf("-0.1") * s["al"], "-0.1 mm"),
                ("k", "left if K was entered 0.5 D too steep", mpf("-0.5") * s["k"], "-0.5 D"),
                ("acd", "left if the chamber was entered 0.1 mm too deep", mpf("-0.1") * s["acd"], "-0.1 mm"),
                ("position", "left if the lens lies 0.5 mm too far back", mpf("0.5") * s["position"], "+0.5 mm"),
                ("constant", "left if the constant was 0.1 too high", mpf("-0.1") * s["position"] * CONSTANT[key], "-0.1 of the constant"),
            ):
                if part != "acd" or key == "haigis":
                    card.put(f"error-{part}-{key}-{i}", what, f"error_{part}_d", more, value, "D", f"{SLOPES} {by}", "two", method=key)


def scatters(card):
    for key, item, unit, value, name in (("al", "sd_al_mm", "mm", "0.0177", "axial length"), ("k", "sd_k_d", "D", "0.18", "K"), ("acd", "sd_acd_mm", "mm", "0.0247", "chamber depth")):
        card.put(f"sd-{key}", f"SD of a measured {name}", item, {**EYE, "iol_power_d": "20.00"}, value, unit, REPEAT, "read", kind="published",
                 tolerance="1e-12", note="the printed figure itself")
    entered = {"axial_length_sd_mm": "0.031", "k_sd_d": "0.24", "acd_sd_mm": "0.062"}
    wider = {**entered, "lens_position_sd_mm": "0.310", "refraction_sd_d": "0.42"}
    for i, (more, keys) in enumerate((({**EYE, "iol_power_d": "20.00"}, CONSTANT), ({**SHORT, "iol_power_d": "27.50", **wider}, ("srkt", "hofferq", "haigis")),
                                      ({**LONG, "iol_power_d": "9.50", **entered}, ("t2", "holladay1"))), 1):
        for key in keys:
            _, var = budget(key, more)
            total = sum(var.values())
            for part, value in var.items():
                if part != "acd" or key == "haigis":
                    card.put(f"share-{part}-{key}-{i}", f"share of the variance: {part}", f"share_{part}", more, 100 * value / total, "%", f"{SLOPES} the SDs; kinds of share as in Norrby, J Cataract Refract Surg 2008;34:368-376", "two", method=key)
            card.put(f"total-sd-{key}-{i}", "SD of all together", "total_sd_d", more, sqrt(total), "D", f"{SLOPES} the SDs, in quadrature", "two", method=key)
    certain(card, {**EYE, "iol_power_d": "20.00"}, ("srkt", "t2", "holladay1", "hofferq", "haigis"), 1)
    certain(card, {**SHORT, "iol_power_d": "27.50", **wider}, ("srkt", "haigis"), 2)


def budget(key, given):
    e = entries(given)
    sd = {part: mpf(given.get(entry, default)) for part, (entry, default) in SCATTER.items()}
    sd["label"] = label_tolerance(e["iol_power_d"])
    return solve(key, e)["Rx"], variances(slopes(key, e), sd)


def certain(card, more, keys, i):
    given = {**more, **OWN, "constants_from": "optimised"}
    for key in keys:
        rx, var = budget(key, given)
        sd = sqrt(sum(var.values()))
        for share, text in ("50", "0.5"), ("95", "0.95"):
            half = quantile(text) * sd
            assert abs(erf(half / sd / sqrt(mpf(2))) - mpf(text)) < NOTHING
            source = f"{SLOPES} the SDs, in quadrature; {share} % of a normal distribution by mpmath.erfinv"
            card.put(f"low-{share}-{key}-{i}", f"{share} of 100 eyes from", f"low_{share}_d", given, rx - half, "D", source, "two", method=key)
            card.put(f"high-{share}-{key}-{i}", f"{share} of 100 eyes to", f"high_{share}_d", given, rx + half, "D", source, "two", method=key)
        for name, width in ("05", 0.5), ("10", 1.0):
            off = rx - entries(given)["target_d"]
            chance = 50 * (float(scipy_erf(float(width - off) / float(sd) / 2**0.5)) + float(scipy_erf(float(width + off) / float(sd) / 2**0.5)))
            assert abs(chance - 50 * (erf((width - off) / sd / sqrt(mpf(2))) + erf((width + off) / sd / sqrt(mpf(2))))) < mpf("1e-12")
            card.put(f"chance-{name}-{key}-{i}", f"chance to be within {width} D of the target", f"chance_{name}", given, f"{chance:.17g}", "%",
                     "scipy.special.erf of (half width -/+ distance from the target)/(sd sqrt 2), sd as total_sd_d; mpmath.erf agrees to 1e-12", "two", method=key, kind="reference-library")


def first_eye(card):
    fellow = {"fellow_refraction_d": "-0.88", "fellow_predicted_d": "-0.25", "fellow_state": "pseudophakic"}
    error, half = mpf("-0.63"), mpf("-0.315")
    given = {**EYE, **fellow, "iol_power_d": "20.00"}
    card.put("first-eye-error", "first eye: refraction less prediction", "first_eye_error_d", given, error, "D", "follows from the definitions", "two")
    card.put("first-eye-half", "first eye: half of its error", "first_eye_half_d", given, half, "D", COVERT + ": half of the error of the first eye", "memory")
    for key, more in ("srkt", EYE), ("t2", EYE), ("haigis", {**SHORT, "vertex_mm": "13.5"}), ("hofferq", SHORT):
        given = {**more, **fellow, "iol_power_d": "20.00" if more is EYE else "27.00"}
        e = entries(given)
        p, rx = solve(key, {**e, "target_d": e["target_d"] - half})["P"], solve(key, e)["Rx"]
        card.put(f"allowed-power-{key}", "power for the target less half the first eye's error", "allowed_power_d", given, p, "D", f"{COVERT}, and {VERGENCE}", "memory", method=key)
        card.put(f"allowed-refraction-{key}", "refraction with the lens chosen and half the first eye's error", "allowed_refraction_d", given, rx + half, "D", f"{COVERT}, and {VERGENCE}", "memory", method=key)


def second_lens(card):
    fresh = {"axial_length_mm": "23.80", "k_d": "44.10", "a_constant": "118.6"}
    for i, (for_, place, more, keys) in enumerate((
        ("added", "sulcus", {"k_d": "44.50", "second_position_mm": "4.50", "refraction_now_d": "3.25", "target_d": "-0.25", "second_power_d": "5.00"}, (None,)),
        ("exchange", "bag", {"k_d": "43.00", "keratometric_index": "1.332", "second_position_mm": "5.10", "refraction_now_d": "-4.00", "target_d": "-0.50", "lens_in_eye_d": "22.50", "second_power_d": "17.50"}, (None,)),
        ("aphakic", "bag", {"k_d": "42.50", "second_position_mm": "5.00", "refraction_now_d": "12.50", "vertex_mm": "13.5", "second_power_d": "21.00"}, (None,)),
        ("aphakic", "bag", {**fresh, "refraction_now_d": "11.75", "second_power_d": "19.50"}, ("srkt", "hofferq")),
        ("aphakic", "sulcus", {**fresh, "refraction_now_d": "11.75", "second_power_d": "18.50"}, ("t2", "holladay1")),
        ("added", "sulcus", {**fresh, "refraction_now_d": "-2.50", "second_power_d": "-3.00", "sulcus_shift_mm": "0.50"}, ("srkt",)),
        ("exchange", "sulcus", {**fresh, "refraction_now_d": "2.75", "lens_in_eye_d": "17.00", "second_power_d": "20.00"}, ("t2", "srkt")),
    ), 1):
        state = "aphakic" if for_ == "aphakic" else "pseudophakic"
        given = {**more, "eye_state": state, "second_for": for_, "second_place": place, "second_style": "three_piece"}
        e = entries(given)
        k, v = e["k_d"], e["vertex_mm"]
        for key in keys:
            d = e["second_position_mm"] if key is None else solve(key, e)["ELP"] - (e.get("sulcus_shift_mm", mpf("0.75")) if place == "sulcus" else 0)
            there = e.get("lens_in_eye_d", mpf(0)) if for_ == "exchange" else mpf(0)
            # by the whole eye: a length at which the lens that is in it leaves the refraction now; what is exchanged lies in the bag
            behind = e.get("sulcus_shift_mm", mpf("0.75")) if for_ == "exchange" and place == "sulcus" else mpf(0)
            al = d + behind + 1000 * N / (there + before_lens(k, e["refraction_now_d"], v, d + behind))
            p, rx = power(al, d, k, to_cornea(e["target_d"], v)), to_spectacles(refraction(al, d, k, e["second_power_d"]), v)
            if behind == 0:
                now = before_lens(k, e["refraction_now_d"], v, d)
                assert abs(now - before_lens(k, e["target_d"], v, d) + there - p) < NOTHING
            name = f"{i}-{key}" if key else str(i)
            for item, what, value, unit, source in (("second_at_mm", "where the lens is taken to lie", d, "mm", "as entered" if key is None else VERGENCE + (", less the shift to the sulcus" if place == "sulcus" else "")),
                                                    ("second_exact_d", "exact power for the target, by the refraction", p, "D", HOLLADAY), ("second_refraction_d", "refraction with the lens chosen, by the refraction", rx, "D", HOLLADAY)):
                card.put(f"{item.rsplit('_', 1)[0].replace('_', '-')}-{name}", f"{what}, {for_}", item, given, value, unit, source, "memory", method=key)


THICK = (("13.60", "-13.60", "0.90", "1.470"), ("6.70", "0", "0.90", "1.470"), ("-25.00", "25.00", "0.45", "1.460"), ("8.00", "24.00", "0.60", "1.550"))


def thick(card):
    for i, (r1, r2, t, index) in enumerate(THICK, 1):
        surfaces = {"lens_front_radius_mm": r1, "lens_back_radius_mm": r2, "lens_centre_mm": t, "lens_index": index}
        given = {**EYE, **surfaces}
        glass = {"front_radius_mm": mpf(r1), "back_radius_mm": mpf(r2), "thickness_mm": mpf(t), "lens_index": mpf(index)}
        m = lens(glass)
        p, front, back = cardinal(m, N, N)
        source = "ray-transfer matrices, medium 1.336, at 50 digits"
        card.put(f"thick-power-{i}", "power of the lens by its surfaces", "thick_power_d", given, p, "D", source, "two")
        card.put(f"thick-front-{i}", "front principal plane, behind the front vertex", "thick_front_mm", given, front, "mm", source, "two")
        card.put(f"thick-back-{i}", "back principal plane, behind the front vertex", "thick_back_mm", given, glass["thickness_mm"] + back, "mm", source, "two")
        for key in {1: ("srkt", "haigis"), 2: ("t2", "hofferq"), 3: ("holladay1",), 4: ("srkt",)}[i]:
            # an unoptimised Haigis stands apart from the others, so it gets constants of its own
            given = {**EYE, **surfaces, **({**OWN, "constants_from": "optimised"} if key == "haigis" else {})}
            e = entries(given)
            out = solve(key, e)
            thinned = at(out, out["ELP"], e, p)
            for where, before in ("front", mpf(0)), ("centre", glass["thickness_mm"] / 2), ("back", glass["thickness_mm"]):
                vertex = out["ELP"] - before
                behind = out["AL'"] - vertex - glass["thickness_mm"]
                seen = gap(behind) * m * gap(vertex) * thin(out["Kc"], mpf(1), N) * gap(e["vertex_mm"])
                rx = 1000 * seen[0, 0] / seen[0, 1]
                assert abs((seen * thin(rx, mpf(1), mpf(1)))[0, 0]) < NOTHING
                card.put(f"position-as-{where}-{key}-{i}", f"thick less thin lens, its {where} at the lens position", f"position_as_{where}_d", given, rx - thinned, "D",
                         "ray-transfer matrices from the spectacle lens to the retina, less thin-lens vergence, at 50 digits", "two", method=key)


def thumb(card):
    given = {**EYE, "backup_a_constant": "118.9", "backup_place": "sulcus", "backup_style": "three_piece"}
    for key in "srkt", "t2", "hofferq":
        e = entries(given)
        bag = solve(key, {**e, "a_constant": e["backup_a_constant"]})["P"]
        for name, less in ("less", "0.5"), ("much", "1.0"):
            card.put(f"thumb-{name}-{key}", f"rule of thumb for the sulcus: the power in the bag less {less} D", f"backup_thumb_{name}_d", given, bag - mpf(less), "D",
                     "no source", "common practice", method=key, kind="common-practice")


ORDINARY = "axial_length_mm k_d keratometric_index acd_mm a_constant target_d vertex_mm iol_power_d".split()
DOUBLED = "axial_length_mm k_before_d k_after_d a_constant target_d vertex_mm iol_power_d".split()
BUDGETS = {
    "srkt": (ORDINARY, """23.50 43.80 1.3375 3.20 118.4  0.00 12.00 20.00 | sd_al 0.0177 sd_k 0.18 sd_acd 0.0247 sd_position 0.25 tolerance_d 0.4 sd_refraction 0.30
21.00 46.00 1.3375 2.80 118.4 -0.50 13.75 29.50 | sd_al 0.05 sd_k 0.25 sd_position 0.30 tolerance_d 0.5
29.00 41.00 1.3375 3.65 118.4  0.00 12.00  7.50 | sd_refraction 0.45"""),
    "haigis": (ORDINARY, """23.50 43.80 1.3375 3.20 118.4  0.00 12.00 20.00 | sd_al 0.0177 sd_k 0.18 sd_acd 0.0247 sd_position 0.25 tolerance_d 0.4 sd_refraction 0.30
21.00 46.00 1.3375 2.80 118.4 -0.50 13.75 29.50 | sd_acd 0.15 tolerance_d 0.5
29.00 41.00 1.3375 3.65 118.4  0.00 12.00  7.50 | sd_al 0.10 sd_k 0.30 sd_acd 0.05 sd_position 0.20 sd_refraction 0.25"""),
    "double-srkt": (DOUBLED, """25.20 44.00 38.40 118.4  0.00 12.00 22.50 | sd_al 0.0177 sd_k 0.18 sd_position 0.25 tolerance_d 0.4 sd_refraction 0.30
22.30 42.25 46.00 118.9 -0.50 13.75 24.50 | sd_al 0.04 sd_k 0.50 tolerance_d 0.4 sd_refraction 0.40"""),
}
SD = ("sd_al", "sd_k", "sd_acd", "sd_position", "tolerance_d", "sd_refraction")


def budgets():
    sheet = Sheet("card_hard.py", ["mpmath"], "The variance of a predicted refraction by its six parts (v1 AL, v2 K, v3 ACD, v4 lens position, v5 label, v6 refraction), its SD, and the half widths of 50 and 95 %. What is not given does not scatter. After laser K is the K after.")
    for key, (names, text) in BUDGETS.items():
        for i, line in enumerate(text.split("\n"), 1):
            eye, scatter = line.split("|")
            scatter = scatter.split()
            given = {"method": key, **dict(zip(names, eye.split())), **dict(zip(scatter[::2], scatter[1::2]))}
            e = carried_at_index({**numbers({**USUAL, **given})})
            sd = dict(zip(("al", "k", "acd", "position", "label", "refraction"), (mpf(given.get(name, 0)) for name in SD)))
            var = variances(slopes(key.replace("-", "_"), e), sd)
            total = sqrt(sum(var.values()))
            rows = [("sd", "SD", total, "D"), ("h50", "half width that holds 50 %", quantile("0.5") * total, "D"), ("h95", "half width that holds 95 %", quantile("0.95") * total, "D")]
            rows += [(f"v{n}", f"variance by {part}", value, "D2") for n, (part, value) in enumerate(var.items(), 1)]
            for name, what, value, unit in rows:
                sheet.add(id=f"budget-{key}-{i:02}-{name}", what=f"{NAMES[key.replace('-', '_')]}, how sure: {what}", given=given, expect=value, unit=unit, kind="derived", mark="two",
                          source=f"{SLOPES} the SDs, label uniform within its tolerance; quantiles by mpmath.erfinv", **FAR)
    for i, (now, then) in enumerate((("-0.88", "-0.25"), ("0.75", "-0.50"), ("-1.25", "-1.25"), ("-3.13", "-2.50"), ("1.50", "0.12")), 1):
        error = mpf(now) - mpf(then)
        sheet.add(id=f"second-eye-{i:02}", what="first eye: refraction less prediction, and half of it", given={"fellow_refraction_d": now, "fellow_predicted_d": then},
                  expect=f"{digits(error)} {digits(error / 2)}", unit="D", kind="derived", mark="memory", source=COVERT + ": half of the error of the first eye", **FAR)
    sheet.save("budget.toml")


if __name__ == "__main__":
    card = Card("card_hard.py", ["mpmath", "scipy"], "More numbers on the card, from entries: `item` is the number's name, `method` says whose.", vary="item method")
    for part in history, after_laser, long_eyes, rules, meant, labels, errors, scatters, first_eye, second_lens, thick, thumb:
        part(card)
    card.save("card_hard.toml")
    budgets()
