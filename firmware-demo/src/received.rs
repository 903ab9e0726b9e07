//! Bytes on their way from the interrupt to the loop.

use core::cell::Cell;
use core::sync::atomic::{AtomicU32, Ordering};

use critical_section::Mutex;
use heapless::spsc::{Consumer, Producer, Queue};

/// Room for 256 bytes; a queue keeps one place free.
pub(crate) const RING: usize = 257;

static RECEIVER: Mutex<Cell<Option<Producer<'static, u8>>>> = Mutex::new(Cell::new(None));
static OVERRUNS: AtomicU32 = AtomicU32::new(0);

/// Where the loop takes the bytes that the interrupt puts in.
pub(crate) fn open(ring: &'static mut Queue<u8, RING>) -> Consumer<'static, u8> {
    let (producer, consumer) = ring.split();
    critical_section::with(|section| RECEIVER.borrow(section).set(Some(producer)));
    consumer
}

/// Puts a byte in, for the interrupt alone.
pub(crate) fn put(byte: u8) {
    let kept = critical_section::with(|section| {
        let receiver = RECEIVER.borrow(section);
        let mut producer = receiver.take();
        let kept = producer.as_mut().is_some_and(|producer| producer.enqueue(byte).is_ok());
        receiver.set(producer);
        kept
    });
    if !kept {
        overrun();
    }
}

/// A byte was lost, in the ring or before it; for the interrupt alone.
pub(crate) fn overrun() {
    // The interrupt is the only writer: loading and storing is as good as adding at once, which a Cortex-M0 cannot do.
    OVERRUNS.store(overruns().wrapping_add(1), Ordering::Relaxed);
}

/// How many times.
pub(crate) fn overruns() -> u32 {
    OVERRUNS.load(Ordering::Relaxed)
}
