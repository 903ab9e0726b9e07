//! Lens power: a file for each published method, and what goes with them.
//!
//! | file | holds |
//! |---|---|
//! | [`srk2`], [`srkt`], [`t2`], [`holladay1`], [`hoffer_q`], [`haigis`] | methods for a cornea never operated on |
//! | [`shammas_pl`], [`haigis_l`], [`double_srkt`], [`double_holladay1`], [`double_hoffer_q`] | methods after corneal laser |
//! | [`mod@method`] | all of them in one table |
//! | [`eye`], [`view`] | what a method asks, and what it answers |
//! | [`double_k`], `srkt_optics` | what some of them share |
//! | [`long_eye`] | published adjustments of a long eye's length |
//! | [`guidance`] | which method guidance names |
//! | [`mod@constants`], [`convert`] | lens constants into each other |
//! | [`slopes`], [`certainty`] | how an answer moves, and how sure it is |
//! | [`label`] | what labels there are, and how far one may be off |
//! | [`second`], [`second_eye`] | a lens by the refraction; what the first eye shows |

pub mod certainty;
pub mod constants;
pub mod convert;
pub mod double_hoffer_q;
pub mod double_holladay1;
pub mod double_k;
pub mod double_srkt;
pub mod eye;
pub mod guidance;
pub mod haigis;
pub mod haigis_l;
pub mod hoffer_q;
pub mod holladay1;
pub mod label;
pub mod long_eye;
pub mod method;
pub mod second;
pub mod second_eye;
pub mod shammas_pl;
pub mod slopes;
pub mod srk2;
pub mod srkt;
mod srkt_optics;
pub mod t2;
pub mod view;
