//! The only file that calls `libm`.
//!
//! The host's own float functions differ from `libm` in the last bits of sin, atan2, exp, log and pow, so every
//! machine takes them from here. `libm` is pinned to one exact version in the workspace. What is long is not inlined: a
//! device has room for one of each.

use core::f64::consts::PI;

/// Square root, correctly rounded. Negative arguments are the caller's business to refuse.
pub(crate) fn sqrt(x: f64) -> f64 {
    libm::sqrt(x)
}

/// x to the power y.
pub(crate) fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Nearest whole number, halves away from zero.
pub(crate) fn round(x: f64) -> f64 {
    libm::round(x)
}

/// e to the power x.
pub(crate) fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Error function.
pub(crate) fn erf(x: f64) -> f64 {
    libm::erf(x)
}

/// Largest whole number not above x.
pub(crate) fn floor(x: f64) -> f64 {
    libm::floor(x)
}

/// Smallest whole number not below x.
pub(crate) fn ceil(x: f64) -> f64 {
    libm::ceil(x)
}

/// x * x, written once so that squares read like the paper's.
pub(crate) fn square(x: f64) -> f64 {
    x * x
}

/// What is left of an angle, not negative, after as many whole turns as it has, which are few: exact, as the quotient's
/// remainder is, whose routine would cost a device 3 kB.
pub(crate) fn within_turn(angle: f64, turn: f64) -> f64 {
    let mut left = angle;
    while left >= turn {
        left -= turn;
    }
    left
}

/// An angle in degrees, or a slope per degree, in radians.
pub(crate) fn radians(degrees: f64) -> f64 {
    degrees * (PI / 180.0)
}

/// An angle as whole right angles, 0 to 3 of a turn, and what is left, at most 45 degrees either way.
///
/// Both are exact in degrees, where they would not be in radians; and no routine for large angles is needed, whose tables
/// take 700 bytes of a small stack.
fn quarters(degrees: f64) -> (u8, f64) {
    let quarters = round(degrees / 90.0);
    let turns = floor(quarters / 4.0);
    ((quarters - 4.0 * turns) as u8, radians(degrees - 90.0 * quarters))
}

/// The upper half of a number without its sign, by which `libm` distinguishes small angles from others.
#[inline(always)]
fn high(x: f64) -> u32 {
    (x.to_bits() >> 32) as u32 & 0x7fff_ffff
}

/// Sine, cosine and tangent of what is left of a right angle, which is small: where the compiler sees it, it leaves out the
/// 3 kB that `libm` has for angles of any size.
#[inline(never)]
fn sin(rest: f64) -> f64 {
    match high(rest) {
        ..0x3e50_0000 => rest,
        0x3e50_0000..=0x3fe9_21fb => libm::sin(rest),
        _ => 0.0,
    }
}

#[inline(never)]
fn cos(rest: f64) -> f64 {
    match high(rest) {
        ..0x3e46_a09e => 1.0,
        0x3e46_a09e..=0x3fe9_21fb => libm::cos(rest),
        _ => 0.0,
    }
}

#[inline(never)]
fn tan(rest: f64) -> f64 {
    match high(rest) {
        ..0x3e40_0000 => rest,
        0x3e40_0000..=0x3fe9_21fb => libm::tan(rest),
        _ => 0.0,
    }
}

/// Sine of an angle in degrees.
#[inline(never)]
pub(crate) fn sin_deg(degrees: f64) -> f64 {
    match quarters(degrees) {
        (0, rest) => sin(rest),
        (1, rest) => cos(rest),
        (2, rest) => -sin(rest),
        (_, rest) => -cos(rest),
    }
}

/// Cosine of an angle in degrees.
#[inline(never)]
pub(crate) fn cos_deg(degrees: f64) -> f64 {
    match quarters(degrees) {
        (0, rest) => cos(rest),
        (1, rest) => -sin(rest),
        (2, rest) => -cos(rest),
        (_, rest) => sin(rest),
    }
}

/// Tangent of an angle in degrees.
#[inline(never)]
pub(crate) fn tan_deg(degrees: f64) -> f64 {
    match quarters(degrees) {
        (0 | 2, rest) => tan(rest),
        (_, rest) => -1.0 / tan(rest),
    }
}

/// Direction of the vector (x, y) in degrees, in (-180, 180]. The zero vector gives 0: ask for its length first.
#[inline(never)]
pub(crate) fn atan2_deg(y: f64, x: f64) -> f64 {
    libm::atan2(y, x) * (180.0 / PI)
}

/// The ratio of a circle's edge to its diameter.
pub(crate) const CIRCLE: f64 = PI;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn right_angles_are_exact() {
        for (turns, sin, cos) in
            [(0.0, 0.0, 1.0), (1.0, 1.0, 0.0), (2.0, 0.0, -1.0), (3.0, -1.0, 0.0), (5.0, 1.0, 0.0), (-1.0, -1.0, 0.0)]
        {
            assert_eq!((sin_deg(90.0 * turns), cos_deg(90.0 * turns)), (sin, cos));
        }
        assert_eq!(tan_deg(180.0), 0.0);
    }

    /// To the last bit, and at both ends: what is left out is never needed.
    #[test]
    fn small_angles_are_those_of_libm() {
        let edges = [0.0, 1e-300, f64::from_bits(0x3e46_a09e << 32), PI / 4.0, radians(45.0)];
        for angle in (0..100_000).map(|n| f64::from(n) * (PI / 400_000.0)).chain(edges).flat_map(|a| [a, -a]) {
            let bits = |values: [f64; 3]| values.map(f64::to_bits);
            let libm = bits([libm::sin(angle), libm::cos(angle), libm::tan(angle)]);
            assert_eq!(bits([sin(angle), cos(angle), tan(angle)]), libm, "{angle}");
        }
        assert!((0..=4000).map(|n| f64::from(n) / 8.0).all(|degrees| high(quarters(degrees).1) <= 0x3fe9_21fb));
    }

    /// Against the same function of the angle in radians, whose own error is a few units in its last place.
    #[test]
    #[expect(clippy::disallowed_methods, reason = "an outside check of the pinned functions")]
    fn they_are_the_functions_they_are_called() {
        for tenth in -7200..7200 {
            let degrees = f64::from(tenth) / 10.0;
            let radians = degrees.to_radians();
            assert!((sin_deg(degrees) - radians.sin()).abs() < 5e-15, "{degrees}");
            assert!((cos_deg(degrees) - radians.cos()).abs() < 5e-15, "{degrees}");
            if (degrees / 90.0).fract().abs() < 0.9 && (degrees / 90.0).round() % 2.0 == 0.0 {
                assert!((tan_deg(degrees) - radians.tan()).abs() < 1e-13, "{degrees}");
            }
        }
        assert!((tan_deg(60.0) - 3f64.sqrt()).abs() < 1e-15 && (tan_deg(135.0) + 1.0).abs() < 1e-15);
    }
}
