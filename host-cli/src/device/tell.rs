//! What a device says of itself, for a person and for a program.

use super::keys;
use super::line::{Line, Trouble};
use crate::text::paragraph;
use ocellus_card::draft::Draft;
use ocellus_card::id::PartId;
use ocellus_link::entries::text;
use ocellus_link::message::{Build, Built, Counted, Counters, Timed};
use ocellus_link::schema::CORE;
use serde::Serialize;
use std::io::{self, Write};

/// Prints who answers.
///
/// # Errors
/// When the line gives no answer, or the text cannot be written.
pub fn hello(line: &mut Line, out: &mut dyn Write) -> Result<(), Trouble> {
    let built: Built = line.ask(&Build {}.into())?;
    let welcome = line.welcome();
    let [major, minor, patch] = welcome.core;
    writeln!(out, "board      {}", text(&welcome.board))?;
    writeln!(out, "target     {}", text(&built.target))?;
    writeln!(out, "build      {}", text(&built.build))?;
    write!(out, "core       {major}.{minor}.{patch}")?;
    if welcome.core != CORE {
        let [major, minor, patch] = CORE;
        write!(out, "; CAUTION: this program's is {major}.{minor}.{patch}, numbers may differ")?;
    }
    writeln!(out, "\nprotocol   version {}, tables {:08X}: the same here", welcome.version, welcome.schema)?;
    let lacks = keys(welcome.lacks().map(PartId::key));
    let lacks = if lacks.is_empty() { "all that are here".to_owned() } else { format!("lacks {lacks}") };
    paragraph(out, "parts      ", lacks)?;
    Ok(())
}

/// What a device has counted, and how long a plan of a case took it.
#[derive(Serialize)]
struct Counts {
    frames: u32,
    damaged: u32,
    too_long: u32,
    silent: u32,
    refused: u32,
    overruns: u32,
    typed: u32,
    stack_used: u32,
    stack_size: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    plan: Option<Time>,
}

#[derive(Serialize)]
struct Time {
    events: u16,
    ticks: u32,
    ticks_per_second: u32,
}

/// Prints what the device has counted since it started; with a case, times a plan of it first.
///
/// # Errors
/// When the line gives no answer, or the text cannot be written.
pub fn counters(line: &mut Line, draft: Option<&Draft>, json: bool, out: &mut dyn Write) -> Result<(), Trouble> {
    let plan = draft.map(|draft| line.time(draft)).transpose()?;
    let plan = plan.map(|Timed { ticks, ticks_per_second, events }| Time { events, ticks, ticks_per_second });
    let Counted { frames, bad, too_long, silences, refused, overruns, typed, stack_used, stack_size } =
        line.ask(&Counters {}.into())?;
    let counts = Counts {
        frames,
        damaged: bad,
        too_long,
        silent: silences,
        refused,
        overruns,
        typed,
        stack_used,
        stack_size,
        plan,
    };
    if json {
        serde_json::to_writer(&mut *out, &counts).map_err(io::Error::from)?;
        writeln!(out)?;
        return Ok(());
    }
    for (name, count) in [
        ("frames taken", counts.frames),
        ("frames damaged", counts.damaged),
        ("frames too long", counts.too_long),
        ("frames broken off", counts.silent),
        ("requests refused", counts.refused),
        ("bytes lost, too fast", counts.overruns),
        ("bytes typed", counts.typed),
    ] {
        writeln!(out, "{name:28} {count:>10}")?;
    }
    writeln!(out, "{:28} {:>10} of {} bytes", "stack, most ever used", counts.stack_used, counts.stack_size)?;
    if let Some(Time { events, ticks, ticks_per_second }) = counts.plan {
        writeln!(
            out,
            "{:28} {ticks:>10} ticks of {ticks_per_second} a second, {events} events",
            "a plan of this case"
        )?;
    }
    Ok(())
}
