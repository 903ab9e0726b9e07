//! What each method says of one case, which of them may be compared, and why the others may not.

use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{AcdFrom, EyeState, KAfterFrom, KKind, LongEye, PreviousSurgery, SecondFor};
use crate::constant::eye::{DEPARTS, LCOR_TURNS, RETINA_TURNS};
use crate::constant::optics::{INDEX_1_3375, INDEX_HOLLADAY_OVER, INDEX_HOLLADAY_UNDER, INDEX_SRKT};
use crate::error::Error;
use crate::eye::cornea::Cornea;
use crate::field::Field;
use crate::lens::shammas::{self, Laser};
use crate::lens::slope::Chain;
use crate::lens::vergence::ThinEye;
use crate::lens::{Method, convert, double_k, haigis, haigis_l, hofferq, holladay1, long_eye, srk2, srkt, t2};
use crate::quantity::{
    AConstant, AxialLength, ChamberDepth, CornealPower, KeratometricIndex, LensPower, Pacd, Refraction, SurgeonFactor,
    Vertex,
};
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
    /// By Shammas-PL.
    ShammasPl(shammas::Working, Laser),
    /// By Haigis-L.
    HaigisL(haigis_l::Working),
    /// By SRK/T for the cornea before, with that after in its optics.
    DoubleSrkt(srkt::Working, Corneas),
    /// By Holladay 1 likewise.
    DoubleHolladay1(holladay1::Working, Corneas),
    /// By Hoffer Q likewise.
    DoubleHofferQ(hofferq::Working, Corneas),
}

/// The mean corneal powers before a laser and after it.
pub type Corneas = (CornealPower, CornealPower);

impl Prediction {
    /// What the method's optics make of the eye.
    pub fn optics(&self) -> Optics {
        if let Some(w) = self.two_corneas() {
            return Optics::Thin(w.thin_eye());
        }
        Optics::Thin(match self {
            Prediction::Srk2(w) => return Optics::Line(w.line()),
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.thin_eye(),
            Prediction::T2(w) => w.thin_eye(),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.thin_eye(),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.thin_eye(),
            Prediction::Haigis(w) => w.thin_eye(),
            Prediction::ShammasPl(w, _) => w.thin_eye(),
            Prediction::HaigisL(w) => w.thin_eye(),
        })
    }

    /// What double-K makes of an ordinary method's eye; `None` for the others.
    fn two_corneas(&self) -> Option<double_k::Working> {
        let (own, (before, after), index) = match self {
            Prediction::DoubleSrkt(w, corneas) => (w.thin_eye(), corneas, INDEX_SRKT.get()),
            Prediction::DoubleHolladay1(w, corneas) => {
                (w.thin_eye(), corneas, INDEX_HOLLADAY_OVER.get() / INDEX_HOLLADAY_UNDER.get())
            }
            Prediction::DoubleHofferQ(w, corneas) => (w.thin_eye(), corneas, INDEX_1_3375.get()),
            _ => return None,
        };
        Some(double_k::working(*before, *after, index, own))
    }

    /// How the method's numbers move with what was measured; SRK II has none.
    pub fn chain(&self) -> Option<Chain> {
        let own = match self {
            Prediction::Srk2(_) => return None,
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.chain(),
            Prediction::T2(w) => w.chain(),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.chain(),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.chain(),
            Prediction::Haigis(w) => w.chain(),
            Prediction::ShammasPl(w, laser) => w.chain(*laser),
            Prediction::HaigisL(w) => w.chain(),
        };
        // the optics follow the cornea after the laser, the position that before it
        Some(match self.two_corneas() {
            Some(w) => Chain { kc: w.kc / w.k_after, elp_k: 0.0, elp_k_before: own.elp_k, ..own },
            None => own,
        })
    }

