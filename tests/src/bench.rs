//! The device's own loop on this machine, behind a socket: the program of every board, without the board.

use ocellus_firmware::{Around, Device, Host};
use std::io::{self, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::thread;
use std::time::{Duration, Instant};

/// A machine that is as fast as this one.
struct Here {
    started: Instant,
}

impl Around for Here {
    fn millis(&self) -> u32 {
        self.started.elapsed().as_millis() as u32
    }
}

impl Host for Here {
    fn board(&self) -> &str {
        "bench"
    }

    fn build(&self) -> &str {
        env!("CARGO_PKG_VERSION")
    }

    fn target(&self) -> &str {
        std::env::consts::ARCH
    }

    fn ticks(&self) -> u32 {
        self.started.elapsed().as_micros() as u32
    }

    fn ticks_per_second(&self) -> u32 {
        1_000_000
    }

    fn overruns(&self) -> u32 {
        0
    }

    fn stack_used(&self) -> u32 {
        0
    }

    fn stack_size(&self) -> u32 {
        0
    }
}

/// Starts a device and gives the name of the port it listens at; it serves one connection after the other.
pub fn start() -> String {
    let listener = TcpListener::bind(("127.0.0.1", 0)).expect("a free port");
    let port = listener.local_addr().expect("a bound port").port();
    thread::spawn(move || {
        let mut device = Device::new();
        let here = Here { started: Instant::now() };
        for socket in listener.incoming().flatten() {
            // whoever leaves in the middle of an answer leaves the device as it is
            let _ = serve(&mut device, &here, socket);
        }
    });
    format!("tcp:127.0.0.1:{port}")
}

fn serve(device: &mut Device, here: &Here, mut socket: TcpStream) -> io::Result<()> {
    socket.set_nodelay(true)?;
    socket.set_read_timeout(Some(Duration::from_millis(10)))?;
    let mut said = Vec::new();
    device.greet(&mut |byte| said.push(byte));
    socket.write_all(&said)?;
    let mut bytes = [0; 256];
    loop {
        match socket.read(&mut bytes) {
            Ok(0) => return Ok(()),
            Ok(count) => {
                for (place, &byte) in bytes[..count].iter().enumerate() {
                    said.clear();
                    device.byte(byte, count - place - 1, here, &mut |byte| said.push(byte));
                    socket.write_all(&said)?;
                }
            }
            Err(error) if matches!(error.kind(), io::ErrorKind::WouldBlock | io::ErrorKind::TimedOut) => {
                said.clear();
                device.idle(here, &mut |byte| said.push(byte));
                socket.write_all(&said)?;
            }
            Err(error) => return Err(error),
        }
    }
}
