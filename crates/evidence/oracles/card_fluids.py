"""Numbers on the card about fluids: columns, air and vacuum, the chamber, surge, tubes and needles.

Every number is worked out from the entries by the functions of fluids.py and surge.py. A method of Card is named after the item
it gives; one that gives a list gives its rows. The chamber's column is the head, its resistance that of the readings where those are entered;
readings are chosen so that their pressure without flow is the column's own, but where the two are compared.
"""
from collections import defaultdict
from functools import cached_property

import numpy as np
from mpmath import findroot, mp, mpf, pi, sqrt

from atmosphere import G, MMHG, geopotential, pressure
from fluids import ML_MIN, NEEDLES, Tube, altitude, close, column, driven, in_pint, in_units, lu_solve, magnus, matrix, network, q, rows, tanaka, viscosity
from sheet import Sheet
from surge import PRESSURE, TIME, WITHIN, Chamber, by_steps, events, first
from water import region4

USUAL = {"gas_pressure_mmhg": "0", "density_from": "entered", "density_kg_m3": "1000", "fluid_temperature_c": "20", "leak_ml_min": "0", "tubes_side_by_side": "1",
         "viscosity_from": "water", "plunger_friction_n": "0", "discharge_coefficient": "0.62"}
WORDS = "density_from viscosity_from pump_kind".split()
HYDROSTATICS = "hydrostatics at 50 digits, and by pint"
AIR = "US Standard Atmosphere 1976 = ISO 2533 below 11 km, IAPWS-IF97 region 4, at 50 digits"
CHAMBER = "the network as linear equations at 50 digits, and in closed form"
POISEUILLE = "Poiseuille's law, with 2.3 rho v^2/2 where the flow enters and leaves, at 50 digits, and by pint"
NETWORK = "the matrix exponential at 50 digits and its root; scipy, integrate.solve_ivp agrees"
RECALLED = "recalled, as in fluids_needles"
ITEMS = {}


def item(what, unit, source, mark="two", least=0, tolerance=None, note=None):
    """least: the tolerance is that of a number so large, at the least; a difference may be small."""

    def named(method):
        ITEMS[method.__name__] = dict(what=what, unit=unit, source=source, mark=mark, least=least, tolerance=tolerance, note=note)
        return method
    return named


