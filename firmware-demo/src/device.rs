//! The device's own loop body, a byte at a time: the line's two conversations, each to the one who holds it.

use ocellus_console::Console;
use ocellus_link::respond::Responder;

use crate::Board;

/// A device: what a desk asked of it, and what a person typed. Neither touches the other's entries.
pub struct Device {
    responder: Responder,
    console: Console,
}

impl Device {
    /// A device that has received nothing.
    #[must_use]
    pub const fn new() -> Self {
        Self { responder: Responder::new(), console: Console::new() }
    }

    /// What it says when it starts.
    pub fn greet(&mut self, out: &mut dyn FnMut(u8)) {
        self.console.greet(&mut |text| text.bytes().for_each(&mut *out));
    }

    /// Takes a byte of the line, behind which `waiting` more have arrived.
    pub fn byte(&mut self, byte: u8, waiting: usize, board: &dyn Board, out: &mut dyn FnMut(u8)) {
        let typed = self.responder.push(byte, board.millis(), board, out);
        self.typed(typed, waiting, board, out);
    }

    /// Nothing has arrived; time passes.
    pub fn idle(&mut self, board: &dyn Board, out: &mut dyn FnMut(u8)) {
        let typed = self.responder.tick(board.millis());
        self.typed(typed, 0, board, out);
        self.console.tick(board, &mut |text| text.bytes().for_each(&mut *out));
    }

    fn typed(&mut self, byte: Option<u8>, waiting: usize, board: &dyn Board, out: &mut dyn FnMut(u8)) {
        if let Some(byte) = byte {
            self.console.byte(byte, waiting, board, &mut |text| text.bytes().for_each(&mut *out));
        }
    }
}

impl Default for Device {
    fn default() -> Self {
        Self::new()
    }
}
