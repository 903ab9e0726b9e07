//! The command line.

use crate::draw::Picture;
use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand};
use ocellus_card::Subject;
use std::path::PathBuf;

/// The arithmetic of a cataract operation: a theatre card from one case, every lens method for a list of eyes, and how
/// each number came about.
///
/// Not a medical device; teaching and independent arithmetic check only; the surgeon, the label, the pharmacy and local
/// rules decide.
#[derive(Debug, Parser)]
#[command(name = "ocellus", version, max_term_width = 80, after_help = HELP)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What is printed below the options.
const HELP: &str = concat!(
    "Examples:
  ocellus plan case.toml                  the theatre card of one operated eye
  ocellus explain srkt case.toml          how a lens power came about, step by step
  ocellus batch eyes.csv > answers.csv    every method for a list of eyes

A case is a text file in TOML, one operated eye; this is the least it needs
(`ocellus fields` lists every entry, with its unit and range):

",
    include_str!("least.toml"),
    "
Exit codes:
  0  done
  1  something was refused, or two machines differ: part of the answer has no number
  2  the command or a file could not be used; what is wrong is printed, line by line
  3  no device answered, or the line to it failed"
);

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Print the theatre card of one operated eye.
    Plan {
        /// The case and the lenses.
        #[command(flatten)]
        case: CaseFiles,
        /// Print only what is needed at the table.
        #[arg(long, conflicts_with = "json")]
        short: bool,
        /// Print every number unrounded, as JSON.
        #[arg(long)]
        json: bool,
        /// Ask for two patient identifiers: covered by the read-back, never stored or printed.
        #[arg(long)]
        identify: bool,
    },
    /// Print how a number came about: each step with its equation, constants and source.
    Explain {
        /// What to explain.
        #[arg(value_parser = subjects())]
        subject: Subject,
        /// The case and the lenses.
        #[command(flatten)]
        case: CaseFiles,
        /// Print the steps unrounded, as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Draw a case as SVG: the toric axis from the seat, a lens that sits wrong, what each turn leaves, a surge.
    Draw {
        /// What to draw.
        #[arg(value_enum)]
        picture: Picture,
        /// The case and the lenses.
        #[command(flatten)]
        case: CaseFiles,
        /// Where to write it; standard output otherwise.
        #[arg(short, long, value_name = "FILE.svg")]
        output: Option<PathBuf>,
    },
    /// Vary one entry from one value to another: what follows from it, as a table and as curves.
    Sweep {
        /// The entry, by its key or its short word (`ocellus fields`).
        #[arg(value_name = "ENTRY")]
        entry: String,
        /// Its first value.
        #[arg(allow_negative_numbers = true)]
        from: String,
        /// Its last value.
        #[arg(allow_negative_numbers = true)]
        to: String,
        /// The case and the lenses.
        #[command(flatten)]
        case: CaseFiles,
        /// How many values.
        #[arg(long, default_value_t = 11, value_parser = clap::value_parser!(u16).range(2..=1000))]
        rows: u16,
        /// A number of the card, by its id in `ocellus plan --json`; several may be given. Usually those of chamber and surge.
        #[arg(long = "item", value_name = "ID")]
        items: Vec<String>,
        /// Also draw those that have the unit of the first, as SVG.
        #[arg(short, long, value_name = "FILE.svg")]
        output: Option<PathBuf>,
    },
    /// Put many eyes together as vectors: centroid, scatter, ellipses, and whether the centroid differs from zero.
    ///
    /// Columns, by name and in any order: id, eye, and either k1_d, k1_axis_deg, k2_d, k2_axis_deg with after_k1_d,
    /// after_k1_axis_deg, after_k2_d, after_k2_axis_deg, of which the change is taken (the surgeon's own SIA), or
    /// astigmatism_d, steep_axis_deg, a vector an eye; keratometric_index where it is not 1.3375. A wrong row
    /// refuses the table, since a mean without that row is another.
    Group {
        /// The table, in CSV with a header; - for standard input.
        #[arg(value_name = "EYES.csv")]
        table: PathBuf,
        /// Mirror left eyes, so that nasal and temporal are the same side of all.
        #[arg(long)]
        mirror_left: bool,
        /// Print the double-angle points of eyes, centroid and ellipses as CSV instead.
        #[arg(long, conflicts_with = "json")]
        points: bool,
        /// Print the same numbers unrounded, as JSON.
        #[arg(long)]
        json: bool,
        /// Also draw them, as SVG.
        #[arg(short, long, value_name = "FILE.svg")]
        output: Option<PathBuf>,
    },
    /// Answer a table of eyes with a table of every method's powers, a row for a row.
    ///
    /// Columns, by name and in any order: id, eye, axial_length_mm, k1_d, k1_axis_deg, k2_d, k2_axis_deg,
    /// keratometric_index, acd_mm, lens_thickness_mm, target_d, vertex_mm, a_constant, surgeon_factor, pacd_mm, haigis_a0,
    /// haigis_a1, haigis_a2, iol_power_d. An empty cell means not known.
    ///
    /// Unlike a case file, a table need not say what was measured: without the columns k_kind, acd_from, al_method,
    /// eye_state and previous_surgery these are taken to be keratometric, epithelium, optical, phakic and none. Index 1.3375,
    /// target 0 and vertex distance 12 mm are taken where they are not given. In a column that is there, an empty cell
    /// means not known, and the row is marked.
    ///
    /// A wrong row is marked in its column `error` and never stops the rest; a refused eye has its reason in `cautions`.
    Batch {
        /// The table, in CSV with a header; - for standard input.
        #[arg(value_name = "IN.csv")]
        table: String,
    },
    /// Ask a device, and check what it computes against this program, bit for bit.
    #[command(subcommand)]
    Device(Device),
    /// Type the device's own commands here, without any device; help lists them.
    Console,
    /// List every entry of a case: key, meaning, what is accepted, usual value.
    Fields {
        /// Print Markdown tables.
        #[arg(long)]
        markdown: bool,
    },
}

