//! Asks for the two patient identifiers that a read-back covers.

use ocellus_card::date::Date;
use ocellus_card::error::Wrong;
use ocellus_card::name::Name;
use ocellus_card::readback::Identifiers;
use ocellus_console::PROMPTS;
use std::io::{self, BufRead, Write};

/// Asks until both are names, or the input ends.
///
/// # Errors
/// When the input ends or cannot be read.
pub fn ask(answers: &mut dyn BufRead, questions: &mut dyn Write) -> io::Result<Identifiers> {
    let [_, first, second] = PROMPTS;
    writeln!(questions, "Two patient identifiers, read from the original printout; kept nowhere.")?;
    Ok(Identifiers(
        one(first, |_| Ok(()), answers, questions)?,
        one(second, |text| Date::parse(text).map(drop), answers, questions)?,
    ))
}

fn one(
    question: &str,
    check: impl Fn(&str) -> Result<(), Wrong>,
    answers: &mut dyn BufRead,
    questions: &mut dyn Write,
) -> io::Result<Name> {
    loop {
        write!(questions, "{question}")?;
        questions.flush()?;
        let mut answer = String::new();
        if answers.read_line(&mut answer)? == 0 {
            return Err(io::Error::new(io::ErrorKind::UnexpectedEof, "the input ended before both identifiers"));
        }
        let name = Name::parse(answer.trim_end_matches(['\r', '\n']));
        match name.and_then(|name| check(name.as_str()).map(|()| name)) {
            Ok(name) => return Ok(name),
            Err(code) => writeln!(questions, "{}", code.text())?,
        }
    }
}
