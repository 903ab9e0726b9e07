//! The lens methods: their inverse, their slopes, their steps.

use std::ops::RangeInclusive;

use ocellus_core::lens::certainty::{Scatter, budget, chance};
use ocellus_core::lens::predict::Prediction;
use ocellus_core::lens::slope::{Chain, slopes};
use ocellus_core::lens::surfaces::{Surface, system};
use ocellus_core::lens::vergence::{ThinEye, to_cornea, to_spectacles};
use ocellus_core::lens::{Method, long_eye, second, thick};
use ocellus_core::quantity::{AxialLength, LensCentre, LensIndex, LensPower, LensRadius, Refraction, Vertex};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

use crate::eye::{Eye, eyes};

/// SRK/T's corneal height turns ever steeper towards its cusp, and there the power rises with length and cornea. That was
/// met only where the radicand after the change is below 2 mm2; an average eye has 20.
const CUSP: f64 = 3.0;

/// Whether a method need not be monotone or smooth from one eye to another.
fn excused(method: Method, from: Eye, to: Eye) -> bool {
    match method {
        Method::Srkt => from.radicand().min(to.radicand()) < CUSP,
        // the optics of the flatter cornea outweigh less of it
        Method::DoubleSrkt => from.radicand().min(to.radicand()) < 3.0 * CUSP,
        // the dioptres of lens per dioptre of refraction step from 1.25 to 1, so a hyperopic target steps upwards
        Method::Srk2 => from.target > 0.0,
        _ => false,
    }
}

/// How many eyes each property is tried on.
fn cases() -> u32 {
    std::env::var("OCELLUS_RANDOM_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(500)
}

/// Where a method steps with axial length, mm.
fn steps(method: Method) -> &'static [f64] {
    match method {
        Method::Srk2 => &[20.0, 21.0, 22.0, 24.5],
        Method::Srkt | Method::DoubleSrkt => &[24.2],
        Method::HofferQ | Method::DoubleHofferQ => &[23.0],
        Method::T2 | Method::Holladay1 | Method::Haigis => &[],
        Method::ShammasPl | Method::HaigisL | Method::DoubleHolladay1 => &[],
    }
}

/// Lengths at which some method switches its equation, with a step or without.
const SWITCHES: &[f64] = &[18.5, 20.0, 21.0, 22.0, 23.0, 24.2, 24.5, 13.5 * 23.45 / 12.5, 31.0];

fn lengths() -> impl Strategy<Value = f64> {
    prop_oneof![18.0..36.0, (prop::sample::select(SWITCHES), -2e-5..1e-5).prop_map(|(at, off)| at + off)]
}

/// Corneal powers, among them the one at which Holladay 1 holds its radius.
fn corneas() -> impl Strategy<Value = f64> {
    prop_oneof![36.0..50.0, (-2e-5..1e-5).prop_map(|off| 337.5 / 7.0 + off)]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(cases()))]

    /// The lens for a target leaves that target.
    #[test]
    fn forward_undoes_inverse(eye in eyes()) {
        for &method in Method::ALL {
            let power = eye.power(method);
            // what is not made cannot be entered either
            if LensPower::from_d(power).is_ok() {
                prop_assert!((eye.left(method, power) - eye.target).abs() < 1e-9, "{method:?} {power}");
            }
        }
    }

    /// A longer eye needs less.
    #[test]
    fn power_falls_with_length(eye in eyes(), longer in 0.01..1.0) {
        let other = Eye { al: eye.al + longer, ..eye };
        for &method in Method::ALL {
            prop_assert!(
                other.power(method) < eye.power(method) || excused(method, eye, other), "{method:?}"
            );
        }
    }

    /// A steeper cornea needs less.
    #[test]
    fn power_falls_with_the_cornea(eye in eyes(), steeper in 0.01..1.0) {
        let other = Eye { k1: eye.k1 + steeper, ..eye };
        for &method in Method::ALL {
            prop_assert!(
                other.power(method) < eye.power(method) || excused(method, eye, other), "{method:?}"
            );
        }
    }

    /// A stronger lens leaves the eye more myopic.
    #[test]
    fn refraction_falls_with_power(eye in eyes(), weaker in -10.0..40.0, by in 0.01..10.0) {
        // eyes and lenses between which the light crosses nowhere
        let eye = Eye { al: eye.al.min(30.0), ..eye };
        for &method in Method::ALL {
            prop_assert!(eye.left(method, weaker + by) < eye.left(method, weaker), "{method:?}");
        }
    }

    /// A ten-thousandth of a millimetre or of a dioptre moves no answer by more than its slope, but at the steps.
    #[test]
    fn answers_are_continuous(eye in eyes(), al in lengths(), k in corneas()) {
        const STEP: f64 = 1e-5;
        // 10 D/mm is the steepest slope of any method from 18 mm on; 4 D/D that of SRK/T at the radicand excused
        const SLOPE: f64 = 12.0;
        let eye = Eye { al, k1: k, k2: k, ..eye };
        let (longer, steeper) = (Eye { al: al + STEP, ..eye }, Eye { k1: k + STEP, k2: k + STEP, ..eye });
        for &method in Method::ALL {
            let smooth = |to: Eye| {
                excused(method, eye, to)
                    || coefficient(method, eye) != coefficient(method, to)
                    || (to.power(method) - eye.power(method)).abs() < SLOPE * STEP
            };
            prop_assert!(smooth(steeper), "{method:?} {eye:?} K");
            let crossed = steps(method).iter().any(|edge| (al..=al + STEP).contains(edge));
            prop_assert!(crossed || smooth(longer), "{method:?} {eye:?} AL");
        }
    }

    /// From spectacles to cornea and back.
    #[test]
    fn vertexing_goes_back(rx in -39.0..39.0, vertex in 0.0..25.0) {
        let vertex = Vertex::from_mm(vertex).unwrap();
        let back = to_spectacles(to_cornea(rx, vertex).unwrap(), vertex).unwrap();
        prop_assert!((back - rx).abs() < 1e-9, "{rx} {back}");
    }
}

