//! A way to a device: a serial line, or a socket behind which an emulator has one.

use std::io::{self, Read, Write};
use std::net::{TcpStream, ToSocketAddrs};
use std::time::Duration;

/// Bits a second of a serial line, as every board here has it.
pub const BAUD: u32 = 115_200;

/// How long a read waits before it says that nothing has come.
pub const PATIENCE: Duration = Duration::from_millis(20);

/// How long another machine may take to be reached, or to take what is sent.
const REACHED: Duration = Duration::from_secs(5);

/// A line open both ways. A read that finds nothing ends with [`io::ErrorKind::TimedOut`] or `WouldBlock`.
pub trait Port: Read + Write + Send {}

impl<T: Read + Write + Send> Port for T {}

/// Opens `tcp:HOST:PORT`, or the serial device of that name at [`BAUD`], eight bits, no parity.
///
/// # Errors
/// When there is no such thing, or it is taken.
pub fn open(name: &str) -> io::Result<Box<dyn Port>> {
    match name.strip_prefix("tcp:") {
        Some(address) => {
            let mut addresses = address.to_socket_addrs()?;
            let none = || io::Error::new(io::ErrorKind::NotFound, "no such host");
            let socket = TcpStream::connect_timeout(&addresses.next().ok_or_else(none)?, REACHED)?;
            socket.set_write_timeout(Some(REACHED))?;
            socket.set_nodelay(true)?;
            socket.set_read_timeout(Some(PATIENCE))?;
            Ok(Box::new(socket))
        }
        None => Ok(Box::new(serialport::new(name, BAUD).timeout(PATIENCE).open()?)),
    }
}

/// Reads what has come; 0 bytes when nothing has.
///
/// # Errors
/// When the line is gone.
pub fn read(port: &mut dyn Port, bytes: &mut [u8]) -> io::Result<usize> {
    match port.read(bytes) {
        Ok(0) => Err(io::Error::new(io::ErrorKind::UnexpectedEof, "the other end has closed the line")),
        Ok(count) => Ok(count),
        Err(error) => match error.kind() {
            io::ErrorKind::TimedOut | io::ErrorKind::WouldBlock | io::ErrorKind::Interrupted => Ok(0),
            _ => Err(error),
        },
    }
}