class Card:
    def __init__(self, given):
        self.given = given
        e = {**USUAL, **given}
        assert not ("density_kg_m3" in given and e["density_from"] == "water")
        assert not ("set_pressure_mmhg" in given and {"open_level_cm", "gas_pressure_mmhg"} & given.keys())
        assert ("viscosity_mpa_s" in given) == (e["viscosity_from"] == "at_shear")
        assert not ("reading_1_flow_ml_min" in given and "infusion_resistance_mmhg_min_ml" in given)
        assert not ("tube_flow_ml_min" in given and "driving_pressure_mmhg" in given)
        self.e = {k: v if k in WORDS else mpf(v) for k, v in e.items()}
        self.rho = tanaka(e["fluid_temperature_c"]) if e["density_from"] == "water" else mpf(e["density_kg_m3"])

    def __getattr__(self, key):
        try:
            return self.__dict__["e"][key]
        except KeyError:
            raise AttributeError(key) from None

    # Columns

    def rise(self, top, bottom):
        return column({"density_kg_m3": mp.nstr(self.rho, 45), "top": mp.nstr(top, 45), "bottom": mp.nstr(bottom, 45)}, "top", "bottom")

    def head(self, level=None, eye=None):
        eye = self.eye_level_cm if eye is None else eye
        if "set_pressure_mmhg" in self.e:
            return self.set_pressure_mmhg + self.rise(self.assumed_eye_level_cm, eye)
        return self.gas_pressure_mmhg + self.rise(self.open_level_cm if level is None else level, eye)

    def as_column(self, mmhg):
        """cm of the fluid."""
        return 100 * mmhg * MMHG / (self.rho * G)

    @item("density that the card works with", "kg/m3", "Tanaka et al., Metrologia 2001;38:301-309, at 50 digits")
    def density_used_kg_m3(self):
        return self.rho

    @item("pressure at the eye, nothing flowing", "mmHg", HYDROSTATICS)
    def head_mmhg(self):
        return self.head()

    @item("pressure at the eye, nothing flowing", "kPa", HYDROSTATICS)
    def head_kpa(self):
        return self.head() * MMHG / 1000

    @item("pressure at the eye, nothing flowing", "cmH2O", HYDROSTATICS)
    def head_cmh2o(self):
        return self.head() * MMHG / mpf("98.0665")

    @item("pressure of 1 cm of column", "mmHg", HYDROSTATICS)
    def head_per_cm_mmhg(self):
        return self.rise(mpf(1), mpf(0))

    @item("open column of the same pressure as a machine set by pressure", "cm", HYDROSTATICS)
    def set_column_cm(self):
        x = self.as_column(self.head())
        close(self.rise(x, mpf(0)), self.head())
        return x

    @item("open level that puts the pressure wanted on the eye", "cm", HYDROSTATICS, least=100)
    def open_level_wanted_cm(self):
        x = self.eye_level_cm + self.as_column(self.wanted_pressure_mmhg - self.gas_pressure_mmhg)
        close(self.gas_pressure_mmhg + self.rise(x, self.eye_level_cm), self.wanted_pressure_mmhg)
        return x

    @item("setting that puts the pressure wanted on the eye", "mmHg", HYDROSTATICS, least=100)
    def setting_wanted_mmhg(self):
        return self.wanted_pressure_mmhg - self.rise(self.assumed_eye_level_cm, self.eye_level_cm)

    def levels(self):
        return [self.open_level_cm + d for d in (-30, -15, 0, 15, 30)]

    @item("open level of another bottle", "cm", "as entered, less and more", least=100)
    def bottle_cm(self):
        return self.levels()

    @item("pressure at the eye with that bottle", "mmHg", HYDROSTATICS, least=100)
    def bottle_head_mmhg(self):
        return [self.head(x) for x in self.levels()]

    @item("the same, the eye 5 cm higher", "mmHg", HYDROSTATICS, least=100)
    def bottle_eye_higher_mmhg(self):
        return [self.head(x, self.eye_level_cm + 5) for x in self.levels()]

    @item("the same, the eye 5 cm lower", "mmHg", HYDROSTATICS, least=100)
    def bottle_eye_lower_mmhg(self):
        return [self.head(x, self.eye_level_cm - 5) for x in self.levels()]

    # Air and vacuum

    def standard(self):
        return pressure(geopotential(self.altitude_m)) / MMHG

    def air(self):
        assert ("altitude_m" in self.e) != ("station_pressure_hpa" in self.e)  # which of the two counts is not this sheet's to say
        return self.standard() if "altitude_m" in self.e else self.station_pressure_hpa * 100 / MMHG

    def vapour(self):
        return region4(self.fluid_temperature_c)[-1] / MMHG

    def ceiling(self):
        return self.air() - self.vapour()

    @item("map height at which the standard atmosphere has the pressure measured", "m", AIR, least=1000)
    def air_height_m(self):
        z = altitude(self.station_pressure_hpa * 100)
        close(pressure(geopotential(z)), self.station_pressure_hpa * 100)
        return z

    @item("pressure measured", "mmHg", "100/133.322387415 mmHg a hPa")
    def station_air_mmhg(self):
        return self.station_pressure_hpa * 100 / MMHG

    @item("pressure measured less that of the altitude", "mmHg", AIR, least=1000)
    def station_less_mmhg(self):
        return self.station_air_mmhg() - self.standard()

    @item("pressure at which the fluid boils, Magnus", "mmHg", "WMO No. 8, 6.112 exp(17.62 t/(243.12 + t)) hPa over water, at 50 digits", mark="memory")
    def vapour_magnus_mmhg(self):
        return magnus(self.fluid_temperature_c) / MMHG

    @item("the same, Magnus less IAPWS-IF97", "mmHg", "WMO No. 8 less IAPWS-IF97 region 4, at 50 digits", mark="memory", least=100)
    def vapour_magnus_less_mmhg(self):
        return magnus(self.fluid_temperature_c) / MMHG - self.vapour()

    @item("ceiling on vacuum", "cmH2O", AIR, least=1000)
    def vacuum_ceiling_cmh2o(self):
        return self.ceiling() * MMHG / mpf("98.0665")

    @item("what the column from eye to pump adds to the vacuum", "mmHg", HYDROSTATICS, least=100)
    def siphon_mmhg(self):
        return self.rise(self.eye_level_cm, self.pump_level_cm)

    def settings(self):
        return [self.e[f"vacuum_{k}_mmhg"] for k in ("nucleus", "cortex", "viscoelastic")]

    @item("vacuum set", "mmHg", "as entered")
    def vacuum_set_mmhg(self):
        return self.settings()

    @item("vacuum set", "kPa", "0.133322387415 kPa a mmHg")
    def vacuum_set_kpa(self):
        return [v * MMHG / 1000 for v in self.settings()]

    @item("vacuum set", "cmH2O", "133.322387415/98.0665 cmH2O a mmHg")
    def vacuum_set_cmh2o(self):
        return [v * MMHG / mpf("98.0665") for v in self.settings()]

    @item("vacuum at the pump, no more than the ceiling", "mmHg", AIR + ": min(V, C)", least=1000)
    def vacuum_at_pump_mmhg(self):
        return [min(v, self.ceiling()) for v in self.settings()]

    @item("vacuum at the tip, nothing flowing, no more than the ceiling", "mmHg", AIR + ", hydrostatics: min(min(V, C) + s, C)", least=1000)
    def vacuum_at_tip_mmhg(self):
        return [min(v + self.siphon_mmhg(), self.ceiling()) for v in self.vacuum_at_pump_mmhg()]

    # The chamber: an illustration

    def line(self):
        """Pressure without flow, resistance."""
        q1, p1, q2, p2 = (self.e[f"reading_{i}_{k}"] for i in (1, 2) for k in ("flow_ml_min", "pressure_mmhg"))
        p0, r = lu_solve(matrix([[1, -q1], [1, -q2]]), matrix([p1, p2]))
        close(r, (p1 - p2) / (q2 - q1))
        close(p0, p1 + r * q1)
        return p0, r

    def resistance(self):
        if "reading_1_flow_ml_min" not in self.e:
            return self.infusion_resistance_mmhg_min_ml
        p0, r = self.line()
        close(p0, self.head(), scale=1)
        return r

    def conductance(self):
        return self.leak_ml_min / (self.head() - self.resistance() * self.leak_ml_min)

    def drawn(self):
        """The nucleus's vacuum as it is at the level of the eye, nothing flowing: no more than the air allows."""
        air = self.ceiling() if "altitude_m" in self.e or "station_pressure_hpa" in self.e else mpf("1e6")
        lift = self.siphon_mmhg() if "pump_level_cm" in self.e else 0
        return min(min(self.vacuum_nucleus_mmhg, air) + lift, air)

    def solved(self):
        """Pressure of the eye and in the line. A pump set by flow that would need more than the nucleus's vacuum holds that."""
        r, g, asp = self.resistance(), self.conductance(), self.aspiration_resistance_mmhg_min_ml
        flow = self.pump_kind == "flow"
        if flow:
            p, pt = network(r, g, asp, self.head(), aspiration=self.aspiration_ml_min)
            flow = "vacuum_nucleus_mmhg" not in self.e or -pt <= self.drawn()
        if not flow:
            p, pt = network(r, g, asp, self.head(), vacuum=self.drawn())
        close(p, (self.head() - r * self.aspiration_ml_min) / (1 + r * g) if flow else (self.head() / r - self.drawn() / asp) / (1 / r + 1 / asp + g))
        assert p > 0
        return p, pt

    @item("resistance of the infusion by two readings", "mmHg min/mL", "the straight line P = P0 - R Q through two readings, at 50 digits", least=10)
    def infusion_resistance_found(self):
        return self.line()[1]

    @item("pressure without flow by two readings", "mmHg", "the straight line P = P0 - R Q through two readings, at 50 digits", least=100)
    def still_pressure_found_mmhg(self):
        return self.line()[0]

    @item("the same less the column's pressure", "mmHg", "the straight line P = P0 - R Q through two readings, and hydrostatics, at 50 digits", least=100)
    def still_less_column_mmhg(self):
        return self.line()[0] - self.head()

    @item("leak by pressure", "mL/min/mmHg", "Q/(P_head - R Q) at 50 digits")
    def leak_conductance(self):
        return self.conductance()

    @item("pressure of the chamber, nothing aspirated", "mmHg", CHAMBER)
    def chamber_still_mmhg(self):
        p, _ = network(self.resistance(), self.conductance(), mpf(3), self.head(), aspiration=mpf(0))
        close(p, self.head() - self.resistance() * self.leak_ml_min)
        return p

    @item("pressure of the chamber while aspirating", "mmHg", CHAMBER, least=100)
    def chamber_mmhg(self):
        return self.solved()[0]

    @item("leak while aspirating", "mL/min", CHAMBER)
    def chamber_leak_ml_min(self):
        return self.conductance() * self.solved()[0]

    @item("vacuum that follows from the flow", "mmHg", CHAMBER, least=1000)
    def vacuum_follows_mmhg(self):
        assert self.pump_kind == "flow"
        return -self.solved()[1]

    @item("flow that follows from the vacuum", "mL/min", CHAMBER)
    def chamber_aspiration_ml_min(self):
        p, pt = self.solved()
        flow = (p - pt) / self.aspiration_resistance_mmhg_min_ml
        close(flow, (self.head() - p) / self.resistance() - self.conductance() * p)
        return flow

    def hold(self, mmhg):
        x = mmhg * MMHG * pi * (self.tip_bore_mm / 1000)**2 / 4 * 1000
        close(x, in_units(q(mp.nstr(mmhg, 45), "mmHg") * q(mp.nstr(pi * self.tip_bore_mm**2 / 4, 45), "mm^2"), "mN"))
        return x

    @item("force that holds a piece on the tip, by the vacuum alone", "mN", "V pi d^2/4 at 50 digits, and by pint")
    def hold_bare_mn(self):
        return self.hold(self.drawn())

    @item("force that holds a piece on the tip", "mN", "(V + P) pi d^2/4 at 50 digits, and by pint")
    def hold_mn(self):
        return self.hold(self.drawn() + self.head())

    # Surge: the same chamber when an occlusion breaks

    @cached_property
    def chamber(self):
        return Chamber({"head": self.head(), "r_in": self.resistance(), "r_asp": self.aspiration_resistance_mmhg_min_ml, "g": self.conductance(), "vacuum": self.drawn(),
                        "aspiration": self.aspiration_ml_min if self.pump_kind == "flow" else 0, "eye_compliance": self.eye_compliance_ul_mmhg, "tube_compliance": self.tubing_compliance_ul_mmhg, "pump": self.pump_kind})

    @cached_property
    def surge(self):
        """Least pressure, its time, recovery and collapse (ms; None where there is none), exact; a program's steps must come near enough."""
        c, step = self.chamber, self.surge_step_ms / 1000
        assert 1000 * step <= self.surge_shortest_ms() / 4
        sol = c.integrated(0.8)
        trough, recovery, collapse = events(c, sol)
        pressure_by = lambda level: lambda s: c.exact(s)[0] - level
        exact = lambda f, ms: 1000 * findroot(f, (mpf(ms) / 1000, mpf(ms) / 1000 + mpf("1e-7")))
        near, sampled = self.near(), by_steps(c, 0.8, float(step))
        if collapse:
            at = exact(pressure_by(0), collapse)
            assert abs(at - collapse) < 1e-5 and abs(sampled[2] - at) < 0.9 * near[1], (sampled, at)
            return None, None, None, at
        if not c.flow:
            return None, None, None, None
        at = exact(c.exact_slope, trough[1])
        back = exact(pressure_by(c.end - WITHIN), recovery)
        low = c.exact(at / 1000)[0]
        assert abs(at - trough[1]) < 1e-5 and abs(back - recovery) < 1e-5 and abs(low - trough[0]) < 1e-8
        assert abs(sampled[0][0] - low) < 0.9 * near[0] and abs(sampled[0][1] - at) < 0.9 * near[1] and abs(sampled[1] - back) < 0.9 * near[1], (sampled, low, at, back)
        # a unit in the tenths of the band must show
        self.band = [abs(first(lambda t: float(sol(t)[0] - c.end) + x, (trough[1] / 1000, sol.t_max)) - float(back)) / float(near[1]) for x in (0.9, 1.1)]
        assert min(self.band) > 1.2, self.band
        return low, at, back, None

    def near(self):
        """mmHg and ms by which the steps may be off."""
        return (PRESSURE, TIME) if self.surge_step_ms >= 0.5 else (mpf("0.001"), mpf("0.2"))

    @item("pressure of the eye when the occlusion breaks", "mmHg", CHAMBER)
    def surge_start_mmhg(self):
        close(self.chamber.start[0], self.chamber_still_mmhg())
        return self.chamber.start[0]

    @item("pressure of the eye long after", "mmHg", CHAMBER, least=100)
    def surge_steady_mmhg(self):
        close(self.chamber.end, self.solved()[0], "1e-26")
        return self.chamber.end

    @item("volume that fills the tubing up to the start's pressure", "uL", "C_t (V + P_start) at 50 digits")
    def surge_room_ul(self):
        return self.chamber.ct * (self.drawn() + self.chamber.start[0])

    @item("shortest time constant of the network", "ms", "1 by the largest eigenvalue of its matrix: in closed form at 50 digits, and numpy.linalg.eigvals")
    def surge_shortest_ms(self):
        a = self.chamber.a
        trace, det = a[0, 0] + a[1, 1], a[0, 0] * a[1, 1] - a[0, 1] * a[1, 0]
        x = 2000 / (-trace + sqrt(trace**2 - 4 * det))
        close(x, 1000 / max(abs(np.linalg.eigvals(self.chamber.floats[0]))), "1e-13")
        return x

    @item("step that the card takes", "ms", "as entered, else the longest of 1, 0.5, 0.25, ... within an eighth of the shortest time constant", tolerance="1e-12")
    def surge_step_taken_ms(self):
        if "surge_step_ms" in self.e:
            assert self.surge_step_ms <= self.surge_shortest_ms() / 4
            return self.surge_step_ms
        x = mpf(1)
        while x > self.surge_shortest_ms() / 8:
            x /= 2
        assert abs(self.surge_shortest_ms() / 8 / x - 1) > 0.02  # no rounding decides
        return x

    @item("least pressure of the eye", "mmHg", NETWORK)
    def surge_trough_mmhg(self):
        return self.surge[0]

    @item("time of the least pressure", "ms", NETWORK)
    def surge_trough_ms(self):
        return self.surge[1]

    @item(f"time until the pressure is within {WITHIN} mmHg of its last value again", "ms", NETWORK)
    def surge_recovered_ms(self):
        return self.surge[2]

    @item("time until the pressure is 0", "ms", NETWORK)
    def surge_collapsed_ms(self):
        return self.surge[3]

    @item("volume that the eye loses, start to trough", "uL", NETWORK)
    def surge_volume_ul(self):
        return self.chamber.ce * (self.chamber.start[0] - self.surge[0])

    def balances(self):
        """What the implicit midpoint rule leaves of the volume (uL) and of the energy (uJ): nothing but roundings."""
        c, h = self.chamber, float(self.surge_step_ms) / 1000
        a, b, _ = c.floats
        y = c.midpoint(h, 0.3)
        store = np.array([float(c.ce), float(c.ct) if c.flow else 0])
        middle = (y[1:] + y[:-1]) / 2
        flows = (middle @ a.T + b) * h * store  # uL into eye and tube
        volume = np.abs((y[-1] - y[0]) * store - flows.sum(0)).max()
        energy = abs((store * (y[-1]**2 - y[0]**2) / 2).sum() - (middle * flows).sum()) * float(MMHG) / 1000
        assert volume < 1e-7 and energy < 1e-7, (volume, energy)

    @item("volume that the balance leaves over", "uL", "what flows in and out is what eye and tubing hold, at each step of the implicit midpoint rule", tolerance="1e-6", note="roundings of the steps; a balance that does not close leaves more")
    def surge_volume_left_ul(self):
        self.balances()
        return mpf(0)

    @item("energy that the balance leaves over", "uJ", "work done is energy stored and lost, at each step of the implicit midpoint rule", tolerance="1e-6", note="roundings of the steps; a balance that does not close leaves more")
    def surge_energy_left_uj(self):
        self.balances()
        return mpf(0)

    # Tubes and needles

    def viscosity(self):
        return viscosity(self.fluid_temperature_c) if self.viscosity_from == "water" else self.viscosity_mpa_s

    @cached_property
    def needle(self):
        return next(n for n in self.gauges() if n["gauge"] == str(int(self.needle_gauge)))

    @staticmethod
    def gauges():
        return rows("gauge outer bore least thin", NEEDLES)

    def tubes(self):
        first = self.bore_mm if "bore_mm" in self.e else self.needle["bore"]
        return [Tube(first, self.tube_length_mm, self.tubes_side_by_side, self.viscosity(), self.rho)] + (
            [Tube(self.bore_2_mm, self.tube_length_2_mm, 1, self.viscosity(), self.rho)] if "bore_2_mm" in self.e else [])

    def flow(self):
        """m3/s."""
        if "tube_flow_ml_min" in self.e:
            return self.tube_flow_ml_min * ML_MIN
        return driven(self.tubes(), self.driving_pressure_mmhg * MMHG)

    def lost(self, tube, kinds=("laminar", "kinetic")):
        """mmHg, the flow laminar."""
        x = self.flow()
        assert tube.reynolds(x) < 2300, tube.reynolds(x)
        tube.check(x)
        theirs = in_pint({k: mp.nstr(v, 45) for k, v in dict(bore_mm=tube.d * 1000, length_mm=tube.l * 1000, side_by_side=tube.n, flow_ml_min=x / ML_MIN, viscosity_mpa_s=tube.mu * 1000, density_kg_m3=tube.rho).items()})
        for mine, other in zip((tube.laminar(x) / MMHG, tube.kinetic(x) / MMHG, tube.velocity(x), tube.reynolds(x)), theirs):
            close(mine, other)
        return sum(getattr(tube, k)(x) for k in kinds) / MMHG

    @item("bore of the needle, customary", "mm", "the customary needle gauge, " + RECALLED, mark="memory", tolerance="5e-4", note="half the last digit")
    def bore_used_mm(self):
        return self.needle["bore"]

    @item("viscosity that the card works with", "mPa.s", "IAPWS SR6-08, simplified viscosity at 0.1 MPa, at 50 digits, or as entered")
    def viscosity_used_mpa_s(self):
        return self.viscosity()

    @item("flow for which the table of needles is", "mL/min", POISEUILLE + "; as entered, or the positive root")
    def needle_table_ml_min(self):
        return self.flow() / ML_MIN

    @item("flow that the pressure drives", "mL/min", POISEUILLE + "; the positive root, and by trial")
    def flow_driven_ml_min(self):
        assert "driving_pressure_mmhg" in self.e
        return self.flow() / ML_MIN

    @item("mean speed in the first tube", "m/s", POISEUILLE)
    def tube_velocity_m_s(self):
        return self.tubes()[0].velocity(self.flow())

    @item("shear rate at its wall", "1/s", POISEUILLE)
    def tube_wall_shear(self):
        return self.tubes()[0].shear(self.flow())

    @item("Reynolds number in the first tube", "1", POISEUILLE)
    def tube_reynolds(self):
        return self.tubes()[0].reynolds(self.flow())

    @item("pressure lost in the first tube by viscosity", "mmHg", POISEUILLE)
    def tube_laminar_mmhg(self):
        return self.lost(self.tubes()[0], ["laminar"])

    @item("pressure lost in the first tube by the kinetic energy", "mmHg", POISEUILLE)
    def tube_kinetic_mmhg(self):
        return self.lost(self.tubes()[0], ["kinetic"])

    @item("pressure lost in the second tube", "mmHg", POISEUILLE)
    def tube_second_mmhg(self):
        return self.lost(self.tubes()[1])

    @item("pressure lost in all", "mmHg", POISEUILLE)
    def tube_drop_mmhg(self):
        x = sum(self.lost(t) for t in self.tubes())
        if "driving_pressure_mmhg" in self.e:
            close(x, self.driving_pressure_mmhg)
        return x

    @item("pressure lost in all", "kPa", POISEUILLE)
    def tube_drop_kpa(self):
        return self.tube_drop_mmhg() * MMHG / 1000

    @item("time that the volume takes", "s", "volume by flow, at 50 digits")
    def volume_time_s(self):
        return self.volume_ml * mpf("1e-6") / self.flow()

    @item("force on the plunger by the pressure", "N", "dP pi D^2/4 at 50 digits")
    def plunger_fluid_n(self):
        return self.tube_drop_mmhg() * MMHG * pi * (self.syringe_bore_mm / 1000)**2 / 4

    @item("force on the plunger with its friction", "N", "dP pi D^2/4 + friction at 50 digits")
    def plunger_n(self):
        return self.plunger_fluid_n() + self.plunger_friction_n

    @item("flow through a thin opening", "mL/min", "Cd A sqrt(2 dP/rho), at 50 digits and by pint")
    def opening_flow_ml_min(self):
        across = self.driving_pressure_mmhg if "driving_pressure_mmhg" in self.e else self.head()
        x = self.discharge_coefficient * pi * (self.opening_mm / 2000)**2 * sqrt(2 * across * MMHG / self.rho) / ML_MIN
        speed = (2 * q(mp.nstr(across, 45), "mmHg") / q(mp.nstr(self.rho, 45), "kg/m^3")).to("m^2/s^2")**q("0.5", "")
        close(x, in_units(q(mp.nstr(self.discharge_coefficient * pi * self.opening_mm**2 / 4, 45), "mm^2") * speed, "mL/min"))
        return x

    @item("gauge", "1", "18 to 31", mark="memory", tolerance="1e-9", note="far above double rounding")
    def needle_gauge_row(self):
        return [n["gauge"] for n in self.gauges()]

    @item("outer diameter, customary", "mm", "the customary needle gauge, " + RECALLED, mark="memory", tolerance="half", note="half the last digit")
    def needle_outer_mm(self):
        return [n["outer"] for n in self.gauges()]

    @item("bore, customary", "mm", "the customary needle gauge, " + RECALLED, mark="memory", tolerance="half", note="half the last digit")
    def needle_bore_mm(self):
        return [n["bore"] for n in self.gauges()]

    @item("least bore, regular wall", "mm", "ISO 9626, " + RECALLED, mark="memory", tolerance="half", note="half the last digit")
    def needle_least_mm(self):
        return [n["least"] for n in self.gauges()]

    @item("least bore, thin wall", "mm", "ISO 9626, " + RECALLED, mark="memory", tolerance="half", note="half the last digit")
    def needle_least_thin_mm(self):
        return [n["thin"] for n in self.gauges()]

    def through(self, bore):
        return [self.lost(Tube(n[bore], self.tube_length_mm, 1, self.viscosity(), self.rho)) for n in self.gauges()]

    @item("pressure lost in that needle, customary bore", "mmHg", POISEUILLE + "; bores recalled")
    def needle_drop_mmhg(self):
        return self.through("bore")

    @item("pressure lost in that needle, least bore, regular wall", "mmHg", POISEUILLE + "; bores recalled")
    def needle_drop_least_mmhg(self):
        return self.through("least")


