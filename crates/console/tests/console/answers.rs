//! What is answered is what the card says: each number, each caution, each code.

use crate::terminal::{Terminal, bits, by_toml, demo_cases, here, read};
use ocellus_card::case::Case;
use ocellus_card::caution::{Caution, Severity};
use ocellus_card::draft::{Draft, with_text};
use ocellus_card::entry::Kind;
use ocellus_card::error::Wrong;
use ocellus_card::id::{CautionId, EntryId, ItemId, PartId, SignOffId};
use ocellus_card::item::Item;
use ocellus_card::name::Name;
use ocellus_card::readback::{self, Identifiers};
use ocellus_card::sink::Sink;
use ocellus_card::{Subject, cautions, entries, items};
use ocellus_core::astigmatism::posterior::BackFrom;
use ocellus_core::astigmatism::site::{self, Side};
use ocellus_core::decimal::{Sign, fixed};
use ocellus_core::quantity::Site;
use ocellus_core::working::{Step, Steps};

/// All that the card streams.
#[derive(Default)]
struct All {
    parts: Vec<PartId>,
    items: Vec<(PartId, Item)>,
    cautions: Vec<Caution>,
    steps: Vec<Step>,
    lines: Vec<SignOffId>,
}

impl Steps for All {
    fn step(&mut self, step: Step) {
        self.steps.push(step);
    }
}

impl Sink for All {
    fn part(&mut self, part: PartId) {
        self.parts.push(part);
    }
    fn item(&mut self, item: Item) {
        self.items.push((self.parts.last().copied().unwrap_or(item.what.part()), item));
    }
    fn caution(&mut self, caution: Caution) {
        self.cautions.push(caution);
    }
    fn sign_off(&mut self, line: SignOffId) {
        self.lines.push(line);
    }
}

fn planned(draft: &Draft) -> All {
    let mut all = All::default();
    Case::try_from(draft).unwrap().plan(&mut all);
    all
}

/// A terminal at which a case was pasted.
fn with(text: &str) -> Terminal {
    let mut terminal = Terminal::new();
    terminal.paste(text.as_bytes());
    terminal
}

fn collapsed(text: impl ToString) -> String {
    text.to_string().split_whitespace().collect::<Vec<_>>().join(" ")
}

fn printed(item: &Item) -> String {
    if matches!(item.what, items::GUIDED | items::COMPARED) {
        return if item.value == 1.0 { "yes" } else { "no" }.to_owned();
    }
    let sign = if item.what.signed() { Sign::Always } else { Sign::Minus };
    let unit = if item.what.unit() == "1" { String::new() } else { format!(" {}", item.what.unit()) };
    format!("{}{unit}", fixed(item.value, item.what.places(), sign).unwrap())
}

/// What leads a line of a table that no method leads, as it is printed.
fn leader(item: &Item) -> Option<String> {
    item.what.led().filter(|led| led.leader == item.what)?;
    Some(match item.what {
        items::BACK_SOURCE => BackFrom::WORDS[item.value as usize].replace('_', " "),
        _ if item.value == 0.0 => printed(item).trim_start_matches('+').to_owned(),
        _ => printed(item),
    })
}

#[test]
fn a_card_has_every_number_of_the_plan() {
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        let card = terminal.line("plan");
        let all = planned(terminal.draft());
        let (flat, lines): (String, Vec<String>) = (collapsed(&card), card.lines().map(collapsed).collect());
        let mut label = String::new();
        for (part, item) in &all.items {
            let text = printed(item);
            let found = match (item.method, item.what) {
                _ if leader(item).is_some() => {
                    label = leader(item).unwrap();
                    lines.iter().any(|line| line.trim_start_matches("> ").starts_with(&label))
                }
                (_, what) if what.led().is_some() => {
                    let unit = format!(" {}", what.unit());
                    let cell = text.strip_suffix(unit.as_str()).unwrap_or(&text);
                    lines.iter().any(|line| {
                        line.trim_start_matches("> ").starts_with(&label) && line.split(' ').any(|word| word == cell)
                    })
                }
                (_, items::LABEL_CYLINDER) => flat.contains(&format!("label cylinder {text}")),
                (Some(method), _) => lines
                    .iter()
                    .any(|line| line.starts_with(method.name()) && format!("{line} ").contains(&format!(" {text} "))),
                (None, items::SITE_DEGREES) => flat.contains(&format!("{} {text} ", item.what.name())),
                (None, what) => flat.contains(&format!("{} {text} [{}]", what.name(), what.mark().word())),
            };
            assert!(found, "{name}, {part:?}: {item:?} {text}\n{card}");
        }
        assert!(all.items.len() > 20, "{name}: {}", all.items.len());
        assert!(card.lines().all(|line| line.len() < 80), "{name}");
    }
}

