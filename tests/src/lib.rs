//! What only several parts together can show: see the test files beside this one. Here is what they share.

pub mod bench;
pub mod bits;
pub mod check;
pub mod emulator;
pub mod faults;
pub mod methods;
pub mod random_case;