VISCOUS = "viscosity_used_mpa_s flow_driven_ml_min tube_reynolds tube_laminar_mmhg tube_second_mmhg tube_drop_mmhg tube_drop_kpa plunger_fluid_n plunger_n needle_drop_mmhg needle_drop_least_mmhg".split()
BY_FLOW = "tube_velocity_m_s tube_wall_shear tube_kinetic_mmhg volume_time_s".split()

# Entries, and the items read from them; `name:1,4` is some rows only
OPEN = {"open_level_cm": "160.0", "eye_level_cm": "85.0"}
GAS = {"open_level_cm": "142.5", "eye_level_cm": "98.0", "gas_pressure_mmhg": "22", "density_kg_m3": "1006"}
WARM = {"open_level_cm": "170.0", "eye_level_cm": "92.5", "density_from": "water", "fluid_temperature_c": "34"}
COOL = {"open_level_cm": "151.0", "eye_level_cm": "80.0", "gas_pressure_mmhg": "15", "density_from": "water"}
SET = {"set_pressure_mmhg": "60", "assumed_eye_level_cm": "100.0", "eye_level_cm": "92.0"}
SET_WARM = {"set_pressure_mmhg": "45", "assumed_eye_level_cm": "85.0", "eye_level_cm": "97.5", "density_from": "water", "fluid_temperature_c": "30"}
SET_HEAVY = {"set_pressure_mmhg": "55", "assumed_eye_level_cm": "95.0", "eye_level_cm": "95.0", "density_kg_m3": "1004"}
EVEN = {"set_pressure_mmhg": "60", "assumed_eye_level_cm": "90.0", "eye_level_cm": "90.0"}
HEADS = "head_mmhg head_kpa head_cmh2o head_per_cm_mmhg"
BOTTLES = "bottle_cm bottle_head_mmhg bottle_eye_higher_mmhg bottle_eye_lower_mmhg"
VACUUM = {"vacuum_nucleus_mmhg": "500", "vacuum_cortex_mmhg": "450", "vacuum_viscoelastic_mmhg": "600"}
VACUUMS = "siphon_mmhg vacuum_set_mmhg vacuum_set_kpa vacuum_set_cmh2o vacuum_at_pump_mmhg vacuum_at_tip_mmhg"
CASES = [
    (GAS, HEADS), (WARM, f"density_used_kg_m3 {HEADS}"), (COOL, f"density_used_kg_m3 {HEADS}"),
    *(({**e, **more}, f"set_column_cm {HEADS}") for e, more in ((SET, {}), (SET_HEAVY, {}))), (SET_WARM, f"density_used_kg_m3 set_column_cm {HEADS}"),
    ({**OPEN, "wanted_pressure_mmhg": "60"}, "open_level_wanted_cm"),
    ({**GAS, "wanted_pressure_mmhg": "48"}, "open_level_wanted_cm"),
    ({**WARM, "wanted_pressure_mmhg": "35"}, "open_level_wanted_cm"),
    ({**SET, "wanted_pressure_mmhg": "65"}, "setting_wanted_mmhg"),
    ({**SET_WARM, "wanted_pressure_mmhg": "52"}, "setting_wanted_mmhg"),
    ({**SET_HEAVY, "wanted_pressure_mmhg": "38"}, "setting_wanted_mmhg"),
    (OPEN, BOTTLES), (GAS, BOTTLES), (WARM, BOTTLES),
    *(({"station_pressure_hpa": p}, "air_height_m station_air_mmhg vacuum_ceiling_cmh2o") for p in ("834.0", "1032.5", "671.2")),
    *(({"station_pressure_hpa": p, "altitude_m": z}, "station_less_mmhg") for p, z in (("834.0", "1609"), ("1021.4", "35"), ("742.6", "2500"))),
    *(({"altitude_m": z, "fluid_temperature_c": t}, "vapour_magnus_mmhg vapour_magnus_less_mmhg vacuum_ceiling_cmh2o") for z, t in (("1609", "25"), ("35", "34"), ("3127", "4"))),
    ({"altitude_m": "500"}, "vapour_magnus_mmhg vapour_magnus_less_mmhg vacuum_ceiling_cmh2o"),
    ({"station_pressure_hpa": "901.3", "fluid_temperature_c": "30"}, "vacuum_ceiling_cmh2o"),
    ({**OPEN, "pump_level_cm": "60.0", "altitude_m": "35", **VACUUM}, VACUUMS),
    ({**GAS, "pump_level_cm": "115.0", "altitude_m": "3415", "vacuum_nucleus_mmhg": "520", "vacuum_cortex_mmhg": "480", "vacuum_viscoelastic_mmhg": "560"}, VACUUMS),
    ({**WARM, "pump_level_cm": "70.5", "altitude_m": "3415", "vacuum_nucleus_mmhg": "450", "vacuum_cortex_mmhg": "300", "vacuum_viscoelastic_mmhg": "550"}, VACUUMS),
    ({**SET, "pump_level_cm": "97.0", "station_pressure_hpa": "701.5", **VACUUM}, VACUUMS),
]

