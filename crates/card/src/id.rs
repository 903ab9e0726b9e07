//! What parts, entries, items, cautions and lines to tick are called inside the program: the number of the part, and the number in
//! it. A new part renumbers nothing.

macro_rules! ids {
    ($($(#[$doc:meta])* $Id:ident;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $Id {
            part: u8,
            number: u8,
        }

        impl $Id {
            /// The one with this number in a part.
            pub const fn new(part: PartId, number: u8) -> $Id {
                $Id { part: part.0, number }
            }

            /// The part that it belongs to.
            pub const fn part(self) -> PartId {
                PartId(self.part)
            }

            /// Its number in that part.
            pub const fn number(self) -> u8 {
                self.number
            }
        }
    )*};
}

/// A part of the card, by its number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PartId(pub u8);

ids! {
    /// An entry.
    EntryId;
    /// A number that comes out.
    ItemId;
    /// A caution.
    CautionId;
    /// A line that two people tick.
    SignOffId;
}
