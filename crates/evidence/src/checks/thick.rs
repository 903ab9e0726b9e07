//! The lens itself, and eyes made of surfaces.

use ocellus_core::optics::surfaces::{GULLSTRAND, LE_GRAND, Surface, System, system};
use ocellus_core::optics::thick::{self, Working};
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{LensCentre, LensIndex, LensPower, LensRadius};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::given::vertex;
use crate::checks::symbol;
use crate::values::Value;

type Entries = (LensRadius, LensRadius, LensCentre, LensIndex);

fn lens(value: &Value) -> Result<Entries, Failed> {
    Ok((
        LensRadius::from_mm(value.number("front_radius_mm")?)?,
        LensRadius::from_mm(value.number("back_radius_mm")?)?,
        LensCentre::from_mm(value.number("thickness_mm")?)?,
        LensIndex::new(value.number("lens_index")?)?,
    ))
}

fn rows(value: &Value) -> Result<&'static [Surface], Failed> {
    match value.text("eye")? {
        "gullstrand" => Ok(GULLSTRAND),
        "legrand" => Ok(LE_GRAND),
        other => Err(format!("no eye `{other}`").into()),
    }
}

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        thick::working, Working::show => "thick-*" => |working, show; value| {
            let (front, back, centre, index) = lens(value)?;
            let w = working(front, back, centre, index)?;
            let symbols = match value.id.rsplit('-').next() {
                Some("p") => "P",
                Some("front") => "h",
                _ => "h'",
            };
            symbol(&[symbols], |sink| show(&w, sink))
        };
        thick::working, Working::placed, ThinEye::new => ["placed-*-rx", "traced-*-thick"] => |working, placed, new; value| {
            let (front, back, centre, index) = lens(value)?;
            let w = working(front, back, centre, index)?;
            let eye = new(value.number("axial_length_mm")?, value.number("corneal_power_d")?, 0.0);
            let eye = placed(&w, eye, value.number("vertex_position_mm")?);
            Ok(vec![eye.refraction(LensPower::from_d(w.power)?, vertex(value)?)?.rx])
        };
        system, System::show => "schematic-*" => |system, show; value| {
            let eye = system(1.0, rows(value)?)?;
            symbol(&["F"], |sink| show(&eye, sink))?;
            Ok(vec![match value.id.rsplit('-').next() {
                Some("front") => eye.front,
                Some("back") => eye.back,
                _ => eye.power,
            }])
        };
        System::show_le_grand => "schematic-legrand-*" => |show; value| {
            let eye = system(1.0, LE_GRAND)?;
            let step = match value.id.rsplit('-').next() {
                Some("front") => "h",
                Some("back") => "h'",
                _ => "F",
            };
            symbol(&[step], |steps| show(&eye, steps))
        };
    }
}
