//! What the incisions did in many eyes, added one after another.

use crate::around::Around;
use crate::case::case;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::session::Session;
use ocellus_card::draft::Draft;
use ocellus_card::items;
use ocellus_card::parts::after::incision_found;
use ocellus_card::readback;
use ocellus_core::astigmatism::group::{Group, Summary};
use ocellus_core::astigmatism::on_dial;
use ocellus_text::{Text, text};

/// Eyes that were added, and what the last of them was entered as.
#[derive(Default)]
pub(crate) struct Eyes {
    group: Group,
    last: Option<u32>,
}

impl Eyes {
    pub(crate) const NONE: Eyes = Eyes { group: Group::EMPTY, last: None };
}

pub(crate) fn run(
    session: &mut Session,
    draft: &mut Draft,
    _around: &dyn Around,
    rest: &str,
    page: &mut Page,
) -> Outcome {
    let eyes = &mut session.group;
    match rest {
        "" => {}
        _ if rest.eq_ignore_ascii_case("add") => {
            if !add(eyes, draft, page) {
                return Outcome::Refused;
            }
        }
        _ if rest.eq_ignore_ascii_case("clear") => *eyes = Eyes::NONE,
        _ => {
            page.line(text!("group, group add, or group clear."));
            return Outcome::Refused;
        }
    }
    let group = &eyes.group;
    page.count(group.count() as usize);
    page.line(if group.count() == 1.0 { text!(" eye in the group.") } else { text!(" eyes in the group.") });
    match group.summary() {
        Some(summary) => tell(group, &summary, page),
        None => page.line(text!("A centroid with its scatter needs three.")),
    }
    Outcome::Answered
}

/// Takes in what the incisions did in this case.
// apart, so that its room on the stack is free again while the group is shown
#[inline(never)]
fn add(eyes: &mut Eyes, draft: &Draft, page: &mut Page) -> bool {
    let Some(case) = case(draft, page) else { return false };
    let Some(made) = case.known(|known| incision_found(known.eye?)) else {
        page.line(text!("Not added: it needs k1, k2, ak1 and ak2, each with its axis."));
        return false;
    };
    let entries = readback::entries(draft, None).ok();
    if entries.is_some() && entries == eyes.last {
        page.line(text!("Not added: this case is in the group already."));
        return false;
    }
    eyes.last = entries;
    eyes.group.add(made);
    true
}

#[inline(never)]
fn tell(group: &Group, s: &Summary, page: &mut Page) {
    let dioptres = |name: Text, values: &[f64], signed: bool, page: &mut Page| {
        page.name(name);
        for (place, value) in values.iter().enumerate() {
            page.text(if place == 0 { "" } else { ", " });
            page.number(*value, 2, signed, "D");
        }
        page.end();
    };
    if let Some(centre) = group.centroid() {
        dioptres(text!("centroid, size"), &[centre.cylinder()], false, page);
        if let Some(steep) = centre.strongest() {
            page.name(text!("centroid, steep meridian"));
            let degrees = items::PLANNED_AXIS;
            page.number(on_dial(steep), degrees.places(), degrees.signed(), degrees.unit());
            page.end();
        }
    }
    dioptres(text!("x and y"), &[s.x, s.y], true, page);
    dioptres(text!("SD of x and y"), &[s.sd_x, s.sd_y], false, page);
    dioptres(text!("95 % ellipse of centroid, semi-axes"), &[s.of_mean * s.major, s.of_mean * s.minor], false, page);
    dioptres(text!("95 % ellipse of single eyes"), &[s.of_eyes * s.major, s.of_eyes * s.minor], false, page);
    if let Some(test) = group.against_zero() {
        page.name(text!("is it zero? Hotelling T2, p"));
        page.number(test.t2, 2, false, "");
        page.text(", ");
        page.number(test.p, 4, false, "");
        page.end();
    }
    page.paragraph(
        "  ",
        text!(
            "Holds where vectors are normal about one centre and eyes are independent: two eyes of one patient are not."
        ),
    );
}
