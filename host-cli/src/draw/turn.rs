//! A toric lens that sits wrong: before, the best turn, after.

use super::Seen;
use super::eye::{LIMBUS, View, page, paragraph, write};
use crate::text;
use ocellus_card::{entries, items};
use svg::node::element::Group;

/// Width of one of the three pictures.
const WIDTH: f64 = 540.0;

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let wanted = "mark_found_deg, the refraction in [after], and the toric lens that was chosen";
    let from = seen.entry(entries::MARK_FOUND).ok_or(wanted)?;
    let number = |what| seen.get(what).ok_or(wanted);
    let to = number(items::TURN_TO)?;
    let ways = seen.get(items::TURN_CLOCK).zip(seen.get(items::TURN_COUNTER));
    let said = |what| seen.printed(what).unwrap_or_default();
    let degrees = |value| text::number(value, 0, false, "deg");
    let (now, then) = ("now", "to");

    // everywhere: dashed where it lies now, solid where it should
    let views = [0.5, 1.5, 2.5].map(|place| View::of(seen, (WIDTH * place, 320.0)));
    let [before, turn, after] = &views;
    let mut pictures = Group::new()
        .add(before.ghost(from))
        .add(before.named(from, now))
        .add(turn.ghost(from))
        .add(turn.lens(to))
        .add(after.lens(to))
        .add(after.named(to, then));
    if let Some((clockwise, counter)) = ways {
        // the shorter way drawn solid, the other dotted
        let (short, long) = if clockwise <= counter { (-clockwise, counter) } else { (counter, -clockwise) };
        pictures =
            pictures.add(turn.way(from, short, LIMBUS - 26.0, "none")).add(turn.way(from, long, LIMBUS - 48.0, "2 4"));
    }
    for view in &views {
        pictures = pictures.add(view.rim());
    }
    let axis = seen.printed(items::NOW_AXIS).map_or(String::new(), |axis| format!(" x {axis}"));
    let heads = [
        (
            "BEFORE",
            format!("mark at {}", degrees(from)),
            format!("plus cylinder still needed {}{axis}", said(items::NOW_CYLINDER)),
        ),
        (
            "THE BEST TURN",
            format!("FROM {} TO {}", degrees(from), degrees(to)),
            match ways {
                Some((clockwise, counter)) => text::both_ways(clockwise, counter),
                None => "the lens lies where it leaves least: turning does not help".to_owned(),
            },
        ),
        ("AFTER", format!("mark at {}", degrees(to)), format!("cylinder still needed {}", said(items::TURN_LEFT))),
    ];
    let (title, seat) = before.title();
    let mut words =
        Group::new().add(write(&format!("{title}, {seat}"), (30.0, 34.0), 20.0, "start").set("font-weight", "bold"));
    for (place, (head, what, more)) in heads.iter().enumerate() {
        let x = WIDTH * (place as f64 + 0.5);
        words = words
            .add(write(head, (x, 62.0), 16.0, "middle").set("font-weight", "bold"))
            .add(write(what, (x, 80.0), 15.0, "middle"))
            .add(write(more, (x, 596.0), 15.0, "middle"));
    }
    let method = seen.method(items::TURN_TO);
    let mut at = 632.0;
    let label = text::value(seen.draft, entries::ID);
    let note = format!(
        "{label}{}Dashed: where the lens lies now; solid: where it should lie. By {method}; the card shows what the other methods \
         say, and what every five degrees would leave. Both ways end at the same meridian: the lens's label says which \
         way it may be turned. Directions are those of the eye seen from the front, the same from every seat; only a \
         mirror reverses them.",
        if label.is_empty() { "" } else { ": " }
    );
    let first = items::TURN_TO.part().first().filter(|code| seen.cautions.contains(code));
    for said in first.map(|code| code.text().to_string()).chain([note]).chain(seen.foot()) {
        at = paragraph(&said, (30.0, at), 13.0, 210, &mut words) + 4.0;
    }
    Ok(page(3.0 * WIDTH, at + 10.0, &format!("{title}: a toric lens before, at its best turn, and after"))
        .add(pictures)
        .add(words)
        .to_string())
}
