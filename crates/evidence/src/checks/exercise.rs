//! Exercises: their answers reckoned once more, by the standard library.

use ocellus_core::exercise::{Exercise, Question, Random};

use crate::check::{Compared, Registry};
use crate::{compare, oracles};

pub(super) fn register(registry: &mut Registry) {
    oracles! { registry;
        Exercise::answer, Exercise::draw, Exercise::is_right, Exercise::show =>
            "the standard library's arithmetic" => |answer, draw, is_right, _show| reckoned(answer, draw, is_right);
    }
}

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

fn reckoned(
    answer: fn(&Exercise) -> f64,
    draw: fn(Question, &mut Random) -> Exercise,
    is_right: fn(&Exercise, f64) -> bool,
) -> Compared {
    let (mut random, mut count) = (Random::new(2026), 0);
    for &question in Question::ALL {
        let mut different = Vec::new();
        for _ in 0..400 {
            let exercise = draw(question, &mut random);
            let (ours, theirs) = (answer(&exercise), by_hand(&exercise));
            let within = if question == Question::Altitude { 0.2 } else { 1e-9 * theirs.abs().max(1.0) };
            if !compare::agrees(ours, theirs, within) {
                return Err(format!("{exercise:?}: {ours}, not {theirs}").into());
            }
            // 1 %, or 0.02 D: what is nearer is right, what is farther is not
            let near = if exercise.unit() == "D" { (0.01 * ours.abs()).max(0.02) } else { 0.01 * ours.abs() };
            for sign in [-1.0, 1.0] {
                if !is_right(&exercise, ours + sign * 0.99 * near)
                    || is_right(&exercise, ours + sign * 1.01 * near + sign * 1e-12)
                {
                    return Err(format!("{exercise:?}: judged at another distance than {near}").into());
                }
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
