use super::*;

fn value(rest: &str) -> Result<Vec<Value>, String> {
    parse(&format!("[[value]]\nid='a-1'\nwhat='w'\nunit='D'\nmark='read'\nsource='s'\n{rest}"))
}

/// A table of two cases with two results each, `head` above its rows.
fn table(head: &str, rows: &str) -> Result<Vec<Value>, String> {
    parse(&format!(
        "[[table]]\nid='t'\nwhat='w'\nunit='D'\nkind='derived'\nmark='two'\nsource='s'\n{head}\nrows='''\n{rows}\n'''"
    ))
}

fn refused(result: Result<Vec<Value>, String>, words: &[&str]) {
    let error = result.unwrap_err();
    for word in words {
        assert!(error.contains(word), "`{word}` is not in: {error}");
    }
}

#[test]
fn a_tolerance_needs_its_reason() {
    let body = "given={k='43.8'}\nexpect='20.25'\nkind='derived'\ntolerance='0.1'\n";
    refused(value(body), &["a-1: ", "says why"]);
    refused(value(&format!("{body}note=' '\n")), &["a-1: ", "says why"]);
    let values = value(&format!("{body}note='a mean of ratios'\n")).unwrap();
    assert_eq!(values[0].numbers[0].tolerance, 0.1);
}

#[test]
fn in_a_table_too_a_tolerance_needs_its_reason() {
    refused(table("tolerance='0.1'", "id | expect\n1 | 3.00"), &["t-1: ", "says why"]);
    refused(
        table("", "id | expect | tolerance | note\n1 | 3.00 | 0.1 | why\n2 | 3.00 | 0.1 |"),
        &["t-2: ", "says why"],
    );
}

#[test]
fn a_tolerance_is_for_all_numbers_or_one_each() {
    let two = |tolerance: &str| {
        value(&format!("given={{}}\nexpect='1.0 2.0 3.0'\nkind='derived'\nnote='n'\ntolerance='{tolerance}'\n"))
    };
    assert_eq!(two("0.2").unwrap()[0].numbers.iter().map(|n| n.tolerance).collect::<Vec<_>>(), [0.2, 0.2, 0.2]);
    refused(two("0.2 0.3"), &["a-1: ", "2 tolerances for 3 numbers"]);
}

#[test]
fn a_tolerance_finer_than_an_f64_is_refused() {
    refused(value("given={}\nexpect='20.249912345678901234'\nkind='derived'\n"), &["a-1: ", "finer than an f64"]);
}

#[test]
fn an_unknown_kind_or_key_is_refused() {
    refused(value("given={}\nexpect='1'\nkind='certain'\n"), &["a-1: ", "certain"]);
    refused(value("given={}\nexpect='1'\nkind='derived'\nexpects='2'\n"), &["a-1: ", "expects"]);
    refused(value("given={}\nexpect='1'\nkind='derived'\nrows='2'\n"), &["a-1: ", "rows"]);
    refused(table("expects='2'", "id | expect\n1 | 3"), &["t-1: ", "expects"]);
    refused(table("", "id | expect | tolerence\n1 | 3 | 0.1"), &["t-1: ", "tolerence"]);
    refused(table("results.m = { units = 'D' }", "id | m\n1 | 3"), &["t-1-m: ", "units"]);
    refused(parse("[shared]\nunits = 'D'\n[[value]]\nid='a-1'"), &["a-1: ", "units"]);
    refused(parse("[[values]]\nid='a-1'"), &["values"]);
}

#[test]
fn what_is_no_text_or_lacks_is_refused() {
    refused(value("given={}\nexpect=1.0\nkind='derived'\n"), &["a-1: ", "string"]);
    refused(value("given={k=43.8}\nexpect='1'\nkind='derived'\n"), &["a-1: ", "string"]);
    refused(value("expect='1'\nkind='derived'\n"), &["a-1: ", "given"]);
    refused(value("given='43.8'\nexpect='1'\nkind='derived'\n"), &["a-1: ", "`given` is not a table"]);
    refused(value("given=['43.8']\nexpect='1'\nkind='derived'\n"), &["a-1: ", "a line of `given` is not a table"]);
    refused(value("given={}\nkind='derived'\n"), &["a-1: ", "expect"]);
    refused(value("given={}\nexpect='about 1'\nkind='derived'\n"), &["a-1: ", "expect: ", "about"]);
    refused(parse("[[value]]\nwhat='w'"), &["a record without id"]);
}

