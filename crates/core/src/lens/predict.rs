//! What each method says of one case, which of them may be compared, and why the others may not.

use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{AcdFrom, EyeState, KKind, PreviousSurgery};
use crate::constant::eye::{DEPARTS, LCOR_TURNS, RETINA_TURNS};
use crate::constant::lens::{HOFFERQ_MAX, HOFFERQ_MIN};
use crate::error::Error;
use crate::field::Field;
use crate::lens::vergence::ThinEye;
use crate::lens::{Method, convert, haigis, hofferq, holladay1, srk2, srkt, t2};
use crate::quantity::{ChamberDepth, LensPower, Refraction, Vertex};
use crate::sink::Sink;

/// One method's view of one eye: all its intermediate values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Prediction {
    /// By SRK II.
    Srk2(srk2::Working),
    /// By SRK/T.
    Srkt(srkt::Working),
    /// By T2.
    T2(t2::Working),
    /// By Holladay 1.
    Holladay1(holladay1::Working),
    /// By Hoffer Q.
    HofferQ(hofferq::Working),
    /// By Haigis.
    Haigis(haigis::Working),
}

impl Prediction {
    /// What the method's optics make of the eye.
    pub fn optics(&self) -> Optics {
        Optics::Thin(match self {
            Prediction::Srk2(w) => return Optics::Line(w.line()),
            Prediction::Srkt(w) => w.thin_eye(),
            Prediction::T2(w) => w.thin_eye(),
            Prediction::Holladay1(w) => w.thin_eye(),
            Prediction::HofferQ(w) => w.thin_eye(),
            Prediction::Haigis(w) => w.thin_eye(),
        })
    }

    /// Streams the intermediate values.
    pub fn show(&self, sink: &mut dyn Sink) {
        match self {
            Prediction::Srk2(w) => w.show(sink),
            Prediction::Srkt(w) => w.show(sink),
            Prediction::T2(w) => w.show(sink),
            Prediction::Holladay1(w) => w.show(sink),
            Prediction::HofferQ(w) => w.show(sink),
            Prediction::Haigis(w) => w.show(sink),
        }
    }
}

/// From a lens to a refraction and back, for one method's view of one eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Optics {
    /// By vergence through a thin eye.
    Thin(ThinEye),
    /// Along SRK II's straight line, which knows no lens position.
    Line(srk2::Line),
}

impl Optics {
    /// The eye as the method's optics see it; SRK II has none.
    pub fn thin_eye(&self) -> Option<ThinEye> {
        match self {
            Optics::Thin(eye) => Some(*eye),
            Optics::Line(_) => None,
        }
    }

    /// The exact lens power for a refraction, D.
    ///
    /// # Errors
    /// As [`ThinEye::power`].
    pub fn power(&self, target: Refraction, vertex: Vertex) -> Result<f64, Error> {
        match self {
            Optics::Thin(eye) => eye.power(target, vertex).map(|w| w.power),
            Optics::Line(w) => Ok(w.power(target)),
        }
    }

    /// The refraction that a lens leaves, D.
    ///
    /// # Errors
    /// As [`ThinEye::refraction`].
    pub fn refraction(&self, power: LensPower, vertex: Vertex) -> Result<f64, Error> {
        match self {
            Optics::Thin(eye) => eye.refraction(power, vertex).map(|w| w.rx),
            Optics::Line(w) => Ok(w.refraction(power)),
        }
    }
}

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
    doubts: [Option<Code>; 4],
}

/// What every method answers for one eye and one set of constants; `None` where a method has no answer.
pub(crate) type Answers = [Option<Answer>; 6];

/// No answer yet.
pub(crate) const NONE: Answers = [None; 6];

/// Why the ordinary methods must not be used on this eye at all.
pub(crate) fn refusals(case: &Case) -> impl Iterator<Item = Caution> {
    let surgery = match case.previous_surgery {
        PreviousSurgery::None => None,
        PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser => Some(Code::PreviousSurgery),
        PreviousSurgery::RadialCuts
        | PreviousSurgery::Graft
        | PreviousSurgery::Keratoconus
        | PreviousSurgery::Unknown => Some(Code::CorneaUnfit),
    };
    let total = (case.k_kind == KKind::Total).then_some(Code::TotalK);
    let oil = (case.eye_state == EyeState::SiliconeOil).then_some(Code::SiliconeOil);
    [(surgery, Field::PreviousSurgery), (total, Field::KKind), (oil, Field::EyeState)]
        .into_iter()
        .filter_map(|(code, field)| Some(Caution::about(code?, field)))
}

/// One method for the lens of a case.
///
/// # Errors
/// The caution that says what the method lacks. Refusals of all methods are not asked here: see [`answers`].
pub fn predict(method: Method, case: &Case) -> Result<Prediction, Caution> {
    predict_with(method, case, &case.constants())
}

