//! The parts of an eye on a page. Nothing is placed by sines: each part is drawn to the right and turned.

use super::Seen;
use crate::text;
use ocellus_card::entries;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::site::{Seat, Side};
use ocellus_core::astigmatism::{plane, site};
use ocellus_core::quantity::Site;
use ocellus_core::value::Value;
use svg::Document;
use svg::node::element::{Circle, Group, Line, Path, Rectangle, Text, Title};

/// Radii of the limbus, of the optic, of the degrees around, and of the words around those.
pub(super) const LIMBUS: f64 = 160.0;
const OPTIC: f64 = 92.0;
const DEGREES: f64 = 184.0;
const WORDS: f64 = 206.0;

/// An eye as it is seen from a seat, its middle at a place of the page.
pub(super) struct View {
    eye: Side,
    seat: Option<Seat>,
    middle: (f64, f64),
}

impl View {
    pub(super) fn of(seen: &Seen, middle: (f64, f64)) -> View {
        let seat = seen.entry(entries::SEAT).and_then(Seat::admitted);
        let eye = seen.entry(entries::SIDE).and_then(Side::admitted).unwrap_or(Side::Right);
        View { eye, seat, middle }
    }

    /// Whose eye, and who sees it.
    pub(super) fn title(&self) -> (&'static str, &'static str) {
        let eye = match self.eye {
            Side::Right => "RIGHT EYE",
            Side::Left => "LEFT EYE",
        };
        let seen = match self.seat {
            None => "seen facing the patient upright (no seat entered)",
            Some(Seat::Superior) => "as a surgeon at the patient's head sees it",
            Some(Seat::Temporal) => "as a surgeon at the patient's temple sees it",
        };
        (eye, seen)
    }

    pub(super) fn word(&self, degrees: f64) -> &'static str {
        Site::from_deg(degrees).map_or("", |place| site::word(place, self.eye))
    }

    /// What lies at an angle of the eye, drawn to the right of the middle and turned to where it is seen.
    pub(super) fn at(&self, degrees: f64) -> Group {
        let (x, y) = self.middle;
        Group::new().set("transform", format!("translate({x} {y}) rotate({})", -self.seen(degrees)))
    }

    /// Upright writing at an angle of the eye, so far from the middle; it begins or ends there where it lies at a side.
    fn label(&self, degrees: f64, from: f64, content: &str, size: f64, anchor: &str) -> Group {
        let upright = format!("translate({from} 0) rotate({})", self.seen(degrees));
        self.at(degrees).add(write(content, (0.0, size * 0.35), size, anchor).set("transform", upright))
    }

    fn seen(&self, degrees: f64) -> f64 {
        degrees - site::tilt(self.seat, self.eye)
    }

    /// Limbus, ticks every ten degrees, numbers every thirty, the four sides by name, and who sits where.
    pub(super) fn rim(&self) -> Group {
        let (x, y) = self.middle;
        let mut rim = Group::new().add(circle((x, y), LIMBUS).set("stroke-width", 2));
        for tick in 0..36 {
            let degrees = f64::from(10 * tick);
            let inner = if tick % 3 == 0 { LIMBUS - 12.0 } else { LIMBUS - 6.0 };
            rim = rim.add(self.at(degrees).add(line(inner, LIMBUS, 1.0)));
            if tick % 3 == 0 {
                rim = rim.add(self.label(degrees, DEGREES, &text::number(degrees, 0, false, "1"), 15.0, "middle"));
            }
        }
        for side in [0.0, 90.0, 180.0, 270.0] {
            let (anchor, from) = match self.seen(side).rem_euclid(360.0) as u16 {
                0 => ("start", WORDS - 2.0),
                180 => ("end", WORDS - 2.0),
                _ => ("middle", WORDS),
            };
            rim = rim.add(self.label(side, from, self.word(side), 14.0, anchor));
        }
        if self.seat.is_some() {
            rim = rim.add(write("surgeon", (x, y + WORDS + 28.0), 15.0, "middle").set("font-weight", "bold"));
        }
        rim
    }

    /// A cut at the limbus, as wide as its share of the limbus.
    pub(super) fn cut(&self, degrees: f64, width: f64) -> Group {
        let (high, deep) = (2.0 * LIMBUS * width, 16.0);
        self.at(degrees).add(
            Rectangle::new()
                .set("x", LIMBUS - deep / 2.0)
                .set("y", -high / 2.0)
                .set("width", deep)
                .set("height", high)
                .set("fill", "black"),
        )
    }

    /// A meridian through the whole eye, dashed.
    pub(super) fn meridian(&self, degrees: f64, dashes: &str) -> Group {
        self.at(degrees).add(line(-LIMBUS, LIMBUS, 1.5).set("stroke-dasharray", dashes))
    }

    /// The optic of a toric lens, and its marked meridian with a bar across each end.
    pub(super) fn lens(&self, degrees: f64) -> Group {
        self.lens_in(degrees, "black", "none")
    }

    /// The same where it lies and should not.
    pub(super) fn ghost(&self, degrees: f64) -> Group {
        self.lens_in(degrees, "#777", "6 5")
    }

    fn lens_in(&self, degrees: f64, ink: &str, dashes: &str) -> Group {
        let mut lens =
            self.at(degrees).add(circle((0.0, 0.0), OPTIC).set("stroke", ink).set("stroke-dasharray", dashes));
        lens = lens.add(line(-OPTIC, OPTIC, 3.5).set("stroke", ink).set("stroke-dasharray", dashes));
        for end in [-OPTIC, OPTIC] {
            let bar = Line::new().set("x1", end).set("x2", end).set("y1", -9).set("y2", 9);
            lens = lens.add(bar.set("stroke", ink).set("stroke-width", 3.5));
        }
        lens
    }

    /// What a meridian is called, at the end that is seen further to the right.
    pub(super) fn named(&self, degrees: f64, content: &str) -> Group {
        let seen = self.seen(degrees).rem_euclid(360.0);
        let end = if (90.0..270.0).contains(&seen) { degrees + 180.0 } else { degrees };
        self.label(end, OPTIC + 8.0, content, 14.0, "start")
    }

    /// The way round from one angle of the eye to another, counter-clockwise plus, with a head.
    pub(super) fn way(&self, from: f64, turn: f64, radius: f64, dashes: &str) -> Group {
        let (start, length) = if turn < 0.0 { (from + turn, -turn) } else { (from, turn) };
        // a vector of the core turns by half an angle: the far end of the way, from a start at the right
        let end = PowerVector::at(plane::Cornea, 0.0, radius, 0.0).turned(length / 2.0);
        let large = i32::from(length > 180.0);
        let arc = Path::new()
            .set("d", format!("M {radius} 0 A {radius} {radius} 0 {large} 0 {:.3} {:.3}", end.j0, -end.j45))
            .set("fill", "none")
            .set("stroke", "black")
            .set("stroke-width", 2)
            .set("stroke-dasharray", dashes);
        let head = Path::new()
            .set("d", if turn < 0.0 { "M -7 -8 L 7 -8 L 0 7 z" } else { "M -7 8 L 7 8 L 0 -7 z" })
            .set("transform", format!("translate({radius} 0)"));
        Group::new().add(self.at(start).add(arc)).add(self.at(from + turn).add(head))
    }
}

