//! Lines to tick, by number.

use crate::id::SignOffId;
use crate::sign_off::SignOffRow;
use ocellus_text::Text;

rows!(SignOffId: SignOffRow = sign_offs, SignOffRow { key: "", text: "" });

texts! {
    keys = |row| row.key;
    bodies = |row| row.text;
}

impl SignOffId {
    /// Its stable name.
    ///
    /// ```
    /// assert!(ocellus_card::sign_offs::SIDE.key() == "side");
    /// ```
    pub fn key(self) -> Text {
        keys(self.place())
    }

    /// The line.
    ///
    /// ```
    /// assert!(ocellus_card::sign_offs::SIDE.text().to_string().starts_with("The correct side"));
    /// ```
    pub fn text(self) -> Text {
        bodies(self.place())
    }
}
