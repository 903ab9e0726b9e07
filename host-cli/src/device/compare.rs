//! The same cases through both machines, and every number by its bits.

use super::line::{Line, Trouble};
use crate::text::id;
use ocellus_card::Subject;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::error::Error;
use ocellus_card::id::PartId;
use ocellus_card::readback;
use ocellus_core::fluids::unit::{Unit, convert};
use ocellus_core::lens::method::Method;
use ocellus_link::code::Outcome;
use ocellus_link::collect::Answer;
use ocellus_link::entries;
use ocellus_link::event::{Event, Events};
use ocellus_link::message::Welcome;

/// What was compared, and the first difference of each case that has one.
#[derive(Debug, Default)]
pub struct Comparison {
    /// Cases, those among them that both sides refuse included.
    pub cases: usize,
    /// Cases that are not one, on both sides for the same reasons.
    pub refused: usize,
    /// Cases that are not one without parts that the device lacks: nothing of them is compared.
    pub of_lacking_parts: usize,
    /// Every f64: of cards, of workings, of conversions.
    pub numbers: usize,
    /// What differs, case by case; empty when all is equal.
    pub differences: Vec<String>,
}

impl Comparison {
    /// Compares one case: its card, the working of every subject, its read-back; of each what the device has parts for.
    ///
    /// # Errors
    /// When the line gives no answer; nothing of this case is then counted.
    pub fn case(&mut self, name: &str, draft: &Draft, line: &mut Line) -> Result<(), Trouble> {
        let device = *line.welcome();
        let is_whole_case = Case::check(draft, &mut |_| {}).is_some();
        let draft = &entries::for_device(draft, &device);
        let case = Case::check(draft, &mut |_| {});
        let ours = of_parts(card(draft), &device);
        if case.is_none() && (is_whole_case || ours.events.is_empty()) {
            self.of_lacking_parts += 1;
            return Ok(());
        }
        let mut pairs = vec![("the card".to_owned(), of_parts(line.plan(draft)?, &device), ours)];
        // what is not a case is refused in the same words by every other question
        if let Some(case) = &case {
            for subject in Subject::all().filter(|subject| device.has(subject.part())) {
                pairs.push((
                    format!("explain {}", subject.key()),
                    line.explain(subject, draft)?,
                    working(subject, case),
                ));
            }
        }
        let theirs = line.read_back(draft)?.map(|code| entries::text(&code.characters).to_owned());
        let ours = case.and_then(|case| readback::of(&case, None).ok()).map(|code| code.as_str().to_owned());
        // its second part covers the answers of every part
        let compared = |code: &Option<String>| match code.as_deref().and_then(|code| code.split_once('-')) {
            Some((entries, _)) if device.lacks().next().is_some() => Some(entries.to_owned()),
            _ => code.clone(),
        };

        self.cases += 1;
        self.refused += usize::from(pairs[0].1.outcome == Outcome::NotACase);
        self.numbers += pairs.iter().flat_map(|(_, theirs, _)| &theirs.events).filter(|e| number(e).is_some()).count();
        let first =
            pairs.iter().find_map(|(what, theirs, ours)| Some(format!("{what}: {}", difference(theirs, ours)?)));
        let codes = || {
            (compared(&theirs) != compared(&ours)).then(|| format!("the read-back: device {theirs:?}, here {ours:?}"))
        };
        self.differences.extend(first.or_else(codes).map(|text| format!("{name}: {text}")));
        Ok(())
    }

    /// Compares a pressure in every unit from every other.
    ///
    /// # Errors
    /// When the line gives no answer.
    pub fn units(&mut self, line: &mut Line) -> Result<(), Trouble> {
        // an odd number, so that every factor leaves a rounding to compare
        const VALUE: f64 = 123.4567890123;
        for &from in Unit::ALL {
            for &to in Unit::ALL {
                let (theirs, ours) = (line.convert(VALUE, from, to)?, convert(VALUE, from, to));
                self.numbers += 1;
                if theirs.to_bits() != ours.to_bits() {
                    let what = format!("{VALUE} {} in {}", from.word(), to.word());
                    self.differences.push(format!("{what}: {}", values(theirs, ours)));
                }
            }
        }
        Ok(())
    }
}

/// Everything this program streams of a draft's card, as a device would send it.
fn card(draft: &Draft) -> Answer {
    let mut events = Events::default();
    let case = Case::check(draft, &mut |error| events.0.push(Event::Wrong(error)));
    let outcome = match case {
        Some(case) => {
            case.plan(&mut events);
            Outcome::Answered
        }
        None => Outcome::NotACase,
    };
    Answer { outcome, events: events.0 }
}

fn working(subject: Subject, case: &Case) -> Answer {
    let mut events = Events::default();
    let outcome = if case.explain(subject, &mut events) { Outcome::Answered } else { Outcome::Nothing };
    Answer { outcome, events: events.0 }
}

/// Which entries stand in them depends on every other part that there is.
const OF_THE_REST: [&str; 2] = ["also_used", "unused"];

