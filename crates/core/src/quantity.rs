//! Quantities: each a number in the unit the user typed, with its meaning in the type.
//!
//! A quantity is made only by its checked constructor, so one that exists lies in its [`crate::bounds`]. It keeps the
//! typed unit because turning millimetres into metres and back changes the last bit of many values.

use crate::bounds;
use crate::error::Error;

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident $make:ident $get:ident $bounds:ident $example:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// From a number in the unit of the name.
            ///
            /// # Errors
            #[doc = concat!("Outside [`bounds::", stringify!($bounds), "`], or not finite.")]
            ///
            /// ```
            #[doc = concat!("let q = ocellus_core::quantity::", stringify!($name), "::", stringify!($make), "(", $example, ")?;")]
            #[doc = concat!("assert_eq!(q.", stringify!($get), "(), ", $example, ");")]
            /// # Ok::<(), ocellus_core::error::Error>(())
            /// ```
            pub fn $make(value: f64) -> Result<Self, Error> {
                bounds::$bounds.check(value).map($name)
            }

            /// The number in the unit of the name.
            pub const fn $get(self) -> f64 {
                self.0
            }
        }

        impl crate::field::Quantity for $name {
            fn admitted(value: f64) -> Option<Self> {
                Some($name(value))
            }

            #[cfg(test)]
            fn is(kind: crate::field::Kind) -> bool {
                matches!(kind, crate::field::Kind::Number(_, bounds) if core::ptr::eq(bounds, &bounds::$bounds))
            }
        }
    )*};
}

