//! The strip chart that `strip run` prints, as curves: the tip is closed, and opened again.

use super::Seen;
use super::plot::{Curve, Plot};
use super::surge::{LINE, TENTH};
use ocellus_card::cautions::ILLUSTRATION;
use ocellus_card::parts::pressure::fluid_density;
use ocellus_card::parts::surge::known_setup;
use ocellus_core::fluids::live::{Change, Live, SHOWN, STRETCH};

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let wanted =
        "all of a surge (see `ocellus explain surge CASE`), which leaves a pressure and is slow enough to be drawn";
    let entered = seen.of_fluids(|known| known_setup(known.entered).zip(fluid_density(known.entered)));
    let mut live = entered.and_then(|(set_up, density)| Live::new(set_up, density)).ok_or(wanted)?;
    let (mut chamber, mut line) = (Vec::new(), Vec::new());
    let (mut ms, mut tips, mut collapsed) = (0.0, Vec::new(), false);
    'run: for (stretches, change) in SHOWN {
        for _ in 0..stretches {
            let Some(now) = live.advance() else {
                collapsed = true;
                break 'run;
            };
            ms += STRETCH;
            chamber.push((ms, now.chamber.max(0.0)));
            line.push((ms, -now.line / TENTH));
        }
        if let Some(change) = change {
            live.change(change);
            let done = if change == Change::Occlude { "tip closed" } else { "tip open again" };
            tips.push((format!("{done} at {ms} ms"), ms));
        }
    }
    let top = chamber.iter().chain(&line).map(|(_, mmhg)| *mmhg).fold(0.0, f64::max);
    let mut curves = vec![Curve::line("chamber, mmHg", chamber), Curve::dashed(LINE, line)];
    curves.extend(tips.iter().map(|(name, ms)| Curve::thin(name, vec![(*ms, 0.0), (*ms, top)])));
    let mut notes = vec![ILLUSTRATION.text().to_string(), "A point each 10 ms.".to_owned()];
    notes.extend(collapsed.then(|| "Chamber collapsed, the model ends.".to_owned()));
    notes.extend(seen.foot());
    Plot {
        title: "ILLUSTRATION: the tip is closed, and opened again".to_owned(),
        across: "time, ms".to_owned(),
        up: "pressure, mmHg".to_owned(),
        square: false,
        curves,
        notes,
    }
    .draw()
    .map_err(|_| "a drawing that can be written")
}
