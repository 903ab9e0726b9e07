//! In the place of the compiler's routine, on a processor that has no instruction for it.

#![expect(unsafe_code, reason = "a name that the linker knows")]

/// What the run-time ABI for the Arm architecture calls a product of 64 bits.
#[unsafe(no_mangle)]
extern "C" fn __aeabi_lmul(a: u64, b: u64) -> u64 {
    ocellus_firmware::product(a, b)
}
