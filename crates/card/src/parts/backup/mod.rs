//! The lens for a torn capsule: its own model, its own constant, its own place.

pub mod choices;
pub mod limits;
pub mod table;

use crate::id::SignOffId;
use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::general::widened;
use crate::parts::lens::choices::LensStyle;
use crate::parts::lens::table::cautions::{BACKUP_STYLE_UNKNOWN, MINUS_POWER, ONE_PIECE_SULCUS};
use crate::parts::lens::table::entries::SULCUS_SHIFT;
use crate::parts::lens::{Answer, Answers, Constants, Lens, is_refused, refusals, show_method};
use crate::rule::Rule;
use choices::BackupPlace;
use limits::{BACKUP_FAR, THUMB_LESS, THUMB_MUCH};
use ocellus_core::lens::method::Method;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{AConstant, SulcusShift};
use table::entries::*;
use table::{cautions, items, sign_offs};

pub(crate) const RULES: &[Rule] = &[Rule::Together(
    &[BACKUP_MODEL.id(), BACKUP_A_CONSTANT.id(), BACKUP_STYLE.id(), BACKUP_POWER.id(), BACKUP_PLACE.id()],
    &[BACKUP_A_CONSTANT.id(), BACKUP_PLACE.id()],
)];

/// The lens for a torn capsule.
#[derive(Clone, Copy)]
struct Backup {
    a: AConstant,
    style: Option<LensStyle>,
    place: BackupPlace,
    shift: SulcusShift,
}

impl Backup {
    /// The backup lens, where there is one.
    fn of(eye: &Eye) -> Option<Backup> {
        Some(Backup {
            a: eye.get(BACKUP_A_CONSTANT)?,
            style: eye.get(BACKUP_STYLE),
            place: eye.get(BACKUP_PLACE)?,
            shift: eye.get(SULCUS_SHIFT)?,
        })
    }

    /// Its constants: one, from which the others are converted.
    fn constants(&self) -> Constants {
        Constants::One(self.a)
    }
}

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    let Some(backup) = Backup::of(eye) else {
        return out.about(cautions::NO_BACKUP, BACKUP_MODEL);
    };
    out.tell(const { &[BACKUP_MODEL.id()] });
    out.show(const { &[BACKUP_POWER.id(), BACKUP_PLACE.id(), BACKUP_STYLE.id(), BACKUP_A_CONSTANT.id()] });
    match backup.style {
        Some(LensStyle::OnePiece) => {
            return out.about(ONE_PIECE_SULCUS, BACKUP_STYLE);
        }
        Some(LensStyle::ThreePiece) => {}
        None => out.about(BACKUP_STYLE_UNKNOWN, BACKUP_STYLE),
    }
    if is_refused(eye) {
        return;
    }
    match backup.place {
        BackupPlace::Sulcus => {
            out.show(const { &[SULCUS_SHIFT.id()] });
            out.about(cautions::SULCUS_THUMB, BACKUP_PLACE);
        }
        BackupPlace::Captured => out.about(cautions::CAPTURED_OPTIC, BACKUP_PLACE),
    }
    // the cautions of the methods were said of the first lens; what goes for this one is said once, below
    let mut answers = Answers::none();
    answers.ask(eye, backup.constants(), None);
    let asked = in_place(eye, &backup, &answers, out);
    out.caution(cautions::BACKUP_METHODS);
    chosen(eye, asked, out);
}

/// The lens that each method asks for in its place, and the least and the most of them.
// apart, so that its room on the stack is not taken while the methods are asked
#[inline(never)]
fn in_place(eye: &Eye, backup: &Backup, answers: &Answers, out: &mut Out) -> Option<(f64, f64)> {
    let mut asked = None;
    for (answer, thin) in placed(eye, backup, answers) {
        let Ok(there) = thin.power(eye.target(), eye.vertex()).map(|w| w.power) else { continue };
        out.of(items::BACKUP_BAG, answer.power, answer.method);
        out.of(items::BACKUP_EXACT, there, answer.method);
        out.of(items::BACKUP_STEP, there - answer.power, answer.method);
        // of a minus lens the rule says nothing: there the sulcus wants more
        if backup.place == BackupPlace::Sulcus && answer.power > 0.0 {
            out.of(items::THUMB_LESS, answer.power - THUMB_LESS.get(), answer.method);
            out.of(items::THUMB_MUCH, answer.power - THUMB_MUCH.get(), answer.method);
        }
        asked = Some(widened(asked, there));
    }
    asked
}

pub(crate) fn signs(lens: &Lens) -> &'static [SignOffId] {
    if Backup::of(lens.eye).is_some() { &[sign_offs::BACKUP_BOX] } else { &[] }
}

/// The eyes of the methods compared, the lens moved from the bag to where it would go.
fn placed<'a>(
    eye: &'a Eye,
    backup: &'a Backup,
    answers: &'a Answers,
) -> impl Iterator<Item = (&'a Answer, ThinEye)> + Clone {
    let forward = match backup.place {
        BackupPlace::Sulcus => backup.shift.mm(),
        BackupPlace::Captured => 0.0,
    };
    let fit = backup.style != Some(LensStyle::OnePiece) && !is_refused(eye);
    answers.compared().filter(move |answer| fit && !answer.withheld).filter_map(move |answer| {
        let thin = answer.optics.thin_eye()?;
        Some((answer, thin.forward(forward)))
    })
}

/// Is the backup power chosen one that the methods ask for?
fn chosen(eye: &Eye, asked: Option<(f64, f64)>, out: &mut Out) {
    let Some(power) = eye.get(BACKUP_POWER).map(|power| power.d()) else {
        return out.about(cautions::NO_BACKUP_POWER, BACKUP_POWER);
    };
    if power < 0.0 {
        out.about(MINUS_POWER, BACKUP_POWER);
    }
    if asked.is_some_and(|(least, most)| power < least - BACKUP_FAR.get() || power > most + BACKUP_FAR.get()) {
        out.about(cautions::BACKUP_FAR, BACKUP_POWER);
    }
}

/// The method's own eye for the backup lens's constant, then the lens where it would go.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    let eye = lens.eye;
    refusals(eye, &mut |caution| out.pass(caution));
    let Some(backup) = Backup::of(eye) else { return false };
    let mut answers = Answers::none();
    answers.ask(eye, backup.constants(), None);
    let mut any = false;
    for (answer, thin) in placed(eye, &backup, &answers) {
        any |= show_placed(eye, &backup, answer.method, &thin, out);
    }
    any
}

/// One method's own part for the backup lens, and the lens where it would go.
#[inline(never)]
fn show_placed(eye: &Eye, backup: &Backup, method: Method, thin: &ThinEye, out: &mut Out) -> bool {
    let Ok(w) = thin.power(eye.target(), eye.vertex()) else { return false };
    show_method(method, eye, backup.constants(), out);
    out.of(items::BACKUP_EXACT, w.power, method);
    w.show(out);
    true
}
