//! What goes in, what comes out, what to know first.

use crate::entry::{GoesOn, misread};
use crate::id::PartId;
use crate::layout::Led;
use crate::part::PartRows;
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::site::{ClockSeen, SiteWord};
use ocellus_core::astigmatism::{cornea, group, incision, posterior, two_surfaces};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(13);

pub(crate) const KEY: &str = "cornea";
pub(crate) const HEADING: &str = "Astigmatism of the cornea";

entries! {
    ["posterior"]
    BACK_FROM "posterior_from" "back" (BackFrom) = 0 "back of the cornea taken from";
    BACK_R1 "posterior_r1_mm" "br1" (BackRadius 2) "back of the cornea, radius 1";
    BACK_R1_AXIS "posterior_r1_axis_deg" "br1axis" (Axis 0) "back of the cornea, axis 1";
    BACK_R2 "posterior_r2_mm" "br2" (BackRadius 2) "back of the cornea, radius 2";
    BACK_R2_AXIS "posterior_r2_axis_deg" "br2axis" (Axis 0) "back of the cornea, axis 2";
    ["incision"]
    INCISION_SITE "incision_site_deg" "site" (Site 0) "incision site, from the front", Site;
    SITE_WORD "incision_site_word" "siteword" (SiteWord) "incision site, in words";
    CLOCK_HOUR "incision_clock_h" "clock" (ClockHour 1) "incision site, clock hour";
    CLOCK_SEEN "clock_seen_from" "clockseen" (ClockSeen) "from where that clock is read";
    FLATTENING "incision_flattening_d" "sia" (Flattening 2) "surgeon's own flattening (SIA)";
    CENTROID "sia_centroid_d" "centroid" (Flattening 2) "surgeon's own centroid, size";
    CENTROID_AXIS "sia_centroid_axis_deg" "centroidaxis" (Axis 0) "meridian the centroid steepens";
    PAIRED_FLATTENING "paired_flattening_d" "pairsia" (Flattening 2) "flattening, paired cut opposite";
    OTHER_SITE "other_site_deg" "site2" (Site 0) "another cut's site, from the front", Site;
    OTHER_FLATTENING "other_flattening_d" "sia2" (Flattening 2) "flattening by that cut";
}

items! {
    SITE_DEGREES "incision_site_at_deg" "deg" 0 plain "incision site, from the front", Iso8429 Two, site;
    PLANNED_ASTIGMATISM "planned_astigmatism_d" "D" 2 plain "cornea after the incisions", Thibos1997 Two;
    PLANNED_AXIS "planned_axis_deg" "deg" 0 plain "steep meridian after them", Thibos1997 Two;
    PLANNED_FLAT "planned_flat_k_d" "D" 2 plain "flat K after them, by keratometry", Identity Two;
    PLANNED_STEEP "planned_steep_k_d" "D" 2 plain "steep K after them, by keratometry", Identity Two;
    BACK_SOURCE "posterior_source" "1" 0 plain "back of the cornea", Entered Entered, BackFrom;
    BACK_ASTIGMATISM "posterior_astigmatism_d" "D" 2 plain "astigmatism", Identity Two;
    BACK_AXIS "posterior_axis_deg" "deg" 0 plain "steep meridian", Identity Two;
    EDGE_DISTANCE "class_edge_deg" "deg" 1 plain "steep meridian from a class's edge", Eom2015 Read;
    EDGE_STEP "class_step_d" "D" 2 plain "step of the correction there", Identity Two;
}

cautions! {
    BACK_CORRECTED "back_corrected" Note "Measure the back of the cornea if you can: a published correction stands for it, made for corneas never operated on. Backs differ from eye to eye (0.34 +/- 0.14 D), and corrections from one another.", BackOfCornea2020 Read;
    BACK_MEASURED "back_measured" Note "Front and back are added as measured, with true indices; incisions stay in dioptres of 1.3375.", Identity Two;
    CLASS_EDGE "class_edge" Caution "Measure the cornea again: its steep meridian is within 5 deg of the edge of a class, where this correction makes the step shown. A slightly different reading may ask for another lens.", Eom2015 Chosen;
    SIA_IS_VECTOR "sia_is_vector" Note "Check that this is a mean of vectors, never a mean of sizes, which is larger: it is used as a vector along the incision.", Identity Two;
    CENTROID_ALONG "centroid_along" Caution "Check the centroid's meridian: it must be the one that becomes steeper. The one entered is that of the incision, where a cut usually flattens.", NoSource CommonPractice;
    BACK_FAR "back_far" Caution "Check radii and axes of the back: were they exchanged? As measured it has more than 0.9 D of astigmatism, or is steep sideways; of 7,829 backs 97.55 % are steep upright, with 0.34 +/- 0.14 D.", BackOfCornea2020 Chosen;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    led: &[Led {
        leader: items::BACK_SOURCE,
        heading: text!("The cornea after the incisions, with its back from each source, D and deg:"),
        of: text!("back from"),
        cells: &[(items::BACK_ASTIGMATISM, text!("astigmatism")), (items::BACK_AXIS, text!("steep at"))],
        chosen: Some(entries::BACK_FROM.id()),
    }],
    short_entries: &[entries::INCISION_SITE.id()],
    short_items: &[items::SITE_DEGREES],
    goes_on: &[
        GoesOn { first: entries::CENTROID.id(), mark: b'@', next: entries::CENTROID_AXIS.id() },
        GoesOn { first: entries::BACK_R1.id(), mark: b'@', next: entries::BACK_R1_AXIS.id() },
        GoesOn { first: entries::BACK_R2.id(), mark: b'@', next: entries::BACK_R2_AXIS.id() },
    ],
    misreads: &[
        misread(
            entries::FLATTENING.id(),
            -5.0,
            -0.01,
            text!("a sign; flattening is a size, and is entered without one"),
        ),
        misread(
            entries::CENTROID.id(),
            -5.0,
            -0.01,
            text!("a sign; a centroid's size has none, its meridian is the one it steepens"),
        ),
    ],
    tables: &[
        cornea::Working::table(),
        posterior::Working::table(),
        two_surfaces::Working::table(),
        incision::Working::table(),
        group::Summary::table(),
    ],
    prose: &[
        cornea::Working::prose(),
        posterior::Working::prose(),
        two_surfaces::Working::prose(),
        incision::Working::prose(),
        group::Summary::prose(),
    ],
    ..part_rows!()
};
