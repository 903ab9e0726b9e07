//! Bytes of a terminal into keys; what is not a key here is dropped as a whole.

/// What a byte of more than ASCII is kept as, so that an entry with one in it is refused and not changed: without this,
/// a typographic minus would be lost and a lens would change its sign.
pub(crate) const SUBSTITUTE: u8 = 0x1a;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Key {
    Nothing,
    Character(u8),
    /// Takes back one character.
    Erase,
    /// Takes back the line.
    Clear,
    /// Gives the line up.
    Abandon,
    /// Brings the line before.
    Earlier,
    End,
    /// The second byte of a line end.
    EndGoesOn,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Plain,
    Escape,
    /// After `ESC [`.
    Bracket,
    /// After that and parameters.
    Parameters,
    /// After `ESC O`.
    Single,
    /// One more byte, whatever it is.
    Last,
    /// Until a final byte, after `ESC (` and its like.
    Charset,
    /// A text for the terminal, until a bell or `ESC \`.
    Text,
}

pub(crate) struct Keys {
    state: State,
    after_return: bool,
}

impl Keys {
    pub(crate) const fn new() -> Keys {
        Keys { state: State::Plain, after_return: false }
    }

    pub(crate) fn take(&mut self, byte: u8) -> Key {
        let after_return = core::mem::replace(&mut self.after_return, byte == b'\r');
        // these hold anywhere, so that a broken sequence never silences the typist
        let line_key = match byte {
            b'\n' if after_return => Some(Key::EndGoesOn),
            b'\r' | b'\n' => Some(Key::End),
            0x03 => Some(Key::Abandon),
            0x15 => Some(Key::Clear),
            _ => None,
        };
        if let Some(key) = line_key {
            self.state = State::Plain;
            return key;
        }
        let (state, key) = match (self.state, byte) {
            (_, 0x1b) => (State::Escape, Key::Nothing),
            (State::Plain, byte) => (State::Plain, plain(byte)),
            (State::Escape, b'[') => (State::Bracket, Key::Nothing),
            (State::Escape, b'O') => (State::Single, Key::Nothing),
            (State::Escape, b']' | b'P' | b'X' | b'^' | b'_') => (State::Text, Key::Nothing),
            (State::Escape, b'(' | b')') => (State::Charset, Key::Nothing),
            // the function keys of some consoles
            (State::Bracket, b'[') => (State::Last, Key::Nothing),
            (State::Bracket | State::Single, b'A') => (State::Plain, Key::Earlier),
            (State::Bracket | State::Parameters, b' '..=b'?') => (State::Parameters, Key::Nothing),
            (State::Text, byte) if byte != 0x07 => (State::Text, Key::Nothing),
            _ => (State::Plain, Key::Nothing),
        };
        self.state = state;
        key
    }
}

fn plain(byte: u8) -> Key {
    match byte {
        0x08 | 0x7f => Key::Erase,
        0x10 => Key::Earlier,
        b'\t' => Key::Character(b' '),
        b' '..=b'~' => Key::Character(byte),
        0x80.. => Key::Character(SUBSTITUTE),
        _ => Key::Nothing,
    }
}
