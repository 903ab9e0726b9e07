//! The lens for a torn capsule: its own model, its own constant, its own place.

use super::entries;
use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{BackupPlace, LensStyle};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::predict::{answers_with, refusals};
use crate::lens::vergence::ThinEye;
use crate::sink::Sink;

pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Backup);
    let Some(backup) = &case.backup else {
        return sink.caution(Caution::about(Code::NoBackup, Field::BackupModel));
    };
    entries(
        case,
        sink,
        &[Field::BackupModel, Field::BackupPower, Field::BackupPlace, Field::BackupStyle, Field::BackupAConstant],
    );
    match (backup.place, backup.style) {
        (BackupPlace::Sulcus, Some(LensStyle::OnePiece)) => {
            return sink.caution(Caution::about(Code::OnePieceSulcus, Field::BackupStyle));
        }
        (BackupPlace::Sulcus, style) => {
            if style.is_none() {
                sink.caution(Caution::about(Code::BackupStyleUnknown, Field::BackupStyle));
            }
            entries(case, sink, &[Field::SulcusShift]);
            sink.caution(Caution::about(Code::SulcusThumb, Field::BackupPlace));
        }
        (BackupPlace::Captured, _) => sink.caution(Caution::about(Code::CapturedOptic, Field::BackupPlace)),
    }
    if refusals(&case.biometry).next().is_some() {
        return;
    }
    let forward = match backup.place {
        BackupPlace::Sulcus => backup.shift.mm(),
        BackupPlace::Captured => 0.0,
    };
    let constants = Constants { a: Some(backup.a), ..Constants::default() };
    // the cautions of the methods were said of the first lens; all but the unoptimised go for this one too
    let answers = answers_with(&case.biometry, &constants, (case.target, case.vertex), &mut |_| {});
    for answer in answers.iter().flatten().filter(|a| a.compared && !a.withheld) {
        let Some(eye) = answer.prediction.thin_eye() else { continue };
        let moved = ThinEye { elp: eye.elp - forward, ..eye };
        let Ok(there) = moved.power(case.target, case.vertex) else { continue };
        sink.item(Item::of(What::BackupBag, answer.method, answer.power));
        sink.item(Item::of(What::BackupExact, answer.method, there.power));
        sink.item(Item::of(What::BackupStep, answer.method, there.power - answer.power));
    }
}
