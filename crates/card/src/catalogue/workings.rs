//! The workings of all methods and parts: which table of steps is meant on a line between two machines, and what a desk prints
//! beside it.

use crate::id::PartId;
#[cfg(feature = "lens")]
use ocellus_core::lens::method::Method;
use ocellus_core::working::{Prose, Table};
use ocellus_text::Text;

static NO_TABLE: Table = Table::new(Text::EMPTY, "", &[]);

of_parts!(TABLES: &'static Table = tables, &NO_TABLE);
of_parts!(PROSES: &'static [Prose] = prose, &[]);

/// The numbers of a table on a line between two machines: 0 and a method's own, or a part's and the table's among its own.
///
/// ```
/// use ocellus_card::workings;
/// assert!(workings::all().all(|table| workings::find(workings::numbers(table).unwrap()).is_some()));
/// ```
pub fn numbers(table: &'static Table) -> Option<(u8, u8)> {
    #[cfg(feature = "lens")]
    if let Some(method) = Method::ALL.iter().find(|method| core::ptr::eq(method.table(), table)) {
        return Some((0, *method as u8));
    }
    let place = TABLES.iter().position(|(_, of)| core::ptr::eq(*of, table))?;
    let part = TABLES.get(place)?.0;
    let first = TABLES.iter().position(|(of, _)| *of == part)?;
    Some((part.0, (place - first) as u8))
}

/// The table with these numbers.
pub fn find(numbers: (u8, u8)) -> Option<&'static Table> {
    #[cfg(feature = "lens")]
    if numbers.0 == 0 {
        return Method::ALL.get(usize::from(numbers.1)).map(|method| method.table());
    }
    let of = TABLES.iter().filter(|(part, _)| part.0 == numbers.0);
    of.map(|(_, table)| *table).nth(usize::from(numbers.1))
}

/// Every table, those of methods first.
pub fn all() -> impl Iterator<Item = &'static Table> {
    let parts = TABLES.iter().map(|(_, table)| *table);
    #[cfg(feature = "lens")]
    return Method::ALL.iter().map(|method| method.table()).chain(parts);
    #[cfg(not(feature = "lens"))]
    parts
}

/// What a desk prints beside the steps of a table; nothing where it is not one of these tables.
///
/// ```
/// use ocellus_card::workings;
/// assert!(workings::all().all(|table| workings::prose(table).len() == table.count()));
/// ```
pub fn prose(table: &'static Table) -> &'static [Prose] {
    #[cfg(feature = "lens")]
    if let Some(method) = Method::ALL.iter().find(|method| core::ptr::eq(method.table(), table)) {
        return method.prose();
    }
    let place = TABLES.iter().position(|(_, of)| core::ptr::eq(*of, table));
    place.and_then(|place| PROSES.get(place)).map_or(&[], |(_, prose)| *prose)
}
