//! The toric lens on the eye.

use super::Seen;
use super::eye::{Sign, View, page, paragraph, sign, write};
use crate::text;
use ocellus_card::{entries, items};
use svg::node::element::Group;

/// Columns of the legend, and where it begins.
const LEGEND: f64 = 590.0;
const COLUMNS: usize = 50;

/// Width of a cut over the diameter of the cornea, where one of the two is not known.
const USUAL_SHARE: f64 = 0.2;

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let view = View::of(seen, (290.0, 270.0));
    let steep = seen.get(items::PLANNED_AXIS);
    let chosen = seen.entry(entries::LENS_AXIS);
    let best = seen.get(items::MARK_AXIS);
    let lens = chosen.or(best);
    let site = seen.entry(entries::INCISION_SITE).or(seen.get(items::SITE_DEGREES));
    if steep.is_none() && site.is_none() {
        return Err("an incision site, and for the steep meridian both corneal axes and the surgeon's own flattening");
    }
    let share =
        seen.entry(entries::WOUND_WIDTH).zip(seen.entry(entries::WHITE_TO_WHITE)).map_or(USUAL_SHARE, |(w, d)| w / d);
    let mut eye = Group::new();
    if let Some(steep) = steep {
        eye = eye.add(view.meridian(steep, "9 6"));
    }
    if let Some(lens) = lens {
        eye = eye.add(view.lens(lens));
    }
    eye = eye.add(view.rim());
    let pair = site.filter(|_| seen.draft.has(entries::PAIRED_FLATTENING)).map(|site| (site + 180.0) % 360.0);
    let others = [("its pair", pair), ("another cut", seen.entry(entries::OTHER_SITE))];
    for site in site.into_iter().chain(others.iter().filter_map(|(_, site)| *site)) {
        eye = eye.add(view.cut(site, share));
    }

    let (title, from) = view.title();
    let mut legend = Group::new().add(write(title, (LEGEND, 60.0), 26.0, "start").set("font-weight", "bold"));
    let mut at = paragraph(from, (LEGEND, 84.0), 15.0, COLUMNS, &mut legend);
    let label = text::value(seen.draft, entries::ID);
    at = paragraph(&label, (LEGEND, at + 4.0), 15.0, COLUMNS, &mut legend) + 16.0;
    let mut entry = |of: Sign, what: String| {
        legend = std::mem::take(&mut legend).add(sign(&of, (LEGEND, at)));
        at = paragraph(&what, (LEGEND + 58.0, at), 15.0, COLUMNS - 8, &mut legend) + 6.0;
    };
    let degrees = |value: f64| text::number(value, 0, false, "deg");
    if let Some(site) = site {
        entry(Sign::Block, format!("incision at {}, {}", degrees(site), view.word(site)));
    }
    for (what, site) in others {
        if let Some(site) = site {
            entry(Sign::Block, format!("{what} at {}, {}", degrees(site), view.word(site)));
        }
    }
    if let Some(steep) = steep {
        let size = seen.printed(items::PLANNED_ASTIGMATISM).unwrap_or_default();
        entry(Sign::Dashes, format!("steep meridian after the incisions {}, astigmatism {size}", degrees(steep)));
    }
    if let Some(lens) = lens {
        let how = if chosen.is_some() { "as chosen" } else { "where it belongs" };
        entry(Sign::Line, format!("mark on the lens, {how}: {}", degrees(lens)));
    }
    if let (Some(_), Some(best)) = (chosen, best) {
        entry(Sign::None, format!("best meridian for the mark: {}", degrees(best)));
    }
    if let Some(found) = seen.entry(entries::MARK_FOUND) {
        entry(Sign::None, format!("as planned; the mark was found at {}: draw turn", degrees(found)));
    }
    at += 10.0;
    at = paragraph(
        "Degrees are those of the eye seen from the front: 0 at the right of someone who faces the patient, counter-clockwise.",
        (LEGEND, at),
        13.0,
        COLUMNS + 8,
        &mut legend,
    );
    for said in seen.foot() {
        at = paragraph(&said, (LEGEND, at + 8.0), 13.0, COLUMNS + 8, &mut legend);
    }
    Ok(page(980.0, 550.0, &format!("{title} {from}: incision, steep meridian and toric lens"))
        .add(eye)
        .add(legend)
        .to_string())
}
