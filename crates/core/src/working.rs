//! How a number came about: each intermediate value under the paper's own symbol, with equation, source and mark.
//!
//! A formula's `Working` is a plain struct of numbers. Beside it stand a [`Table`] and a [`Prose`] for each of them. The two
//! are apart so that a device that prints only symbols does not carry the sentences.

use crate::constant::Constant;
use crate::quantity::UNITS;
use crate::source::{Mark, Source};
use ocellus_text::Text;

#[doc(hidden)]
pub use ocellus_text;

/// One step's value.
#[derive(Clone, Copy, Debug)]
pub struct Step {
    /// The table that it belongs to.
    pub table: &'static Table,
    /// Its place in that table.
    pub index: u8,
    /// The value.
    pub value: f64,
}

impl PartialEq for Step {
    fn eq(&self, other: &Step) -> bool {
        core::ptr::eq(self.table, other.table) && self.index == other.index && self.value == other.value
    }
}

impl Step {
    /// Symbol, unit, source and mark.
    ///
    /// ```
    /// use ocellus_core::{quantity::Cut, table_side::rhexis, working::{Step, Steps}};
    /// struct Printed(Vec<String>);
    /// impl Steps for Printed {
    ///     fn step(&mut self, step: Step) {
    ///         let line = step.line().unwrap();
    ///         self.0.push(format!("{} = {} {}", line.symbol, step.value, line.unit()));
    ///     }
    /// }
    /// let mut printed = Printed(Vec::new());
    /// rhexis::working(Cut::from_mm(2.5)?).show(&mut printed);
    /// assert_eq!(printed.0[1], "D = 5 mm");
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn line(&self) -> Option<Line> {
        self.table.line(usize::from(self.index))
    }
}

/// Takes the steps of a working, one after another.
pub trait Steps {
    /// One of them; nothing is done with it where nobody asked.
    fn step(&mut self, _step: Step) {}
}

/// What is printed of each step of a working.
#[derive(Debug)]
pub struct Table {
    /// What it is about.
    pub heading: Text,
    /// The symbols, each with a space behind it.
    symbols: &'static str,
    origins: &'static [Origin],
}

/// Unit, source and mark of a step.
#[derive(Clone, Copy, Debug)]
#[doc(hidden)]
pub struct Origin(pub u8, pub Source, pub Mark);

/// What is printed of a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// The paper's symbol.
    pub symbol: &'static str,
    /// The place of its unit: a byte where a string takes eight.
    unit: u8,
    /// Source of the equation.
    pub source: Source,
    /// How sure that is.
    pub mark: Mark,
}

impl Line {
    /// Unit, "1" for a pure number.
    pub fn unit(&self) -> &'static str {
        unit_at(self.unit)
    }
}

impl Table {
    #[doc(hidden)]
    pub const fn new(heading: Text, symbols: &'static str, origins: &'static [Origin]) -> Table {
        Table { heading, symbols, origins }
    }

    /// The same table of something else.
    pub(crate) const fn about(&self, heading: Text) -> Table {
        Table { heading, symbols: self.symbols, origins: self.origins }
    }

    /// How many steps it has.
    ///
    /// ```
    /// assert_eq!(ocellus_core::table_side::rhexis::Working::table().count(), 7);
    /// ```
    pub const fn count(&self) -> usize {
        self.origins.len()
    }

