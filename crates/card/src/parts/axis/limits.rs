//! Limits beyond which something is worth a second look.

ocellus_core::constants! {
    /// A toric lens that leaves more cylinder than this.
    RESIDUAL_LARGE "cylinder left above" "D" = 0.5, Here Chosen;
    /// A toric axis chosen further than this from the best meridian.
    OFF_AXIS "toric axis off by" "deg" = 5, Here Chosen;
}

/// A cylinder below this, D, is found by no refraction, and its direction is noise.
pub(crate) const HAS_DIRECTION: f64 = 0.125;
