//! Lens power: one file per method, the optics they share in [`vergence`], constants into each other in [`convert`].

pub mod answer;
pub mod certainty;
pub mod constants;
pub mod convert;
pub mod double_k;
pub mod haigis;
pub mod haigis_l;
pub mod hofferq;
pub mod holladay1;
pub mod label;
pub mod ladder;
pub mod long_eye;
pub mod predict;
pub mod prediction;
pub mod second;
pub mod second_eye;
pub mod shammas;
pub mod slope;
pub mod srk2;
pub mod srkt;
pub mod surfaces;
pub mod t2;
pub mod thick;
pub mod vergence;

use crate::source::Source;
use crate::working::{Line, Prose};

macro_rules! methods {
    ($($id:ident $key:literal $name:literal $file:ident $source:ident;)*) => {
        /// A published method.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Method { $(#[doc = $name] $id,)* }

        impl Method {
            /// Every method, in the order of columns.
            pub const ALL: &[Method] = &[$(Method::$id),*];

            /// Its name in columns and commands.
            ///
            /// ```
            /// assert_eq!(ocellus_core::lens::Method::HofferQ.key(), "hofferq");
            /// ```
            pub const fn key(self) -> &'static str { match self { $(Method::$id => $key,)* } }

            /// Its published name.
            ///
            /// ```
            /// assert_eq!(ocellus_core::lens::Method::Srkt.name(), "SRK/T");
            /// ```
            pub const fn name(self) -> &'static str { match self { $(Method::$id => $name,)* } }

            /// Where it was published.
            ///
            /// ```
            /// use ocellus_core::{lens::Method, source::Source};
            /// assert_eq!(Method::T2.source(), Source::T22010);
            /// ```
            pub const fn source(self) -> Source { match self { $(Method::$id => Source::$source,)* } }

            pub(crate) const fn lines(self) -> &'static [Line] { match self { $(Method::$id => $file::Working::LINES,)* } }

            pub(crate) fn prose(self) -> &'static [Prose] { match self { $(Method::$id => $file::Working::PROSE,)* } }
        }
    };
}

methods! {
    Srk2 "srk2" "SRK II" srk2 SrkII1988;
    Srkt "srkt" "SRK/T" srkt SrkT1990;
    T2 "t2" "T2" t2 T22010;
    Holladay1 "holladay1" "Holladay 1" holladay1 Holladay1988;
    HofferQ "hofferq" "Hoffer Q" hofferq HofferQ1993;
    Haigis "haigis" "Haigis" haigis Haigis2004;
    ShammasPl "shammas_pl" "Shammas-PL" shammas Shammas2007;
    HaigisL "haigis_l" "Haigis-L" haigis_l HaigisL2008;
    DoubleSrkt "double_srkt" "DK SRK/T" srkt Aramberri2003;
    DoubleHolladay1 "double_holladay1" "DK Holladay 1" holladay1 Aramberri2003;
    DoubleHofferQ "double_hofferq" "DK Hoffer Q" hofferq Aramberri2003;
}

impl Method {
    /// Those for an eye whose cornea was never operated on.
    pub const ORDINARY: &[Method] =
        &[Method::Srk2, Method::Srkt, Method::T2, Method::Holladay1, Method::HofferQ, Method::Haigis];

    /// Those for an eye after corneal laser.
    pub const AFTER_LASER: &[Method] =
        &[Method::ShammasPl, Method::HaigisL, Method::DoubleSrkt, Method::DoubleHolladay1, Method::DoubleHofferQ];

    /// Whether guidance names it for an axial length, mm.
    ///
    /// Below 22.00 Haigis or Hoffer Q; 22.00 to 26.00 SRK/T; above 26.00 Haigis or SRK/T. Source: NICE NG77 (memory).
    ///
    /// ```
    /// use ocellus_core::{lens::Method, quantity::AxialLength};
    /// assert!(Method::Haigis.guided(AxialLength::from_mm(21.99)?));
    /// assert!(!Method::Haigis.guided(AxialLength::from_mm(22.0)?));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn guided(self, al: crate::quantity::AxialLength) -> bool {
        use crate::constant::eye::{GUIDANCE_LONG, GUIDANCE_SHORT};
        let (short, long) = (al.mm() < GUIDANCE_SHORT.get(), al.mm() > GUIDANCE_LONG.get());
        match self {
            Method::Haigis => short || long,
            Method::HofferQ => short,
            Method::Srkt => !short,
            _ => false,
        }
    }
}
