//! The front of the cornea: two meridians, their mean, and the power each method means by "K".

use crate::constant::optics::INDEX_1_3375;
use crate::error::Error;
use crate::quantity::{Axis, CornealPower, CornealRadius, KeratometricIndex};

/// Two meridians of the front of the cornea, sorted into flat and steep, whichever came first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cornea {
    mean_radius: CornealRadius,
    flat: CornealRadius,
    steep: CornealRadius,
    axes: Option<(Axis, Axis)>,
}

impl Cornea {
    /// From two powers at the index they were given in, in either order, with their axes in the same order.
    ///
    /// The mean is the mean of the two powers, and the radius carried on is that of the mean:
    ///
    /// ```text
    /// r = 1000 (index - 1) / ((K1 + K2) / 2)
    /// ```
    ///
    /// # Errors
    /// When a radius that follows lies outside [`crate::quantity::CornealRadius::BOUNDS`].
    ///
    /// ```
    /// use ocellus_core::optics::cornea::Cornea;
    /// use ocellus_core::quantity::*;
    /// let k = |d| CornealPower::from_d(d);
    /// let axes = Some((Axis::from_deg(95.0)?, Axis::from_deg(5.0)?));
    /// let cornea = Cornea::from_powers(k(44.5)?, k(43.0)?, KeratometricIndex::new(1.3375)?, axes)?;
    /// assert_eq!(cornea.steep_axis().unwrap().deg(), 95.0);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn from_powers(
        k1: CornealPower,
        k2: CornealPower,
        index: KeratometricIndex,
        axes: Option<(Axis, Axis)>,
    ) -> Result<Cornea, Error> {
        let radius = |k: f64| CornealRadius::from_mm(1000.0 * (index.get() - 1.0) / k);
        let mean_radius = radius((k1.d() + k2.d()) / 2.0)?;
        Ok(Cornea::told_apart(mean_radius, radius(k1.d())?, radius(k2.d())?, axes))
    }

    /// From two radii, in either order, with their axes in the same order.
    ///
    /// The mean is that of the two powers, whatever the index:
    ///
    /// ```text
    /// r = 2 / (1/r1 + 1/r2)
    /// ```
    ///
    /// # Errors
    /// As [`Cornea::from_powers`].
    ///
    /// ```
    /// use ocellus_core::optics::cornea::Cornea;
    /// use ocellus_core::quantity::*;
    /// let r = |mm| CornealRadius::from_mm(mm);
    /// let cornea = Cornea::from_radii(r(7.6)?, r(7.8)?, None)?;
    /// assert!((cornea.k() - 43.8386).abs() < 1e-4);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn from_radii(r1: CornealRadius, r2: CornealRadius, axes: Option<(Axis, Axis)>) -> Result<Cornea, Error> {
        // between the two by definition; rounding must not carry two equal radii beyond themselves
        let (least, most) = (r1.mm().min(r2.mm()), r1.mm().max(r2.mm()));
        let mean_radius = CornealRadius::from_mm((2.0 / (1.0 / r1.mm() + 1.0 / r2.mm())).max(least).min(most))?;
        Ok(Cornea::told_apart(mean_radius, r1, r2, axes))
    }

    fn told_apart(
        mean_radius: CornealRadius,
        r1: CornealRadius,
        r2: CornealRadius,
        axes: Option<(Axis, Axis)>,
    ) -> Self {
        if r1 >= r2 {
            Cornea { mean_radius, flat: r1, steep: r2, axes }
        } else {
            Cornea { mean_radius, flat: r2, steep: r1, axes: axes.map(|(first, second)| (second, first)) }
        }
    }

    /// Whether a printed power and a printed radius say the same at an index, to the last printed place of either.
    ///
    /// ```
    /// use ocellus_core::optics::cornea::Cornea;
    /// use ocellus_core::quantity::*;
    /// let (k, r) = (CornealPower::from_d(43.83)?, CornealRadius::from_mm(7.70)?);
    /// assert!(Cornea::same(k, r, KeratometricIndex::new(1.3375)?));
    /// assert!(!Cornea::same(k, r, KeratometricIndex::new(1.332)?));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn same(k: CornealPower, r: CornealRadius, index: KeratometricIndex) -> bool {
        // half a hundredth of a millimetre of radius, and half a hundredth of a dioptre
        let power = 1000.0 * (index.get() - 1.0) / r.mm();
        let last_places = 0.005 * power / r.mm() + 0.005;
        (power - k.d()).abs() <= last_places * 1.0001
    }

    /// Radius of the mean power, mm: what is carried through to every method.
    pub fn radius(&self) -> CornealRadius {
        self.mean_radius
    }

    /// Mean power at the index 1.3375, D: what a method means by "K".
    ///
    /// ```text
    /// K = 1000 (1.3375 - 1) / r
    /// ```
    pub fn k(&self) -> f64 {
        at_1_3375(self.mean_radius)
    }

    /// Power of the flat meridian at the index 1.3375, D.
    pub fn flat_k(&self) -> f64 {
        at_1_3375(self.flat)
    }

    /// Power of the steep meridian at the index 1.3375, D.
    pub fn steep_k(&self) -> f64 {
        at_1_3375(self.steep)
    }

    /// Steep minus flat at the index 1.3375, D; never negative.
    pub fn astigmatism(&self) -> f64 {
        at_1_3375(self.steep) - at_1_3375(self.flat)
    }

    /// Radius of the flat meridian, mm.
    pub fn flat_radius(&self) -> CornealRadius {
        self.flat
    }

    /// Radius of the steep meridian, mm.
    pub fn steep_radius(&self) -> CornealRadius {
        self.steep
    }

    /// The flat meridian, where axes were given.
    pub fn flat_axis(&self) -> Option<Axis> {
        self.axes.map(|(flat, _)| flat)
    }

    /// The steep meridian, where axes were given.
    pub fn steep_axis(&self) -> Option<Axis> {
        self.axes.map(|(_, steep)| steep)
    }

    /// By how much the two axes differ from a right angle, degrees in 0 to 90, where axes were given.
    ///
    /// ```
    /// use ocellus_core::optics::cornea::Cornea;
    /// use ocellus_core::quantity::*;
    /// let k = |d| CornealPower::from_d(d);
    /// let axes = Some((Axis::from_deg(178.0)?, Axis::from_deg(84.0)?));
    /// let cornea = Cornea::from_powers(k(43.0)?, k(44.5)?, KeratometricIndex::new(1.3375)?, axes)?;
    /// assert_eq!(cornea.off_square(), Some(4.0));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn off_square(&self) -> Option<f64> {
        let (flat, steep) = self.axes?;
        let apart = (flat.deg() - steep.deg()).abs();
        Some((90.0 - apart.min(180.0 - apart)).abs())
    }
}

fn at_1_3375(r: CornealRadius) -> f64 {
    1000.0 * (INDEX_1_3375.get() - 1.0) / r.mm()
}
