//! The checks, a file a topic. They say which value means which quantity; the arithmetic is the project's, and what little stands
//! here is not its own way of saying it.

mod altitude;
mod astigmatism;
mod card;
mod certainty;
mod column;
mod cornea;
mod date;
mod decimal;
mod exercise;
mod fluids;
mod given;
mod hard_eyes;
mod incisions;
mod label;
mod lens;
mod limits;
mod live;
mod outcomes;
mod posterior;
mod readback;
mod schema;
mod surge;
mod table_side;
mod text;
mod thick;
mod toric;
mod units;
mod view;
mod words;

use ocellus_card::caution::Caution;
use ocellus_card::item::Item;
use ocellus_card::sink::Sink;
use ocellus_core::working::{Step, Steps};

use crate::check::{Answer, Failed, Registry};

/// Every check.
#[must_use]
pub fn registry() -> Registry {
    let mut registry = Registry::default();
    let topics = [
        altitude::register,
        astigmatism::register,
        card::register,
        certainty::register,
        column::register,
        cornea::register,
        date::register,
        decimal::register,
        exercise::register,
        fluids::register,
        hard_eyes::register,
        incisions::register,
        label::register,
        lens::register,
        limits::register,
        live::register,
        outcomes::register,
        posterior::register,
        readback::register,
        schema::register,
        surge::register,
        table_side::register,
        text::register,
        thick::register,
        toric::register,
        units::register,
        view::register,
        words::register,
    ];
    for register in topics {
        register(&mut registry);
    }
    registry
}

/// What a working streams, by the paper's symbols.
#[derive(Default)]
struct Shown(Vec<(&'static str, f64)>);

impl Steps for Shown {
    fn step(&mut self, step: Step) {
        if let Some(line) = step.line() {
            self.0.push((line.symbol, step.value));
        }
    }
}

impl Sink for Shown {
    fn item(&mut self, _item: Item) {}
    fn caution(&mut self, _caution: Caution) {}
}

/// The step that a working shows under the first of these symbols that it has.
fn symbol(symbols: &[&str], show: impl FnOnce(&mut Shown)) -> Answer {
    let mut shown = Shown::default();
    show(&mut shown);
    let found = symbols.iter().find_map(|symbol| shown.0.iter().find(|(shown, _)| shown == symbol));
    Ok(vec![found.ok_or(format!("no step called {}", symbols.join(" or ")))?.1])
}

/// Where a function that is positive at one end and negative at the other passes through zero.
fn crossing(mut positive: f64, mut negative: f64, f: impl Fn(f64) -> Result<f64, Failed>) -> Answer {
    if f(positive)? <= 0.0 || f(negative)? >= 0.0 {
        return Err(format!("does not cross zero between {positive} and {negative}").into());
    }
    for _ in 0..40 {
        let middle = f64::midpoint(positive, negative);
        *(if f(middle)? > 0.0 { &mut positive } else { &mut negative }) = middle;
    }
    Ok(vec![positive])
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_check_holds() {
        let values = crate::values::all().unwrap();
        let failures = super::registry().run(&values).failures;
        assert!(failures.is_empty(), "\n{}", failures.join("\n"));
    }

    #[test]
    fn a_crossing_is_found_and_its_absence_is_said() {
        let found = super::crossing(0.0, 9.0, |x| Ok(2.0 - x)).ok().unwrap();
        assert!((found[0] - 2.0).abs() < 1e-9);
        assert!(super::crossing(3.0, 9.0, |x| Ok(2.0 - x)).is_err());
    }
}
