//! Risks that change the day.

use crate::case::{Case, RISKS};
use crate::caution::{Caution, Code};
use crate::constant::eye::GUIDANCE_LONG;
use crate::field::Field;
use crate::item::Part;
use crate::sink::Sink;

/// What each risk means for the day.
fn meaning(risk: Field) -> Option<Code> {
    Some(match risk {
        Field::FloppyIris => Code::FloppyIris,
        Field::Pseudoexfoliation => Code::Pseudoexfoliation,
        Field::WeakZonule => Code::WeakZonule,
        Field::PosteriorPolar => Code::PosteriorPolar,
        Field::Vitrectomised => Code::LongOrVitrectomised,
        Field::Guttata => Code::Guttata,
        Field::SmallPupil => Code::SmallPupil,
        Field::IodineAllergy => Code::IodineAllergy,
        Field::AntibioticAllergy => Code::AntibioticAllergy,
        _ => return None,
    })
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Risks);
    for &risk in RISKS {
        if case.draft().has(risk) {
            sink.entry(risk);
        }
        if let Some(code) = meaning(risk).filter(|_| case.says_yes(risk)) {
            sink.caution(Caution::about(code, risk));
        }
    }
    if !RISKS.iter().any(|risk| case.draft().has(*risk)) {
        sink.caution(Caution::general(Code::RisksUnanswered));
    }
    let long = case.axial_length.is_some_and(|al| al.mm() > GUIDANCE_LONG.get());
    if long && !case.says_yes(Field::Vitrectomised) {
        sink.caution(Caution::about(Code::LongOrVitrectomised, Field::AxialLength));
    }
}