#[test]
fn what_is_said_of_fewer_values_holds_against_what_is_said_of_more() {
    let values = parse(
        "[shared]\nid='f'\nwhat='file'\nkind='derived'\nmark='two'\nsource='all'\nunit='D'\ngiven=[{a='1', b='1'}, {c='1', d='1'}]
         [[table]]\nid='t'\nwhat='table'\nsource='table'\ngiven=[{b='2'}, {c='2', d='2'}]\nresults.m = { what='m', given={d='4'}, mark='read' }
         rows='''\nid | c || what | source | m\n1 | 3 || row | row | 5.0\n2 | || | | 6.0'''
         [[value]]\nid='v'\nwhat='v'\nexpect='7.0'\ngiven={b='2'}",
    )
    .unwrap();
    let said = |value: &Value| {
        let given: Vec<_> = value.given.values().cloned().collect();
        (
            value.id.clone(),
            value.what.clone(),
            given.concat(),
            value.source.clone(),
            value.mark.clone(),
            value.expect.clone(),
        )
    };
    let is = |said: [&str; 6]| said.map(str::to_owned).into();
    assert_eq!(said(&values[0]), is(["f-v", "file: v", "1211", "all", "two", "7.0"]));
    assert_eq!(said(&values[1]), is(["f-t-1-m", "file: table: row: m", "1234", "row", "read", "5.0"]));
    assert_eq!(said(&values[2]), is(["f-t-2-m", "file: table: m", "1224", "table", "read", "6.0"]));
    assert_eq!(values.len(), 3);
}

#[test]
fn an_input_is_given_once_in_a_record() {
    refused(value("given=[{k='1'}, {k='2'}]\nexpect='1'\nkind='derived'\n"), &["a-1: ", "`k` is given twice"]);
}

#[test]
fn a_star_in_the_name_of_a_result_is_the_row() {
    let values = table(
        "results.'outer-*' = {}\nresults.bore = {}",
        "id | gauge || outer-* | bore\n18 | 18 || 1.270 | 0.838\n19 | 19 || 1.067 |",
    )
    .unwrap();
    assert_eq!(
        values.iter().map(|value| value.id.as_str()).collect::<Vec<_>>(),
        ["t-outer-18", "t-18-bore", "t-outer-19"]
    );
    assert_eq!(values[2].text("gauge"), Ok("19"));
}

#[test]
fn rows_that_are_no_table_are_refused() {
    refused(table("", ""), &["t: ", "the first column"]);
    refused(table("", "name | expect\n1 | 3"), &["t: ", "the first column"]);
    refused(table("", "id | k || expect | k\n1 | 2 || 3 | 4"), &["t: ", "two columns are called `k`"]);
    refused(table("", "id | expect | unit\n1 | 3 | D\n2 | 3"), &["t: ", "row `2`"]);
    refused(table("", "id | k || expect\n1 | 2 | 3"), &["t: ", "row `1`"]);
    refused(table("", "id | k || expect\n1 | 2 || 3 | 4"), &["t: ", "row `1`"]);
    refused(table("", "id | expect\n1 | 3\n | 4"), &["t: ", "a row without id: | 4"]);
    refused(parse("[[table]]\nid='t'"), &["t: ", "needs `rows`"]);
}

