//! What the lens chosen leaves, turn by turn: the card's own numbers for each meridian of its mark.

use super::Seen;
use super::eye::View;
use super::plot::{Curve, Plot};
use crate::text;
use ocellus_card::case::Case;
use ocellus_card::{entries, items};

/// Degrees to each side.
const SIDE: i32 = 45;

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let wanted = "a toric lens that was chosen: iol_cylinder_d and iol_axis_deg, and all that its residual needs";
    let mark = seen.entry(entries::LENS_AXIS).ok_or(wanted)?;
    let name = seen.method(items::CHOSEN_RESIDUAL);
    let (mut nominal, mut expected) = (Vec::new(), Vec::new());
    for turn in -SIDE..=SIDE {
        let mut draft = seen.draft.clone();
        draft.set(entries::LENS_AXIS, (mark + f64::from(turn)).rem_euclid(180.0));
        let Some(case) = Case::check(&draft, &mut |_| {}) else { continue };
        let there = Seen::of(&case);
        nominal.extend(there.get(items::CHOSEN_RESIDUAL).map(|left| (f64::from(turn), left)));
        expected.extend(there.get(items::CHOSEN_EXPECTED).map(|left| (f64::from(turn), left)));
    }
    if nominal.is_empty() {
        return Err(wanted);
    }
    let none = seen.get(items::PLANNED_ASTIGMATISM).ok_or(wanted)?;
    let ends = [-f64::from(SIDE), f64::from(SIDE)];
    let (label, (eye, _)) = (text::value(seen.draft, entries::ID), View::of(seen, (0.0, 0.0)).title());
    let label = if label.is_empty() { label } else { format!(", {label}") };
    let mut notes = vec![format!(
        "By {name}. 0 is {}, as chosen. Expected: mean size of what is left with cornea, incision and lens scattering as on \
         the card.",
        text::value(seen.draft, entries::LENS_AXIS)
    )];
    notes.extend(seen.foot());
    Plot {
        title: format!("{eye}{label}: cylinder left at the cornea where the lens lies turned"),
        across: "turned, degrees, counter-clockwise plus".to_owned(),
        up: "cylinder left, D".to_owned(),
        square: false,
        curves: vec![
            Curve::line("as planned, nominal", nominal),
            Curve::dashed("expected, with scatter", expected),
            Curve::thin("no toric lens at all", ends.map(|end| (end, none)).to_vec()),
        ],
        notes,
    }
    .draw()
    .map_err(|_| "a drawing that can be written")
}
