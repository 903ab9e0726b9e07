//! Units of pressure.

use ocellus_core::fluids::unit::{self, Unit};
use uom::si::f64::Pressure;
use uom::si::pressure;

use crate::check::{Compared, Failed, Registry};
use crate::checks::given::one_of;
use crate::values::Value;
use crate::{checks, compare, oracles};

fn unit_named(word: &str) -> Result<Unit, Failed> {
    one_of(Unit::ALL, Unit::word, word)
}

fn given(value: &Value, key: &str) -> Result<Unit, Failed> {
    unit_named(value.text(key)?)
}

/// One of each unit in pascal, as uom has it.
fn in_uom(unit: Unit) -> f64 {
    let one = match unit {
        Unit::Pa => Pressure::new::<pressure::pascal>(1.0),
        Unit::HPa => Pressure::new::<pressure::hectopascal>(1.0),
        Unit::KPa => Pressure::new::<pressure::kilopascal>(1.0),
        Unit::Bar => Pressure::new::<pressure::bar>(1.0),
        Unit::MmHg => Pressure::new::<pressure::millimeter_of_mercury>(1.0),
        Unit::Torr => Pressure::new::<pressure::torr>(1.0),
        Unit::CmH2O => Pressure::new::<pressure::centimeter_of_water>(1.0),
        Unit::InHg => Pressure::new::<pressure::inch_of_mercury>(1.0),
        Unit::Psi => Pressure::new::<pressure::psi>(1.0),
        Unit::Atm => Pressure::new::<pressure::atmosphere>(1.0),
        Unit::MPa => Pressure::new::<pressure::megapascal>(1.0),
        Unit::MBar => Pressure::new::<pressure::millibar>(1.0),
        Unit::MmH2O => Pressure::new::<pressure::millimeter_of_water>(1.0),
        Unit::InH2O => Pressure::new::<pressure::inch_of_water>(1.0),
        Unit::KgfPerCm2 => Pressure::new::<pressure::atmosphere_technical>(1.0),
    };
    one.get::<pressure::pascal>()
}

/// uom carries seven digits of most units.
fn as_uom_does(convert: fn(f64, Unit, Unit) -> f64) -> Compared {
    let mut count = 0;
    for &from in Unit::ALL {
        for &to in Unit::ALL {
            for value in [-42.5, 1.0, 500.0] {
                let (ours, theirs) = (convert(value, from, to), value * in_uom(from) / in_uom(to));
                if !compare::agrees(ours, theirs, 5e-7 * theirs.abs()) {
                    return Err(format!("{value} {} is {ours} {}, not {theirs}", from.word(), to.word()).into());
                }
                count += 1;
            }
        }
    }
    Ok(count)
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        Unit::pascals, Unit::word => "pint-*-in-pa" => |pascals, word; value| {
            let unit = given(value, "unit")?;
            if word(unit) == value.text("unit")? { Ok(vec![pascals(unit)]) } else { Err("another unit".into()) }
        };
        unit::convert => ["pint-*", "!pint-*-in-pa", "!pint-head-*"] => |convert; value|
            Ok(vec![convert(value.number("value")?, given(value, "from")?, given(value, "to")?)]);
        Unit::pascals => ["unit-1", "unit-2", "unit-4", "unit-5", "unit-6", "unit-7"] => |pascals; value| {
            let units = ["mmHg", "cmH2O", "", "inHg", "psi", "atm", "inHg"];
            let number: usize = value.id.trim_start_matches("unit-").parse()?;
            Ok(vec![pascals(unit_named(units[number - 1])?)])
        };
        unit::convert => ["vac-1", "vac-2", "vac-3"] => |convert; value|
            Ok(vec![convert(value.number("mmHg")?, Unit::MmHg, unit_named(&value.unit)?)]);
    }
    oracles! { registry;
        unit::convert => "uom's units of pressure" => |convert| as_uom_does(convert);
    }
}
