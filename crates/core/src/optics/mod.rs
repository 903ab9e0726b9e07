//! Light through an eye: the cornea as it is measured, vertexing, a thin eye, thick lenses, rows of surfaces.

pub mod cornea;
pub mod surfaces;
pub mod thick;
pub mod thin_eye;
pub mod vergence;
pub mod vertex;
