//! What a card is about.

use crate::entered::Entered;
#[cfg(feature = "eye")]
use crate::parts::eye::Eye;
#[cfg(feature = "lens")]
use crate::parts::lens::Lens;

/// What is known of a case, for as long as it is asked.
pub struct Known<'a> {
    /// Everything that was entered.
    pub entered: &'a Entered<'a>,
    /// The eye, where there is one.
    #[cfg(feature = "eye")]
    pub eye: Option<&'a Eye<'a>>,
    /// What the methods say of it.
    #[cfg(feature = "lens")]
    pub lens: Option<&'a Lens<'a>>,
}

impl Known<'_> {
    pub(crate) fn has_eye(&self) -> bool {
        #[cfg(feature = "eye")]
        return self.eye.is_some();
        #[cfg(not(feature = "eye"))]
        false
    }
}

/// What a part of this kind is asked about, where it is there.
macro_rules! known_to {
    ($known:ident entered) => {
        Some($known.entered)
    };
    ($known:ident $kind:ident) => {
        $known.$kind
    };
}
