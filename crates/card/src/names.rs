//! Every entry, number, caution and line to tick by its name in the program, whichever part it is of.

macro_rules! names {
    ($($(#[$cfg:meta])* $name:ident of $kind:ident $(: $($does:ident),*)?;)*) => {
        /// Every entry, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod entries {
            $($(#[$cfg])* pub use crate::parts::$name::table::entries::*;)*
        }

        /// Every number, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod items {
            $($(#[$cfg])* pub use crate::parts::$name::table::items::*;)*
        }

        /// Every caution, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod cautions {
            $($(#[$cfg])* pub use crate::parts::$name::table::cautions::*;)*
        }

        /// Every line to tick, by its name in the program.
        #[allow(unused_imports, unreachable_pub, reason = "parts that have none")]
        pub mod sign_offs {
            $($(#[$cfg])* pub use crate::parts::$name::table::sign_offs::*;)*
        }
    };
}

parts!(names);
