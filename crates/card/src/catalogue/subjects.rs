//! What can be explained: the methods, and what parts have to explain.

use crate::id::PartId;
#[cfg(feature = "lens")]
use ocellus_core::lens::method::Method;
use ocellus_text::Text;

/// What can be explained.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A lens-power method.
    #[cfg(feature = "lens")]
    Method(Method),
    /// One thing of a part, by its number in it.
    Part(PartId, u8),
}

type Row = (PartId, u8, &'static str, &'static str);

const COUNT: usize = {
    let (mut count, mut part) = (0, 0);
    while part < super::rows::PARTS {
        count += super::rows::BY_NUMBER[part].subjects.len();
        part += 1;
    }
    count
};

const ROWS: [&Row; COUNT + 1] = {
    const EACH: [Row; COUNT + 1] = {
        let (mut rows, mut count, mut part) = ([(PartId(0), 0, "", ""); COUNT + 1], 0, 0);
        while part < super::rows::PARTS {
            let mut n = 0;
            while n < super::rows::BY_NUMBER[part].subjects.len() {
                let (key, name) = super::rows::BY_NUMBER[part].subjects[n];
                rows[count] = (super::rows::BY_NUMBER[part].part, n as u8, key, name);
                count += 1;
                n += 1;
            }
            part += 1;
        }
        rows
    };
    let (mut rows, mut n) = ([&EACH[0]; COUNT + 1], 0);
    while n < rows.len() {
        rows[n] = &EACH[n];
        n += 1;
    }
    rows
};

const NONE: Row = (PartId(0), 0, "", "");

column!(PARTS: (PartId, u8) = |row| (row.0, row.1));

texts! {
    keys = |row| row.2;
    names = |row| row.3;
}

/// A name of a method, or a folded text.
#[derive(Clone, Copy, Debug)]
pub enum Named {
    /// A method's own.
    Plain(&'static str),
    /// A part's.
    Folded(Text),
}

impl From<&'static str> for Named {
    fn from(text: &'static str) -> Named {
        Named::Plain(text)
    }
}

impl From<Text> for Named {
    fn from(text: Text) -> Named {
        Named::Folded(text)
    }
}

impl core::fmt::Display for Named {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Named::Plain(text) => f.write_str(text),
            Named::Folded(text) => text.fmt(f),
        }
    }
}

impl Named {
    /// Its characters, one after another.
    pub fn bytes(self) -> impl Iterator<Item = u8> + Clone {
        let (plain, folded) = match self {
            Named::Plain(text) => (text, Text::EMPTY),
            Named::Folded(text) => ("", text),
        };
        plain.bytes().chain(folded.bytes())
    }

    /// Whether it is this text.
    pub fn is(self, text: &str) -> bool {
        match self {
            Named::Plain(plain) => plain == text,
            Named::Folded(folded) => folded.is(text),
        }
    }
}

impl Subject {
    /// Every subject, methods first.
    ///
    /// ```
    /// assert!(ocellus_card::Subject::all().any(|subject| subject.key().is("srkt")));
    /// ```
    pub fn all() -> impl Iterator<Item = Subject> {
        let parts = PARTS.iter().take(COUNT).map(|(part, number)| Subject::Part(*part, *number));
        #[cfg(feature = "lens")]
        return Method::ALL.iter().copied().map(Subject::Method).chain(parts);
        #[cfg(not(feature = "lens"))]
        parts
    }

    /// The subject with this name.
    ///
    /// ```
    /// use ocellus_card::Subject;
    /// assert!(Subject::of_key("turn").is_some() && Subject::of_key("turns").is_none());
    /// ```
    pub fn of_key(key: &str) -> Option<Subject> {
        Subject::all().find(|subject| subject.key().is(key))
    }

    /// Its name in commands.
    pub fn key(self) -> Named {
        match self {
            #[cfg(feature = "lens")]
            Subject::Method(method) => Named::Plain(method.key()),
            Subject::Part(part, number) => Named::Folded(keys(place(part, number))),
        }
    }

    /// Its heading.
    pub fn name(self) -> Named {
        match self {
            #[cfg(feature = "lens")]
            Subject::Method(method) => Named::Plain(method.name()),
            Subject::Part(part, number) => Named::Folded(names(place(part, number))),
        }
    }

    /// The part that has it.
    pub fn part(self) -> PartId {
        match self {
            #[cfg(feature = "lens")]
            Subject::Method(_) => crate::parts::lens::table::PART,
            Subject::Part(part, _) => part,
        }
    }

    /// Its numbers on a line between two machines: 0 and a method's own, or the part's and its number in it.
    ///
    /// ```
    /// use ocellus_card::Subject;
    /// assert!(Subject::all().all(|subject| Subject::from_numbers(subject.numbers()) == Some(subject)));
    /// ```
    pub fn numbers(self) -> (u8, u8) {
        match self {
            #[cfg(feature = "lens")]
            Subject::Method(method) => (0, method as u8),
            Subject::Part(part, number) => (part.0, number),
        }
    }

    /// The subject with these numbers.
    pub fn from_numbers(numbers: (u8, u8)) -> Option<Subject> {
        Subject::all().find(|subject| subject.numbers() == numbers)
    }
}

fn place(part: PartId, number: u8) -> usize {
    PARTS.iter().position(|of| *of == (part, number)).unwrap_or(COUNT)
}
