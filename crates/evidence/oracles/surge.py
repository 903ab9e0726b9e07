"""Surge: an occlusion breaks at t = 0 and a tube under vacuum refills from the eye. An illustration, not a living eye.

    C_e dP/dt  = (P_head - P)/R_in - (P - Pt)/R_asp - G P
    C_t dPt/dt = (P - Pt)/R_asp - Q                  (a pump set by flow; one set by vacuum holds Pt at -V)

Three ways: scipy's own integrator, the matrix exponential at 50 digits, and the implicit midpoint rule in numpy.
"""
import numpy as np
from mpmath import expm, findroot, log, matrix, mpf
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from fluids import ident, numbers, rows
from sheet import Sheet, digits

# 1 to 6: a pump set by flow; 7, 8: the same, the chamber collapses; 9: a pump set by vacuum; 10: the same, the chamber collapses
SETUPS = rows("head r_in r_asp g vacuum aspiration eye_compliance tube_compliance pump", """
60  0.2  4   0    300  0 1.5 0.08 flow
75  0.15 5   0.02 400 25 2   0.05 flow
50  0.3  3   0.01 540 40 0.6 0.10 flow
110 0.1  6   0.05 600 60 5   0.15 flow
60  0.4  6   0.03 400 12 0.3 0.10 flow
90  0.2  2.5 0    100 25 1.2 0.09 flow
45  0.4  3   0.02 600 40 0.5 0.15 flow
40  0.4  2.8 0    600 20 0.7 0.15 flow
70  0.2  4   0.02 300  0 1.5 0.08 vacuum
60  0.3  2   0.01 500  0 1   0.08 vacuum
""")
EXACT = 3  # this many set-ups also by the matrix exponential
TIMES = "5 20 50 100 300".split()  # ms
STEPS = "4 2 1 0.5 0.25".split()  # ms
PRESSURE, TIME = 0.05, 1  # mmHg and ms, by which a step of 1 ms may be off
WHY = f"a step of 1 ms: the implicit midpoint rule with that step, tried here on every set-up, stays within {PRESSURE} mmHg and {TIME} ms"
WITHIN = 1  # mmHg


class Chamber:
    """mmHg, uL, s. The state (P, Pt) as dy/dt = A y + b, in mpmath."""

    def __init__(self, given):
        e = numbers({k: v for k, v in given.items() if k != "pump"})
        self.flow = given["pump"] == "flow"
        minute = mpf(60) / 1000  # mmHg min/mL in mmHg s/uL
        r_in, r_asp, g, q = e["r_in"] * minute, e["r_asp"] * minute, e["g"] / minute, e["aspiration"] / minute
        ce, ct = e["eye_compliance"], e["tube_compliance"]
        self.a = matrix([[-(1 / r_in + 1 / r_asp + g) / ce, 1 / (r_asp * ce)], [1 / (r_asp * ct), -1 / (r_asp * ct)] if self.flow else [0, 0]])
        self.b = matrix([e["head"] / r_in / ce, -q / ct if self.flow else 0])
        self.start = matrix([e["head"] / (1 + e["r_in"] * e["g"]), -e["vacuum"]])
        # where it ends: A y + b = 0, P alone where Pt is held
        self.end = ((self.a[0, 1] * self.b[1] - self.a[1, 1] * self.b[0]) / (self.a[0, 0] * self.a[1, 1] - self.a[0, 1] * self.a[1, 0]) if self.flow
                    else -(self.b[0] + self.a[0, 1] * self.start[1]) / self.a[0, 0])
        if self.flow:
            said = (e["head"] - e["r_in"] * e["aspiration"]) / (1 + e["r_in"] * e["g"])
            assert abs(self.end - said) < mpf("1e-40")
        self.ce, self.ct, self.vacuum = ce, ct, e["vacuum"]
        self.floats = [np.array(m.tolist(), dtype=float) for m in (self.a, self.b, self.start)]
        self.floats[1:] = [v.ravel() for v in self.floats[1:]]

    def exact(self, s):
        m = matrix(3, 3)
        m[:2, :2], m[:2, 2] = self.a, self.b
        y = expm(m * s, method="taylor") * matrix([*self.start, 1])
        return y[0], y[1]

    def exact_slope(self, s):
        p, pt = self.exact(s)
        return self.a[0, 0] * p + self.a[0, 1] * pt + self.b[0]

    def integrated(self, until):
        a, b, y0 = self.floats
        return solve_ivp(lambda t, y: a @ y + b, (0, until), y0, method="DOP853", rtol=1e-12, atol=1e-12, dense_output=True, max_step=1e-3).sol

    def midpoint(self, step, until):
        """States by the implicit midpoint rule; the last step is shorter where they do not fit."""
        a, b, y = self.floats
        states, t = [y], 0.0
        while until - t > 1e-12:
            h = min(step, until - t)
            y = np.linalg.solve(np.eye(2) - h / 2 * a, y + h / 2 * (a @ y) + h * b)
            t += h
            states.append(y)
        return np.array(states)