/// An entry's value as a card prints it.
fn value(draft: &Draft, entry: EntryId) -> String {
    match (draft.name(entry), draft.number(entry)) {
        (Some(name), _) => name.as_str().to_owned(),
        (None, Some(number)) if entry == entries::SIDE => with_text(entry, number, str::to_uppercase).unwrap(),
        (None, number) => {
            let text = with_text(entry, number.unwrap(), |text| text.replace('_', " ")).unwrap();
            format!("{text} {}", entry.unit()).trim_end().to_owned()
        }
    }
}

/// What is needed at the table, each once; with every caution and the read-back of the whole card, and no note.
#[test]
fn a_short_card_is_of_the_whole_one() {
    let (mut shown, mut left_out) = (0, 0);
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        let (whole, short) = (terminal.line("plan"), terminal.line("plan short"));
        assert!(2 * short.lines().count() < whole.lines().count() && short.lines().all(|line| line.len() < 80));
        let all = planned(terminal.draft());
        let body = short.split("\nCautions (").next().unwrap().split("\nRead-back").next().unwrap();
        let (flat, lines): (String, Vec<String>) = (collapsed(body), body.lines().map(collapsed).collect());
        for (_, item) in &all.items {
            let text = printed(item);
            let found = match item.method {
                Some(method) => lines
                    .iter()
                    .any(|line| line.starts_with(method.name()) && format!("{line} ").contains(&format!(" {text} "))),
                None => flat.contains(&format!("{} {text} ", item.what.name())),
            };
            assert!(found || !item.what.is_short(), "{name}: {item:?} {text}\n{short}");
            assert!(!found || item.what.is_short() || item.method.is_some(), "{name}: {item:?} {text}\n{short}");
            *(if item.what.is_short() { &mut shown } else { &mut left_out }) += 1;
        }
        for entry in terminal.draft().made() {
            let row = format!("{} {} ", entry.what(), value(terminal.draft(), entry));
            let count = format!("{flat} ").matches(&row).count();
            assert_eq!(count, usize::from(entry.is_short()), "{name}: {row}\n{short}");
        }
        let told = collapsed(&short);
        for caution in all.cautions.iter().filter(|caution| caution.code != cautions::NOT_A_DEVICE) {
            let is_note = caution.code.severity() == Severity::Note;
            assert_eq!(told.contains(&collapsed(caution.code.text())), !is_note, "{name}: {caution:?}\n{short}");
        }
        let readback = |card: &str| card.split("\nRead-back").nth(1).unwrap().to_owned();
        assert_eq!(readback(&short), readback(&whole), "{name}");
        // a method that does not count is marked as on the whole card
        assert_eq!(body.matches(" *  ").count(), whole.matches(" *  ").count(), "{name}: {short}");
    }
    assert!(shown > 150 && left_out > 1000, "{shown} {left_out}");
}

