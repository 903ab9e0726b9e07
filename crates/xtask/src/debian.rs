//! Packages of the system, where it is Debian's.

use std::process::{Command, Stdio};

use crate::run;

/// Sees to it that the packages are installed; as root, or by a sudo that asks nothing.
pub(crate) fn install(packages: &[&str]) -> Result<(), String> {
    let is_installed = |package: &&str| {
        let status = run::ask(Command::new("dpkg-query").args(["--show", "--showformat=${db:Status-Status}", package]));
        status.as_deref() == Some("installed")
    };
    if packages.iter().all(is_installed) {
        return Ok(());
    }
    println!("installing {}", packages.join(", "));
    apt_get(&["update"])?;
    apt_get(&[&["install", "--yes", "--no-install-recommends"], packages].concat())
        .map_err(|why| format!("{why}\nthis needs Debian's packages {}", packages.join(", ")))
}

fn apt_get(arguments: &[&str]) -> Result<(), String> {
    let is_root = run::ask(Command::new("id").arg("-u")).as_deref() == Some("0");
    let prefix: &[&str] = if is_root { &[] } else { &["sudo", "-n"] };
    let words = [prefix, &["env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "--quiet=2"], arguments].concat();
    run::run(Command::new(words[0]).args(&words[1..]).stdin(Stdio::null()))
}
