//! What goes in, what comes out, what to know first.

use super::choices::*;
use crate::entry::misread;
use crate::id::PartId;
use crate::layout::Led;
use crate::part::{PartRows, Stands};
use ocellus_core::fluids::{air, ceiling, column, density, vapour};
use ocellus_core::quantity::*;
use ocellus_text::text;

/// The number of this part.
pub(crate) const PART: PartId = PartId(16);

pub(crate) const KEY: &str = "pressure";
pub(crate) const HEADING: &str = "Pressure and vacuum";

entries! {
    ["pressure"]
    OPEN_LEVEL "open_level_cm" "open" (Level 1) "drip chamber or vent level";
    EYE_LEVEL "eye_level_cm" "eyelevel" (Level 1) "level of the eye, same datum";
    GAS_PRESSURE "gas_pressure_mmhg" "gas" (GasPressure 1) = 0 "gas pressure over the fluid";
    SET_PRESSURE "set_pressure_mmhg" "setpressure" (GasPressure 1) "irrigating pressure set on a machine";
    ASSUMED_LEVEL "assumed_eye_level_cm" "assumed" (Level 1) "eye level that the machine assumes";
    WANTED_PRESSURE "wanted_pressure_mmhg" "wanted" (GasPressure 1) "pressure wanted at the eye, no flow";
    DENSITY_FROM "density_from" "densityfrom" (FluidFrom) = 0 "density of the fluid taken from";
    DENSITY "density_kg_m3" "density" (Density 1) = 1000 "density of the irrigating fluid";
    ALTITUDE "altitude_m" "altitude" (Altitude 0) "map height of the theatre";
    STATION_PRESSURE "station_pressure_hpa" "station" (StationPressure 1) "air pressure measured in the theatre";
    TEMPERATURE "fluid_temperature_c" "temp" (Temperature 1) = 20 "temperature of the fluid";
    PUMP_LEVEL "pump_level_cm" "pump" (Level 1) "level of the pump, same datum";
    VACUUM_NUCLEUS "vacuum_nucleus_mmhg" "nucleus" (Vacuum 0) "vacuum for the nucleus";
    VACUUM_CORTEX "vacuum_cortex_mmhg" "cortex" (Vacuum 0) "vacuum for the cortex";
    VACUUM_VISCOELASTIC "vacuum_viscoelastic_mmhg" "ovd" (Vacuum 0) "vacuum for removing viscoelastic";
}

items! {
    HEAD "head_mmhg" "mmHg" 1 plain "pressure at the eye, no flow", Identity Two;
    HEAD_KPA "head_kpa" "kPa" 2 plain "the same", Sp811 Two;
    HEAD_CMH2O "head_cmh2o" "cmH2O" 1 plain "the same", Sp811 Two;
    PER_CM "head_per_cm_mmhg" "mmHg" 2 plain "1 cm of wrong eye level makes", Identity Two;
    AIR "air_pressure_mmhg" "mmHg" 1 plain "pressure of the air", Iso2533 Two;
    STATION_AIR "station_air_mmhg" "mmHg" 1 plain "pressure of the air, measured", Entered Entered;
    VAPOUR "vapour_pressure_mmhg" "mmHg" 1 plain "pressure at which the fluid boils", Iapws97 Two;
    CEILING "vacuum_ceiling_mmhg" "mmHg" 1 plain "ceiling on vacuum", Iso2533 Two;
    CEILING_KPA "vacuum_ceiling_kpa" "kPa" 2 plain "the same", Sp811 Two;
    MARGIN_NUCLEUS "nucleus_margin_mmhg" "mmHg" 1 signed "margin below the ceiling", Identity Two;
    MARGIN_CORTEX "cortex_margin_mmhg" "mmHg" 1 signed "margin below the ceiling", Identity Two;
    MARGIN_VISCOELASTIC "viscoelastic_margin_mmhg" "mmHg" 1 signed "margin below the ceiling", Identity Two;
    DENSITY_USED "density_used_kg_m3" "kg/m3" 2 plain "density of water there", Tanaka2001 Two;
    SET_COLUMN "set_column_cm" "cm" 1 plain "open column of the same pressure", Identity Two;
    LEVEL_WANTED "open_level_wanted_cm" "cm" 1 plain "open level for the pressure wanted", Identity Two;
    SETTING_WANTED "setting_wanted_mmhg" "mmHg" 1 plain "setting for the pressure wanted", Identity Two;
    BOTTLE "bottle_cm" "cm" 1 plain "open level", Here Chosen;
    BOTTLE_HEAD "bottle_head_mmhg" "mmHg" 1 plain "pressure at the eye", Identity Two;
    BOTTLE_HIGHER "bottle_eye_higher_mmhg" "mmHg" 1 plain "with the eye 5 cm higher", Here Chosen;
    BOTTLE_LOWER "bottle_eye_lower_mmhg" "mmHg" 1 plain "with the eye 5 cm lower", Here Chosen;
    AIR_HEIGHT "air_height_m" "m" 0 plain "map height with such air", Iso2533 Two;
    STATION_LESS "station_less_mmhg" "mmHg" 1 signed "measured less that of the altitude", Identity Two;
    MAGNUS "vapour_magnus_mmhg" "mmHg" 1 plain "the same by Magnus' formula", Wmo8 Two;
    MAGNUS_LESS "vapour_magnus_less_mmhg" "mmHg" 3 signed "Magnus less IAPWS", Identity Two;
    CEILING_CMH2O "vacuum_ceiling_cmh2o" "cmH2O" 1 plain "the same", Sp811 Two;
    SIPHON "siphon_mmhg" "mmHg" 1 signed "added at the tip by the level", Identity Two;
    VACUUM_SET "vacuum_set_mmhg" "mmHg" 0 plain "vacuum set", Entered Entered;
    SET_KPA "vacuum_set_kpa" "kPa" 2 plain "the same", Sp811 Two;
    SET_CMH2O "vacuum_set_cmh2o" "cmH2O" 1 plain "the same", Sp811 Two;
    REACHED_PUMP "vacuum_at_pump_mmhg" "mmHg" 1 plain "reached at the pump", Identity Two;
    REACHED_TIP "vacuum_at_tip_mmhg" "mmHg" 1 plain "reached at the tip", Identity Two;
}

