//! What each method says of one eye, which of them may be compared, and why the others may not.

use super::asked::{Asked, Constants, adjusted};
use super::limits::DEPARTS;
use super::table::cautions;
use super::table::entries::SHOW_SRK2;
use crate::caution::Caution;
use crate::entry_set::EntrySet;
use crate::id::CautionId;
use crate::parts::eye::Eye;
use crate::parts::eye::choices::{EyeState, KKind, PreviousSurgery};
use crate::parts::eye::table::entries::{EYE_STATE, K_KIND, PREVIOUS_SURGERY};
use crate::parts::general::choices::YesNo;
use crate::parts::general::range;
use crate::parts::laser::after_laser;
use crate::parts::target::choices::SecondFor;
use crate::parts::target::table::entries::SECOND_FOR;
use ocellus_core::lens::eye::Lack;
use ocellus_core::lens::guidance::named;
use ocellus_core::lens::method::Method;
use ocellus_core::lens::slopes::Chain;
use ocellus_core::lens::view::{Doubt, Doubts, Eyes, Optics, View};

/// What one method answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Which method.
    pub method: Method,
    /// What its optics make of the eye.
    pub optics: Optics,
    /// The exact lens power for the target, D.
    pub power: f64,
    /// Whether it counts in a spread.
    pub compared: bool,
    /// Whether guidance names it for this axial length and nothing is against it here.
    pub guided: bool,
    /// Whether a card must not show it (a table of cases still does, with the code).
    pub withheld: bool,
    /// Whether this card shows it.
    shown: bool,
    /// What is against it.
    doubts: Doubts,
    /// Whether it departs from its neighbour.
    departs: bool,
}

impl Answer {
    /// What a method answers, from its view of the eye.
    fn of(view: &dyn View, asked: &Asked) -> Result<Answer, Lack> {
        let (method, eye, optics) = (asked.method, asked.eye, view.optics());
        // a lens before the cornea is none, whatever the equations make of it
        if optics.thin_eye().is_some_and(|eye| eye.elp <= 0.0) {
            return Err(Lack::Solution);
        }
        let power = optics.power(eye.target(), eye.vertex())?;
        let departs = departs(view, eye, power);
        let doubts = view.doubts(asked);
        let is = |doubt| doubts.contains(&Some(doubt));
        let fit = !is(Doubt::Radicand) && !is(Doubt::Unoptimised) && !departs;
        let guided = named(method, eye.axial_length().ok_or(Lack::Solution)?);
        Ok(Answer {
            method,
            optics,
            power,
            compared: fit && !is(Doubt::Superseded),
            guided: fit && guided,
            withheld: is(Doubt::Radicand),
            shown: !is(Doubt::Radicand),
            doubts,
            departs,
        })
    }

    /// Whether anything is against it by itself, a constant that is not the method's own among that.
    pub(crate) fn in_doubt(&self) -> bool {
        self.doubts.iter().any(Option::is_some)
    }

    /// Reports what is against it.
    fn report(&self, report: &mut dyn FnMut(Caution)) {
        let mut of = |code| report(Caution::of(code, self.method));
        self.doubts.iter().flatten().for_each(|doubt| of(of_doubt(*doubt)));
        if self.departs {
            of(cautions::DEPARTS_FROM_T2);
        }
    }
}

/// Whether a power is far from that of the method beside it.
#[inline(never)]
fn departs(view: &dyn View, eye: &Eye, power: f64) -> bool {
    let beside = view.beside().and_then(|beside| beside.power(eye.target(), eye.vertex()).ok());
    beside.is_some_and(|beside| (power - beside.power).abs() > DEPARTS.get())
}

/// The caution that says so.
fn of_doubt(doubt: Doubt) -> CautionId {
    match doubt {
        Doubt::Radicand => cautions::RADICAND,
        Doubt::Converted => cautions::CONVERTED,
        Doubt::Unoptimised => cautions::UNOPTIMISED,
        Doubt::Superseded => cautions::SUPERSEDED,
        Doubt::UsualSlopes => cautions::USUAL_SLOPES,
        Doubt::KFromHistory => cautions::K_FROM_HISTORY,
        Doubt::Clamped => cautions::CLAMPED,
        Doubt::RetinaTurned => cautions::RETINA_TURNED,
        Doubt::LcorTurned => cautions::LCOR_TURNED,
    }
}

