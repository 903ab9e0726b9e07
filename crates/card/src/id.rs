//! What parts, entries, items, cautions and lines to tick are called inside the program: the number of the part, and the number in
//! it. A new part renumbers nothing.

macro_rules! ids {
    ($($(#[$doc:meta])* $Id:ident;)*) => {$(
        $(#[$doc])*
        // one number and not two: a device passes hundreds of them
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $Id(u16);

        impl $Id {
            /// The one with this number in a part.
            pub const fn new(part: PartId, number: u8) -> $Id {
                $Id((part.0 as u16) << 8 | number as u16)
            }

            /// The part that it belongs to.
            pub const fn part(self) -> PartId {
                PartId((self.0 >> 8) as u8)
            }

            /// Its number in that part.
            pub const fn number(self) -> u8 {
                self.0 as u8
            }
        }

        impl core::fmt::Debug for $Id {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                write!(f, "{} {}.{}", stringify!($Id), self.part().0, self.number())
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
