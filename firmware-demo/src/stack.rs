//! How much of the stack was ever used. Before main everything between its ends was painted; what is no longer paint,
//! was used. The stack grows down, from `_stack_start` to `_stack_end`; memory.x says where they are.

#![expect(unsafe_code, reason = "ends that only the linker knows, and memory that no variable owns")]

use core::ptr::addr_of;

use cortex_m_rt::STACK_PAINT_VALUE;

unsafe extern "C" {
    static _stack_start: u32;
    static _stack_end: u32;
}

/// Its size in bytes.
pub(crate) fn size() -> u32 {
    // No one reads these statics: their addresses are what they say.
    (addr_of!(_stack_start) as u32).wrapping_sub(addr_of!(_stack_end) as u32)
}

/// The most bytes that were in use at any time since the start.
pub(crate) fn used() -> u32 {
    let start = addr_of!(_stack_start);
    let mut word = addr_of!(_stack_end);
    // SAFETY: every word from `_stack_end` up to `_stack_start` is memory, aligned, and was painted before main; the
    // read is volatile since the stack's owners write there unseen by the compiler.
    while word < start && unsafe { word.read_volatile() } == STACK_PAINT_VALUE {
        word = word.wrapping_add(1);
    }
    (start as u32).wrapping_sub(word as u32)
}
