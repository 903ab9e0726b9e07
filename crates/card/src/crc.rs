//! Cyclic redundancy checks of at most 28 bits, most significant bit first, nothing reflected, nothing added at the end; four
//! bits at a time.

/// A check of one width and polynomial, and what has been checked so far.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Crc {
    width: u32,
    table: &'static [u32; 16],
    register: u32,
}

impl Crc {
    pub(crate) const fn new(width: u32, table: &'static [u32; 16], start: u32) -> Crc {
        Crc { width, table, register: start }
    }

    pub(crate) fn push(&mut self, byte: u8) {
        for nibble in [byte >> 4, byte & 15] {
            let out = (self.register >> (self.width - 4) ^ u32::from(nibble)) & 15;
            let by = self.table.get(out as usize).copied().unwrap_or(0);
            self.register = (self.register << 4 & ((1 << self.width) - 1)) ^ by;
        }
    }

    pub(crate) fn value(&self) -> u32 {
        self.register
    }
}

/// What each four bits that leave a register do to it.
#[expect(clippy::indexing_slicing, reason = "only while the program is compiled")]
pub(crate) const fn table(width: u32, polynomial: u32) -> [u32; 16] {
    let (mut table, mut nibble) = ([0; 16], 0);
    while nibble < 16 {
        let (mut register, mut bit) = ((nibble as u32) << (width - 4), 0);
        while bit < 4 {
            let out = register >> (width - 1) & 1;
            register = (register << 1 & ((1 << width) - 1)) ^ (out * polynomial);
            bit += 1;
        }
        table[nibble] = register;
        nibble += 1;
    }
    table
}
