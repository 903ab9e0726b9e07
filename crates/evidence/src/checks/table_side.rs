//! The rhexis and the wound.

use ocellus_core::quantity::{CapsuleDepth, Cut, Decentration, Grasp, OpticDiameter, WoundLength};
use ocellus_core::table_side::rhexis::{self, Working};
use ocellus_core::table_side::wound;

use crate::check::Registry;
use crate::checks;
use crate::checks::symbol;

pub(super) fn register(registry: &mut Registry) {
    checks! { registry;
        rhexis::working, Working::show => "rhexis-1" => |working, show; value| {
            let w = working(Cut::from_mm(value.number("cut_mm")?)?);
            symbol(&["D"], |sink| show(&w, sink))
        };
        rhexis::working => "rhexis-edge" => |working; value|
            Ok(vec![working(Cut::from_mm(value.number("diameter_mm")? / 2.0)?).edge]);
        // The area of a circle is half its edge times half its diameter.
        rhexis::working => "rhexis-area-*" => |working; value| {
            let w = working(Cut::from_mm(value.number("diameter_mm")? / 2.0)?);
            Ok(vec![w.edge / 2.0 * w.diameter / 2.0])
        };
        rhexis::working, rhexis::grasps => "rhexis-2" => |working, grasps; value| {
            let edge = working(Cut::from_mm(value.number("diameter_mm")? / 2.0)?).edge;
            Ok(vec![grasps(edge, Grasp::from_mm(value.number("grasp_mm")?)?)])
        };
        rhexis::working => ["rhexis-3", "rhexis-seen-mean"] => |working; _value| {
            let w = working(Cut::from_mm(2.5)?);
            Ok(vec![100.0 * w.cut / w.cut_seen])
        };
        rhexis::working => "rhexis-cut" => |working; value|
            Ok(vec![working(Cut::from_mm(value.number("seen_mm")?)?).cut_seen]);
        rhexis::working => "rhexis-circle-*" => |working; value| {
            let w = working(Cut::from_mm(value.number("seen_mm")?)?);
            Ok(vec![match value.text("ratio_percent")? {
                "110" => w.seen_most,
                "120" => w.seen_least,
                _ => w.seen,
            }])
        };
        rhexis::overlap => "rhexis-overlap-*" => |overlap; value| {
            let optic = OpticDiameter::from_mm(value.number("optic_mm")?)?;
            let decentration = Decentration::from_mm(value.number("decentration_mm")?)?;
            let (worst, best) = overlap(value.number("diameter_mm")?, optic, decentration);
            Ok(vec![worst, best])
        };
        rhexis::paraxial_magnification => "rhexis-seen-#.*" => |magnification; value|
            Ok(vec![magnification(CapsuleDepth::from_mm(value.number("depth_mm")?)?, value.number("k_d")?)?]);
        wound::squareness => "wound-*" => |squareness; value| {
            let millimetres = |key| Ok::<_, crate::check::Failed>(WoundLength::from_mm(value.number(key)?)?);
            Ok(vec![squareness(millimetres("tunnel_mm")?, millimetres("width_mm")?)])
        };
    }
}