/// One method for another lens in the same eye.
pub(crate) fn predict_with(method: Method, case: &Case, constants: &Constants) -> Result<Prediction, Caution> {
    let (al, cornea) = (case.axial_length, &case.cornea);
    let needs_constant = Caution::of(Code::NeedsConstant, method);
    let converts = |_: Error| Caution::of(Code::NoSolution, method);
    let a = constants.a.ok_or(needs_constant);
    Ok(match method {
        Method::Srk2 => Prediction::Srk2(srk2::working(al, cornea, a?)),
        Method::Srkt => Prediction::Srkt(srkt::working(al, cornea, a?)),
        Method::T2 => Prediction::T2(t2::working(al, cornea, a?)),
        Method::Holladay1 => {
            let sf = match constants.surgeon_factor {
                Some(sf) => sf,
                None => convert::surgeon_factor(a?).map_err(converts)?,
            };
            Prediction::Holladay1(holladay1::working(al, cornea, sf))
        }
        Method::HofferQ => {
            let pacd = match (constants.pacd, constants.a, constants.surgeon_factor) {
                (Some(pacd), _, _) => pacd,
                (None, Some(a), _) => convert::surgeon_factor(a).and_then(convert::pacd).map_err(converts)?,
                (None, None, sf) => convert::pacd(sf.ok_or(needs_constant)?).map_err(converts)?,
            };
            Prediction::HofferQ(hofferq::working(al, cornea, pacd))
        }
        Method::Haigis => {
            let a0 = match constants.haigis_a0 {
                Some(a0) => a0,
                None => convert::haigis(a?).map_err(converts)?.0,
            };
            let (a1, a2) = match constants.haigis_slopes {
                Some(slopes) => slopes,
                None => convert::usual_slopes().map_err(converts)?,
            };
            let own = (a0, a1, a2);
            Prediction::Haigis(haigis::working(al, cornea, chamber_depth(case)?, own))
        }
    })
}

/// The chamber depth Haigis means: from the front of the cornea to a natural lens.
fn chamber_depth(case: &Case) -> Result<ChamberDepth, Caution> {
    let lacks = |code| Caution::of(code, Method::Haigis);
    let (acd, from) = case.acd().ok_or(lacks(Code::NeedsAcd))?;
    if case.eye_state != EyeState::Phakic {
        return Err(lacks(Code::NotMeasuredPhakic));
    }
    match from {
        AcdFrom::Epithelium => Ok(acd),
        AcdFrom::Endothelium => {
            let cct = case.corneal_thickness().ok_or(lacks(Code::NeedsCct))?;
            ChamberDepth::from_mm(acd.mm() + cct.um() / 1000.0).map_err(|_| lacks(Code::NoSolution))
        }
    }
}

/// What every method says of a case's lens, with the cautions that go with each.
pub fn answers(case: &Case, report: &mut dyn FnMut(Caution)) -> [Option<Answer>; 6] {
    let mut answers = NONE;
    answer_all(case, &case.constants(), report, &mut answers);
    answers
}

/// The same, of these only those that a card may show.
pub(crate) fn answer_shown(case: &Case, report: &mut dyn FnMut(Caution), answers: &mut Answers) {
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
    for (slot, method) in answers.iter_mut().zip(Method::ALL) {
        match answer(*method, case, constants) {
            Ok(answer) => *slot = Some(answer),
            Err(caution) => report(caution),
        }
    }
    let t2 = answers.iter().flatten().find(|a| a.method == Method::T2).map(|a| a.power);
    for answer in answers.iter_mut().flatten() {
        let departs = t2.is_some_and(|t2| (answer.power - t2).abs() > DEPARTS.get());
        if let (Method::Srkt, [_, slot, ..]) = (answer.method, &mut answer.doubts) {
            *slot = departs.then_some(Code::DepartsFromT2);
        }
        for code in answer.doubts.into_iter().flatten() {
            if matches!(code, Code::Radicand | Code::DepartsFromT2 | Code::Unoptimised) {
                (answer.compared, answer.guided) = (false, false);
            }
            answer.withheld |= code == Code::Radicand;
            report(Caution::of(code, answer.method));
        }
    }
}

#[inline(never)]
fn answer(method: Method, case: &Case, constants: &Constants) -> Result<Answer, Caution> {
    let prediction = predict_with(method, case, constants)?;
    let optics = prediction.optics();
    let power = optics.power(case.target, case.vertex).map_err(|_| Caution::of(Code::NoSolution, method))?;
    Ok(Answer {
        method,
        optics,
        power,
        compared: method != Method::Srk2,
        guided: method.guided(case.axial_length),
        withheld: false,
        doubts: doubts(&prediction, case.axial_length.mm(), constants),
    })
}

/// What speaks against one answer by itself.
fn doubts(prediction: &Prediction, al: f64, constants: &Constants) -> [Option<Code>; 4] {
    let when = |is: bool, code| is.then_some(code);
    let retina = when(al > RETINA_TURNS.get(), Code::RetinaTurned);
    match prediction {
        Prediction::Srk2(_) => [Some(Code::Superseded), None, None, None],
        // the second place is kept for its departure from T2
        Prediction::Srkt(working) => {
            [when(working.radicand < 0.0, Code::Radicand), None, retina, when(al > LCOR_TURNS.get(), Code::LcorTurned)]
        }
        Prediction::T2(_) => [retina, None, None, None],
        Prediction::Holladay1(_) => [when(constants.surgeon_factor.is_none(), Code::Converted), None, None, None],
        Prediction::HofferQ(_) => [
            when(constants.pacd.is_none(), Code::Converted),
            when(!(HOFFERQ_MIN.get()..=HOFFERQ_MAX.get()).contains(&al), Code::Clamped),
            None,
            None,
        ],
        Prediction::Haigis(working) => [
            when(unoptimised(working, constants), Code::Unoptimised),
            when(constants.haigis_a0.is_some() && constants.haigis_slopes.is_none(), Code::UsualSlopes),
            None,
            None,
        ],
    }
}

/// Converted, or entered as what the conversion gives.
fn unoptimised(working: &haigis::Working, constants: &Constants) -> bool {
    let converted = constants.a.and_then(|a| convert::haigis(a).ok());
    constants.haigis_a0.is_none()
        || converted.is_some_and(|(a0, a1, a2)| {
            working.a1 == a1.get() && working.a2 == a2.get() && (working.a0 - a0.mm()).abs() < 0.006
        })
}