quantities! {
    /// Axial length: cornea to retina along the line of sight, as the biometer gives it.
    AxialLength from_mm mm AXIAL_LENGTH "23.5";
    /// Power of one corneal meridian, or of their mean, at a stated keratometric index.
    CornealPower from_d d CORNEAL_POWER "43.25";
    /// Radius of the front of the cornea.
    CornealRadius from_mm mm CORNEAL_RADIUS "7.7";
    /// The index an instrument uses to print a radius as a power.
    KeratometricIndex new get KERATOMETRIC_INDEX "1.3375";
    /// Anterior chamber depth; whether from the front or the back of the cornea is said beside it.
    ChamberDepth from_mm mm CHAMBER_DEPTH "3.1";
    /// Thickness of the natural lens.
    LensThickness from_mm mm LENS_THICKNESS "4.6";
    /// Horizontal diameter of the cornea.
    WhiteToWhite from_mm mm WHITE_TO_WHITE "11.8";
    /// Central thickness of the cornea, in micrometres.
    CornealThickness from_um um CORNEAL_THICKNESS "541.0";
    /// Spherical refraction at the spectacle plane.
    Refraction from_d d REFRACTION "-0.25";
    /// Cylinder of a refraction, either sign.
    Cylinder from_d d CYLINDER "-1.25";
    /// Distance from spectacle lens to cornea.
    Vertex from_mm mm VERTEX "12.0";
    /// A meridian; 0 and 180 are the same one.
    Axis from_deg deg AXIS "95.0";
    /// A place on the limbus, seen from the front; unlike an axis, 0 and 180 are opposite sides.
    Site from_deg deg SITE "180.0";
    /// An hour of a clock on the limbus; from where it was read is said beside it.
    ClockHour new get CLOCK_HOUR "9.5";
    /// Standard deviation of the angle of a lens about the one planned.
    AlignmentScatter from_deg deg ALIGNMENT_SCATTER "5.3";
    /// The A-constant of one lens model and one kind of biometry.
    AConstant new get A_CONSTANT "118.9";
    /// Holladay 1's surgeon factor.
    SurgeonFactor from_mm mm SURGEON_FACTOR "1.73";
    /// Hoffer Q's personalised anterior chamber depth.
    Pacd from_mm mm PACD "5.49";
    /// Haigis' a0.
    HaigisA0 from_mm mm HAIGIS_A0 "1.4";
    /// Haigis' a1 or a2.
    HaigisSlope new get HAIGIS_SLOPE "0.4";
    /// Power of an intraocular lens, as labelled or exact.
    LensPower from_d d LENS_POWER "21.5";
    /// The step between powers on the labels of one lens model.
    LabelStep from_d d LABEL_STEP "0.5";
    /// Cylinder of an intraocular lens, a positive difference of its two meridians.
    LensCylinder from_d d LENS_CYLINDER "2.25";
    /// Diameter of an optic.
    OpticDiameter from_mm mm OPTIC "6.0";
    /// Overall length of a lens with its haptics.
    LensLength from_mm mm LENS_LENGTH "13.0";
    /// How far before the bag a lens in the sulcus sits.
    SulcusShift from_mm mm SULCUS_SHIFT "0.75";
    /// Change in corneal astigmatism made by an incision, flattening its own meridian.
    Flattening from_d d FLATTENING "0.3";
    /// Width of a wound or length of its tunnel.
    WoundLength from_mm mm WOUND "2.2";
    /// The straight first cut of a rhexis, from the centre outwards.
    Cut from_mm mm CUT "2.5";
    /// How far the tear runs before it is grasped again.
    Grasp from_mm mm GRASP "1.0";
    /// How far the centres of rhexis and optic lie apart.
    Decentration from_mm mm DECENTRATION "0.38";
    /// Depth of the capsule behind the front of the cornea, today.
    CapsuleDepth from_mm mm CAPSULE_DEPTH "3.3";
    /// A height in the theatre, above any one datum.
    Level from_cm cm LEVEL "90.0";
    /// Pressure of gas that pushes the fluid.
    GasPressure from_mmhg mmhg GAS_PRESSURE "0.0";
    /// A vacuum setting, counted down from the pressure of the air.
    Vacuum from_mmhg mmhg VACUUM "500.0";
    /// Density of the irrigating fluid.
    Density from_kg_m3 kg_m3 DENSITY "1000.0";
    /// Map height above sea level.
    Altitude from_m m ALTITUDE "1600.0";
    /// Pressure of the air measured where the operation is.
    StationPressure from_hpa hpa STATION_PRESSURE "834.0";
    /// Temperature of the fluid.
    Temperature from_c c TEMPERATURE "20.0";
    /// Position of a lens behind the cornea.
    LensPosition from_mm mm LENS_POSITION "5.2";
    /// Radius of a lens surface, positive where its centre lies behind it; 0 is a plane.
    LensRadius from_mm mm LENS_RADIUS "-14.5";
    /// Thickness of a lens at its centre.
    LensCentre from_mm mm LENS_CENTRE "0.9";
    /// Refractive index of a lens.
    LensIndex new get LENS_INDEX "1.47";
    /// Standard deviation of repeated lengths.
    ScatterLength from_mm mm SCATTER_LENGTH "0.02";
    /// Flow that a pump draws, or that leaks.
    Aspiration from_ml_min ml_min ASPIRATION "30.0";
    /// Resistance of a line: pressure lost for each unit of flow.
    Resistance from_mmhg_min_ml mmhg_min_ml RESISTANCE "0.2";
    /// Inner bore of a tip.
    TipBore from_mm mm TIP_BORE "0.7";
    /// Volume taken up for each unit of pressure.
    Compliance from_ul_mmhg ul_mmhg COMPLIANCE "0.09";
    /// Step of an integration.
    SurgeStep from_ms ms SURGE_STEP "1.0";
    /// Gauge of a needle.
    Gauge new get GAUGE "27.0";
    /// Inner bore of a tube.
    Bore from_mm mm BORE "0.21";
    /// Length of a tube.
    TubeLength from_mm mm TUBE_LENGTH "13.0";
    /// How many alike tubes lie side by side.
    Tubes new get TUBES "2.0";
    /// Flow through a tube.
    TubeFlow from_ml_min ml_min TUBE_FLOW "10.0";
    /// Pressure that drives a flow.
    Drive from_mmhg mmhg DRIVE "540.0";
    /// A volume of fluid.
    Volume from_ml ml VOLUME "0.2";
    /// Viscosity of a fluid.
    Viscosity from_mpa_s mpa_s VISCOSITY "1.0016";
    /// Inner bore of a syringe.
    SyringeBore from_mm mm SYRINGE_BORE "4.7";
    /// Friction of a plunger.
    Friction from_n n FRICTION "0.5";
    /// Diameter of an opening.
    Opening from_mm mm OPENING "0.5";
    /// Flow through a sharp opening over that of an ideal one.
    Discharge new get DISCHARGE "0.62";
    /// Standard deviation of repeated powers.
    ScatterPower from_d d SCATTER_POWER "0.2";
}