/// The way a thing is drawn, as a sign before what it is.
pub(super) enum Sign {
    Block,
    Dashes,
    Line,
    None,
}

/// Such a sign, on a line of writing.
pub(super) fn sign(sign: &Sign, (x, y): (f64, f64)) -> Group {
    let at = Group::new().set("transform", format!("translate({x} {})", y - 5.0));
    match sign {
        Sign::Block => at.add(Rectangle::new().set("x", 8).set("y", -7).set("width", 30).set("height", 14)),
        Sign::Dashes => at.add(line(0.0, 46.0, 1.5).set("stroke-dasharray", "9 6")),
        Sign::Line => at.add(line(0.0, 46.0, 3.5)),
        Sign::None => at,
    }
}

/// An empty page with what is said for those who cannot see it.
pub(super) fn page(width: f64, height: f64, said: &str) -> Document {
    Document::new()
        .set("viewBox", (0, 0, width, height))
        .set("width", width)
        .set("height", height)
        .set("font-family", "sans-serif")
        .add(Title::new(said))
        .add(Rectangle::new().set("width", "100%").set("height", "100%").set("fill", "white"))
}

pub(super) fn write(content: &str, (x, y): (f64, f64), size: f64, anchor: &str) -> Text {
    Text::new(content).set("x", x).set("y", y).set("font-size", size).set("text-anchor", anchor)
}

/// A paragraph as lines of so many characters; the answer is where the next begins.
pub(super) fn paragraph(content: &str, (x, y): (f64, f64), size: f64, columns: usize, onto: &mut Group) -> f64 {
    let mut at = y;
    for line in textwrap::wrap(content, columns) {
        *onto = std::mem::take(onto).add(write(&line, (x, at), size, "start"));
        at += size * 1.35;
    }
    at
}

fn circle((x, y): (f64, f64), radius: f64) -> Circle {
    Circle::new().set("cx", x).set("cy", y).set("r", radius).set("fill", "none").set("stroke", "black")
}

fn line(from: f64, to: f64, width: f64) -> Line {
    Line::new().set("x1", from).set("x2", to).set("stroke", "black").set("stroke-width", width)
}
