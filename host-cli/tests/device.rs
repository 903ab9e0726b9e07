//! `ocellus device` against lines that are not there, silent, of another kind, or wrong: no number is ever taken from one.

mod ocellus;
use ocellus::{Done, Folder, GOOD};
use ocellus_card::id::{ItemId, PartId};
use ocellus_card::schema::of_parts;
use ocellus_card::{entries, items};
use ocellus_core::lens::method::Method;
use ocellus_link::frame::Frame;
use ocellus_link::message::{self, ItemEvent, Message, Reply, Streamed, Welcome};
use ocellus_link::receiver::{Received, Receiver};
use ocellus_link::respond::{Host, Responder};
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::thread;

struct Bench;

impl Host for Bench {
    fn board(&self) -> &str {
        "bench"
    }
    fn build(&self) -> &str {
        "test"
    }
    fn target(&self) -> &str {
        "test"
    }
    fn ticks(&self) -> u32 {
        0
    }
    fn ticks_per_second(&self) -> u32 {
        1
    }
    fn overruns(&self) -> u32 {
        0
    }
    fn stack_used(&self) -> u32 {
        3
    }
    fn stack_size(&self) -> u32 {
        4
    }
}

/// A device on a socket whose answers go through `change` before they are sent.
fn device(change: impl Fn(Frame) -> Vec<Frame> + Send + 'static) -> String {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = listener.local_addr().unwrap().port();
    thread::spawn(move || {
        let mut responder = Responder::new();
        for mut socket in listener.incoming().flatten() {
            let mut byte = [0];
            while let Ok(1) = socket.read(&mut byte) {
                let (mut said, mut sent) = (Vec::new(), Vec::new());
                responder.push(byte[0], 0, &Bench, &mut |byte| said.push(byte));
                let mut receiver = Receiver::new();
                for byte in said {
                    if let Received::Frame(frame) = receiver.push(byte, 0) {
                        change(frame).iter().for_each(|frame| frame.write(&mut |byte| sent.push(byte)));
                    }
                }
                if socket.write_all(&sent).is_err() {
                    break;
                }
            }
        }
    });
    format!("tcp:127.0.0.1:{port}")
}

fn ask(arguments: &[&str], port: &str) -> Done {
    let arguments = [&["device"], arguments, &["--port", port]].concat();
    Folder::new().with("case.toml", GOOD).run(&arguments, "")
}

#[test]
fn a_sound_device_is_equal_and_gives_the_same_card() {
    let port = device(|frame| vec![frame]);
    let done = ask(&["compare", "case.toml"], &port);
    assert_eq!((done.code, done.err.as_str()), (0, ""), "{}", done.out);
    assert!(done.out.starts_with("bench: 1 case, ") && done.out.trim_end().ends_with("all bits equal"), "{}", done.out);
    let (theirs, ours) =
        (ask(&["plan", "case.toml"], &port), Folder::new().with("case.toml", GOOD).run(&["plan", "case.toml"], ""));
    assert_eq!(theirs.out.replace("\nComputed by bench.\n", ""), ours.out);
    assert!(ask(&["hello"], &port).out.contains("bench"));
    let counters = ask(&["counters", "case.toml", "--json"], &port).out;
    assert!(counters.contains("\"stack_used\":3") && counters.contains("\"plan\":{\"events\":"), "{counters}");
}

/// One bit of one number, in frames whose CRCs all fit: only a comparison can find it, and it does.
#[test]
fn a_device_that_is_wrong_in_one_bit_is_found() {
    use std::sync::Mutex;
    let sum = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC);
    let events = Mutex::new(Vec::new());
    let port = device(move |frame| {
        let mut events = events.lock().unwrap();
        let mut frame = frame;
        if let Some(item) = ItemEvent::of(&frame)
            && (ItemId::find(item.part, item.what), item.method) == (Some(items::EXACT_POWER), Method::Srkt as u8 + 1)
        {
            let changed = Streamed::from(ItemEvent { value: f64::from_bits(item.value.to_bits() ^ 1), ..item });
            frame = changed.frame(frame.sequence());
        }
        if Streamed::has(frame.kind()) {
            events.push(frame.kind());
            events.extend(frame.payload());
        } else if let Some(done) = message::Done::of(&frame) {
            events.push(done.outcome);
            let done = message::Done { crc: sum.checksum(&std::mem::take(&mut *events)), ..done };
            frame = Reply::from(done).frame(frame.sequence());
        }
        vec![frame]
    });
    let done = ask(&["compare", "case.toml"], &port);
    assert_eq!(done.code, 1, "{}{}", done.out, done.err);
    assert!(done.out.contains("srkt_power_d in row 0: device "), "{}", done.out);
    assert!(done.out.contains("1 units in the last place apart"), "{}", done.out);
    assert!(done.out.trim_end().ends_with("1 DIFFER"), "{}", done.out);
}

