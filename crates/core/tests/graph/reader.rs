//! What one file uses, found in its words: paths, wherever they stand, and macros.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use super::tokens::{Token, tokens};

/// The names of a module, from the root of the crate.
type Module = Vec<String>;

/// The files of a crate, named from its `src`.
struct Crate {
    files: BTreeMap<Module, (String, Vec<Token>)>,
    macros: BTreeMap<String, Macro>,
}

/// A macro of the crate.
#[derive(Default)]
struct Macro {
    file: String,
    /// Paths that begin where it is used: the modules that it makes there, and the path seen from those.
    paths: BTreeSet<(Module, Module)>,
}

/// Which file of a crate uses which, from its folder of source.
pub(crate) fn read(source: &Path) -> BTreeMap<String, BTreeSet<String>> {
    let of = Crate::read(source);
    let uses = |(home, (file, _)): (&Module, &(String, Vec<Token>))| {
        let mut uses = Reader::read(&of, home).uses;
        uses.remove(file);
        (file.clone(), uses)
    };
    of.files.iter().map(uses).collect()
}

fn gather(folder: &Path, module: &Module, name: &str, files: &mut BTreeMap<Module, (String, Vec<Token>)>) {
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        let file = path.file_name().unwrap().to_string_lossy().into_owned();
        let stem = file.trim_end_matches(".rs");
        let inner = || module.iter().cloned().chain([stem.to_owned()]).collect::<Module>();
        if path.is_dir() {
            gather(&path, &inner(), &format!("{name}{file}/"), files);
        } else if stem != file {
            let module = if ["lib", "mod"].contains(&stem) { module.clone() } else { inner() };
            let source = fs::read_to_string(&path).unwrap();
            let known = files.insert(module, (format!("{name}{file}"), tokens(&source)));
            assert!(known.is_none(), "two files of one module: {name}{file}");
        }
    }
}

impl Crate {
    fn read(source: &Path) -> Crate {
        let mut files = BTreeMap::new();
        gather(source, &Vec::new(), "", &mut files);
        let mut of = Crate { files, macros: BTreeMap::new() };
        let found: Vec<_> = of.files.keys().map(|home| Reader::read(&of, home).found).collect();
        of.macros = found.into_iter().flatten().collect();
        of
    }

    /// The file in which a path lies.
    fn file_of(&self, path: &[String]) -> &str {
        let known = (0..=path.len()).rev().find_map(|end| self.files.get(&path[..end]));
        &known.unwrap().0
    }

    fn has(&self, module: &[String]) -> bool {
        self.files.contains_key(module)
    }
}

/// One file while it is read.
struct Reader<'a> {
    of: &'a Crate,
    /// The module of the file.
    home: &'a Module,
    tokens: &'a [Token],
    at: usize,
    /// What each open brace belongs to.
    open: Vec<Scope>,
    /// Modules of the crate that have a name of their own in this file.
    aliases: BTreeMap<String, Module>,
    uses: BTreeSet<String>,
    /// The macros that it has.
    found: BTreeMap<String, Macro>,
}

/// What a brace opens.
#[derive(Clone, PartialEq)]
enum Scope {
    Module(String),
    /// The rules of a macro.
    Rules(String),
    /// What a macro of this crate is given.
    Given,
    Other,
}

impl<'a> Reader<'a> {
    fn token(&self, ahead: usize) -> Option<&Token> {
        self.tokens.get(self.at + ahead)
    }

    fn word(&self, ahead: usize) -> Option<&str> {
        self.token(ahead)?.word()
    }

    /// The modules that are open here.
    fn inner(&self) -> Module {
        let names = self.open.iter().filter_map(|scope| match scope {
            Scope::Module(name) => Some(name.clone()),
            _ => None,
        });
        names.collect()
    }

    /// The macro whose rules these are.
    fn rules(&self) -> Option<&str> {
        self.open.iter().find_map(|scope| match scope {
            Scope::Rules(name) => Some(name.as_str()),
            _ => None,
        })
    }

    /// The module in which this stands.
    fn module(&self) -> Module {
        [self.home.as_slice(), &self.inner()].concat()
    }

    /// A path from the root of the crate, where it is one of this crate's.
    fn absolute(&self, path: &[String]) -> Option<Module> {
        let (first, rest) = path.split_first()?;
        let here = self.module();
        let from = |base: &[String], rest: &[String]| Some([base, rest].concat());
        match first.as_str() {
            "crate" | "$crate" => from(&[], rest),
            "self" => from(&here, rest),
            "super" => {
                let ups = path.iter().take_while(|name| *name == "super").count();
                from(&here[..here.len() - ups], &path[ups..])
            }
            name => match self.aliases.get(name) {
                Some(module) => from(module, rest),
                None => {
                    let child: Module = [here.as_slice(), std::slice::from_ref(first)].concat();
                    if self.of.has(&child) { from(&child, rest) } else { None }
                }
            },
        }
    }

