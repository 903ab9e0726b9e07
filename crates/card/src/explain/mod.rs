//! How a number came about: the steps of one topic for one case.

mod bench;
mod subject;

pub use subject::Subject;

use crate::astigmatism::plane::Cornea;
use crate::astigmatism::power_vector::PowerVector;
use crate::astigmatism::{cornea, expected, incision, off_axis, posterior, toric};
use crate::bench::Bench;
use crate::case::{Backup, Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::{BackFrom, ConstantsFrom, FluidFrom, SecondFor};
use crate::draft::Draft;
use crate::field::Field;
use crate::item::{Item, What};
use crate::lens::answer::{self, Answer};
use crate::lens::certainty::{Scatter, budget};
use crate::lens::label::tolerance;
use crate::lens::predict;
use crate::lens::prediction::Optics;
use crate::lens::surfaces::{GULLSTRAND, LE_GRAND, system};
use crate::lens::vergence::ThinEye;
use crate::lens::{Method, constants, second};
use crate::plan;
use crate::quantity::Site;
use crate::sink::Sink;
use crate::working::Topic;

/// Streams the entries, cautions and steps of one subject. Nothing is streamed but cautions where the case lacks what it
/// needs; the answer says whether there were steps.
///
/// ```
/// use ocellus_core::{case::Case, caution::Caution, draft::Draft, explain::*, field::Field, item::Item};
/// use ocellus_core::{lens::Method, sink::Sink, working::Step};
/// #[derive(Default)]
/// struct Symbols(Vec<&'static str>);
/// impl Sink for Symbols {
///     fn item(&mut self, _: Item) {}
///     fn caution(&mut self, _: Caution) {}
///     fn step(&mut self, step: Step) { self.0.push(step.topic.lines()[step.index as usize].symbol); }
/// }
/// let mut draft = Draft::default();
/// for (field, text) in [
///     (Field::Side, "right"), (Field::AxialLength, "23.50"), (Field::K1, "43.25"), (Field::K2, "44.00"),
///     (Field::KKind, "keratometric"), (Field::AlMethod, "optical"), (Field::EyeState, "phakic"),
///     (Field::PreviousSurgery, "none"), (Field::Target, "-0.25"), (Field::AConstant, "118.9"),
/// ] {
///     draft.enter(field, text)?;
/// }
/// let mut symbols = Symbols::default();
/// assert!(explain(Subject::Method(Method::Srkt), &Case::try_from(&draft)?, &mut symbols));
/// assert!(symbols.0.contains(&"LCOR") && symbols.0.ends_with(&["P"]));
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn explain(subject: Subject, case: &Case, sink: &mut dyn Sink) -> bool {
    if !subject.of_an_eye() {
        return explain_bench(subject, &case.bench, sink);
    }
    inputs(subject, case.draft(), sink);
    match subject {
        Subject::Method(method) => explain_method(method, case, sink),
        Subject::Backup => explain_backup(case, sink),
        Subject::Toric => explain_toric(case, sink),
        Subject::Rhexis => case.cut().map(crate::table_side::rhexis::working).inspect(|w| w.show(sink)).is_some(),
        Subject::Certainty => explain_certainty(case, sink),
        Subject::Second => explain_second(case, sink),
        Subject::Thick => plan::known_thick(case).inspect(|w| w.show(sink)).is_some(),
        Subject::Constants => explain_constants(case, sink),
        Subject::Schematic => explain_schematic(sink),
        Subject::OffAxis => explain_off_axis(sink),
        Subject::Turn => explain_turn(case, sink),
        Subject::After => explain_after(case, sink),
        Subject::Head | Subject::Ceiling | Subject::Chamber | Subject::Surge | Subject::Tube => false,
    }
}

/// The same of a set-up; nothing but entries of what needs an eye.
///
/// ```
/// use ocellus_core::{bench::Bench, caution::Caution, draft::Draft, explain::*, field::Field, item::Item, sink::Sink};
/// use ocellus_core::working::Step;
/// struct Steps(usize);
/// impl Sink for Steps {
///     fn item(&mut self, _: Item) {}
///     fn caution(&mut self, _: Caution) {}
///     fn step(&mut self, _: Step) { self.0 += 1; }
/// }
/// let (mut draft, mut steps) = (Draft::default(), Steps(0));
/// draft.enter(Field::Altitude, "1600")?;
/// assert!(explain_bench(Subject::Ceiling, &Bench::check(&draft, &mut |_| {}).unwrap(), &mut steps) && steps.0 > 10);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn explain_bench(subject: Subject, bench: &Bench, sink: &mut dyn Sink) -> bool {
    inputs(subject, bench.draft(), sink);
    match subject {
        Subject::Head => bench::explain_head(bench, sink),
        Subject::Ceiling => bench::explain_ceiling(bench, sink),
        Subject::Chamber => bench::explain_chamber(bench, sink),
        Subject::Surge => bench::explain_surge(bench, sink),
        Subject::Tube => bench::explain_tube(bench, sink),
        _ => false,
    }
}

