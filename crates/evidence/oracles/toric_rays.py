"""A toric lens in a toric eye: real rays in three dimensions through every surface, beside the thin 2x2 vergence model.

Two corneal surfaces, the front one toric, a thick lens with one toric surface, a retina. The package (optiland) traces the rays; own
4x4 matrices stand beside its rays near the axis. A correction is a symmetric 2x2 matrix at the cornea, in D, written M, J0, J45: power in
meridian t is M + J0 cos 2t + J45 sin 2t. Lengths in mm, along the axis from the front vertex of the cornea. Meridians in degrees from
the package's x to its y; seen from the other side all turn the other way together, so no M, J0 or J45 depends on it.
With an argument it also writes the table of differences to that file.
"""
import sys

import numpy as np
from mpmath import cos, eye as unit, matrix, mpf, pi, sin
from optiland.materials import IdealMaterial
from optiland.optic import Optic
from optiland.rays import RealRays

from lens import N
from raytrace import CORNEA, INDEX, SQUARES, WAVE, WEIGHTS
from sheet import VALUES, Sheet, digits, quoted
from thick import cardinal, gap, lens as lens_matrix, surface

CENTRE, BACK = mpf("0.55"), mpf("6.5")  # cornea: thickness in the middle, back radius
TURNS = [0, 10, -10, 30, 90]
SPOKES = 24

# name, AL, front of the cornea flat and steep, steep meridian, lens behind the cornea, its toric side, radius of its other side, its thickness
EYES = [line.split() for line in """
with-front      23.5 7.90 7.49 90 4.55 front 14.0 1.0
with-back       23.5 7.90 7.49 90 4.55 back  14.0 1.0
against         23.5 7.90 7.50  0 4.60 front 14.0 1.0
oblique         23.5 7.90 7.50 35 4.60 back  14.0 1.0
weak-with       23.5 7.80 7.65 90 4.60 front 14.0 1.0
strong-oblique  23.5 8.10 7.30 35 4.60 front 14.0 1.0
strong-against  23.5 8.10 7.30  0 4.60 back  14.0 1.0
short-with      21.0 7.70 7.30 90 4.20 front  9.5 1.2
long-oblique    27.0 7.90 7.50 35 5.00 front 30.0 0.8
""".strip().splitlines()]


def power(m, j, at):
    """2x2 matrix of the power m + j cos 2(t - at)."""
    c, s = j * cos(at * pi / 90), j * sin(at * pi / 90)
    return matrix([[m + c, s], [s, m - c]])


def vector(s):
    """M, J0, J45."""
    return [(s[0, 0] + s[1, 1]) / 2, (s[0, 0] - s[1, 1]) / 2, (s[0, 1] + s[1, 0]) / 2]


def apart(a, b):
    """What a has more than b: M, J0, J45, as floats."""
    return np.array([float(x - y) for x, y in zip(a, b)])


def mean(a):
    return (a[0] + a[1]) / 2