# The chamber
READ_EVEN = {"reading_1_flow_ml_min": "10", "reading_1_pressure_mmhg": "58", "reading_2_flow_ml_min": "40", "reading_2_pressure_mmhg": "52"}  # 60 - 0.2 Q
READ = {"reading_1_flow_ml_min": "15", "reading_1_pressure_mmhg": "51.5", "reading_2_flow_ml_min": "45", "reading_2_pressure_mmhg": "43.7"}
READ_UP = {"reading_1_flow_ml_min": "60", "reading_1_pressure_mmhg": "39", "reading_2_flow_ml_min": "20", "reading_2_pressure_mmhg": "52.6"}
FLOW_A = {**OPEN, "pump_kind": "flow", "aspiration_ml_min": "20", "infusion_resistance_mmhg_min_ml": "0.20", "aspiration_resistance_mmhg_min_ml": "4.0", "leak_ml_min": "2.0"}
FLOW_B = {**GAS, "pump_kind": "flow", "aspiration_ml_min": "32", "infusion_resistance_mmhg_min_ml": "0.35", "aspiration_resistance_mmhg_min_ml": "5.5", "leak_ml_min": "4.5"}
FLOW_C = {**SET_WARM, "pump_kind": "flow", "aspiration_ml_min": "25", "infusion_resistance_mmhg_min_ml": "0.15", "aspiration_resistance_mmhg_min_ml": "3.2", "leak_ml_min": "1.0"}
FLOW_D = {**EVEN, **READ_EVEN, "pump_kind": "flow", "aspiration_ml_min": "45", "aspiration_resistance_mmhg_min_ml": "2.5", "leak_ml_min": "3.0"}
FLOW_TIGHT = {**WARM, "pump_kind": "flow", "aspiration_ml_min": "15", "infusion_resistance_mmhg_min_ml": "0.25", "aspiration_resistance_mmhg_min_ml": "6.0"}  # no leak entered
VACUUM_A = {**SET, "pump_kind": "vacuum", "vacuum_nucleus_mmhg": "180", "infusion_resistance_mmhg_min_ml": "0.20", "aspiration_resistance_mmhg_min_ml": "4.0", "leak_ml_min": "2.5"}
VACUUM_B = {**COOL, "pump_kind": "vacuum", "vacuum_nucleus_mmhg": "350", "infusion_resistance_mmhg_min_ml": "0.30", "aspiration_resistance_mmhg_min_ml": "7.5", "leak_ml_min": "1.5"}
VACUUM_C = {**EVEN, **READ_EVEN, "pump_kind": "vacuum", "vacuum_nucleus_mmhg": "240", "aspiration_resistance_mmhg_min_ml": "3.5"}
STILL = "leak_conductance chamber_still_mmhg chamber_mmhg chamber_leak_ml_min"
FOUND = "infusion_resistance_found still_pressure_found_mmhg still_less_column_mmhg"
CASES += [
    *(({**e, **r}, FOUND) for e, r in ((OPEN, READ), (SET, READ_UP), (GAS, READ))),
    *((e, STILL + " vacuum_follows_mmhg") for e in (FLOW_A, FLOW_B, FLOW_C, FLOW_D)), (FLOW_TIGHT, "chamber_still_mmhg chamber_mmhg vacuum_follows_mmhg"),
    *((e, STILL + " chamber_aspiration_ml_min") for e in (VACUUM_A, VACUUM_B)), (VACUUM_C, "chamber_still_mmhg chamber_mmhg chamber_aspiration_ml_min"),
    # a pump at its limit, and vacuums that the air or the level of the pump changes
    ({**FLOW_A, "aspiration_ml_min": "60", "aspiration_resistance_mmhg_min_ml": "12.0", "vacuum_nucleus_mmhg": "150"}, STILL + " vacuum_follows_mmhg chamber_aspiration_ml_min"),
    ({**FLOW_B, "aspiration_ml_min": "80", "aspiration_resistance_mmhg_min_ml": "9.0", "vacuum_nucleus_mmhg": "500", "altitude_m": "3415", "pump_level_cm": "115.0"}, STILL + " vacuum_follows_mmhg chamber_aspiration_ml_min"),
    ({**VACUUM_A, "altitude_m": "5000", "vacuum_nucleus_mmhg": "450", "pump_level_cm": "120.0"}, STILL + " chamber_aspiration_ml_min"),
    *(({**e, "tip_bore_mm": "0.80", "vacuum_nucleus_mmhg": v, "altitude_m": z, "pump_level_cm": p}, "hold_bare_mn hold_mn") for e, v, z, p in ((OPEN, "650", "4150", "50.0"), (GAS, "300", "1609", "130.0"))),
    *(({**e, "tip_bore_mm": d, "vacuum_nucleus_mmhg": v}, "hold_bare_mn hold_mn") for e, d, v in ((OPEN, "0.90", "400"), (GAS, "0.70", "550"), (SET_WARM, "0.34", "125"))),
]

