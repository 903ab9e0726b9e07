//! Bytes on their way from the interrupt to the loop.

use core::cell::Cell;
use core::sync::atomic::{AtomicBool, AtomicU32, Ordering};

use critical_section::Mutex;
use heapless::spsc::{Consumer, Producer, Queue};
use ocellus_link::respond::LOST;

/// Room for 256 bytes; a queue keeps one place free.
pub(crate) const RING: usize = 257;

static RECEIVER: Mutex<Cell<Option<Producer<'static, u8>>>> = Mutex::new(Cell::new(None));
static OVERRUNS: AtomicU32 = AtomicU32::new(0);
static LOST_ONE: AtomicBool = AtomicBool::new(false);

/// Where the loop takes the bytes that the interrupt puts in.
pub(crate) fn open(ring: &'static mut Queue<u8, RING>) -> Consumer<'static, u8> {
    let (producer, consumer) = ring.split();
    critical_section::with(|section| RECEIVER.borrow(section).set(Some(producer)));
    consumer
}

/// Puts in what the UART gives until it has no more or the ring is full, for the interrupt alone; whether there is still
/// room. Where there is none the interrupt masks itself and leaves the rest in the UART, which holds back the sender where
/// it can, and else loses bytes and reports it.
pub(crate) fn fill(next: &mut dyn FnMut() -> Option<u8>) -> bool {
    critical_section::with(|section| {
        let receiver = RECEIVER.borrow(section);
        let Some(mut producer) = receiver.take() else { return false };
        while producer.ready() {
            match next() {
                Some(byte) => drop(producer.enqueue(byte)),
                None => break,
            }
        }
        // what was lost has a place in the line, so that the rest of it is not taken for the whole
        if LOST_ONE.load(Ordering::Relaxed) && producer.enqueue(LOST).is_ok() {
            LOST_ONE.store(false, Ordering::Relaxed);
        }
        let room = producer.ready();
        receiver.set(Some(producer));
        room
    })
}

/// The UART lost a byte; for the interrupt alone, before it fills the ring.
pub(crate) fn overrun() {
    LOST_ONE.store(true, Ordering::Relaxed);
    // The interrupt is the only writer: loading and storing is as good as adding at once, which a Cortex-M0 cannot do.
    OVERRUNS.store(overruns().wrapping_add(1), Ordering::Relaxed);
}

/// How many times.
pub(crate) fn overruns() -> u32 {
    OVERRUNS.load(Ordering::Relaxed)
}
