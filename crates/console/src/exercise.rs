//! Questions with numbers at random; the learner answers, and the working is shown.

use crate::around::Around;
use crate::entry::split_unit;
use crate::explain::steps;
use crate::nearest::Nearest;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::question::{Exercise, Question, Random};
use crate::session::Session;
use heapless::Vec;
use ocellus_card::draft::Draft;
use ocellus_card::error::Wrong;
use ocellus_core::decimal;
use ocellus_text::text;

/// One who learns.
pub(crate) struct Learner {
    random: Random,
    /// The question that waits for an answer, if there is one; a list as `Session::strip`.
    asked: Vec<Exercise, 1>,
    right: u16,
    answered: u16,
}

impl Learner {
    pub(crate) const NEW: Learner = Learner { random: Random::new(0), asked: Vec::new(), right: 0, answered: 0 };

    /// When a key is pressed cannot be predicted.
    pub(crate) fn stir(&mut self, with: u32) {
        self.random.stir(with);
    }
}

/// Asks.
pub(crate) fn run(
    session: &mut Session,
    _draft: &mut Draft,
    _around: &dyn Around,
    rest: &str,
    page: &mut Page,
) -> Outcome {
    let learner = &mut session.learner;
    let question = if rest.is_empty() {
        Question::ALL.get(usize::from(learner.random.one_of(Question::ALL.len() as u8)))
    } else {
        Question::ALL.iter().find(|question| question.key().eq_ignore_ascii_case(rest))
    };
    let Some(question) = question else {
        let mut nearest = Nearest::to(rest);
        Question::ALL.iter().for_each(|question| nearest.offer(question.key()));
        nearest.tell(page, text!("no question about this"));
        page.accepted();
        questions(page);
        return Outcome::Refused;
    };
    let exercise = Exercise::draw(*question, &mut learner.random);
    asked(&exercise, page);
    page.line(text!("answer NUMBER, within 1 %; answer alone shows the working."));
    learner.asked.clear();
    let _ = learner.asked.push(exercise);
    Outcome::Answered
}

pub(crate) fn questions(page: &mut Page) {
    page.words(Question::ALL.iter().map(|question| question.key()));
}

/// The question, its numbers in their places.
fn asked(exercise: &Exercise, page: &mut Page) {
    let mut numbers = exercise.given.iter().zip(exercise.question.places());
    let mut bytes = exercise.question.text().bytes();
    while let Some(byte) = bytes.next() {
        if byte != b'{' {
            page.byte(byte);
        } else if bytes.next() == Some(b'}') {
            let (value, places) = numbers.next().unwrap_or((&0.0, &0));
            // a refraction is never without its sign
            page.number(*value, *places, exercise.question == Question::Vertex && *places == 2, "");
        } else {
            // of `{unit}` the rest
            bytes.by_ref().take_while(|byte| *byte != b'}').for_each(drop);
            page.text(exercise.unit());
        }
    }
    page.end();
}

/// Judges an answer.
pub(crate) fn answer(
    session: &mut Session,
    draft: &mut Draft,
    _around: &dyn Around,
    rest: &str,
    page: &mut Page,
) -> Outcome {
    let learner = &mut session.learner;
    let Some(exercise) = learner.asked.first().copied() else {
        page.line(text!("No question was asked: exercise asks one."));
        return Outcome::Refused;
    };
    let (digits, unit) = split_unit(rest);
    match decimal::parse(digits) {
        Ok(_) if !(unit.is_empty() || unit.eq_ignore_ascii_case(exercise.unit())) => {
            page.text(text!("asked for in"));
            page.tied(if exercise.unit().is_empty() { "no unit" } else { exercise.unit() });
            page.text(", not");
            page.tied(unit);
            page.line(text!("; not judged."));
            return Outcome::Refused;
        }
        Ok(answered) => {
            let right = exercise.is_right(answered.value);
            learner.answered = learner.answered.saturating_add(1);
            learner.right = learner.right.saturating_add(u16::from(right));
            page.text(if right { text!("Right: it is") } else { text!("Not right: it is") });
        }
        Err(_) if digits.is_empty() => page.text("It is"),
        Err(code) => {
            page.text(rest);
            page.text(": ");
            page.line(Wrong::from(code).text());
            return Outcome::Refused;
        }
    }
    learner.asked.clear();
    page.text(" ");
    page.exact(exercise.answer(), exercise.unit());
    page.text(" (");
    page.count(usize::from(learner.right));
    page.text(text!(" right of "));
    page.count(usize::from(learner.answered));
    page.line(").");
    page.paragraph("  ", exercise.question.rule());
    steps(draft, page, &mut |steps| exercise.show(steps));
    Outcome::Answered
}