    /// Streams the intermediate values.
    pub fn show(&self, sink: &mut dyn Sink) {
        match self {
            Prediction::Srk2(w) => w.show(sink),
            Prediction::Srkt(w) | Prediction::DoubleSrkt(w, _) => w.show(sink),
            Prediction::T2(w) => w.show(sink),
            Prediction::Holladay1(w) | Prediction::DoubleHolladay1(w, _) => w.show(sink),
            Prediction::HofferQ(w) | Prediction::DoubleHofferQ(w, _) => w.show(sink),
            Prediction::Haigis(w) => w.show(sink),
            Prediction::ShammasPl(w, _) => w.show(sink),
            Prediction::HaigisL(w) => w.show(sink),
        }
        if let Some(w) = self.two_corneas() {
            w.show(sink);
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

impl Answer {
    /// Whether its constant is not the lens's own for this method.
    pub(crate) fn converted(&self) -> bool {
        let speaks =
            |code: &Option<Code>| matches!(code, Some(Code::Converted | Code::Unoptimised | Code::UsualSlopes));
        self.doubts.iter().any(speaks)
    }
}

/// What every method answers for one eye and one set of constants; `None` where a method has no answer.
pub(crate) type Answers = [Option<Answer>; 6];

/// No answer yet.
pub(crate) const NONE: Answers = [None; 6];

/// What a laser changed on this cornea, where one did.
pub(crate) fn after_laser(case: &Case) -> Option<Laser> {
    match case.previous_surgery {
        PreviousSurgery::MyopicLaser => Some(Laser::Myopic),
        PreviousSurgery::HyperopicLaser => Some(Laser::Hyperopic),
        _ => None,
    }
}

/// The methods that may be asked about this eye.
pub(crate) fn methods(case: &Case) -> &'static [Method] {
    if after_laser(case).is_some() { Method::AFTER_LASER } else { Method::ORDINARY }
}

/// Why no method must be used on this eye at all.
pub(crate) fn refusals(case: &Case) -> impl Iterator<Item = Caution> {
    let surgery = match case.previous_surgery {
        PreviousSurgery::None | PreviousSurgery::MyopicLaser | PreviousSurgery::HyperopicLaser => None,
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
    predict_at(length(method, case)?, method, case, constants)
}

/// One method for another length of the same eye.
pub(crate) fn predict_at(
    al: AxialLength,
    method: Method,
    case: &Case,
    constants: &Constants,
) -> Result<Prediction, Caution> {
    Ok(match method {
        Method::Srk2 => Prediction::Srk2(srk2::working(al, &case.cornea, constants.a(method)?)),
        Method::Srkt => Prediction::Srkt(srkt::working(al, &case.cornea, constants.a(method)?)),
        Method::T2 => Prediction::T2(t2::working(al, &case.cornea, constants.a(method)?)),
        Method::Holladay1 => {
            Prediction::Holladay1(holladay1::working(al, &case.cornea, constants.surgeon_factor(method)?))
        }
        Method::HofferQ => Prediction::HofferQ(hofferq::working(al, &case.cornea, constants.pacd(method)?)),
        Method::Haigis => {
            let own = constants.haigis(method)?;
            Prediction::Haigis(haigis::working(al, &case.cornea, chamber_depth(method, case)?, own))
        }
        Method::ShammasPl => {
            let laser = after_laser(case).ok_or(Caution::of(Code::NotThisEye, method))?;
            Prediction::ShammasPl(shammas::working(al, &case.cornea, constants.a(method)?, laser), laser)
        }
        Method::HaigisL => {
            if after_laser(case) != Some(Laser::Myopic) {
                return Err(Caution::of(Code::NotThisEye, method));
            }
            let own = constants.haigis(method)?;
            let working = haigis_l::working(al, &case.cornea, chamber_depth(method, case)?, own);
            Prediction::HaigisL(working.map_err(|_| Caution::of(Code::NoSolution, method))?)
        }
        Method::DoubleSrkt => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleSrkt(srkt::working(al, &cornea, constants.a(method)?), corneas)
        }
        Method::DoubleHolladay1 => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleHolladay1(holladay1::working(al, &cornea, constants.surgeon_factor(method)?), corneas)
        }
        Method::DoubleHofferQ => {
            let (cornea, corneas) = two_corneas(method, case)?;
            Prediction::DoubleHofferQ(hofferq::working(al, &cornea, constants.pacd(method)?), corneas)
        }
    })
}

/// The length that a method takes for that of the eye: the measured one, or adjusted as the case asks.
fn length(method: Method, case: &Case) -> Result<AxialLength, Caution> {
    let measured = case.axial_length.ok_or(Caution::of(Code::NeedsLength, method))?;
    match adjusted(method, case) {
        Some(w) => AxialLength::from_mm(w.adjusted).map_err(|_| Caution::of(Code::NoSolution, method)),
        None => Ok(measured),
    }
}

/// How the case's set adjusts the length for a method, where it does.
pub(crate) fn adjusted(method: Method, case: &Case) -> Option<long_eye::Working> {
    long_eye::working(case.long_eye().unwrap_or(LongEye::Off), method, case.axial_length?)
}

/// The cornea before a laser, and its power then and after.
fn two_corneas(method: Method, case: &Case) -> Result<(Cornea, Corneas), Caution> {
    let lacks = |code| Caution::of(code, method);
    let before = case.k_before().ok_or(lacks(Code::NeedsKBefore))?;
    let after = k_after(case).map_err(lacks)?;
    let fails = |_: Error| lacks(Code::NoSolution);
    let index = KeratometricIndex::new(INDEX_1_3375.get()).map_err(fails)?;
    Ok((Cornea::from_powers(before, before, index, None).map_err(fails)?, (before, after)))
}

/// The corneal power after a laser: as estimated, or as its history says; a keratometer's is refused.
pub(crate) fn k_after(case: &Case) -> Result<CornealPower, Code> {
    match (case.k_after_from().ok_or(Code::NeedsKAfter)?, case.k_after()) {
        (KAfterFrom::Keratometer, _) => Err(Code::RawKAfter),
        (_, Some(estimate)) => Ok(estimate),
        (KAfterFrom::History, None) => k_from_history(case).ok_or(Code::NeedsKAfter),
        (_, None) => Err(Code::NeedsKAfter),
    }
}

/// The corneal power after a laser that the power before and the refractions say.
pub(crate) fn k_from_history(case: &Case) -> Option<CornealPower> {
    let (before, after) = (case.refraction_before()?, case.refraction_after()?);
    double_k::from_history(case.k_before()?, before, after, case.vertex).ok()
}

/// A lens's constants as a method takes them: its own, or converted from another.
impl Constants {
    fn a(&self, method: Method) -> Result<AConstant, Caution> {
        self.a.ok_or(Caution::of(Code::NeedsConstant, method))
    }

