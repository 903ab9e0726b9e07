//! Before the first cut: the lines that apply to this case.

use crate::case::Case;
use crate::choice::Marked;
use crate::item::Part;
use crate::sign_off::SignOff;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::SignOff);
    for &line in SignOff::ALL {
        let applies = match line {
            SignOff::Marks => case.toric().is_some() && case.marked() != Some(Marked::Lying),
            SignOff::BackupBox => case.backup().is_some(),
            _ => true,
        };
        if applies {
            sink.sign_off(line);
        }
    }
}
