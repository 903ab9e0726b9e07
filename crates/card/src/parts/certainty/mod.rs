//! How sure: what an error in each entry would leave, what each thing adds, the interval, what to measure again.

pub mod limits;
mod moved;
pub mod table;

pub(crate) use table::entries::REFRACTION_SD;

use crate::out::Out;
use crate::parts::eye::Eye;
use crate::parts::eye::table::entries::{ACD_SCATTER, AL_SCATTER, K_SCATTER, PREVIOUS_SURGERY};
use crate::parts::laser::after_laser;
use crate::parts::lens::choices::ConstantsFrom;
use crate::parts::lens::table::cautions::FIRST_LENS_HIDDEN;
use crate::parts::lens::table::entries::CONSTANTS_FROM;
use crate::parts::lens::{Answer, Lens, is_refused, refusals};
use crate::parts::target::choices::SecondFor;
use crate::parts::target::table::entries::SECOND_FOR;
use moved::{Moved, scatter};
use ocellus_core::lens::certainty::{Budget, Scatter, budget, chance};
use ocellus_core::lens::method::Method;
use table::entries::POSITION_SD;
use table::{cautions, items};

#[inline(never)]
pub(crate) fn plan(lens: &Lens, out: &mut Out) {
    let eye = lens.eye;
    if is_refused(eye) || eye.get(SECOND_FOR) == Some(SecondFor::Added) {
        return;
    }
    let mut all = [None; Method::MOST];
    for (moved, answer) in all.iter_mut().zip(answers(lens)) {
        // one that is not found is left out
        let _ = Moved::find(moved, eye, answer, out);
    }
    let all = || all.iter().flatten();
    let Some(first) = all().next() else { return };
    if after_laser(eye).is_some() {
        return out.about(cautions::NO_BUDGET, PREVIOUS_SURGERY);
    }
    let Some(scatter) = scatter(eye) else {
        return out.about(cautions::SD_NEEDED, AL_SCATTER);
    };
    scatter_used(eye, &scatter, first.tolerance, out);
    all().for_each(|moved| shares(moved, &scatter, out));
    let optimised = eye.get(CONSTANTS_FROM) == Some(ConstantsFrom::Optimised);
    if !optimised {
        out.about(cautions::NO_INTERVAL, CONSTANTS_FROM);
    }
    let mut any = false;
    for moved in all() {
        any |= interval(eye, moved, &scatter, optimised, out);
    }
    if any {
        out.caution(cautions::INTERVAL_IF);
    }
}

#[inline(never)]
fn scatter_used(eye: &Eye, scatter: &Scatter, tolerance: f64, out: &mut Out) {
    let mut usual = false;
    for (entry, what, sd) in [
        (AL_SCATTER.id(), items::SD_AL, scatter.al),
        (K_SCATTER.id(), items::SD_K, scatter.k),
        (ACD_SCATTER.id(), items::SD_ACD, scatter.acd),
    ] {
        if eye.entered().has(entry) {
            out.entry(entry);
        } else {
            out.item(what, sd);
            usual = true;
        }
    }
    if usual {
        out.caution(cautions::SD_USUAL);
    }
    let typed = [POSITION_SD.id(), REFRACTION_SD.id()];
    out.show(&typed);
    if !typed.iter().all(|entry| eye.entered().has(*entry)) {
        out.caution(cautions::SD_MEMORY);
    }
    out.item(items::LABEL_TOLERANCE, tolerance);
}

fn budgeted(moved: &Moved, scatter: &Scatter) -> Budget {
    budget(&moved.slopes, &Scatter { label: moved.tolerance, ..*scatter })
}

#[inline(never)]
fn shares(moved: &Moved, scatter: &Scatter, out: &mut Out) {
    let budget = budgeted(moved, scatter);
    let whole = budget.sd * budget.sd;
    let mut share = |what, variance: f64| {
        let percent = if whole > 0.0 { 100.0 * variance / whole } else { 0.0 };
        out.of(what, percent, moved.method);
    };
    share(items::SHARE_AL, budget.al);
    share(items::SHARE_K, budget.k);
    share(items::SHARE_ACD, budget.acd);
    share(items::SHARE_POSITION, budget.position);
    share(items::SHARE_LABEL, budget.label);
    share(items::SHARE_REFRACTION, budget.refraction);
    let most = budget.al.max(budget.k).max(budget.acd);
    let code = match most {
        0.0 => return,
        _ if most == budget.al => cautions::REPEAT_AL,
        _ if most == budget.k => cautions::REPEAT_K,
        _ => cautions::REPEAT_ACD,
    };
    out.about_method(code, moved.method);
}

/// The SD of all together, and the interval and the chance where they may be given; the answer is whether they were.
#[inline(never)]
fn interval(eye: &Eye, moved: &Moved, scatter: &Scatter, optimised: bool, out: &mut Out) -> bool {
    let (budget, rx) = (budgeted(moved, scatter), moved.rx);
    let mut item = |what, value| out.of(what, value, moved.method);
    item(items::TOTAL_SD, budget.sd);
    if !optimised {
        return false;
    }
    if moved.in_doubt {
        out.about_method(cautions::NO_INTERVAL, moved.method);
        return false;
    }
    item(items::LOW_50, rx - budget.half_50);
    item(items::HIGH_50, rx + budget.half_50);
    item(items::LOW_95, rx - budget.half_95);
    item(items::HIGH_95, rx + budget.half_95);
    item(items::CHANCE_05, chance(rx - eye.target().d(), 0.5, budget.sd));
    item(items::CHANCE_10, chance(rx - eye.target().d(), 1.0, budget.sd));
    true
}

/// The slopes of each method's refraction, and the budget that they make.
#[inline(never)]
pub(crate) fn explain(_subject: u8, lens: &Lens, out: &mut Out) -> bool {
    let eye = lens.eye;
    if refusals(eye, &mut |caution| out.pass(caution)) {
        return false;
    }
    if eye.get(SECOND_FOR) == Some(SecondFor::Added) {
        out.about(FIRST_LENS_HIDDEN, SECOND_FOR);
        return false;
    }
    if eye.get(CONSTANTS_FROM) != Some(ConstantsFrom::Optimised) {
        out.about(cautions::NO_INTERVAL, CONSTANTS_FROM);
    }
    let mut any = false;
    for answer in answers(lens) {
        any |= moved::show(eye, answer, out).is_some();
    }
    any
}

/// The answers that a card may show.
fn answers<'a>(lens: &'a Lens) -> impl Iterator<Item = &'a Answer> {
    lens.answers().all().filter(|answer| !answer.withheld)
}
