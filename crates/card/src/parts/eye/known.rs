//! An eye as every part asks it.

use super::choices::{EyeState, KKind, PreviousSurgery};
use super::rules;
use super::table::entries::*;
use crate::entered::Entered;
use crate::entry::Entry;
use crate::parts::identity::table::entries::SIDE;
use crate::parts::target::table::entries::{TARGET, VERTEX};
use ocellus_core::astigmatism::site::Side;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{AxialLength, Refraction, Vertex};
use ocellus_core::value::Value;

/// An eye, with what every part asks of it; what it may lack is read as it is asked for. Whatever is asked is noted as read.
pub struct Eye<'a> {
    entered: &'a Entered<'a>,
    side: Side,
    axial_length: Option<AxialLength>,
    cornea: Cornea,
    k_kind: KKind,
    state: EyeState,
    previous_surgery: PreviousSurgery,
    target: Refraction,
    vertex: Vertex,
}

impl<'a> Eye<'a> {
    /// The eye of what was entered; `None` for a set-up without one.
    #[inline(never)]
    pub fn of(entered: &'a Entered<'a>) -> Option<Eye<'a>> {
        fn kept<T: Value>(entered: &Entered, entry: Entry<T>) -> Option<T> {
            T::admitted(entered.peek(entry.id())?)
        }
        Some(Eye {
            side: kept(entered, SIDE)?,
            axial_length: kept(entered, AXIAL_LENGTH),
            cornea: rules::cornea(entered)??,
            k_kind: kept(entered, K_KIND)?,
            state: kept(entered, EYE_STATE)?,
            previous_surgery: kept(entered, PREVIOUS_SURGERY)?,
            target: kept(entered, TARGET)?,
            vertex: kept(entered, VERTEX)?,
            entered,
        })
    }

    /// Everything that was entered.
    pub(crate) fn entered(&self) -> &'a Entered<'a> {
        self.entered
    }

    /// An entry that it may lack.
    pub(crate) fn get<T: Value>(&self, entry: Entry<T>) -> Option<T> {
        self.entered.get(entry)
    }

    /// Which eye.
    pub fn side(&self) -> Side {
        self.entered.note(&[SIDE.id()]);
        self.side
    }

    /// Its axial length, which a lens by refraction does not need.
    pub fn axial_length(&self) -> Option<AxialLength> {
        self.entered.note(&[AXIAL_LENGTH.id()]);
        self.axial_length
    }

    /// The cornea as it was measured.
    pub fn cornea(&self) -> &Cornea {
        self.entered.note(&[K1_AXIS.id(), K2_AXIS.id()]);
        self.mean_cornea()
    }

    /// The same for what asks for its mean alone, in which the axes make no difference.
    pub(crate) fn mean_cornea(&self) -> &Cornea {
        self.entered.note(&[K1.id(), K2.id(), R1.id(), R2.id(), INDEX.id()]);
        &self.cornea
    }

    /// What the keratometry is.
    pub(crate) fn k_kind(&self) -> KKind {
        self.entered.note(&[K_KIND.id()]);
        self.k_kind
    }

    /// What was in it when it was measured.
    pub(crate) fn state(&self) -> EyeState {
        self.entered.note(&[EYE_STATE.id()]);
        self.state
    }

    /// What was done to its cornea before.
    pub(crate) fn previous_surgery(&self) -> PreviousSurgery {
        self.entered.note(&[PREVIOUS_SURGERY.id()]);
        self.previous_surgery
    }

    /// The agreed target.
    pub fn target(&self) -> Refraction {
        self.entered.note(&[TARGET.id()]);
        self.target
    }

    /// Vertex distance.
    pub fn vertex(&self) -> Vertex {
        self.entered.note(&[VERTEX.id()]);
        self.vertex
    }
}
