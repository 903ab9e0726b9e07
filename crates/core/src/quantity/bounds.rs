//! Every quantity with the bounds of what is accepted, and the units of all.

use crate::bounds::Bounds;
use crate::error::Error;
use crate::value::{Range, Value};

/// `Name constructor accessor least to most "unit" "name" "an example", "why it ends there", Source;`
macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident $make:ident $get:ident $min:literal to $max:literal $unit:literal $what:literal $example:literal, $why:literal, $source:ident;)*) => {$(
        $(#[$doc])*
        #[doc = concat!("\nAccepted: ", stringify!($min), " to ", stringify!($max), ", unit ", $unit, " (", $why, ").")]
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// What is accepted.
            pub const BOUNDS: &'static Bounds = {
                static BOUNDS: Bounds = Bounds {
                    #[cfg(feature = "names")]
                    name: $what,
                    unit: $unit, min: $min as f64, max: $max as f64, why: ocellus_text::text!($why),
                    #[cfg(feature = "names")]
                    source: crate::source::Source::$source,
                };
                &BOUNDS
            };

            /// From a number in the unit of the name.
            ///
            /// # Errors
            #[doc = concat!("Outside [`", stringify!($name), "::BOUNDS`], or not finite.")]
            ///
            /// ```
            #[doc = concat!("let q = ocellus_core::quantity::", stringify!($name), "::", stringify!($make), "(", $example, ")?;")]
            #[doc = concat!("assert_eq!(q.", stringify!($get), "(), ", $example, ");")]
            /// # Ok::<(), ocellus_core::error::Error>(())
            /// ```
            pub fn $make(value: f64) -> Result<Self, Error> {
                Self::BOUNDS.check(value).map($name)
            }

            /// The number in the unit of the name.
            pub const fn $get(self) -> f64 {
                self.0
            }
        }

        impl Value for $name {
            const RANGE: Range = Range::Number(Self::BOUNDS);

            fn admitted(number: f64) -> Option<Self> {
                Some($name(number))
            }
        }
    )*

        /// The bounds of every quantity there is.
        pub const BOUNDS: &[&Bounds] = &[$($name::BOUNDS),*];
    };
}