class Eye:
    """Everything that is a pair is (flattest meridian of the cornea, steepest); the lens lies with its strongest on the cornea's flattest."""

    def __init__(self, name, al, flat, steep, steep_deg, at, toric, other, t, centre=CENTRE):
        self.name, self.toric = name, toric
        self.al, self.at, self.t, self.centre = mpf(al), mpf(at), mpf(t), centre
        self.steep_deg, self.other = mpf(steep_deg), mpf(other) if toric == "back" else -mpf(other)
        self.front = [mpf(flat), mpf(steep)]
        cornea = [cardinal(surface(BACK, CORNEA, N) * gap(centre) * surface(r, mpf(1), CORNEA), mpf(1), N) for r in self.front]
        self.k = [c[0] for c in cornea]
        self.c, self.c2 = mean([c[1] for c in cornea]), mean([c[2] for c in cornea]) + centre
        planes = self.t / 3, 2 * self.t / 3
        for _ in range(60):  # the principal planes need the power, the power needs the planes
            self.optical, self.d = self.al - self.c2 - (planes[1] - planes[0]), self.at - self.c2 + planes[0]
            wanted = [1000 * N / (self.optical - self.d) - 1000 * N / (1000 * N / k - self.d) for k in self.k]
            self.side = [mpf(round(1000 * self.radius(p))) / 1000 for p in wanted]  # as in raytrace.py: to a micrometre, the power taken back
            found = [cardinal(lens_matrix(self.lens(r)), N, N) for r in self.side]
            planes = mean([f[1] for f in found]), mean([f[2] for f in found]) + self.t
        self.p = [f[0] for f in found]

    def radius(self, p):
        """Of the toric side, for a power."""
        step = 1000 * (INDEX - N) if self.toric == "front" else 1000 * (N - INDEX)
        known = (1000 * (N - INDEX) if self.toric == "front" else 1000 * (INDEX - N)) / self.other
        return step * (1 - self.t / INDEX * known / 1000) / (p - known)

    def lens(self, r):
        front, back = (r, self.other) if self.toric == "front" else (self.other, r)
        return {"front_radius_mm": front, "back_radius_mm": back, "thickness_mm": self.t, "lens_index": INDEX}

    def mark(self, turn):
        return (self.steep_deg + turn) % 180

    def thin(self, turn):
        """What is still needed at the cornea: X = n/(AL - d) - P, Y = X (1 + (d/n) X)^-1, R = Y - K."""
        k = power(mean(self.k), (self.k[1] - self.k[0]) / 2, self.steep_deg)
        p = power(mean(self.p), (self.p[1] - self.p[0]) / 2, self.mark(turn))
        x = 1000 * N / (self.optical - self.d) * unit(2) - p
        return vector(x * (unit(2) + self.d / N / 1000 * x) ** -1 - k)

    def surfaces(self, turn):
        """Radii along the first and the second meridian, that first meridian, index behind, distance to the next."""
        lens = [(*self.side, self.mark(turn) + 90), (self.other, self.other, mpf(0))]
        if self.toric == "back":
            lens.reverse()
        return [(*self.front, self.steep_deg + 90, CORNEA, self.centre), (BACK, BACK, mpf(0), N, self.at - self.centre),
                (*lens[0], INDEX, self.t), (*lens[1], N, self.al - self.at - self.t)]

    def matrices(self, turn):
        """Exact near the axis, by own 4x4 matrices of (x, y, slopes) from the cornea's front principal plane."""
        q, q_slope = unit(2), matrix(2)  # of a ray that starts with a height
        b, b_slope = -self.c * unit(2), unit(2)  # of one that starts with a slope
        before = mpf(1)
        for r1, r2, first, n, t in self.surfaces(turn):
            bend = power((1 / r1 + 1 / r2) / 2, (1 / r1 - 1 / r2) / 2, first) * (before - n) / n
            q_slope, b_slope = bend * q + before / n * q_slope, bend * b + before / n * b_slope
            q, b, before = q + t * q_slope, b + t * b_slope, n
        return vector(1000 * b**-1 * q)

    def optic(self, turn):
        o = Optic()
        o.surfaces.add(index=0, thickness=np.inf)
        for i, (r1, r2, first, n, t) in enumerate(self.surfaces(turn), 1):
            # a circle along the second meridian, carried round in a circle along the first; the package's own tolerance of 1e-6 mm is too wide here
            torus = {"surface_type": "toroidal", "radius_x": float(r1), "radius_y": float(r2), "rz": float(first * pi / 180), "tol": 1e-13}
            shape = {"radius": float(r1)} if r1 == r2 else torus
            o.surfaces.add(index=i, thickness=float(t), material=IdealMaterial(n=float(n)), is_stop=i == 1, **shape)
        o.surfaces.add(index=5)
        o.set_aperture("EPD", 3.0)
        o.fields.set_type("angle")
        o.fields.add(y=0)
        o.wavelengths.add(value=WAVE, is_primary=True)
        return o

    def hits(self, o, x, y, u, v):
        """Where rays that cross the cornea's front principal plane at (x, y) with slopes (u, v) meet the retina."""
        n = 1 / np.sqrt(1 + u**2 + v**2)
        far = float(self.c)
        rays = RealRays(x, y, np.full_like(x, far), u * n, v * n, n, np.ones_like(x), np.full_like(x, WAVE))
        end = o.surfaces.trace(rays, skip=1)
        return np.array([end.x, end.y])

    def near_axis(self, turn, step=1e-4):
        """hit = A q + B slope by the package's rays close to the axis; a correction S sends q with slope -S q: A - B S = 0."""
        o, ends = self.optic(turn), []
        for i in range(4):
            start = np.zeros((4, 2))
            start[i] = [step, -step] if i < 2 else [step / 10, -step / 10]
            h = self.hits(o, *start)
            ends.append((h[:, 0] - h[:, 1]) / (start[i, 0] - start[i, 1]))
        a, b = np.array(ends[:2]).T, np.array(ends[2:]).T
        s = 1000 * np.linalg.solve(b, a)
        assert abs(s[0, 1] - s[1, 0]) < 1e-6
        return [float(x) for x in vector(s)]

    def real(self, turn, pupil):
        """The correction with the least RMS spot on the retina, the beam round and `pupil` wide at the cornea."""
        o = self.optic(turn)
        ring, spoke = np.meshgrid(pupil / 2 * np.sqrt((SQUARES + 1) / 2), 2 * np.pi * np.arange(SPOKES) / SPOKES)
        x, y = (ring * np.cos(spoke)).ravel(), (ring * np.sin(spoke)).ravel()
        weights = np.sqrt(np.tile(WEIGHTS, SPOKES * 2))

        def spot(s):
            m, j0, j45 = s / 1000
            return weights * self.hits(o, x, y, -(m + j0) * x - j45 * y, -j45 * x - (m - j0) * y).ravel()

        s = np.array([float(x) for x in self.thin(turn)])
        for _ in range(30):
            slopes = np.array([(spot(s + e) - spot(s - e)) / 2e-2 for e in 1e-2 * np.eye(3)]).T
            move = np.linalg.lstsq(slopes, -spot(s), rcond=None)[0]
            s = s + move
            if np.max(np.abs(move)) < 1e-9:
                return [float(v) for v in s]
        raise ArithmeticError("no best focus")


