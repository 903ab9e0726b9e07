//! A strip chart of a chamber over time: time runs down, single keys move bottle and vacuum and close the tip.
//! An illustration, and every screen of it says so.

use crate::around::Around;
use crate::outcome::Outcome;
use crate::page::Page;
use crate::place::along;
use crate::session::Session;
use ocellus_card::Known;
use ocellus_card::case::Case;
use ocellus_card::draft::Draft;
use ocellus_card::entries;
use ocellus_card::parts::pressure::fluid_density;
use ocellus_card::parts::pressure::limits::HEAD_HIGH;
use ocellus_card::parts::surge::known_setup;
use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::fluids::live::{Change, INVENTED, Live, SHOWN, STRETCH, Seen};
use ocellus_core::fluids::surge::Setup;
use ocellus_core::quantity::Density;
use ocellus_text::Text;
use ocellus_text::text;

/// How often a line is drawn, ms; and after how many of them without a key it ends by itself: about a minute.
const EVERY: u32 = 125;
const PATIENCE: u16 = 480;

/// Lines between two headings, so that each screen has one.
const SCREEN: u16 = 20;

/// Full scale and columns of both lanes.
const CHAMBER: (f64, usize) = (100.0, 41);
const LINE: (f64, usize) = (700.0, 15);

/// One that runs.
pub(crate) struct Strip {
    live: Live,
    lines: u16,
    /// Lines since the last key.
    quiet: u16,
    due: u32,
    /// Nothing was drawn or pressed yet: what comes first may be the rest of a line end.
    fresh: bool,
}

/// The keys, and what each does.
const KEYS: [(u8, Change); 6] = [
    (b'u', Change::BottleUp),
    (b'j', Change::BottleDown),
    (b'i', Change::VacuumUp),
    (b'k', Change::VacuumDown),
    (b'o', Change::Occlude),
    (b'r', Change::Release),
];

pub(crate) fn run(
    session: &mut Session,
    draft: &mut Draft,
    around: &dyn Around,
    rest: &str,
    page: &mut Page,
) -> Outcome {
    let goes_on = match rest {
        "" => true,
        _ if rest.eq_ignore_ascii_case("run") => false,
        _ => {
            page.line(text!("strip, or strip run."));
            return Outcome::Refused;
        }
    };
    let Some(live) = begin(draft, page) else { return Outcome::Refused };
    let mut strip = Strip { live, lines: 0, quiet: 0, due: around.millis().wrapping_add(EVERY), fresh: true };
    if goes_on {
        // there is room: a chart that runs takes every key itself
        let _ = session.strip.push(strip);
    } else {
        strip.shown(page);
    }
    Outcome::Answered
}

/// The set-up that was entered, or an invented one; it is said which.
#[inline(never)]
fn begin(draft: &Draft, page: &mut Page) -> Option<Live> {
    let known = |ask: &dyn Fn(&Known) -> Option<(Setup, Density)>| {
        Case::check_set_up(draft, &mut |_| {}).and_then(|case| case.known(ask))
    };
    let entered = known(&|known| known_setup(known.entered).zip(fluid_density(known.entered)));
    let usual = || Some((INVENTED, Density::from_kg_m3(entries::DENSITY.id().default()?).ok()?));
    let (set_up, density) = entered.or_else(usual)?;
    let live = Live::new(set_up, density);
    page.line(match (&entered, &live) {
        (Some(_), Some(_)) => text!("The set-up that was entered. An ILLUSTRATION for teaching:"),
        (None, _) => text!("An invented set-up, since not all of one was entered (explain surge shows what it takes). An ILLUSTRATION for teaching:"),
        (Some(_), None) => text!("This set-up leaves no pressure, or is too fast to be drawn as it goes: plan surge."),
    });
    let live = live?;
    told(live.setup(), page);
    Some(live)
}

fn told(setup: &Setup, page: &mut Page) {
    page.raw("  ");
    page.hang();
    let mut tell = |word: Text, value: f64, places: u8, unit: &'static str| {
        page.text(word);
        page.text(" ");
        page.number(value, places, false, unit);
        page.text("; ");
    };
    tell(text!("column"), setup.supply.head, 1, "mmHg");
    tell(text!("infusion line"), setup.supply.infusion, 3, "mmHg min/mL");
    tell(text!("leak"), setup.supply.leak, 1, "mL/min");
    tell(text!("tip and tubing"), setup.aspiration, 3, "mmHg min/mL");
    tell(text!("most vacuum"), setup.vacuum, 0, "mmHg");
    if let Some(flow) = setup.pumped {
        tell(text!("pump"), flow, 1, "mL/min");
    }
    tell(text!("eye"), setup.eye, 3, "uL/mmHg");
    tell(text!("line"), setup.line, 3, "uL/mmHg");
    page.text(text!("one line of the chart is 10 ms of the model; * is now, - where it was in them, X a closed tip."));
    page.end();
}

