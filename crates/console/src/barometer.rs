//! The air as a sensor measures it, and a column of water on the sensor's tube.

use crate::around::{Air, Around};
use crate::outcome::Outcome;
use crate::page::Page;
use crate::session::Session;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_core::decimal::{Sign, fixed, parse};
use ocellus_core::fluids::column::of_column;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::quantity::Density;
use ocellus_text::{Text, text};

/// The pressure that others are compared with, hPa.
pub(crate) struct Zero(Option<f64>);

impl Zero {
    pub(crate) const NONE: Zero = Zero(None);
}

pub(crate) fn run(
    session: &mut Session,
    draft: &mut Draft,
    around: &dyn Around,
    rest: &str,
    page: &mut Page,
) -> Outcome {
    let (zero, take) = (rest.eq_ignore_ascii_case("zero"), rest.eq_ignore_ascii_case("take"));
    if !(zero || take || rest.is_empty()) {
        page.line(text!("barometer, barometer zero, or barometer take."));
        return Outcome::Refused;
    }
    let (hpa, celsius) = match around.air() {
        Air::Measured { hpa, celsius } => (hpa, celsius),
        Air::Absent => {
            page.line(text!(
                "There is no barometer on this machine: station takes a pressure that was read elsewhere."
            ));
            return Outcome::Answered;
        }
        Air::Silent => {
            page.line(text!(
                "Check the wires of the barometer: it does not answer, or gives a pressure that no air has."
            ));
            return Outcome::Refused;
        }
    };
    told(hpa, celsius, session.zero.0, draft, page);
    if zero {
        session.zero.0 = Some(hpa);
        page.line(text!("The next readings are compared with this one."));
    }
    if take {
        return taken(hpa, draft, page);
    }
    Outcome::Answered
}

#[inline(never)]
fn told(hpa: f64, celsius: f64, zero: Option<f64>, draft: &Draft, page: &mut Page) {
    let mut row = |word: Text, value: f64, places: u8, signed: bool, unit: &'static str| {
        page.name(word);
        page.number(value, places, signed, unit);
        page.end();
    };
    row(text!("measured"), hpa, 2, false, "hPa");
    row(text!("the same"), convert(hpa, Unit::HPa, Unit::MmHg), 2, false, "mmHg");
    row(text!("temperature of the sensor"), celsius, 1, false, "C");
    let Some(zero) = zero else { return };
    let more = convert(hpa - zero, Unit::HPa, Unit::MmHg);
    row(text!("more than at zero"), more, 2, true, "mmHg");
    row(text!("the same"), convert(hpa - zero, Unit::HPa, Unit::CmH2O), 1, true, "cmH2O");
    let density = draft.number(entries::DENSITY).or(entries::DENSITY.id().default());
    if let Some(density) = density.and_then(|density| Density::from_kg_m3(density).ok()) {
        row(text!("column of this fluid, h = p/(rho g)"), more / of_column(1.0, density), 1, true, "cm");
    }
}

/// Enters what was measured, as it would be typed.
fn taken(hpa: f64, draft: &mut Draft, page: &mut Page) -> Outcome {
    let typed = fixed(hpa, 1, Sign::Minus).and_then(|text| parse(text.as_str()).ok());
    match typed.filter(|typed| entries::STATION_PRESSURE.id().check(typed.value).is_ok()) {
        Some(typed) => {
            draft.set(entries::STATION_PRESSURE, typed.value);
            Outcome::Entered(entries::STATION_PRESSURE.id(), 1)
        }
        None => {
            page.line(text!("Outside what is taken for the pressure of a station: not entered."));
            Outcome::Refused
        }
    }
}