/// What to ask a device.
#[derive(Debug, Subcommand)]
pub enum Device {
    /// Say which board answers, what it was built from, and whether its numbers mean the same as here.
    Hello {
        /// Where the device is.
        #[command(flatten)]
        port: Port,
    },
    /// Print the theatre card of one operated eye, every number computed by the device.
    Plan {
        /// The case and the lenses.
        #[command(flatten)]
        case: CaseFiles,
        /// Where the device is.
        #[command(flatten)]
        port: Port,
    },
    /// Compute cases here and on the device, and compare every number by its 64 bits.
    ///
    /// Of each case the whole card, the working of every subject and the read-back; and the units of pressure, each in
    /// each. A table of eyes (a name that ends in .csv) is a case a row. What is not a case must be refused for the same
    /// reasons.
    Compare {
        /// Case files, in TOML, and tables of eyes, in CSV.
        #[arg(value_name = "CASE", required = true)]
        cases: Vec<PathBuf>,
        /// A list of lens models, in TOML, whose numbers are filled in for the models that the cases name.
        #[arg(long, value_name = "FILE")]
        lenses: Option<PathBuf>,
        /// Where the device is.
        #[command(flatten)]
        port: Port,
    },
    /// Talk with the device at this terminal.
    Console {
        /// Where the device is.
        #[command(flatten)]
        port: Port,
    },
    /// Print what the device has counted since it started: frames, bytes lost, stack used.
    Counters {
        /// A case, of which the device then times a plan.
        #[arg(value_name = "CASE.toml")]
        case: Option<PathBuf>,
        /// Print them as JSON.
        #[arg(long)]
        json: bool,
        /// Where the device is.
        #[command(flatten)]
        port: Port,
    },
}

/// Where the device is.
#[derive(Debug, Args)]
pub struct Port {
    /// A serial line, as /dev/ttyACM0, or tcp:HOST:PORT for an emulator.
    #[arg(long = "port", value_name = "PORT")]
    pub name: String,
}

/// The case and the lenses.
#[derive(Debug, Args)]
pub struct CaseFiles {
    /// The case file, in TOML; - for standard input.
    #[arg(value_name = "CASE.toml")]
    pub case: PathBuf,
    /// A list of lens models, in TOML, whose numbers are filled in for the models that the case names.
    #[arg(long, value_name = "FILE")]
    pub lenses: Option<PathBuf>,
}

fn subjects() -> impl TypedValueParser<Value = Subject> {
    let keys =
        Subject::all().map(|subject| PossibleValue::new(subject.key().to_string()).help(subject.name().to_string()));
    PossibleValuesParser::new(keys).try_map(|key| Subject::of_key(&key).ok_or("no such subject"))
}
