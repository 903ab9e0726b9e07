//! What holds for any correct implementation of the lens methods, over ranges of eyes.
//!
//! Where a method does not have a property in some region, the region is left out by name and the reason stands beside it.
#![allow(clippy::unwrap_used, reason = "a test may stop where it stands")]

use ocellus_core::case::Case;
use ocellus_core::draft::Draft;
use ocellus_core::eye::cornea::Cornea;
use ocellus_core::field::Field;
use ocellus_core::lens::predict::{Prediction, predict};
use ocellus_core::lens::vergence::{to_cornea, to_spectacles};
use ocellus_core::lens::{Method, hofferq, srk2, srkt};
use ocellus_core::quantity::*;
use proptest::prelude::*;

const ALL: &[Method] = Method::ALL;

/// All but the regression, which has no lens position.
const OPTICAL: [Method; 5] = [Method::Srkt, Method::T2, Method::Holladay1, Method::HofferQ, Method::Haigis];

/// A phakic eye with one lens constant.
#[derive(Clone, Copy, Debug)]
struct Eye {
    al: f64,
    k1: f64,
    k2: f64,
    acd: f64,
    a: f64,
    target: f64,
    vertex: f64,
}

impl Eye {
    fn draft(self) -> Draft {
        let mut draft = Draft::default();
        for (field, value) in [
            (Field::Side, 0.0),
            (Field::AxialLength, self.al),
            (Field::K1, self.k1),
            (Field::K2, self.k2),
            (Field::KKind, 0.0),
            (Field::Acd, self.acd),
            (Field::AcdFrom, 0.0),
            (Field::AlMethod, 0.0),
            (Field::EyeState, 0.0),
            (Field::PreviousSurgery, 0.0),
            (Field::Target, self.target),
            (Field::Vertex, self.vertex),
            (Field::AConstant, self.a),
        ] {
            draft.set(field, value);
        }
        draft
    }

    fn predict(self, method: Method) -> Prediction {
        predict(method, &Case::try_from(&self.draft()).unwrap()).unwrap()
    }

    fn power(self, method: Method) -> f64 {
        let (target, vertex) = (Refraction::from_d(self.target).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.predict(method).power(target, vertex).unwrap()
    }

    fn left(self, method: Method, power: f64) -> f64 {
        let (lens, vertex) = (LensPower::from_d(power).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.predict(method).refraction(lens, vertex).unwrap()
    }

    fn mean_k(self) -> f64 {
        (self.k1 + self.k2) / 2.0
    }

    /// SRK/T, a millimetre before its corneal height loses its real value: from there it bends the wrong way.
    fn near_cusp(self) -> bool {
        let k = self.mean_k() + 0.5;
        let cornea = cornea(k);
        let al = AxialLength::from_mm(self.al + 1.0).unwrap();
        srkt::working(al, &cornea, AConstant::new(self.a).unwrap()).radicand < 20.0
    }
}

fn cornea(k: f64) -> Cornea {
    let k = CornealPower::from_d(k).unwrap();
    Cornea::from_powers(k, k, KeratometricIndex::new(1.3375).unwrap(), None).unwrap()
}

prop_compose! {
    /// Eyes beyond those that are met: 18 to 36 mm, 36 to 50 D.
    fn eyes()(
        al in 18.0..36.0, k1 in 36.0..50.0, k2 in 36.0..50.0, acd in 2.0..5.0, a in 114.0..120.0,
        target in -6.0..4.0, vertex in 10.0..16.0,
    ) -> Eye {
        Eye { al, k1, k2, acd, a, target, vertex }
    }
}


fn q(e: Eye) -> f64 { let c = cornea(e.mean_k()); srkt::working(AxialLength::from_mm(e.al).unwrap(), &c, AConstant::new(e.a).unwrap()).radicand }
proptest! {
    #![proptest_config(ProptestConfig::with_cases(200000))]
    #[test]
    fn probe(eye in eyes(), dal in 0.01..1.0, dk in 0.01..1.0f64) {
        let m = Method::Srkt;
        let p = eye.power(m);
        let e = Eye { al: eye.al + dal, ..eye };
        if e.power(m) >= p { println!("AL {} {} {:?}", q(e), q(eye), e); }
        let e = Eye { k1: eye.k1 + dk, ..eye };
        if e.power(m) >= p { println!("K {} {} {:?}", q(e), q(eye), e); }
    }
}
