//! CRC-32/ISO-HDLC, four bits at a time: a table of 64 bytes, where one for whole bytes would be 1 KiB of a device's flash.

/// What each four bits that leave the register do to it.
#[expect(clippy::indexing_slicing, reason = "only while the program is compiled")]
static TABLE: [u32; 16] = {
    let (mut table, mut nibble) = ([0; 16], 0);
    while nibble < 16 {
        let (mut register, mut bit) = (nibble as u32, 0);
        while bit < 4 {
            register = if register & 1 == 1 { register >> 1 ^ 0xEDB8_8320 } else { register >> 1 };
            bit += 1;
        }
        table[nibble] = register;
        nibble += 1;
    }
    table
};

/// The sum over bytes that come in pieces.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Crc32(u32);

impl Crc32 {
    pub(crate) const fn new() -> Crc32 {
        Crc32(u32::MAX)
    }

    /// With one more byte.
    pub(crate) fn push(&mut self, byte: u8) {
        for nibble in [byte, byte >> 4] {
            let out = (self.0 ^ u32::from(nibble)) & 15;
            self.0 = self.0 >> 4 ^ TABLE.get(out as usize).copied().unwrap_or(0);
        }
    }

    /// With more bytes.
    pub(crate) fn update(&mut self, bytes: &[u8]) {
        bytes.iter().for_each(|byte| self.push(*byte));
    }

    /// The sum.
    pub(crate) const fn finish(self) -> u32 {
        !self.0
    }
}

/// Over bytes that come in one piece.
pub(crate) fn of(bytes: &[u8]) -> u32 {
    let mut sum = Crc32::new();
    sum.update(bytes);
    sum.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value that the published catalogue of parametrised CRC algorithms gives for CRC-32/ISO-HDLC.
    #[test]
    fn check_value_of_the_catalogue() {
        assert_eq!(of(b"123456789"), 0xCBF4_3926);
        let mut pieces = Crc32::new();
        [&b"1234"[..], b"", b"56789"].iter().for_each(|piece| pieces.update(piece));
        assert_eq!(pieces.finish(), 0xCBF4_3926);
    }

    /// The `crc` crate from the package registry.
    #[test]
    fn as_the_package() {
        let package = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC);
        for length in 0..300 {
            let bytes: alloc::vec::Vec<u8> =
                (0..length).map(|n: u32| (n.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
            assert_eq!(of(&bytes), package.checksum(&bytes));
        }
    }
}
