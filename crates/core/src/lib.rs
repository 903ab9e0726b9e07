//! The arithmetic of a cataract operation: lens power, astigmatism, pressure and flow. `no_std`, no allocator, no unsafe code,
//! no panic; the same 64 bits on a handheld, on a laptop and in a test.
//!
//! **Not a medical device.** Teaching and independent arithmetic check only: the surgeon, the label, the pharmacy and local
//! rules decide. A formula here answers whatever eye it is asked about, also one that it does not hold for: who calls it has
//! to ask first what was done to the cornea, what is in the eye, and whether the printout is to be believed. `ocellus-card`
//! asks that.
//!
//! # One formula
//!
//! The lens that Hoffer Q asks for, and a refraction taken from the spectacles to the cornea:
//!
//! ```
//! use ocellus_core::{lens::hoffer_q, optics::{cornea::Cornea, vertex::to_cornea}, quantity::*};
//!
//! let (k1, k2) = (CornealPower::from_d(43.25)?, CornealPower::from_d(44.0)?);
//! let cornea = Cornea::from_powers(k1, k2, KeratometricIndex::new(1.3375)?, None)?;
//! let (target, vertex) = (Refraction::from_d(-0.25)?, Vertex::from_mm(12.0)?);
//!
//! let eye = hoffer_q::working(AxialLength::from_mm(23.46)?, &cornea, Pacd::from_mm(5.49)?);
//! let lens = eye.thin_eye().power(target, vertex)?;
//! assert_eq!(format!("{:.3} mm, {:.2} D", eye.elp, lens.power), "5.445 mm, 21.47 D");
//!
//! assert_eq!(format!("{:.3} D", to_cornea(-10.0, vertex)?), "-8.929 D");
//! # Ok::<(), ocellus_core::error::Error>(())
//! ```
//!
//! A function `working` gives every intermediate value, as a struct with the paper's symbols in small letters; `show` of that
//! struct streams them with unit, source and mark. All methods have the same optics behind them:
//! [`ThinEye`](optics::thin_eye::ThinEye) goes from a refraction to a lens and from a lens to a refraction. To ask several
//! methods about one eye, see [`Method::view`](lens::method::Method::view).
//!
//! # What there is
//!
//! Each line is a formula and the function that computes it, or the field that holds it.
//!
//! | light | |
//! |---|---|
//! | radius, mean K and astigmatism of a cornea, from two powers or two radii | [`Cornea`](optics::cornea::Cornea) |
//! | vertexing: spectacles to cornea, cornea to spectacles | [`to_cornea`](optics::vertex::to_cornea), [`to_spectacles`](optics::vertex::to_spectacles); with a cylinder [`SpheroCylinder::to_cornea`](astigmatism::sphero_cylinder::SpheroCylinder::to_cornea) |
//! | vergence from cornea to lens, and back | [`at_lens`](optics::vergence::at_lens), [`at_cornea`](optics::vergence::at_cornea) |
//! | the lens for a refraction, the refraction for a lens | [`ThinEye::power`](optics::thin_eye::ThinEye::power), [`ThinEye::refraction`](optics::thin_eye::ThinEye::refraction) |
//! | power and principal planes of a thick lens; such a lens in the eye | [`thick::working`](optics::thick::working), [`placed`](optics::thick::Working::placed) |
//! | any row of surfaces; schematic eyes | [`system`](optics::surfaces::system), [`GULLSTRAND`](optics::surfaces::GULLSTRAND), [`LE_GRAND`](optics::surfaces::LE_GRAND) |
//!
//! | lens power | |
//! |---|---|
//! | SRK II, SRK/T, T2, Holladay 1, Hoffer Q, Haigis | [`srk2`](lens::srk2::working), [`srkt`](lens::srkt::working), [`t2`](lens::t2::working), [`holladay1`](lens::holladay1::working), [`hoffer_q`](lens::hoffer_q::working), [`haigis`](lens::haigis::working) |
//! | after corneal laser: Shammas-PL, Haigis-L, double-K | [`shammas_pl`](lens::shammas_pl::working), [`haigis_l`](lens::haigis_l::working), [`double_k`](lens::double_k::working) |
//! | a method's lens position | `elp` of its working, as [`hoffer_q::Working::elp`](lens::hoffer_q::Working::elp) |
//! | corneal height: SRK/T, T2, Holladay 1 | [`H`](lens::srkt::Working::h), [`corneal_height`](lens::t2::corneal_height), [`aACD`](lens::holladay1::Working::aacd) |
//! | Haigis-L's corrected radius | [`haigis_l::Working::radius`](lens::haigis_l::Working::radius) |
//! | corneal power after laser, by its history | [`from_history`](lens::double_k::from_history) |
//! | long eyes: the adjusted axial length | [`long_eye::working`](lens::long_eye::working) |
//! | a second lens, an exchange, an eye without a lens, by the refraction | [`second::working`](lens::second::working), [`second::refraction`](lens::second::refraction) |
//! | one lens constant from another | [`convert`](lens::convert), all at once [`family`](lens::constants::family) |
//! | how a refraction moves with length, K, depth, position, lens | [`slopes`](lens::slopes::slopes) |
//! | variance and interval of a prediction; a chance | [`budget`](lens::certainty::budget), [`chance`](lens::certainty::chance) |
//! | labels: tolerance, nearest, first myopic | [`tolerance`](lens::label::tolerance), [`Labels::by_rule`](lens::label::Labels::by_rule) |
//! | the second eye, from the error of the first | [`second_eye::expected`](lens::second_eye::expected) |
//! | the method that guidance names for a length | [`named`](lens::guidance::named) |
//!
//! | astigmatism | |
//! |---|---|
//! | a refraction as a vector, and back; plus and minus cylinder | [`PowerVector::of`](astigmatism::power_vector::PowerVector::of), [`minus_cylinder`](astigmatism::power_vector::PowerVector::minus_cylinder), [`plus_cylinder`](astigmatism::power_vector::PowerVector::plus_cylinder); [`transposed`](astigmatism::sphero_cylinder::SpheroCylinder::transposed) |
//! | two cylinders added, subtracted (crossed cylinders) | [`plus`](astigmatism::power_vector::PowerVector::plus), [`minus`](astigmatism::power_vector::PowerVector::minus) |
//! | as three meridians, 2x2 matrix, polar values | [`in_meridians`](astigmatism::power_vector::PowerVector::in_meridians), [`PowerMatrix`](astigmatism::matrix::PowerMatrix), [`Polar`](astigmatism::polar::Polar) |
//! | an incision's effect; a surgeon's own centroid | [`induced`](astigmatism::incision::induced), [`centroid`](astigmatism::incision::centroid) |
//! | back of the cornea: regression of 2016, Eom, Goggin; measured | [`corrected`](astigmatism::posterior::corrected); [`two_surfaces::working`](astigmatism::two_surfaces::working) |
//! | an incision's site: word, clock hour, seat | [`of_word`](astigmatism::site::of_word), [`of_clock`](astigmatism::site::of_clock), [`tilt`](astigmatism::site::tilt) |
//! | the cylinder needed at the lens; what a toric lens leaves | [`toric::working`](astigmatism::toric::working), [`residual`](astigmatism::toric::residual) |
//! | what it is expected to leave, with scatter | [`mean`](astigmatism::expected::mean) |
//! | a cylinder off its axis | [`loss`](astigmatism::off_axis::loss), [`needed`](astigmatism::off_axis::needed), [`left`](astigmatism::off_axis::left) |
//! | the best turn of a lens that sits wrong | [`turning::working`](astigmatism::turning::working) |
//! | TIA, SIA, difference vector and their indices | [`change`](astigmatism::change::change), [`indices`](astigmatism::change::Change::indices) |
//! | many eyes: centroid, ellipses, test against zero | [`Group`](astigmatism::group::Group) |
//!
//! | pressure and flow | |
//! |---|---|
//! | a pressure in another unit | [`convert`](fluids::unit::convert) |
//! | pressure of a column at the eye; the level for a pressure | [`column::working`](fluids::column::working), [`level_for`](fluids::column::level_for) |
//! | a machine set by pressure | [`set`](fluids::column::set), [`setting_for`](fluids::column::setting_for) |
//! | standard atmosphere, both ways | [`air::working`](fluids::air::working), [`height`](fluids::air::height) |
//! | vapour pressure of water: IAPWS, Magnus | [`vapour::working`](fluids::vapour::working), [`magnus`](fluids::vapour::magnus) |
//! | density and viscosity of water | [`density::working`](fluids::density::working), [`viscosity::working`](fluids::viscosity::working) |
//! | the most vacuum there is; what a setting reaches | [`ceiling::working`](fluids::ceiling::working), [`reached`](fluids::ceiling::reached) |
//! | Poiseuille, Reynolds number, shear, entrance loss; flow by pressure | [`tube::working`](fluids::tube::working), [`driven`](fluids::tube::driven) |
//! | tubes in series, side by side; needles by gauge | [`in_series`](fluids::tube::in_series), [`side_by_side`](fluids::tube::side_by_side), [`needle::of`](fluids::needle::of) |
//! | a sharp opening; force on a plunger; force that holds a piece | [`opening::working`](fluids::opening::working), [`plunger::working`](fluids::plunger::working), [`force`](fluids::hold::force) |
//! | resistance of a line, from two readings | [`readings::working`](fluids::readings::working) |
//! | illustrations: chamber under flow, surge, a chamber that goes on | [`chamber::working`](fluids::chamber::working), [`run`](fluids::surge::run), [`Live`](fluids::live::Live) |
//!
//! | at the table | |
//! |---|---|
//! | diameter and edge of a rhexis from its first cut, true or as it looks | [`rhexis::working`](table_side::rhexis::working) |
//! | grasps; overlap on the optic; magnification by the cornea | [`grasps`](table_side::rhexis::grasps), [`overlap`](table_side::rhexis::overlap), [`paraxial_magnification`](table_side::rhexis::paraxial_magnification) |
//! | tunnel length over width | [`squareness`](table_side::wound::squareness) |
//!
//! | around them | |
//! |---|---|
//! | a quantity, its unit and its bounds | [`quantity`], as [`AxialLength::BOUNDS`](quantity::AxialLength::BOUNDS) |
//! | every constant, by field: digits as printed, source, mark | [`constant`] |
//! | citations, and how sure a number's origin is | [`Source`](source::Source), [`Mark`](source::Mark) |
//! | numbers read and written as decimal text | [`parse`](decimal::parse), [`fixed`](decimal::fixed) |
//! | a `Working` or constants of your own | [`working!`], [`constants!`] |
//!
//! # Symbols
//!
//! | symbol | meaning | unit |
//! |---|---|---|
//! | AL | axial length | mm |
//! | r, K | radius of the mean corneal power; that power at the index 1.3375, whatever the instrument's | mm, D |
//! | Kc | corneal power in a method's optics, at its own index | D |
//! | ACD | anterior chamber depth, from the front of the cornea | mm |
//! | A; SF; pACD; a0, a1, a2 | constants of a lens: A-constant; surgeon factor; personalised chamber depth; Haigis' | 1; mm; mm; mm, 1, 1 |
//! | ELP, d | lens position, behind the cornea | mm |
//! | n | index of aqueous and vitreous, 1.336 | 1 |
//! | V | vertex distance | mm |
//! | Rx, Rc | refraction at the spectacles, at the cornea | D |
//! | P | power of a lens in the eye | D |
//! | k, v, X | vergence at the cornea; arriving at the lens; needed there | D |
//! | S, C, A | sphere, cylinder, axis of a refraction | D, D, deg |
//! | M, J0, J45 | mean power and the two halves of the astigmatism | D |
//! | N, a | corneal astigmatism, steep less flat; steep meridian | D, deg |
//! | x, y | N cos 2a, N sin 2a | D |
//! | s, t | size and site of an incision | D, deg |
//! | m, p | meridian of a toric lens's mark; how far it is turned off, plus counter-clockwise | deg |
//! | P, P_gas, P_head | pressure in the eye; over the fluid; at the eye with nothing flowing | mmHg |
//! | h, rho, g | level or column; density; 9.80665 m/s2 | cm, kg/m3 |
//! | p_air, p_sat, V_max | pressure of the air; at which the fluid boils; ceiling on vacuum | Pa, Pa, mmHg |
//! | Q, dP, R | flow; pressure lost; resistance | mL/min, mmHg, mmHg min/mL |
//! | D, L, mu | bore and length of a tube; viscosity | mm, mm, mPa s |
//! | c, D, E | first cut, diameter and edge of a rhexis | mm |
//!
//! Lengths are in millimetres and powers in dioptres, hence `1000 n/d`. Axes follow ISO 8429, see [`astigmatism`].
//!
//! # Errors and bounds
//!
//! A [`quantity`] exists only within its bounds: its constructor answers [`Error::Outside`](error::Error::Outside),
//! with the value and the bounds, or [`Error::NotANumber`](error::Error::NotANumber). Bounds say what can be typed at all and
//! are wide; what is unusual is not asked here. A plain `f64`, which one formula hands to the next, is taken as it is.
//!
//! A formula that has no answer for good quantities gives [`Error::NoSolution`](error::Error::NoSolution), or `None` where it
//! does not apply, as an adjustment of an eye that is not long. [`Method::view`](lens::method::Method::view) says instead what
//! the method lacks ([`Lack`](lens::eye::Lack)), and its view what is against the answer
//! ([`Doubt`](lens::view::Doubt)).
//!
//! # Features
//!
//! `names` (default): what constants and bounds are called, and how they were printed. A device does without:
//! `default-features = false`.
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
