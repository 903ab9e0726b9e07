"""The same eye by three ways: a thin skeleton, exact paraxial optics, real rays through every surface.

Two corneal surfaces, a thick lens, a retina. The package (optiland) traces both the paraxial and the real rays; own 2x2 matrices at
50 digits stand beside its paraxial numbers. Lengths in mm from the front vertex of the cornea, powers in D. With an argument it
also writes the table of differences to that file.
"""
import sys
from itertools import product
from statistics import median

import numpy as np
from mpmath import matrix, mpf
from optiland.materials import IdealMaterial
from optiland.optic import Optic
from optiland.rays import RealRays

from lens import N, refraction, to_spectacles
from sheet import Sheet, digits
from thick import cardinal, gap, lens as lens_matrix, surface, textbook

CORNEA, CENTRE, RATIO = mpf("1.376"), mpf("0.5"), mpf("6.40") / mpf("7.70")
INDEX, VERTEX, PUPIL = mpf("1.47"), mpf(12), mpf(3)
WAVE = 0.546  # the indices are fixed numbers, so the wavelength bends nothing
SQUARES, WEIGHTS = np.polynomial.legendre.leggauss(8)
HEIGHTS = float(PUPIL) / 2 * np.sqrt((SQUARES + 1) / 2)  # equal weight to equal areas of the pupil


class Eye:
    def __init__(self, al, r, at, p, shape="biconvex", t=None):
        """p: the power wanted in the eye; the radii are rounded to a micrometre and the power taken back from them."""
        self.al, self.r, self.at, self.shape, self.wanted = mpf(al), mpf(r), mpf(at), shape, mpf(p)
        self.named = ("biconvex" if self.wanted > 0 else "biconcave") if shape == "biconvex" else f"plano-convex ({shape})"
        self.back = mpf(digits(self.r * RATIO, 6))
        self.t = mpf(t) if t else mpf("0.5") + mpf("0.02") * max(self.wanted, 0)
        f, b = self.radii()
        self.lens = {"front_radius_mm": f, "back_radius_mm": b, "thickness_mm": self.t, "lens_index": INDEX}
        self.p, self.h, self.h2 = cardinal(lens_matrix(self.lens), N, N)
        self.h2 += self.t  # both behind the front vertex of the lens
        assert abs(self.p - textbook(self.lens)) < mpf("1e-40") and abs(self.p - self.wanted) < mpf("0.01")
        cornea = surface(self.back, CORNEA, N) * gap(CENTRE) * surface(self.r, mpf(1), CORNEA)
        self.kc, self.c, self.c2 = cardinal(cornea, mpf(1), N)
        self.c2 += CENTRE  # both behind the front vertex of the cornea: less than 0

    def radii(self):
        step = 1000 * (INDEX - N)
        micro = lambda r: mpf(round(r * 1000)) / 1000
        if self.shape == "convex side front":
            return micro(step / self.wanted), mpf(0)
        if self.shape == "convex side back":
            return mpf(0), micro(-step / self.wanted)
        r = 2 * step / self.wanted
        for _ in range(50):  # P = 2 s/r - (t/n) s2/r2/1000, for r
            r = (2 * step - self.t / INDEX * step**2 / r / 1000) / self.wanted
        return micro(r), micro(-r)

    def surfaces(self):
        """Radius, index behind, distance to the next."""
        return [(self.r, CORNEA, CENTRE), (self.back, N, self.at - CENTRE), (self.lens["front_radius_mm"], INDEX, self.t),
                (self.lens["back_radius_mm"], N, self.al - self.at - self.t)]

    def matrices(self):
        """Exact paraxial, by own matrices."""
        seen = gap(VERTEX)
        before = mpf(1)
        for r, n, t in self.surfaces():
            seen, before = gap(t) * surface(r, before, n) * seen, n
        return 1000 * seen[0, 0] / seen[0, 1]

    def thin(self, plane, kc=None, shortened=False, from_vertex=False):
        """The skeleton, the lens at `plane` behind its own front vertex. The eye's lengths count from the corneal H', the distance
        to the spectacles from its H, or both from the front vertex of the cornea."""
        c, c2 = (mpf(0), mpf(0)) if from_vertex else (self.c, self.c2)
        al = self.al - c2 - (self.h2 - self.h if shortened else 0)
        return to_spectacles(refraction(al, self.at - c2 + plane, self.kc if kc is None else kc, self.p), VERTEX + c)

    def optic(self, q):
        o = Optic()
        o.surfaces.add(index=0, thickness=np.inf)
        for i, (r, n, t) in enumerate(self.surfaces(), 1):
            o.surfaces.add(index=i, radius=float(r) if r else np.inf, conic=q if i == 1 else 0.0, thickness=float(t), material=IdealMaterial(n=float(n)), is_stop=i == 1)
        o.surfaces.add(index=5)
        o.set_aperture("EPD", float(PUPIL))
        o.fields.set_type("angle")
        o.fields.add(y=0)
        o.wavelengths.add(value=WAVE, is_primary=True)
        return o

    def package(self):
        """Exact paraxial, by the package: from the spectacle plane to the retina."""
        trace = self.optic(0.0).paraxial.trace_generic
        high, steep = (float(trace(y, u, -float(VERTEX), WAVE)[0][-1][0]) for y, u in ((1.0, 0.0), (0.0, 1.0)))
        return 1000 * high / steep

    def real(self, q, heights=HEIGHTS, weights=WEIGHTS):
        """The object vergence at the cornea that makes the RMS spot on the retina least, as spectacle refraction."""
        o = self.optic(q)
        nothing = np.zeros_like(heights)

        def spot(rc):
            # rays that leave the plane touching the cornea at these heights, on the way to or from the point 1000/rc
            slope = heights * rc / 1000
            n = 1 / np.sqrt(1 + slope**2)
            rays = RealRays(nothing, heights, nothing, nothing, -slope * n, n, np.ones_like(heights), np.full_like(heights, WAVE))
            return o.surfaces.trace(rays, skip=1).y

        rc, step = 0.0, 1e-3
        for _ in range(20):
            y = spot(rc)
            j = (spot(rc + step) - spot(rc - step)) / (2 * step)
            move = -np.sum(weights * j * y) / np.sum(weights * j * j)
            rc += move
            if abs(move) < 1e-10:
                return rc / (1 + float(VERTEX) * rc / 1000)
        raise ArithmeticError("no best focus")

    def front_of_wave(self, q):
        """The same with the defocus that fits the wavefront best (least squares over the pupil) instead of the spot."""
        u = (SQUARES + 1) / 2
        zones = np.array([self.real(q, np.array([h]), np.array([1.0])) for h in HEIGHTS])
        zones = zones / (1 - float(VERTEX) * zones / 1000)
        rc = np.sum(WEIGHTS * u * (1 - u) * zones) / np.sum(WEIGHTS * u * (1 - u))
        return rc / (1 + float(VERTEX) * rc / 1000)


