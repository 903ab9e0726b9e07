//! How sure a predicted refraction is, if every SD is right and no constant is biased.

use core::f64::consts::SQRT_2;

use crate::constant::certainty::{NORMAL_50, NORMAL_95};
use crate::lens::slopes::Gradient;
use crate::math::{erf, sqrt, square};

/// How far each thing that a prediction rests on scatters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// SD of the axial length, mm.
    pub al: f64,
    /// SD of the mean corneal power, D.
    pub k: f64,
    /// SD of the chamber depth, mm.
    pub acd: f64,
    /// SD of the lens position, mm.
    pub position: f64,
    /// What the label may be off by, D: as likely anywhere within it.
    pub label: f64,
    /// SD of the refraction afterwards, D.
    pub refraction: f64,
}

working! {
    /// A budget of variances, step by step.
    Budget "The budget of variances";
    al "v1" "D2" = "v1 = (dRx/dAL SD_AL)^2" [], "variance by the axial length", Norrby2008 Two;
    k "v2" "D2" = "v2 = (dRx/dK SD_K)^2" [], "variance by the corneal power", Norrby2008 Two;
    acd "v3" "D2" = "v3 = (dRx/dACD SD_ACD)^2" [], "variance by the chamber depth", Norrby2008 Two;
    position "v4" "D2" = "v4 = (dRx/dd SD_d)^2" [], "variance by the lens position", Norrby2008 Two;
    label "v5" "D2" = "v5 = (dRx/dP T)^2/3, T the label tolerance, any error within it as likely" [], "variance by the label", Norrby2008 Two;
    refraction "v6" "D2" = "v6 = SD_Rx^2" [], "variance by the refraction afterwards", Norrby2008 Two;
    sd "SD" "D" = "SD = sqrt(v1 + v2 + v3 + v4 + v5 + v6)" [], "SD of the whole", Norrby2008 Two;
    half_50 "h50" "D" = "h50 = 0.6744897502 SD" [NORMAL_50], "half of the eyes are within", Identity Two;
    half_95 "h95" "D" = "h95 = 1.95996398454 SD" [NORMAL_95], "95 of 100 eyes are within", Identity Two;
}

/// What each thing adds to the variance of a predicted refraction.
///
/// ```text
/// variance of Rx = sum over the inputs of (dRx/dinput SD)^2
/// ```
///
/// Inputs are taken as independent: the within-eye correlation of chamber depth and lens thickness is left out, and so is the
/// pupil. Method: Norrby 2008.
///
/// ```
/// use ocellus_core::lens::{certainty::*, slopes::{Chain, slopes}};
/// use ocellus_core::optics::thin_eye::ThinEye;
/// use ocellus_core::quantity::{LensPower, Vertex};
/// let chain = Chain { al: 1.0, kc: 1.0, ..Chain::NONE };
/// let slopes = slopes(&ThinEye::new(23.5, 43.5, 5.0), &chain, LensPower::from_d(21.0)?, Vertex::from_mm(12.0)?)?;
/// let scatter = Scatter { al: 0.02, k: 0.2, acd: 0.0, position: 0.25, label: 0.4, refraction: 0.3 };
/// let budget = budget(&slopes.gradient(), &scatter);
/// assert!(budget.sd > 0.4 && budget.sd < 0.6 && budget.position > budget.al);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn budget(slopes: &Gradient, scatter: &Scatter) -> Budget {
    let al = square(slopes.al * scatter.al);
    let k = square(slopes.k * scatter.k);
    let acd = square(slopes.acd * scatter.acd);
    let position = square(slopes.position * scatter.position);
    let label = square(slopes.lens * scatter.label) / 3.0;
    let refraction = square(scatter.refraction);
    let sd = sqrt(al + k + acd + position + label + refraction);
    let (half_50, half_95) = (NORMAL_50.get() * sd, NORMAL_95.get() * sd);
    Budget { al, k, acd, position, label, refraction, sd, half_50, half_95 }
}

/// The chance, in per cent, that what scatters normally about a place lies within so many dioptres of another, which is off
/// by so many.
///
/// ```text
/// 50 (erf((within - off)/(SD sqrt(2))) + erf((within + off)/(SD sqrt(2))))          where nothing scatters, 100 or 0
/// ```
///
/// ```
/// use ocellus_core::lens::certainty::chance;
/// assert!((chance(0.0, 0.5, 0.5) - 68.27).abs() < 0.005);
/// assert!((chance(1.0, 0.5, 0.5) - 15.73).abs() < 0.005);
/// ```
pub fn chance(off: f64, within: f64, sd: f64) -> f64 {
    if sd > 0.0 {
        let spread = sd * SQRT_2;
        50.0 * (erf((within - off) / spread) + erf((within + off) / spread))
    } else if off.abs() <= within {
        100.0
    } else {
        0.0
    }
}
