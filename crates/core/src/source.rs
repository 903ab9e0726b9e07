//! Where a number comes from, and how sure that is.

/// How well a number's origin is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// The number was read in the named source.
    Read,
    /// Corroborated by a second, independent route: another source, or an identity only that value satisfies.
    Two,
    /// Recalled from the named source, without reading it again.
    Memory,
    /// Common practice with no source.
    CommonPractice,
    /// Typed by the user.
    Entered,
    /// A limit or definition chosen here, for the stated reason.
    Chosen,
}

impl Mark {
    /// The mark as it is printed beside a number.
    ///
    /// ```
    /// assert_eq!(ocellus_core::source::Mark::Two.word(), "two");
    /// ```
    pub const fn word(self) -> &'static str {
        match self {
            Mark::Read => "read",
            Mark::Two => "two",
            Mark::Memory => "memory",
            Mark::CommonPractice => "common practice",
            Mark::Entered => "entered",
            Mark::Chosen => "chosen here",
        }
    }
}

macro_rules! sources {
    ($($(#[$doc:meta])* $name:ident = $text:literal;)*) => {
        /// A source, printed in full by the host and as its number by a device.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Source { $(#[doc = $text] $name,)* }

        impl Source {
            /// Every source, in the order of its number.
            pub const ALL: &[Source] = &[$(Source::$name),*];

            /// The number a device prints for this source.
            ///
            /// ```
            /// use ocellus_core::source::Source;
            /// assert_eq!(Source::ALL[Source::SrkT1990.number() as usize], Source::SrkT1990);
            /// ```
            pub const fn number(self) -> u8 { self as u8 }

            /// The citation in full.
            ///
            /// ```
            /// use ocellus_core::source::Source;
            /// assert!(Source::SrkT1990.text().contains("1990;16:333-340"));
            /// ```
            pub const fn text(self) -> &'static str {
                match self { $(Source::$name => $text,)* }
            }
        }
    };
}

sources! {
    Entered = "entered in the case";
    Here = "defined in this project";
    Identity = "follows from the definitions";
    NoSource = "common practice, no source";
    SrkII1988 = "Sanders, Retzlaff, Kraff, J Cataract Refract Surg 1988;14:136-141";
    SrkT1990 = "Retzlaff, Sanders, Kraff, J Cataract Refract Surg 1990;16:333-340, erratum 1990;16:528";
    T22010 = "Sheard, Smith, Cooke, J Cataract Refract Surg 2010;36:1829-1834";
    Holladay1988 = "Holladay et al., J Cataract Refract Surg 1988;14:17-24";
    Holladay2003 = "Holladay, J Cataract Refract Surg 2003;29:176-197";
    HofferQ1993 = "Hoffer, J Cataract Refract Surg 1993;19:700-712, errata 1994;20:677 and 2007;33:2";
    Haigis2004 = "Haigis in Shammas (ed.) 2004; Haigis et al., Graefes Arch 2000;238:765-773";
    HaigisCusp1993 = "Haigis, J Cataract Refract Surg 1993;19:442-446; Sheard et al. 2010";
    Holladay1993 = "Holladay, Am J Ophthalmol 1993;116:63-66";
    Wang2011 = "Wang et al., J Cataract Refract Surg 2011;37:2018-2027";
    WangKoch = "Wang et al. 2011 and Wang, Koch 2018, J Cataract Refract Surg 37:2018-2027 and 44:1396-1397";
    Wang2018 = "Wang, Koch, J Cataract Refract Surg 2018;44:1396-1397";
    Shammas2007 = "Shammas, Shammas, J Cataract Refract Surg 2007;33:31-36";
    Shammas2013 = "J Cataract Refract Surg 2013;39:739-744";
    HaigisL2008 = "Haigis, J Cataract Refract Surg 2008;34:1658-1663";
    Norrby2008 = "Norrby, J Cataract Refract Surg 2008;34:368-376";
    Iso11979 = "ISO 11979-2, intraocular lenses: optical properties";
    Covert2010 = "Covert, Henry, Koenig, Ophthalmology 2010;117:49-54";
    Ng77 = "NICE guideline NG77, Cataracts in adults: management";
    Recheck2010 = "Eye 2010;24:894-900";
    Repeat2025 = "PLOS ONE 10.1371/journal.pone.0321786 (266 eyes)";
    WrongLens = "published reviews of 164 and 178 wrong-lens incidents";
    Aramberri2003 = "Aramberri, J Cataract Refract Surg 2003;29:2063-2068";
    Iso8429 = "ISO 8429, graduated dial scale";
    Thibos1997 = "Thibos, Wheeler, Horner, Optom Vis Sci 1997;74:367-375";
    OffAxis2001 = "Br J Ophthalmol 2001;85:1127";
    Marking2011 = "J Cataract Refract Surg 2011;37:1394-1402";
    PosteriorCornea2013 = "J Cataract Refract Surg 2013;39:1803-1809";
    Gullstrand = "Gullstrand's exact schematic eye";
    Regression2016 = "J Cataract Refract Surg 2016;42:663-671";
    Eom2015 = "Eom et al., Am J Ophthalmol 2015;160:717-724";
    Goggin2015 = "Goggin et al., J Refract Surg 2015;31";
    Alpins2001 = "Alpins, J Cataract Refract Surg 1993;19:524-533 and 2001;27:31-49; J Refract Surg 2014;30:654-659";
    Indices2001 = "published review of indices: correction index for small targets";
    Hotelling = "Hotelling's T2 in two dimensions; F(2, m) in closed form";
    LyingDown2015 = "Br J Ophthalmol 2015;99:49-53 (310 eyes)";
    BackOfCornea2020 = "Sci Rep 2020;10:16151 (7,829 eyes)";
    SmallCylinder2014 = "J Cataract Refract Surg 2014;40:13-19";
    Naeser1990 = "Naeser, J Cataract Refract Surg 1990;16:162-168";
    WoundLength1994 = "J Cataract Refract Surg 1994;20:626-629";
    RhexisSeen = "ring of 5.30 mm measured through the cornea in 40 eyes";
    Haptics2020 = "Acta Ophthalmol 2020;98:e743-e746";
    Viscoelastic2001 = "Br J Ophthalmol 2001;85:139";
    Sp811 = "NIST SP 811 (2008) Appendix B; ISO 80000-4";
    Iso2533 = "US Standard Atmosphere 1976; ISO 2533";
    Iapws97 = "IAPWS-IF97 (2007), region 4";
    Tanaka2001 = "Tanaka et al., Metrologia 2001;38:301-309";
    Wmo8 = "WMO-No. 8, Guide to Instruments: Magnus' formula";
    IapwsViscosity = "IAPWS, viscosity of liquid water at 0.1 MPa";
    Poiseuille = "Hagen-Poiseuille: laminar flow in a round tube";
    Birmingham = "Birmingham gauge, needle tubing: nominal sizes";
    Iso9626 = "ISO 9626, stainless steel needle tubing: least bores";
    NeedleLines = "27 G lines of several makers, measured at 10 mL/min";
    Leak2009 = "J Cataract Refract Surg 2009;35:1003-1005 (105 patients)";
    ChamberVolume = "anterior chamber volume, 139.8 +/- 38.2 uL in 92 eyes with a cataract";
    DeadEyes = "pressure-volume laws of dead eyes, against living eyes";
    Stoppered1990 = "Arch Ophthalmol 1990;108:267-270";
    Retropulsion2017 = "Korean J Ophthalmol 2017 (124 eyes)";
}
