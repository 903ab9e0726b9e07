//! Light on its way between cornea and lens.

use crate::constant::optics::N;
use crate::error::Error;

/// Light of vergence k at the cornea, as it arrives at the lens d mm behind, D.
///
/// ```text
/// v = 1000 n / (1000 n / k - d) = k / (1 - d k / (1000 n))          no pole at k = 0
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] when the light crosses before it reaches the lens.
///
/// ```
/// use ocellus_core::optics::vergence::at_lens;
/// assert!((at_lens(43.5, 5.2)? - 52.366).abs() < 0.0005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn at_lens(k: f64, elp: f64) -> Result<f64, Error> {
    let divisor = 1.0 - elp * k / (1000.0 * N.get());
    if divisor > 0.0 { Ok(k / divisor) } else { Err(Error::NoSolution) }
}

/// Vergence that must arrive at the lens, as it must leave the cornea d mm before, D.
///
/// ```text
/// k = 1000 n v / (d v + 1000 n)          no pole at v = 0
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] when no light leaving the cornea does it.
///
/// ```
/// use ocellus_core::optics::vergence::{at_cornea, at_lens};
/// assert!((at_cornea(at_lens(43.5, 5.2)?, 5.2)? - 43.5).abs() < 1e-12);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn at_cornea(v: f64, elp: f64) -> Result<f64, Error> {
    let divisor = elp * v + 1000.0 * N.get();
    if divisor > 0.0 { Ok(1000.0 * N.get() * v / divisor) } else { Err(Error::NoSolution) }
}