/// A stream with an event missing or doubled is asked for again, and never used.
#[test]
fn a_stream_with_a_gap_yields_no_number() {
    for copies in [0, 2] {
        let port = device(move |frame| {
            let third = Streamed::has(frame.kind()) && frame.payload().starts_with(&[3, 0]);
            vec![frame; if third { copies } else { 1 }]
        });
        let done = ask(&["plan", "case.toml"], &port);
        assert_eq!((done.code, done.out.as_str()), (3, ""));
        assert!(done.err.contains("no answer that could be used, asked 8 times"), "{}", done.err);
    }
}

#[test]
fn other_tables_are_not_talked_to() {
    let port = device(|frame| match Welcome::of(&frame) {
        Some(welcome) => {
            vec![Reply::from(Welcome { schema: welcome.schema ^ 1, ..welcome }).frame(frame.sequence())]
        }
        None => vec![frame],
    });
    for question in [&["hello"][..], &["plan", "case.toml"], &["compare", "case.toml"]] {
        let done = ask(question, &port);
        assert_eq!((done.code, done.out.as_str()), (3, ""));
        assert!(done.err.contains("differ from this program's"), "{}", done.err);
    }
}

/// What a device has no part for is not sent to it, and not compared; both are said.
#[test]
fn a_device_with_fewer_parts_is_compared_in_those() {
    let lacks = |part: PartId| {
        device(move |frame| match Welcome::of(&frame) {
            Some(welcome) => {
                let parts = welcome.parts & !(1 << part.0);
                let schema = welcome.schema.wrapping_sub(of_parts(1 << part.0).unwrap());
                vec![Reply::from(Welcome { parts, schema, ..welcome }).frame(frame.sequence())]
            }
            None => vec![frame],
        })
    };
    let port = lacks(entries::ALTITUDE.id().part());
    let compared = ask(&["compare", "case.toml"], &port);
    assert_eq!(compared.code, 0, "{}{}", compared.out, compared.err);
    assert!(compared.out.contains("1 case, ") && compared.out.contains("all bits equal"), "{}", compared.out);
    assert!(compared.out.contains("the device lacks these parts of the card: pressure\n"), "{}", compared.out);
    let planned = ask(&["plan", "case.toml"], &port);
    assert_eq!(planned.code, 0, "{}{}", planned.out, planned.err);
    assert!(!planned.out.contains("map height of the theatre"), "{}", planned.out);
    assert!(
        planned.out.starts_with("Not on this card, since bench has no part for them: altitude_m.\n"),
        "{}",
        planned.out
    );
    assert!(ask(&["hello"], &port).out.contains("lacks pressure"));

    // no case of an eye without its target, as this program has it
    let port = lacks(entries::TARGET.id().part());
    let compared = ask(&["compare", "case.toml"], &port);
    let planned = ask(&["plan", "case.toml"], &port);
    assert_eq!(planned.code, 1, "{}{}", planned.out, planned.err);
    assert!(planned.out.ends_with("this is not a case, and nothing is computed.\n"), "{}", planned.out);
    assert!(compared.out.contains("0 cases, ") && compared.out.contains("1 more need parts"), "{}", compared.out);
}

