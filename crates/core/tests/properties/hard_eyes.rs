//! Slopes and budgets, thick lenses, lenses by refraction, adjusted lengths.

use ocellus_core::lens::certainty::{Scatter, budget, chance};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::slopes::{Chain, slopes};
use ocellus_core::lens::view::Eyes;
use ocellus_core::lens::{long_eye, second};
use ocellus_core::optics::surfaces::{Surface, system};
use ocellus_core::optics::thick;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{AxialLength, LensCentre, LensIndex, LensPower, LensRadius, Refraction, Vertex};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

use crate::eye::{Eye, eyes};
use crate::lens::{SWITCHES, excused};

/// The slopes that are computed exactly against the difference of two answers, for every method with a lens position.
///
/// A central difference over h is off by h^2 times a sixth of the third derivative: with h 1e-4 far below 1e-6 but next to
/// a switch, which is left out.
#[test]
fn slopes_are_the_differences_of_answers() {
    let mut compared = 0;
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    for _ in 0..300 {
        let eye = eyes().new_tree(&mut runner).unwrap().current();
        let eye = Eye { al: eye.al.min(30.0), target: 0.0, ..eye };
        for &method in Method::ALL.iter().filter(|method| **method != Method::Srk2) {
            let (near, power) = (excused(method, eye, eye), eye.power(method));
            if near || LensPower::from_d(power).is_err() {
                continue;
            }
            let (thin, chain) = eye.view(method, |view| (view.optics().thin_eye().unwrap(), view.chain().unwrap()));
            let (lens, vertex) = (LensPower::from_d(power).unwrap(), Vertex::from_mm(eye.vertex).unwrap());
            let slopes = slopes(&thin, &chain, lens, vertex).unwrap();
            const H: f64 = 1e-4;
            let moved = |change: &dyn Fn(f64) -> Eye| {
                (change(H).left(method, power) - change(-H).left(method, power)) / (2.0 * H)
            };
            let along_al = moved(&|by| Eye { al: eye.al + by, ..eye });
            let along_k = moved(&|by| Eye { k1: eye.k1 + by, k2: eye.k2 + by, ..eye });
            let along_acd = moved(&|by| Eye { acd: eye.acd + by, ..eye });
            // both corneas of Double-K move together here
            let k = slopes.k + slopes.position * chain.elp_k_before;
            // not across a switch of the method, nor where Holladay 1 begins to hold its radius
            let switch = SWITCHES.iter().any(|at| (eye.al - at).abs() < 2.0 * H)
                || ((eye.k1 + eye.k2) / 2.0 - 337.5 / 7.0).abs() < 2.0 * H;
            if !switch {
                let close = |a: f64, b: f64| (a - b).abs() < 1e-5 * (1.0 + a.abs());
                assert!(close(slopes.al, along_al), "{method:?} AL {} {along_al} {eye:?}", slopes.al);
                assert!(close(k, along_k), "{method:?} K {k} {along_k} {eye:?}");
                assert!(close(slopes.acd, along_acd), "{method:?} ACD {} {along_acd} {eye:?}", slopes.acd);
                compared += 1;
            }
        }
    }
    assert!(compared > 1500, "{compared}");
}

