//! How sure: what an error in each entry would leave, what each thing adds, the interval, what to measure again.

use super::{entries, lens};
use crate::case::{Case, Constants};
use crate::caution::{Caution, Code};
use crate::choice::ConstantsFrom;
use crate::constant::certainty::{SD_ACD, SD_AL, SD_K};
use crate::field::Field;
use crate::item::{Item, Part, What};
use crate::lens::certainty::{Budget, Scatter, budget, chance};
use crate::lens::label::tolerance;
use crate::lens::predict::{Answer, Answers, NONE, adjusted, after_laser, answer_shown, predict_with};
use crate::lens::slope::{Slopes, slopes};
use crate::quantity::LensPower;
use crate::sink::Sink;

#[inline(never)]
pub(super) fn plan(case: &Case, sink: &mut dyn Sink) {
    let mut answers = NONE;
    // their cautions were said with the lens
    answer_shown(case, &mut |_| {}, &mut answers);
    sink.part(Part::Certainty);
    let laser = after_laser(case).is_some();
    let Some(first) = answers.iter().flatten().next() else { return };
    for answer in answers.iter().flatten() {
        errors(case, answer, sink);
    }
    if laser {
        return sink.caution(Caution::about(Code::NoBudget, Field::PreviousSurgery));
    }
    scatter_used(case, first, sink);
    for answer in answers.iter().flatten() {
        shares(case, answer, sink);
    }
    intervals(case, &answers, sink);
}

/// The refraction by one method, its slopes, and how its position moves with its own constant.
#[inline(never)]
pub(crate) fn moved(case: &Case, answer: &Answer) -> Option<(f64, Slopes, f64)> {
    let constants: Constants = case.constants();
    let eye = answer.optics.thin_eye()?;
    let mut chain = predict_with(answer.method, case, &constants).ok()?.chain()?;
    if let Some(long) = adjusted(answer.method, case) {
        chain = chain.of_length(long.slope);
    }
    let mean = lens::mean_power(case, answer, chosen(case, answer)?)?;
    let rx = answer.optics.refraction(mean, case.vertex).ok()?;
    Some((rx, slopes(&eye, &chain, mean, case.vertex).ok()?, chain.constant))
}

/// The lens chosen; before one is, the exact power.
fn chosen(case: &Case, answer: &Answer) -> Option<LensPower> {
    case.lens_power().or_else(|| LensPower::from_d(answer.power).ok())
}

/// What would be left if an entry were wrong, the lens chosen by it: plus is hyperopic.
fn errors(case: &Case, answer: &Answer, sink: &mut dyn Sink) {
    let Some((_, slopes, constant)) = moved(case, answer) else { return };
    let mut left = |what, value: f64| sink.item(Item::of(what, answer.method, value));
    left(What::ErrorAl, -0.1 * slopes.al);
    left(What::ErrorK, -0.5 * slopes.k);
    // only Haigis asks for it
    if slopes.elp_acd != 0.0 {
        left(What::ErrorAcd, -0.1 * slopes.acd);
    }
    left(What::ErrorPosition, 0.5 * slopes.position);
    left(What::ErrorConstant, -0.1 * constant * slopes.position);
}

/// What scatters how far: as entered, or as it usually does.
pub(crate) fn scatter(case: &Case, answer: &Answer) -> Option<Scatter> {
    Some(Scatter {
        al: case.al_scatter().map_or(SD_AL.get(), |sd| sd.mm()),
        k: case.k_scatter().map_or(SD_K.get(), |sd| sd.d()),
        acd: case.acd_scatter().map_or(SD_ACD.get(), |sd| sd.mm()),
        position: case.position_sd()?.mm(),
        label: tolerance(chosen(case, answer)?),
        refraction: case.refraction_sd()?.d(),
    })
}

#[inline(never)]
fn scatter_used(case: &Case, first: &Answer, sink: &mut dyn Sink) {
    let Some(scatter) = scatter(case, first) else { return };
    sink.item(Item::one(What::SdAl, scatter.al));
    sink.item(Item::one(What::SdK, scatter.k));
    sink.item(Item::one(What::SdAcd, scatter.acd));
    let entered = |field: &Field| case.draft().has(*field);
    if ![Field::AlScatter, Field::KScatter, Field::AcdScatter].iter().all(entered) {
        sink.caution(Caution::general(Code::SdUsual));
    }
    entries(case, sink, &[Field::PositionSd, Field::RefractionSd]);
    if ![Field::PositionSd, Field::RefractionSd].iter().all(entered) {
        sink.caution(Caution::general(Code::SdMemory));
    }
    sink.item(Item::one(What::LabelTolerance, scatter.label));
}

/// The refraction by one method, and its budget.
#[inline(never)]
fn budgeted(case: &Case, answer: &Answer) -> Option<(f64, Budget)> {
    let (rx, slopes, _) = moved(case, answer)?;
    Some((rx, budget(&slopes, &scatter(case, answer)?)))
}

fn shares(case: &Case, answer: &Answer, sink: &mut dyn Sink) {
    let Some((_, budget)) = budgeted(case, answer) else { return };
    let whole = budget.sd * budget.sd;
    let mut share = |what, variance: f64| {
        let percent = if whole > 0.0 { 100.0 * variance / whole } else { 0.0 };
        sink.item(Item::of(what, answer.method, percent));
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
    sink.caution(Caution::of(code, answer.method));
}

/// The SD of all together; the interval and the chance where they may be given.
fn intervals(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let optimised = case.constants_from() == Some(ConstantsFrom::Optimised);
    if !optimised {
        sink.caution(Caution::about(Code::NoInterval, Field::ConstantsFrom));
    }
    let mut any = false;
    for answer in answers.iter().flatten() {
        let Some((rx, budget)) = budgeted(case, answer) else { continue };
        let mut item = |what, value| sink.item(Item::of(what, answer.method, value));
        item(What::TotalSd, budget.sd);
        if !optimised {
            continue;
        }
        if answer.converted() {
            sink.caution(Caution::of(Code::NoInterval, answer.method));
            continue;
        }
        any = true;
        item(What::Low50, rx - budget.half_50);
        item(What::High50, rx + budget.half_50);
        item(What::Low95, rx - budget.half_95);
        item(What::High95, rx + budget.half_95);
        item(What::Chance05, chance(0.5, budget.sd));
        item(What::Chance10, chance(1.0, budget.sd));
    }
    if any {
        sink.caution(Caution::general(Code::IntervalIf));
    }
}