#[test]
fn a_card_has_every_caution_the_gravest_first() {
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        let card = terminal.line("plan");
        let all = planned(terminal.draft());
        let flat = collapsed(&card);
        let told = flat.split("Cautions (").nth(1).unwrap();
        for caution in &all.cautions {
            let whole = if caution.code == cautions::NOT_A_DEVICE { flat.as_str() } else { told };
            assert!(whole.contains(&collapsed(caution.code.text())), "{name}: {caution:?}");
        }
        let grave: Vec<&Caution> = all.cautions.iter().filter(|c| c.code.severity() == Severity::Refuse).collect();
        let head = flat.split("Eye to be operated").next().unwrap();
        assert_eq!(head.contains("REFUSED"), !grave.is_empty(), "{name}");
        assert!(grave.iter().all(|caution| head.contains(&collapsed(caution.code.text()))), "{name}");
        let places: Vec<usize> = ["\n  REFUSED ", "\n  CAUTION ", "\n  note "]
            .iter()
            .flat_map(|word| card.match_indices(*word).map(|(place, _)| place))
            .collect();
        assert!(places.is_sorted(), "{name}: {places:?}");
        assert!(all.lines.iter().all(|line| flat.contains(&collapsed(line.text()))), "{name}");
    }
}

#[test]
fn a_refused_eye_gets_no_lens() {
    let mut terminal = with(&demo_cases().into_iter().find(|(name, _)| name == "average").unwrap().1);
    terminal.line("surgery radial_cuts");
    for line in ["plan", "plan lens", "plan backup"] {
        let answer = terminal.line(line);
        assert!(answer.contains("REFUSED"), "{answer}");
        assert!(!answer.contains("power for") && !answer.contains("exact power"), "{answer}");
    }
    let answer = terminal.line("explain srkt");
    assert!(answer.contains("not computed") && answer.contains("REFUSED") && !answer.contains("ELP"), "{answer}");
}

/// The parts that stand on a card by themselves.
fn headed() -> impl Iterator<Item = PartId> {
    PartId::all().filter(|part| !part.heading().is_empty())
}

#[test]
fn a_part_alone_is_that_part() {
    let mut terminal = with(&demo_cases().into_iter().find(|(name, _)| name == "long-toric").unwrap().1);
    let whole = terminal.line("plan");
    let stands = |part: &PartId| whole.contains(&format!("\n{} (LEFT)", part.heading()));
    assert!(headed().filter(stands).count() > 10, "{whole}");
    for part in headed().filter(stands) {
        let answer = terminal.line(&format!("plan {}", part.key()));
        for other in headed() {
            assert_eq!(answer.contains(&format!("\n{} (LEFT)", other.heading())), other == part, "{answer}");
        }
        // line by line as on the whole card
        let body = answer.split("\nCautions").next().unwrap().trim();
        assert!(whole.contains(body), "{body}");
    }
    for part in PartId::all().filter(|part| part.heading().is_empty()) {
        assert!(terminal.line(&format!("plan {}", part.key())).contains("no part of the card"), "{}", part.key());
    }
}

#[test]
fn read_backs_are_the_cards() {
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        let draft = by_toml(&text);
        let case = Case::try_from(&draft).unwrap();
        let code = readback::of(&case, None).unwrap();
        let words: Vec<&str> = code.words().map(|word| if word.is_empty() { "-" } else { word }).collect();
        let line = format!("\n  {}   {}\n", code.as_str(), words.join(" "));
        assert!(terminal.line("readback").contains(&line), "{name}");
        assert!(terminal.line("plan").contains(&line), "{name}");
        let identifiers = Identifiers(Name::parse("H 12345").unwrap(), Name::parse("1950-01-31").unwrap());
        let over = readback::of(&case, Some(&identifiers)).unwrap();
        assert!(terminal.line("identify").ends_with("\nHospital number: "), "{name}");
        assert!(terminal.line("H 12345").ends_with("Date of birth, YYYY-MM-DD: "), "{name}");
        let answer = terminal.line("1950-01-31");
        assert!(
            answer.contains(&format!("  {}   ", over.as_str())) && over.as_str() != code.as_str(),
            "{name}: {answer}"
        );
        assert_eq!(bits(terminal.draft()), bits(&draft), "{name}");
    }
}

