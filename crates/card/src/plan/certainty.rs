//! How sure: what an error in each entry would leave, what each thing adds, the interval, what to measure again.

use super::{entries, lens};
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{AlMethod, ConstantsFrom, SecondFor};
use crate::constant::certainty::{SD_ACD, SD_AL, SD_K};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::Method;
use crate::lens::answer::{Answer, moving};
use crate::lens::certainty::{Budget, Scatter, budget, chance};
use crate::lens::label::tolerance;
use crate::lens::predict::{after_laser, methods, refusals};
use crate::lens::slope::{Chain, Gradient, Slopes, slopes};
use crate::quantity::LensPower;
use crate::sink::Sink;

/// How one method's refraction moves with each thing it rests on, and what an interval about it hangs on.
#[derive(Clone, Copy)]
struct Moved {
    method: Method,
    rx: f64,
    /// How far that is from the target, D.
    off: f64,
    slopes: Gradient,
    /// Lens position per unit of the method's own constant, mm.
    constant: f64,
    tolerance: f64,
    in_doubt: bool,
}

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    sink.part(Part::Certainty);
    let mut all = [None; 6];
    if refusals(case).next().is_some() || case.second_for() == Some(SecondFor::Added) {
        return;
    }
    for (slot, method) in all.iter_mut().zip(methods(case)) {
        *slot = moved(case, *method);
    }
    let all = || all.iter().flatten();
    let Some(first) = all().next() else { return };
    all().for_each(|moved| errors(moved, sink));
    if after_laser(case).is_some() {
        return sink.caution(Caution::about(Code::NoBudget, Field::PreviousSurgery));
    }
    let Some(scatter) = scatter(case) else {
        return sink.caution(Caution::about(Code::SdNeeded, Field::AlScatter));
    };
    scatter_used(case, &scatter, first.tolerance, sink);
    all().for_each(|moved| shares(moved, &scatter, sink));
    let optimised = case.constants_from() == Some(ConstantsFrom::Optimised);
    if !optimised {
        sink.caution(Caution::about(Code::NoInterval, Field::ConstantsFrom));
    }
    let mut any = false;
    for moved in all() {
        any |= interval(moved, &scatter, optimised, sink);
    }
    if any {
        sink.caution(Caution::general(Code::IntervalIf));
    }
}

#[inline(never)]
fn moved(case: &Case, method: Method) -> Option<Moved> {
    let (answer, chain) = moving(method, case)?;
    let chosen = chosen(case, &answer)?;
    let (rx, slopes) = at(case, &answer, &chain, chosen)?;
    let (slopes, tolerance) = (slopes.gradient(), tolerance(chosen));
    let (off, in_doubt) = (rx - case.target.d(), answer.in_doubt());
    Some(Moved { method, rx, off, slopes, constant: chain.constant, tolerance, in_doubt })
}

/// The refraction that a lens of this label leaves, and its slopes.
#[inline(never)]
pub(crate) fn at(case: &Case, answer: &Answer, chain: &Chain, label: LensPower) -> Option<(f64, Slopes)> {
    let mean = lens::mean_power(case, answer, label)?;
    let rx = answer.optics.refraction(mean, case.vertex).ok()?;
    Some((rx, slopes(&answer.optics.thin_eye()?, chain, mean, case.vertex).ok()?))
}

/// The lens chosen; before one is, the exact power.
pub(crate) fn chosen(case: &Case, answer: &Answer) -> Option<LensPower> {
    case.lens_power().or_else(|| LensPower::from_d(answer.power).ok())
}

/// What would be left if an entry were wrong, the lens chosen by it: plus is hyperopic.
fn errors(moved: &Moved, sink: &mut dyn Sink) {
    let slopes = &moved.slopes;
    let mut left = |what, value: f64| sink.item(Item::of(what, moved.method, value));
    left(What::ErrorAl, -0.1 * slopes.al);
    left(What::ErrorK, -0.5 * slopes.k);
    // only Haigis asks for it
    if slopes.acd != 0.0 {
        left(What::ErrorAcd, -0.1 * slopes.acd);
    }
    left(What::ErrorPosition, 0.5 * slopes.position);
    left(What::ErrorConstant, -0.1 * moved.constant * slopes.position);
}

