//! Exercises of the console: their answers computed once more, by the standard library.

use ocellus_console::question::{Exercise, Question, Random};
use ocellus_core::working::Steps;

use crate::check::{Compared, Registry};
use crate::checks::Shown;
use crate::{compare, oracles};

/// The answer to an exercise, written out.
#[expect(clippy::disallowed_methods, reason = "an outside check, and no number of ours")]
fn by_hand(exercise: &Exercise) -> f64 {
    let [a, b, c, d] = exercise.given;
    match exercise.question {
        Question::Head => b * 9.80665 * a / 100.0 / 133.322387415,
        Question::Units => {
            let pascals = a * 133.322387415;
            match exercise.unit() {
                "kPa" => pascals / 1000.0,
                "cmH2O" => pascals / 98.0665,
                "inHg" => pascals / 3386.388640,
                _ => pascals / 6894.757293168,
            }
        }
        Question::Altitude => {
            let h = 6_356_766.0 * a / (6_356_766.0 + a);
            let air = 101_325.0 * (1.0 - 0.0065 * h / 288.15).powf(5.255_876_1);
            // Magnus' formula, within 0.35 % of the boiling there: some tenths of a mmHg
            (air - 611.2 * (17.62 * b / (243.12 + b)).exp()) / 133.322387415
        }
        Question::Bore => (b / a).powi(4),
        Question::Rhexis => 2.0 * a / 1.159,
        Question::Vertex => a / (1.0 - b / 1000.0 * a),
        Question::Vectors => {
            let vector = |size: f64, degrees: f64| {
                let double = (2.0 * degrees).to_radians();
                (size * double.cos(), size * double.sin())
            };
            let ((x1, y1), (x2, y2)) = (vector(a, b), vector(d, c + 90.0));
            (x1 + x2).hypot(y1 + y2)
        }
    }
}

/// Many exercises of each kind, drawn, handed to a check that says what is wrong; at least 15 different ones of each.
fn drawn(draw: impl Fn(Question, &mut Random) -> Exercise, wrong: impl Fn(&Exercise) -> Option<String>) -> Compared {
    let (mut random, mut count) = (Random::new(2026), 0);
    for &question in Question::ALL {
        let mut different = Vec::new();
        for _ in 0..400 {
            let exercise = draw(question, &mut random);
            if let Some(why) = wrong(&exercise) {
                return Err(format!("{exercise:?}: {why}").into());
            }
            if !different.contains(&exercise.given) {
                different.push(exercise.given);
            }
            count += 1;
        }
        if different.len() < 15 {
            return Err(format!("{}: only {} different questions", question.key(), different.len()).into());
        }
    }
    Ok(count)
}

/// The answer is what is computed by hand, and a step of the working.
fn wrong_answer(exercise: &Exercise, ours: f64, show: fn(&Exercise, &mut dyn Steps)) -> Option<String> {
    let theirs = by_hand(exercise);
    let within = if exercise.question == Question::Altitude { 0.2 } else { 1e-9 * theirs.abs().max(1.0) };
    let mut shown = Shown::default();
    show(exercise, &mut shown);
    if !compare::agrees(ours, theirs, within) {
        return Some(format!("{ours}, not {theirs}"));
    }
    (!shown.0.iter().any(|(_, value)| *value == ours)).then(|| format!("{ours} is no step of the working"))
}

/// Right is what is within 1 %, or 0.02 D; nothing farther is.
fn wrong_judgement(exercise: &Exercise, answer: f64, is_right: fn(&Exercise, f64) -> bool) -> Option<String> {
    let near = if exercise.unit() == "D" { (0.01 * answer.abs()).max(0.02) } else { 0.01 * answer.abs() };
    let judged = |sign: f64| {
        is_right(exercise, answer + sign * 0.99 * near) && !is_right(exercise, answer + sign * (1.01 * near + 1e-12))
    };
    (!(judged(1.0) && judged(-1.0))).then(|| format!("judged at another distance than {near}"))
}

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Exercise::draw, Exercise::answer, Exercise::show, Exercise::is_right => "the standard library's arithmetic" =>
            |draw, answer, show, is_right| drawn(draw, |exercise| {
                let ours = answer(exercise);
                wrong_answer(exercise, ours, show).or_else(|| wrong_judgement(exercise, ours, is_right))
            });
    }
}