/// Streams the entries that a subject starts from.
fn inputs(subject: Subject, draft: &Draft, sink: &mut dyn Sink) {
    for &field in subject.inputs() {
        // the density of water is no entry
        let of_water = field == Field::Density && draft.number(Field::DensityFrom) == Some(FluidFrom::Water.code());
        if draft.has(field) || field.default().is_some() && !of_water {
            sink.entry(field);
        }
    }
}

/// Where one of these is told there are no steps, and no entry that lacks would bring them.
pub const NO_ENTRY_HELPS: [Code; 5] =
    [Code::NotThisEye, Code::ChamberCollapsed, Code::SurgeOpen, Code::LeakTooLarge, Code::HeadNegative];

/// The method's own part, then the lens for the target, then the refraction for the lens chosen.
#[inline(never)]
fn explain_method(method: Method, case: &Case, sink: &mut dyn Sink) -> bool {
    if !predict::methods(case).contains(&method) {
        sink.caution(match predict::after_laser(case) {
            Some(_) => Caution::about(Code::PreviousSurgery, Field::PreviousSurgery),
            None => Caution::of(Code::NotThisEye, method),
        });
        return false;
    }
    let mut answers = answer::NONE;
    let mut report = |caution: Caution| {
        if caution.method.is_none_or(|m| m == method) {
            sink.caution(caution);
        }
    };
    answer::answer_all(case, &case.constants(), &mut report, &mut answers);
    let Some(answer) = answers.iter().flatten().find(|a| a.method == method) else { return false };
    show_method(method, case, &case.constants(), sink);
    show_optics(case, answer, sink);
    true
}

/// The lens for the target, and the refraction for the lens chosen.
// apart, so that its room on the stack is not taken while the methods are asked
#[inline(never)]
fn show_optics(case: &Case, answer: &Answer, sink: &mut dyn Sink) {
    let method = answer.method;
    let mean = case.lens_power().and_then(|label| plan::mean_power(case, answer, label));
    match &answer.optics {
        Optics::Thin(eye) => {
            if let Ok(w) = eye.power(case.target, case.vertex) {
                w.show(sink);
            }
            if let Some(Ok(w)) = mean.map(|mean| eye.refraction(mean, case.vertex)) {
                w.show(sink);
            }
        }
        Optics::Line(w) => {
            sink.item(Item::of(What::ExactPower, method, w.power(case.target)));
            if let Some(mean) = mean {
                sink.item(Item::of(What::Refraction, method, w.refraction(mean)));
            }
        }
    }
}

/// The slopes of each method's refraction, and the budget that they make.
#[inline(never)]
fn explain_certainty(case: &Case, sink: &mut dyn Sink) -> bool {
    predict::refusals(case).for_each(|caution| sink.caution(caution));
    if predict::refusals(case).next().is_some() {
        return false;
    }
    if case.second_for() == Some(SecondFor::Added) {
        sink.caution(Caution::about(Code::FirstLensHidden, Field::SecondFor));
        return false;
    }
    if case.constants_from() != Some(ConstantsFrom::Optimised) {
        sink.caution(Caution::about(Code::NoInterval, Field::ConstantsFrom));
    }
    let mut any = false;
    for &method in predict::methods(case) {
        any |= show_certainty(method, case, sink).is_some();
    }
    any
}