    /// The symbols of all of them, each with a space behind it.
    pub const fn symbols(&self) -> &'static str {
        self.symbols
    }

    /// The unit of a step, "1" for a pure number; empty beyond the last.
    ///
    /// ```
    /// assert_eq!(ocellus_core::table_side::rhexis::Working::table().unit(2), "mm");
    /// ```
    pub const fn unit(&self, index: usize) -> &'static str {
        let origins = self.origins.split_at_checked(index);
        match origins {
            Some((_, [Origin(unit, ..), ..])) => unit_at(*unit),
            _ => "",
        }
    }

    /// The line of a step; none beyond the last.
    ///
    /// ```
    /// let line = ocellus_core::table_side::rhexis::Working::table().line(2).unwrap();
    /// assert_eq!((line.symbol, line.unit()), ("E", "mm"));
    /// ```
    pub fn line(&self, index: usize) -> Option<Line> {
        let Origin(unit, source, mark) = *self.origins.get(index)?;
        Some(Line { symbol: word(self.symbols, index)?, unit, source, mark })
    }

    /// Every line, in order.
    ///
    /// ```
    /// use ocellus_core::lens::srkt;
    /// assert!(srkt::Working::table().lines().any(|line| line.symbol == "LCOR"));
    /// ```
    pub fn lines(&self) -> impl Iterator<Item = Line> + '_ {
        (0..self.count()).filter_map(|index| self.line(index))
    }

    /// Streams values, in the order of the lines.
    #[doc(hidden)]
    #[inline(never)]
    pub fn show(&'static self, values: &dyn Values, steps: &mut dyn Steps) {
        for index in 0..self.origins.len() as u8 {
            steps.step(Step { table: self, index, value: values.value(index) });
        }
    }
}

/// One of the words of a text, each with a space behind it. (The library's own way can panic.)
fn word(text: &'static str, index: usize) -> Option<&'static str> {
    let space = |rest: &str| rest.bytes().position(|byte| byte == b' ');
    let mut rest = text;
    for _ in 0..index {
        rest = rest.get(space(rest)? + 1..)?;
    }
    rest.get(..space(rest)?)
}

/// The values of a working, by their places.
#[doc(hidden)]
pub trait Values {
    fn value(&self, index: u8) -> f64;
}

/// What a desk prints beside a step.
#[derive(Debug)]
pub struct Prose {
    /// What the symbol means.
    pub meaning: &'static str,
    /// The equation, with its numbers.
    pub equation: &'static str,
    /// The constants in that equation.
    pub constants: &'static [&'static Constant],
}

const fn unit_at(place: u8) -> &'static str {
    match UNITS.split_at_checked(place as usize) {
        Some((_, [unit, ..])) => unit,
        _ => "",
    }
}

/// The place of a unit, while tables are compiled.
#[doc(hidden)]
#[expect(clippy::indexing_slicing, reason = "while it is compiled")]
pub const fn unit_place(word: &str) -> u8 {
    let mut place = 0;
    while !same(UNITS[place], word) {
        place += 1;
        assert!(place < UNITS.len(), "a unit that no step has yet: add it to UNITS of quantity/bounds.rs");
    }
    place as u8
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

/// A struct of intermediate values and the tables that explain them.
///
/// `Name "heading"; field "symbol" "unit" = "equation" [constants], "meaning", Source Mark;`
#[macro_export]
macro_rules! working {
    ($(#[$doc:meta])* $name:ident $heading:literal; $(
        $field:ident $symbol:literal $unit:literal = $equation:literal [$($constant:path),*], $meaning:literal, $source:ident $mark:ident;
    )*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name { $(#[doc = concat!($meaning, ", ", $unit, ": ", $equation)] pub $field: f64,)* }

        impl $crate::working::Values for $name {
            fn value(&self, index: u8) -> f64 {
                // a list of places takes a device less room than one of numbers
                let values: &[&f64] = &[$(&self.$field),*];
                values.get(usize::from(index)).map_or(0.0, |value| **value)
            }
        }

        impl $name {
            /// Symbol, unit, source and mark of each step.
            pub const fn table() -> &'static $crate::working::Table {
                static TABLE: $crate::working::Table = $crate::working::Table::new(
                    $crate::working::ocellus_text::text!($heading),
                    concat!($($symbol, " "),*),
                    &[$($crate::working::Origin(
                        $crate::working::unit_place($unit), $crate::source::Source::$source, $crate::source::Mark::$mark,
                    )),*],
                );
                &TABLE
            }

            /// Meaning, equation and constants of each step, in the same order.
            pub const fn prose() -> &'static [$crate::working::Prose] {
                static PROSE: &[$crate::working::Prose] = &[$($crate::working::Prose {
                    meaning: $meaning, equation: $equation, constants: &[$(&$constant),*],
                }),*];
                PROSE
            }

            /// Streams every value, in order.
            pub fn show(&self, steps: &mut dyn $crate::working::Steps) {
                Self::table().show(self, steps);
            }
        }
    };
}
