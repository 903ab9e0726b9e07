//! Paraxial optics of any row of surfaces: power and principal planes, from radii, distances and indices.

use crate::error::Error;
use crate::working::{Steps, Table};
use ocellus_text::text;

/// A surface, the way to the next one, and the index between them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// Radius, mm; positive where its centre lies behind it, 0 for a plane.
    pub radius: f64,
    /// Way to the next surface, mm.
    pub thickness: f64,
    /// Index behind it.
    pub index: f64,
}

working! {
    /// A row of surfaces as one lens.
    System "Gullstrand's exact eye, relaxed: six surfaces (read)";
    power "F" "D" = "F = -C of the ray-transfer matrix (A B; C D) of all surfaces, in turn: u' = u - (n' - n) y/r, y' = y + t u'/n'" [],
        "power", Identity Two;
    front "h" "mm" = "h = n (D - 1)/C, n before the first" [], "front principal plane, behind the first surface", Identity Two;
    back "h'" "mm" = "h' = length + n' (1 - A)/C, n' behind the last" [], "back principal plane, behind the first surface", Identity Two;
}

/// Another eye than that of [`System::table`].
static LE_GRAND_TABLE: Table = System::table().about(text!("Le Grand's eye, relaxed: four surfaces (memory)"));

impl System {
    /// The steps of [`LE_GRAND`].
    pub const fn le_grand_table() -> &'static Table {
        &LE_GRAND_TABLE
    }

    /// Streams the values of [`LE_GRAND`].
    pub fn show_le_grand(&self, steps: &mut dyn Steps) {
        LE_GRAND_TABLE.show(self, steps);
    }
}

/// Gullstrand's exact schematic eye, relaxed: cornea, lens with its nucleus (read).
pub const GULLSTRAND: &[Surface] = &[
    surface(7.7, 0.5, 1.376),
    surface(6.8, 3.1, 1.336),
    surface(10.0, 0.546, 1.386),
    surface(7.911, 2.419, 1.406),
    surface(-5.76, 0.635, 1.386),
    surface(-6.0, 0.0, 1.336),
];

/// Le Grand's schematic eye, relaxed (memory).
pub const LE_GRAND: &[Surface] =
    &[surface(7.8, 0.55, 1.3771), surface(6.5, 3.05, 1.3374), surface(10.2, 4.0, 1.42), surface(-6.0, 0.0, 1.336)];

const fn surface(radius: f64, thickness: f64, index: f64) -> Surface {
    Surface { radius, thickness, index }
}

/// Power and principal planes of surfaces one behind the other.
///
/// A ray of height y and slope times index u goes through them all:
///
/// ```text
/// at a surface  u' = u - (n' - n) y/r          to the next  y' = y + t u'/n'
/// (y, u) out = (A B; C D) (y, u) in
/// power = -C      front plane n (D - 1)/C behind the first      back plane n' (1 - A)/C behind the last
/// ```
///
/// # Errors
/// [`crate::error::Error::NoSolution`] where they have no power, and so no planes.
///
/// ```
/// use ocellus_core::optics::surfaces::*;
/// let eye = system(1.0, GULLSTRAND)?;
/// assert!((eye.power - 58.64).abs() < 0.005);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn system(before: f64, surfaces: &[Surface]) -> Result<System, Error> {
    // the columns of the matrix: what becomes of a ray of height 1, and of one of slope 1
    let (mut a, mut c) = (1.0, 0.0);
    let (mut b, mut d) = (0.0, 1.0);
    let (mut index, mut length) = (before, 0.0);
    for (place, surface) in surfaces.iter().enumerate() {
        if surface.radius != 0.0 {
            let power = (surface.index - index) / surface.radius;
            (c, d) = (c - power * a, d - power * b);
        }
        index = surface.index;
        if place + 1 < surfaces.len() {
            let way = surface.thickness / index;
            (a, b) = (a + way * c, b + way * d);
            length += surface.thickness;
        }
    }
    if c == 0.0 {
        return Err(Error::NoSolution);
    }
    Ok(System { power: -1000.0 * c, front: (d - 1.0) * before / c, back: length + (1.0 - a) * index / c })
}
