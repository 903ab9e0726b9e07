//! The label that a rule points out, where the user has named one.

use super::lens;
use crate::case::Case;
use crate::caution::{Caution, Code};
use crate::choice::{LabelPower, LabelRule};
use crate::field::Field;
use crate::item::{Item, What};
use crate::lens::answer::Answers;
use crate::lens::label::by_rule;
use crate::quantity::Refraction;
use crate::sink::Sink;

/// The label that the rule points out by each method, where the user has one.
#[inline(never)]
pub(super) fn plan(case: &Case, answers: &Answers, sink: &mut dyn Sink) {
    let Some(rule) = case.label_rule() else { return };
    if case.toric().is_some_and(|toric| toric.label_power == LabelPower::FlattestMeridian && toric.chosen.is_none()) {
        return sink.caution(Caution::about(Code::RuleNeedsCylinder, Field::LabelRule));
    }
    for answer in answers.iter().flatten() {
        let aim = match rule {
            LabelRule::FirstMyopic => Refraction::from_d(0.0).unwrap_or(case.target),
            LabelRule::Nearest => case.target,
        };
        let exact =
            answer.optics.power(aim, case.vertex).map(|power| power - lens::beyond(case, answer).unwrap_or(0.0));
        let left = |label| lens::refraction(case, answer, label);
        match exact.ok().and_then(|exact| by_rule(rule, case, exact, left)) {
            Some((label, rx)) => {
                sink.item(Item::of(What::RulePower, answer.method, label.d()));
                sink.item(Item::of(What::RuleRefraction, answer.method, rx));
            }
            None => sink.caution(Caution::of(Code::RuleNone, answer.method)),
        }
    }
    sink.caution(Caution::about(Code::RuleUsed, Field::LabelRule));
}
