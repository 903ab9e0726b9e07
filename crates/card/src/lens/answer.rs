//! What each method says of one case, which of them may be compared, and why the others may not.

use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{KAfterFrom, SecondFor};
use crate::constant::eye::{DEPARTS, LCOR_TURNS, RETINA_TURNS};
use crate::field::Field;
use crate::lens::predict::{adjusted, after_laser, length, methods, predict_with, refusals, two_corneas};
use crate::lens::prediction::{Optics, Prediction};
use crate::lens::slope::Chain;
use crate::lens::vergence::ThinEye;
use crate::lens::{Method, convert, hofferq, srkt, t2};

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
    /// Whether guidance names it for this axial length and nothing speaks against it here.
    pub guided: bool,
    /// Whether a card must not show it (a table of cases still does, with the code).
    pub withheld: bool,
    /// What speaks against it.
    doubts: Doubts,
}

impl Answer {
    /// Whether anything speaks against it, a constant that is not the method's own among that.
    pub(crate) fn in_doubt(&self) -> bool {
        self.doubts.iter().any(Option::is_some)
    }
}

/// What speaks against an answer; the last place is kept for a departure from T2.
type Doubts = [Option<Code>; 5];

/// What every method answers for one eye and one set of constants; `None` where a method has no answer.
pub(crate) type Answers = [Option<Answer>; 6];

/// No answer yet.
pub(crate) const NONE: Answers = [None; 6];

/// What every method that may be asked about this eye says of a case's lens, with the cautions that go with each.
pub fn answers(case: &Case, report: &mut dyn FnMut(Caution)) -> [Option<Answer>; 6] {
    let mut answers = NONE;
    answer_all(case, &case.constants(), report, &mut answers);
    answers
}

/// What the ordinary methods say of it, in their order; after a laser nothing.
pub fn ordinary_answers(case: &Case, report: &mut dyn FnMut(Caution)) -> [Option<Answer>; 6] {
    if after_laser(case).is_some() {
        report(Caution::about(Code::PreviousSurgery, Field::PreviousSurgery));
        return NONE;
    }
    answers(case, report)
}

/// The same, of these only those that a card may show.
pub(crate) fn answer_shown(case: &Case, report: &mut dyn FnMut(Caution), answers: &mut Answers) {
    // an eye that keeps its lens needs another than these methods ask for
    if case.second_for() == Some(SecondFor::Added) {
        return;
    }
    let srk2 = case.says_yes(Field::ShowSrk2);
    let asked = |method| method != Method::Srk2 || srk2;
    let mut report = |caution: Caution| {
        if caution.method.is_none_or(asked) {
            report(caution);
        }
    };
    answer_all(case, &case.constants(), &mut report, answers);
    for slot in answers {
        if slot.is_some_and(|answer| answer.withheld || !asked(answer.method)) {
            *slot = None;
        }
    }
}

/// The same for any constants. Answers are filled in where they stand: six of them are much to hand about on a small
/// stack.
pub(crate) fn answer_all(case: &Case, constants: &Constants, report: &mut dyn FnMut(Caution), answers: &mut Answers) {
    let mut refused = false;
    for caution in refusals(case) {
        refused = true;
        report(caution);
    }
    if refused {
        return;
    }
    for (slot, method) in answers.iter_mut().zip(methods(case)) {
        match answer(*method, case, constants) {
            Ok(answer) => *slot = Some(answer),
            Err(caution) => report(caution),
        }
    }
    for answer in answers.iter_mut().flatten() {
        let t2 = beside_srkt(answer, case, constants);
        let departs = t2.is_some_and(|t2| (answer.power - t2).abs() > DEPARTS.get());
        let [.., slot] = &mut answer.doubts;
        *slot = departs.then_some(Code::DepartsFromT2);
        for code in answer.doubts.into_iter().flatten() {
            if matches!(code, Code::Radicand | Code::DepartsFromT2 | Code::Unoptimised) {
                (answer.compared, answer.guided) = (false, false);
            }
            answer.withheld |= code == Code::Radicand;
            report(Caution::of(code, answer.method));
        }
    }
    if after_laser(case).is_some() {
        let any = answers.iter().flatten().next().is_some();
        let code = if any { Code::AfterLaser } else { Code::PreviousSurgery };
        report(Caution::about(code, Field::PreviousSurgery));
    }
}

/// The power with T2's lens position in the optics of SRK/T, with one cornea or two; `None` for other methods.
#[inline(never)]
fn beside_srkt(answer: &Answer, case: &Case, constants: &Constants) -> Option<f64> {
    let method = answer.method;
    let cornea = match method {
        Method::Srkt => case.cornea,
        Method::DoubleSrkt => two_corneas(method, case).ok()?.0,
        _ => return None,
    };
    let elp = t2::working(length(method, case).ok()?, &cornea, constants.a?).elp;
    ThinEye { elp, ..answer.optics.thin_eye()? }.power(case.target, case.vertex).ok().map(|w| w.power)
}

