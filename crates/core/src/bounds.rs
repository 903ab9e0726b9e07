//! Every accepted range, once: quantity, unit, least, most, why, source.
//!
//! These are the limits of what can be typed at all, kept wide. What is merely unusual is a caution, see [`crate::eye`].

use crate::error::{Code, Error};
use crate::source::Source;

/// An accepted range, both ends included.
#[derive(Debug, PartialEq)]
pub struct Bounds {
    /// Its unit as printed.
    pub unit: &'static str,
    /// The least value accepted.
    pub min: f64,
    /// The largest value accepted.
    pub max: f64,
    /// Why the range ends there.
    pub why: &'static str,
    /// Where that comes from.
    pub source: Source,
}

impl Bounds {
    /// The value itself when it lies in the range.
    ///
    /// # Errors
    /// [`Code::NotANumber`] for NaN and infinities, [`Code::OutOfRange`] otherwise.
    ///
    /// ```
    /// use ocellus_core::bounds::AXIAL_LENGTH;
    /// assert_eq!(AXIAL_LENGTH.check(23.5), Ok(23.5));
    /// assert!(AXIAL_LENGTH.check(235.0).is_err());
    /// assert!(AXIAL_LENGTH.check(f64::NAN).is_err());
    /// ```
    // not inlined: a device would carry a copy for each quantity
    #[inline(never)]
    pub fn check(&'static self, value: f64) -> Result<f64, Error> {
        if (self.min..=self.max).contains(&value) {
            return Ok(value);
        }
        let code = if value.is_finite() { Code::OutOfRange } else { Code::NotANumber };
        Err(Error { code, field: None, value: value.is_finite().then_some(value), bounds: Some(self) })
    }
}

macro_rules! bounds {
    ($($id:ident $name:literal $min:literal to $max:literal $unit:literal, $why:literal, $source:ident;)*) => {
        $(#[doc = concat!("Accepted range of ", $name, ".")]
        pub static $id: Bounds = Bounds {
            unit: $unit, min: $min as f64, max: $max as f64, why: $why, source: Source::$source,
        };)*

        /// Every range there is.
        pub static ALL: &[&Bounds] = &[$(&$id),*];
    };
}

