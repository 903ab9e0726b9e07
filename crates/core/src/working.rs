//! How a number came about: each intermediate value under the paper's own symbol, with equation, source and mark.
//!
//! A method's `Working` is a plain struct of numbers. Beside it stands a table with a [`Line`] and a [`Prose`] for each
//! of them. The two are apart so that a device that prints only symbols does not carry the sentences.

use crate::constant::Constant;
use crate::lens::Method;
use crate::source::{Mark, Source};

macro_rules! topics {
    ($($id:ident $key:literal $heading:literal, $table:ty;)*) => {
        /// What a step of working belongs to.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Topic {
            /// A lens-power method's own part, up to its lens position.
            Method(Method),
            $(#[doc = $heading] $id,)*
        }

        impl Topic {
            /// Those that are no method's, in the order of their numbers.
            pub const OTHERS: &[Topic] = &[$(Topic::$id),*];

            /// Its stable name.
            ///
            /// ```
            /// assert_eq!(ocellus_core::working::Topic::Vapour.key(), "vapour");
            /// ```
            pub const fn key(self) -> &'static str {
                match self { Topic::Method(method) => method.key(), $(Topic::$id => $key,)* }
            }

            /// What it is about.
            ///
            /// ```
            /// assert_eq!(ocellus_core::working::Topic::Head.heading(), "The column");
            /// ```
            pub const fn heading(self) -> &'static str {
                match self { Topic::Method(_) => "The eye as this method sees it", $(Topic::$id => $heading,)* }
            }

            /// Symbol, unit, source and mark of each step, in order.
            ///
            /// ```
            /// use ocellus_core::{lens::Method, working::Topic};
            /// assert!(Topic::Method(Method::Srkt).lines().iter().any(|line| line.symbol == "LCOR"));
            /// ```
            pub const fn lines(self) -> &'static [Line] {
                match self { Topic::Method(method) => method.lines(), $(Topic::$id => <$table>::LINES,)* }
            }

            /// Meaning, equation and constants of each step, in the same order.
            ///
            /// ```
            /// use ocellus_core::{lens::Method, working::Topic};
            /// assert_eq!(Topic::Method(Method::Srkt).prose().len(), Topic::Method(Method::Srkt).lines().len());
            /// ```
            pub fn prose(self) -> &'static [Prose] {
                match self { Topic::Method(method) => method.prose(), $(Topic::$id => <$table>::PROSE,)* }
            }
        }
    };
}

topics! {
    Power "power" "The lens for the refraction wanted", crate::lens::vergence::PowerWorking;
    Refraction "refraction" "The refraction with the lens chosen", crate::lens::vergence::RefractionWorking;
    Cornea "cornea" "The cornea after the incisions", crate::astigmatism::cornea::Working;
    Toric "toric" "The cylinder at the lens", crate::astigmatism::toric::Working;
    Residual "residual" "What the toric lens chosen leaves", crate::astigmatism::toric::Residual;
    Head "head" "The column", crate::pressure::head::Working;
    SetPressure "set_pressure" "The pressure set on a machine", crate::pressure::head::Set;
    Density "density" "The density of water", crate::pressure::density::Working;
    Air "air" "The air at this height", crate::pressure::air::Working;
    AirHeight "air_height" "The height of this air", crate::pressure::air::Height;
    Vapour "vapour" "The boiling of the fluid", crate::pressure::vapour::Working;
    Ceiling "ceiling" "The vacuum that is left", crate::pressure::ceiling::Working;
    Rhexis "rhexis" "The circle", crate::table_side::rhexis::Working;
    LongEye "long_eye" "The length, adjusted for a long eye", crate::lens::long_eye::Working;
    DoubleK "double_k" "The optics with the cornea after the laser", crate::lens::double_k::Working;
    Slopes "slopes" "How the refraction moves", crate::lens::slope::Slopes;
    Certainty "certainty" "The budget of variances", crate::lens::certainty::Budget;
    Second "second" "The lens by the refraction today", crate::lens::second::Working;
    Thick "thick" "The lens itself", crate::lens::thick::Working;
    Constants "constants" "The constants that go with one another", crate::lens::constants::Family;
    Gullstrand "gullstrand" "Gullstrand's exact eye, relaxed: six surfaces (read)", crate::lens::surfaces::System;
    LeGrand "le_grand" "Le Grand's eye, relaxed: four surfaces (memory)", crate::lens::surfaces::System;
    Incision "incision" "An incision", crate::astigmatism::incision::Working;
    TwoSurfaces "two_surfaces" "Front and back of the cornea together", crate::astigmatism::two_surfaces::Working;
    Back "back" "The published correction for the back of the cornea", crate::astigmatism::posterior::Working;
    Expected "expected" "What it is expected to leave, with scatter", crate::astigmatism::expected::Working;
    OffAxis "off_axis" "A lens that was right, turned off its axis", crate::astigmatism::off_axis::Loss;
    Turn "turn" "The best turn", crate::astigmatism::turning::Working;
    Change "change" "Change wanted and change made", crate::astigmatism::change::Indices;
    Viscosity "viscosity" "The viscosity of water", crate::pressure::viscosity::Working;
    Tube "tube" "A tube", crate::pressure::tube::Working;
    Plunger "plunger" "The plunger", crate::pressure::plunger::Working;
    Opening "opening" "An opening", crate::pressure::opening::Working;
    Readings "readings" "Two readings of one machine: an illustration", crate::pressure::readings::Working;
    Chamber "chamber" "The chamber under flow: an illustration", crate::pressure::chamber::Working;
    Surge "surge" "After the occlusion breaks: an illustration", crate::pressure::surge::Working;
    Units "units" "A pressure in another unit", crate::exercise::InUnits;
    Bores "bores" "Another bore", crate::exercise::Bores;
    Vertex "vertex" "Spectacles and cornea", crate::exercise::AtCornea;
    Vectors "vectors" "Two vectors", crate::exercise::Sum;
    Group "group" "A group of eyes", crate::astigmatism::group::Summary;
}