impl Strip {
    /// Takes a key; the answer is whether it goes on.
    pub(crate) fn key(&mut self, key: u8, page: &mut Page) -> bool {
        self.quiet = 0;
        if core::mem::take(&mut self.fresh) && key == b'\n' {
            return true;
        }
        if let Some((_, change)) = KEYS.iter().find(|(known, _)| *known == key.to_ascii_lowercase()) {
            self.live.change(*change);
            if !matches!(change, Change::Occlude | Change::Release) {
                self.moved(page);
            }
        }
        !matches!(key, b'q' | b'Q' | b'\r' | b'\n' | 0x03)
    }

    /// Where bottle and vacuum stand now.
    fn moved(&self, page: &mut Page) {
        let setup = self.live.setup();
        page.text("column ");
        page.number(setup.supply.head, 1, false, "mmHg");
        page.text(text!("; most vacuum "));
        page.number(setup.vacuum, 0, false, "mmHg");
        page.line(if setup.supply.head > HEAD_HIGH.get() {
            text!("; above 80 mmHg at the eye: a risk to the optic nerve")
        } else {
            Text::EMPTY
        });
    }

    /// Draws a line where one is due; the answer is whether it goes on.
    pub(crate) fn tick(&mut self, now: u32, page: &mut Page) -> bool {
        let late = now.wrapping_sub(self.due);
        if late > u32::MAX / 2 {
            return true;
        }
        // whoever was away does not get all the lines of that time
        self.due = if late > 4 * EVERY { now } else { self.due }.wrapping_add(EVERY);
        self.quiet += 1;
        self.fresh = false;
        self.line(page) && self.quiet < PATIENCE
    }

    /// A run with a closed tip, at once.
    fn shown(&mut self, page: &mut Page) {
        for (stretches, change) in SHOWN {
            for _ in 0..stretches {
                if !self.line(page) {
                    return;
                }
            }
            change.into_iter().for_each(|change| self.live.change(change));
        }
        page.line(text!("That was an illustration; ocellus draw strip draws it on a desk."));
    }

    #[inline(never)]
    fn line(&mut self, page: &mut Page) -> bool {
        if self.lines.is_multiple_of(SCREEN) {
            heading(page);
        }
        self.lines = self.lines.wrapping_add(1);
        let Some(seen) = self.live.advance() else {
            page.line(text!("Chamber collapsed, the model ends."));
            return false;
        };
        let ms = f64::from(self.lines) * STRETCH;
        number(ms, 0, 6, page);
        number(seen.chamber, 1, 6, page);
        page.raw(" |");
        lane(&mut chamber(&seen), page);
        number(-seen.line, 0, 4, page);
        page.raw(" |");
        let mut line = [b' '; LINE.1];
        put(&mut line, along(-seen.line, LINE.0, LINE.1), if self.live.is_occluded() { b'X' } else { b'*' });
        lane(&mut line, page);
        page.end();
        true
    }
}

fn heading(page: &mut Page) {
    page.line(text!("ILLUSTRATION, no living eye.  u j bottle   i k vacuum   o close   r open   q end"));
    page.raw("    ms  mmHg |0       chamber      50                 100| vac |0  line  700|");
    page.end();
}

fn number(value: f64, places: u8, width: usize, page: &mut Page) {
    page.cell(width, fixed(value, places, Sign::Minus).as_ref().map_or("-", |text| text.as_str()));
}

/// From the least to the most that was in this stretch, and where it is now.
fn chamber(seen: &Seen) -> [u8; CHAMBER.1] {
    let mut lane = [b' '; CHAMBER.1];
    let at = |value| along(value, CHAMBER.0, CHAMBER.1);
    (at(seen.least)..=at(seen.most)).for_each(|column| put(&mut lane, column, b'-'));
    put(&mut lane, at(seen.chamber), if seen.chamber > CHAMBER.0 { b'>' } else { b'*' });
    lane
}

fn put(lane: &mut [u8], column: usize, character: u8) {
    if let Some(slot) = lane.get_mut(column) {
        *slot = character;
    }
}

fn lane(characters: &mut [u8], page: &mut Page) {
    page.raw(core::str::from_utf8(characters).unwrap_or(""));
    page.raw("|");
}
