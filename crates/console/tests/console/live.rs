//! What happens while nobody types: the strip chart, and a barometer on the machine.

use crate::terminal::Terminal;
use ocellus_card::entries;
use ocellus_console::Air;

/// The lines of a chart: those that have both lanes.
fn lines(text: &str) -> Vec<&str> {
    text.lines().filter(|line| line.matches('|').count() == 4 && !line.contains("vac")).collect()
}

/// The pressure in the chamber and the vacuum in the line that a line of the chart prints.
fn numbers(line: &str) -> (f64, f64) {
    let cells: Vec<&str> = line.split('|').collect();
    (cells[0].split_whitespace().last().unwrap().parse().unwrap(), cells[2].trim().parse().unwrap())
}

/// So many eighths of a second, and what was drawn in them.
fn wait(terminal: &mut Terminal, eighths: usize) -> String {
    terminal.fresh.clear();
    (0..eighths).for_each(|_| terminal.waits(125));
    terminal.fresh.replace("\r\n", "\n")
}

#[test]
fn eight_lines_a_second_and_none_before_its_time() {
    let mut terminal = Terminal::new();
    let begun = terminal.line("strip");
    assert!(begun.contains("invented set-up") && begun.contains("ILLUSTRATION"), "{begun}");
    terminal.fresh.clear();
    (0..12).for_each(|_| terminal.waits(10));
    assert_eq!(terminal.fresh, "");
    assert_eq!(lines(&wait(&mut terminal, 8)).len(), 8);
    // whoever was away does not get it all at once
    terminal.fresh.clear();
    terminal.waits(60_000);
    assert_eq!(lines(&terminal.fresh).len(), 1);
}

#[test]
fn each_screen_says_what_it_is() {
    let mut terminal = Terminal::new();
    terminal.line("strip");
    let drawn = wait(&mut terminal, 60);
    let headings = drawn.matches("ILLUSTRATION, no living eye").count();
    assert_eq!((lines(&drawn).len(), headings), (60, 3), "{drawn}");
    assert!(drawn.lines().all(|line| line.len() < 80));
}

/// What a teacher shows: the tip is closed, vacuum builds up to what is set, the tip is opened, and the chamber dips.
#[test]
fn keys_do_what_they_say() {
    let mut terminal = Terminal::new();
    terminal.line("strip");
    let rest = numbers(lines(&wait(&mut terminal, 2)).last().unwrap());
    terminal.byte(b'o', 0);
    let closed = numbers(lines(&wait(&mut terminal, 20)).last().unwrap());
    assert!(closed.0 > rest.0 + 3.0 && closed.1 == 400.0, "{rest:?} {closed:?}");
    terminal.byte(b'k', 0);
    assert_eq!(numbers(lines(&wait(&mut terminal, 1)).last().unwrap()).1, 375.0);
    terminal.byte(b'i', 0);
    terminal.byte(b'i', 0);
    assert_eq!(numbers(lines(&wait(&mut terminal, 5)).last().unwrap()).1, 425.0);
    terminal.byte(b'R', 0);
    let broken = wait(&mut terminal, 2);
    assert!(numbers(lines(&broken)[0]).0 < rest.0 - 2.0, "{broken}");
    assert!(lines(&broken)[0].contains("--"), "the way it went is drawn: {broken}");
    let over = numbers(lines(&wait(&mut terminal, 30)).last().unwrap());
    assert!((over.0 - rest.0).abs() < 0.5, "{over:?}");
    terminal.byte(b'u', 0);
    let higher = numbers(lines(&wait(&mut terminal, 30)).last().unwrap());
    assert!((higher.0 - over.0 - 3.6).abs() < 0.2, "5 cm of bottle: {higher:?}");
    terminal.byte(b'j', 0);
    assert!((numbers(lines(&wait(&mut terminal, 30)).last().unwrap()).0 - over.0).abs() < 0.2);
}

#[test]
fn it_ends_when_asked_and_the_next_line_is_a_command() {
    for end in [b'q', b'Q', b'\r', 0x03] {
        let mut terminal = Terminal::new();
        terminal.line("strip");
        wait(&mut terminal, 2);
        terminal.fresh.clear();
        terminal.byte(end, 0);
        assert!(terminal.fresh.ends_with("ocellus> "), "{:?}", terminal.fresh);
        assert_eq!(wait(&mut terminal, 8), "");
        assert!(terminal.line("al 23.46").contains("axial length"));
    }
}

/// A line end of two bytes begins it and does not end it.
#[test]
fn the_rest_of_a_line_end_is_no_key() {
    let mut terminal = Terminal::new();
    b"strip\r\n".iter().for_each(|byte| terminal.byte(*byte, 0));
    assert_eq!(lines(&wait(&mut terminal, 3)).len(), 3);
    terminal.byte(b'\n', 0);
    assert_eq!(wait(&mut terminal, 3), "");
}

#[test]
fn nobody_there_ends_it_after_a_minute() {
    let mut terminal = Terminal::new();
    terminal.line("strip");
    let drawn = wait(&mut terminal, 1000);
    assert_eq!(lines(&drawn).len(), 480);
    assert!(drawn.ends_with("ocellus> "), "{drawn}");
}

#[test]
fn a_chamber_that_collapses_ends_it() {
    let mut terminal = Terminal::new();
    for line in [
        "open 30",
        "eyelevel 0",
        "pumpkind flow",
        "aspiration 30",
        "rin 0.3",
        "rasp 2",
        "nucleus 600",
        "ceye 0.3",
        "ctube 0.15",
    ] {
        terminal.line(line);
    }
    assert!(terminal.line("strip").contains("The set-up that was entered"));
    terminal.byte(b'o', 0);
    wait(&mut terminal, 40);
    terminal.byte(b'r', 0);
    let drawn = wait(&mut terminal, 10);
    assert!(drawn.contains("Chamber collapsed, the model ends.") && drawn.ends_with("ocellus> "), "{drawn}");
}

#[test]
fn a_barometer_is_read_and_its_column_shown() {
    let mut terminal = Terminal::new();
    terminal.machine.air = Air::Measured { hpa: 834.21, celsius: 22.4 };
    let read = terminal.line("barometer zero");
    assert!(read.contains("834.21 hPa") && read.contains("625.71 mmHg") && read.contains("22.4 C"), "{read}");
    // 50 cm of water on its tube: 49.03 hPa
    terminal.machine.air = Air::Measured { hpa: 834.21 + 49.03, celsius: 22.4 };
    let read = terminal.line("barometer");
    assert!(read.contains("+36.78 mmHg") && read.contains("+50.0 cm"), "{read}");
    let taken = terminal.line("barometer take");
    assert!(taken.contains("883.2 hPa"), "{taken}");
    assert_eq!(terminal.draft().number(entries::STATION_PRESSURE), Some(883.2));
}

#[test]
fn a_barometer_that_is_not_there_or_does_not_answer_is_reported() {
    let mut terminal = Terminal::new();
    assert!(terminal.line("barometer").contains("There is no barometer on this machine"));
    terminal.machine.air = Air::Silent;
    for line in ["barometer", "barometer take"] {
        assert!(terminal.line(line).contains("does not answer"));
    }
    assert!(!terminal.draft().has(entries::STATION_PRESSURE));
    terminal.machine.air = Air::Measured { hpa: 200.0, celsius: 20.0 };
    assert!(terminal.line("barometer take").contains("not entered"));
}