WHAT = """Real rays through eyes with a toric lens in a toric cornea, the lens turned, beside the thin 2x2 vergence model.
# No check values: no thin program can meet the rays. One that repeats `thin` from the inputs shows how far it is from them.
#
# thin, paraxial_rays, real_rays_05mm, real_rays_3mm: [M, J0, J45] in D of the correction still needed at the cornea (at the mean of its front
# principal planes). Power in meridian t is M + J0 cos 2t + J45 sin 2t, so a difference of (J0, J45) is twice as long as a cylinder.
# thin: X = 1000 n/(optical_length - elp) - P, Y = X (1 + (elp/(1000 n)) X)^-1, R = Y - K, n = 1.336; each plane is the mean of two meridians'.
# optical_length_mm: from the cornea's back principal plane to the retina, less the way between the lens's planes; elp_mm: from there to the lens's
# front one. corneal_mean_d, corneal_astigmatism_d: both surfaces together; lens_mean_d, lens_cylinder_d: equivalent, in aqueous.
# mark_deg: flat meridian of the lens; turn_deg: how far it is from the cornea's steep one, steep_deg.
# paraxial_rays: optic.surfaces.trace(RealRays(...), skip=1), differences over 2e-4 mm and 2e-5 of slope, then A - B S/1000 = 0; 4x4 matrices agree
# within 1e-7 D. real_rays: the least RMS spot on the retina, beam round, 0.5 or 3 mm wide at the cornea. The pupil moves M by spherical
# aberration (every section of every surface along its own meridians is a circle), which no thin program knows.
# The eye: cornea 0.55 mm of 1.376, its back a sphere of 6.5 mm; lens of 1.47, one side toric; retina_mm and lens_mm from the front vertex of the
# cornea; lens radii along the mark and across it, positive when the centre lies behind the surface."""


