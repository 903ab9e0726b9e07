//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::layout::ByMethod;
use crate::part::PartRows;
use ocellus_core::optics::{surfaces, thick};
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(7);

pub(crate) const KEY: &str = "thick";
pub(crate) const HEADING: &str = "The lens itself";

entries! {
    ["lens"]
    FRONT_RADIUS "lens_front_radius_mm" "lr1" (LensRadius 2) "front lens radius, convex is plus";
    BACK_RADIUS "lens_back_radius_mm" "lr2" (LensRadius 2) "back lens radius, convex is minus";
    LENS_CENTRE "lens_centre_mm" "lct" (LensCentre 2) "thickness of the lens at its centre";
    LENS_INDEX "lens_index" "lindex" (LensIndex 3) "refractive index of the lens";
}

items! {
    THICK_POWER "thick_power_d" "D" 2 signed "power of the lens, by its surfaces", Identity Two;
    THICK_FRONT "thick_front_mm" "mm" 3 signed "front principal plane, from vertex", Identity Two;
    THICK_BACK "thick_back_mm" "mm" 3 signed "back principal plane, from vertex", Identity Two;
    AS_FRONT "position_as_front_d" "D" 2 signed "if position is front vertex", Identity Two;
    AS_CENTRE "position_as_centre_d" "D" 2 signed "if it is the centre", Identity Two;
    AS_BACK "position_as_back_d" "D" 2 signed "if it is the back vertex", Identity Two;
}

cautions! {
    SURFACES_DISAGREE "surfaces_disagree" Caution "Check the surfaces entered: they make another power than the label, by more than a label may be off.", Iso11979 Memory;
    POSITION_PLANE "position_plane" Note "A lens position is that of a thin lens, so of principal planes. Shown is what would change if a method meant a vertex or the centre instead; a lens constant hides which.", Identity Two;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[ByMethod::of(columns! {
        items::AS_FRONT => "position is" "front vertex";
        items::AS_CENTRE => "position is" "centre";
        items::AS_BACK => "position is" "back vertex";
    })],
    tables: &[thick::Working::table(), surfaces::System::table(), surfaces::System::le_grand_table()],
    prose: &[thick::Working::prose(), surfaces::System::prose(), surfaces::System::prose()],
    subjects: &[("thick", "The lens itself"), ("schematic", "Schematic eyes from their surfaces")],
    ..part_rows!()
};
