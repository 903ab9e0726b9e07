//! A set-up of fluids: column, air, pump, tubes. It needs no eye, and every case has one.

use crate::case::door;
use crate::choice::{FluidFrom, PumpKind, ViscosityFrom};
use crate::draft::Draft;
use crate::error::Error;
use crate::field::{Field, Quantity, Section};
use crate::quantity::*;

/// The entries of `[pressure]`, `[flow]` and `[tube]`, checked; it borrows them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench<'a> {
    draft: &'a Draft,
    pub(crate) gas: GasPressure,
    pub(crate) temperature: Temperature,
}

impl<'a> Bench<'a> {
    /// Checks a draft as a set-up: reports everything that is wrong with its entries, and gives the set-up when nothing is.
    ///
    /// ```
    /// use ocellus_core::{bench::Bench, draft::Draft, field::Field};
    /// let mut draft = Draft::default();
    /// draft.enter(Field::OpenLevel, "90")?;
    /// let mut wrong = Vec::new();
    /// assert!(Bench::check(&draft, &mut |error| wrong.push(error)).is_none());
    /// assert_eq!(wrong[0].field, Some(Field::EyeLevel));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn check(draft: &'a Draft, report: &mut dyn FnMut(Error)) -> Option<Bench<'a>> {
        if door::entries(draft, report) { Bench::of(draft) } else { None }
    }

    /// The set-up of entries that a door let in.
    pub(crate) fn of(draft: &'a Draft) -> Option<Bench<'a>> {
        let get = |field| draft.number_or_default(field);
        Some(Bench {
            draft,
            gas: GasPressure::admitted(get(Field::GasPressure)?)?,
            temperature: Temperature::admitted(get(Field::Temperature)?)?,
        })
    }

    /// Whether these entries are of a set-up alone: some are, and none is of an eye.
    ///
    /// ```
    /// use ocellus_core::{bench::Bench, draft::Draft, field::Field};
    /// let mut draft = Draft::default();
    /// draft.enter(Field::Altitude, "1600")?;
    /// assert!(Bench::alone(&draft));
    /// draft.enter(Field::AxialLength, "23.5")?;
    /// assert!(!Bench::alone(&draft));
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn alone(draft: &Draft) -> bool {
        let mut any = false;
        for &field in Field::ALL.iter().filter(|field| draft.has(**field)) {
            match field.section() {
                Section::Pressure | Section::Flow | Section::Tube => any = true,
                Section::Case => {}
                _ => return false,
            }
        }
        any
    }

    /// What was entered.
    pub fn draft(&self) -> &'a Draft {
        self.draft
    }

    pub(crate) fn get<Q: Quantity>(&self, field: Field) -> Option<Q> {
        self.draft.number_or_default(field).and_then(Q::admitted)
    }

    /// The density of the fluid: entered, or of water at its temperature.
    ///
    /// ```
    /// use ocellus_core::{bench::Bench, draft::Draft, field::Field};
    /// let mut draft = Draft::default();
    /// draft.enter(Field::DensityFrom, "water")?;
    /// let density = Bench::check(&draft, &mut |_| {}).and_then(|bench| bench.density()).unwrap();
    /// assert!((density.kg_m3() - 998.21).abs() < 0.005);
    /// # Ok::<(), ocellus_core::error::Error>(())
    /// ```
    pub fn density(&self) -> Option<Density> {
        match self.get(Field::DensityFrom)? {
            FluidFrom::Entered => self.get(Field::Density),
            FluidFrom::Water => Density::from_kg_m3(crate::pressure::density::working(self.temperature).density).ok(),
        }
    }

    pub(crate) fn pump_kind(&self) -> Option<PumpKind> {
        self.get(Field::PumpKind)
    }

    pub(crate) fn viscosity_from(&self) -> Option<ViscosityFrom> {
        self.get(Field::ViscosityFrom)
    }

    /// The open level and that of the eye.
    pub(crate) fn levels(&self) -> Option<(Level, Level)> {
        self.get(Field::OpenLevel).zip(self.eye_level())
    }

    pub(crate) fn eye_level(&self) -> Option<Level> {
        self.get(Field::EyeLevel)
    }

    /// What a machine is set to, and the level of the eye that it reckons with.
    pub(crate) fn set(&self) -> Option<(GasPressure, Level)> {
        self.get(Field::SetPressure).zip(self.get(Field::AssumedLevel))
    }
}
