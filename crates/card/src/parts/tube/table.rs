//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::id::PartId;
use crate::layout::Led;
use crate::part::{PartRows, Stands};
use ocellus_core::fluids::{opening, plunger, tube, viscosity};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(19);

pub(crate) const KEY: &str = "tube";
pub(crate) const HEADING: &str = "Tubes, needles, openings";

entries! {
    ["tube"]
    GAUGE "needle_gauge" "gauge" (Gauge 0) "gauge of the needle";
    BORE "bore_mm" "bore" (Bore 3) "inner bore of the tube";
    TUBE_LENGTH "tube_length_mm" "tubelength" (TubeLength 1) "length of the tube";
    SIDE_BY_SIDE "tubes_side_by_side" "sidebyside" (Tubes 0) = 1 "such tubes side by side";
    BORE_2 "bore_2_mm" "bore2" (Bore 3) "inner bore of a tube in series";
    TUBE_LENGTH_2 "tube_length_2_mm" "tubelength2" (TubeLength 1) "length of that tube";
    TUBE_FLOW "tube_flow_ml_min" "flow" (TubeFlow 2) "flow through all of it";
    DRIVE "driving_pressure_mmhg" "drive" (Drive 1) "pressure that drives the flow";
    VOLUME "volume_ml" "volume" (Volume 2) "volume to go through";
    VISCOSITY_FROM "viscosity_from" "viscfrom" (ViscosityFrom) = 0 "viscosity of the fluid taken from";
    VISCOSITY "viscosity_mpa_s" "viscosity" (Viscosity 3) "viscosity of the fluid";
    SYRINGE_BORE "syringe_bore_mm" "syringe" (SyringeBore 2) "inner bore of the syringe";
    FRICTION "plunger_friction_n" "friction" (Friction 2) = 0 "friction of its plunger";
    OPENING "opening_mm" "opening" (Opening 2) "diameter of an opening";
    DISCHARGE "discharge_coefficient" "cd" (Discharge 2) = 0.62 "discharge coefficient of that opening";
}

items! {
    BORE_USED "bore_used_mm" "mm" 3 plain "nominal bore of this gauge", Birmingham Two;
    VISCOSITY_USED "viscosity_used_mpa_s" "mPa s" 4 plain "viscosity of water there", IapwsViscosity Memory;
    FLOW_DRIVEN "flow_driven_ml_min" "mL/min" 2 plain "flow that this pressure drives", Here Chosen;
    VELOCITY "tube_velocity_m_s" "m/s" 2 plain "mean velocity", Identity Two;
    REYNOLDS "tube_reynolds" "1" 0 plain "Reynolds number", Identity Two;
    WALL_SHEAR "tube_wall_shear" "1/s" 0 plain "shear at the wall", Poiseuille Two;
    DROP_LAMINAR "tube_laminar_mmhg" "mmHg" 1 plain "lost along it", Poiseuille Two;
    DROP_KINETIC "tube_kinetic_mmhg" "mmHg" 1 plain "lost in entrance and jet", Here Chosen;
    DROP_SECOND "tube_second_mmhg" "mmHg" 1 plain "lost in the tube in series", Here Chosen;
    DROP "tube_drop_mmhg" "mmHg" 1 plain "pressure lost, calculated", Here Chosen;
    DROP_KPA "tube_drop_kpa" "kPa" 2 plain "the same", Sp811 Two;
    VOLUME_TIME "volume_time_s" "s" 1 plain "time for the volume", Identity Two;
    PLUNGER_FLUID "plunger_fluid_n" "N" 2 plain "force for the fluid", Here Chosen;
    PLUNGER "plunger_n" "N" 2 plain "force on the plunger, with friction", Here Chosen;
    OPENING_FLOW "opening_flow_ml_min" "mL/min" 1 plain "flow through the opening", NoSource Memory;
    NEEDLE_FLOW "needle_table_ml_min" "mL/min" 2 plain "flow in the table of needles", Identity Two;
    NEEDLE_GAUGE "needle_gauge_row" "G" 0 plain "gauge", Birmingham Two;
    NEEDLE_OUTER "needle_outer_mm" "mm" 3 plain "outer diameter, nominal", Birmingham Two;
    NEEDLE_BORE "needle_bore_mm" "mm" 3 plain "bore, nominal", Birmingham Two;
    NEEDLE_LEAST "needle_least_mm" "mm" 3 plain "least bore, regular wall", Iso9626 Memory;
    NEEDLE_THIN "needle_least_thin_mm" "mm" 3 plain "least bore, thin wall", Iso9626 Memory;
    NEEDLE_DROP "needle_drop_mmhg" "mmHg" 0 plain "lost, nominal bore", Here Chosen;
    NEEDLE_DROP_LEAST "needle_drop_least_mmhg" "mmHg" 0 plain "lost, least bore", Here Chosen;
}

cautions! {
    BORE_NOMINAL "bore_nominal" Caution "Enter the bore if you know it: the loss is calculated for the nominal one, and a gauge does not fix the bore. 27 G lines of several makers lost 16 to 50 mmHg at one flow.", NeedleLines Read;
    JET "jet" Caution "Aim away from the capsule: a jet at or behind it can tear it. These are bench figures only.", NoSource CommonPractice;
    ZERO_SHEAR "zero_shear" Refuse "Enter the viscosity at the shear at the wall, which is shown once a flow is entered: a viscosity at rest says nothing about a needle, where viscoelastics thin enormously.", Poiseuille Two;
    BORE_ENTERED "bore_entered" Note "The bore entered is used, not the nominal one of the gauge.", Here Chosen;
    TURBULENT "turbulent" Caution "Expect more pressure lost than calculated: the Reynolds number is above 2300, and the flow is not laminar.", NoSource CommonPractice;
    TUBE_SHORT "tube_short" Caution "Take the loss as rough: the flow is still developing over half of the tube or more.", NoSource CommonPractice;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    stands: Stands::Alone,
    first: &[cautions::BORE_NOMINAL, cautions::JET],
    led: &[Led {
        leader: items::NEEDLE_GAUGE,
        heading: text!(
            "Needle tubing, mm: outer and nominal bore; least bore of a regular and of a thin wall (ISO 9626); mmHg lost by a \
             needle of this length at that flow in the nominal and in the least bore, where laminar:"
        ),
        of: text!("gauge"),
        cells: &[
            (items::NEEDLE_OUTER, text!("outer")),
            (items::NEEDLE_BORE, text!("nominal")),
            (items::NEEDLE_LEAST, text!("least")),
            (items::NEEDLE_THIN, text!("thin")),
            (items::NEEDLE_DROP, text!("lost")),
            (items::NEEDLE_DROP_LEAST, text!("in least")),
        ],
        chosen: None,
    }],
    tables: &[
        viscosity::Working::table(),
        tube::Working::table(),
        plunger::Working::table(),
        opening::Working::table(),
    ],
    prose: &[viscosity::Working::prose(), tube::Working::prose(), plunger::Working::prose(), opening::Working::prose()],
    subjects: &[("tube", "Tubes, needles, openings")],
    ..part_rows!()
};
