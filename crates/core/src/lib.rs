//! The arithmetic of a cataract operation, made to give the same 64 bits on a handheld, on a laptop and in a test.
#![no_std]

#[cfg(test)]
extern crate std;

mod math;

#[macro_use]
pub mod constant;
#[macro_use]
pub mod working;

pub mod astigmatism;
pub mod bounds;
pub mod choice;
pub mod decimal;
pub mod error;
pub mod fluids;
pub mod lens;
pub mod optics;
pub mod quantity;
pub mod source;
pub mod table_side;
pub mod value;
