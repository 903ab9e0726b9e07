//! How rows of all parts become columns.

/// The rows of one kind of all parts, the parts by their numbers; one row more, which is none, so that there always is one.
macro_rules! rows {
    ($Id:ident: $Row:ident = $rows:ident, $none:expr) => {
        const COUNT: usize = {
            let (mut count, mut part) = (0, 0);
            while part < super::rows::PARTS {
                count += super::rows::BY_NUMBER[part].$rows.len();
                part += 1;
            }
            count
        };

        const NONE: $Row = $none;

        const ROWS: [&$Row; COUNT + 1] = {
            let (mut rows, mut count, mut part) = ([&NONE; COUNT + 1], 0, 0);
            while part < super::rows::PARTS {
                let mut n = 0;
                while n < super::rows::BY_NUMBER[part].$rows.len() {
                    rows[count] = &super::rows::BY_NUMBER[part].$rows[n];
                    count += 1;
                    n += 1;
                }
                part += 1;
            }
            rows
        };

        /// Where those of a part begin, by its number.
        static STARTS: [u16; super::rows::MOST + 1] = {
            let (mut starts, mut count, mut part, mut number) = ([0; super::rows::MOST + 1], 0, 0, 0);
            while number < super::rows::MOST {
                starts[number] = count as u16;
                if part < super::rows::PARTS && super::rows::BY_NUMBER[part].part.0 as usize == number {
                    assert!(
                        super::rows::BY_NUMBER[part].$rows.len() <= 256,
                        "a part with more rows than its numbers reach"
                    );
                    count += super::rows::BY_NUMBER[part].$rows.len();
                    part += 1;
                }
                number += 1;
            }
            starts[super::rows::MOST] = count as u16;
            starts
        };

        impl $Id {
            /// How many there are.
            pub const COUNT: usize = COUNT;

            /// Its place among all of its kind in this program.
            pub fn place(self) -> usize {
                let start = STARTS.get(usize::from(self.part().0)).copied().unwrap_or(u16::MAX);
                usize::from(start) + usize::from(self.number())
            }

            /// The one with this number in a part, where there is one.
            pub fn find(part: u8, number: u8) -> Option<$Id> {
                let start = STARTS.get(usize::from(part))?;
                let end = STARTS.get(usize::from(part) + 1)?;
                (start + u16::from(number) < *end).then_some($Id::new($crate::id::PartId(part), number))
            }

            /// The one at this place among all.
            #[inline(never)]
            pub fn at(place: usize) -> Option<$Id> {
                let part = STARTS.iter().position(|start| usize::from(*start) > place)?.checked_sub(1)?;
                let number = place - usize::from(*STARTS.get(part)?);
                Some($Id::new($crate::id::PartId(part as u8), number as u8))
            }

            /// Every one, the parts by their numbers.
            pub fn all() -> impl Iterator<Item = $Id> + Clone {
                (0..COUNT).filter_map($Id::at)
            }
        }
    };
}

/// A column of what is in each row.
macro_rules! column {
    ($NAME:ident: $type:ty = |$row:ident| $value:expr) => {
        static $NAME: [$type; COUNT + 1] = {
            let mut column = {
                let $row = &NONE;
                [$value; COUNT + 1]
            };
            let mut n = 0;
            while n < COUNT {
                let $row = ROWS[n];
                column[n] = $value;
                n += 1;
            }
            column
        };
    };
}

/// A column of what few rows have, each with the place of its row.
macro_rules! sparse {
    ($NAME:ident: $type:ty = |$row:ident| $value:expr, $none:expr) => {
        static $NAME: [(u8, $type); {
            let (mut count, mut n) = (0, 0);
            while n < COUNT {
                let $row = ROWS[n];
                count += $value.is_some() as usize;
                n += 1;
            }
            count
        }] = {
            let (mut column, mut count, mut n) = ([(0, $none); _], 0, 0);
            while n < COUNT {
                let $row = ROWS[n];
                if let Some(value) = $value {
                    column[count] = (n as u8, value);
                    count += 1;
                }
                n += 1;
            }
            column
        };
    };
}

/// What a row has of such a column.
pub(super) fn at<T: Copy>(column: &[(u8, T)], place: usize) -> Option<T> {
    column.iter().find(|(of, _)| usize::from(*of) == place).map(|(_, value)| *value)
}

/// A text of each row, folded.
macro_rules! texts {
    ($($name:ident = |$row:ident| $value:expr;)*) => {$(
        fn $name(place: usize) -> ocellus_text::Text {
            use ocellus_text::pool::STRIDE;
            const POOL: ocellus_text::pool::Pool<{ COUNT / STRIDE + 1 }> = {
                let (mut pool, mut n) = (ocellus_text::pool::Pool::EMPTY, 0);
                while n <= COUNT {
                    let $row = ROWS[n];
                    pool.add(n, $value);
                    n += 1;
                }
                pool
            };
            static BYTES: [u8; POOL.length] = POOL.trim();
            static STARTS: [u16; COUNT / STRIDE + 1] = POOL.starts;
            ocellus_text::pool::find(&BYTES, &STARTS, place)
        }
    )*};
}

/// The texts that occur in a column, each once, and which each row has.
macro_rules! shared_texts {
    ($NAMES:ident $name:ident = |$row:ident| $value:expr) => {
        const $NAMES: ([&str; 64], [u8; COUNT + 1], usize) = {
            let (mut names, mut which, mut count, mut n) = ([""; 64], [0; COUNT + 1], 0, 0);
            while n < COUNT {
                let $row = ROWS[n];
                let mut place = 0;
                while place < count && !super::rows::same(names[place], $value) {
                    place += 1;
                }
                if place == count {
                    names[count] = $value;
                    count += 1;
                }
                which[n] = place as u8;
                n += 1;
            }
            (names, which, count)
        };

        fn $name(place: usize) -> &'static str {
            static WHICH: [u8; COUNT + 1] = $NAMES.1;
            static EACH: [&str; $NAMES.2] = {
                let (mut each, mut n) = ([""; $NAMES.2], 0);
                while n < $NAMES.2 {
                    each[n] = $NAMES.0[n];
                    n += 1;
                }
                each
            };
            WHICH.get(place).and_then(|which| EACH.get(usize::from(*which))).copied().unwrap_or("")
        }
    };
}

/// What every part has of something, in one list, each with its part.
macro_rules! of_parts {
    ($NAME:ident: $type:ty = $field:ident, $none:expr) => {
        static $NAME: [(PartId, $type); {
            let (mut count, mut part) = (0, 0);
            while part < super::rows::PARTS {
                count += super::rows::BY_NUMBER[part].$field.len();
                part += 1;
            }
            count
        }] = {
            const EMPTY: $type = $none;
            let (mut all, mut count, mut part) = ([(PartId(0), EMPTY); _], 0, 0);
            while part < super::rows::PARTS {
                let rows = super::rows::BY_NUMBER[part];
                let mut n = 0;
                while n < rows.$field.len() {
                    all[count] = (rows.part, rows.$field[n]);
                    count += 1;
                    n += 1;
                }
                part += 1;
            }
            all
        };
    };
}