quantities! {
    /// Axial length: cornea to retina along the line of sight, as the biometer gives it.
    AxialLength from_mm mm 12 to 40 "mm" "axial length" "23.5", "shorter and longer eyes are not met", Here;
    /// Power of one corneal meridian, or of their mean, at a stated keratometric index.
    CornealPower from_d d 25 to 65 "D" "corneal power" "43.25", "a flatter or steeper cornea is not one these methods can use", Here;
    /// Radius of the front of the cornea.
    CornealRadius from_mm mm 5.0 to 14.0 "mm" "corneal radius" "7.7", "the radii of corneal powers from 25 to 65 D", Here;
    /// Radius of the back of the cornea.
    BackRadius from_mm mm 5.0 to 9.0 "mm" "radius of the back of the cornea" "6.5", "backs have about 6.5 mm, fronts 7.7", Here;
    /// The index an instrument uses to print a radius as a power.
    KeratometricIndex new get 1.30 to 1.36 "1" "keratometric index" "1.3375", "instruments use 1.3315 to 1.3375", NoSource;
    /// Anterior chamber depth; whether from the front or the back of the cornea is said beside it.
    ChamberDepth from_mm mm 1.0 to 6.5 "mm" "anterior chamber depth" "3.1", "beyond the eyes that are met", Here;
    /// Thickness of the natural lens.
    LensThickness from_mm mm 1.5 to 8.0 "mm" "lens thickness" "4.6", "beyond the lenses that are met", Here;
    /// Horizontal diameter of the cornea.
    WhiteToWhite from_mm mm 7.0 to 16.0 "mm" "corneal diameter, white to white" "11.8", "beyond the eyes that are met", Here;
    /// Central thickness of the cornea, in micrometres.
    CornealThickness from_um um 250 to 1000 "um" "corneal thickness" "541.0", "beyond the corneas that are met; micrometres, not millimetres", Here;
    /// Spherical refraction at the spectacle plane.
    Refraction from_d d -40 to 40 "D" "refraction" "-0.25", "beyond spectacles that are made", Here;
    /// Cylinder of a refraction, either sign.
    Cylinder from_d d -15 to 15 "D" "refractive cylinder" "-1.25", "beyond spectacles that are made", Here;
    /// Distance from spectacle lens to cornea.
    Vertex from_mm mm 0 to 25 "mm" "vertex distance" "12.0", "a spectacle lens sits 10 to 16 mm in front of the eye", NoSource;
    /// A meridian; 0 and 180 are the same one.
    Axis from_deg deg 0 to 180 "deg" "axis" "95.0", "0 and 180 are the same meridian", Iso8429;
    /// A place on the limbus, seen from the front; unlike an axis, 0 and 180 are opposite sides.
    Site from_deg deg 0 to 360 "deg" "incision site" "180.0", "0 at the observer's right, counter-clockwise", Iso8429;
    /// An hour of a clock on the limbus; from where it was read is said beside it.
    ClockHour new get 0 to 12.9 "h" "clock hour" "9.5", "hours of a clock, 12 at the top of that view", Here;
    /// Standard deviation of the angle of a lens about the one planned.
    AlignmentScatter from_deg deg 0 to 10 "deg" "scatter of alignment" "5.3", "the expected residual is computed for no more", Here;
    /// The A-constant of one lens model and one kind of biometry.
    AConstant new get 100 to 130 "1" "A-constant" "118.9", "constants of lenses that are made lie well inside", Here;
    /// Holladay 1's surgeon factor.
    SurgeonFactor from_mm mm -10 to 10 "mm" "surgeon factor" "1.73", "the surgeon factors of A-constants from 100 to 130", Here;
    /// Hoffer Q's personalised anterior chamber depth.
    Pacd from_mm mm -6 to 13 "mm" "pACD" "5.49", "the pACD of A-constants from 100 to 130", Here;
    /// Haigis' a0.
    HaigisA0 from_mm mm -15 to 15 "mm" "Haigis a0" "1.4", "beyond constants that are met", Here;
    /// Haigis' a1 or a2.
    HaigisSlope new get -2 to 2 "1" "Haigis a1 or a2" "0.4", "beyond constants that are met", Here;
    /// Power of an intraocular lens, as labelled or exact.
    LensPower from_d d -30 to 70 "D" "lens power" "21.5", "beyond lenses that are made", Here;
    /// The step between powers on the labels of one lens model.
    LabelStep from_d d 0.05 to 2 "D" "label step" "0.5", "labels go in steps of 0.25 to 1 D", NoSource;
    /// Cylinder of an intraocular lens, a positive difference of its two meridians.
    LensCylinder from_d d 0 to 20 "D" "lens cylinder" "2.25", "beyond lenses that are made", Here;
    /// Diameter of an optic.
    OpticDiameter from_mm mm 3 to 9 "mm" "optic diameter" "6.0", "beyond lenses that are made", Here;
    /// Overall length of a lens with its haptics.
    LensLength from_mm mm 8 to 16 "mm" "overall length" "13.0", "beyond lenses that are made", Here;
    /// How far before the bag a lens in the sulcus sits.
    SulcusShift from_mm mm 0 to 2 "mm" "sulcus shift" "0.75", "the sulcus lies less than 2 mm before the bag", Here;
    /// Change in corneal astigmatism made by an incision, flattening its own meridian.
    Flattening from_d d 0 to 5 "D" "flattening by the incision" "0.3", "beyond cataract incisions", Here;
    /// Width of a wound or length of its tunnel.
    WoundLength from_mm mm 0.3 to 12 "mm" "wound width or tunnel length" "2.2", "from a side port to the widest section", Here;
    /// The straight first cut of a rhexis, from the centre outwards.
    Cut from_mm mm 0.5 to 5 "mm" "first cut of the rhexis" "2.5", "from the centre to at most the edge of a wide pupil", Here;
    /// How far the tear runs before it is grasped again.
    Grasp from_mm mm 0.2 to 10 "mm" "distance between grasps" "1.0", "a grasp a fifth of a millimetre apart at the least", Here;
    /// How far the centres of rhexis and optic lie apart.
    Decentration from_mm mm 0 to 3 "mm" "decentration" "0.38", "more is not a rhexis on an optic", Here;
    /// Depth of the capsule behind the front of the cornea, today.
    CapsuleDepth from_mm mm 1.5 to 7 "mm" "depth of the capsule behind the cornea" "3.3", "from a flat chamber to one deepened by viscoelastic", Here;
    /// A height in the theatre, above any one datum.
    Level from_cm cm -300 to 400 "cm" "level" "90.0", "from the floor of a low room to its ceiling", Here;
    /// Pressure of gas that pushes the fluid.
    GasPressure from_mmhg mmhg 0 to 300 "mmHg" "gas pressure in the bottle" "0.0", "beyond machines that push the fluid", Here;
    /// A vacuum setting, counted down from the pressure of the air.
    Vacuum from_mmhg mmhg 0 to 760 "mmHg" "vacuum setting" "500.0", "a vacuum cannot exceed one atmosphere", Here;
    /// Density of the irrigating fluid.
    Density from_kg_m3 kg_m3 900 to 1100 "kg/m3" "density of the irrigating fluid" "1000.0", "a watery solution", Here;
    /// Map height above sea level.
    Altitude from_m m -450 to 9000 "m" "altitude above sea level" "1600.0", "from the lowest land to the highest, where the formula for the lower atmosphere holds", Iso2533;
    /// Pressure of the air measured where the operation is.
    StationPressure from_hpa hpa 300 to 1100 "hPa" "station pressure" "834.0", "from the highest land to the highest weather", Here;
    /// Temperature of the fluid.
    Temperature from_c c 0.01 to 60 "C" "temperature of the fluid" "20.0", "liquid water in a theatre", Iapws97;
    /// Position of a lens behind the cornea.
    LensPosition from_mm mm 0.5 to 10 "mm" "lens position" "5.2", "behind the cornea and before the middle of the eye", Here;
    /// Radius of a lens surface, positive where its centre lies behind it; 0 is a plane.
    LensRadius from_mm mm -200 to 200 "mm" "radius of a lens surface" "-14.5", "0 is a plane; flatter than 200 mm is one", Here;
    /// Thickness of a lens at its centre.
    LensCentre from_mm mm 0.1 to 6 "mm" "thickness of a lens at its centre" "0.9", "from the thinnest made to a natural lens", Here;
    /// Refractive index of a lens.
    LensIndex new get 1.34 to 1.70 "1" "refractive index of a lens" "1.47", "above that of the fluid around it", Here;
    /// Standard deviation of repeated lengths.
    ScatterLength from_mm mm 0 to 2 "mm" "scatter of repeated lengths" "0.02", "more is not a measurement", Here;
    /// Flow that a pump draws, or that leaks.
    Aspiration from_ml_min ml_min 0 to 200 "mL/min" "flow of an aspiration" "30.0", "beyond pumps that are made", Here;
    /// Resistance of a line: pressure lost for each unit of flow.
    Resistance from_mmhg_min_ml mmhg_min_ml 0.001 to 100 "mmHg min/mL" "resistance of a line" "0.2", "from a wide tube to a fine needle", Here;
    /// Inner bore of a tip.
    TipBore from_mm mm 0.1 to 3 "mm" "bore of a tip" "0.7", "beyond tips that are made", Here;
    /// Volume taken up for each unit of pressure.
    Compliance from_ul_mmhg ul_mmhg 0.001 to 100 "uL/mmHg" "compliance" "0.09", "from a stiff line to a soft eye", Here;
    /// Step of an integration.
    SurgeStep from_ms ms 0.005 to 20 "ms" "step of an integration" "1.0", "shorter steps make long runs", Here;
    /// Gauge of a needle.
    Gauge new get 18 to 31 "G" "gauge of a needle" "27.0", "the gauges in the table of needles", Here;
    /// Inner bore of a tube.
    Bore from_mm mm 0.05 to 20 "mm" "bore of a tube" "0.21", "from the finest needle to a wide tube", Here;
    /// Length of a tube.
    TubeLength from_mm mm 0.5 to 10000 "mm" "length of a tube" "13.0", "from an opening to a long line", Here;
    /// How many equal tubes lie side by side.
    Tubes new get 1 to 20 "1" "number of tubes" "2.0", "more are not met", Here;
    /// Flow through a tube.
    TubeFlow from_ml_min ml_min 0.01 to 1000 "mL/min" "flow through a tube" "10.0", "from a drop to a jet", Here;
    /// Pressure that drives a flow.
    Drive from_mmhg mmhg 0.1 to 10000 "mmHg" "driving pressure" "540.0", "from a low bottle to a hard push", Here;
    /// A volume of fluid.
    Volume from_ml ml 0.01 to 2000 "mL" "volume" "0.2", "from an injection to a bag of fluid", Here;
    /// Viscosity of a fluid.
    Viscosity from_mpa_s mpa_s 0.1 to 100000 "mPa s" "viscosity" "1.0016", "from warm water to viscoelastics at rest", Here;
    /// Inner bore of a syringe.
    SyringeBore from_mm mm 2 to 40 "mm" "bore of a syringe" "4.7", "beyond syringes that are made", Here;
    /// Friction of a plunger.
    Friction from_n n 0 to 50 "N" "friction of a plunger" "0.5", "more is not pushed by hand", Here;
    /// Diameter of an opening.
    Opening from_mm mm 0.1 to 10 "mm" "diameter of an opening" "0.5", "from a pinhole to a wide wound", Here;
    /// Flow through a sharp opening over that of an ideal one.
    Discharge new get 0.4 to 1 "1" "discharge coefficient" "0.62", "sharp openings have 0.60 to 0.65, rounded ones up to 1", NoSource;
    /// Standard deviation of repeated powers.
    ScatterPower from_d d 0 to 10 "D" "scatter of repeated powers" "0.2", "more is not a measurement", Here;
}

/// The units that a step of a working may have: of quantities, and of what is made from them.
pub(crate) const UNITS: &[&str] = &[
    "1",
    "mm",
    "mm2",
    "cm",
    "m",
    "D",
    "deg",
    "K",
    "K2",
    "Pa",
    "mmHg",
    "mmHg/cm",
    "kg/m3",
    "D2",
    "D/mm",
    "mm/D",
    "D4",
    "%",
    "C",
    "mPa s",
    "mL/min",
    "m/s",
    "1/s",
    "N",
    "mmHg min/mL",
    "mL/min/mmHg",
    "ms",
    "uL",
    "uJ",
];