/// The slopes of one method's refraction, and its budget.
#[inline(never)]
fn show_certainty(method: Method, case: &Case, sink: &mut dyn Sink) -> Option<()> {
    let (answer, chain) = answer::moving(method, case)?;
    let lens = plan::moved_lens(case, &answer)?;
    let (rx, slopes) = plan::moved(case, &answer, &chain, lens)?;
    sink.item(Item::of(What::Refraction, method, rx));
    slopes.show(sink);
    if answer.in_doubt() {
        sink.caution(Caution::of(Code::NoInterval, method));
    }
    if let Some(scatter) = plan::scatter(case).filter(|_| predict::after_laser(case).is_none()) {
        budget(&slopes.gradient(), &Scatter { label: tolerance(lens), ..scatter }).show(sink);
    }
    Some(())
}

/// Each constant that was entered, and those that go with it.
#[inline(never)]
fn explain_constants(case: &Case, sink: &mut dyn Sink) -> bool {
    let mut any = false;
    for (_, what, a) in case.constants().as_a() {
        let Some((a, family)) = a.and_then(|a| Some((a, constants::family(a).ok()?))) else { continue };
        if let Some(what) = what {
            sink.item(Item::one(what, a.get()));
        }
        family.show(sink);
        any = true;
    }
    any
}

/// Two schematic eyes, each as one lens in air.
fn explain_schematic(sink: &mut dyn Sink) -> bool {
    let mut any = false;
    for (topic, eye) in [(Topic::Gullstrand, GULLSTRAND), (Topic::LeGrand, LE_GRAND)] {
        if let Ok(w) = system(1.0, eye) {
            w.show_as(topic, sink);
            any = true;
        }
    }
    any
}

/// The lens by the refraction today, in each place that it may have.
#[inline(never)]
fn explain_second(case: &Case, sink: &mut dyn Sink) -> bool {
    let Some((purpose, now)) = plan::known_second(case) else { return false };
    let mut any = false;
    plan::second_places(case, purpose, &mut |method, place| {
        let Ok(w) = second::working(&place, now, case.target, case.vertex) else { return };
        sink.item(Item { method, ..Item::one(What::SecondExact, w.power) });
        w.show(sink);
        any = true;
    });
    any
}

/// The method's own part, after that of a length that is adjusted for it.
#[inline(never)]
fn show_method(method: Method, case: &Case, constants: &Constants, sink: &mut dyn Sink) {
    if let Some(w) = predict::adjusted(method, case) {
        w.show(sink);
    }
    if let Ok(prediction) = predict::predict_with(method, case, constants) {
        prediction.show(sink);
    }
}

#[inline(never)]
fn explain_toric(case: &Case, sink: &mut dyn Sink) -> bool {
    let Some(vector) = plan::planned_cornea(case) else { return false };
    front_and_back(case, sink);
    // SRK II has no lens position and so no part in this
    let mut answers = answer::NONE;
    let mut report = |caution: Caution| {
        if caution.method != Some(Method::Srk2) {
            sink.caution(caution);
        }
    };
    answer::answer_all(case, &case.constants(), &mut report, &mut answers);
    let mut any = false;
    for answer in answers.iter().flatten().filter(|a| a.compared) {
        if needed(case, answer, vector, sink) {
            left(case, answer, vector, sink);
            any = true;
        }
    }
    any
}