# Surge
SURGE_A = {**FLOW_A, "vacuum_nucleus_mmhg": "300", "eye_compliance_ul_mmhg": "1.5", "tubing_compliance_ul_mmhg": "0.08"}
SURGE_B = {**FLOW_B, "vacuum_nucleus_mmhg": "520", "eye_compliance_ul_mmhg": "1.2", "tubing_compliance_ul_mmhg": "0.06", "infusion_resistance_mmhg_min_ml": "0.15"}
SURGE_C = {**FLOW_C, "vacuum_nucleus_mmhg": "250", "eye_compliance_ul_mmhg": "4.0", "tubing_compliance_ul_mmhg": "0.12"}
SURGE_D = {**FLOW_D, "vacuum_nucleus_mmhg": "580", "eye_compliance_ul_mmhg": "2.2", "tubing_compliance_ul_mmhg": "0.14"}
FLAT_A = {**FLOW_A, "vacuum_nucleus_mmhg": "650", "eye_compliance_ul_mmhg": "0.4", "tubing_compliance_ul_mmhg": "0.15", "infusion_resistance_mmhg_min_ml": "0.60", "aspiration_resistance_mmhg_min_ml": "3.0"}
FLAT_B = {**FLOW_B, "vacuum_nucleus_mmhg": "550", "eye_compliance_ul_mmhg": "0.4", "tubing_compliance_ul_mmhg": "0.18", "aspiration_resistance_mmhg_min_ml": "2.2", "infusion_resistance_mmhg_min_ml": "0.45"}
HELD = {**VACUUM_A, "eye_compliance_ul_mmhg": "1.2", "tubing_compliance_ul_mmhg": "0.08"}
HELD_FLAT = {**VACUUM_B, "vacuum_nucleus_mmhg": "500", "aspiration_resistance_mmhg_min_ml": "2.0", "eye_compliance_ul_mmhg": "2.5", "tubing_compliance_ul_mmhg": "0.06"}
ENDS = "surge_start_mmhg surge_steady_mmhg surge_room_ul surge_shortest_ms surge_volume_left_ul surge_energy_left_uj surge_step_taken_ms"
TROUGH = "surge_trough_mmhg surge_trough_ms surge_recovered_ms surge_volume_ul"
CASES += [
    *(({**e, "surge_step_ms": step}, f"{ENDS} {TROUGH}") for e, step in ((SURGE_A, "1"), (SURGE_B, "0.5"), (SURGE_C, "0.5"), (SURGE_D, "1"))),
    *(({**e, "surge_step_ms": "0.1"}, "surge_recovered_ms surge_trough_mmhg") for e in (SURGE_A, SURGE_B, SURGE_D)),
    *(({**e, "surge_step_ms": step}, "surge_start_mmhg surge_room_ul surge_shortest_ms surge_collapsed_ms") for e, step in ((FLAT_A, "1"), (FLAT_B, "0.5"))),
    ({**SURGE_A, "altitude_m": "4150", "pump_level_cm": "20.0", "vacuum_nucleus_mmhg": "600", "surge_step_ms": "1"}, f"{ENDS} {TROUGH}"),
    ({**HELD, "surge_step_ms": "0.5"}, "surge_start_mmhg surge_steady_mmhg surge_room_ul surge_shortest_ms surge_volume_left_ul surge_energy_left_uj"),
    ({**HELD_FLAT, "surge_step_ms": "0.5"}, "surge_start_mmhg surge_room_ul surge_shortest_ms surge_collapsed_ms"),
]