def first(x, t):
    """Where a function of time crosses zero, ms, between t[0] and t[1] (s)."""
    return 1000 * brentq(x, *t, xtol=1e-14, rtol=1e-14)


def events(c, sol):
    """Trough, its time, recovery, collapse (ms; None where there is none), by the integrator's dense output."""
    a, b, _ = c.floats
    slope = lambda t: float(a[0] @ sol(t) + b[0])
    p = lambda t: float(sol(t)[0])
    grid = np.arange(0, sol.t_max, 1e-3)
    turn = next((i for i, t in enumerate(grid) if i and slope(t) > 0), None) if c.flow else None
    trough = recovery = collapse = None
    if c.flow:
        at = first(slope, (grid[turn - 1], grid[turn]))
        trough = p(at / 1000), at
        low = float(c.end) - WITHIN
        assert trough[0] < low  # else it never left the band
        recovery = first(lambda t: p(t) - low, (at / 1000, sol.t_max))
    under = next((i for i, t in enumerate(grid) if p(t) < 0), None)
    if under is not None:
        collapse = first(p, (grid[under - 1], grid[under]))
    return trough, recovery, collapse


def by_steps(c, until, step=1e-3):
    """The same from the samples of a program that steps by 1 ms, or another step (s)."""
    p = c.midpoint(step, until)[:, 0]
    k = int(p.argmin())
    ms = lambda i: None if i is None else i * step * 1000
    recovery = next(i for i in range(k, len(p)) if p[i] >= float(c.end) - WITHIN) if c.flow else None
    return (p[k], ms(k)) if c.flow else None, ms(recovery), ms(next((i for i, x in enumerate(p) if x < 0), None))


