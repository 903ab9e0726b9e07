//! How far a predicted refraction moves with each thing it rests on: exact partial derivatives, by the chain rule.

use crate::constant::optics::{INDEX_1_3375, N};
use crate::error::Error;
use crate::math::square;
use crate::optics::thin_eye::ThinEye;
use crate::quantity::{LensPower, Vertex};

/// How a method's three numbers move with what was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// Axial length in the optics, per axial length measured.
    pub al: f64,
    /// Corneal power in the optics, per keratometric power at 1.3375; for Double-K that after the laser.
    pub kc: f64,
    /// Lens position per axial length measured.
    pub elp_al: f64,
    /// Lens position per keratometric power, mm/D.
    pub elp_k: f64,
    /// Lens position per chamber depth.
    pub elp_acd: f64,
    /// Lens position per unit of the method's own lens constant, mm.
    pub constant: f64,
    /// Lens position per keratometric power before a laser, mm/D: only Double-K knows it.
    pub elp_k_before: f64,
}

impl Chain {
    /// Nothing moves.
    pub const NONE: Chain =
        Chain { al: 0.0, kc: 0.0, elp_al: 0.0, elp_k: 0.0, elp_acd: 0.0, constant: 0.0, elp_k_before: 0.0 };

    /// The same for a length of which only a part is carried on.
    ///
    /// ```
    /// use ocellus_core::lens::slopes::Chain;
    /// assert_eq!(Chain { al: 1.0, ..Chain::NONE }.of_length(0.8).al, 0.8);
    /// ```
    pub fn of_length(self, slope: f64) -> Chain {
        Chain { al: self.al * slope, elp_al: self.elp_al * slope, ..self }
    }
}

/// `dr/dK = -r/K = -r^2/337.5`, mm/D.
pub(super) fn radius_per_k(r: f64) -> f64 {
    -square(r) / (1000.0 * (INDEX_1_3375.get() - 1.0))
}

working! {
    /// The slopes of a predicted refraction, step by step.
    Slopes "How the refraction moves";
    power "P" "D" = "the lens chosen, or the exact power for the target" [], "mean power of the lens", Entered Entered;
    al_chain "dAL'/dAL" "1" = "SRK/T, T2 1 - 0.02029; Shammas-PL 1 - 0.1; else 1; times the slope of an adjustment for long eyes" [],
        "axial length in the optics, per measured", Identity Two;
    kc_chain "dKc/dK" "1" = "Kc/K; Shammas-PL 1.14 or 1.0457; Haigis-L 5.1625 r^2/337.5" [], "corneal power in the optics, per K", Identity Two;
    elp_al "dd/dAL" "1" = "the method's lens position, derived by its axial length" [], "lens position per axial length", Identity Two;
    elp_k "dd/dK" "mm/D" = "the method's lens position, derived by its K" [], "lens position per K", Identity Two;
    elp_acd "dd/dACD" "1" = "Haigis' a1; else 0" [], "lens position per chamber depth", Identity Two;
    t "t" "1" = "t = 1000*1.336/(d X + 1000*1.336), X = 1000*1.336/(AL' - d) - P" [N], "from lens to cornea", Identity Two;
    b "B" "D/mm" = "B = 1000*1.336/(AL' - d)^2" [N], "vergence behind the lens per mm", Identity Two;
    g "g" "1" = "g = 1/(1 + V Rc/1000)^2" [], "from cornea to spectacles", Identity Two;
    lens "dRx/dP" "1" = "dRx/dP = -g c t^2, c as in the optics: 1; Shammas-PL 1.0125" [], "refraction per dioptre of lens", Identity Two;
    position "dRx/dd" "D/mm" = "dRx/dd = g c (t^2 B - (t X)^2/(1000*1.336))" [N], "refraction per mm of lens position", Identity Two;
    al "dRx/dAL" "D/mm" = "dRx/dAL = -g c t^2 B dAL'/dAL + dRx/dd dd/dAL" [], "refraction per mm of axial length", Identity Two;
    k "dRx/dK" "1" = "dRx/dK = -g dKc/dK + dRx/dd dd/dK" [], "refraction per dioptre of K", Identity Two;
    acd "dRx/dACD" "D/mm" = "dRx/dACD = dRx/dd dd/dACD" [], "refraction per mm of chamber depth", Identity Two;
}

/// How a predicted refraction moves with each thing it rests on: what a budget needs of [`Slopes`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gradient {
    /// Per millimetre of axial length, D/mm.
    pub al: f64,
    /// Per dioptre of mean keratometric power.
    pub k: f64,
    /// Per millimetre of chamber depth, D/mm.
    pub acd: f64,
    /// Per millimetre of lens position, D/mm.
    pub position: f64,
    /// Per dioptre of lens.
    pub lens: f64,
}

impl Slopes {
    /// Of the steps those that a budget needs.
    pub fn gradient(&self) -> Gradient {
        let Slopes { al, k, acd, position, lens, .. } = *self;
        Gradient { al, k, acd, position, lens }
    }
}

/// The slopes of the refraction that a lens leaves.
///
/// ```text
/// Rx = Rc/(1 + V Rc/1000)      Rc = c S - Kc      S = t X      t = 1000 n/(d X + 1000 n)      X = 1000 n/(AL' - d) - P
/// dRx/dP  = -g c t^2                     g = 1/(1 + V Rc/1000)^2
/// dRx/dd  =  g c (t^2 B - S^2/(1000 n))  B = 1000 n/(AL' - d)^2
/// dRx/dAL = -g c t^2 B dAL'/dAL + dRx/dd dd/dAL          and so for K and ACD
/// ```
///
/// # Errors
/// As [`ThinEye::refraction`].
///
/// ```
/// use ocellus_core::{lens::slopes, optics::thin_eye::ThinEye, quantity::*};
/// let chain = slopes::Chain { al: 1.0, kc: 1.0, ..slopes::Chain::NONE };
/// let (eye, lens) = (ThinEye::new(23.5, 43.5, 5.0), LensPower::from_d(21.0)?);
/// let slopes = slopes::slopes(&eye, &chain, lens, Vertex::from_mm(12.0)?)?;
/// assert!(slopes.al < -2.0 && slopes.position > 1.0 && slopes.lens < -0.6);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn slopes(eye: &ThinEye, chain: &Chain, lens: LensPower, vertex: Vertex) -> Result<Slopes, Error> {
    let left = eye.refraction(lens, vertex)?;
    let n = 1000.0 * N.get();
    let t = n / (eye.elp * left.x + n);
    let b = n / square(eye.al - eye.elp);
    let g = 1.0 / square(1.0 + vertex.mm() * left.rc / 1000.0);
    let per_x = g * eye.divisor * square(t);
    let position = per_x * b - g * eye.divisor * square(t * left.x) / n;
    Ok(Slopes {
        power: lens.d(),
        al_chain: chain.al,
        kc_chain: chain.kc,
        elp_al: chain.elp_al,
        elp_k: chain.elp_k,
        elp_acd: chain.elp_acd,
        t,
        b,
        g,
        lens: -per_x,
        position,
        al: position * chain.elp_al - per_x * b * chain.al,
        k: position * chain.elp_k - g * chain.kc,
        acd: position * chain.elp_acd,
    })
}
