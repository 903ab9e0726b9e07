//! A list of lens models with their constants, so that a case needs to name a model only.

use crate::entries::{Entries, did_you_mean};
use crate::nearest::nearest;
use crate::problem::{ENOUGH, Problem, in_order};
use crate::toml_file::{TomlFile, TomlText};
use ocellus_card::draft::with_text;
use ocellus_card::id::EntryId;
use ocellus_card::{entries, of_section};
use toml::Spanned;
use toml::de::{DeString, DeTable, DeValue};

/// The lenses of one file.
pub struct Catalogue {
    name: String,
    lenses: Vec<Entries>,
}

/// Entries about the eye, the day or one power, not about a model.
const NOT_OF_A_MODEL: &[EntryId] = &[
    entries::LONG_EYE.id(),
    entries::LABEL_RULE.id(),
    entries::LENS_POWER.id(),
    entries::FRONT_RADIUS.id(),
    entries::BACK_RADIUS.id(),
    entries::LENS_CENTRE.id(),
    entries::LENS_CYLINDER.id(),
    entries::LENS_AXIS.id(),
    entries::HAPTIC_AXIS.id(),
    entries::SHOW_SRK2.id(),
];

/// What a list may say of a model.
fn of_a_model() -> impl Iterator<Item = EntryId> {
    of_section("lens").chain(of_section("toric")).filter(|entry| !NOT_OF_A_MODEL.contains(entry))
}

/// What a list fills in for the backup lens: the entry of the case, and that of the list.
const OF_A_BACKUP: &[(EntryId, EntryId)] = &[
    (entries::BACKUP_A_CONSTANT.id(), entries::A_CONSTANT.id()),
    (entries::BACKUP_STYLE.id(), entries::LENS_STYLE.id()),
];

/// Reads a list of lenses.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read(name: &str, bytes: &[u8]) -> Result<Catalogue, Vec<Problem>> {
    let text = TomlText::new(name, bytes)?;
    let file = text.parse();
    let mut catalogue = Catalogue { name: name.to_owned(), lenses: Vec::new() };
    let mut problems = Vec::new();
    if !file.lost_a_table() {
        for (key, value) in file.table.iter() {
            match value.get_ref() {
                DeValue::Array(lenses) if key.get_ref() == "lens" => {
                    for lens in lenses.iter() {
                        match lens.get_ref() {
                            _ if problems.len() >= ENOUGH => break,
                            DeValue::Table(table) => {
                                let at = file.line(lens.span().start);
                                catalogue.add(&file, at, table, &mut problems);
                            }
                            _ => problems.push(not_a_lens(&file, key, value)),
                        }
                    }
                }
                _ => problems.push(not_a_lens(&file, key, value)),
            }
        }
        if problems.is_empty() && catalogue.lenses.is_empty() {
            problems.push(Problem::of_file(name, "no lens in this list", "[[lens]] tables, each with a lens_model"));
        }
    }
    file.syntax(&mut problems);
    if problems.is_empty() { Ok(catalogue) } else { Err(in_order(name, problems)) }
}

fn not_a_lens(file: &TomlFile<'_>, key: &Spanned<DeString<'_>>, value: &Spanned<DeValue<'_>>) -> Problem {
    let accepted = "[[lens]] tables, each with a lens_model".to_owned();
    let wrong = "a list of lenses holds nothing else".to_owned();
    file.problem(key.span().start, key.get_ref(), file.typed(value.span()), wrong, accepted)
}