# Tubes
PLAIN = {"bore_mm": "0.900", "tube_length_mm": "600", "tube_flow_ml_min": "25", "volume_ml": "15", "syringe_bore_mm": "8.65"}
PAIR = {"bore_mm": "0.603", "tube_length_mm": "25.4", "tubes_side_by_side": "2", "bore_2_mm": "1.100", "tube_length_2_mm": "1500", "tube_flow_ml_min": "22.5", "volume_ml": "250", "density_from": "water", "fluid_temperature_c": "34",
        "syringe_bore_mm": "19.05", "plunger_friction_n": "1.5"}
THICK = {"bore_mm": "0.514", "tube_length_mm": "16", "bore_2_mm": "1.400", "tube_length_2_mm": "60", "viscosity_from": "at_shear", "viscosity_mpa_s": "50", "density_kg_m3": "1005", "tube_flow_ml_min": "1.5", "volume_ml": "0.9",
         "syringe_bore_mm": "6.35", "plunger_friction_n": "2.5"}
DRIVEN = {"bore_mm": "1.100", "tube_length_mm": "2000", "driving_pressure_mmhg": "60", "volume_ml": "500", "syringe_bore_mm": "12.0"}
DRIVEN_PAIR = {"bore_mm": "0.700", "tube_length_mm": "30", "tubes_side_by_side": "3", "bore_2_mm": "0.900", "tube_length_2_mm": "1200", "driving_pressure_mmhg": "44", "fluid_temperature_c": "37", "volume_ml": "20", "density_kg_m3": "1006"}
DRIVEN_THICK = {"bore_mm": "0.838", "tube_length_mm": "38", "viscosity_from": "at_shear", "viscosity_mpa_s": "400", "driving_pressure_mmhg": "500", "volume_ml": "0.8", "density_kg_m3": "1010", "syringe_bore_mm": "4.8", "plunger_friction_n": "3"}
NEEDLE = {"needle_gauge": "27", "tube_length_mm": "13", "tube_flow_ml_min": "2.5", "volume_ml": "1", "syringe_bore_mm": "4.8", "plunger_friction_n": "1"}
NEEDLE_THICK = {"needle_gauge": "23", "tube_length_mm": "16", "viscosity_from": "at_shear", "viscosity_mpa_s": "12", "density_kg_m3": "1005", "tube_flow_ml_min": "4", "volume_ml": "2"}
FIRST = "viscosity_used_mpa_s tube_velocity_m_s tube_wall_shear tube_reynolds tube_laminar_mmhg tube_kinetic_mmhg"
TUBE = f"{FIRST} tube_drop_mmhg tube_drop_kpa volume_time_s"
TABLE = "needle_gauge_row needle_outer_mm needle_bore_mm needle_least_mm needle_least_thin_mm"
CASES += [
    (PLAIN, f"{TUBE} plunger_fluid_n plunger_n"), (PAIR, f"{TUBE} tube_second_mmhg plunger_fluid_n plunger_n"), (THICK, f"{TUBE} tube_second_mmhg plunger_fluid_n plunger_n".replace("viscosity_used_mpa_s ", "")),
    (DRIVEN, f"flow_driven_ml_min {FIRST} volume_time_s plunger_fluid_n"), (DRIVEN_PAIR, f"flow_driven_ml_min {FIRST} tube_second_mmhg volume_time_s"),
    (DRIVEN_THICK, f"flow_driven_ml_min {FIRST} volume_time_s plunger_n".replace("viscosity_used_mpa_s ", "")),
    (NEEDLE, f"bore_used_mm needle_table_ml_min {TUBE} plunger_n needle_drop_mmhg:0,5,9,12,13 needle_drop_least_mmhg:0,5,9,12,13 {TABLE}"),
    (NEEDLE_THICK, f"bore_used_mm needle_table_ml_min {TUBE} needle_drop_mmhg:1,5,8,10 needle_drop_least_mmhg:1,5,8,10 {':2,7,13 '.join(TABLE.split())}:2,7,13".replace("viscosity_used_mpa_s ", "")),
    ({"opening_mm": "0.30", "driving_pressure_mmhg": "60", "discharge_coefficient": "0.80"}, "opening_flow_ml_min"),
    ({"opening_mm": "0.50", "driving_pressure_mmhg": "350", "density_kg_m3": "1004.6"}, "opening_flow_ml_min"),
    ({**OPEN, "opening_mm": "0.25"}, "opening_flow_ml_min"),
    ({**SET_WARM, "opening_mm": "0.45", "discharge_coefficient": "0.7"}, "opening_flow_ml_min"),
]
# without a step
CASES += [(e, "surge_step_taken_ms") for e in (SURGE_A, SURGE_B, HELD, {**SURGE_C, "eye_compliance_ul_mmhg": "0.3"}, {**SURGE_D, "aspiration_resistance_mmhg_min_ml": "1.5", "eye_compliance_ul_mmhg": "0.4", "tubing_compliance_ul_mmhg": "0.02"})]