def wanted(al, r, at):
    """The half dioptre nearest to plain sight by the thin skeleton, cornea and lens at their vertices; never flatter than 2 D."""
    r = mpf(r)
    kc = 376 / r - 40 / (r * RATIO)
    d = mpf(at) + mpf("0.4")
    p = 1000 * N / (mpf(al) - d) - 1000 * N / (1000 * N / kc - d)
    half = mpf(round(2 * p)) / 2
    return half if abs(half) >= 2 else mpf(2 if p >= 0 else -2)


def eyes():
    grid = [Eye(al, r, at, wanted(al, r, at)) for al, r, at in product("20 21 22 23.5 25 26.5 28 30 32".split(), "7.0 7.7 8.4".split(), "4.2 5.0".split())]
    named = [Eye("23.9", "7.7", "4.6", 20, t="0.9")]
    named += [Eye(al, "7.7", "4.6", p, shape) for al, p in (("23.9", 20), ("21.5", 30)) for shape in ("convex side front", "convex side back")]
    return grid, named


def write(sheet, rays, all_eyes, worst):
    for i, e in enumerate(all_eyes, 1):
        ours, theirs = e.matrices(), e.package()
        assert abs(ours - theirs) < 1e-10, (i, ours - theirs)
        assert abs(e.thin(e.h, shortened=True) - ours) < mpf("1e-40")
        given = {"corneal_power_d": digits(e.kc), "axial_length_mm": digits(e.al - e.c2), "vertex_position_mm": digits(e.at - e.c2), **{k: digits(v) for k, v in e.lens.items()},
                 "vertex_mm": digits(VERTEX + e.c), "retina_mm": digits(e.al), "lens_mm": digits(e.at), "cornea_front_mm": digits(e.r), "cornea_back_mm": digits(e.back)}
        where = ("cornea 0.5 mm of 1.376 with radii cornea_front_mm and cornea_back_mm, retina retina_mm and lens lens_mm behind its front vertex, spectacles 12 mm before it; "
                 "as a thin cornea of the same power: lengths in the eye from its back principal plane, vertex_mm from its front one, so nothing is lost")
        sheet.add(id=f"traced-{i:02}-thick", what=f"whole eye of four surfaces, {e.named} lens, paraxial: Rx", given=given, expect=f"{theirs:.11f}", tolerance="1e-9", unit="D",
                  kind="reference-library", mark="two", source="optiland, optic.paraxial.trace_generic(1, 0, -12, 0.546) and (0, 1, -12, 0.546): 1000 times the ratio of the heights on the retina; ray-transfer matrices at 50 digits agree within 1e-10",
                  note=f"{where}; the tolerance is far above double rounding, far below any use")
        for q, name in ((0.0, "real"), (-0.26, "conic-real")):
            most = worst[q, e.shape]
            rays.add(id=f"traced-{i:02}-{name}", what=f"whole eye of four surfaces, {e.named} lens, real rays: Rx", given={**given, "pupil_mm": digits(PUPIL), "q": str(q)},
                      expect=f"{e.real(q):.5f}", tolerance=most, unit="D", kind="reference-library", mark="two",
                      source="optiland, optic.surfaces.trace(RealRays(...), skip=1): the object vergence with the least RMS spot on the retina, beam 3 mm wide at the cornea, at 12 mm",
                      note=f"not for a thin or paraxial program to reproduce: the tolerance is the most that spherical aberration moves best focus from paraxial over the eyes of this file with such a lens and front corneal Q {q}, rounded up to 0.05 D; {where}")


