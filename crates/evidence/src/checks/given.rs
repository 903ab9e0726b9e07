//! What the inputs of a value say, as the core has it.

use ocellus_core::lens::eye::Laser;
use ocellus_core::lens::long_eye::{self, LongEye};
use ocellus_core::lens::method::Method;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{
    AConstant, AxialLength, Axis, ChamberDepth, CornealPower, KeratometricIndex, LensPower, Refraction, Temperature,
    Vertex,
};

use crate::check::Failed;
use crate::values::Value;

/// A number, or what a case has when it is silent.
pub(super) fn or(value: &Value, key: &str, usual: f64) -> Result<f64, Failed> {
    if value.given.contains_key(key) { Ok(value.number(key)?) } else { Ok(usual) }
}

/// The one of a few that a word means.
pub(super) fn one_of<T: Copy>(all: &[T], word_of: fn(T) -> &'static str, word: &str) -> Result<T, Failed> {
    Ok(all.iter().copied().find(|one| word_of(*one) == word).ok_or(format!("no word `{word}`"))?)
}

/// A method by its key.
pub(super) fn keyed(key: &str) -> Result<Method, Failed> {
    one_of(Method::ALL, Method::key, key)
}

pub(super) fn set(value: &Value) -> Result<LongEye, Failed> {
    one_of(&long_eye::SETS, LongEye::word, value.text("set")?)
}

pub(super) fn al(value: &Value) -> Result<AxialLength, Failed> {
    Ok(AxialLength::from_mm(value.number("axial_length_mm")?)?)
}

pub(super) fn k(value: &Value, key: &str) -> Result<CornealPower, Failed> {
    Ok(CornealPower::from_d(value.number(key)?)?)
}

pub(super) fn cornea(value: &Value) -> Result<Cornea, Failed> {
    let k = k(value, "k_d")?;
    Ok(Cornea::from_powers(k, k, KeratometricIndex::new(or(value, "keratometric_index", 1.3375)?)?, None)?)
}

pub(super) fn laser(value: &Value) -> Laser {
    if value.text("laser") == Ok("hyperopic_laser") { Laser::Hyperopic } else { Laser::Myopic }
}

pub(super) fn chamber_depth(value: &Value) -> Result<ChamberDepth, Failed> {
    Ok(ChamberDepth::from_mm(value.number("acd_mm")?)?)
}

pub(super) fn a_constant(value: &Value) -> Result<AConstant, Failed> {
    Ok(AConstant::new(value.number("a_constant")?)?)
}

pub(super) fn lens(value: &Value) -> Result<LensPower, Failed> {
    Ok(LensPower::from_d(value.number("iol_power_d")?)?)
}

pub(super) fn rx(value: &Value, key: &str) -> Result<Refraction, Failed> {
    Ok(Refraction::from_d(value.number(key)?)?)
}

pub(super) fn target(value: &Value) -> Result<Refraction, Failed> {
    Ok(Refraction::from_d(or(value, "target_d", 0.0)?)?)
}

pub(super) fn vertex(value: &Value) -> Result<Vertex, Failed> {
    Ok(Vertex::from_mm(or(value, "vertex_mm", 12.0)?)?)
}

pub(super) fn axis(value: &Value, key: &str) -> Result<Axis, Failed> {
    Ok(Axis::from_deg(value.number(key)?)?)
}

pub(super) fn temperature(value: &Value) -> Result<Temperature, Failed> {
    Ok(Temperature::from_c(value.number("temperature_C")?)?)
}
