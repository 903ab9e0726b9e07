//! A table of eyes, read: every wrong row is reported, and refuses the table, since a mean without that row would be another.

use super::{Eyes, Row, Vector};
use crate::problem::Problem;
use crate::text::shown_unit;
use ocellus_card::error::Wrong;
use ocellus_card::parts::eye::limits::OFF_SQUARE;
use ocellus_core::astigmatism::cornea::measured;
use ocellus_core::astigmatism::group::Group;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::site::Side;
use ocellus_core::decimal::parse;
use ocellus_core::error::Error;
use ocellus_core::optics;
use ocellus_core::quantity::{Axis, CornealPower, Cylinder, KeratometricIndex};

/// Reads a table: every wrong row is reported, and refuses the table.
///
/// # Errors
/// Everything that is wrong with the table.
pub fn read(name: &str, bytes: &[u8], mirror_left: bool) -> Result<Eyes, Vec<Problem>> {
    // some programs begin a table with a mark of its encoding
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(bytes);
    let refused = |wrong: String, accepted: &str| vec![Problem::of_file(name, wrong, accepted)];
    let header =
        reader.headers().map_err(|error| refused(format!("cannot be read: {error}"), "CSV with a header"))?.clone();
    let columns = Columns::of(&header).map_err(|wrong| refused(wrong, COLUMNS))?;
    let (mut rows, mut problems) = (Vec::new(), Vec::new());
    for record in reader.records() {
        let line = |record: &csv::StringRecord| record.position().map_or(0, csv::Position::line);
        let told = |at: u64, wrong: String| Problem::of_file(&format!("{name}:{at}"), wrong, "");
        match record {
            Err(error) => {
                problems
                    .push(told(error.position().map_or(0, csv::Position::line), format!("cannot be read: {error}")));
            }
            Ok(record) => match columns.row(&record, mirror_left) {
                Ok(row) => match rows
                    .iter()
                    .any(|other: &Row| !row.id.is_empty() && (&other.id, other.side) == (&row.id, row.side))
                {
                    true => problems.push(told(line(&record), format!("{}: this eye is in the table already", row.id))),
                    false => rows.push(row),
                },
                Err(wrong) => problems.push(told(line(&record), wrong)),
            },
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut group = Group::default();
    rows.iter().for_each(|row| group.add(row.vector));
    if rows.len() < 3 {
        return Err(refused(format!("{} eyes", rows.len()), "at least three: fewer have no scatter"));
    }
    Ok(Eyes { rows, change: columns.change, mirrored: mirror_left, group })
}

const BEFORE: [&str; 4] = ["k1_d", "k1_axis_deg", "k2_d", "k2_axis_deg"];
const AFTER: [&str; 4] = ["after_k1_d", "after_k1_axis_deg", "after_k2_d", "after_k2_axis_deg"];
const VECTOR: [&str; 2] = ["astigmatism_d", "steep_axis_deg"];
const COLUMNS: &str = "eye, and k1_d, k1_axis_deg, k2_d, k2_axis_deg, after_k1_d, after_k1_axis_deg, after_k2_d, \
                       after_k2_axis_deg, or astigmatism_d, steep_axis_deg; id and keratometric_index if you like";

/// Which columns a table has, and whether the vector is a change.
struct Columns<'a> {
    header: &'a csv::StringRecord,
    change: bool,
}

impl Columns<'_> {
    fn of(header: &csv::StringRecord) -> Result<Columns<'_>, String> {
        let known = |name: &str| {
            ["id", "eye", "keratometric_index"].contains(&name)
                || BEFORE.iter().chain(&AFTER).chain(&VECTOR).any(|known| *known == name)
        };
        if let Some(unknown) = header.iter().find(|name| !known(name)) {
            return Err(format!("{unknown}: no such column"));
        }
        if let Some(twice) = header.iter().enumerate().find(|(at, name)| header.iter().take(*at).any(|n| n == *name)) {
            return Err(format!("{}: the column is given twice", twice.1));
        }
        let has = |names: &[&str]| names.iter().all(|name| header.iter().any(|column| column == *name));
        if has(&VECTOR) && has(&["keratometric_index"]) {
            return Err("keratometric_index: it says nothing of a vector".to_owned());
        }
        match (has(&["eye"]), has(&BEFORE) && has(&AFTER), has(&VECTOR)) {
            (true, change, vector) if change != vector => Ok(Columns { header, change }),
            (true, true, true) => Err("both a change and a vector: which of the two?".to_owned()),
            _ => Err("columns are missing".to_owned()),
        }
    }

    fn text<'r>(&self, record: &'r csv::StringRecord, name: &str) -> Option<&'r str> {
        record.get(self.header.iter().position(|column| column == name)?).filter(|cell| !cell.is_empty())
    }

    fn number(&self, record: &csv::StringRecord, name: &str) -> Result<f64, String> {
        let cell = self.text(record, name).ok_or(format!("{name}: empty"))?;
        parse(cell).map(|number| number.value).map_err(|wrong| format!("{name} {cell}: {}", Wrong::from(wrong).text()))
    }

    fn axis(&self, record: &csv::StringRecord, name: &str) -> Result<Axis, String> {
        Axis::from_deg(self.number(record, name)?).map_err(|error| out_of(name, &error))
    }

    fn cornea(&self, record: &csv::StringRecord, [k1, a1, k2, a2]: [&str; 4]) -> Result<Vector, String> {
        let power = |name: &str| CornealPower::from_d(self.number(record, name)?).map_err(|error| out_of(name, &error));
        let index = match self.text(record, "keratometric_index") {
            None => 1.3375,
            Some(_) => self.number(record, "keratometric_index")?,
        };
        let index = KeratometricIndex::new(index).map_err(|error| out_of("keratometric_index", &error))?;
        let axes = Some((self.axis(record, a1)?, self.axis(record, a2)?));
        let cornea = optics::cornea::Cornea::from_powers(power(k1)?, power(k2)?, index, axes)
            .map_err(|_| format!("keratometric_index {}: {}", index.get(), Wrong::NoCornea.text()))?;
        if cornea.off_square().is_some_and(|off| off > OFF_SQUARE.get()) {
            return Err(format!("{a1} and {a2}: more than 5 deg off a right angle"));
        }
        measured(&cornea).ok_or("no axes".to_owned())
    }

    fn row(&self, record: &csv::StringRecord, mirror_left: bool) -> Result<Row, String> {
        let side = match self.text(record, "eye") {
            Some("right") => Side::Right,
            Some("left") => Side::Left,
            other => return Err(format!("eye {}: right (OD) or left (OS), by these words", other.unwrap_or("empty"))),
        };
        let vector = if self.change {
            self.cornea(record, AFTER)?.minus(self.cornea(record, BEFORE)?)
        } else {
            let size = self.number(record, "astigmatism_d")?;
            let size = Cylinder::from_d(size).map_err(|error| out_of("astigmatism_d", &error))?.d();
            if size < 0.0 {
                return Err(format!("astigmatism_d {size}: not below 0, with the steep meridian beside it"));
            }
            PowerVector::strongest_along(Cornea, 0.0, size, self.axis(record, "steep_axis_deg")?)
        };
        let mirrored = mirror_left && side == Side::Left;
        let vector = if mirrored { PowerVector { j45: 0.0 - vector.j45, ..vector } } else { vector };
        Ok(Row { id: self.text(record, "id").unwrap_or("").to_owned(), side, vector })
    }
}

fn out_of(name: &str, error: &Error) -> String {
    match error {
        Error::Outside(value, bounds) => {
            // a vector has a size and no sign
            let accepted = format!("{} to {} {}", bounds.min.max(0.0), bounds.max, shown_unit(bounds.unit));
            format!("{name} {value}: {}; accepted: {}", Wrong::OutOfRange.text(), accepted.trim_end())
        }
        Error::NotANumber | Error::NoSolution => format!("{name}: {}", Wrong::NotANumber.text()),
    }
}
