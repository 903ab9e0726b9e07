//! Questions to compute by hand, with numbers drawn at random, and their answers with the working.

use ocellus_core::astigmatism::plane::Cornea;
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::{incision, meridian};
use ocellus_core::fluids::ceiling::{self, Air};
use ocellus_core::fluids::column;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::optics::vertex::to_cornea;
use ocellus_core::quantity::*;
use ocellus_core::table_side::rhexis;
use ocellus_core::working::{Step, Steps};
use ocellus_text::Text;
use ocellus_text::text;

macro_rules! questions {
    ($($(#[$doc:meta])* $id:ident $key:literal $text:literal [$($places:literal),*] $unit:literal $rule:literal;)*) => {
        /// What a question is about.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Question { $($(#[$doc])* $id,)* }

        impl Question {
            /// Every kind of question.
            pub const ALL: &[Question] = &[$(Question::$id),*];

            /// Its name in commands.
            pub const fn key(self) -> &'static str { match self { $(Question::$id => $key,)* } }

            /// The question: each `{}` stands for one of its numbers, `{unit}` for the unit that is asked for.
            pub fn text(self) -> Text { match self { $(Question::$id => text!($text),)* } }

            /// The decimals of its numbers.
            pub const fn places(self) -> &'static [u8] { match self { $(Question::$id => &[$($places),*],)* } }

            /// The rule by which it is computed.
            pub fn rule(self) -> Text { match self { $(Question::$id => text!($rule),)* } }

            const fn unit(self) -> &'static str { match self { $(Question::$id => $unit,)* } }
        }
    };
}

questions! {
    /// Pressure of a column.
    Head "head" "A column is open {} cm above the eye; the fluid has {} kg/m3. What is the pressure at the eye, in {unit}, with nothing flowing?" [0, 0]
        "mmHg" "P = rho g h, with g = 9.80665 m/s2; 1 mmHg is 133.322 Pa.";
    /// A pressure in another unit.
    Units "units" "How much is {} mmHg in {unit}?" [0]
        "" "By way of pascals: 1 mmHg is 133.322 Pa, 1 kPa 1000 Pa, 1 cmH2O 98.0665 Pa, 1 inHg 3386.39 Pa, 1 psi 6894.76 Pa.";
    /// The ceiling on vacuum.
    Altitude "altitude" "A theatre lies {} m above the sea; the fluid is at {} C. What is the most vacuum that can be reached there, in {unit}?" [0, 0]
        "mmHg" "p_air = 101325 (1 - 0.0065 H/288.15)^5.25588 Pa, with H = 6356766 Z/(6356766 + Z); less the pressure at which water boils.";
    /// What another bore does.
    Bore "bore" "A tube of {} mm bore is changed for one of {} mm: same length, fluid and pressure, laminar. By what factor does the flow change?" [2, 2]
        "" "As the fourth power of the bores' ratio.";
    /// The true size of a circle seen through the cornea.
    Rhexis "rhexis" "A straight first cut looks {} mm long through the cornea, where things look 15.9 % larger. What is the diameter of the rhexis, in {unit}?" [2]
        "mm" "The true cut is what is seen over 1.159; the diameter is twice that.";
    /// A refraction at the cornea.
    Vertex "vertex" "A spectacle lens of {} D stands {} mm in front of the cornea. What power has the same effect at the cornea, in {unit}?" [2, 0]
        "D" "F_c = F/(1 - d F), with d in metres.";
    /// A cornea after an incision.
    Vectors "vectors" "A cornea has {} D of astigmatism, steep at {} deg. An incision at {} deg flattens its meridian by {} D. How much astigmatism is left, in {unit}?" [2, 0, 0, 2]
        "D" "Add x = C cos 2a and y = C sin 2a; an incision adds its size at its meridian + 90 deg.";
}

ocellus_core::working! {
    /// A pressure in another unit, step by step.
    InUnits "A pressure in another unit";
    given "p" "mmHg" = "as asked" [], "pressure", Entered Entered;
    pascals "p_Pa" "Pa" = "p 133.322387415" [ocellus_core::constant::fluids::MMHG], "the same in pascals", Sp811 Two;
    answer "p'" "1" = "p_Pa/pascals in the unit" [], "the same in the unit asked for", Sp811 Two;
}

ocellus_core::working! {
    /// The flow through another bore, step by step.
    Bores "What another bore does";
    ratio "D2/D1" "1" = "bore after/bore before" [], "ratio of the bores", Identity Two;
    answer "Q2/Q1" "1" = "(D2/D1)^4" [], "factor of the flow", Poiseuille Two;
}

ocellus_core::working! {
    /// A refraction at the cornea, step by step.
    AtCornea "A refraction at the cornea";
    refraction "F" "D" = "as asked" [], "power of the spectacles", Entered Entered;
    vertex "d" "mm" = "as asked" [], "vertex distance", Entered Entered;
    answer "F_c" "D" = "F_c = F/(1 - d F/1000)" [], "power at the cornea", Identity Two;
}

ocellus_core::working! {
    /// The sum of two vectors, step by step.
    Sum "A cornea after an incision";
    x1 "x_1" "D" = "C cos 2a" [], "the cornea's vector", Identity Two;
    y1 "y_1" "D" = "C sin 2a" [], "the cornea's vector", Identity Two;
    x2 "x_2" "D" = "s cos 2(t + 90)" [], "the incision's vector", Identity Two;
    y2 "y_2" "D" = "s sin 2(t + 90)" [], "the incision's vector", Identity Two;
    answer "C'" "D" = "sqrt((x_1 + x_2)^2 + (y_1 + y_2)^2)" [], "astigmatism left", Identity Two;
}

/// Numbers at random: a generator of Marsaglia's (xorshift, 2003), good enough for questions and for nothing else.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Random(u32);

impl Random {
    /// From a seed; of nothing but zeros, so that a device needs no first value of it.
    pub const fn new(seed: u32) -> Random {
        Random(seed)
    }

    /// Stirs in something that cannot be predicted, as when a key was pressed.
    pub fn stir(&mut self, with: u32) {
        self.0 = (self.0 ^ with).wrapping_mul(2_654_435_761) | 1;
        self.next();
    }

    fn next(&mut self) -> u32 {
        // zero alone would stay as it is
        self.0 = if self.0 == 0 { 2_463_534_242 } else { self.0 };
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 17;
        self.0 ^= self.0 << 5;
        self.0
    }

    /// One of so many.
    pub fn one_of(&mut self, count: u8) -> u8 {
        // the upper bits are the better ones
        ((self.next() >> 16) % u32::from(count.max(1))) as u8
    }

    /// One of the numbers `least`, `least + step`, ..., so many of them.
    fn from(&mut self, least: f64, step: f64, count: u8) -> f64 {
        least + step * f64::from(self.one_of(count))
    }
}

/// A question with its numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exercise {
    /// What it is about.
    pub question: Question,
    /// Its numbers, in the order of its text.
    pub given: [f64; 4],
    /// The unit in which a pressure is asked for, where that is the question.
    pub asked_in: Unit,
}

/// Units that a pressure is asked for in.
const ASKED: [Unit; 4] = [Unit::KPa, Unit::CmH2O, Unit::InHg, Unit::Psi];

impl Exercise {
    /// A question with numbers drawn at random.
    ///
    /// ```
    /// use ocellus_console::question::*;
    /// let exercise = Exercise::draw(Question::Bore, &mut Random::new(7));
    /// assert!(exercise.given[0] != exercise.given[1]);
    /// ```
    pub fn draw(question: Question, random: &mut Random) -> Exercise {
        let unit = ASKED.get(usize::from(random.one_of(4))).copied().unwrap_or(Unit::KPa);
        let given = match question {
            Question::Head => [random.from(30.0, 5.0, 25), random.from(1000.0, 1.0, 8), 0.0, 0.0],
            Question::Units => [random.from(20.0, 10.0, 60), 0.0, 0.0, 0.0],
            Question::Altitude => [random.from(0.0, 100.0, 40), random.from(18.0, 1.0, 10), 0.0, 0.0],
            Question::Bore => {
                let before = random.from(0.3, 0.05, 14);
                // another, thicker or thinner
                let step = random.from(0.05, 0.05, 4);
                [before, if random.one_of(2) == 0 { before + step } else { before - step }, 0.0, 0.0]
            }
            Question::Rhexis => [random.from(2.0, 0.05, 20), 0.0, 0.0, 0.0],
            // a power that the distance changes by more than the 1 % that an answer may be off
            Question::Vertex => {
                let size = random.from(3.0, 0.5, 23);
                [if random.one_of(2) == 0 { size } else { -size }, random.from(10.0, 1.0, 6), 0.0, 0.0]
            }
            Question::Vectors => [
                random.from(0.5, 0.25, 14),
                random.from(0.0, 5.0, 36),
                random.from(0.0, 5.0, 36),
                random.from(0.1, 0.1, 8),
            ],
        };
        Exercise { question, given, asked_in: unit }
    }

    /// The unit that is asked for; empty for a factor.
    pub fn unit(&self) -> &'static str {
        match self.question {
            Question::Units => self.asked_in.word(),
            question => question.unit(),
        }
    }

    /// The answer; 0 could it not be computed, which its numbers do not allow.
    ///
    /// ```
    /// use ocellus_console::question::*;
    /// let exercise = Exercise { given: [90.0, 1000.0, 0.0, 0.0], ..Exercise::draw(Question::Head, &mut Random::new(7)) };
    /// assert!((exercise.answer() - 66.2).abs() < 0.01);
    /// ```
    pub fn answer(&self) -> f64 {
        let symbol = match self.question {
            Question::Head => "P",
            Question::Units => "p'",
            Question::Altitude => "V_max",
            Question::Bore => "Q2/Q1",
            Question::Rhexis => "D'",
            Question::Vertex => "F_c",
            Question::Vectors => "C'",
        };
        let mut last = Last { symbol, answer: 0.0 };
        self.show(&mut last);
        last.answer
    }

    /// Whether somebody's answer is near enough: within 1 %, or 0.02 D.
    ///
    /// ```
    /// use ocellus_console::question::*;
    /// let exercise = Exercise { given: [90.0, 1000.0, 0.0, 0.0], ..Exercise::draw(Question::Head, &mut Random::new(7)) };
    /// assert!(exercise.is_right(66.0) && !exercise.is_right(65.0));
    /// ```
    pub fn is_right(&self, answered: f64) -> bool {
        let answer = self.answer();
        let least = if self.unit() == "D" { 0.02 } else { 0.0 };
        (answered - answer).abs() <= (answer.abs() / 100.0).max(least)
    }

    /// Streams the working.
    #[inline(never)]
    pub fn show(&self, steps: &mut dyn Steps) {
        // every number drawn is one that an entry may be
        let _ = self.shown(steps);
    }

    fn shown(&self, steps: &mut dyn Steps) -> Option<()> {
        let [a, b, c, d] = self.given;
        match self.question {
            Question::Head => {
                let (open, eye) = (Level::from_cm(a).ok()?, Level::from_cm(0.0).ok()?);
                column::working(open, eye, GasPressure::from_mmhg(0.0).ok()?, Density::from_kg_m3(b).ok()?).show(steps);
            }
            Question::Units => {
                let pascals = convert(a, Unit::MmHg, Unit::Pa);
                InUnits { given: a, pascals, answer: convert(a, Unit::MmHg, self.asked_in) }.show(steps);
            }
            Question::Altitude => {
                ceiling::show_all(Air::Altitude(Altitude::from_m(a).ok()?), Temperature::from_c(b).ok()?, steps);
            }
            Question::Bore => {
                let ratio = b / a;
                let squared = ratio * ratio;
                Bores { ratio, answer: squared * squared }.show(steps);
            }
            Question::Rhexis => rhexis::working(Cut::from_mm(a).ok()?).show(steps),
            Question::Vertex => {
                let answer = to_cornea(a, Vertex::from_mm(b).ok()?).ok()?;
                AtCornea { refraction: a, vertex: b, answer }.show(steps);
            }
            Question::Vectors => {
                let cornea = PowerVector::strongest_along(Cornea, 0.0, a, meridian(b)?);
                let cut = incision::induced(Site::from_deg(c).ok()?, Flattening::from_d(d).ok()?);
                Sum {
                    x1: 2.0 * cornea.j0,
                    y1: 2.0 * cornea.j45,
                    x2: 2.0 * cut.j0,
                    y2: 2.0 * cut.j45,
                    answer: cornea.plus(cut).cylinder(),
                }
                .show(steps);
            }
        }
        Some(())
    }
}

/// Keeps the step that is the answer.
struct Last {
    symbol: &'static str,
    answer: f64,
}

impl Steps for Last {
    fn step(&mut self, step: Step) {
        if step.line().is_some_and(|line| line.symbol == self.symbol) {
            self.answer = step.value;
        }
    }
}
