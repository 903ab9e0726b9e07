//! How a number came about: each intermediate value under the paper's own symbol, with equation, source and mark.
//!
//! A method's `Working` is a plain struct of numbers. Beside it stands a table with a [`Line`] and a [`Prose`] for each
//! of them. The two are apart so that a device that prints only symbols does not carry the sentences.

use crate::constant::Constant;
use crate::lens::Method;
use crate::source::{Mark, Source};

/// What a step of working belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// A lens-power method's own part, up to its lens position.
    Method(Method),
    /// A long eye's length, adjusted.
    LongEye,
    /// The optics of a method with the cornea after a laser.
    DoubleK,
    /// How a refraction moves with what it rests on.
    Slopes,
    /// How sure a prediction is.
    Certainty,
    /// A lens by the refraction that an eye has.
    Second,
    /// The lens itself.
    Thick,
    /// Lens constants that go with one another.
    Constants,
    /// Gullstrand's schematic eye.
    Gullstrand,
    /// Le Grand's schematic eye.
    LeGrand,
    /// The vergence formula: the lens for a refraction.
    Power,
    /// The vergence formula: the refraction for a lens.
    Refraction,
    /// The cornea and its incision.
    Cornea,
    /// The cylinder at the lens.
    Toric,
    /// What a toric lens leaves.
    Residual,
    /// Pressure of the column.
    Head,
    /// The air at a height.
    Air,
    /// The boiling of water.
    Vapour,
    /// What the air allows.
    Ceiling,
    /// Size of the rhexis.
    Rhexis,
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
            self.unit, "1", "mm", "mm2", "cm", "m", "D", "deg", "K", "K2", "Pa", "mmHg", "mmHg/cm", "kg/m3", "D2",
            "D/mm", "mm/D"
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
    /// Those that are no method's, in the order of their numbers.
    pub const OTHERS: &[Topic] = &[
        Topic::Power,
        Topic::Refraction,
        Topic::Cornea,
        Topic::Toric,
        Topic::Residual,
        Topic::Head,
        Topic::Air,
        Topic::Vapour,
        Topic::Ceiling,
        Topic::Rhexis,
        Topic::LongEye,
        Topic::DoubleK,
        Topic::Slopes,
        Topic::Certainty,
        Topic::Second,
        Topic::Thick,
        Topic::Constants,
        Topic::Gullstrand,
        Topic::LeGrand,
    ];

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

    /// Its stable name.
    ///
    /// ```
    /// assert_eq!(ocellus_core::working::Topic::Vapour.key(), "vapour");
    /// ```
    pub const fn key(self) -> &'static str {
        match self {
            Topic::Method(method) => method.key(),
            Topic::LongEye => "long_eye",
            Topic::DoubleK => "double_k",
            Topic::Slopes => "slopes",
            Topic::Certainty => "certainty",
            Topic::Second => "second",
            Topic::Thick => "thick",
            Topic::Constants => "constants",
            Topic::Gullstrand => "gullstrand",
            Topic::LeGrand => "le_grand",
            Topic::Power => "power",
            Topic::Refraction => "refraction",
            Topic::Cornea => "cornea",
            Topic::Toric => "toric",
            Topic::Residual => "residual",
            Topic::Head => "head",
            Topic::Air => "air",
            Topic::Vapour => "vapour",
            Topic::Ceiling => "ceiling",
            Topic::Rhexis => "rhexis",
        }
    }

    /// What it is about.
    ///
    /// ```
    /// assert_eq!(ocellus_core::working::Topic::Head.heading(), "The column");
    /// ```
    pub const fn heading(self) -> &'static str {
        match self {
            Topic::Method(_) => "The eye as this method sees it",
            Topic::LongEye => "The length, adjusted for a long eye",
            Topic::DoubleK => "The optics with the cornea after the laser",
            Topic::Slopes => "How the refraction moves",
            Topic::Certainty => "The budget of variances",
            Topic::Second => "The lens by the refraction today",
            Topic::Thick => "The lens itself",
            Topic::Constants => "The constants that go with one another",
            Topic::Gullstrand => "Gullstrand's exact eye, relaxed: six surfaces (read)",
            Topic::LeGrand => "Le Grand's eye, relaxed: four surfaces (memory)",
            Topic::Power => "The lens for the refraction wanted",
            Topic::Refraction => "The refraction with the lens chosen",
            Topic::Cornea => "The cornea after the incision",
            Topic::Toric => "The cylinder at the lens",
            Topic::Residual => "What the toric lens chosen leaves",
            Topic::Head => "The column",
            Topic::Air => "The air at this height",
            Topic::Vapour => "The boiling of the fluid",
            Topic::Ceiling => "The vacuum that is left",
            Topic::Rhexis => "The circle",
        }
    }

    /// Symbol, unit, source and mark of each step, in order.
    ///
    /// ```
    /// use ocellus_core::{lens::Method, working::Topic};
    /// assert!(Topic::Method(Method::Srkt).lines().iter().any(|line| line.symbol == "LCOR"));
    /// ```
    pub const fn lines(self) -> &'static [Line] {
        match self {
            Topic::Method(method) => method.lines(),
            Topic::LongEye => crate::lens::long_eye::Working::LINES,
            Topic::DoubleK => crate::lens::double_k::Working::LINES,
            Topic::Slopes => crate::lens::slope::Slopes::LINES,
            Topic::Certainty => crate::lens::certainty::Budget::LINES,
            Topic::Second => crate::lens::second::Working::LINES,
            Topic::Thick => crate::lens::thick::Working::LINES,
            Topic::Constants => crate::lens::constants::Family::LINES,
            Topic::Gullstrand | Topic::LeGrand => crate::lens::surfaces::System::LINES,
            Topic::Power => crate::lens::vergence::PowerWorking::LINES,
            Topic::Refraction => crate::lens::vergence::RefractionWorking::LINES,
            Topic::Cornea => crate::astigmatism::cornea::Working::LINES,
            Topic::Toric => crate::astigmatism::toric::Working::LINES,
            Topic::Residual => crate::astigmatism::toric::Residual::LINES,
            Topic::Head => crate::pressure::head::Working::LINES,
            Topic::Air => crate::pressure::air::Working::LINES,
            Topic::Vapour => crate::pressure::vapour::Working::LINES,
            Topic::Ceiling => crate::pressure::ceiling::Working::LINES,
            Topic::Rhexis => crate::table_side::rhexis::Working::LINES,
        }
    }

    /// Meaning, equation and constants of each step, in the same order.
    ///
    /// ```
    /// use ocellus_core::{lens::Method, working::Topic};
    /// assert_eq!(Topic::Method(Method::Srkt).prose().len(), Topic::Method(Method::Srkt).lines().len());
    /// ```
    pub fn prose(self) -> &'static [Prose] {
        match self {
            Topic::Method(method) => method.prose(),
            Topic::LongEye => crate::lens::long_eye::Working::PROSE,
            Topic::DoubleK => crate::lens::double_k::Working::PROSE,
            Topic::Slopes => crate::lens::slope::Slopes::PROSE,
            Topic::Certainty => crate::lens::certainty::Budget::PROSE,
            Topic::Second => crate::lens::second::Working::PROSE,
            Topic::Thick => crate::lens::thick::Working::PROSE,
            Topic::Constants => crate::lens::constants::Family::PROSE,
            Topic::Gullstrand | Topic::LeGrand => crate::lens::surfaces::System::PROSE,
            Topic::Power => crate::lens::vergence::PowerWorking::PROSE,
            Topic::Refraction => crate::lens::vergence::RefractionWorking::PROSE,
            Topic::Cornea => crate::astigmatism::cornea::Working::PROSE,
            Topic::Toric => crate::astigmatism::toric::Working::PROSE,
            Topic::Residual => crate::astigmatism::toric::Residual::PROSE,
            Topic::Head => crate::pressure::head::Working::PROSE,
            Topic::Air => crate::pressure::air::Working::PROSE,
            Topic::Vapour => crate::pressure::vapour::Working::PROSE,
            Topic::Ceiling => crate::pressure::ceiling::Working::PROSE,
            Topic::Rhexis => crate::table_side::rhexis::Working::PROSE,
        }
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
