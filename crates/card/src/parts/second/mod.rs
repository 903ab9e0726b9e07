//! A lens by the refraction that the eye has: added before another, in the place of another, or where there is none.

pub mod limits;
pub mod table;

use crate::caution::Caution;
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::{EyeState, KKind, PreviousSurgery};
use crate::parts::eye::table::entries::{EYE_STATE, K_KIND, PREVIOUS_SURGERY};
use crate::parts::general::{range, widened};
use crate::parts::laser::{after_laser, k_after};
use crate::parts::lens::Lens;
use crate::parts::lens::choices::LensStyle;
use crate::parts::lens::limits::FAR_FROM_TARGET;
use crate::parts::lens::table::cautions as of_lens;
use crate::parts::lens::table::entries::{LENS_POWER, SULCUS_SHIFT};
use crate::parts::target::choices::{SecondFor, SecondPlace};
use crate::parts::target::table::entries::{SECOND_FOR, SECOND_PLACE};
use crate::rule::Rule;
use limits::SECOND_APART;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::second::{Place, refraction, working};
use ocellus_core::quantity::Refraction;
use table::entries::*;
use table::{cautions, items};

/// From which refraction, to where: neither has a default.
pub(crate) const RULES: &[Rule] = &[Rule::Together(
    &[
        SECOND_FOR.id(),
        REFRACTION_NOW.id(),
        LENS_IN_EYE.id(),
        SECOND_PLACE.id(),
        SECOND_POSITION.id(),
        SECOND_STYLE.id(),
        SECOND_POWER.id(),
    ],
    &[SECOND_FOR.id(), REFRACTION_NOW.id(), SECOND_PLACE.id()],
)];

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let Some((purpose, now)) = asked_for(eye) else { return };
    out.show(
        const {
            &[
                SECOND_FOR.id(),
                SECOND_POWER.id(),
                REFRACTION_NOW.id(),
                LENS_IN_EYE.id(),
                SECOND_PLACE.id(),
                SECOND_STYLE.id(),
                SECOND_POSITION.id(),
            ]
        },
    );
    let shifted = eye.get(SECOND_POSITION).is_none() || purpose == SecondFor::Exchange;
    if shifted && eye.get(SECOND_PLACE) == Some(SecondPlace::Sulcus) {
        out.show(const { &[SULCUS_SHIFT.id()] });
    }
    if let Some(refusal) = refused(eye, purpose) {
        return out.pass(refusal);
    }
    said(eye, purpose, out);
    let (mut placed, mut powers, mut far) = (false, None, false);
    let chosen = eye.get(SECOND_POWER);
    places(lens, purpose, &mut |method, place| {
        placed = true;
        out.by(items::SECOND_AT, place.elp, method);
        if let Ok(w) = working(&place, now, eye.target(), eye.vertex()) {
            out.by(items::SECOND_EXACT, w.power, method);
            powers = Some(widened(powers, w.power));
        }
        if let Some(Ok(left)) = chosen.map(|chosen| refraction(&place, now, chosen, eye.vertex())) {
            out.by(items::SECOND_LEFT, left, method);
            far |= (left - eye.target().d()).abs() > FAR_FROM_TARGET.get();
        }
    });
    let Some((least, most)) = powers else {
        let code = if placed { of_lens::NO_SOLUTION } else { cautions::SECOND_NEEDS_POSITION };
        return out.about(code, SECOND_POSITION);
    };
    if apart(lens, purpose, least, most) {
        out.about(cautions::SECOND_APART, REFRACTION_NOW);
    }
    if far {
        out.about(cautions::SECOND_FAR, SECOND_POWER);
    }
    out.about(cautions::SECOND_VERGENCE, REFRACTION_NOW);
}

/// What a lens is asked for, and the refraction today.
fn asked_for(eye: &Eye) -> Option<(SecondFor, Refraction)> {
    eye.get(SECOND_FOR).zip(eye.get(REFRACTION_NOW))
}

/// Whether the methods for a first lens ask for quite another power, where the eye is to have no other lens.
fn apart(lens: &Lens, purpose: SecondFor, least: f64, most: f64) -> bool {
    if purpose == SecondFor::Added {
        return false;
    }
    let asked = range(lens.answers().compared().map(|answer| answer.power));
    asked.is_some_and(|(low, high)| least > high + SECOND_APART.get() || most < low - SECOND_APART.get())
}

