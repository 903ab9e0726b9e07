//! The eye of a case is the eye that the methods are asked about, however its cornea was typed.

use ocellus_card::draft::Draft;
use ocellus_card::parts::eye::choices::{AcdFrom, AlMethod, EyeState, KKind, PreviousSurgery};
use ocellus_card::parts::general::choices::YesNo;
use ocellus_card::parts::laser::choices::KAfterFrom;
use ocellus_card::{entries, items};
use ocellus_core::astigmatism::site::Side;
use ocellus_core::lens::eye::{Laser, Measured};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::view::{Doubt, Eyes};
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{
    AConstant, AxialLength, ChamberDepth, CornealPower, KeratometricIndex, Refraction, Vertex,
};
use proptest::prelude::*;

use crate::exchange::{MERIDIANS, exchanged};
use crate::stream::Stream;

/// A phakic eye, one lens constant, one target.
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
        for (entry, value) in [
            (entries::SIDE.id(), Side::Right.code()),
            (entries::AXIAL_LENGTH.id(), self.al),
            (entries::K1.id(), self.k1),
            (entries::K2.id(), self.k2),
            (entries::K_KIND.id(), KKind::Keratometric.code()),
            (entries::ACD.id(), self.acd),
            (entries::ACD_FROM.id(), AcdFrom::Epithelium.code()),
            (entries::AL_METHOD.id(), AlMethod::Optical.code()),
            (entries::EYE_STATE.id(), EyeState::Phakic.code()),
            (entries::PREVIOUS_SURGERY.id(), PreviousSurgery::None.code()),
            (entries::TARGET.id(), self.target),
            (entries::VERTEX.id(), self.vertex),
            (entries::A_CONSTANT.id(), self.a),
            (entries::SHOW_SRK2.id(), YesNo::Yes.code()),
        ] {
            draft.set(entry, value);
        }
        draft
    }

    /// The same after a laser that made the cornea 5 D flatter than it was.
    fn after_laser(self) -> Draft {
        let (mut draft, k) = (self.draft(), (self.k1 + self.k2) / 2.0);
        for (entry, value) in [
            (entries::PREVIOUS_SURGERY.id(), PreviousSurgery::MyopicLaser.code()),
            (entries::K_BEFORE.id(), k),
            (entries::K_AFTER.id(), k - 5.0),
            (entries::K_AFTER_FROM.id(), KAfterFrom::ContactLens.code()),
        ] {
            draft.set(entry, value);
        }
        draft
    }

    /// What a method by itself makes of it: nothing where a card must not show it.
    fn power(self, method: Method) -> Option<u64> {
        let k = |d| CornealPower::from_d(d).unwrap();
        let (mean, index) = ((self.k1 + self.k2) / 2.0, KeratometricIndex::new(1.3375).unwrap());
        let eye = Measured {
            axial_length: AxialLength::from_mm(self.al).ok(),
            cornea: Cornea::from_powers(k(self.k1), k(self.k2), index, None).ok(),
            chamber_depth: ChamberDepth::from_mm(self.acd).ok(),
            a_constant: AConstant::new(self.a).ok(),
            ..Measured::NOTHING
        };
        let lasered =
            Measured { laser: Some(Laser::Myopic), k_before: Some(k(mean)), k_after: Some(k(mean - 5.0)), ..eye };
        let eye = if Method::of(Eyes::Ordinary).any(|other| other == method) { eye } else { lasered };
        let (target, vertex) = (Refraction::from_d(self.target).unwrap(), Vertex::from_mm(self.vertex).unwrap());
        let mut power = None;
        method
            .view(&eye, &mut |view| {
                let before_the_cornea = view.optics().thin_eye().is_some_and(|eye| eye.elp <= 0.0);
                if !before_the_cornea && !view.doubts(&eye).contains(&Some(Doubt::Radicand)) {
                    power = view.optics().power(target, vertex).ok();
                }
            })
            .unwrap();
        power.map(f64::to_bits)
    }
}

prop_compose! {
    /// Eyes beyond those that are met: 18 to 36 mm, 36 to 50 D, and targets from -6 to +4 D.
    fn eyes()(
        al in 18.0..36.0, k1 in 36.0..50.0, k2 in 36.0..50.0, acd in 2.0..5.0, a in 114.0..120.0,
        target in -6.0..4.0, vertex in 0.0..20.0,
    ) -> Eye {
        Eye { al, k1, k2, acd, a, target, vertex }
    }
}

/// The exact power by each method, in bits, as the card of a draft shows it.
fn bits(draft: &Draft) -> Vec<(Method, u64)> {
    let items = Stream::card(draft).items.into_iter().filter(|(item, _)| item.what == items::EXACT_POWER);
    items.map(|(item, bits)| (item.method.unwrap(), bits)).collect()
}

proptest! {
    /// The card shows what the methods say, to the last bit, and in their order.
    #[test]
    fn the_card_shows_what_the_methods_say(eye in eyes()) {
        for (eyes, draft) in [(Eyes::Ordinary, eye.draft()), (Eyes::AfterLaser, eye.after_laser())] {
            let said: Vec<_> = Method::of(eyes).filter_map(|method| Some((method, eye.power(method)?))).collect();
            prop_assert_eq!(bits(&draft), said);
        }
    }

    /// Which meridian is called the first changes no bit, in powers and in radii.
    #[test]
    fn swapped_meridians_give_the_same_bits(eye in eyes(), first in 0.0..180.0, second in 0.0..180.0) {
        let mut draft = eye.draft();
        draft.set(entries::K1_AXIS, first);
        draft.set(entries::K2_AXIS, second);
        prop_assert_eq!(bits(&draft), bits(&exchanged(&draft, MERIDIANS)));
        draft.clear(entries::K1);
        draft.clear(entries::K2);
        draft.set(entries::R1, 7.0 + first / 180.0);
        draft.set(entries::R2, 7.0 + second / 180.0);
        prop_assert!(!bits(&draft).is_empty());
        prop_assert_eq!(bits(&draft), bits(&exchanged(&draft, MERIDIANS)));
    }

    /// A cornea typed as powers, as radii, or as powers at another index is the same cornea.
    #[test]
    fn radii_and_powers_agree(eye in eyes(), index in 1.33..1.34) {
        let mut radii = eye.draft();
        radii.clear(entries::K1);
        radii.clear(entries::K2);
        radii.set(entries::R1, 337.5 / eye.k1);
        radii.set(entries::R2, 337.5 / eye.k2);
        let mut other = eye.draft();
        other.set(entries::INDEX, index);
        other.set(entries::K1, eye.k1 * (index - 1.0) / 0.3375);
        other.set(entries::K2, eye.k2 * (index - 1.0) / 0.3375);
        let typed = bits(&eye.draft());
        for draft in [radii, other] {
            let same = bits(&draft);
            prop_assert_eq!(same.len(), typed.len());
            for ((method, a), (of, b)) in same.into_iter().zip(&typed) {
                prop_assert_eq!(method, *of);
                prop_assert!((f64::from_bits(a) - f64::from_bits(*b)).abs() < 1e-9);
            }
        }
    }
}