#[inline(never)]
fn answer(method: Method, case: &Case, constants: &Constants) -> Result<Answer, Caution> {
    answer_of(&predict_with(method, case, constants)?, method, case, constants)
}

/// What a method answers, from its view of the eye.
fn answer_of(prediction: &Prediction, method: Method, case: &Case, constants: &Constants) -> Result<Answer, Caution> {
    let no_solution = Caution::of(Code::NoSolution, method);
    let optics = prediction.optics();
    // a lens before the cornea is none, whatever the equations make of it
    if optics.thin_eye().is_some_and(|eye| eye.elp <= 0.0) {
        return Err(no_solution);
    }
    let power = optics.power(case.target, case.vertex).map_err(|_| no_solution)?;
    let measured = case.axial_length.ok_or(no_solution)?;
    Ok(Answer {
        method,
        optics,
        power,
        compared: method != Method::Srk2,
        guided: method.guided(measured),
        withheld: false,
        doubts: doubts(prediction, case, constants),
    })
}

/// One method's answer for the lens of the case, where a card may show it, and how its numbers move with what was measured.
// within its caller, which is apart itself: two frames would hold the same
#[inline(always)]
pub(crate) fn moving(method: Method, case: &Case) -> Option<(Answer, Chain)> {
    let constants = case.constants();
    let prediction = predict_with(method, case, &constants).ok()?;
    let answer = answer_of(&prediction, method, case, &constants).ok()?;
    let chain = prediction.chain()?;
    let chain = adjusted(method, case).map_or(chain, |long| chain.of_length(long.slope));
    (!answer.doubts.contains(&Some(Code::Radicand))).then_some((answer, chain))
}

/// What speaks against one answer by itself.
fn doubts(prediction: &Prediction, case: &Case, constants: &Constants) -> Doubts {
    let when = |is: bool, code| is.then_some(code);
    let of_srkt = |w: &srkt::Working| {
        let long = |limit: f64, code| when(w.measured_al > limit, code);
        [
            when(w.radicand < 0.0, Code::Radicand),
            None,
            long(RETINA_TURNS.get(), Code::RetinaTurned),
            long(LCOR_TURNS.get(), Code::LcorTurned),
            None,
        ]
    };
    let of_holladay1 = [when(constants.surgeon_factor.is_none(), Code::Converted), None, None, None, None];
    let of_hofferq = |w: &hofferq::Working| {
        [when(constants.pacd.is_none(), Code::Converted), None, when(w.a != w.al, Code::Clamped), None, None]
    };
    let of_haigis = |own| {
        [
            when(unoptimised(own, constants), Code::Unoptimised),
            when(constants.haigis_a0.is_some() && constants.haigis_slopes.is_none(), Code::UsualSlopes),
            None,
            None,
            None,
        ]
    };
    // double-K stands and falls with its two corneas
    let history = when(case.k_after_from() == Some(KAfterFrom::History), Code::KFromHistory);
    let double = |[first, _, third, fourth, _]: Doubts| [first, history, third, fourth, None];
    match prediction {
        Prediction::Srk2(_) => [Some(Code::Superseded), None, None, None, None],
        Prediction::Srkt(w) => of_srkt(w),
        Prediction::T2(w) => [when(w.measured_al > RETINA_TURNS.get(), Code::RetinaTurned), None, None, None, None],
        Prediction::Holladay1(_) => of_holladay1,
        Prediction::HofferQ(w) => of_hofferq(w),
        Prediction::Haigis(w) => of_haigis((w.a0, w.a1, w.a2)),
        Prediction::ShammasPl(..) => [None; 5],
        Prediction::HaigisL(w) => of_haigis((w.a0, w.a1, w.a2)),
        Prediction::DoubleSrkt(w, _) => double(of_srkt(w)),
        Prediction::DoubleHolladay1(..) => double(of_holladay1),
        Prediction::DoubleHofferQ(w, _) => double(of_hofferq(w)),
    }
}

/// Converted, or entered as what the conversion gives.
fn unoptimised((own0, own1, own2): (f64, f64, f64), constants: &Constants) -> bool {
    let converted = constants.a.and_then(|a| convert::haigis(a).ok());
    constants.haigis_a0.is_none()
        || converted.is_some_and(|(a0, a1, a2)| own1 == a1.get() && own2 == a2.get() && (own0 - a0.mm()).abs() < 0.006)
}
