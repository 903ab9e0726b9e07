//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::layout::ByMethod;
use crate::part::PartRows;
use crate::parts::lens::choices::LensStyle;
use ocellus_core::quantity::*;

/// The number of this part.
pub(crate) const PART: PartId = PartId(10);

pub(crate) const KEY: &str = "backup";
pub(crate) const HEADING: &str = "Backup lens, if the capsule tears";

entries! {
    ["backup"]
    BACKUP_MODEL "backup_model" "bmodel" (name) "backup lens model";
    BACKUP_A_CONSTANT "backup_a_constant" "ba" (AConstant 2) "A-constant of the backup lens";
    BACKUP_STYLE "backup_style" "bstyle" (LensStyle) "how the backup lens is made";
    BACKUP_PLACE "backup_place" "bplace" (BackupPlace) "where the backup lens would go";
    BACKUP_POWER "backup_power_d" "biol" (LensPower 2) "backup power chosen, on its label", Spoken;
}

items! {
    BACKUP_BAG "backup_bag_d" "D" 2 signed "exact power in the bag", Identity Memory;
    BACKUP_EXACT "backup_power_d" "D" 2 signed "exact power in its place", Holladay1993 Memory;
    BACKUP_STEP "backup_change_d" "D" 2 signed "change for its place", Identity Memory;
    THUMB_LESS "backup_thumb_less_d" "D" 2 signed "rule of thumb, 0.5 D less", NoSource CommonPractice;
    THUMB_MUCH "backup_thumb_much_d" "D" 2 signed "rule of thumb, 1.0 D less", NoSource CommonPractice;
}

cautions! {
    NO_BACKUP "no_backup" Caution "Have a backup lens ready in case the capsule tears: none was entered.", NoSource CommonPractice;
    NO_BACKUP_POWER "no_backup_power" Caution "Choose a backup power and enter it as on its label: none was entered.", Here Chosen;
    BACKUP_FAR "backup_far" Caution "Check the backup power chosen: is it the lens that was meant? It is more than 1 D from what the methods ask for in its place.", WrongLens Chosen;
    BACKUP_METHODS "backup_methods" Note "Backup lens: Holladay 1 and Hoffer Q use constants converted from its A-constant; unoptimised Haigis, and SRK/T where it departs from T2, are left out.", Holladay2003 Two;
    SULCUS_THUMB "sulcus_thumb" Note "Do not use the rule of thumb (0.5 to 1.0 D less) for weak and strong lenses: there it is wrong. The power beside it is computed from the optics.", Holladay1993 Two;
    CAPTURED_OPTIC "captured_optic" Note "Power as in the bag: the optic is captured behind the rhexis.", NoSource CommonPractice;
}

sign_offs! {
    BACKUP_BOX "backup_box" "Backup lens in the room: model and power with its sign";
}

pub(crate) const ROWS: PartRows = PartRows {
    by_method: &[ByMethod::of(columns! {
        items::BACKUP_BAG => "exact power" "in the bag";
        items::BACKUP_EXACT => "exact power" "in place";
        items::BACKUP_STEP => "change for" "its place";
        items::THUMB_LESS => "by thumb" "0.5 D less";
        items::THUMB_MUCH => "by thumb" "1.0 D less";
    })],
    short_entries: &[entries::BACKUP_MODEL.id(), entries::BACKUP_POWER.id(), entries::BACKUP_PLACE.id()],
    short_items: &[items::BACKUP_EXACT],
    subjects: &[("backup", "Backup lens where it would go")],
    aside: &[items::THUMB_LESS, items::THUMB_MUCH],
    ..part_rows!()
};
