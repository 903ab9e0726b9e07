//! What happens when nothing else can: the device starts again, greets, and has forgotten the case.

#![expect(unsafe_code, reason = "a handler that runs without a stack")]

use core::arch::naked_asm;
use core::panic::PanicInfo;

use cortex_m::peripheral::SCB;
use ocellus_firmware::log;

/// Resets the processor.
pub(crate) extern "C" fn start_anew() -> ! {
    SCB::sys_reset()
}

/// No panic is linked in; this is where one would end.
#[panic_handler]
fn panic(_: &PanicInfo<'_>) -> ! {
    log!("panic");
    start_anew()
}

/// A stack that outgrew its memory, among others: so it takes a fresh one before anything is pushed. A message
/// to a debugger might push, and is not sent.
// SAFETY: it leaves by its last jump and never returns; the name is the one that the table of handlers wants,
// and nothing else has it.
#[unsafe(naked)]
#[unsafe(no_mangle)]
#[unsafe(link_section = ".HardFault.user")]
unsafe extern "C" fn HardFault() -> ! {
    naked_asm!(
        "ldr r0, =_stack_start",
        "msr msp, r0",
        "ldr r0, ={start_anew}",
        "bx r0",
        ".pool",
        start_anew = sym start_anew,
    )
}