#[test]
fn results_and_columns_fit_each_other() {
    refused(table("results.m = {}\nresults.n = {}", "id | m\n1 | 3"), &["t: ", "`n` has no column"]);
    refused(table("results.m = {}", "id | m | n\n1 | 3 | 4"), &["t-1-m: ", "unknown field `n`"]);
    refused(table("results.m = {}", "id | m | expect\n1 | 3 | 4"), &["t: ", "`expect` beside results"]);
    refused(table("results.m = {}", "id | k || m\n1 | 3 ||"), &["t: ", "row `1` has no result"]);
    refused(table("results = 'm'", "id | m\n1 | 3"), &["t: ", "`results` is not a table"]);
    refused(table("results.m = 'M'", "id | m\n1 | 3"), &["t: ", "row `1`", "`m` is not a table"]);
}

#[test]
fn a_name_stands_for_its_text() {
    let text = |texts: &str| {
        parse(&format!(
            "[texts]\n{texts}\n[[value]]\nid='a-1'\nwhat='w'\ngiven={{}}\nexpect='1'\nunit='D'\nkind='derived'\nmark='two'\nsource='[paper]'\nnote='[note]'"
        ))
    };
    let values = text("paper = 'A, B, C 1990'\nnote = 'an average'").unwrap();
    assert_eq!((values[0].source.as_str(), values[0].note.as_deref()), ("A, B, C 1990", Some("an average")));
    refused(text("paper = 'A, B, C 1990'"), &["a-1: ", "note: ", "no text `note`"]);
    refused(text("paper = 'A'\nnote = 'n'\nother = 'x'"), &["no value refers to the text `other`"]);
}

/// A folder of its own for a test, with files by name; gone at the end of it.
struct Folder(std::path::PathBuf);

impl Folder {
    fn with(called: &str, files: &[(&str, &str)]) -> Self {
        let folder = std::env::temp_dir().join(format!("ocellus-evidence-{}-{called}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        for (name, text) in files {
            std::fs::write(folder.join(name), text).unwrap();
        }
        Self(folder)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        std::fs::remove_dir_all(&self.0).unwrap();
    }
}

const ONE: &str =
    "[[value]]\nid='a-1'\nwhat='w'\ngiven={}\nexpect='1'\nunit='D'\nkind='derived'\nmark='two'\nsource='s'";

#[test]
fn two_values_with_one_id_are_refused() {
    let ids = |called, files: &[(&str, &str)]| {
        let values = load(&Folder::with(called, files).0)?;
        Ok(values.into_iter().map(|value| value.id).collect::<Vec<_>>())
    };
    let twice = Err("two check values are called `a-1`".to_owned());
    let table = "[[table]]\nid='a'\nwhat='w'\nunit='D'\nkind='derived'\nmark='two'\nsource='s'\nrows='''\nid | expect\n1 | 2\n'''";
    let other = ONE.replace("a-1", "a-2");
    assert_eq!(
        ids("apart", &[("b.toml", ONE), ("a.toml", &other), ("c.txt", ONE)]),
        Ok(vec!["a-2".into(), "a-1".into()])
    );
    assert_eq!(ids("files", &[("a.toml", ONE), ("b.toml", ONE)]), twice);
    assert_eq!(ids("file", &[("a.toml", &format!("{ONE}\n{ONE}"))]), twice);
    assert_eq!(ids("forms", &[("a.toml", &format!("{ONE}\n{table}"))]), twice);
}

#[test]
fn an_error_names_the_file() {
    let folder = Folder::with("named", &[("good.toml", ONE), ("odd.toml", &ONE.replace("expect", "expects"))]);
    refused(load(&folder.0), &["odd.toml: a-1: ", "expects"]);
}

#[test]
fn a_person_can_read_the_files() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("values");
    let mut lines = 0;
    for entry in folder.read_dir().unwrap() {
        let path = entry.unwrap().path();
        for line in std::fs::read_to_string(&path).unwrap().lines() {
            assert!(line.chars().count() <= 400, "{}: {line}", path.display());
            lines += 1;
        }
    }
    assert!(lines <= 20_000, "{lines} lines");
}

#[test]
fn the_values_carried_here_are_all_fit_to_check_against() {
    assert!(all().unwrap().len() > 100);
}
