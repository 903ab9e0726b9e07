//! Many eyes as vectors: what a surgeon's incisions do on average, and how far single eyes are from it.

use crate::draw::plot::{Curve, Plot};
use crate::problem::Problem;
use crate::text::{self, paragraph};
use ocellus_card::cautions::NOT_A_DEVICE;
use ocellus_core::astigmatism::group::{AgainstZero, Group, Summary};
use ocellus_core::astigmatism::on_dial;
use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::site::Side;
use std::io::{self, Write};

mod table;

pub use table::read;

type Vector = PowerVector<Cornea>;

/// One row of the table.
struct Row {
    id: String,
    side: Side,
    vector: Vector,
}

/// A table of eyes that was read.
pub struct Eyes {
    rows: Vec<Row>,
    change: bool,
    mirrored: bool,
    group: Group,
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
        row("their longest direction, double angle", text::number(s.direction, 0, false, "deg"))?;
        match self.group.against_zero() {
            Some(AgainstZero { t2, p }) => {
                let shown = if p < 0.0001 { "below 0.0001".to_owned() } else { text::number(p, 4, false, "1") };
                row("is the centroid zero? Hotelling", format!("T2 {}, p {shown}", text::number(t2, 2, false, "1")))?;
            }
            None => row("is the centroid zero?", "not tested: all eyes lie on one line".to_owned())?,
        }
        let sizes = self.rows.iter().map(|row| row.vector.cylinder()).sum::<f64>() / self.rows.len() as f64;
        row("mean of the sizes", format!("{}; no vector: do not enter it", d(sizes)))?;
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
        let both = Side::ALL.iter().all(|side| self.rows.iter().any(|row| row.side == *side));
        let mut notes = vec![
            "The ellipses and the test hold where vectors are normal about one centre and eyes are independent: two eyes of \
             one patient are not."
                .to_owned(),
        ];
        if both && !self.mirrored {
            notes.push(
                "Right and left eyes are together as measured: their nasal and temporal sides lie opposite, so oblique \
                 parts cancel. --mirror-left mirrors left eyes."
                    .to_owned(),
            );
        }
        if self.mirrored {
            notes.push("Left eyes are mirrored: meridians read as those of right eyes.".to_owned());
        }
        if self.group.against_zero().is_some_and(|test| test.p > 0.05) {
            notes.push("By this test the centroid cannot be distinguished from zero (p above 0.05).".to_owned());
        }
        if self.rows.len() < 10 {
            notes.push("Fewer than ten eyes: the ellipses are wide because of that.".to_owned());
        }
        notes.push(NOT_A_DEVICE.text().to_string());
        notes
    }

    /// The same numbers unrounded, as JSON.
    pub fn print_json(&self, out: &mut dyn Write) -> io::Result<()> {
        let Some((s, centre)) = self.summary() else { return Ok(()) };
        let test = self.group.against_zero();
        let ellipse = |factor: f64| serde_json::json!([factor * s.major, factor * s.minor]);
        let told = serde_json::json!({
            "what": self.what(),
            "left_eyes_mirrored": self.mirrored,
            "eyes": self.rows.len(),
            "centroid": {
                "x_d": s.x, "y_d": s.y, "size_d": centre.cylinder(), "steep_axis_deg": centre.strongest().map(on_dial),
            },
            "sd_d": [s.sd_x, s.sd_y],
            "covariance_d2": s.cov,
            "ellipse_direction_deg": s.direction,
            "ellipse_of_centroid_d": ellipse(s.of_mean),
            "ellipse_of_eyes_d": ellipse(s.of_eyes),
            "against_zero": test.map(|test| serde_json::json!({ "t2": test.t2, "p": test.p })),
            "notes": self.notes(),
        });
        writeln!(out, "{told:#}")
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