/// One step's value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// What it belongs to.
    pub topic: Topic,
    /// Its place in the topic's [`Topic::lines`].
    pub index: u8,
    /// The value.
    pub value: f64,
}

/// What a device prints of a step.
#[derive(Debug)]
pub struct Line {
    /// The paper's symbol.
    pub symbol: &'static str,
    /// The place of its unit: a byte where a string takes eight.
    pub(crate) unit: u8,
    /// Source of the equation.
    pub source: Source,
    /// How sure that is.
    pub mark: Mark,
}

impl Line {
    /// Unit, "1" for a pure number.
    pub const fn unit(&self) -> &'static str {
        packed!(
            self.unit,
            "1",
            "mm",
            "mm2",
            "cm",
            "m",
            "D",
            "deg",
            "K",
            "K2",
            "Pa",
            "mmHg",
            "mmHg/cm",
            "kg/m3",
            "D2",
            "D/mm",
            "mm/D",
            "D4",
            "%",
            "C",
            "mPa s",
            "mL/min",
            "m/s",
            "1/s",
            "N",
            "mmHg min/mL",
            "mL/min/mmHg",
            "ms",
            "uL",
            "uJ"
        )
    }

    /// The place of a unit, while tables are compiled.
    pub(crate) const fn unit_place(word: &str) -> u8 {
        let mut line = Line { symbol: "", unit: 0, source: Source::Here, mark: Mark::Chosen };
        while !same(line.unit(), word) {
            assert!(!line.unit().is_empty(), "a unit that no step has yet: add it to Line::unit");
            line.unit += 1;
        }
        line.unit
    }
}

const fn same(a: &str, b: &str) -> bool {
    let (mut a, mut b) = (a.as_bytes(), b.as_bytes());
    while let ([first, rest @ ..], [other, others @ ..]) = (a, b) {
        if *first != *other {
            return false;
        }
        (a, b) = (rest, others);
    }
    a.is_empty() && b.is_empty()
}

/// What a desk prints beside it.
#[derive(Debug)]
pub struct Prose {
    /// What the symbol means.
    pub meaning: &'static str,
    /// The equation, with its numbers.
    pub equation: &'static str,
    /// The constants in that equation.
    pub constants: &'static [&'static Constant],
}

impl Topic {
    /// Every topic, methods first.
    ///
    /// ```
    /// assert!(ocellus_core::working::Topic::all().any(|topic| topic == ocellus_core::working::Topic::Cornea));
    /// ```
    pub fn all() -> impl Iterator<Item = Topic> {
        Method::ALL.iter().copied().map(Topic::Method).chain(Self::OTHERS.iter().copied())
    }

    /// Its number on a line between two machines: a method's own, the others from 128.
    ///
    /// ```
    /// use ocellus_core::working::Topic;
    /// assert!(Topic::all().all(|topic| Topic::from_number(topic.number()) == Some(topic)));
    /// ```
    pub fn number(self) -> u8 {
        match self {
            Topic::Method(method) => method as u8,
            other => 128 + Self::OTHERS.iter().position(|topic| *topic == other).unwrap_or(0) as u8,
        }
    }

    /// The topic with this number.
    pub fn from_number(number: u8) -> Option<Topic> {
        Topic::all().find(|topic| topic.number() == number)
    }
}

/// Streams the values of a topic, in order.
pub(crate) fn show(topic: Topic, values: &[f64], sink: &mut dyn crate::sink::Sink) {
    for (index, value) in values.iter().enumerate() {
        sink.step(Step { topic, index: index as u8, value: *value });
    }
}

/// A struct of intermediate values and the tables that explain them.
///
/// `field "symbol" "unit" = "equation" [constants], "meaning", source mark;`
macro_rules! working {
    ($(#[$doc:meta])* $name:ident of $topic:expr; $(
        $field:ident $symbol:literal $unit:literal = $equation:literal [$($constant:path),*], $meaning:literal, $source:ident $mark:ident;
    )*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name { $(#[doc = concat!($meaning, ", ", $unit, ": ", $equation)] pub $field: f64,)* }

        impl $name {
            pub(crate) const LINES: &[$crate::working::Line] = &[$($crate::working::Line {
                symbol: $symbol, unit: $crate::working::Line::unit_place($unit),
                source: $crate::source::Source::$source, mark: $crate::source::Mark::$mark,
            }),*];

            pub(crate) const PROSE: &[$crate::working::Prose] = &[$($crate::working::Prose {
                meaning: $meaning, equation: $equation, constants: &[$(&$constant),*],
            }),*];

            /// Streams every value, in order.
            pub fn show(&self, sink: &mut dyn $crate::sink::Sink) {
                $crate::working::show($topic, &[$(self.$field),*], sink);
            }
        }
    };
}
