//! A person's terminal on one side, a conversation on the other: in this program, or in a device.

use super::port::{self, Port};
use ocellus_console::{Around, Console, PROMPTS};
use std::io::{self, BufRead, IsTerminal, Read, Write};
use std::sync::mpsc::{Receiver, RecvTimeoutError, TryRecvError, channel};
use std::thread;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

/// Gives up the line that is being typed, and both patient identifiers: Ctrl-C.
const ABANDON: u8 = 3;

/// Ends a session at a terminal: Ctrl-D.
const END: u8 = 4;

/// A device that has said nothing for so long has nothing more to say to a script.
const SILENT: Duration = Duration::from_secs(2);

/// The terminal gives every key as it is pressed, until this is dropped.
struct Raw;

impl Raw {
    fn on() -> io::Result<Option<Raw>> {
        if !io::stdin().is_terminal() {
            return Ok(None);
        }
        crossterm::terminal::enable_raw_mode()?;
        Ok(Some(Raw))
    }
}

impl Drop for Raw {
    fn drop(&mut self) {
        // nothing can be done about a terminal that is gone
        let _ = crossterm::terminal::disable_raw_mode();
    }
}

/// This machine around a console: when it began, and what the clock then said.
struct Here(Instant, u32);

impl Around for Here {
    fn millis(&self) -> u32 {
        // wraps after seven weeks, as a device's does
        (self.0.elapsed().as_millis() as u32).wrapping_add(self.1)
    }
}

/// How often a conversation without a key learns that time passes.
const TICK: Duration = Duration::from_millis(20);

/// Holds the conversation in this program, without any device.
///
/// # Errors
/// When the terminal cannot be read or written.
pub fn here() -> io::Result<()> {
    let raw = Raw::on()?;
    // so that two conversations do not begin with the same question
    let seed = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |since| since.as_micros() as u32);
    let (mut console, around) = (Console::new(), Here(Instant::now(), seed));
    let mut out = io::stdout().lock();
    let mut written = Ok(());
    let mut say = |text: &str| {
        if written.is_ok() {
            written = out.write_all(text.as_bytes()).and_then(|()| out.flush());
        }
    };
    if raw.is_some() {
        say("Ctrl-D ends.\r\n");
    }
    console.greet(&mut say);
    let keys = keys();
    'session: loop {
        let bytes = match keys.recv_timeout(TICK) {
            Ok(bytes) => bytes,
            Err(RecvTimeoutError::Timeout) => {
                console.tick(&around, &mut say);
                continue;
            }
            Err(RecvTimeoutError::Disconnected) => break,
        };
        for (place, &byte) in bytes.iter().enumerate() {
            if raw.is_some() && byte == END {
                break 'session;
            }
            // a script is answered line by line; what a person pastes is answered once
            let waiting = if raw.is_some() { bytes.len() - place - 1 } else { 0 };
            console.byte(byte, waiting, &around, &mut say);
        }
    }
    say("\r\n");
    written
}

/// Passes what is typed to a device, and what it says back.
///
/// # Errors
/// When the terminal or the line fails.
pub fn with(mut device: Box<dyn Port>) -> io::Result<()> {
    match Raw::on()? {
        Some(_raw) => typed(&mut *device),
        None => script(&mut *device),
    }
}

/// Key by key, both ways at once.
fn typed(device: &mut dyn Port) -> io::Result<()> {
    let mut out = io::stdout();
    out.write_all(b"Ctrl-D ends.\r\n")?;
    out.flush()?;
    // whatever was left of a line before is given up, and the device asks for the next
    device.write_all(&[ABANDON])?;
    let keys = keys();
    loop {
        pass(device, &mut out)?;
        match keys.try_recv() {
            Ok(keys) if keys.contains(&END) => return Ok(()),
            Ok(keys) => device.write_all(&keys)?,
            Err(TryRecvError::Empty) => {}
            Err(TryRecvError::Disconnected) => return Ok(()),
        }
    }
}

/// Line by line: the next once the device asks for it, since it has no room for more than a few.
fn script(device: &mut dyn Port) -> io::Result<()> {
    let mut out = io::stdout();
    // the greeting of a device that starts with this connection; whatever was left of a line before is given up
    device.write_all(&[ABANDON])?;
    wait_for_prompt(device, &mut out)?;
    let (mut input, mut line) = (io::stdin().lock(), String::new());
    while input.read_line(&mut line)? > 0 {
        let Some(whole) = line.strip_suffix('\n') else {
            // what was cut off may have been the rest of a number
            return Err(io::Error::new(io::ErrorKind::InvalidData, format!("ends in mid-line: {line:?} was not sent")));
        };
        // 0 opens a frame, and nobody types one
        device.write_all(whole.replace('\0', "\u{fffd}").as_bytes())?;
        device.write_all(b"\r")?;
        line.clear();
        wait_for_prompt(device, &mut out)?;
    }
    writeln!(out)
}

/// Shows what the device says until it asks for the next line, or falls silent.
fn wait_for_prompt(device: &mut dyn Port, out: &mut dyn Write) -> io::Result<()> {
    let mut heard = Instant::now();
    let mut last = Vec::new();
    while heard.elapsed() < SILENT {
        let said = pass(device, out)?;
        if !said.is_empty() {
            heard = Instant::now();
            last.extend(said);
            if PROMPTS.iter().any(|prompt| last.ends_with(prompt.as_bytes())) {
                return Ok(());
            }
        }
    }
    Err(io::Error::new(io::ErrorKind::TimedOut, "the device does not ask for the next line"))
}

/// Shows what has come from the device.
fn pass(device: &mut dyn Port, out: &mut dyn Write) -> io::Result<Vec<u8>> {
    let mut bytes = [0; 4096];
    let count = port::read(device, &mut bytes)?;
    if count > 0 {
        out.write_all(&bytes[..count])?;
        out.flush()?;
    }
    Ok(bytes[..count].to_vec())
}

/// The keys a person presses, read by a thread of its own; 0 opens a frame, and nobody types one.
fn keys() -> Receiver<Vec<u8>> {
    let (send, receive) = channel();
    thread::spawn(move || {
        let mut bytes = [0; 4096];
        while let Ok(count @ 1..) = io::stdin().read(&mut bytes) {
            let keys = bytes[..count].iter().copied().filter(|byte| *byte != 0).collect();
            if send.send(keys).is_err() {
                break;
            }
        }
    });
    receive
}
