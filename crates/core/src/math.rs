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

/// Sine of an angle in degrees.
#[inline(never)]
pub(crate) fn sin_deg(degrees: f64) -> f64 {
    libm::sin(radians(degrees))
}

/// Cosine of an angle in degrees.
#[inline(never)]
pub(crate) fn cos_deg(degrees: f64) -> f64 {
    libm::cos(radians(degrees))
}

/// Tangent of an angle in degrees.
pub(crate) fn tan_deg(degrees: f64) -> f64 {
    libm::tan(radians(degrees))
}

/// Direction of the vector (x, y) in degrees, in (-180, 180]. The zero vector gives 0: ask for its length first.
#[inline(never)]
pub(crate) fn atan2_deg(y: f64, x: f64) -> f64 {
    libm::atan2(y, x) * (180.0 / PI)
}

/// The ratio of a circle's edge to its diameter.
pub(crate) const CIRCLE: f64 = PI;