proptest! {
    /// A thick lens by its formula is the same two surfaces, one behind the other; turned about it has the same power.
    #[test]
    fn a_thick_lens_is_its_two_surfaces(
        r1 in prop_oneof![Just(0.0), 5.0..60.0, -60.0..-5.0], r2 in prop_oneof![Just(0.0), 5.0..60.0, -60.0..-5.0],
        t in 0.3..1.5, n in 1.40..1.6,
    ) {
        let radius = |mm| LensRadius::from_mm(mm).unwrap();
        let lens = |a, b| thick::working(radius(a), radius(b), LensCentre::from_mm(t).unwrap(), LensIndex::new(n).unwrap());
        prop_assume!(lens(r1, r2).is_ok_and(|lens| lens.power.abs() > 0.5));
        let (one, turned) = (lens(r1, r2).unwrap(), lens(-r2, -r1).unwrap());
        let rows = [Surface { radius: r1, thickness: t, index: n }, Surface { radius: r2, thickness: 0.0, index: 1.336 }];
        let both = system(1.336, &rows).unwrap();
        for (a, b) in [(one.power, both.power), (one.front, both.front), (one.back, both.back), (turned.power, one.power)] {
            prop_assert!((a - b).abs() < 1e-9 * (1.0 + a.abs()), "{a} {b}");
        }
        prop_assert!((turned.front + one.back - t).abs() < 1e-9 * (1.0 + one.back.abs()));
    }

    /// The refraction of an eye whose thin lens is replaced by a thick one in the same principal planes is the same.
    #[test]
    fn a_thick_lens_in_its_planes_is_thin(al in 20.0..30.0, kc in 38.0..48.0, elp in 4.0..7.0, r in 8.0..30.0, t in 0.5..1.2) {
        let radius = |mm| LensRadius::from_mm(mm).unwrap();
        let lens = thick::working(radius(r), radius(-r), LensCentre::from_mm(t).unwrap(), LensIndex::new(1.47).unwrap()).unwrap();
        let eye = ThinEye::new(al, kc, elp);
        let placed = lens.placed(ThinEye { al: al + lens.back - lens.front, ..eye }, elp - lens.front);
        prop_assert!((placed.al - al).abs() < 1e-12 && (placed.elp - elp).abs() < 1e-12);
    }

    /// A lens by refraction is undone by its inverse, and nothing is needed to stay where the eye is.
    #[test]
    fn a_lens_by_refraction_goes_back(
        k in 38.0..48.0, elp in 3.0..6.0, in_place in 0.0..30.0, behind in prop_oneof![Just(0.0), 0.1..1.5],
        now in -8.0..8.0, wanted in -4.0..2.0, vertex in 0.0..15.0,
    ) {
        let place = second::Place { k, elp, in_place, behind };
        let rx = |d| Refraction::from_d(d).unwrap();
        let vertex = Vertex::from_mm(vertex).unwrap();
        let power = second::working(&place, rx(now), rx(wanted), vertex).unwrap().power;
        let left = second::refraction(&place, rx(now), LensPower::from_d(power).unwrap(), vertex).unwrap();
        prop_assert!((left - wanted).abs() < 1e-9);
        // the same lens in the same place
        let same = second::working(&second::Place { behind: 0.0, ..place }, rx(now), rx(now), vertex).unwrap().power;
        prop_assert!((same - in_place).abs() < 1e-9);
    }

    /// An adjusted length grows with the measured one, and changes nothing at or below where its line begins.
    #[test]
    fn adjusted_lengths_grow(al in 20.0..39.0, longer in 0.01..1.0) {
        for set in long_eye::SETS {
            for method in Method::of(Eyes::Ordinary) {
                let adjusted = |mm: f64| long_eye::working(set, method, AxialLength::from_mm(mm).unwrap());
                match (adjusted(al), adjusted(al + longer)) {
                    (Some(short), Some(long)) => prop_assert!(long.adjusted > short.adjusted),
                    (Some(_), None) => prop_assert!(false, "{set:?} {method:?}"),
                    _ => {}
                }
                if let Some(w) = adjusted(al) {
                    prop_assert!(al > w.above && w.adjusted < al + w.step.max(0.0));
                }
            }
        }
    }

    /// Shares make a whole, and more scatter never makes more chance.
    #[test]
    fn a_budget_is_a_whole(al in 21.0..30.0, kc in 39.0..47.0, elp in 4.0..6.5, p in 5.0..30.0, more in 1.01..3.0) {
        let chain = Chain { al: 1.0, kc: 1.0, elp_al: 0.2, elp_k: 0.1, elp_acd: 0.4, ..Chain::NONE };
        let slopes = slopes(&ThinEye::new(al, kc, elp), &chain, LensPower::from_d(p).unwrap(), Vertex::from_mm(12.0).unwrap());
        prop_assume!(slopes.is_ok());
        let scatter = Scatter { al: 0.02, k: 0.2, acd: 0.05, position: 0.25, label: 0.4, refraction: 0.3 };
        let slopes = slopes.unwrap().gradient();
        let one = budget(&slopes, &scatter);
        let sum = one.al + one.k + one.acd + one.position + one.label + one.refraction;
        prop_assert!((sum - one.sd * one.sd).abs() < 1e-12);
        let wider = budget(&slopes, &Scatter { position: 0.25 * more, ..scatter });
        prop_assert!(wider.sd >= one.sd && chance(0.0, 0.5, wider.sd) <= chance(0.0, 0.5, one.sd));
        prop_assert!(chance(0.0, 0.5, one.sd) <= chance(0.0, 1.0, one.sd) && chance(0.0, 1.0, one.sd) <= 100.0);
    }
}