#[test]
fn identifiers_are_asked_for_again_and_kept_nowhere() {
    let mut terminal = with(&demo_cases()[1].1);
    terminal.line("identify");
    assert!(terminal.line("").ends_with("printable ASCII characters\nHospital number: "));
    assert!(terminal.line("a name of more than twenty-four").ends_with("Hospital number: "));
    terminal.line("SECRET-1");
    // what is typed here is an answer, never a command
    for wrong in ["clear all", "31.01.1950", "1950-02-30"] {
        assert!(terminal.line(wrong).ends_with("Date of birth, YYYY-MM-DD: "));
    }
    let answer = terminal.line("1950-01-31");
    assert!(answer.contains("Read-back"), "{answer}");
    assert!(terminal.draft().has(entries::AXIAL_LENGTH));
    let screen = terminal.screen.len();
    b"\x1b[A\r".iter().for_each(|byte| terminal.byte(*byte, 0));
    let since = terminal.screen[screen - 1..].join("\n");
    assert!(since.contains("ocellus> identify") && !since.contains("SECRET"), "{since}");
    // given up halfway
    terminal.line("SECRET-2");
    terminal.byte(0x03, 0);
    assert_eq!(terminal.screen.last().map(String::as_str), Some("ocellus> "));
    assert!(terminal.line("al").contains("axial length"));
}

#[test]
fn every_step_of_every_subject_is_printed() {
    let mut seen = 0;
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        for subject in Subject::all() {
            let answer = terminal.line(&format!("explain {}", subject.key()));
            let mut all = All::default();
            let draft = terminal.draft().clone();
            let any = Case::try_from(&draft).unwrap().explain(subject, &mut all);
            assert_eq!(!any, answer.contains("not computed"), "{name} {}", subject.key());
            let mut lines = answer.lines();
            for step in &all.steps {
                let line = step.line().unwrap();
                let found = lines.find(|text| {
                    let words: Vec<&str> = text.split_whitespace().collect();
                    words.first() == Some(&line.symbol)
                        && words.get(1).and_then(|value| value.parse::<f64>().ok()).is_some_and(|value| {
                            (value - step.value).abs() <= 0.5000001e-7 * step.value.abs().max(1e-8)
                        })
                        && (line.unit() == "1" || words.get(2) == Some(&line.unit()))
                        && text.contains(line.mark.word())
                });
                assert!(found.is_some(), "{name} {}: {step:?} {}\n{answer}", subject.key(), line.symbol);
                seen += 1;
            }
        }
    }
    assert!(seen > 500, "{seen}");
}

/// The ladder and the labels are left out of a nudge: their lines can be other labels.
fn is_nudged(what: ItemId) -> bool {
    let how_sure = items::ERROR_AL..=items::CHANCE_10;
    let of_label = items::LABEL_CYLINDER..=items::RESIDUAL_OFF_10;
    what.led().is_none()
        && !how_sure.contains(&what)
        && !of_label.contains(&what)
        && !matches!(what, items::THUMB_LESS | items::THUMB_MUCH)
}

