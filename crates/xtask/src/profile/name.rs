//! Names as a table shows them: whose they are, and what they are called.

/// The crates of this project; of any other the module is not named.
const OURS: &str = "ocellus_";

/// A module that only holds others: those are named.
const FOLDER: [&str; 2] = ["ocellus_card", "parts"];

/// For names of the linker, of interrupts, and those by which a compiler calls its helpers.
const NOBODY_S: &str = "names without a module";

/// The crate that is named first, and its module when it is ours. Of `<A as B>::f` that is A's.
pub(crate) fn module(name: &str) -> String {
    let Some(path) = parts(name).find(|part| is_path(part)) else {
        // a method of one of the language's own types
        return if name.starts_with('<') { "core" } else { NOBODY_S }.into();
    };
    let path: Vec<_> = path.trim_end_matches("::").split("::").collect();
    // the last is what the module holds
    let depth = match path[0].starts_with(OURS) {
        true if path.starts_with(&FOLDER) => 3,
        true => 2,
        false => 1,
    };
    path[..depth.min(path.len() - 1).max(1)].join("::")
}

/// The first path of a name as it is, of each other its last word.
pub(crate) fn short(name: &str) -> String {
    let (mut short, mut is_first) = (String::new(), true);
    for part in parts(name) {
        let is_path = is_path(part);
        let kept = if is_path && !is_first { last(part) } else { part };
        is_first &= !is_path;
        short += kept;
    }
    short
}

/// Runs of what a path is written with, and what stands between them.
fn parts(name: &str) -> impl Iterator<Item = &str> {
    let in_path = |byte: &u8| byte.is_ascii_alphanumeric() || matches!(byte, b'_' | b':');
    name.as_bytes().chunk_by(move |a, b| in_path(a) == in_path(b)).filter_map(|part| std::str::from_utf8(part).ok())
}

fn is_path(part: &str) -> bool {
    part.contains("::") && !part.starts_with(':')
}

/// Its last word, with the colons that follow.
fn last(path: &str) -> &str {
    let end = path.trim_end_matches("::");
    &path[end.rfind("::").map_or(0, |place| place + 2)..]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::elf::plain;

    #[test]
    fn the_plan_that_is_profiled_has_the_name_that_a_compiler_gives_it() {
        assert_eq!(plain("_RNvMNtCs4NUdZqzKeHw_12ocellus_card4planNtNtB4_4case4Case4plan"), crate::profile::PLAN);
    }

    #[test]
    fn modules_of_both_manglings() {
        for (mangled, expected) in [
            ("_ZN12ocellus_core4plan4axis5value17h0123456789abcdefE", "ocellus_core::plan"),
            ("_ZN4libm4math4sqrt4sqrt17h0123456789abcdefE", "libm"),
            ("_ZN4core9panicking5panic17h0123456789abcdefE", "core"),
            ("_RNvNtNtCs8eNrDTvhkbP_17compiler_builtins3int3mul8___muldi3", "compiler_builtins"),
            ("_RNvMNtCs4NUdZqzKeHw_12ocellus_card4planNtNtB4_4case4Case4plan", "ocellus_card::case"),
            ("_RNvNtNtNtCs4NUdZqzKeHw_12ocellus_card5parts4lens5label4plan", "ocellus_card::parts::lens"),
            (
                "_RNvXs_NtNtNtCs9RbmiArJIWQ_4core4iter8adapters6copiedINtB4_6CopiedINtNtNtBa_5slice4iter4IterhEE\
                 NtNtNtB8_6traits8iterator8Iterator4nextCscVEt8bxGG9o_12ocellus_core",
                "core",
            ),
            (
                "_RNvYINtNtCsenFzwxVB3IY_15ocellus_console4draw6PickedKj5_E\
                 NtNtCscVEt8bxGG9o_12ocellus_core4sink4Sink8sign_offB7_",
                "ocellus_console::draw",
            ),
            ("__aeabi_dadd", NOBODY_S),
        ] {
            assert_eq!(module(&plain(mangled)), expected, "{}", plain(mangled));
        }
    }

    #[test]
    fn a_name_goes_to_the_first_crate_in_it() {
        for (name, expected) in [
            ("ocellus_firmware::__cortex_m_rt_main::{closure#0}", "ocellus_firmware"),
            ("ocellus_firmware::{closure#0}", "ocellus_firmware"),
            ("<ocellus_firmware::Running<Bus> as ocellus_link::respond::Host>::ticks", "ocellus_firmware"),
            ("core::ptr::drop_in_place::<ocellus_console::head::Head>", "core"),
            ("<&mut ocellus_link::stream::Stream as core::fmt::Write>::write_str", "ocellus_link::stream"),
            ("<str>::strip_suffix::<char>", "core"),
            ("<u8 as core::fmt::Display>::fmt", "core"),
            ("nrf51_hal::gpio::p0::Parts::new", "nrf51_hal"),
            (".rodata without a name", NOBODY_S),
        ] {
            assert_eq!(module(name), expected, "{name}");
        }
    }

    #[test]
    fn only_the_first_path_stays_whole() {
        for (mangled, expected) in [
            ("_ZN12ocellus_core4plan4axis5value17h0123456789abcdefE", "ocellus_core::plan::axis::value"),
            (
                "_RNvYINtNtCsenFzwxVB3IY_15ocellus_console4draw6PickedKj5_E\
                 NtNtCscVEt8bxGG9o_12ocellus_core4sink4Sink8sign_offB7_",
                "<ocellus_console::draw::Picked<5> as Sink>::sign_off",
            ),
            ("memcpy", "memcpy"),
        ] {
            assert_eq!(short(&plain(mangled)), expected);
        }
        let closure = "<core::option::Option<a::b::C>>::map_or::<d::e::F, g::h::moving::{closure#0}>";
        assert_eq!(short(closure), "<core::option::Option<C>>::map_or::<F, moving::{closure#0}>");
    }
}