/// Why no such lens is computed.
fn refused(eye: &Eye, purpose: SecondFor) -> Option<Caution> {
    let one_piece =
        eye.get(SECOND_PLACE) == Some(SecondPlace::Sulcus) && eye.get(SECOND_STYLE) == Some(LensStyle::OnePiece);
    let no_lens = purpose == SecondFor::Exchange && eye.get(LENS_IN_EYE).is_none();
    // nothing that is measured of such a cornea holds
    let unfit = eye.previous_surgery() != PreviousSurgery::None && after_laser(eye).is_none();
    [
        (eye.k_kind() == KKind::Total, of_lens::TOTAL_K, K_KIND.id()),
        (eye.state() == EyeState::SiliconeOil, of_lens::SILICONE_OIL, EYE_STATE.id()),
        (unfit, of_lens::CORNEA_UNFIT, PREVIOUS_SURGERY.id()),
        (one_piece, of_lens::ONE_PIECE_SULCUS, SECOND_STYLE.id()),
        (no_lens, cautions::SECOND_NEEDS_LENS, LENS_IN_EYE.id()),
    ]
    .into_iter()
    .find_map(|(is, code, entry)| is.then_some(Caution::about(code, entry)))
}

/// What the entries alone say.
fn said(eye: &Eye, purpose: SecondFor, out: &mut Out) {
    let expected = if purpose == SecondFor::Aphakic { EyeState::Aphakic } else { EyeState::Pseudophakic };
    if after_laser(eye).is_some() {
        out.about(cautions::SECOND_LASER, PREVIOUS_SURGERY);
    }
    if eye.state() != expected || purpose == SecondFor::Aphakic && eye.get(LENS_IN_EYE).is_some() {
        out.about(cautions::SECOND_STATE, EYE_STATE);
    }
    if eye.get(SECOND_PLACE) == Some(SecondPlace::Sulcus) && eye.get(SECOND_STYLE).is_none() {
        out.about(of_lens::BACKUP_STYLE_UNKNOWN, SECOND_STYLE);
    }
    if purpose == SecondFor::Added && eye.get(SECOND_PLACE) == Some(SecondPlace::Bag) {
        out.about(cautions::ADDED_IN_BAG, SECOND_PLACE);
    }
    let chosen = eye.get(SECOND_POWER);
    if eye.get(LENS_POWER).is_some() && chosen.is_some() {
        out.about(cautions::TWO_LENSES, SECOND_POWER);
    }
    match chosen {
        None => out.about(cautions::NO_SECOND_POWER, SECOND_POWER),
        Some(power) if power.d() < 0.0 => out.about(of_lens::MINUS_POWER, SECOND_POWER),
        Some(_) => {}
    }
}

/// Where the lens may lie: as entered, and else as each method compared has it.
fn places(lens: &Lens, purpose: SecondFor, each: &mut dyn FnMut(Option<Method>, Place)) {
    let eye = lens.eye;
    let exchange = purpose == SecondFor::Exchange;
    let in_place = eye.get(LENS_IN_EYE).filter(|_| exchange).map_or(0.0, |lens| lens.d());
    let forward = match eye.get(SECOND_PLACE) {
        Some(SecondPlace::Sulcus) => eye.get(SULCUS_SHIFT).map_or(0.0, |shift| shift.mm()),
        _ => 0.0,
    };
    // a lens that is exchanged lies in the bag, wherever the new one goes
    let behind = if exchange { forward } else { 0.0 };
    let k = after_laser(eye).and_then(|_| k_after(eye).ok()).map_or_else(|| eye.mean_cornea().k(), |(k, _)| k.d());
    let at = |elp| Place { k, elp, in_place, behind };
    if let Some(position) = eye.get(SECOND_POSITION) {
        return each(None, at(position.mm()));
    }
    for answer in lens.answers().compared() {
        if let Some(thin) = answer.optics.thin_eye() {
            each(Some(answer.method), at(thin.elp - forward));
        }
    }
}

/// The lens by the refraction today, in each place that it may have.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    let eye = lens.eye;
    let Some((purpose, now)) = asked_for(eye).filter(|(purpose, _)| refused(eye, *purpose).is_none()) else {
        return false;
    };
    let mut any = false;
    places(lens, purpose, &mut |method, place| {
        let Ok(w) = working(&place, now, eye.target(), eye.vertex()) else { return };
        out.by(items::SECOND_EXACT, w.power, method);
        w.show(out);
        any = true;
    });
    any
}
