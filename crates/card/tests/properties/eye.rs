//! Eyes for the lens methods, and what the entry of a cornea must not change.

use ocellus_core::case::Case;
use ocellus_core::choice::{AcdFrom, AlMethod, Eye as Side, EyeState, KAfterFrom, KKind, PreviousSurgery};
use ocellus_core::draft::Draft;
use ocellus_core::eye::cornea::Cornea;
use ocellus_core::field::Field;
use ocellus_core::lens::Method;
use ocellus_core::lens::predict::predict;
use ocellus_core::lens::prediction::Prediction;
use ocellus_core::quantity::{Axis, CornealPower, KeratometricIndex, LensPower, Refraction, Vertex};
use proptest::prelude::*;

/// A phakic eye, one lens constant, one target.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Eye {
    pub(crate) al: f64,
    pub(crate) k1: f64,
    pub(crate) k2: f64,
    pub(crate) acd: f64,
    pub(crate) a: f64,
    pub(crate) target: f64,
    pub(crate) vertex: f64,
}

impl Eye {
    pub(crate) fn draft(self) -> Draft {
        let mut draft = Draft::default();
        for (field, value) in [
            (Field::Side, Side::Right.code()),
            (Field::AxialLength, self.al),
            (Field::K1, self.k1),
            (Field::K2, self.k2),
            (Field::KKind, KKind::Keratometric.code()),
            (Field::Acd, self.acd),
            (Field::AcdFrom, AcdFrom::Epithelium.code()),
            (Field::AlMethod, AlMethod::Optical.code()),
            (Field::EyeState, EyeState::Phakic.code()),
            (Field::PreviousSurgery, PreviousSurgery::None.code()),
            (Field::Target, self.target),
            (Field::Vertex, self.vertex),
            (Field::AConstant, self.a),
        ] {
            draft.set(field, value);
        }
        draft
    }

    /// The same eye for a method: for those after laser, one whose cornea the laser made 5 D flatter than it was.
    pub(crate) fn draft_for(self, method: Method) -> Draft {
        let mut draft = self.draft();
        if Method::AFTER_LASER.contains(&method) {
            let k = (self.k1 + self.k2) / 2.0;
            for (field, value) in [
                (Field::PreviousSurgery, PreviousSurgery::MyopicLaser.code()),
                (Field::KBefore, k),
                (Field::KAfter, k - 5.0),
                (Field::KAfterFrom, KAfterFrom::ContactLens.code()),
            ] {
                draft.set(field, value);
            }
        }
        draft
    }

    pub(crate) fn predict(self, method: Method) -> Prediction {
        predict(method, &Case::try_from(&self.draft_for(method)).unwrap()).unwrap()
    }

    /// The exact lens power for the target, D.
    pub(crate) fn power(self, method: Method) -> f64 {
        let (target, vertex) = (Refraction::from_d(self.target).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.predict(method).optics().power(target, vertex).unwrap()
    }

    /// The refraction a lens leaves, D.
    pub(crate) fn left(self, method: Method, power: f64) -> f64 {
        let (lens, vertex) = (LensPower::from_d(power).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.predict(method).optics().refraction(lens, vertex).unwrap()
    }

    /// The radicand of SRK/T's corneal height, mm2: 20 on an average eye, negative past the cusp.
    pub(crate) fn radicand(self) -> f64 {
        match self.predict(Method::Srkt) {
            Prediction::Srkt(working) => working.radicand,
            other => panic!("{other:?}"),
        }
    }
}

prop_compose! {
    /// Eyes beyond those that are met: 18 to 36 mm, 36 to 50 D, and targets from -6 to +4 D.
    pub(crate) fn eyes()(
        al in 18.0..36.0, k1 in 36.0..50.0, k2 in 36.0..50.0, acd in 2.0..5.0, a in 114.0..120.0,
        target in -6.0..4.0, vertex in 0.0..20.0,
    ) -> Eye {
        Eye { al, k1, k2, acd, a, target, vertex }
    }
}

fn bits(draft: &Draft) -> Vec<u64> {
    let case = Case::try_from(draft).unwrap();
    let (target, vertex) = (draft.number(Field::Target).unwrap(), draft.number(Field::Vertex).unwrap());
    let (target, vertex) = (Refraction::from_d(target).unwrap(), Vertex::from_mm(vertex).unwrap());
    let power = |m: &Method| predict(*m, &case).unwrap().optics().power(target, vertex).unwrap().to_bits();
    Method::ORDINARY.iter().map(power).collect()
}

proptest! {
    /// Which meridian is called the first changes no bit, in powers and in radii.
    #[test]
    fn swapped_meridians_give_the_same_bits(eye in eyes(), first in 0.0..180.0, second in 0.0..180.0) {
        let mut draft = eye.draft();
        draft.set(Field::K1Axis, first);
        draft.set(Field::K2Axis, second);
        let mut swapped = draft.clone();
        for (field, value) in [
            (Field::K1, eye.k2), (Field::K2, eye.k1), (Field::K1Axis, second), (Field::K2Axis, first),
        ] {
            swapped.set(field, value);
        }
        prop_assert_eq!(bits(&draft), bits(&swapped));
        for (draft, radii) in [(&mut draft, (7.0 + first / 180.0, 7.0 + second / 180.0)),
                               (&mut swapped, (7.0 + second / 180.0, 7.0 + first / 180.0))] {
            for field in [Field::K1, Field::K2] { draft.clear(field); }
            draft.set(Field::R1, radii.0);
            draft.set(Field::R2, radii.1);
        }
        prop_assert_eq!(bits(&draft), bits(&swapped));
    }

    /// Flat and steep are told apart by their size, and each keeps its axis.
    #[test]
    fn flat_and_steep_are_told_apart(eye in eyes(), first in 0.0..180.0, second in 0.0..180.0) {
        let index = KeratometricIndex::new(1.3375).unwrap();
        let (k1, k2) = (CornealPower::from_d(eye.k1).unwrap(), CornealPower::from_d(eye.k2).unwrap());
        let (first, second) = (Axis::from_deg(first).unwrap(), Axis::from_deg(second).unwrap());
        let cornea = Cornea::from_powers(k1, k2, index, Some((first, second))).unwrap();
        prop_assert_eq!(cornea, Cornea::from_powers(k2, k1, index, Some((second, first))).unwrap());
        prop_assert!(cornea.flat_k() <= cornea.k() && cornea.k() <= cornea.steep_k() && cornea.astigmatism() >= 0.0);
        prop_assert_eq!(cornea.steep_axis(), Some(if eye.k1 > eye.k2 { first } else { second }));
    }

    /// A cornea typed as powers, as radii, or as powers at another index is the same cornea.
    #[test]
    fn radii_and_powers_agree(eye in eyes(), index in 1.33..1.34) {
        let mut radii = eye.draft();
        for field in [Field::K1, Field::K2] { radii.clear(field); }
        radii.set(Field::R1, 337.5 / eye.k1);
        radii.set(Field::R2, 337.5 / eye.k2);
        let mut other = eye.draft();
        other.set(Field::Index, index);
        other.set(Field::K1, eye.k1 * (index - 1.0) / 0.3375);
        other.set(Field::K2, eye.k2 * (index - 1.0) / 0.3375);
        for draft in [radii, other] {
            for (a, b) in bits(&draft).into_iter().zip(bits(&eye.draft())) {
                prop_assert!((f64::from_bits(a) - f64::from_bits(b)).abs() < 1e-9);
            }
        }
    }
}
