//! Where a power is meant, as a type: powers at two planes neither add nor subtract.

/// The plane of a spectacle lens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Spectacles;

/// The plane of the cornea.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Cornea;

/// The plane of a lens in the eye.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Lens;