def main():
    sheet = Sheet("surge.py", ["mpmath", "numpy", "scipy"], "Pressure of a chamber after an occlusion breaks: an illustration, not a living eye. mmHg, uL/mmHg, mL/min, mmHg min/mL; the leak g in mL/min a mmHg; pump says what sets the pump.", vary="at_ms step_ms")
    fact = dict(kind="reference-library", mark="two", note=WHY)
    worst = {"p": 0.0, "pt": 0.0, "time": 0.0, "trough": 0.0}
    for number, given in enumerate(SETUPS, 1):
        c = Chamber(given)
        sol = c.integrated(0.8)
        trough, recovery, collapse = events(c, sol)
        if collapse:
            trough = recovery = None  # the run ends there
        stepped = c.midpoint(1e-3, 0.3)
        assert (collapse is not None) == (number in (7, 8, 10))
        below = f". The chamber collapses after {collapse:.3g} ms; the network is followed below 0 all the same" if collapse else ""
        source = "scipy, integrate.solve_ivp(method='DOP853', rtol=1e-12, atol=1e-12, dense_output=True)"
        for ms in TIMES:
            exact = c.exact(mpf(ms) / 1000)
            for i, (name, what) in enumerate((("p", "pressure of the eye"), ("pt", "pressure in the tube"))):
                x = float(sol(int(ms) / 1000)[i])
                assert abs(x - exact[i]) < 1e-8
                worst[name] = max(worst[name], abs(stepped[int(ms), i] - x))
                here = {**given, "at_ms": ms}
                after = below if collapse and float(ms) > collapse else ""
                sheet.add(id=ident("surge", name, number, ms), what=what, given=here, expect=digits(x, 10), tolerance=str(PRESSURE), unit="mmHg", source=source, **{**fact, "note": WHY + after})
                if number <= EXACT:
                    sheet.add(id=ident("surge-exact", name, number, ms), what=what, given=here, expect=exact[i], tolerance=str(PRESSURE), unit="mmHg", kind="derived", mark="two", source="the matrix exponential at 50 digits", note=WHY)
        found = [("recovery", f"time until the pressure is within {WITHIN} mmHg of its last value again", recovery), ("collapse-time", "time until the pressure is 0", collapse)]
        ours = by_steps(c, 0.8)
        if collapse:
            ours = None, None, ours[2]
        if trough:
            found.insert(0, ("trough-time", "time of the least pressure", trough[1]))
            worst["trough"] = max(worst["trough"], abs(ours[0][0] - trough[0]))
            sheet.add(id=f"surge-trough-{number}", what="least pressure of the eye", given=given, expect=digits(trough[0], 10), tolerance=str(PRESSURE), unit="mmHg", source=source + ", where the slope crosses 0", **{**fact, "note": WHY + below})
        for (name, what, x), y in zip(found, ([ours[0][1]] if trough else []) + [ours[1], ours[2]], strict=True):
            assert (x is None) == (y is None)
            if x is not None:
                worst["time"] = max(worst["time"], abs(x - y))
                sheet.add(id=f"surge-{name}-{number}", what=what, given=given, expect=digits(x, 10), tolerance=str(TIME), unit="ms", source=source + ", and brentq on it", **{**fact, "note": WHY + (below if name != "collapse-time" else "")})
        if number <= EXACT:
            at = findroot(c.exact_slope, trough[1] / 1000)
            back = findroot(lambda s: c.exact(s)[0] - c.end + WITHIN, recovery / 1000)
            assert abs(at * 1000 - trough[1]) < 1e-5 and abs(back * 1000 - recovery) < 1e-5 and abs(c.exact(at)[0] - trough[0]) < 1e-8
            for name, what, x, tolerance, unit in (("trough", "least pressure of the eye", c.exact(at)[0], PRESSURE, "mmHg"), ("trough-time", "time of the least pressure", at * 1000, TIME, "ms"), ("recovery", found[1][1], back * 1000, TIME, "ms")):
                sheet.add(id=f"surge-exact-{name}-{number}", what=what, given=given, expect=x, tolerance=str(tolerance), unit=unit, kind="derived", mark="two", source="the matrix exponential at 50 digits, and its root", note=WHY)
        if trough:
            lost = float(c.ce) * (float(c.start[0]) - trough[0])
            bound = c.ct * (c.vacuum + c.start[0])
            if not given["aspiration"].strip("0."):
                assert lost < bound  # with the pump running nothing bounds it so
            sheet.add(id=f"surge-volume-{number}", what="volume that the eye loses, start to trough", given=given, expect=digits(lost, 10), tolerance=f"{float(c.ce) * PRESSURE:.2g}", unit="uL", source=source + ", C_e (P_start - P_trough)", **{**fact, "note": WHY + ", times C_e" + below})
            sheet.add(id=f"surge-room-{number}", what="volume that fills the tube up to the start's pressure", given=given, expect=bound, tolerance=f"{float(bound) * 5e-14:.1e}", unit="uL", kind="derived", mark="two", source="C_t (V + P_start) at 50 digits",
                      note="a few roundings of a double. It bounds the volume lost where nothing is pumped (aspiration 0), not otherwise")
        if not collapse:
            exact = c.exact(mpf("0.05"))[0]
            errors = {}
            for step in STEPS:
                x = float(c.midpoint(float(step) / 1000, 0.05)[-1, 0])
                errors[step] = abs(x - exact)
                sheet.add(id=ident("surge-midpoint", number, step), what="pressure of the eye by the implicit midpoint rule", given={**given, "at_ms": "50", "step_ms": step}, expect=digits(x, 15), tolerance="1e-9", unit="mmHg", kind="derived", mark="two",
                          source="the implicit midpoint rule, numpy.linalg.solve", note="far above the roundings of 200 steps, far below the error of the steps" + ("; 50 ms are 12 steps of 4 ms and one of 2 ms" if step == "4" else ""))
            order = log(errors["2"] / errors["1"], 2)
            assert abs(order - 2) < 0.1, (number, errors)
            sheet.add(id=f"surge-order-{number}", what="order of the implicit midpoint rule, from the errors with 2 ms and 1 ms", given={**given, "at_ms": "50"}, expect=digits(order, 6), tolerance="0.1", unit="1", kind="derived", mark="two",
                      source="log2 of the ratio of errors against the matrix exponential", note="about 2; it nears 2 only as the steps shrink")
    assert worst["p"] < PRESSURE and worst["pt"] < PRESSURE and worst["trough"] < PRESSURE and worst["time"] < 0.9 * TIME, worst
    print("farthest of 1 ms steps:", ", ".join(f"{k} {v:.3g}" for k, v in worst.items()))
    sheet.save("fluids_surge.toml")


if __name__ == "__main__":
    main()
