//! Many eyes as vectors: what a surgeon's incisions do on the whole, and how far single eyes are from it.

use crate::draw::plot::{Curve, Plot};
use crate::files;
use crate::problem::Problem;
use crate::text::{self, paragraph};
use ocellus_core::astigmatism::cornea::measured;
use ocellus_core::astigmatism::group::{AgainstZero, Group, Summary};
use ocellus_core::astigmatism::on_dial;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::caution::Code;
use ocellus_core::choice::Eye;
use ocellus_core::decimal::parse;
use ocellus_core::eye;
use ocellus_core::quantity::{Axis, CornealPower, Cylinder, KeratometricIndex};
use std::io::{self, Write};
use std::path::Path;

type Vector = PowerVector<Cornea>;

/// One row of the table.
struct Row {
    id: String,
    side: Eye,
    vector: Vector,
}

/// A table of eyes that was read.
pub struct Eyes {
    rows: Vec<Row>,
    change: bool,
    mirrored: bool,
    group: Group,
}

/// Reads a table: every wrong row is told, and refuses it.
///
/// # Errors
/// Everything that is wrong with the table.
pub fn read(path: &Path, mirror_left: bool) -> Result<Eyes, Vec<Problem>> {
    let (name, bytes) = files::read(path)?;
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(bytes.as_slice());
    let refused = |wrong: String, accepted: &str| vec![Problem::of_file(&name, wrong, accepted)];
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
                Ok(row) => rows.push(row),
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
            return Err(format!("{}: the column is there twice", twice.1));
        }
        let has = |names: &[&str]| names.iter().all(|name| header.iter().any(|column| column == *name));
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
        parse(cell).map(|number| number.value).map_err(|code| format!("{name} {cell}: {}", code.text()))
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
        let cornea = eye::cornea::Cornea::from_powers(power(k1)?, power(k2)?, index, axes)
            .map_err(|error| out_of("keratometric_index", &error))?;
        measured(&cornea).ok_or("no axes".to_owned())
    }

    fn row(&self, record: &csv::StringRecord, mirror_left: bool) -> Result<Row, String> {
        let side = match self.text(record, "eye") {
            Some("right") => Eye::Right,
            Some("left") => Eye::Left,
            other => return Err(format!("eye {}: right or left", other.unwrap_or("empty"))),
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
        let mirrored = mirror_left && side == Eye::Left;
        let vector = if mirrored { PowerVector { j45: 0.0 - vector.j45, ..vector } } else { vector };
        Ok(Row { id: self.text(record, "id").unwrap_or("").to_owned(), side, vector })
    }
}

fn out_of(name: &str, error: &ocellus_core::error::Error) -> String {
    let limits = error.bounds.map_or(String::new(), |b| format!("; accepted: {} to {} {}", b.min, b.max, b.unit));
    format!("{name} {}: {}{limits}", error.value.map_or(String::new(), |value| value.to_string()), error.code.text())
}

/// Degrees between two points of an ellipse.
const STEP: usize = 5;

impl Eyes {
    fn summary(&self) -> Option<(Summary, Vector)> {
        self.group.summary().zip(self.group.centroid())
    }

