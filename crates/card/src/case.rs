//! A valid case: of one operated eye, or of a set-up of fluids. The only way to one is [`Case::check`] on a draft, so a case
//! that exists has been checked.

use crate::date::Date;
use crate::draft::Draft;
use crate::entered::{Entered, Values};
use crate::entry::Kind;
use crate::entry_set::EntrySet;
use crate::error::{Error, Wrong};
use crate::id::EntryId;
use crate::part::Stands;
use crate::parts::{self, Known};
use crate::text::Text;
use core::cell::Cell;

/// What was entered and found valid; it borrows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case<'a> {
    draft: &'a Draft,
    has_eye: bool,
}

impl<'a> TryFrom<&'a Draft> for Case<'a> {
    type Error = Error;

    /// The case, or the first thing wrong with it; [`Case::check`] tells all of them.
    fn try_from(draft: &'a Draft) -> Result<Case<'a>, Error> {
        let mut first = None;
        let case = Case::check(draft, &mut |error| {
            first.get_or_insert(error);
        });
        case.ok_or(first.unwrap_or(Error::of(Wrong::Missing, parts::entries::SIDE.id())))
    }
}

impl<'a> Case<'a> {
    /// Checks a draft: reports everything that is wrong with it, and gives the case when nothing is. A draft is a set-up
    /// where it has entries of a column, a chamber or a tube and none of an eye; else it is the case of an eye.
    ///
    /// ```
    /// use ocellus_card::{case::Case, draft::Draft, entries};
    /// let (mut draft, mut wrong) = (Draft::default(), Vec::new());
    /// assert!(Case::check(&draft, &mut |error| wrong.push(error)).is_none());
    /// assert!(wrong.iter().any(|error| error.entry == entries::AXIAL_LENGTH));
    /// draft.enter(entries::ALTITUDE, "1600")?;
    /// assert!(!Case::check(&draft, &mut |_| {}).unwrap().has_eye());
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn check(draft: &'a Draft, report: &mut dyn FnMut(Error)) -> Option<Case<'a>> {
        Case::checked(draft, !is_set_up(draft), report)
    }

    /// The same of the fluids alone, whatever there may be of an eye.
    ///
    /// ```
    /// use ocellus_card::{case::Case, draft::Draft, entries};
    /// let mut draft = Draft::default();
    /// draft.enter(entries::AXIAL_LENGTH, "23.5")?;
    /// assert!(Case::check(&draft, &mut |_| {}).is_none());
    /// assert!(Case::check_set_up(&draft, &mut |_| {}).is_some());
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn check_set_up(draft: &'a Draft, report: &mut dyn FnMut(Error)) -> Option<Case<'a>> {
        Case::checked(draft, false, report)
    }

    fn checked(draft: &'a Draft, has_eye: bool, report: &mut dyn FnMut(Error)) -> Option<Case<'a>> {
        let mut open = true;
        let mut refuse = |error| {
            open = false;
            report(error);
        };
        for entry in draft.made() {
            if let Some(Err(error)) = draft.number(entry).map(|value| entry.check(value)) {
                refuse(error);
            }
        }
        let recorder = Recorder::of(draft);
        let entered = Entered::of(&recorder);
        for (stands, rules) in parts::RULES {
            if has_eye || *stands == Stands::Alone {
                for rule in *rules {
                    rule.ask(&entered, &mut |wrong, entry| {
                        refuse(Error { value: draft.number(entry), ..Error::of(wrong, entry) });
                    });
                }
            }
        }
        open.then_some(Case { draft, has_eye })
    }

    /// What was entered.
    pub fn draft(&self) -> &'a Draft {
        self.draft
    }

    /// Whether it is the case of an eye; else it is a set-up of fluids.
    pub fn has_eye(&self) -> bool {
        self.has_eye
    }

    /// What is known of it, for as long as it is asked; and which entries were read.
    pub(crate) fn ask<T>(&self, ask: impl FnOnce(&Known) -> T) -> (T, EntrySet) {
        let recorder = Recorder::of(self.draft);
        let entered = Entered::of(&recorder);
        #[cfg(feature = "eye")]
        let eye = if self.has_eye { parts::eye::Eye::of(entered) } else { None };
        #[cfg(feature = "lens")]
        let lens = eye.as_ref().map(parts::lens::Lens::of);
        let answer = ask(&Known {
            entered: &entered,
            #[cfg(feature = "eye")]
            eye: eye.as_ref(),
            #[cfg(feature = "lens")]
            lens: lens.as_ref(),
        });
        (answer, recorder.read.get())
    }

    /// Asks something that the parts know of it.
    ///
    /// ```
    /// use ocellus_card::{case::Case, draft::Draft, entries, parts::pressure::fluid_density};
    /// let mut draft = Draft::default();
    /// draft.enter(entries::DENSITY_FROM, "water")?;
    /// let density = Case::try_from(&draft)?.known(|known| fluid_density(known.entered)).unwrap();
    /// assert!((density.kg_m3() - 998.21).abs() < 0.005);
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn known<T>(&self, ask: impl FnOnce(&Known) -> T) -> T {
        self.ask(ask).0
    }
}

/// Whether entries are of a set-up alone: some are, and none is of an eye.
///
/// ```
/// use ocellus_card::{case::is_set_up, draft::Draft, entries};
/// let mut draft = Draft::default();
/// draft.enter(entries::ALTITUDE, "1600")?;
/// assert!(is_set_up(&draft));
/// draft.enter(entries::AXIAL_LENGTH, "23.5")?;
/// assert!(!is_set_up(&draft));
/// # Ok::<(), ocellus_card::error::Error>(())
/// ```
pub fn is_set_up(draft: &Draft) -> bool {
    let mut any = false;
    for entry in draft.made() {
        match entry.part().stands() {
            Stands::Alone => any = true,
            Stands::Beside => {}
            Stands::WithEye => return false,
        }
    }
    any
}

impl EntryId {
    /// Whether a value is of its kind: a number in its range, a word of its list, a date of the calendar.
    ///
    /// # Errors
    /// [`Wrong::OutOfRange`], or [`Wrong::WrongUnit`] where it looks like another quantity; [`Wrong::NotANumber`],
    /// [`Wrong::NotAWord`], [`Wrong::NotADate`].
    ///
    /// ```
    /// use ocellus_card::{entries, error::Wrong};
    /// assert_eq!(entries::K1.id().check(43.25), Ok(()));
    /// assert_eq!(entries::K1.id().check(7.8).unwrap_err().wrong, Wrong::WrongUnit);
    /// ```
    pub fn check(self, value: f64) -> Result<(), Error> {
        let refused = |wrong| Error { value: value.is_finite().then_some(value), ..Error::of(wrong, self) };
        match self.kind() {
            Kind::Number(_, bounds) => bounds.check(value).map(drop).map_err(|_| {
                let wrong = match self.looks_like(value) {
                    _ if !value.is_finite() => Wrong::NotANumber,
                    Some(_) => Wrong::WrongUnit,
                    None => Wrong::OutOfRange,
                };
                Error { bounds: Some(bounds), ..refused(wrong) }
            }),
            Kind::Choice(words) if (0..words.len()).any(|code| code as f64 == value) => Ok(()),
            Kind::Choice(_) => Err(refused(Wrong::NotAWord)),
            Kind::Date => Date::from_number(value).map(drop).map_err(refused),
            Kind::Name => Ok(()),
        }
    }
}

impl Error {
    /// The entry that it comes from: what says the same, or what needs it.
    ///
    /// ```
    /// use ocellus_card::{draft::Draft, entries, error::{Error, Wrong}};
    /// let mut draft = Draft::default();
    /// draft.enter(entries::TUBE_FLOW, "10")?;
    /// draft.enter(entries::DRIVE, "60")?;
    /// let twice = Error::of(Wrong::Twice, entries::DRIVE.id());
    /// assert_eq!(twice.because(&draft), Some(entries::TUBE_FLOW.id()));
    /// # Ok::<(), ocellus_card::error::Error>(())
    /// ```
    pub fn because(&self, draft: &Draft) -> Option<EntryId> {
        let is_made = |entry: EntryId| draft.has(entry);
        let mut rules = parts::RULES.iter().flat_map(|(_, rules)| rules.iter());
        rules.find_map(|rule| rule.because(self.wrong, self.entry, &is_made))
    }

    /// What would be accepted in its place, where more is to be said than what its entry takes; each `{}` of the text stands
    /// for one of the entries.
    ///
    /// ```
    /// use ocellus_card::{entries, error::{Error, Wrong}};
    /// let (text, entries) = Error::of(Wrong::Missing, entries::K1.id()).accepts().unwrap();
    /// assert!(text == "or {} and {}" && entries == [entries::R1.id(), entries::R2.id()]);
    /// ```
    pub fn accepts(&self) -> Option<(Text, &'static [EntryId])> {
        let mut rules = parts::RULES.iter().flat_map(|(_, rules)| rules.iter());
        rules.find_map(|rule| rule.accepts(self.wrong, self.entry))
    }
}

/// A draft, and which of its entries were read.
struct Recorder<'a> {
    draft: &'a Draft,
    read: Cell<EntrySet>,
}

impl<'a> Recorder<'a> {
    fn of(draft: &'a Draft) -> Recorder<'a> {
        Recorder { draft, read: Cell::new(EntrySet::NONE) }
    }
}

impl Values for Recorder<'_> {
    fn number(&self, entry: EntryId) -> Option<f64> {
        self.draft.number(entry)
    }

    fn number_or_default(&self, entry: EntryId) -> Option<f64> {
        self.draft.number(entry).or_else(|| entry.default())
    }

    fn has(&self, entry: EntryId) -> bool {
        self.draft.has(entry)
    }

    fn is_valid(&self, entry: EntryId) -> bool {
        self.draft.number(entry).is_some_and(|value| entry.check(value).is_ok())
    }

    fn note(&self, entries: &[EntryId]) {
        let mut read = self.read.get();
        entries.iter().for_each(|entry| read.put(entry.place(), true));
        self.read.set(read);
    }

    fn read(&self) -> &Cell<EntrySet> {
        &self.read
    }
}
