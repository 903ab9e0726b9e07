//! The product of two 64-bit numbers on a processor that multiplies 32 bits: every number of the card is made of such products,
//! and the compiler's own routine takes twice as long.

/// The lower 64 bits of the product.
///
/// ```text
/// a b = al bl + 2^32 (ah bl + al bh)                                  in halves of 32 bits
/// al bl = a0 b0 + 2^16 (a1 b0 + a0 b1) + 2^32 a1 b1                   in halves of 16 bits
/// ```
///
/// ```
/// use ocellus_firmware::product;
/// assert_eq!(product(6_700_417, 641), 4_294_967_297);
/// assert_eq!(product(u64::MAX, u64::MAX), 1);
/// ```
#[inline(always)]
pub const fn product(a: u64, b: u64) -> u64 {
    let (al, ah, bl, bh) = (a as u32, (a >> 32) as u32, b as u32, (b >> 32) as u32);
    let (a0, a1, b0, b1) = (al & 0xffff, al >> 16, bl & 0xffff, bl >> 16);
    let (middle, carry) = (a1 * b0).overflowing_add(a0 * b1);
    let (low, more) = (a0 * b0).overflowing_add(middle << 16);
    let high = (a1 * b1).wrapping_add(middle >> 16).wrapping_add((carry as u32) << 16).wrapping_add(more as u32);
    let high = high.wrapping_add(ah.wrapping_mul(bl)).wrapping_add(al.wrapping_mul(bh));
    (high as u64) << 32 | low as u64
}