def tolerance_of(name, facts, card, x):
    """Text, and its reason."""
    if facts["tolerance"] == "half":
        return f"5e-{len(x.split('.')[1]) + 1}", facts["note"]
    if facts["tolerance"]:
        return facts["tolerance"], facts["note"] or "far above double rounding"
    if name in "surge_trough_mmhg surge_trough_ms surge_recovered_ms surge_collapsed_ms surge_volume_ul".split():
        mmhg, ms = card.near()
        step = card.given["surge_step_ms"]
        why = f"a step of {step} ms: the implicit midpoint rule with that step stays within {float(mmhg):g} mmHg and {float(ms):g} ms"
        if name.endswith("_ms"):
            return f"{float(ms):g}", why + (f"; a band of 0.9 or 1.1 for {WITHIN} mmHg shows" if name == "surge_recovered_ms" else "")
        return (f"{float(card.chamber.ce * mmhg):.2g}", why + ", times C_e") if name == "surge_volume_ul" else (f"{float(mmhg):g}", why)
    viscous = name in VISCOUS or name in BY_FLOW and "driving_pressure_mmhg" in card.given
    relative = mpf("1e-9" if viscous else "1e-12")
    return f"{float(max(abs(x), mpf(facts['least'])) * relative):.1e}", "far above double rounding"


