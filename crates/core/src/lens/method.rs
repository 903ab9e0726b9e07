//! Every published method, a line each.

use crate::lens::eye::{Eye, Lack};
use crate::lens::view::{Eyes, Spec, View};
use crate::lens::{
    double_hoffer_q, double_holladay1, double_srkt, haigis, haigis_l, hoffer_q, holladay1, shammas_pl, srk2, srkt, t2,
};
use crate::source::Source;
use crate::working::{Prose, Table};

macro_rules! methods {
    ($($id:ident $file:ident;)*) => {
        /// A published method; its number is its place here, and stays.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Method { $(#[doc = concat!("See [`crate::lens::", stringify!($file), "`].")] $id,)* }

        impl Method {
            /// Every method, in the order of its number, which is that of columns.
            pub const ALL: &[Method] = &[$(Method::$id),*];

            /// What it is.
            const fn spec(self) -> &'static Spec { match self { $(Method::$id => &$file::METHOD,)* } }

            /// Symbol, unit, source and mark of each of its steps up to the lens position.
            ///
            /// ```
            /// use ocellus_core::lens::method::Method;
            /// assert!(Method::Srkt.table().lines().any(|line| line.symbol == "LCOR"));
            /// ```
            pub const fn table(self) -> &'static Table { match self { $(Method::$id => $file::Working::table(),)* } }

            /// Meaning, equation and constants of each of them.
            ///
            /// ```
            /// use ocellus_core::lens::method::Method;
            /// assert_eq!(Method::Srkt.prose().len(), Method::Srkt.table().count());
            /// ```
            pub fn prose(self) -> &'static [Prose] { match self { $(Method::$id => $file::Working::prose(),)* } }
        }
    };
}

methods! {
    Srk2 srk2;
    Srkt srkt;
    T2 t2;
    Holladay1 holladay1;
    HofferQ hoffer_q;
    Haigis haigis;
    ShammasPl shammas_pl;
    HaigisL haigis_l;
    DoubleSrkt double_srkt;
    DoubleHolladay1 double_holladay1;
    DoubleHofferQ double_hoffer_q;
}

impl Method {
    /// The most methods that are made for one kind of eye.
    #[expect(clippy::indexing_slicing, reason = "while it is compiled")]
    pub const MOST: usize = {
        let (mut ordinary, mut place) = (0, 0);
        while place < Method::ALL.len() {
            ordinary += matches!(Method::ALL[place].spec().of, Eyes::Ordinary) as usize;
            place += 1;
        }
        if 2 * ordinary > place { ordinary } else { place - ordinary }
    };

    /// Those for one kind of eye, in their order.
    ///
    /// ```
    /// use ocellus_core::lens::{method::Method, view::Eyes};
    /// assert_eq!(Method::of(Eyes::Ordinary).map(Method::key).collect::<Vec<_>>()[..2], ["srk2", "srkt"]);
    /// assert!(Method::of(Eyes::Ordinary).count() <= Method::MOST);
    /// ```
    pub fn of(eyes: Eyes) -> impl Iterator<Item = Method> + Clone {
        Self::ALL.iter().copied().filter(move |method| method.spec().of == eyes)
    }

    /// Its name in columns and commands.
    ///
    /// ```
    /// assert_eq!(ocellus_core::lens::method::Method::HofferQ.key(), "hofferq");
    /// ```
    pub const fn key(self) -> &'static str {
        self.spec().key
    }

    /// Its published name.
    ///
    /// ```
    /// assert_eq!(ocellus_core::lens::method::Method::Srkt.name(), "SRK/T");
    /// ```
    pub const fn name(self) -> &'static str {
        self.spec().name
    }

    /// Where it was published.
    ///
    /// ```
    /// use ocellus_core::{lens::method::Method, source::Source};
    /// assert_eq!(Method::T2.source(), Source::T22010);
    /// ```
    pub const fn source(self) -> Source {
        self.spec().source
    }

    /// Hands out what it makes of an eye.
    ///
    /// # Errors
    /// What it lacks; then nothing is handed out.
    ///
    /// ```
    /// use ocellus_core::lens::{eye::{Lack, Measured}, method::Method};
    /// assert_eq!(Method::Srkt.view(&Measured::NOTHING, &mut |_| {}), Err(Lack::Length));
    /// ```
    pub fn view(self, eye: &dyn Eye, then: &mut dyn FnMut(&dyn View)) -> Result<(), Lack> {
        (self.spec().view)(eye, then)
    }
}