/// The cornea: its back, each incision, and what they are together.
#[inline(never)]
fn front_and_back(case: &Case, sink: &mut dyn Sink) {
    let (Some(from), Some(incisions)) = (case.back_from(), plan::incisions(case)) else { return };
    let Some(front) = cornea::measured(&case.cornea) else { return };
    match from {
        BackFrom::Measured => plan::surfaces(case).inspect(|w| w.show(sink)).is_some(),
        _ => posterior::working(front, from).inspect(|w| w.show(sink)).is_some(),
    };
    for (site, flattening) in case.cuts() {
        incision::working(site, flattening).show(sink);
    }
    if let Some((size, across)) =
        case.centroid().and_then(|(size, a)| Some((size, Site::from_deg(a.deg() + 90.0).ok()?)))
    {
        incision::working(across, size).show(sink);
    }
    if let Some(with_back) = plan::with_back(case, front, from) {
        cornea::working(&case.cornea, with_back, incisions).inspect(|w| w.show(sink));
    }
}

/// The cylinder that one method needs at the lens.
#[inline(never)]
fn needed(case: &Case, answer: &Answer, vector: PowerVector<Cornea>, sink: &mut dyn Sink) -> bool {
    let Some(eye) = answer.optics.thin_eye() else { return false };
    let Ok(w) = toric::working(&eye, vector.cylinder(), case.target, case.vertex) else { return false };
    sink.item(Item::of(What::LensPosition, answer.method, eye.elp));
    w.show(sink);
    true
}

/// What the lens chosen leaves by one method.
#[inline(never)]
fn left(case: &Case, answer: &Answer, vector: PowerVector<Cornea>, sink: &mut dyn Sink) {
    let Some((eye, lens)) = plan::chosen_lens(case, answer) else { return };
    if let Ok(steps) = toric::residual_working(&eye, vector, lens) {
        steps.show(sink);
    }
    if let (Some(scatter), Ok(wanted)) = (plan::toric_scatter(case), toric::at_cornea(&eye, lens)) {
        expected::working(wanted, vector, scatter).show(sink);
    }
}

/// What a lens that was right loses when it is turned: of no case.
fn explain_off_axis(sink: &mut dyn Sink) -> bool {
    for apart in [1.0, 5.0, 10.0, 20.0, 30.0] {
        off_axis::loss(apart).show(sink);
    }
    true
}

/// The best turn of the lens by each method.
#[inline(never)]
fn explain_turn(case: &Case, sink: &mut dyn Sink) -> bool {
    let mut answers = answer::NONE;
    answer::answer_all(case, &case.constants(), &mut |_| {}, &mut answers);
    let mut any = false;
    for answer in answers.iter().flatten().filter(|a| a.compared) {
        if let Some(w) = plan::best_turn(case, answer) {
            sink.item(Item::of(What::TurnLeft, answer.method, w.left));
            w.show(sink);
            any = true;
        }
    }
    any
}

/// What was wanted and what came.
#[inline(never)]
fn explain_after(case: &Case, sink: &mut dyn Sink) -> bool {
    if let Some(made) = plan::incision_found(case) {
        sink.item(Item::one(What::IncisionFound, made.cylinder()));
    }
    let indices = plan::changed(case).and_then(|change| change.indices());
    indices.inspect(|w| w.show(sink)).is_some()
}

/// The method's own eye for the backup lens's constant, then the lens where it would go.
#[inline(never)]
fn explain_backup(case: &Case, sink: &mut dyn Sink) -> bool {
    predict::refusals(case).for_each(|caution| sink.caution(caution));
    let Some(backup) = case.backup() else { return false };
    let mut answers = answer::NONE;
    answer::answer_all(case, &backup.constants(), &mut |_| {}, &mut answers);
    let mut any = false;
    for (answer, eye) in plan::backup_placed(case, &backup, &answers) {
        any |= show_placed(case, &backup, answer.method, &eye, sink);
    }
    any
}

/// One method's own part for the backup lens, and the lens where it would go.
#[inline(never)]
fn show_placed(case: &Case, backup: &Backup, method: Method, eye: &ThinEye, sink: &mut dyn Sink) -> bool {
    let Ok(w) = eye.power(case.target, case.vertex) else { return false };
    show_method(method, case, &backup.constants(), sink);
    sink.item(Item::of(What::BackupExact, method, w.power));
    w.show(sink);
    true
}