/// The caution that says what a method lacks.
fn of_lack(lack: Lack) -> CautionId {
    match lack {
        Lack::Length => cautions::NEEDS_LENGTH,
        Lack::Constant => cautions::NEEDS_CONSTANT,
        Lack::Depth => cautions::NEEDS_ACD,
        Lack::Thickness => cautions::NEEDS_CCT,
        Lack::NaturalLens => cautions::NOT_MEASURED_PHAKIC,
        Lack::KBefore => cautions::NEEDS_K_BEFORE,
        Lack::KAfter => cautions::NEEDS_K_AFTER,
        Lack::RawKAfter => cautions::RAW_K_AFTER,
        Lack::ThisEye => cautions::NOT_THIS_EYE,
        Lack::Cornea | Lack::Solution => cautions::NO_SOLUTION,
    }
}

/// Which methods may be asked about this eye.
pub(crate) fn methods(eye: &Eye) -> impl Iterator<Item = Method> + Clone {
    Method::of(if after_laser(eye).is_some() { Eyes::AfterLaser } else { Eyes::Ordinary })
}

/// Why no method must be used on this eye at all; the answer is whether there is a reason.
#[inline(never)]
pub(crate) fn refusals(eye: &Eye, report: &mut dyn FnMut(Caution)) -> bool {
    let surgery = match eye.previous_surgery() {
        PreviousSurgery::None | PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser => None,
        PreviousSurgery::RadialCuts
        | PreviousSurgery::Graft
        | PreviousSurgery::Keratoconus
        | PreviousSurgery::Unknown => Some(cautions::CORNEA_UNFIT),
    };
    let total = (eye.k_kind() == KKind::Total).then_some(cautions::TOTAL_K);
    let oil = (eye.state() == EyeState::SiliconeOil).then_some(cautions::SILICONE_OIL);
    let mut any = false;
    for (code, entry) in [(surgery, PREVIOUS_SURGERY.id()), (total, K_KIND.id()), (oil, EYE_STATE.id())] {
        if let Some(code) = code {
            report(Caution::about(code, entry));
            any = true;
        }
    }
    any
}

/// Whether no method must be used on this eye at all.
pub(crate) fn is_refused(eye: &Eye) -> bool {
    refusals(eye, &mut |_| {})
}

/// What one method says: its answer, or what it lacks.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Said {
    Answer(Answer),
    Lacks(Method, Lack),
}

/// What every method says of one eye by one set of constants. Nothing where none may be asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answers([Option<Said>; Method::MOST]);

impl Answers {
    /// Of no method.
    // a constant would lie in flash, and inlined it would be made in one place and copied to another
    #[inline(never)]
    pub(crate) fn none() -> Answers {
        Answers([None; Method::MOST])
    }

    /// Asks those that may be asked, or one of them. It is not their constructor: a device has room for them only once.
    #[inline(never)]
    pub(crate) fn ask(&mut self, eye: &Eye, constants: Constants, only: Option<Method>) {
        if is_refused(eye) {
            return;
        }
        let methods = methods(eye).filter(|method| only.is_none_or(|only| *method == only));
        for (slot, method) in self.0.iter_mut().zip(methods) {
            answer(eye, method, constants, slot);
        }
    }

    /// Those that there are.
    pub fn all(&self) -> impl Iterator<Item = &Answer> + Clone {
        self.0.iter().filter_map(|said| match said {
            Some(Said::Answer(answer)) => Some(answer),
            _ => None,
        })
    }

    /// Those that may be compared.
    pub(crate) fn compared(&self) -> impl Iterator<Item = &Answer> + Clone {
        self.all().filter(|answer| answer.compared)
    }

    /// What is against each, why there are no others, and why not all.
    pub fn report(&self, eye: &Eye, report: &mut dyn FnMut(Caution)) {
        self.report_some(eye, self.all().next().is_some(), report);
    }

    /// The same of some of the methods, where all are known to have any answer or none.
    pub(super) fn report_some(&self, eye: &Eye, any: bool, report: &mut dyn FnMut(Caution)) {
        if refusals(eye, report) {
            return;
        }
        for said in self.0.iter().flatten() {
            if let Said::Lacks(method, lack) = said {
                report(Caution::of(of_lack(*lack), *method));
            }
        }
        self.all().for_each(|answer| answer.report(report));
        if after_laser(eye).is_some() {
            let code = if any { cautions::AFTER_LASER } else { cautions::PREVIOUS_SURGERY };
            report(Caution::about(code, PREVIOUS_SURGERY));
        }
    }
}