#[test]
fn a_nudge_shows_every_change_and_makes_none() {
    let changes: &[(&str, EntryId, f64)] = &[
        ("al 0.1", entries::AXIAL_LENGTH.id(), 0.1),
        ("al -0.13 mm", entries::AXIAL_LENGTH.id(), -0.13),
        ("k1 0.5 D", entries::K1.id(), 0.5),
        ("target -0.25", entries::TARGET.id(), -0.25),
        ("a 1.5", entries::A_CONSTANT.id(), 1.5),
        ("iol 1", entries::LENS_POWER.id(), 1.0),
        ("vertex 2", entries::VERTEX.id(), 2.0),
        ("sulcus 0.25", entries::SULCUS_SHIFT.id(), 0.25),
        ("iolaxis 10", entries::LENS_AXIS.id(), 10.0),
        ("sia 0.3", entries::FLATTENING.id(), 0.3),
        ("site 90", entries::INCISION_SITE.id(), 90.0),
        ("cut 0.2", entries::CUT.id(), 0.2),
        ("altitude 2000", entries::ALTITUDE.id(), 2000.0),
        ("density 5", entries::DENSITY.id(), 5.0),
        ("open 12.5", entries::OPEN_LEVEL.id(), 12.5),
        ("temp 10", entries::TEMPERATURE.id(), 10.0),
    ];
    let (mut told, mut appeared) = (0, 0);
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        for (line, entry, change) in changes {
            let before = terminal.draft().clone();
            let answer = terminal.line(&format!("nudge {line}"));
            assert_eq!(bits(terminal.draft()), bits(&before), "{name}: {line}");
            assert_eq!(format!("{:?}", terminal.draft()), format!("{before:?}"), "{name}: {line}");
            let Some(old) = before.number(*entry).or(entry.default()) else {
                assert!(answer.contains("not entered"), "{answer}");
                continue;
            };
            let Kind::Number(places, bounds) = entry.kind() else { unreachable!() };
            let mut after = before.clone();
            let new = format!("{:.*}", usize::from(places), old + change);
            after.enter(*entry, &new).unwrap();
            if bounds.check(after.number(*entry).unwrap()).is_err() || Case::try_from(&after).is_err() {
                assert!(answer.contains("accepted:") || answer.contains("no case"), "{name}: {line}: {answer}");
                continue;
            }
            let (old, new) = (planned(&before), planned(&after));
            let flat = collapsed(&answer);
            let mut expected = 1;
            let key = |item: &Item| (item.what, item.method);
            let of = |item: &Item| {
                item.method
                    .map_or(item.what.name().to_string(), |method| format!("{}, {}", item.what.name(), method.name()))
            };
            for (_, was) in old.items.iter().filter(|(_, item)| is_nudged(item.what)) {
                let now = new.items.iter().find(|(_, item)| key(item) == key(was)).map(|(_, item)| printed(item));
                if now.as_ref() != Some(&printed(was)) {
                    let now = now.unwrap_or("none".to_owned());
                    let row = format!("{} {} -> {now}", of(was), printed(was));
                    assert!(flat.contains(&row), "{name}: {line}: {row}\n{answer}");
                    expected += 1;
                }
            }
            for (_, now) in new.items.iter().filter(|(_, item)| is_nudged(item.what)) {
                if !old.items.iter().any(|(_, item)| key(item) == key(now)) {
                    let row = format!("{} none -> {}", of(now), printed(now));
                    assert!(flat.contains(&row), "{name}: {line}: {row}\n{answer}");
                    (expected, appeared) = (expected + 1, appeared + 1);
                }
            }
            assert_eq!(flat.matches(" -> ").count(), expected, "{name}: {line}: {answer}");
            for code in CautionId::all().filter(|code| code.severity() != Severity::Note) {
                let has = |all: &All| all.cautions.iter().any(|caution| caution.code == code);
                let row = |which: &str| format!("{which} {} {}", code.severity().word(), collapsed(code.text()));
                assert_eq!(flat.contains(&row("new")), has(&new) && !has(&old), "{name}: {line}: {answer}");
                assert_eq!(flat.contains(&row("gone")), has(&old) && !has(&new), "{name}: {line}: {answer}");
            }
            told += expected - 1;
        }
    }
    assert!(told > 800 && appeared > 0, "{told} {appeared}");
}

#[test]
fn a_nudge_that_cannot_be_changes_nothing() {
    let mut terminal = with(&demo_cases()[1].1);
    let before = bits(terminal.draft());
    for line in [
        "al",
        "al 30",
        "al 0.001",
        "al x",
        "al 0.1 cm",
        "eye 1",
        "nothing 1",
        "",
        "date 1",
        "model 1",
        "al 1e3",
        "al 0,1",
        "gas -1",
    ] {
        let answer = terminal.line(&format!("nudge {line}"));
        assert_eq!(bits(terminal.draft()), before, "{line}");
        assert!(!answer.contains("Nothing was changed"), "{line}: {answer}");
    }
}