/// What scatters how far: as entered, or as it usually does; a length by ultrasound has no usual scatter here. The label's
/// part is each lens's own.
pub(crate) fn scatter(case: &Case) -> Option<Scatter> {
    if case.al_scatter().is_none() && case.al_method() != Some(AlMethod::Optical) {
        return None;
    }
    Some(Scatter {
        al: case.al_scatter().map_or(SD_AL.get(), |sd| sd.mm()),
        k: case.k_scatter().map_or(SD_K.get(), |sd| sd.d()),
        acd: case.acd_scatter().map_or(SD_ACD.get(), |sd| sd.mm()),
        position: case.position_sd()?.mm(),
        label: 0.0,
        refraction: case.refraction_sd()?.d(),
    })
}

#[inline(never)]
fn scatter_used(case: &Case, scatter: &Scatter, tolerance: f64, sink: &mut dyn Sink) {
    let mut usual = false;
    for (field, what, sd) in [
        (Field::AlScatter, What::SdAl, scatter.al),
        (Field::KScatter, What::SdK, scatter.k),
        (Field::AcdScatter, What::SdAcd, scatter.acd),
    ] {
        if case.draft().has(field) {
            sink.entry(field);
        } else {
            sink.item(Item::one(what, sd));
            usual = true;
        }
    }
    if usual {
        sink.caution(Caution::general(Code::SdUsual));
    }
    entries(case.draft(), sink, &[Field::PositionSd, Field::RefractionSd]);
    if ![Field::PositionSd, Field::RefractionSd].iter().all(|field| case.draft().has(*field)) {
        sink.caution(Caution::general(Code::SdMemory));
    }
    sink.item(Item::one(What::LabelTolerance, tolerance));
}

fn budgeted(moved: &Moved, scatter: &Scatter) -> Budget {
    budget(&moved.slopes, &Scatter { label: moved.tolerance, ..*scatter })
}

#[inline(never)]
fn shares(moved: &Moved, scatter: &Scatter, sink: &mut dyn Sink) {
    let budget = budgeted(moved, scatter);
    let whole = budget.sd * budget.sd;
    let mut share = |what, variance: f64| {
        let percent = if whole > 0.0 { 100.0 * variance / whole } else { 0.0 };
        sink.item(Item::of(what, moved.method, percent));
    };
    share(What::ShareAl, budget.al);
    share(What::ShareK, budget.k);
    share(What::ShareAcd, budget.acd);
    share(What::SharePosition, budget.position);
    share(What::ShareLabel, budget.label);
    share(What::ShareRefraction, budget.refraction);
    let most = budget.al.max(budget.k).max(budget.acd);
    let code = match most {
        0.0 => return,
        _ if most == budget.al => Code::RepeatAl,
        _ if most == budget.k => Code::RepeatK,
        _ => Code::RepeatAcd,
    };
    sink.caution(Caution::of(code, moved.method));
}

/// The SD of all together, and the interval and the chance where they may be given; the answer is whether they were.
#[inline(never)]
fn interval(moved: &Moved, scatter: &Scatter, optimised: bool, sink: &mut dyn Sink) -> bool {
    let (budget, rx) = (budgeted(moved, scatter), moved.rx);
    let mut item = |what, value| sink.item(Item::of(what, moved.method, value));
    item(What::TotalSd, budget.sd);
    if !optimised {
        return false;
    }
    if moved.in_doubt {
        sink.caution(Caution::of(Code::NoInterval, moved.method));
        return false;
    }
    item(What::Low50, rx - budget.half_50);
    item(What::High50, rx + budget.half_50);
    item(What::Low95, rx - budget.half_95);
    item(What::High95, rx + budget.half_95);
    item(What::Chance05, chance(moved.off, 0.5, budget.sd));
    item(What::Chance10, chance(moved.off, 1.0, budget.sd));
    true
}