// apart, so that its room on the stack is free again for the next
#[inline(never)]
fn answer(eye: &Eye, method: Method, constants: Constants, slot: &mut Option<Said>) {
    let (asked, lacks) = (Asked::of(eye, method, constants), |why| Some(Said::Lacks(method, why)));
    let viewed = method.view(&asked, &mut |view| {
        *slot = Answer::of(view, &asked).map_or_else(lacks, |answer| Some(Said::Answer(answer)));
    });
    if let Err(why) = viewed {
        *slot = lacks(why);
    }
}

/// How a method's numbers move with what was measured, by the constants of the lens of the case.
#[inline(never)]
pub(crate) fn chain(method: Method, eye: &Eye) -> Option<Chain> {
    let (asked, mut chain) = (Asked::of(eye, method, Constants::OfLens), None);
    method.view(&asked, &mut |view| chain = view.chain()).ok()?;
    match carried(method, eye) {
        Some(slope) => Some(chain?.of_length(slope)),
        None => chain,
    }
}

/// What of a length is carried on where a long eye's is adjusted.
#[inline(never)]
fn carried(method: Method, eye: &Eye) -> Option<f64> {
    Some(adjusted(method, eye)?.slope)
}

/// Whether the method that others have superseded is shown.
fn shows_superseded(eye: &Eye) -> bool {
    eye.get(SHOW_SRK2) == Some(YesNo::Yes)
}

/// An eye that keeps its lens needs another than these methods ask for.
fn keeps_its_lens(eye: &Eye) -> bool {
    eye.get(SECOND_FOR) == Some(SecondFor::Added)
}

/// An eye, and what the methods say of it and its lens.
pub struct Lens<'a> {
    /// The eye.
    pub eye: &'a Eye<'a>,
    answers: &'a Answers,
    read: EntrySet,
}

impl<'a> Lens<'a> {
    /// Asks every method that may be asked, in the room for their answers.
    #[inline(never)]
    pub(crate) fn of(eye: &'a Eye<'a>, answers: &'a mut Answers) -> Lens<'a> {
        let ((keeps, superseded), _) = eye.entered().aside(|| (keeps_its_lens(eye), shows_superseded(eye)));
        let ((), read) = eye.entered().aside(|| answers.ask(eye, Constants::OfLens, None));
        for said in answers.0.iter_mut().flatten() {
            if let Said::Answer(answer) = said {
                answer.shown &= !keeps && (superseded || answer.method != Method::Srk2);
            }
        }
        Lens { eye, answers, read }
    }

    /// Which methods may be asked.
    pub fn methods(&self) -> impl Iterator<Item = Method> + Clone {
        methods(self.eye)
    }

    /// What every method says; noted as read is what they asked for.
    pub fn answers(&self) -> &Answers {
        self.eye.entered().note_all(&self.read);
        self.answers
    }

    /// The answers that a card may show.
    pub(crate) fn shown(&self) -> impl Iterator<Item = &Answer> + Clone {
        self.eye.entered().note(const { &[SECOND_FOR.id(), SHOW_SRK2.id()] });
        self.answers().all().filter(|answer| answer.shown)
    }

    /// Those of them that may be compared.
    pub(crate) fn compared(&self) -> impl Iterator<Item = &Answer> + Clone {
        self.shown().filter(|answer| answer.compared)
    }

    /// The least and greatest of something, over the answers that may be compared.
    #[inline(never)]
    pub(crate) fn range(&self, of: &dyn Fn(&Answer) -> Option<f64>) -> Option<(f64, f64)> {
        range(self.compared().filter_map(of))
    }

    /// What is to be known of the answers shown.
    pub(super) fn report(&self, report: &mut dyn FnMut(Caution)) {
        if keeps_its_lens(self.eye) {
            return;
        }
        let superseded = shows_superseded(self.eye);
        self.answers().report(self.eye, &mut |caution| {
            if superseded || caution.method != Some(Method::Srk2) {
                report(caution);
            }
        });
    }
}