    fn surgeon_factor(&self, method: Method) -> Result<SurgeonFactor, Caution> {
        match self.surgeon_factor {
            Some(own) => Ok(own),
            None => convert::surgeon_factor(self.a(method)?).map_err(|_| Caution::of(Code::NoSolution, method)),
        }
    }

    fn pacd(&self, method: Method) -> Result<Pacd, Caution> {
        let converted = match (self.pacd, self.a, self.surgeon_factor) {
            (Some(own), ..) => Ok(own),
            (None, Some(a), _) => convert::surgeon_factor(a).and_then(convert::pacd),
            (None, None, Some(sf)) => convert::pacd(sf),
            (None, None, None) => return Err(Caution::of(Code::NeedsConstant, method)),
        };
        converted.map_err(|_| Caution::of(Code::NoSolution, method))
    }

    fn haigis(&self, method: Method) -> Result<haigis::Constants, Caution> {
        let fails = |_: Error| Caution::of(Code::NoSolution, method);
        let a0 = match self.haigis_a0 {
            Some(own) => own,
            None => convert::haigis(self.a(method)?).map_err(fails)?.0,
        };
        let (a1, a2) = match self.haigis_slopes {
            Some(own) => own,
            None => convert::usual_slopes().map_err(fails)?,
        };
        Ok((a0, a1, a2))
    }
}

/// The chamber depth Haigis means: from the front of the cornea to a natural lens.
fn chamber_depth(method: Method, case: &Case) -> Result<ChamberDepth, Caution> {
    let lacks = |code| Caution::of(code, method);
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
    let t2 = beside_srkt(case, constants, answers);
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
    if after_laser(case).is_some() {
        let any = answers.iter().flatten().next().is_some();
        let code = if any { Code::AfterLaser } else { Code::PreviousSurgery };
        report(Caution::about(code, Field::PreviousSurgery));
    }
}

/// T2's power for the length that SRK/T takes, adjusted or not.
fn beside_srkt(case: &Case, constants: &Constants, answers: &Answers) -> Option<f64> {
    if adjusted(Method::Srkt, case).is_none() {
        return answers.iter().flatten().find(|a| a.method == Method::T2).map(|a| a.power);
    }
    let prediction = predict_at(length(Method::Srkt, case).ok()?, Method::T2, case, constants).ok()?;
    prediction.optics().power(case.target, case.vertex).ok()
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
#[inline(never)]
pub(crate) fn moving(method: Method, case: &Case) -> Option<(Answer, Chain)> {
    let constants = case.constants();
    let prediction = predict_with(method, case, &constants).ok()?;
    let answer = answer_of(&prediction, method, case, &constants).ok()?;
    let chain = prediction.chain()?;
    let chain = adjusted(method, case).map_or(chain, |long| chain.of_length(long.slope));
    (!answer.doubts.contains(&Some(Code::Radicand))).then_some((answer, chain))
}

/// What speaks against one answer by itself.
fn doubts(prediction: &Prediction, case: &Case, constants: &Constants) -> [Option<Code>; 4] {
    let when = |is: bool, code| is.then_some(code);
    // the second place is kept for SRK/T's departure from T2
    let of_srkt = |w: &srkt::Working| {
        let long = |limit: f64, code| when(w.measured_al > limit, code);
        [
            when(w.radicand < 0.0, Code::Radicand),
            None,
            long(RETINA_TURNS.get(), Code::RetinaTurned),
            long(LCOR_TURNS.get(), Code::LcorTurned),
        ]
    };
    let of_holladay1 = [when(constants.surgeon_factor.is_none(), Code::Converted), None, None, None];
    let of_hofferq = |w: &hofferq::Working| {
        [when(constants.pacd.is_none(), Code::Converted), None, when(w.a != w.al, Code::Clamped), None]
    };
    let of_haigis = |own| {
        [
            when(unoptimised(own, constants), Code::Unoptimised),
            when(constants.haigis_a0.is_some() && constants.haigis_slopes.is_none(), Code::UsualSlopes),
            None,
            None,
        ]
    };
    // double-K stands and falls with its two corneas
    let history = when(case.k_after_from() == Some(KAfterFrom::History), Code::KFromHistory);
    let double = |[first, _, third, fourth]: [Option<Code>; 4]| [first, history, third, fourth];
    match prediction {
        Prediction::Srk2(_) => [Some(Code::Superseded), None, None, None],
        Prediction::Srkt(w) => of_srkt(w),
        Prediction::T2(w) => [when(w.measured_al > RETINA_TURNS.get(), Code::RetinaTurned), None, None, None],
        Prediction::Holladay1(_) => of_holladay1,
        Prediction::HofferQ(w) => of_hofferq(w),
        Prediction::Haigis(w) => of_haigis((w.a0, w.a1, w.a2)),
        Prediction::ShammasPl(..) => [None; 4],
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
