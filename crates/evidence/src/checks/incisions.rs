//! Where incisions are, and what they make of the cornea.

use ocellus_card::case::Case;
use ocellus_card::{entries, items};
use ocellus_core::astigmatism::incision::{self, centroid, induced};
use ocellus_core::astigmatism::site::{self, ClockSeen, Seat, Side, SiteWord};
use ocellus_core::astigmatism::{cornea, meridian};
use ocellus_core::quantity::{ClockHour, Flattening, Site};

use crate::check::{Failed, Registry};
use crate::checks;
use crate::checks::card::{Card, draft};
use crate::checks::cornea::{front, measured, of_vector};
use crate::checks::given::{axis, one_of};
use crate::checks::symbol;
use crate::values::Value;

fn eye(value: &Value) -> Result<Side, Failed> {
    one_of(Side::ALL, Side::word, value.text("eye")?)
}

fn word(value: &Value) -> Result<SiteWord, Failed> {
    one_of(SiteWord::ALL, SiteWord::word, value.text("word")?)
}

fn flattening(value: &Value, key: &str) -> Result<Flattening, Failed> {
    Ok(Flattening::from_d(value.number(key)?)?)
}

pub(super) fn register(registry: &mut Registry) {
    sites(registry);
    incisions(registry);
}

fn sites(registry: &mut Registry) {
    checks! { registry;
        // Once around the limbus, and on until the run of sites with that word has ended.
        site::word => "site-*" => |word; value| {
            let (eye, wanted) = (eye(value)?, value.text("word")?);
            let called = |deg: u32| Ok::<_, Failed>(word(Site::from_deg(f64::from(deg % 360))?, eye) == wanted);
            let mut first = 0;
            while called(first)? || !called(first + 1)? {
                first += 1;
                if first > 720 {
                    return Err(format!("no site is called {wanted}").into());
                }
            }
            let mut last = first + 1;
            while called(last + 1)? {
                last += 1;
            }
            Ok(vec![f64::from(first + 1 + last) / 2.0 % 360.0])
        };
        site::of_word => "of-word-*" => |of_word; value|
            Ok(vec![of_word(word(value)?, eye(value)?).ok_or("no site")?.deg()]);
        // The words go round from the temporal side, an eighth of a turn each.
        site::from_temporal => "of-word-*" => |from_temporal; value|
            Ok(vec![from_temporal(45.0 * f64::from(word(value)? as u8), eye(value)?)]);
        site::of_clock => "of-clock-*" => |of_clock; value| {
            Ok(vec![of_clock(ClockHour::new(value.number("clock_h")?)?, seen(value)?, eye(value)?).ok_or("no site")?.deg()])
        };
        site::tilt => "of-clock-*" => |tilt; value| {
            let seat = match seen(value)? {
                ClockSeen::Facing => None,
                ClockSeen::Superior => Some(Seat::Superior),
                ClockSeen::Temporal => Some(Seat::Temporal),
            };
            Ok(vec![(90.0 - 30.0 * value.number("clock_h")? + tilt(seat, eye(value)?)).rem_euclid(360.0)])
        };
        // Six hours on is across the eye.
        site::opposite => "of-clock-*" => |opposite; value| Ok(vec![opposite(clock(value, 6.0)?).deg()]);
    }
}

fn seen(value: &Value) -> Result<ClockSeen, Failed> {
    one_of(ClockSeen::ALL, ClockSeen::word, value.text("seen_from")?)
}

/// The site so many hours after the one given.
fn clock(value: &Value, later: f64) -> Result<Site, Failed> {
    let hour = ClockHour::new((value.number("clock_h")? + later) % 12.0)?;
    Ok(site::of_clock(hour, seen(value)?, eye(value)?).ok_or("no site")?)
}

fn incisions(registry: &mut Registry) {
    checks! { registry;
        cornea::measured, induced => "incision-*" => |measured, induced; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let before = measured(&front(value)?).ok_or("no axes")?;
            of_vector(value, before.plus(induced(site, flattening(value, "flattening_d")?)))
        };
        meridian => "incision-*" => |meridian; value| {
            let across = meridian(value.number("site_deg")? + 90.0).ok_or("no meridian")?;
            of_vector(value, measured(value)?.plus(centroid(flattening(value, "flattening_d")?, across)))
        };
        cornea::working, cornea::Working::show => "incision-*-n" => |working, show; value| {
            let incision = induced(Site::from_deg(value.number("site_deg")?)?, flattening(value, "flattening_d")?);
            let w = working(&front(value)?, measured(value)?, incision).ok_or("no axes")?;
            symbol(&["N'"], |sink| show(&w, sink))
        };
        incision::working, incision::Working::show => ["incision-*-x", "incision-*-y"] => |working, show; value| {
            let w = working(Site::from_deg(value.number("site_deg")?)?, flattening(value, "flattening_d")?);
            let before = measured(value)?;
            let (step, before) = if value.id.ends_with('x') { ("s_x", before.j0) } else { ("s_y", before.j45) };
            Ok(vec![symbol(&[step], |sink| show(&w, sink))?[0] + 2.0 * before])
        };
        induced => ["incisions-*", "!incisions-*-flat", "!incisions-*-steep"] => |induced; value| {
            let site = Site::from_deg(value.number("site_deg")?)?;
            let cuts = [
                (site, "flattening_d"),
                (site::opposite(site), "opposite_d"),
                (Site::from_deg(value.number("site2_deg")?)?, "flattening2_d"),
            ];
            let mut after = measured(value)?;
            for (site, key) in cuts {
                after = after.plus(induced(site, flattening(value, key)?));
            }
            of_vector(value, after)
        };
        // On the card: what a keratometer would read.
        Case::plan => ["incisions-*-flat", "incisions-*-steep"] => |plan; value| {
            let mut draft = draft(value)?;
            let steep = value.number("steep_deg")?;
            for (entry, number) in [
                (entries::K1.id(), value.number("flat_d")?),
                (entries::K1_AXIS.id(), (steep + 90.0).rem_euclid(180.0)),
                (entries::K2.id(), value.number("steep_d")?),
                (entries::K2_AXIS.id(), steep),
                (entries::INCISION_SITE.id(), value.number("site_deg")?),
                (entries::FLATTENING.id(), value.number("flattening_d")?),
                (entries::PAIRED_FLATTENING.id(), value.number("opposite_d")?),
                (entries::OTHER_SITE.id(), value.number("site2_deg")?),
                (entries::OTHER_FLATTENING.id(), value.number("flattening2_d")?),
            ] {
                draft.set(entry, number);
            }
            let card = Card::of(plan, &draft)?;
            let what = if value.id.ends_with("flat") { items::PLANNED_FLAT } else { items::PLANNED_STEEP };
            Ok(vec![card.items.iter().find(|item| item.what == what).ok_or("not on the card")?.value])
        };
        centroid => "centroid-*" => |centroid; value| {
            let size = flattening(value, "centroid_d")?;
            of_vector(value, measured(value)?.plus(centroid(size, axis(value, "centroid_deg")?)))
        };
    }
}