    fn what(&self) -> &'static str {
        if self.change { "change of corneal astigmatism (SIA)" } else { "astigmatism" }
    }

    /// Prints what the eyes say together.
    pub fn print(&self, out: &mut dyn Write) -> io::Result<()> {
        let Some((s, centre)) = self.summary() else { return Ok(()) };
        let d = |value: f64| text::number(value, 2, false, "D");
        let signed = |value: f64| text::number(value, 2, true, "D");
        let at =
            |v: Vector| v.strongest().map_or("no axis".to_owned(), |axis| text::number(on_dial(axis), 0, false, "deg"));
        let mut row = |name: &str, value: String| writeln!(out, "  {name:40} {value}");
        row("what", self.what().to_owned())?;
        row("eyes", self.rows.len().to_string())?;
        row("centroid, size", d(centre.cylinder()))?;
        row("centroid, steep meridian", at(centre))?;
        row("centroid, x and y", format!("{}, {}", signed(s.x), signed(s.y)))?;
        row("SD of x and y", format!("{}, {}", d(s.sd_x), d(s.sd_y)))?;
        for (name, factor) in
            [("95 % ellipse of the centroid, semi-axes", s.of_mean), ("95 % ellipse of single eyes", s.of_eyes)]
        {
            row(name, format!("{}, {}", d(factor * s.major), d(factor * s.minor)))?;
        }
        row("its longest direction in the plane", text::number(s.direction, 0, false, "deg"))?;
        match self.group.against_zero() {
            Some(AgainstZero { t2, p }) => {
                let shown = if p < 0.0001 { "below 0.0001".to_owned() } else { text::number(p, 4, false, "1") };
                row("is the centroid zero? Hotelling", format!("T2 {}, p {shown}", text::number(t2, 2, false, "1")))?;
            }
            None => row("is the centroid zero?", "not tested: all eyes lie on one line".to_owned())?,
        }
        let sizes = self.rows.iter().map(|row| row.vector.cylinder()).sum::<f64>() / self.rows.len() as f64;
        row("mean of the sizes", format!("{}, no vector: never enter it as one", d(sizes)))?;
        writeln!(out)?;
        if self.change {
            let steep = centre.strongest().map_or(0.0, on_dial);
            let entered = format!(
                "In a case: sia_centroid_d = {}, sia_centroid_axis_deg = {}{}.",
                text::number(centre.cylinder(), 2, false, "1"),
                text::number(steep, 0, false, "1"),
                if self.mirrored { " for a right eye, and 180 less that meridian for a left one" } else { "" },
            );
            paragraph(out, "", &entered)?;
        }
        for note in self.notes() {
            paragraph(out, "", &note)?;
        }
        Ok(())
    }

    fn notes(&self) -> Vec<String> {
        let both = [Eye::Right, Eye::Left].iter().all(|side| self.rows.iter().any(|row| row.side == *side));
        let mut notes = vec![
            "The ellipses and the test hold where vectors are normal about one centre, each eye by itself: two eyes of a \
             patient are not."
                .to_owned(),
        ];
        if both && !self.mirrored {
            notes.push(
                "Right and left eyes are together as measured: their nasal and temporal sides lie opposite, so oblique \
                 parts cancel. --mirror-left puts left eyes the other way."
                    .to_owned(),
            );
        }
        if self.mirrored {
            notes.push("Left eyes are mirrored: meridians read as those of right eyes.".to_owned());
        }
        if self.rows.len() < 10 {
            notes.push("Fewer than ten eyes: the ellipses are wide for a reason.".to_owned());
        }
        notes.push(Code::NotADevice.text().to_owned());
        notes
    }

    /// Every point of the double-angle plane, as CSV: eyes, centroid, both ellipses.
    pub fn print_points(&self, out: &mut dyn Write) -> io::Result<()> {
        let Some((s, centre)) = self.summary() else { return Ok(()) };
        let mut table = csv::Writer::from_writer(out);
        table.write_record(["kind", "id", "x_d", "y_d"]).map_err(io::Error::other)?;
        let mut put = |kind: &str, id: &str, v: Vector| {
            let (x, y) = point(v);
            table.write_record([kind, id, &x.to_string(), &y.to_string()]).map_err(io::Error::other)
        };
        for row in &self.rows {
            put("eye", &row.id, row.vector)?;
        }
        put("centroid", "", centre)?;
        for (kind, factor) in [("ellipse_of_centroid", s.of_mean), ("ellipse_of_eyes", s.of_eyes)] {
            for degrees in (0..=360).step_by(STEP) {
                put(kind, &degrees.to_string(), s.ellipse(factor, f64::from(degrees)))?;
            }
        }
        table.flush()
    }

    /// The double-angle plane as SVG: with the rule to the left, against it to the right.
    ///
    /// # Errors
    /// Where it cannot be drawn.
    pub fn draw(&self) -> Result<String, Vec<Problem>> {
        let refused = |error: String| vec![Problem::of_file("the drawing", error, "")];
        let Some((s, centre)) = self.summary() else { return Err(refused("too few eyes".to_owned())) };
        let ring = |factor| (0..=360).step_by(STEP).map(|deg| point(s.ellipse(factor, f64::from(deg)))).collect();
        Plot {
            title: format!("{}: {} eyes", self.what(), self.rows.len()),
            across: "x = N cos 2a, D: with the rule to the left, against it to the right".to_owned(),
            up: "y = N sin 2a, D: 45 upwards, 135 downwards".to_owned(),
            square: true,
            curves: vec![
                Curve::dots("eyes", self.rows.iter().map(|row| point(row.vector)).collect()),
                Curve::cross("centroid", point(centre)),
                Curve::line("95 % ellipse of the centroid", ring(s.of_mean)),
                Curve::dashed("95 % ellipse of single eyes", ring(s.of_eyes)),
            ],
            notes: self.notes(),
        }
        .draw()
        .map_err(refused)
    }
}

/// A vector's place in the double-angle plane.
fn point(v: Vector) -> (f64, f64) {
    (2.0 * v.j0, 2.0 * v.j45)
}