/// Legends beside a drawing print the card's numbers by the card's rule.
#[test]
fn legends_are_the_cards_numbers() {
    let mut drawn = 0;
    for (name, text) in demo_cases() {
        let mut terminal = with(&text);
        let all = planned(terminal.draft());
        let draft = terminal.draft().clone();
        let item = |what: ItemId| all.items.iter().find(|(_, item)| item.what == what).map(|(_, item)| printed(item));
        let dial = terminal.line("draw axis");
        let (legend, rhexis) = (collapsed(&dial), terminal.line("draw rhexis"));
        if let Some(steep) = item(items::PLANNED_AXIS) {
            assert!(
                legend.contains("steep meridian after") && dial.contains(&format!("the incision {steep}\n")),
                "{name}: {dial}"
            );
            drawn += 1;
        }
        if let Some(axis) = draft.number(entries::LENS_AXIS) {
            assert!(dial.contains(&format!(
                "as chosen {}\n",
                printed(&Item { what: items::MARK_AXIS, method: None, row: 0, value: axis })
            )));
            drawn += 1;
        }
        let at = |(_, item): &&(PartId, Item)| item.what == items::SITE_DEGREES;
        let Some(site) = draft.number(entries::INCISION_SITE).or(all.items.iter().find(at).map(|(_, item)| item.value))
        else {
            assert!(dial.contains("Nothing to draw") && rhexis.contains("Nothing to draw"), "{name}");
            continue;
        };
        let eye = if draft.number(entries::SIDE) == Some(Side::Left.code()) { Side::Left } else { Side::Right };
        assert!(dial.contains(&format!("### incision {site} deg\n")), "{name}: {dial}");
        assert!(dial.contains(site::word(Site::from_deg(site).unwrap(), eye)), "{name}: {dial}");
        for (words, what) in [
            ("*** rhexis ", items::RHEXIS_TRUE),
            ("least overlap ", items::OVERLAP_WORST),
            ("most overlap ", items::OVERLAP_BEST),
        ] {
            if let Some(number) = item(what) {
                assert!(rhexis.contains(&format!("{words}{number}\n")), "{name}: {rhexis}");
                drawn += 1;
            }
        }
        for (drawing, part) in [(&dial, "axis"), (&rhexis, "rhexis")] {
            let lines: Vec<&str> =
                drawing.trim_start_matches('\n').lines().filter(|line| !line.starts_with("ocellus>")).collect();
            let [picture @ .., last] = &lines[..] else { panic!("{name}: {drawing}") };
            assert!(picture.len() <= 21 && lines.iter().all(|line| line.len() <= 72), "{name}: {drawing}");
            assert_eq!(*last, format!("Read its cautions first: plan {part}."));
        }
    }
    assert!(drawn > 30, "{drawn}");
}

/// A part of a card hides no caution of it: what bears on one part may be said of another.
#[test]
fn a_part_is_printed_with_every_caution() {
    // both axes the same: said of the measurements, and decisive for a toric lens
    let mut terminal = with(&demo_cases().iter().find(|(name, _)| name.contains("long-toric")).unwrap().1);
    terminal.line("k2axis 8");
    let whole = terminal.line("plan");
    let cautions = |text: &str| text.lines().filter(|line| line.starts_with("  CAUTION ")).count();
    let says = |text: &str| collapsed(text).contains(&collapsed(cautions::AXES_SAME.text()));
    assert!(says(&whole), "{whole}");
    for part in headed() {
        let answer = terminal.line(&format!("plan {}", part.key()));
        assert_eq!(cautions(&answer), cautions(&whole), "{}: {answer}", part.key());
        assert!(says(&answer), "{answer}");
    }
}

/// The rough library is named by the file that places characters, and by no other.
#[test]
fn only_the_placing_of_characters_is_rough() {
    fn files(folder: &std::path::Path, found: &mut Vec<std::path::PathBuf>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() { files(&path, found) } else { found.push(path) }
        }
    }
    let mut sources = Vec::new();
    files(&here("src"), &mut sources);
    assert!(sources.len() > 20);
    let naming: Vec<_> = sources.iter().filter(|path| read(path).contains("micromath")).collect();
    assert_eq!(naming, [&here("src/place.rs")]);
    // and what that file hands out is whole columns and rows
    let place = read(&here("src/place.rs"));
    let handed: Vec<&str> = place.lines().filter(|line| line.contains("pub")).map(str::trim).collect();
    assert_eq!(
        handed,
        [
            "pub(crate) struct Place {",
            "pub(crate) column: i16,",
            "pub(crate) row: i16,",
            "pub(crate) fn on_circle(centre: Place, radius: f64, degrees: f64) -> Place {",
            "pub(crate) fn along(value: f64, full: f64, columns: usize) -> usize {",
        ]
    );
}

