//! The lens for a torn capsule: its own model, its own constant, its own place.

use super::entries;
use crate::case::{Backup, Case};
use crate::caution::{Caution, Code};
use crate::choice::{BackupPlace, LensStyle};
use crate::constant::eye::{BACKUP_FAR, THUMB_LESS, THUMB_MUCH};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::answer::{Answer, Answers, NONE, answer_all};
use crate::lens::ladder::range;
use crate::lens::predict::refusals;
use crate::lens::vergence::ThinEye;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Backup);
    let Some(backup) = case.backup() else {
        return sink.caution(Caution::about(Code::NoBackup, Field::BackupModel));
    };
    entries(
        case.draft(),
        sink,
        &[Field::BackupModel, Field::BackupPower, Field::BackupPlace, Field::BackupStyle, Field::BackupAConstant],
    );
    match backup.style {
        Some(LensStyle::OnePiece) => {
            return sink.caution(Caution::about(Code::OnePieceSulcus, Field::BackupStyle));
        }
        Some(LensStyle::ThreePiece) => {}
        None => sink.caution(Caution::about(Code::BackupStyleUnknown, Field::BackupStyle)),
    }
    if refusals(case).next().is_some() {
        return;
    }
    match backup.place {
        BackupPlace::Sulcus => {
            entries(case.draft(), sink, &[Field::SulcusShift]);
            sink.caution(Caution::about(Code::SulcusThumb, Field::BackupPlace));
        }
        BackupPlace::Captured => sink.caution(Caution::about(Code::CapturedOptic, Field::BackupPlace)),
    }
    // the cautions of the methods were said of the first lens; what goes for this one is said once, below
    let mut answers = NONE;
    answer_all(case, &backup.constants(), &mut |_| {}, &mut answers);
    let compared = placed(case, &backup, &answers)
        .filter_map(|(answer, eye)| Some((answer, eye.power(case.target, case.vertex).ok()?.power)));
    for (answer, there) in compared.clone() {
        sink.item(Item::of(What::BackupBag, answer.method, answer.power));
        sink.item(Item::of(What::BackupExact, answer.method, there));
        sink.item(Item::of(What::BackupStep, answer.method, there - answer.power));
        // of a minus lens the rule says nothing: there the sulcus wants more
        if backup.place == BackupPlace::Sulcus && answer.power > 0.0 {
            sink.item(Item::of(What::ThumbLess, answer.method, answer.power - THUMB_LESS.get()));
            sink.item(Item::of(What::ThumbMuch, answer.method, answer.power - THUMB_MUCH.get()));
        }
    }
    sink.caution(Caution::general(Code::BackupMethods));
    chosen(case, range(compared.map(|(_, there)| there)), sink);
}

/// The eyes of the methods compared, the lens moved from the bag to where it would go.
pub(crate) fn placed<'a>(
    case: &'a Case,
    backup: &'a Backup,
    answers: &'a Answers,
) -> impl Iterator<Item = (&'a Answer, ThinEye)> + Clone {
    let forward = match backup.place {
        BackupPlace::Sulcus => backup.shift.mm(),
        BackupPlace::Captured => 0.0,
    };
    let fit = backup.style != Some(LensStyle::OnePiece) && refusals(case).next().is_none();
    answers.iter().flatten().filter(move |a| fit && a.compared && !a.withheld).filter_map(move |answer| {
        let eye = answer.optics.thin_eye()?;
        Some((answer, eye.forward(forward)))
    })
}

/// Is the backup power chosen one that the methods ask for?
fn chosen(case: &Case, asked: Option<(f64, f64)>, sink: &mut dyn Sink) {
    let Some(power) = case.draft().number(Field::BackupPower) else {
        return sink.caution(Caution::about(Code::NoBackupPower, Field::BackupPower));
    };
    if power < 0.0 {
        sink.caution(Caution::about(Code::MinusPower, Field::BackupPower));
    }
    if asked.is_some_and(|(least, most)| power < least - BACKUP_FAR.get() || power > most + BACKUP_FAR.get()) {
        sink.caution(Caution::about(Code::BackupFar, Field::BackupPower));
    }
}
