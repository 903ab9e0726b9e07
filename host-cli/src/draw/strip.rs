//! The strip chart that `strip run` prints, as curves: the tip is closed, and opened again.

use super::Seen;
use super::plot::{Curve, Plot};
use super::surge::{LINE, TENTH};
use ocellus_core::bench::Bench;
use ocellus_core::caution::Code;
use ocellus_core::plan;
use ocellus_core::pressure::live::{Change, INVENTED, Live, SHOWN, STRETCH};

pub(super) fn draw(seen: &Seen) -> Result<String, &'static str> {
    let bench = Bench::check(seen.draft, &mut |_| {});
    let entered = bench.as_ref().and_then(plan::surge_setup);
    let density = bench.and_then(|bench| bench.density());
    let wanted = "a set-up that leaves a pressure, and is slow enough to be drawn as it goes";
    let mut live = Live::new(entered.unwrap_or(INVENTED), density.ok_or(wanted)?).ok_or(wanted)?;
    let (mut chamber, mut least, mut line) = (Vec::new(), Vec::new(), Vec::new());
    let (mut ms, mut tips, mut collapsed) = (0.0, Vec::new(), false);
    'run: for (stretches, change) in SHOWN {
        for _ in 0..stretches {
            let Some(now) = live.advance() else {
                collapsed = true;
                break 'run;
            };
            ms += STRETCH;
            chamber.push((ms, now.chamber.max(0.0)));
            least.push((ms, now.least.max(0.0)));
            line.push((ms, -now.line / TENTH));
        }
        if let Some(change) = change {
            live.change(change);
            let name = if change == Change::Occlude { "tip closed" } else { "tip open again" };
            tips.push((name, ms));
        }
    }
    let top = chamber.iter().chain(&line).map(|(_, mmhg)| *mmhg).fold(0.0, f64::max);
    let mut curves = vec![
        Curve::line("chamber, mmHg", chamber),
        Curve::dots("least in each 10 ms", least),
        Curve::dashed(LINE, line),
    ];
    curves.extend(tips.iter().map(|(name, ms)| Curve::thin(name, vec![(*ms, 0.0), (*ms, top)])));
    let from = if entered.is_some() {
        "The set-up that was entered."
    } else {
        "An invented set-up, since not all of one was entered."
    };
    let end = if collapsed { " Chamber collapsed, the model ends." } else { "" };
    let mut notes = vec![Code::Illustration.text().to_owned(), format!("{from}{end}")];
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
