//! What each method says of one case, which of them may be compared, and why the others may not.

use crate::case::{Biometry, Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{AcdFrom, EyeState, KKind, PreviousSurgery};
use crate::constant::eye::{DEPARTS, LCOR_TURNS, RETINA_TURNS};
use crate::constant::lens::{HOFFERQ_MAX, HOFFERQ_MIN};
use crate::error::Error;
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
    /// The eye as the method's optics see it; SRK II has none.
    pub fn thin_eye(&self) -> Option<ThinEye> {
        match self {
            Prediction::Srk2(_) => None,
            Prediction::Srkt(w) => Some(w.thin_eye()),
            Prediction::T2(w) => Some(w.thin_eye()),
            Prediction::Holladay1(w) => Some(w.thin_eye()),
            Prediction::HofferQ(w) => Some(w.thin_eye()),
            Prediction::Haigis(w) => Some(w.thin_eye()),
        }
    }

    /// The exact lens power for a refraction, D.
    ///
    /// # Errors
    /// As [`ThinEye::power`].
    pub fn power(&self, target: Refraction, vertex: Vertex) -> Result<f64, Error> {
        match (self, self.thin_eye()) {
            (_, Some(eye)) => eye.power(target, vertex).map(|w| w.power),
            (Prediction::Srk2(w), None) => Ok(w.power(target)),
            (_, None) => Err(Error::no_solution()),
        }
    }

    /// The refraction that a lens leaves, D.
    ///
    /// # Errors
    /// As [`ThinEye::refraction`].
    pub fn refraction(&self, power: LensPower, vertex: Vertex) -> Result<f64, Error> {
        match (self, self.thin_eye()) {
            (_, Some(eye)) => eye.refraction(power, vertex).map(|w| w.rx),
            (Prediction::Srk2(w), None) => Ok(w.refraction(power)),
            (_, None) => Err(Error::no_solution()),
        }
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

/// What one method answers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Which method.
    pub method: Method,
    /// Its intermediate values.
    pub prediction: Prediction,
    /// The exact lens power for the target, D.
    pub power: f64,
    /// Whether it counts in a spread.
    pub compared: bool,
    /// Whether guidance names it for this axial length and nothing speaks against it here.
    pub guided: bool,
    /// Whether a card must not show it (a table of cases still does, with the code).
    pub withheld: bool,
}

/// What every method answers for one eye and one set of constants; `None` where a method has no answer.
pub(crate) type Answers = [Option<Answer>; 6];

/// Why the ordinary methods must not be used on this eye at all.
pub(crate) fn refusals(biometry: &Biometry) -> impl Iterator<Item = Caution> {
    use crate::field::Field;
    let surgery = match biometry.previous_surgery {
        PreviousSurgery::None => None,
        PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser => Some(Code::PreviousSurgery),
        PreviousSurgery::RadialCuts
        | PreviousSurgery::Graft
        | PreviousSurgery::Keratoconus
        | PreviousSurgery::Unknown => Some(Code::CorneaUnfit),
    };
    let total = (biometry.k_kind == KKind::Total).then_some(Code::TotalK);
    let oil = (biometry.eye_state == EyeState::SiliconeOil).then_some(Code::SiliconeOil);
    [(surgery, Field::PreviousSurgery), (total, Field::KKind), (oil, Field::EyeState)]
        .into_iter()
        .filter_map(|(code, field)| Some(Caution::about(code?, field)))
}

/// One method for the lens of a case.
///
/// # Errors
/// The caution that says what the method lacks. Refusals of all methods are not asked here: see [`answers`].
pub fn predict(method: Method, case: &Case) -> Result<Prediction, Caution> {
    predict_with(method, &case.biometry, &case.lens.constants)
}

fn predict_with(method: Method, biometry: &Biometry, constants: &Constants) -> Result<Prediction, Caution> {
    let (al, cornea) = (biometry.axial_length, &biometry.cornea);
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
            Prediction::Haigis(haigis::working(al, cornea, chamber_depth(biometry)?, own))
        }
    })
}

/// The chamber depth Haigis means: from the front of the cornea to a natural lens.
fn chamber_depth(biometry: &Biometry) -> Result<ChamberDepth, Caution> {
    let lacks = |code| Caution::of(code, Method::Haigis);
    let (acd, from) = biometry.acd.ok_or(lacks(Code::NeedsAcd))?;
    if biometry.eye_state != EyeState::Phakic {
        return Err(lacks(Code::NotMeasuredPhakic));
    }
    match from {
        AcdFrom::Epithelium => Ok(acd),
        AcdFrom::Endothelium => {
            let cct = biometry.corneal_thickness.ok_or(lacks(Code::NeedsCct))?;
            ChamberDepth::from_mm(acd.mm() + cct.um() / 1000.0).map_err(|_| lacks(Code::NoSolution))
        }
    }
}

/// What every method says of a case's lens, with the cautions that go with each.
pub fn answers(case: &Case, report: &mut dyn FnMut(Caution)) -> [Option<Answer>; 6] {
    answers_with(&case.biometry, &case.lens.constants, (case.target, case.vertex), report)
}

pub(crate) fn answers_with(
    biometry: &Biometry,
    constants: &Constants,
    (target, vertex): (Refraction, Vertex),
    report: &mut dyn FnMut(Caution),
) -> Answers {
    let mut refused = false;
    for caution in refusals(biometry) {
        refused = true;
        report(caution);
    }
    if refused {
        return [None; 6];
    }
    let mut answers =
        [Method::Srk2, Method::Srkt, Method::T2, Method::Holladay1, Method::HofferQ, Method::Haigis].map(|method| {
            let found = predict_with(method, biometry, constants).and_then(|prediction| {
                let power = prediction.power(target, vertex).map_err(|_| Caution::of(Code::NoSolution, method))?;
                Ok(Answer {
                    method,
                    prediction,
                    power,
                    compared: method != Method::Srk2,
                    guided: method.guided(biometry.axial_length),
                    withheld: false,
                })
            });
            found.map_err(&mut *report).ok()
        });
    let t2 = answers.iter().flatten().find(|a| a.method == Method::T2).map(|a| a.power);
    for answer in answers.iter_mut().flatten() {
        for code in doubts(answer, biometry, constants, t2).into_iter().flatten() {
            if matches!(code, Code::Radicand | Code::DepartsFromT2 | Code::Unoptimised) {
                (answer.compared, answer.guided) = (false, false);
            }
            answer.withheld |= code == Code::Radicand;
            report(Caution::of(code, answer.method));
        }
    }
    answers
}

/// What speaks against one answer.
fn doubts(answer: &Answer, biometry: &Biometry, constants: &Constants, t2: Option<f64>) -> [Option<Code>; 4] {
    let al = biometry.axial_length.mm();
    let when = |is: bool, code| is.then_some(code);
    let retina = when(al > RETINA_TURNS.get(), Code::RetinaTurned);
    match &answer.prediction {
        Prediction::Srk2(_) => [Some(Code::Superseded), None, None, None],
        Prediction::Srkt(working) => [
            when(working.radicand < 0.0, Code::Radicand),
            when(t2.is_some_and(|t2| (answer.power - t2).abs() > DEPARTS.get()), Code::DepartsFromT2),
            retina,
            when(al > LCOR_TURNS.get(), Code::LcorTurned),
        ],
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
