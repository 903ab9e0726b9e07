//! Words for a debugger.

/// Writes to a debugger, in the words of `defmt`; nothing without the feature `log`.
#[cfg(feature = "log")]
#[macro_export]
macro_rules! log {
    ($($words:tt)*) => { ::defmt::info!($($words)*) };
}

/// Writes to a debugger, in the words of `defmt`; nothing without the feature `log`.
#[cfg(not(feature = "log"))]
#[macro_export]
macro_rules! log {
    ($text:literal $(, $value:expr)* $(,)?) => {{ $(let _ = &$value;)* }};
}