/// Of a card that a device plans or refuses, what it has parts for: all of it where it lacks none.
fn of_parts(mut answer: Answer, device: &Welcome) -> Answer {
    let lacks_some = device.lacks().next().is_some();
    let is_rest = |part: PartId| lacks_some && OF_THE_REST.iter().any(|key| part.key().is(key));
    let mut is_here = true;
    answer.events.retain(|event| match event {
        Event::Part(part) => {
            is_here = device.has(*part) && !is_rest(*part);
            is_here
        }
        Event::Item(item) => is_here && device.has(item.what.part()),
        Event::Caution(caution) => is_here && device.has(caution.code.part()),
        Event::SignOff(line) => is_here && device.has(line.part()),
        Event::Wrong(error) => device.has(error.entry.part()),
        Event::Entry(_) | Event::Lacks(_) | Event::Step(_) => is_here,
    });
    answer
}

/// The number of an event that has one.
fn number(event: &Event) -> Option<f64> {
    match event {
        Event::Item(item) => Some(item.value),
        Event::Step(step) => Some(step.value),
        _ => None,
    }
}

/// The first difference of two answers.
fn difference(theirs: &Answer, ours: &Answer) -> Option<String> {
    // as they go over the line: a comparison of floats would take -0 for 0
    let same = |(a, b): &(&Event, &Event)| a.message(0) == b.message(0) && bits(a) == bits(b);
    let pairs = theirs.events.iter().zip(&ours.events);
    if let Some((place, (a, b))) = pairs.enumerate().find(|(_, pair)| !same(pair)) {
        let place = format!("event {place}, ");
        return Some(match (number(a), number(b)) {
            (Some(x), Some(y)) if name(a) == name(b) => format!("{place}{}: {}", name(a), values(x, y)),
            _ => format!("{place}device {}, here {}", name(a), name(b)),
        });
    }
    if theirs.events.len() != ours.events.len() {
        let (longer, who, place) = if theirs.events.len() > ours.events.len() {
            (theirs, "the device", ours.events.len())
        } else {
            (ours, "this program", theirs.events.len())
        };
        let first = longer.events.get(place).map_or(String::new(), name);
        return Some(format!("only {who} continues after event {place}, with {first}"));
    }
    let (a, b) = (theirs.outcome.word(), ours.outcome.word());
    (a != b).then(|| format!("device {a}, here {b}"))
}

fn bits(event: &Event) -> Option<u64> {
    match event {
        Event::Wrong(error) => error.value,
        other => number(other),
    }
    .map(f64::to_bits)
}

/// Both numbers with their bits, and how far apart they are.
fn values(theirs: f64, ours: f64) -> String {
    let (a, b) = (theirs.to_bits(), ours.to_bits());
    let apart = match theirs.is_sign_negative() == ours.is_sign_negative() {
        true => format!("{} units in the last place apart", a.abs_diff(b)),
        false => "of other sign".to_owned(),
    };
    format!("device {theirs:?} ({a:016X}), here {ours:?} ({b:016X}), {apart}")
}

/// What an event is, for a person.
fn name(event: &Event) -> String {
    match event {
        Event::Part(part) => format!("the part {}", part.key()),
        Event::Entry(entry) => format!("the entry {}", entry.key()),
        Event::Lacks(entry) => format!("the missing entry {}", entry.key()),
        Event::Item(item) => format!("{} in row {}", id(item), item.row),
        Event::Caution(caution) => {
            let method = caution.method.map_or("", Method::key);
            let entry = caution.entry.map_or(String::new(), |entry| entry.key().to_string());
            format!("the caution {} {method}{entry}", caution.code.word()).trim_end().to_owned()
        }
        Event::SignOff(line) => format!("the line to tick {}", line.key()),
        Event::Step(step) => {
            format!("step {} of {}", step.line().map_or("", |line| line.symbol), step.table.heading)
        }
        Event::Wrong(Error { wrong, entry, .. }) => format!("the refusal {} of {}", wrong.word(), entry.key()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ocellus_card::item::Item;
    use ocellus_card::items;

    fn answer(values: &[f64]) -> Answer {
        let item = |value: &f64| Event::Item(Item { what: items::HEAD, method: None, row: 0, value: *value });
        Answer { outcome: Outcome::Answered, events: values.iter().map(item).collect() }
    }

    #[test]
    fn equal_answers_do_not_differ() {
        assert_eq!(difference(&answer(&[1.5, -0.0]), &answer(&[1.5, -0.0])), None);
    }

    /// The last bit, a sign of zero, a missing number: each is a difference, and is said.
    #[test]
    fn the_least_difference_is_reported() {
        let next = f64::from_bits(66.197_f64.to_bits() + 1);
        let told = difference(&answer(&[1.0, next]), &answer(&[1.0, 66.197])).unwrap();
        assert!(told.contains("event 1, head_mmhg in row 0") && told.contains("1 units in the last place"), "{told}");
        assert!(difference(&answer(&[0.0]), &answer(&[-0.0])).unwrap().contains("of other sign"));
        assert!(difference(&answer(&[1.0]), &answer(&[1.0, 2.0])).unwrap().contains("only this program continues"));
        assert!(difference(&answer(&[1.0, 2.0]), &answer(&[1.0])).unwrap().contains("only the device continues"));
        let nothing = Answer { outcome: Outcome::Nothing, ..answer(&[1.0]) };
        assert!(difference(&nothing, &answer(&[1.0])).is_some());
    }
}