    fn uses(&mut self, path: &[String]) {
        // in the rules of a macro, from the place where it is used
        let relative = path.first().is_some_and(|first| ["self", "super"].contains(&first.as_str()));
        if let Some(rules) = self.rules().filter(|_| relative) {
            let (rules, inner) = (rules.to_owned(), self.inner());
            self.found.entry(rules).or_default().paths.insert((inner, path.to_vec()));
        } else if let Some(path) = self.absolute(path) {
            self.uses.insert(self.of.file_of(&path).to_owned());
        }
    }

    /// Uses a macro of the crate, and what its rules use from here.
    fn uses_macro(&mut self, name: &str) {
        let of = self.of;
        let Some(rules) = of.macros.get(name) else { return };
        self.uses.insert(rules.file.clone());
        for (inner, path) in &rules.paths {
            let depth = self.open.len();
            self.open.extend(inner.iter().cloned().map(Scope::Module));
            if let Some(path) = self.absolute(path) {
                self.uses.insert(of.file_of(&path).to_owned());
            }
            self.open.truncate(depth);
        }
    }

    /// The paths of a `use`, those nested in braces each by itself, with the name that each gets here.
    fn tree(&mut self, base: &[String], leaves: &mut Vec<(Module, String)>) {
        let (mut path, mut name, mut is_leaf) = (base.to_vec(), None, false);
        while let Some(token) = self.token(0).cloned() {
            match token {
                Token::Sign(',' | '}' | ';') => break,
                Token::Word(word) if word == "as" => {
                    self.at += 1;
                    name = self.word(0).map(str::to_owned);
                }
                Token::Word(word) if word == "self" && !base.is_empty() => is_leaf = true,
                Token::Word(word) => {
                    path.push(word);
                    is_leaf = true;
                }
                Token::Sign('{') => {
                    self.at += 1;
                    while !self.token(0).is_none_or(|token| token.is('}')) {
                        self.tree(&path, leaves);
                        self.at += usize::from(self.token(0).is_some_and(|token| token.is(',')));
                    }
                    is_leaf = false;
                }
                _ => {}
            }
            self.at += 1;
        }
        if is_leaf {
            let name = name.unwrap_or_else(|| path.last().unwrap().clone());
            leaves.push((path, name));
        }
    }

    /// Reads a `use`, and keeps the names that modules get by it.
    fn read_use(&mut self) {
        self.at += 1;
        let mut leaves = Vec::new();
        self.tree(&[], &mut leaves);
        for (path, name) in leaves {
            self.uses(&path);
            if let Some(module) = self.absolute(&path).filter(|module| self.of.has(module)) {
                self.aliases.insert(name, module);
            }
        }
    }

    /// Reads a path, or a word by itself.
    fn read_path(&mut self) {
        let mut path = vec![self.word(0).unwrap_or_default().to_owned()];
        self.at += 1;
        while self.token(0) == Some(&Token::Path)
            && let Some(name) = self.word(1).map(str::to_owned)
        {
            path.push(name);
            self.at += 2;
        }
        let name = path.last().unwrap();
        if self.token(0).is_some_and(|token| token.is('!')) && self.of.macros.contains_key(name) {
            self.uses_macro(&name.clone());
            // up to its brace, whatever kind it has
            self.at += 2;
            self.open.push(Scope::Given);
        } else if path.len() > 1 || self.open.contains(&Scope::Given) {
            self.uses(&path);
        }
    }

    /// Reads a file.
    fn read(of: &'a Crate, home: &'a Module) -> Reader<'a> {
        let (open, aliases, uses, found) = (Vec::new(), BTreeMap::new(), BTreeSet::new(), BTreeMap::new());
        let mut reader = Reader { of, home, tokens: &of.files[home].1, at: 0, open, aliases, uses, found };
        reader.read_tokens();
        assert!(reader.open.is_empty(), "braces of {}", home.join("::"));
        reader
    }

    fn read_tokens(&mut self) {
        while let Some(token) = self.token(0).cloned() {
            match token {
                Token::Word(word) if word == "use" && !self.token(1).is_some_and(|token| token.is('<')) => {
                    self.read_use();
                }
                Token::Word(word) if word == "mod" => {
                    let name = self.word(1).unwrap_or_default().to_owned();
                    self.at += 2;
                    if self.token(0).is_some_and(|token| token.is('{')) {
                        self.at += 1;
                        self.open.push(Scope::Module(name));
                    }
                }
                Token::Word(word) if word == "macro_rules" => {
                    let name = self.word(2).unwrap_or_default().to_owned();
                    self.found.entry(name.clone()).or_default().file = self.of.files[self.home].0.clone();
                    self.at += 4;
                    self.open.push(Scope::Rules(name));
                }
                Token::Word(_) => self.read_path(),
                Token::Sign('{' | '(' | '[') => {
                    self.at += 1;
                    self.open.push(Scope::Other);
                }
                Token::Sign('}' | ')' | ']') => {
                    self.at += 1;
                    self.open.pop();
                }
                _ => self.at += 1,
            }
        }
    }
}