impl Catalogue {
    fn add(&mut self, file: &TomlFile<'_>, line: usize, table: &DeTable<'_>, problems: &mut Vec<Problem>) {
        let mut lens = Entries::default();
        let allowed: Vec<EntryId> = of_a_model().collect();
        for (key, value) in table.iter() {
            let found = match EntryId::of_key(key.get_ref()).filter(|entry| allowed.contains(entry)) {
                _ if problems.len() >= ENOUGH => return,
                Some(entry) => lens.enter(file, entry, key, value),
                None => {
                    let (wrong, accepted) = match EntryId::of_key(key.get_ref()) {
                        Some(_) => ("an entry of the case, not of a lens model", "in the case file".to_owned()),
                        None => ("no entry of a lens model has this key", did_you_mean(key.get_ref(), &allowed)),
                    };
                    let typed = file.typed(value.span());
                    Some(file.problem(key.span().start, key.get_ref(), typed, wrong.to_owned(), accepted))
                }
            };
            problems.extend(found);
        }
        let Some(model) = lens.draft.name(entries::LENS_MODEL) else {
            let key = entries::LENS_MODEL.id().key().to_string();
            if !table.contains_key(key.as_str()) {
                problems.push(Problem {
                    line: Some(line),
                    entry: Some(entries::LENS_MODEL.id()),
                    typed: key,
                    ..Problem::of_file(file.name, "a lens without a model", "lens_model = \"NAME\"")
                });
            }
            return;
        };
        if let Some(first) = self.find(model.as_str()) {
            let first = first.places.get(&entries::LENS_MODEL.id()).map_or(line, |place| place.line);
            let wrong = format!("given twice; first on line {first}");
            problems.push(lens.problem(file.name, entries::LENS_MODEL.id(), wrong, "each model once".to_owned()));
        }
        self.lenses.push(lens);
    }

    fn find(&self, model: &str) -> Option<&Entries> {
        self.lenses.iter().find(|lens| lens.draft.name(entries::LENS_MODEL).is_some_and(|name| name.as_str() == model))
    }

    /// Fills in what the case leaves out of its lens and its backup lens; where the two differ, that is a problem.
    pub(crate) fn fill(&self, case_file: &str, case: &mut Entries, problems: &mut Vec<Problem>) {
        if let Some(lens) = self.lens_of(case_file, entries::LENS_MODEL.id(), case, problems) {
            for entry in of_a_model().filter(|entry| *entry != entries::LENS_MODEL) {
                fill_one(case_file, case, (entry, entry), lens, problems);
            }
        }
        if let Some(lens) = self.lens_of(case_file, entries::BACKUP_MODEL.id(), case, problems) {
            for pair in OF_A_BACKUP {
                fill_one(case_file, case, *pair, lens, problems);
            }
        }
    }

    /// The lens that a case names; an unknown one is a problem.
    fn lens_of(
        &self,
        case_file: &str,
        named: EntryId,
        case: &Entries,
        problems: &mut Vec<Problem>,
    ) -> Option<&Entries> {
        let model = case.draft.name(named)?.as_str();
        let found = self.find(model);
        if found.is_none() {
            let models =
                || self.lenses.iter().filter_map(|lens| lens.draft.name(entries::LENS_MODEL)).map(|n| n.as_str());
            let accepted = match nearest(model, models()) {
                Some(alike) => format!("perhaps \"{alike}\""),
                None => models().map(|model| format!("\"{model}\"")).collect::<Vec<_>>().join(", "),
            };
            let wrong = format!("no lens of {} has this model", self.name);
            problems.push(case.problem(case_file, named, wrong, accepted));
        }
        found
    }
}

/// One entry of a case from one of a list.
fn fill_one(
    case_file: &str,
    case: &mut Entries,
    (into, from): (EntryId, EntryId),
    lens: &Entries,
    problems: &mut Vec<Problem>,
) {
    let (Some(value), Some(place)) = (lens.draft.number(from), lens.places.get(&from)) else { return };
    match case.draft.number(into) {
        // an entry that was made but could not be read stays a problem of its own
        None if problems.iter().any(|problem| problem.entry == Some(into)) => {}
        None => {
            case.draft.set(into, value);
            case.places.insert(into, place.clone());
        }
        Some(own) if own == value => {}
        Some(own) => {
            let wrong = format!(
                "the case has {}, the list of lenses {} ({}:{})",
                shown(into, own),
                shown(into, value),
                place.file,
                place.line
            );
            let accepted = format!("the same value, or no {} in the case", into.key());
            problems.push(case.problem(case_file, into, wrong, accepted));
        }
    }
}

fn shown(entry: EntryId, value: f64) -> String {
    with_text(entry, value, str::to_owned).unwrap_or_default()
}
