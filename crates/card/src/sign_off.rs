//! Lines that two people tick before the first cut: one table.

macro_rules! lines {
    ($($id:ident $key:literal $text:literal;)*) => {
        /// A line to tick.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum SignOff { $(#[doc = $text] $id,)* }

        impl SignOff {
            /// Every line, in order.
            pub const ALL: &[SignOff] = &[$(SignOff::$id),*];

            /// Its stable name.
            ///
            /// ```
            /// assert_eq!(ocellus_core::sign_off::SignOff::Side.key(), "side");
            /// ```
            pub const fn key(self) -> &'static str { match self { $(SignOff::$id => $key,)* } }

            /// The line.
            ///
            /// ```
            /// assert!(ocellus_core::sign_off::SignOff::LensBox.text().contains("sign"));
            /// ```
            pub const fn text(self) -> &'static str { match self { $(SignOff::$id => $text,)* } }
        }
    };
}

lines! {
    Patient "patient" "The correct patient: two identifiers asked, and read on the wristband";
    Side "side" "The correct side: consent, mark on the skin, this card and the patient agree";
    Printout "printout" "The biometry printout is this patient's, this eye's, and the one this card was typed from";
    LensBox "lens_box" "Lens box against this card: model, power with its sign, cylinder, expiry, read aloud";
    BackupBox "backup_box" "Backup lens in the room: model and power with its sign";
    Marks "marks" "Axis marks were made with the patient upright";
    Allergies "allergies" "Allergies and medicines asked about";
    ReadBack "read_back" "Read-back: a second person typed from the printout and has the same code";
}