bounds! {
    AXIAL_LENGTH "axial length" 12 to 40 "mm", "shorter and longer eyes are not met", Here;
    CORNEAL_POWER "corneal power" 25 to 65 "D", "a flatter or steeper cornea is not one these methods can use", Here;
    CORNEAL_RADIUS "corneal radius" 5.0 to 14.0 "mm", "the radii of corneal powers from 25 to 65 D", Here;
    KERATOMETRIC_INDEX "keratometric index" 1.30 to 1.36 "1", "instruments use 1.3315 to 1.3375", NoSource;
    CHAMBER_DEPTH "anterior chamber depth" 1.0 to 6.5 "mm", "beyond the eyes that are met", Here;
    LENS_THICKNESS "lens thickness" 1.5 to 8.0 "mm", "beyond the lenses that are met", Here;
    WHITE_TO_WHITE "corneal diameter, white to white" 7.0 to 16.0 "mm", "beyond the eyes that are met", Here;
    CORNEAL_THICKNESS "corneal thickness" 250 to 1000 "um", "beyond the corneas that are met; micrometres, not millimetres", Here;
    REFRACTION "refraction" -40 to 40 "D", "beyond spectacles that are made", Here;
    CYLINDER "refractive cylinder" -15 to 15 "D", "beyond spectacles that are made", Here;
    VERTEX "vertex distance" 0 to 25 "mm", "a spectacle lens sits 10 to 16 mm in front of the eye", NoSource;
    AXIS "axis" 0 to 180 "deg", "0 and 180 are the same meridian", Iso8429;
    SITE "incision site" 0 to 360 "deg", "0 at the observer's right, counter-clockwise", Iso8429;
    CLOCK_HOUR "clock hour" 0 to 12.9 "h", "hours of a clock, 12 at the top of that view", Here;
    ALIGNMENT_SCATTER "scatter of alignment" 0 to 10 "deg", "what is expected is reckoned for no more", Here;
    BACK_RADIUS "radius of the back of the cornea" 5.0 to 9.0 "mm", "backs have about 6.5 mm, fronts 7.7", Here;
    A_CONSTANT "A-constant" 100 to 130 "1", "constants of lenses that are made lie well inside", Here;
    SURGEON_FACTOR "surgeon factor" -10 to 10 "mm", "the surgeon factors of A-constants from 100 to 130", Here;
    PACD "pACD" -6 to 13 "mm", "the pACD of A-constants from 100 to 130", Here;
    HAIGIS_A0 "Haigis a0" -15 to 15 "mm", "beyond constants that are met", Here;
    HAIGIS_SLOPE "Haigis a1 or a2" -2 to 2 "1", "beyond constants that are met", Here;
    LENS_POWER "lens power" -30 to 70 "D", "beyond lenses that are made", Here;
    LABEL_STEP "label step" 0.05 to 2 "D", "labels go in steps of 0.25 to 1 D", NoSource;
    LENS_CYLINDER "lens cylinder" 0 to 20 "D", "beyond lenses that are made", Here;
    OPTIC "optic diameter" 3 to 9 "mm", "beyond lenses that are made", Here;
    LENS_LENGTH "overall length" 8 to 16 "mm", "beyond lenses that are made", Here;
    SULCUS_SHIFT "sulcus shift" 0 to 2 "mm", "the sulcus lies less than 2 mm before the bag", Here;
    FLATTENING "flattening by the incision" 0 to 5 "D", "beyond cataract incisions", Here;
    WOUND "wound width or tunnel length" 0.3 to 12 "mm", "from a side port to the widest section", Here;
    CUT "first cut of the rhexis" 0.5 to 5 "mm", "from the centre to at most the edge of a wide pupil", Here;
    GRASP "distance between grasps" 0.2 to 10 "mm", "a grasp a fifth of a millimetre apart at the least", Here;
    DECENTRATION "decentration" 0 to 3 "mm", "more is not a rhexis on an optic", Here;
    CAPSULE_DEPTH "depth of the capsule behind the cornea" 1.5 to 7 "mm", "from a flat chamber to one deepened by viscoelastic", Here;
    LEVEL "level" -300 to 400 "cm", "from the floor of a low room to its ceiling", Here;
    GAS_PRESSURE "gas pressure in the bottle" 0 to 300 "mmHg", "beyond machines that push the fluid", Here;
    VACUUM "vacuum setting" 0 to 760 "mmHg", "a vacuum cannot exceed one atmosphere", Here;
    DENSITY "density of the irrigating fluid" 900 to 1100 "kg/m3", "a watery solution", Here;
    ALTITUDE "altitude above sea level" -450 to 9000 "m", "from the lowest land to the highest, where the formula for the lower atmosphere holds", Iso2533;
    STATION_PRESSURE "station pressure" 300 to 1100 "hPa", "from the highest land to the highest weather", Here;
    TEMPERATURE "temperature of the fluid" 0.01 to 60 "C", "liquid water in a theatre", Iapws97;
    LENS_POSITION "lens position" 0.5 to 10 "mm", "behind the cornea and before the middle of the eye", Here;
    LENS_RADIUS "radius of a lens surface" -200 to 200 "mm", "0 is a plane; flatter than 200 mm is one", Here;
    LENS_CENTRE "thickness of a lens at its centre" 0.1 to 6 "mm", "from the thinnest made to a natural lens", Here;
    LENS_INDEX "refractive index of a lens" 1.34 to 1.70 "1", "above that of the fluid around it", Here;
    SCATTER_LENGTH "scatter of repeated lengths" 0 to 2 "mm", "more is not a measurement", Here;
    SCATTER_POWER "scatter of repeated powers" 0 to 10 "D", "more is not a measurement", Here;
    ASPIRATION "flow of an aspiration" 0 to 200 "mL/min", "beyond pumps that are made", Here;
    RESISTANCE "resistance of a line" 0.001 to 100 "mmHg min/mL", "from a wide tube to a fine needle", Here;
    TIP_BORE "bore of a tip" 0.1 to 3 "mm", "beyond tips that are made", Here;
    COMPLIANCE "compliance" 0.001 to 100 "uL/mmHg", "from a stiff line to a soft eye", Here;
    SURGE_STEP "step of an integration" 0.005 to 20 "ms", "shorter steps make long runs", Here;
    GAUGE "gauge of a needle" 18 to 31 "G", "the gauges in the table of needles", Here;
    BORE "bore of a tube" 0.05 to 20 "mm", "from the finest needle to a wide tube", Here;
    TUBE_LENGTH "length of a tube" 0.5 to 10000 "mm", "from an opening to a long line", Here;
    TUBES "number of tubes" 1 to 20 "1", "more are not met", Here;
    TUBE_FLOW "flow through a tube" 0.01 to 1000 "mL/min", "from a drop to a jet", Here;
    DRIVE "driving pressure" 0.1 to 10000 "mmHg", "from a low bottle to a hard push", Here;
    VOLUME "volume" 0.01 to 2000 "mL", "from an injection to a bag of fluid", Here;
    VISCOSITY "viscosity" 0.1 to 100000 "mPa s", "from warm water to viscoelastics at rest", Here;
    SYRINGE_BORE "bore of a syringe" 2 to 40 "mm", "beyond syringes that are made", Here;
    FRICTION "friction of a plunger" 0 to 50 "N", "more is not pushed by hand", Here;
    OPENING "diameter of an opening" 0.1 to 10 "mm", "from a pinhole to a wide wound", Here;
    DISCHARGE "discharge coefficient" 0.4 to 1 "1", "sharp openings have 0.60 to 0.65, rounded ones up to 1", NoSource;
}
