//! A valid case: of one operated eye, or of a set-up of fluids. The only way to one is [`Case::check`] on a draft, so a case
//! that exists has been checked.

use crate::draft::Draft;
use crate::entered::Entered;
use crate::entry_set::EntrySet;
use crate::error::{Error, Wrong};
use crate::id::{EntryId, PartId};
use crate::known::Known;
use crate::names::entries::SIDE;
use crate::part::Stands;
use crate::parts;
use crate::rule::Rule;
use ocellus_text::Text;

/// The rules of a part that has some.
macro_rules! rules_of {
    ($name:ident) => { &[] };
    ($name:ident rules $($does:ident)*) => { parts::$name::RULES };
    ($name:ident $other:ident $($does:ident)*) => { rules_of!($name $($does)*) };
}

macro_rules! rules {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// What must hold between the entries of each part.
        const RULES: &[(PartId, &[Rule])] =
            &[$($(#[$cfg])* (parts::$name::table::PART, rules_of!($name $($($does)*)?)),)*];
    };
}

parts!(rules);

/// What was entered and found valid; it borrows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case<'a> {
    draft: &'a Draft,
    has_eye: bool,
}

impl<'a> TryFrom<&'a Draft> for Case<'a> {
    type Error = Error;

    /// The case, or the first thing wrong with it; [`Case::check`] reports all of them.
    fn try_from(draft: &'a Draft) -> Result<Case<'a>, Error> {
        let mut first = None;
        let case = Case::check(draft, &mut |error| {
            first.get_or_insert(error);
        });
        case.ok_or(first.unwrap_or(Error::of(Wrong::Missing, SIDE.id())))
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
        let entered = Entered::of(draft);
        // whose eye and its measurements first, as they are entered, and not as a card shows them
        for part in PartId::by_number().filter(|part| has_eye || part.stands() == Stands::Alone) {
            for rule in RULES.iter().filter(|(of, _)| *of == part).flat_map(|(_, rules)| *rules) {
                rule.ask(&entered, &mut |wrong, entry| {
                    refuse(Error { value: draft.number(entry), ..Error::of(wrong, entry) });
                });
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
        let entered = Entered::of(self.draft);
        #[cfg(feature = "eye")]
        let eye = if self.has_eye { parts::eye::Eye::of(&entered) } else { None };
        #[cfg(feature = "lens")]
        let mut answers = parts::lens::Answers::none();
        #[cfg(feature = "lens")]
        let lens = eye.as_ref().map(|eye| parts::lens::Lens::of(eye, &mut answers));
        let answer = ask(&Known {
            entered: &entered,
            #[cfg(feature = "eye")]
            eye: eye.as_ref(),
            #[cfg(feature = "lens")]
            lens: lens.as_ref(),
        });
        (answer, entered.read_so_far())
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
        let mut rules = RULES.iter().flat_map(|(_, rules)| rules.iter());
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
        let mut rules = RULES.iter().flat_map(|(_, rules)| rules.iter());
        rules.find_map(|rule| rule.accepts(self.wrong, self.entry))
    }
}