/// SRK II's dioptres of lens per dioptre of refraction, which step at 14 D of lens.
fn coefficient(method: Method, eye: Eye) -> Option<f64> {
    match eye.predict(method) {
        Prediction::Srk2(working) => Some(working.cr),
        _ => None,
    }
}

const AVERAGE: Eye = Eye { al: 23.5, k1: 43.8, k2: 43.8, acd: 3.2, a: 118.4, target: 0.0, vertex: 12.0 };

/// One method just after a step, less just before it.
fn step(al: f64, value: impl Fn(Prediction) -> f64, method: Method, below: bool) -> f64 {
    let (before, after) = if below { (al.next_down(), al) } else { (al, al.next_up()) };
    let at = |al| value(Eye { al, ..AVERAGE }.predict(method));
    at(after) - at(before)
}

/// The steps are as large as they are said to be, and stand on the side they are said to.
#[test]
fn steps_have_their_size() {
    let lcor = |p| if let Prediction::Srkt(w) = p { w.lcor } else { f64::NAN };
    assert!((step(24.2, lcor, Method::Srkt, false) - 0.0015).abs() < 0.00005);
    let acd = |p| if let Prediction::HofferQ(w) = p { w.acd } else { f64::NAN };
    assert!((step(23.0, acd, Method::HofferQ, false).abs() - 0.0011).abs() < 0.00005);
    let a1 = |p| if let Prediction::Srk2(w) = p { w.a1 } else { f64::NAN };
    for (al, size) in [(20.0, -1.0), (21.0, -1.0), (22.0, -1.0), (24.5, -0.5)] {
        assert!((step(al, a1, Method::Srk2, true) - size).abs() < 1e-9, "{al}");
    }
}

/// What a millimetre and a dioptre are worth on three eyes, A 118.4, to a tenth.
#[test]
fn slopes_are_those_of_the_equations() {
    let eyes = [
        (AVERAGE, 3.0..=3.4, 1.0..=1.3),
        (Eye { al: 21.0, k1: 46.0, k2: 46.0, ..AVERAGE }, 3.8..=4.3, 1.0..=1.2),
        (Eye { al: 29.0, k1: 41.0, k2: 41.0, ..AVERAGE }, 2.3..=2.5, 1.3..=1.5),
    ];
    let worth = |eye: Eye, method| {
        let al = |by: f64| Eye { al: eye.al + by, ..eye }.power(method);
        let k = |by: f64| Eye { k1: eye.k1 + by, k2: eye.k2 + by, ..eye }.power(method);
        (al(-0.5) - al(0.5), k(-0.5) - k(0.5))
    };
    let within = |value: f64, band: &RangeInclusive<f64>| band.start() - 0.05 < value && value < band.end() + 0.05;
    for (eye, per_mm, per_d) in eyes {
        for method in [Method::Srkt, Method::T2, Method::Holladay1, Method::HofferQ] {
            let (mm, d) = worth(eye, method);
            assert!(within(mm, &per_mm) && within(d, &per_d), "{method:?} {mm} {d} {eye:?}");
        }
    }
    // unoptimised
    let (mm, d) = worth(AVERAGE, Method::Haigis);
    assert!((mm - 3.8).abs() < 0.05 && (d - 1.4).abs() < 0.05, "{mm} {d}");
}

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
            let prediction = eye.predict(method);
            let (thin, chain) = (prediction.optics().thin_eye().unwrap(), prediction.chain().unwrap());
            let (lens, vertex) = (LensPower::from_d(power).unwrap(), Vertex::from_mm(eye.vertex).unwrap());
            let slopes = slopes(&thin, &chain, lens, vertex).unwrap();
            const H: f64 = 1e-4;
            let moved = |change: &dyn Fn(f64) -> Eye| {
                (change(H).left(method, power) - change(-H).left(method, power)) / (2.0 * H)
            };
            let along_al = moved(&|by| Eye { al: eye.al + by, ..eye });
            let along_k = moved(&|by| Eye { k1: eye.k1 + by, k2: eye.k2 + by, ..eye });
            let along_acd = moved(&|by| Eye { acd: eye.acd + by, ..eye });
            // both corneas of double-K move together here
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
            for &method in Method::ORDINARY {
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
        prop_assert!(wider.sd >= one.sd && chance(0.5, wider.sd) <= chance(0.5, one.sd));
        prop_assert!(chance(0.5, one.sd) <= chance(1.0, one.sd) && chance(1.0, one.sd) <= 100.0);
    }
}
