//! When a computed number agrees with a printed one.
//!
//! A comparator that can be fooled makes every check worthless, so these are tested on numbers that must not pass.

/// Decimal noise: a difference of exactly half a printed place (3.125 against 3.13) may come out a few f64 steps
/// larger. So much of the tolerance, and no more, is added to it.
const NOISE: f64 = 1e-9;

/// Whether the difference is within the tolerance. Infinity and NaN, on either side, never agree with anything.
#[must_use]
pub fn agrees(computed: f64, expected: f64, tolerance: f64) -> bool {
    computed.is_finite()
        && expected.is_finite()
        && tolerance.is_finite()
        && (computed - expected).abs() <= tolerance * (1.0 + NOISE)
}

/// The same for a meridian in degrees, where 180 is 0 again.
#[must_use]
pub fn axis_agrees(computed: f64, expected: f64, tolerance: f64) -> bool {
    let apart = (computed - expected).rem_euclid(180.0);
    agrees(apart.min(180.0 - apart), 0.0, tolerance)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn just_inside_passes_and_twice_the_tolerance_does_not() {
        assert!(agrees(23.344, 23.34, 0.005));
        assert!(agrees(23.336, 23.34, 0.005));
        assert!(!agrees(23.35, 23.34, 0.005));
        assert!(!agrees(23.33, 23.34, 0.005));
    }

    #[test]
    fn just_outside_does_not_pass() {
        assert!(!agrees(23.345_000_1, 23.34, 0.005));
        assert!(!agrees(23.334_999_9, 23.34, 0.005));
    }

    #[test]
    fn exactly_half_a_place_passes_whatever_its_decimal_noise() {
        for (computed, expected) in [(3.125, 3.13), (3.135, 3.13), (0.285, 0.29), (1.005, 1.0), (-18.755, -18.75)] {
            assert!(agrees(computed, expected, 0.005), "{computed} {expected}");
        }
    }

    #[test]
    fn a_flipped_sign_does_not_pass() {
        assert!(!agrees(-8.9286, 8.9286, 0.000_05));
        assert!(!agrees(0.01, -0.01, 0.005));
    }

    #[test]
    fn what_is_not_a_number_never_passes() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(!agrees(bad, 1.0, 0.5));
            assert!(!agrees(1.0, bad, 0.5));
            assert!(!agrees(bad, bad, 0.5));
            assert!(!agrees(1.0, 1.0, bad));
            assert!(!axis_agrees(bad, 90.0, 0.5));
            assert!(!axis_agrees(90.0, bad, 0.5));
        }
    }

    #[test]
    fn an_axis_is_compared_around_the_circle() {
        assert!(axis_agrees(179.8, 0.0, 0.5));
        assert!(axis_agrees(0.2, 180.0, 0.5));
        assert!(axis_agrees(-10.0, 170.0, 0.5));
        assert!(!axis_agrees(90.0, 0.0, 0.5));
        assert!(!axis_agrees(1.0, 180.0, 0.5));
        assert!(!axis_agrees(135.0, 45.0, 0.5));
    }
}
