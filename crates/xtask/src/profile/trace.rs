//! The instructions of one call, from the emulator's trace: a line for each, more of them than a disk should hold.

use std::collections::BTreeMap;
use std::io::BufRead;
use std::ops::RangeInclusive;

/// How often the instruction at each address ran.
pub(crate) type Counts = BTreeMap<u64, u64>;

/// What a line of the trace says.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Said {
    /// The instruction at this address runs.
    Runs(u64),
    /// The last one did not, and comes again.
    TakenBack,
}

/// What takes the last instruction back.
const TAKEN_BACK: [&[u8]; 2] = [b"Stopped execution of TB chain before", b"cpu_io_recompile: rewound execution"];

fn said(line: &[u8]) -> Option<Said> {
    if TAKEN_BACK.iter().any(|start| line.starts_with(start)) {
        return Some(Said::TakenBack);
    }
    // Trace 0: HOST [SEGMENT/ADDRESS/FLAGS/FLAGS] NAME: the name is not used, one address may have several
    let bracket = line.strip_prefix(b"Trace ")?.split(|byte| *byte == b'[').nth(1)?;
    let address = std::str::from_utf8(bracket.split(|byte| *byte == b'/').nth(1)?).ok()?;
    u64::from_str_radix(address, 16).ok().map(Said::Runs)
}

/// The first call of a function, with all that it calls.
struct Call {
    entry: u64,
    /// The instruction that ran last.
    last: u64,
    /// Where it returns to, once it was called.
    back: Option<RangeInclusive<u64>>,
    counts: Counts,
}

impl Call {
    fn of(entry: u64) -> Self {
        Self { entry, last: 0, back: None, counts: Counts::new() }
    }

    /// Takes what is said; the answer says whether the function has returned.
    fn take(&mut self, said: Said) -> bool {
        match (said, &self.back) {
            (Said::Runs(address), Some(back)) if back.contains(&address) => return true,
            // a call is an instruction of two or four bytes
            (Said::Runs(address), None) if address == self.entry => self.back = Some(self.last + 2..=self.last + 4),
            _ => {}
        }
        match said {
            Said::Runs(address) => {
                self.last = address;
                if self.back.is_some() {
                    *self.counts.entry(address).or_default() += 1;
                }
            }
            Said::TakenBack => {
                if let Some(count) = self.counts.get_mut(&self.last) {
                    *count -= 1;
                }
            }
        }
        false
    }
}

/// Counts the first call of the function that starts there, says when it begins, and reads no further than its end.
pub(crate) fn of_call(mut trace: impl BufRead, entry: u64, mut begins: impl FnMut()) -> Result<Counts, String> {
    let (mut call, mut line) = (Call::of(entry), Vec::new());
    while trace.read_until(b'\n', &mut line).map_err(|error| format!("trace: {error}"))? > 0 {
        let had_begun = call.back.is_some();
        if said(&line).is_some_and(|said| call.take(said)) {
            return Ok(call.counts);
        }
        if call.back.is_some() && !had_begun {
            begins();
        }
        line.clear();
    }
    Err("the emulator ended before the plan did".into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_of_the_emulator_are_understood() {
        let runs = b"Trace 0: 0x7f20280 [00800400/0002ad22/00000510/ff020201] __aeabi_dadd\n";
        assert_eq!(said(runs), Some(Said::Runs(0x2_AD22)));
        let nameless = b"Trace 0: 0x7f2028000100 [00800400/000000a8/00000510/ff020201] \n";
        assert_eq!(said(nameless), Some(Said::Runs(0xA8)));
        let stopped = b"Stopped execution of TB chain before 0x7f2028000100 [000000a8] Reset\n";
        assert_eq!(said(stopped), Some(Said::TakenBack));
        assert_eq!(said(b"cpu_io_recompile: rewound execution of TB to 0000029a\n"), Some(Said::TakenBack));
    }

    #[test]
    fn lines_that_are_no_instruction_are_not_taken_for_one() {
        for line in ["", "\n", "Trace", "Trace 0: 0x7f", "Trace 0: 0x7f [zz/zz/0]", "Trace 0: 0x7f [00800400]"] {
            assert_eq!(said(line.as_bytes()), None, "{line}");
        }
        assert_eq!(said(b"Taking exception 15 [IRQ] on CPU 0\n"), None);
        assert_eq!(said(b"xTrace 0: 0x7f [00800400/0000a8/0/0] Reset\n"), None);
        assert_eq!(said(b"Trace 0: 0x7f [00800400/\xff\xfe/0/0] Reset\n"), None);
    }

    /// A trace of these addresses; 0 takes the one before back.
    fn trace(addresses: &[u64]) -> Vec<u8> {
        let line = |address: &u64| match address {
            0 => "cpu_io_recompile: rewound execution of TB to 00000000\n".to_owned(),
            address => format!("Trace 0: 0x7f [00800400/{address:08x}/00000510/ff020201] f\nsomething else\n"),
        };
        addresses.iter().map(line).collect::<String>().into_bytes()
    }

    #[test]
    fn only_the_first_call_is_counted_and_what_it_calls() {
        for back in [0x102, 0x104] {
            let lines = trace(&[0x52, 0x100, 0x50, 0x52, 0x200, 0x52, back, 0x50, 0x52, back]);
            let counts = of_call(&*lines, 0x50, || {}).unwrap();
            assert_eq!(counts, Counts::from([(0x50, 1), (0x52, 2), (0x200, 1)]));
        }
    }

    #[test]
    fn what_is_taken_back_is_not_counted() {
        let lines = trace(&[0x100, 0x50, 0, 0x50, 0x52, 0, 0x52, 0x52, 0x104]);
        assert_eq!(of_call(&*lines, 0x50, || {}).unwrap(), Counts::from([(0x50, 1), (0x52, 2)]));
    }

    #[test]
    fn the_beginning_of_the_call_is_said_once() {
        for (addresses, expected) in [(&[0x100, 0x50, 0x52, 0, 0x50, 0x52][..], 1), (&[0x100, 0x52], 0)] {
            let mut begun = 0;
            assert!(of_call(&*trace(addresses), 0x50, || begun += 1).is_err());
            assert_eq!(begun, expected);
        }
    }

    #[test]
    fn a_trace_without_the_end_of_the_call_gives_nothing() {
        assert!(of_call(&*trace(&[0x100, 0x102, 0x104]), 0x50, || {}).is_err());
        assert!(of_call(&*trace(&[0x100, 0x50, 0x52]), 0x50, || {}).is_err());
    }
}