def case(e, turn):
    half, full = (e.real(turn, pupil) for pupil in (0.5, 3.0))
    near, thin = e.near_axis(turn), e.thin(turn)
    assert np.max(np.abs(apart(near, e.matrices(turn)))) < 1e-7
    row = lambda v, places: "[" + ", ".join(digits(mpf(x), 15) if places is None else f"{round(float(x), places) + 0.0:.{places}f}" for x in v) + "]"
    strong, weak = (e.lens(r) for r in e.side)
    given = {"optical_length_mm": e.optical, "corneal_mean_d": mean(e.k), "corneal_astigmatism_d": e.k[1] - e.k[0], "steep_deg": e.steep_deg, "elp_mm": e.d,
             "lens_mean_d": mean(e.p), "lens_cylinder_d": e.p[0] - e.p[1], "mark_deg": e.mark(turn)}
    seen = {"turn_deg": mpf(turn), "retina_mm": e.al, "lens_mm": e.at, "lens_thickness_mm": e.t, "cornea_flat_mm": e.front[0], "cornea_steep_mm": e.front[1],
            "lens_front_mark_mm": weak["front_radius_mm"], "lens_front_across_mm": strong["front_radius_mm"],
            "lens_back_mark_mm": weak["back_radius_mm"], "lens_back_across_mm": strong["back_radius_mm"]}
    name = e.name + ("-plus" if turn > 0 else "-minus" if turn < 0 else "") + f"-{abs(turn)}"
    text = [f"[[case]]\nid = {quoted(name)}", *(f"{k} = {digits(v)}" for k, v in {**given, **seen}.items()),
            f"thin = {row(thin, None)}", f"paraxial_rays = {row(near, 5)}", f"real_rays_05mm = {row(half, 5)}", f"real_rays_3mm = {row(full, 5)}"]
    return "\n".join(text) + "\n", (e, turn, thin, near, half, full)


def table(rows):
    lines = ["| eye | cornea, lens D | turned deg | thin M, J0, J45 | rays near the axis | off | as cylinder | rays 3 mm | off | sphere (M) | as cylinder |", "|---|---|---|---|---|---|---|---|---|---|---|"]
    show = lambda v: ", ".join(f"{round(float(x), 3) + 0.0:+.3f}" for x in v)
    for e, turn, thin, near, _, full in rows:
        off, wide = apart(near, thin), apart(full, thin)
        lines.append(f"| {e.name} | {float(e.k[1] - e.k[0]):.2f}, {float(e.p[0] - e.p[1]):.2f} {e.toric} | {turn:+d} | {show(thin)} | {show(near)} | {np.linalg.norm(off):.3f} | {2 * np.linalg.norm(off[1:]):.3f} | "
                     f"{show(full)} | {np.linalg.norm(wide):.3f} | {wide[0]:+.3f} | {2 * np.linalg.norm(wide[1:]):.3f} |")
    return "\n".join(lines) + "\n"


def nothing_thick():
    """Without thickness both ways are one: the rays must give what the thin model gives."""
    for line in EYES:
        e = Eye(*line[:-1], "0", centre=mpf(0))
        for turn in TURNS:
            assert max(abs(a - b) for a, b in zip(e.thin(turn), e.matrices(turn))) < mpf("1e-40")
            assert np.max(np.abs(apart(e.near_axis(turn), e.thin(turn)))) < 1e-7


if __name__ == "__main__":
    nothing_thick()
    made = [case(Eye(*line), turn) for line in EYES for turn in TURNS]
    sheet = Sheet("toric_rays.py", ["optiland", "numpy", "mpmath"], WHAT)
    (VALUES / "../oracles/toric_rays.toml").write_text("\n".join([sheet.head, *(text for text, _ in made)]))
    print(f"toric_rays.toml: {len(made)} cases")
    if len(sys.argv) > 1:
        with open(sys.argv[1], "w") as out:
            out.write(table([row for _, row in made]))
