//! Which labels there are around a power, and which one a rule points out.

use ocellus_core::lens::label::{LabelRule, Labels};
use ocellus_core::lens::method::Method;
use ocellus_core::lens::t2;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{KeratometricIndex, LabelStep, LensPower, Refraction};

use crate::check::{Failed, Registry, name_of};
use crate::checks;
use crate::checks::given::{a_constant, al, k, one_of, target, vertex};
use crate::checks::view::ask;
use crate::values::Value;

/// The labels that a model comes in: in steps of 0.5 D where a value says nothing else.
fn labels(value: &Value) -> Result<Labels, Failed> {
    let power = |key: &str| value.number(key).ok().map(LensPower::from_d).transpose();
    let step = LabelStep::from_d(value.number("lens_step_d").unwrap_or(0.5))?;
    Ok(Labels { step, least: power("lens_least_d")?, most: power("lens_most_d")? })
}

fn rule(value: &Value) -> Result<LabelRule, Failed> {
    one_of(LabelRule::ALL, LabelRule::word, value.text("label_rule")?)
}

/// The exact power that T2 asks for.
fn by_t2(value: &Value) -> Result<f64, Failed> {
    let cornea = Cornea::from_powers(k(value, "k1_d")?, k(value, "k2_d")?, KeratometricIndex::new(1.3375)?, None)?;
    let eye = t2::working(al(value)?, &cornea, a_constant(value)?).thin_eye();
    Ok(eye.power(target(value)?, vertex(value)?)?.power)
}

pub(super) fn register(registry: &mut Registry) {
    // The compiler knows which function it is by what is handed to it, so it is named where it is called.
    let by_rule = Labels::by_rule;
    registry.values(&[name_of(&by_rule)], ["card-rule-power-*", "card-rule-refraction-*"], move |value| {
        let (rule, labels, target, vertex) = (rule(value)?, labels(value)?, target(value)?, vertex(value)?);
        let aim = if rule == LabelRule::FirstMyopic { Refraction::from_d(0.0)? } else { target };
        ask(Method::view, value, |view| {
            let (optics, exact) = (view.optics(), view.optics().power(aim, vertex)?);
            let left = move |label: LensPower| optics.refraction(label, vertex).ok();
            let (label, rx) = by_rule(labels, rule, target, exact, left).ok_or("none is pointed out")?;
            Ok(vec![if value.id.contains("power") { label.d() } else { rx }])
        })
    });
    checks! { registry;
        // What is pointed out is a label of the model; half a step beside it, and a step below the weakest, there is none.
        Labels::has, Labels::reaches => "card-rule-power-*" => |has, reaches; value| {
            let (labels, printed) = (labels(value)?, value.numbers[0].value);
            let beside = LensPower::from_d(printed + labels.step.d() / 2.0)?;
            let beyond = labels.least.is_some_and(|least| reaches(labels, least.d() - labels.step.d()));
            if !has(labels, LensPower::from_d(printed)?) || has(labels, beside) || !reaches(labels, printed) || beyond {
                return Err("these are other labels".into());
            }
            Ok(vec![printed])
        };
        // The row of the label nearest to what is asked for is the fifth.
        Labels::around => ["card-ladder-power", "card-ladder-power-next"] => |around; value| {
            let (exact, row) = (by_t2(value)?, value.text("row")?.parse()?);
            Ok(vec![around(labels(value)?, exact).nth(row).ok_or("no such row")?.d()])
        };
    }
}