def main():
    sheet = Sheet("card_fluids.py", ["mpmath", "numpy", "Pint", "scipy"], "Numbers on the card about fluids, from entries: `item` is the number's name, `row` which of several, from 0.", vary="item row")
    seen, count = defaultdict(set), defaultdict(int)
    for given, names in CASES:
        card = Card(given)
        for name in names.split():
            name, _, some = name.partition(":")
            facts, x = ITEMS[name], getattr(card, name)()
            many = isinstance(x, list)
            for row in ([int(i) for i in some.split(",")] if some else range(len(x))) if many else [None]:
                value = x[row] if many else x
                assert value is not None, (name, given)
                count[name] += 1
                seen[name].add(tuple(given.items()))
                tolerance, note = tolerance_of(name, facts, card, value)
                sheet.add(id=f"card-fluids-{name.replace('_', '-')}-{count[name]}", what=facts["what"], given={"item": name, **({} if row is None else {"row": str(row)}), **given}, expect=value, tolerance=tolerance, unit=facts["unit"],
                          kind="memory" if isinstance(value, str) else "derived", mark=facts["mark"], source=facts["source"], note=note)
        if "band" in card.__dict__:
            print("surge_recovered_ms, step", given["surge_step_ms"], "ms: bands of 0.9 and 1.1 mmHg move it by", *(f"{x:.2f}" for x in card.band), "tolerances")
    assert seen.keys() == ITEMS.keys(), ITEMS.keys() - seen.keys()
    assert all(len(x) >= 2 for x in seen.values()), [k for k, x in seen.items() if len(x) < 2]
    sheet.save("card_fluids.toml")


if __name__ == "__main__":
    main()
