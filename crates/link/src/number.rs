//! The numbers by which what is of no part goes over the line: methods, units, kinds of wrong, by their places in their tables.

use ocellus_card::error::Wrong;
use ocellus_core::fluids::unit::Unit;
use ocellus_core::lens::method::Method;

/// What has a number on the line.
pub(crate) trait Numbered: Copy + 'static {
    /// Every one, at the place that is its number.
    const ALL: &'static [Self];

    /// Its number.
    fn number(self) -> u8;

    /// The one with this number.
    fn from_number(number: u8) -> Option<Self> {
        Self::ALL.get(usize::from(number)).copied()
    }

    /// The number plus 1, or 0 for none.
    fn number_or_none(one: Option<Self>) -> u8 {
        one.map_or(0, |one| one.number().saturating_add(1))
    }

    /// The one with this number plus 1, or none for 0; nothing where there is no such number.
    fn from_number_or_none(number: u8) -> Option<Option<Self>> {
        match number.checked_sub(1) {
            None => Some(None),
            Some(number) => Self::from_number(number).map(Some),
        }
    }
}

macro_rules! numbered {
    ($($type:ident)*) => {$(
        // the highest number plus 1 still is a byte
        const _: () = assert!($type::ALL.len() <= 255);

        impl Numbered for $type {
            const ALL: &'static [$type] = $type::ALL;

            fn number(self) -> u8 {
                self as u8
            }
        }
    )*};
}

numbered! { Wrong Method Unit }

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_a_place() {
        fn check<T: Numbered + PartialEq + core::fmt::Debug>() {
            for (place, &one) in T::ALL.iter().enumerate() {
                assert_eq!(usize::from(one.number()), place, "{one:?}");
                assert_eq!(T::from_number_or_none(T::number_or_none(Some(one))), Some(Some(one)));
            }
            assert_eq!(T::from_number(T::ALL.len() as u8), None);
            assert_eq!(T::from_number_or_none(T::number_or_none(None)), Some(None));
        }
        check::<Wrong>();
        check::<Method>();
        check::<Unit>();
    }
}
