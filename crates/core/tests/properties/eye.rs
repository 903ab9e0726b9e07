//! Eyes for the lens methods, and what the order of two meridians must not change.

use ocellus_core::lens::eye::{Laser, Measured};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::srkt;
use ocellus_core::lens::view::{Eyes, View};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{
    AConstant, AxialLength, Axis, ChamberDepth, CornealPower, KeratometricIndex, LensPower, Refraction, Vertex,
};
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
    pub(crate) fn length(self) -> AxialLength {
        AxialLength::from_mm(self.al).unwrap()
    }

    pub(crate) fn cornea(self) -> Cornea {
        let k = |d| CornealPower::from_d(d).unwrap();
        Cornea::from_powers(k(self.k1), k(self.k2), KeratometricIndex::new(1.3375).unwrap(), None).unwrap()
    }

    pub(crate) fn constant(self) -> AConstant {
        AConstant::new(self.a).unwrap()
    }

    fn measured(self) -> Measured {
        Measured {
            axial_length: Some(self.length()),
            cornea: Some(self.cornea()),
            chamber_depth: Some(ChamberDepth::from_mm(self.acd).unwrap()),
            a_constant: Some(self.constant()),
            ..Measured::NOTHING
        }
    }

    /// The same eye for a method: for those after laser, one whose cornea the laser made 5 D flatter than it was.
    fn measured_for(self, method: Method) -> Measured {
        if Method::of(Eyes::Ordinary).any(|ordinary| ordinary == method) {
            return self.measured();
        }
        let k = (self.k1 + self.k2) / 2.0;
        Measured {
            laser: Some(Laser::Myopic),
            k_before: CornealPower::from_d(k).ok(),
            k_after: CornealPower::from_d(k - 5.0).ok(),
            ..self.measured()
        }
    }

    /// Asks what a method makes of it.
    pub(crate) fn view<T>(self, method: Method, ask: impl Fn(&dyn View) -> T) -> T {
        let mut answer = None;
        method.view(&self.measured_for(method), &mut |view| answer = Some(ask(view))).unwrap();
        answer.unwrap()
    }

    /// The exact lens power for the target, D.
    pub(crate) fn power(self, method: Method) -> f64 {
        let (target, vertex) = (Refraction::from_d(self.target).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.view(method, |view| view.optics().power(target, vertex).unwrap())
    }

    /// The refraction a lens leaves, D.
    pub(crate) fn left(self, method: Method, power: f64) -> f64 {
        let (lens, vertex) = (LensPower::from_d(power).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        self.view(method, |view| view.optics().refraction(lens, vertex).unwrap())
    }

    pub(crate) fn srkt(self) -> srkt::Working {
        srkt::working(self.length(), &self.cornea(), self.constant())
    }

    /// The radicand of SRK/T's corneal height, mm2: 20 on an average eye, negative past the cusp.
    pub(crate) fn radicand(self) -> f64 {
        self.srkt().radicand
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

proptest! {
    /// Flat and steep are known by their size, whichever came first, and each keeps its axis.
    #[test]
    fn flat_and_steep_are_known_by_their_size(eye in eyes(), first in 0.0..180.0, second in 0.0..180.0) {
        let index = KeratometricIndex::new(1.3375).unwrap();
        let (k1, k2) = (CornealPower::from_d(eye.k1).unwrap(), CornealPower::from_d(eye.k2).unwrap());
        let (first, second) = (Axis::from_deg(first).unwrap(), Axis::from_deg(second).unwrap());
        let cornea = Cornea::from_powers(k1, k2, index, Some((first, second))).unwrap();
        prop_assert_eq!(cornea, Cornea::from_powers(k2, k1, index, Some((second, first))).unwrap());
        prop_assert!(cornea.flat_k() <= cornea.k() && cornea.k() <= cornea.steep_k() && cornea.astigmatism() >= 0.0);
        prop_assert_eq!(cornea.steep_axis(), Some(if eye.k1 > eye.k2 { first } else { second }));
    }
}
