//! Case files and lists of lenses, from disk or from standard input.

use crate::args::CaseFiles;
use crate::case_file;
use crate::catalogue::{self, Catalogue};
use crate::problem::Problem;
use ocellus_card::draft::Draft;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

/// The entries of a case file that makes a case.
///
/// # Errors
/// Everything that is wrong with the files.
pub fn read_draft(files: &CaseFiles) -> Result<Draft, Vec<Problem>> {
    let catalogue = files.lenses.as_deref().map(read_catalogue).transpose()?;
    read_case(&files.case, catalogue.as_ref())
}

/// The same, with a list of lenses that was read before.
///
/// # Errors
/// Everything that is wrong with the file.
pub fn read_case(path: &Path, catalogue: Option<&Catalogue>) -> Result<Draft, Vec<Problem>> {
    let (name, bytes) = read(path)?;
    case_file::case(&name, &bytes, catalogue)
}

/// A list of lenses.
///
/// # Errors
/// Everything that is wrong with the file.
pub fn read_catalogue(path: &Path) -> Result<Catalogue, Vec<Problem>> {
    let (name, bytes) = read(path)?;
    catalogue::read(&name, &bytes)
}

/// Bytes of the longest file that is read: a case has a few thousand, a long list of lenses a few hundred thousand.
const LONGEST: u64 = 1 << 20;

/// The name of a file and its bytes.
///
/// # Errors
/// Where it cannot be read, or is too long to be what is wanted.
pub fn read(path: &Path) -> Result<(String, Vec<u8>), Vec<Problem>> {
    let name = if is_stdin(path) { "standard input".to_owned() } else { path.display().to_string() };
    let refused = |wrong: String, accepted| vec![Problem::of_file(&name, wrong, accepted)];
    let bytes = if is_stdin(path) { start(io::stdin().lock()) } else { File::open(path).and_then(start) }
        .map_err(|error| refused(format!("cannot be read: {error}"), "a file; - for standard input"))?;
    if bytes.len() as u64 > LONGEST {
        return Err(refused("too long for a case, a list of lenses, or a group of eyes".to_owned(), "at most 1 MiB"));
    }
    Ok((name, bytes))
}

/// Writes a file that was asked for.
///
/// # Errors
/// Where it cannot be written.
pub fn write(path: &Path, text: &str) -> Result<(), Vec<Problem>> {
    let refused =
        |error| vec![Problem::of_file(&path.display().to_string(), format!("cannot be written: {error}"), "")];
    std::fs::write(path, text).map_err(refused)
}

/// As much as can be used, and a byte more.
fn start(input: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    input.take(LONGEST + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Whether a path means standard input.
pub fn is_stdin(path: &Path) -> bool {
    path.as_os_str() == "-"
}
