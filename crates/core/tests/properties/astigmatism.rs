//! Power vectors, the incision and the toric lens.

use ocellus_core::astigmatism::cornea::induced;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::astigmatism::toric::{ToricLens, residual, working};
use ocellus_core::lens::vergence::ThinEye;
use ocellus_core::quantity::{Axis, Flattening, Refraction, Site, Vertex};
use proptest::prelude::*;

use crate::close;

fn axis(degrees: f64) -> Axis {
    Axis::from_deg(degrees.rem_euclid(180.0)).unwrap()
}

/// The sine of an angle in degrees from the standard library: a road that is not the core's.
#[allow(clippy::disallowed_methods, reason = "an outside oracle, not a number that is shown")]
fn sine(degrees: f64) -> f64 {
    degrees.to_radians().sin()
}

fn same(a: PowerVector, b: PowerVector) -> bool {
    close(a.m, b.m) && close(a.j0, b.j0) && close(a.j45, b.j45)
}

prop_compose! {
    fn refractions()(sphere in -20.0..20.0, cylinder in -10.0..10.0, degrees in 0.0..180.0) -> SpheroCylinder {
        SpheroCylinder::new(sphere, cylinder, Some(axis(degrees)))
    }
}

prop_compose! {
    fn vectors()(m in -20.0..60.0, j0 in -5.0..5.0, j45 in -5.0..5.0) -> PowerVector {
        PowerVector { m, j0, j45 }
    }
}

prop_compose! {
    fn thin_eyes()(al in 20.0..30.0, kc in 38.0..48.0, elp in 3.5..7.0) -> ThinEye {
        ThinEye::new(al, kc, elp)
    }
}

proptest! {
    /// To a sphero-cylinder and back.
    #[test]
    fn vectors_go_round(vector in vectors()) {
        let rx = vector.minus_cylinder();
        prop_assert!(same(PowerVector::of(rx), vector));
        prop_assert!(rx.cylinder <= 0.0 && rx.axis.is_none_or(|a| (0.0..180.0).contains(&a.deg())));
    }

    /// Both ways of writing a refraction are one power, and writing it twice over gives it back.
    #[test]
    fn transposition_changes_nothing(rx in refractions()) {
        prop_assert!(same(PowerVector::of(rx), PowerVector::of(rx.transposed())));
        let back = rx.transposed().transposed();
        prop_assert!(close(back.sphere, rx.sphere) && back.cylinder == rx.cylinder);
    }

    /// A turned lens has a turned axis, and the power in a meridian turns with it.
    #[test]
    fn turning_turns_the_axis(rx in refractions(), by in 0.0..180.0f64, meridian in 0.0..180.0) {
        let turned = SpheroCylinder { axis: rx.axis.map(|a| axis(a.deg() + by)), ..rx };
        let (a, b) = (PowerVector::of(rx), PowerVector::of(turned));
        prop_assert!(close(a.m, b.m) && (a.cylinder() - b.cylinder()).abs() < 1e-12);
        prop_assert!((a.in_meridian(axis(meridian)) - b.in_meridian(axis(meridian + by))).abs() < 1e-11);
        if let (true, Some(from), Some(to)) = (rx.cylinder.abs() > 1e-3, a.strongest(), b.strongest()) {
            let apart = (from.deg() + by - to.deg()).rem_euclid(180.0);
            prop_assert!(apart.min(180.0 - apart) < 1e-9, "{apart}");
        }
    }

    /// The order in which powers are added does not matter, and taking away undoes adding.
    #[test]
    fn sums_commute(a in vectors(), b in vectors()) {
        prop_assert_eq!(a.plus(b), b.plus(a));
        prop_assert!(same(a.plus(b).minus(b), a));
    }

    /// Two equal and opposite cylinders turned by p against each other leave 2 sin p of either.
    #[test]
    fn crossed_cylinders_leave_twice_the_sine(n in 0.25..8.0, at in 0.0..180.0, p in -90.0..90.0f64) {
        let left = PowerVector::strongest_along(0.0, n, axis(at))
            .minus(PowerVector::strongest_along(0.0, n, axis(at + p)));
        prop_assert!((left.cylinder() - 2.0 * n * sine(p).abs()).abs() < 1e-11);
    }

    /// No power has an axis that is not a number, however small its cylinder.
    #[test]
    fn an_axis_is_always_a_number(
        m in any::<f64>(), j0 in prop_oneof![any::<f64>(), Just(0.0), -1e-9..1e-9],
        j45 in prop_oneof![any::<f64>(), Just(0.0), -1e-9..1e-9],
    ) {
        let vector = PowerVector { m, j0, j45 };
        for axis in [vector.strongest(), vector.minus_cylinder().axis, vector.minus_cylinder().transposed().axis] {
            prop_assert!(axis.is_none_or(|a| (0.0..180.0).contains(&a.deg())));
        }
    }

    /// An incision across and one on the same side of a diameter: opposite sites do the same, crossed ones undo it.
    #[test]
    fn incisions(site in 0.0..180.0, flattening in 0.0..3.0) {
        let at = |degrees: f64| {
            induced(Site::from_deg(degrees.rem_euclid(360.0)).unwrap(), Flattening::from_d(flattening).unwrap())
        };
        prop_assert!(same(at(site), at(site + 180.0)));
        prop_assert!(same(at(site).plus(at(site + 90.0)), PowerVector::default()));
        prop_assert!(close(at(site).in_meridian(axis(site)), -flattening / 2.0));
    }

    /// The lens a cornea needs, along its steep meridian, leaves nothing.
    #[test]
    fn a_perfect_match_leaves_nothing(eye in thin_eyes(), n in 0.0..6.0, steep in 0.0..180.0) {
        let (target, vertex) = (Refraction::from_d(0.0).unwrap(), Vertex::from_mm(12.0).unwrap());
        let w = working(&eye, n, target, vertex).unwrap();
        let mean = eye.behind_lens().unwrap() - (w.v_steep + w.v_flat) / 2.0;
        let lens = ToricLens { mean, cylinder: w.needed, mark: axis(steep) };
        let left = residual(&eye, PowerVector::strongest_along(0.0, n, axis(steep)), lens).unwrap();
        prop_assert!(left.blur() < 1e-9, "{left:?}");
    }

    /// It does not matter for the size of what is left which way a lens has turned, and the more it turns the more is left.
    #[test]
    fn turning_either_way_leaves_as_much(
        eye in thin_eyes(), n in 0.5..6.0, steep in 0.0..180.0, off in 0.1..44.0, more in 0.1..45.0,
    ) {
        let (target, vertex) = (Refraction::from_d(0.0).unwrap(), Vertex::from_mm(12.0).unwrap());
        let w = working(&eye, n, target, vertex).unwrap();
        let mean = eye.behind_lens().unwrap() - (w.v_steep + w.v_flat) / 2.0;
        let lens = ToricLens { mean, cylinder: w.needed, mark: axis(steep) };
        let left = |turn: f64| {
            let cornea = PowerVector::strongest_along(0.0, n, axis(steep));
            residual(&eye, cornea, lens.turned(turn)).unwrap().cylinder()
        };
        prop_assert!((left(off) - left(-off)).abs() < 1e-9);
        prop_assert!(left(off + more) > left(off));
    }
}