ROWS = {
    "thin, true K, from the corneal planes: lens at its front principal plane, length less the way between its planes": lambda e: e.thin(e.h, shortened=True),
    "thin, true K, from the corneal planes: lens at its front vertex": lambda e: e.thin(mpf(0)),
    "thin, true K, from the corneal planes: lens at its centre": lambda e: e.thin(e.t / 2),
    "thin, true K, from the corneal planes: lens at its back vertex": lambda e: e.thin(e.t),
    "thin, true K, from the corneal vertex: lens at its front vertex": lambda e: e.thin(mpf(0), from_vertex=True),
    "thin, true K, from the corneal vertex: lens at its centre": lambda e: e.thin(e.t / 2, from_vertex=True),
    "thin, true K, from the corneal vertex: lens at its back vertex": lambda e: e.thin(e.t, from_vertex=True),
    "thin, K from 1.3375, from the corneal vertex: lens at its centre": lambda e: e.thin(e.t / 2, kc=mpf("337.5") / e.r, from_vertex=True),
    "real rays, 3 mm, cornea spherical, least RMS spot": lambda e: e.real(0.0),
    "real rays, 3 mm, cornea Q -0.26, least RMS spot": lambda e: e.real(-0.26),
    "real rays, 3 mm, cornea spherical, best-fitting wavefront": lambda e: e.front_of_wave(0.0),
    "real rays, 3 mm, cornea Q -0.26, best-fitting wavefront": lambda e: e.front_of_wave(-0.26),
}


def table(grid, named):
    shown = lambda x: "0" if abs(x) < 1e-9 else f"{x:+.3f}"
    lines = ["| less exact paraxial, D at 12 mm | least | median | most | worst eye (AL, r, P; lens behind cornea) | 20 D lens |", "|---|---|---|---|---|---|"]
    for name, way in ROWS.items():
        off = [float(way(e) - e.matrices()) for e in grid]
        e, most = max(zip(grid, off), key=lambda pair: abs(pair[1]))
        place = f"{float(e.al):g} mm, {float(e.r):g} mm, {float(e.wanted):g} D; {float(e.at):g} mm" if abs(most) > 1e-9 else "all"
        lines.append(f"| {name} | " + " | ".join(map(shown, (min(off), median(off), max(off)))) + f" | {place} | {shown(float(way(named[0]) - named[0].matrices()))} |")
    for a, b in ((1, 2), (3, 4)):
        f, k = float(named[a].matrices()), float(named[b].matrices())
        lines.append(f"\nplano-convex {float(named[a].wanted):g} D at one front vertex: convex side front {f:+.3f}, back {k:+.3f} D, about their middle {abs(k - f) / 2:.3f} D")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    grid, named = eyes()
    worst = {}
    for q, shape in product((0.0, -0.26), ("biconvex", "convex side front", "convex side back")):
        most = max(abs(e.real(q) - float(e.matrices())) for e in grid + named if e.shape == shape)
        worst[q, shape] = f"{np.ceil(most * 20) / 20:.2f}"
        print(f"Q {q}, {shape}: {most:.4f} D")
    sheet = Sheet("raytrace.py", ["optiland", "numpy", "mpmath"], "An eye of four surfaces and a retina: paraxial and real rays by a general optics package. A radius is positive when its centre lies behind the surface; a radius of 0 means plane.")
    rays = Sheet("raytrace.py", ["optiland", "numpy", "mpmath"], "Real rays through the eyes of values/raytrace.toml. No check values: no thin or paraxial program can meet them; how far it is from them is shown in crates/core/LENS.md.", vary="q")
    write(sheet, rays, grid + named, worst)
    sheet.save("raytrace.toml")
    rays.save("../oracles/real_rays.toml")
    if len(sys.argv) > 1:
        with open(sys.argv[1], "w") as out:
            out.write(table(grid, named))
