//! The two cyclic redundancy checks of the read-back: most significant bit first, nothing reflected, nothing added at the end; four
//! bits at a time.

/// A check of one width and polynomial, and what has been checked so far.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Crc {
    width: u32,
    table: &'static [u32; 16],
    register: u32,
}

impl Crc {
    /// Of the entries: `x^20 + x^17 + x^16 + x^15 + x^12 + x^10 + x^8 + x^7 + x^4 + x^3 + 1`, which is primitive; it starts at all ones.
    pub(crate) const fn of_entries() -> Crc {
        static TABLE: [u32; 16] = table(20, 0x39599);
        Crc { width: 20, table: &TABLE, register: (1 << 20) - 1 }
    }

    /// Of the answers: CRC-10/ATM, which starts at zero.
    pub(crate) const fn of_answers() -> Crc {
        static TABLE: [u32; 16] = table(10, 0x233);
        Crc { width: 10, table: &TABLE, register: 0 }
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
const fn table(width: u32, polynomial: u32) -> [u32; 16] {
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
