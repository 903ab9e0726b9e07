//! Lens power: a file for each published method, and what goes with them.
//!
//! The `working` of a method takes what it needs and gives its intermediate values; `thin_eye` of these is the eye as its
//! optics see it (SRK II has a `line` instead). [`mod@method`] lists every method: each asks an [`eye::Eye`] for what it needs
//! and hands out a [`view::View`], which goes from a refraction to a lens and back, says how the answer moves with each
//! measurement and what is against it, and shows the steps.

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
