"""A kept population of statistical eyes, drawn from a published eye model by the package that carries it.

SyntEyes: Rozema and others, Invest Ophthalmol Vis Sci 2016;57:683. Its parameters are in visisipy (MIT), whose own
generator draws the eyes. What is worked out here is only what a keratometer would say of the front of each cornea.

    pip install visisipy==0.5.0 numpy==2.4.6
    python population.py    # ../../../tests/population/eyes.csv
"""
import platform
from importlib.metadata import version
from math import factorial
from pathlib import Path

import numpy as np
from visisipy.synteyes import generate_synteyes
from visisipy.synteyes.synteyes import load_synteyes_model_data, zernike_index

SEED = 20160683
EYES = 4000
INDEX = 1.3375
RING = 1.5  # radius of the keratometer's ring, mm: common practice, no source
AZIMUTHS = np.arange(64) * 2 * np.pi / 64
ORDER = zernike_index(8)
OUT = Path(__file__).resolve().parents[3] / "tests" / "population" / "eyes.csv"
HEAD = "id,eye,axial_length_mm,k1_d,k2_d,keratometric_index,acd_mm,lens_thickness_mm,target_d,a_constant"


def radial_slopes(n, m, rho, theta):
    """d/d(rho) of the Zernike polynomial with a mean square of 1."""
    a = abs(m)
    slope = sum(
        (-1) ** s * factorial(n - s) / (factorial(s) * factorial((n + a) // 2 - s) * factorial((n - a) // 2 - s))
        * (n - 2 * s) * rho ** max(n - 2 * s - 1, 0)
        for s in range((n - a) // 2 + 1)
    )
    norm = np.sqrt((n + 1) * (1 if m == 0 else 2))
    return norm * slope * (np.cos(a * theta) if m >= 0 else np.sin(a * theta))


def slopes(norm_radius):
    """Radial slope of each term on the ring, a row an azimuth."""
    return np.array([radial_slopes(n, m, RING / norm_radius, AZIMUTHS) / norm_radius for n, m in ORDER]).T


def keratometry(coefficients, norm_radius):
    """Flat and steep power, D: the sagittal curvature on the ring, its mean and its part of two periods."""
    slope = slopes(norm_radius) @ coefficients
    power = 1000 * (INDEX - 1) * slope / np.sqrt(1 + slope**2) / RING
    mean = power.mean()
    half = 2 * np.hypot((power * np.cos(2 * AZIMUTHS)).mean(), (power * np.sin(2 * AZIMUTHS)).mean())
    return mean - half, mean + half


def mean_k(latent, data):
    """Mean K of the cornea that these twelve corneal numbers of the model make."""
    terms = 0.001 * latent @ data.conv_ec_orig.T + data.avg_ec_orig[0]
    return np.mean(keratometry(terms[: len(ORDER)], 3.25))


def model():
    """Mean and SD of the model's own distribution: its two normal parts as one, no eye drawn; K to first order."""
    data = load_synteyes_model_data()
    weights = data.weights_orig / data.weights_orig.sum()
    parts = list(zip(weights, data.mu_orig, data.cov_orig, strict=True))
    mean = weights @ data.mu_orig
    cov = sum(w * (c + np.outer(m - mean, m - mean)) for w, m, c in parts)
    depth, lens, length = np.eye(18)[:3]
    cct, cct_0, cornea = np.zeros(18), data.avg_ec_orig[0, 90], np.zeros(18)
    cct[6:] = 0.001 * data.conv_ec_orig[90]
    cornea[6:] = [(mean_k(mean[6:] + d, data) - mean_k(mean[6:] - d, data)) / 2 for d in np.eye(12)]
    k_0 = mean_k(mean[6:], data) - cornea @ mean
    rows = {
        "axial length, mm": (length, 0.0),
        "mean K, D": (cornea, k_0),
        "chamber depth from the epithelium, mm": (depth + cct, cct_0),
        "lens thickness, mm": (lens, 0.0),
        "corneal thickness, mm": (cct, cct_0),
    }
    return {name: (row @ mean + shift, np.sqrt(row @ cov @ row)) for name, (row, shift) in rows.items()}


def main():
    print("python", platform.python_version(), *(f"{p} {version(p)}" for p in ("visisipy", "numpy")))
    print(f"visisipy.synteyes.generate_synteyes({EYES}, rng=numpy.random.default_rng({SEED}))")
    eyes = generate_synteyes(EYES, rng=np.random.default_rng(SEED))
    # the model draws one of its two normal parts after the other: mixed, so that any run of rows is a sample
    order = np.random.default_rng(SEED + 1).permutation(EYES)
    lines, drawn = [HEAD], []
    for i, eye in enumerate((eyes[int(j)] for j in order), start=1):
        b, front = eye.biometry, eye.cornea.anterior_zernikes
        terms = np.array([front[front.to_noll(n, m)] for n, m in ORDER])
        k1, k2 = keratometry(terms, eye.cornea.anterior_norm_diameter / 2)
        acd = b.anterior_chamber_depth + b.cornea_thickness
        al, flat, steep, depth, lt = (f"{x:.2f}" for x in (b.axial_length, k1, k2, acd, b.lens_thickness))
        lines.append(f"s{i:04},right,{al},{flat},{steep},{INDEX},{depth},{lt},0.00,118.40")
        drawn.append((b.axial_length, (k1 + k2) / 2, acd, b.lens_thickness, b.cornea_thickness, k2 - k1))
    OUT.write_text("\n".join(lines) + "\n")
    print(f"{OUT.name}: {EYES} eyes")
    for name, (mean, sd) in model().items():
        print(f"model: {name}: mean {mean:.4f} SD {sd:.4f}")
    drawn = np.array(drawn)
    for name, x in zip("AL K ACD LT CCT K2-K1".split(), drawn.T, strict=True):
        print(f"drawn: {name}: mean {x.mean():.4f} SD {x.std(ddof=1):.4f} from {x.min():.3f} to {x.max():.3f}")
    print("drawn: correlations of AL, K, ACD, LT")
    print(np.round(np.corrcoef(drawn[:, :4].T), 2))


if __name__ == "__main__":
    main()