#[test]
fn pressures_are_converted_by_the_core() {
    use ocellus_core::fluids::unit::{Unit, convert};
    let mut terminal = Terminal::new();
    for from in Unit::ALL {
        let all = terminal.line(&format!("convert 12.5 {}", from.word().to_lowercase()));
        for to in Unit::ALL.iter().filter(|to| *to != from) {
            let one = terminal.line(&format!("convert 12.5{} {}", from.word(), to.word().to_uppercase()));
            let line = one.trim().lines().next().unwrap();
            assert!(all.contains(line), "{all}\n{line}");
            // rounded as one reads it, and in brackets as one computes on from it
            let (read, exactly) = line.split("= ").nth(1).unwrap().split_once(" (").unwrap();
            let (number, unit) = read.split_once(' ').unwrap();
            let value: f64 = exactly.trim_end_matches(')').parse().unwrap();
            let exact = convert(12.5, *from, *to);
            assert!((value - exact).abs() <= 0.50001e-7 * exact, "{line} {exact}");
            assert_eq!(number, fixed(exact, to.places(), Sign::Minus).unwrap().as_str());
            assert_eq!(unit, to.word());
        }
    }
    for wrong in ["", "500", "500 mmHg inches", "mmHg", "5,0 kPa", "500 pounds", "nan Pa"] {
        assert!(terminal.line(&format!("convert {wrong}")).contains("accepted: convert"), "{wrong}");
    }
}

/// There is room for the cautions of any card.
#[test]
fn no_card_has_more_cautions_than_are_kept() {
    let (_, text) = demo_cases().into_iter().find(|(name, _)| name == "long-toric").unwrap();
    let usual = by_toml(&text);
    let (mut state, mut most, mut cards) = (0x9e37_79b9_7f4a_7c15_u64, 0, 0);
    let mut next = |below: u64| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 16) % below
    };
    for _ in 0..20_000 {
        let mut draft = usual.clone();
        for entry in EntryId::all() {
            match (entry.kind(), next(6)) {
                (Kind::Name, 0) | (Kind::Number(..), 1) => draft.clear(entry),
                (Kind::Number(_, bounds), 0) => {
                    draft.set(entry, bounds.min + (bounds.max - bounds.min) * next(1001) as f64 / 1000.0)
                }
                (Kind::Choice(words), 0..2) => draft.set(entry, next(words.len() as u64) as f64),
                _ => {}
            }
        }
        // what an entry asks for beside it is entered too, what contradicts another is taken back
        for _ in 0..4 {
            let mut wrong = Vec::new();
            Case::check(&draft, &mut |error| wrong.push(error));
            for error in wrong {
                let entry = error.entry;
                match (error.wrong, entry.kind()) {
                    (Wrong::Missing | Wrong::Incomplete, Kind::Number(_, bounds)) => {
                        draft.set(entry, bounds.min + (bounds.max - bounds.min) * next(1001) as f64 / 1000.0)
                    }
                    (Wrong::Missing | Wrong::Incomplete, Kind::Choice(words)) => {
                        draft.set(entry, next(words.len() as u64) as f64)
                    }
                    _ => draft.clear(entry),
                }
            }
        }
        if let Ok(case) = Case::try_from(&draft) {
            let mut all = All::default();
            case.plan(&mut all);
            all.cautions.retain(|caution| caution.code != cautions::NOT_A_DEVICE);
            let mut distinct: Vec<Caution> = Vec::new();
            all.cautions.iter().for_each(|c| {
                if !distinct.contains(c) {
                    distinct.push(*c)
                }
            });
            (most, cards) = (most.max(distinct.len()), cards + 1);
        }
    }
    assert!(cards > 100, "{cards}");
    assert!((30..=80).contains(&most), "{most} of {cards}: the room is for 88");
}