/// Parts that this program does not know may change what the others mean.
#[test]
fn a_device_with_unknown_parts_is_not_talked_to() {
    let port = device(|frame| match Welcome::of(&frame) {
        Some(welcome) => {
            vec![Reply::from(Welcome { parts: welcome.parts | 1 << 63, ..welcome }).frame(frame.sequence())]
        }
        None => vec![frame],
    });
    let done = ask(&["hello"], &port);
    assert_eq!((done.code, done.out.as_str()), (3, ""));
    assert!(done.err.contains("parts of the card that this program does not know (8000000000000000)"), "{}", done.err);
}

#[test]
fn a_line_that_is_not_there_ends_with_3() {
    let free = TcpListener::bind(("127.0.0.1", 0)).unwrap().local_addr().unwrap().port();
    for port in [format!("tcp:127.0.0.1:{free}"), "/dev/no-such-line".to_owned(), "tcp:nowhere".to_owned()] {
        let done = ask(&["hello"], &port);
        assert_eq!((done.code, done.out.as_str()), (3, ""), "{port}");
        assert!(done.err.starts_with(&port) && done.err.contains("accepted: a serial line"), "{}", done.err);
    }
}

#[test]
fn a_silent_line_is_given_up() {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = listener.local_addr().unwrap().port();
    let held = thread::spawn(move || listener.accept().unwrap());
    let done = ask(&["hello"], &format!("tcp:127.0.0.1:{port}"));
    assert_eq!(done.code, 3);
    assert!(done.err.contains("no answer, asked 8 times"), "{}", done.err);
    drop::<(TcpStream, _)>(held.join().unwrap());
}

/// What is cut off may be the rest of a number: it is not sent, and the fault is not the line's.
#[test]
fn a_script_that_ends_in_mid_line_is_not_sent_whole() {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = format!("tcp:127.0.0.1:{}", listener.local_addr().unwrap().port());
    let heard = thread::spawn(move || {
        let (mut socket, mut heard, mut byte) = (listener.accept().unwrap().0, Vec::new(), [0]);
        while let Ok(1) = socket.read(&mut byte) {
            heard.push(byte[0]);
            // a prompt for a line, as a device gives it: a prompt that nobody waits for would reset the
            // connection when the desk leaves, and what the desk had said with it
            if matches!(byte[0], b'\r' | 0x03) {
                socket.write_all(b"ocellus> ").unwrap();
            }
        }
        heard
    });
    let done = Folder::new().run(&["device", "console", "--port", &port], "al 23.46\ntarget -2");
    assert_eq!(done.code, 2, "{}", done.err);
    assert!(done.err.contains("standard input: ends in mid-line: \"target -2\" was not sent"), "{}", done.err);
    let heard = String::from_utf8(heard.join().unwrap()).unwrap();
    assert!(heard.contains("al 23.46\r") && !heard.contains("target"), "{heard:?}");
}

/// A device that never asks for the next line is not spoken to further, and the session has failed.
#[test]
fn a_script_to_a_device_that_does_not_answer_fails() {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = format!("tcp:127.0.0.1:{}", listener.local_addr().unwrap().port());
    let held = thread::spawn(move || listener.accept().unwrap());
    let done = Folder::new().run(&["device", "console", "--port", &port], "al 23.46\n");
    assert_eq!(done.code, 3);
    assert!(done.err.contains("does not ask for the next line"), "{}", done.err);
    drop::<(TcpStream, _)>(held.join().unwrap());
}

/// A line that breaks is not a wrong name: nothing is said of what a name would be.
#[test]
fn a_line_that_breaks_is_not_one_that_is_not_there() {
    let listener = TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = format!("tcp:127.0.0.1:{}", listener.local_addr().unwrap().port());
    let gone = thread::spawn(move || drop(listener.accept().unwrap()));
    let done = ask(&["hello"], &port);
    gone.join().unwrap();
    assert_eq!(done.code, 3);
    assert!(done.err.contains("is not used") && !done.err.contains("accepted:"), "{}", done.err);
}

/// What is wrong with a file is reported before anything is asked.
#[test]
fn a_wrong_case_ends_with_2() {
    let wrong = GOOD.replace("23.46", "234.6");
    let done =
        Folder::new().with("case.toml", wrong).run(&["device", "plan", "case.toml", "--port", "tcp:127.0.0.1:1"], "");
    assert_eq!(done.code, 2);
    assert!(done.err.contains("axial_length_mm"), "{}", done.err);
}
