//! What goes in, what comes out, what to know first.

use crate::id::PartId;
use crate::layout::{Below, ByMethod, Led};
use crate::part::PartRows;
use crate::parts::toric::table::entries as toric;
use ocellus_core::astigmatism::turning;
use ocellus_text::Text;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(22);

pub(crate) const KEY: &str = "turn";
pub(crate) const HEADING: &str = "Turning the lens";

entries! {}

items! {
    NOW_CYLINDER "now_cylinder_d" "D" 2 signed "plus cylinder now, at the cornea", Identity Two;
    NOW_AXIS "now_axis_deg" "deg" 0 plain "its axis", Identity Two;
    TURN_TO "turn_to_deg" "deg" 0 plain "best meridian for the mark", Identity Two;
    TURN_CLOCK "turn_clockwise_deg" "deg" 0 plain "clockwise by", Identity Two;
    TURN_COUNTER "turn_counter_clockwise_deg" "deg" 0 plain "or counter-clockwise by", Identity Two;
    TURN_LEFT "turn_left_d" "D" 2 signed "cylinder left, at cornea", Identity Two;
    TURNED_SPHERE "turned_sphere_d" "D" 2 signed "in spectacles, sphere", Identity Two;
    TURNED_CYLINDER "turned_cylinder_d" "D" 2 signed "minus cylinder", Identity Two;
    TURNED_AXIS "turned_axis_deg" "deg" 0 plain "its axis", Identity Two;
    TURN_BY "turn_by_deg" "deg" 0 signed "turned by", Here Chosen;
    TURN_RESIDUAL "turn_residual_d" "D" 2 plain "cylinder left, at the cornea", Identity Two;
}

cautions! {
    TURN_DISAGREES "turn_disagrees" Caution "Before turning read the refraction, its signs and axis, and the mark again: refraction, lens and planned cornea do not fit by more than 1 D.", Here Chosen;
    TURN_AWAY "turn_away" Caution "Before turning read the sign of the cylinder and its axis again: +0.75 x 40 is -0.75 x 130, not -0.75 x 40. The best turn leads away from the meridian chosen.", Here Chosen;
    MARK_ACROSS "mark_across" Caution "Read the mark again: was it read across the lens? It was found more than 45 deg from the meridian chosen.", Here Chosen;
    TURN_LITTLE "turn_little" Caution "Turning does not help: the lens lies where it leaves least, to less than a degree.", Identity Two;
    TURN_NOT_ENOUGH "turn_not_enough" Caution "Read the refraction and the lens cylinder again: the best turn still leaves more than 0.5 D, and turning alone is not the remedy.", SmallCylinder2014 Read;
    TURN_NEEDS "turn_needs" Note "Enter the refraction after, the meridian where the mark lies, and the lens cylinder: then it is shown how to turn the lens.", Here Chosen;
    TURN_SENSE "turn_sense" Caution "Say FROM and TO, never a direction alone. Which way a lens may be turned, its label says. Directions are those of the eye seen from the front: the same for both eyes and from every seat; only a mirror reverses them.", Identity Two;
    TURN_WITHIN_NOISE "turn_within_noise" Caution "Expect no gain that can be measured: the best turn takes away no more than the scatter of a refraction.", Here Chosen;
    TURN_LEAVES "turn_leaves" Note "Look elsewhere for what the best turn leaves: it comes not from the lens's angle, but from its cylinder, the cornea or the refraction. Why the lens lies so, and when to turn it, is the surgeon's question.", Here Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    first: &[
        cautions::TURN_AWAY,
        cautions::TURN_DISAGREES,
        cautions::MARK_ACROSS,
        cautions::TURN_LITTLE,
        cautions::TURN_WITHIN_NOISE,
        cautions::TURN_NOT_ENOUGH,
    ],
    by_method: &[
        ByMethod {
            below: Below::Around(
                &[
                    text!("FROM "),
                    text!(" TO the meridian in the first column, the eye seen from the front; both ways end there."),
                ],
                toric::MARK_FOUND.id(),
            ),
            ..ByMethod::of(columns! {
                items::TURN_TO => "best for" "the mark";
                items::TURN_CLOCK => "clockwise" "by";
                items::TURN_COUNTER => "or counter-" "clockwise by";
                items::TURN_LEFT => "cylinder" "left";
            })
        },
        ByMethod::of(columns! {
            items::TURNED_SPHERE => "spectacles," "sphere";
            items::TURNED_CYLINDER => "minus" "cylinder";
            items::TURNED_AXIS => "its" "axis";
        }),
    ],
    led: &[Led {
        leader: items::TURN_BY,
        heading: text!("Cylinder left at the cornea, D, after a turn from where it lies (+ is counter-clockwise):"),
        of: text!("turned"),
        cells: &[(items::TURN_RESIDUAL, Text::EMPTY)],
        chosen: None,
    }],
    short_entries: &[toric::MARK_FOUND.id()],
    short_items: &[items::TURN_TO, items::TURN_CLOCK, items::TURN_COUNTER, items::TURN_LEFT],
    tables: &[turning::Working::table()],
    prose: &[turning::Working::prose()],
    subjects: &[("turn", "Turning a lens that sits wrong")],
    ..part_rows!()
};