cautions! {
    HEAD_HIGH "head_high" Caution "Lower the pressure: above 80 mmHg at the eye there is a risk to the optic nerve. Living eyes reached 69 and 85 mmHg at 90 and 110 cm (J Refract Surg 2014;30:534-540).", NoSource CommonPractice;
    HEAD_NEGATIVE "head_negative" Caution "Check the levels: the eye is above the open level, and the column pulls.", Identity Two;
    HEAD_STATIC "head_static" Note "With nothing flowing, from the level open to air (drip chamber or vent tip, not always the fluid level). A flowing chamber has less.", Stoppered1990 Read;
    NO_AIR "no_air" Note "Enter the altitude or the station pressure: without one of them no ceiling on vacuum is given.", Here Chosen;
    STATION_BEATS_ALTITUDE "station_beats_altitude" Note "The measured station pressure is used, not the altitude.", Here Chosen;
    VACUUM_UNREACHABLE "vacuum_unreachable" Caution "Do not compensate with bottle or setting: this vacuum cannot be reached here, since the fluid boils first.", Iso2533 Two;
    CEILING_IDEAL "ceiling_ideal" Note "Expect a lower ceiling: dissolved gas comes out earlier.", NoSource CommonPractice;
    STATION_FAR "station_far" Caution "Check the measured pressure: hPa or mmHg, reduced to the sea, the right altitude? It is more than 40 mmHg from that of the altitude, more than weather makes.", NoSource CommonPractice;
    LEVEL_ASSUMED "level_assumed" Caution "Read the pressure at the eye, which is not the one that is set: the eye does not lie where the machine assumes it.", Identity Two;
}

sign_offs! {}

pub(crate) const ROWS: PartRows = PartRows {
    stands: Stands::Alone,
    led: &[
        Led {
            leader: items::BOTTLE,
            heading: text!("Pressure at the eye, mmHg, nothing flowing, with the column open at other levels:"),
            of: text!("open at"),
            cells: &[
                (items::BOTTLE_HEAD, text!("eye as entered")),
                (items::BOTTLE_HIGHER, text!("eye 5 cm higher")),
                (items::BOTTLE_LOWER, text!("eye 5 cm lower")),
            ],
            chosen: None,
        },
        Led {
            leader: items::VACUUM_SET,
            heading: text!("Each vacuum set, in other units, and what of it is reached, mmHg, nothing flowing:"),
            of: text!("set"),
            cells: &[
                (items::SET_KPA, text!("kPa")),
                (items::SET_CMH2O, text!("cmH2O")),
                (items::REACHED_PUMP, text!("at the pump")),
                (items::REACHED_TIP, text!("at the tip")),
            ],
            chosen: None,
        },
    ],
    short_entries: &[
        entries::OPEN_LEVEL.id(),
        entries::SET_PRESSURE.id(),
        entries::VACUUM_NUCLEUS.id(),
        entries::VACUUM_CORTEX.id(),
        entries::VACUUM_VISCOELASTIC.id(),
    ],
    short_items: &[items::HEAD, items::CEILING],
    misreads: &[misread(entries::ALTITUDE.id(), 9000.0, 30000.0, text!("feet; this entry is in metres"))],
    tables: &[
        column::Working::table(),
        column::Set::table(),
        density::Working::table(),
        air::Working::table(),
        air::Height::table(),
        vapour::Working::table(),
        ceiling::Working::table(),
    ],
    prose: &[
        column::Working::prose(),
        column::Set::prose(),
        density::Working::prose(),
        air::Working::prose(),
        air::Height::prose(),
        vapour::Working::prose(),
        ceiling::Working::prose(),
    ],
    subjects: &[("head", "Pressure of the column"), ("ceiling", "Ceiling on vacuum")],
    ends: &[cautions::HEAD_NEGATIVE],
    swept: &[(items::HEAD, text!("no flow"))],
    ..part_rows!()
};
