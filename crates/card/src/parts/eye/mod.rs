//! The eye as it was measured, and whether the measurement can be believed.

mod checks;
pub mod choices;
pub mod limits;
mod rules;
pub mod table;

pub(crate) use rules::RULES;

use crate::entered::Entered;
use crate::entry::Entry;
use crate::id::{EntryId, SignOffId};
use crate::out::Out;
use crate::parts::identity::table::entries::SIDE;
use crate::parts::target::table::entries::{TARGET, VERTEX};
use crate::sink::Sink;
use choices::{EyeState, KKind, PreviousSurgery};
use ocellus_core::astigmatism::on_dial;
use ocellus_core::astigmatism::site::Side;
use ocellus_core::optics::cornea::Cornea;
use ocellus_core::quantity::{AxialLength, Refraction, Vertex};
use ocellus_core::value::Value;
use table::entries::*;
use table::{items, sign_offs};

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
        const OF: [EntryId; 7] = [K1.id(), K1_AXIS.id(), K2.id(), K2_AXIS.id(), R1.id(), R2.id(), INDEX.id()];
        self.entered.note(&OF);
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

    /// Whether its measurement can be believed: tells every check that it does not pass.
    pub fn check(&self, sink: &mut dyn Sink) {
        checks::check(self, &mut Out::to(sink, self.entered));
    }

    /// Vertex distance.
    pub fn vertex(&self) -> Vertex {
        self.entered.note(&[VERTEX.id()]);
        self.vertex
    }
}

const MEASURED: [EntryId; 30] = [
    AXIAL_LENGTH.id(),
    AL_METHOD.id(),
    K1.id(),
    K1_AXIS.id(),
    K2.id(),
    K2_AXIS.id(),
    R1.id(),
    R2.id(),
    INDEX.id(),
    K_KIND.id(),
    ACD.id(),
    ACD_FROM.id(),
    WHITE_TO_WHITE.id(),
    CORNEAL_THICKNESS.id(),
    EYE_STATE.id(),
    PREVIOUS_SURGERY.id(),
    BIOMETRY_DATE.id(),
    QUALITY.id(),
    CONTACT_LENS.id(),
    AL_SCATTER.id(),
    K_SCATTER.id(),
    ACD_SCATTER.id(),
    OLD_SPHERE.id(),
    OLD_CYLINDER.id(),
    OLD_AXIS.id(),
    FELLOW_AXIAL_LENGTH.id(),
    FELLOW_K1.id(),
    FELLOW_K2.id(),
    FELLOW_REFRACTION.id(),
    FELLOW_STATE.id(),
];

#[inline(never)]
pub(crate) fn plan(eye: &Eye, out: &mut Out) {
    out.show(&MEASURED);
    let cornea = eye.cornea();
    out.item(items::MEAN_RADIUS, cornea.radius().mm());
    out.item(items::MEAN_K, cornea.k());
    // which is flat and which is steep, whichever was typed first
    let meridians = [
        (items::FLAT_K, cornea.flat_k(), items::FLAT_AXIS, cornea.flat_axis()),
        (items::STEEP_K, cornea.steep_k(), items::STEEP_AXIS, cornea.steep_axis()),
    ];
    for (power, k, place, axis) in meridians {
        out.item(power, k);
        if let Some(axis) = axis.filter(|_| cornea.astigmatism() > 0.0) {
            out.item(place, on_dial(axis));
        }
    }
    out.item(items::ASTIGMATISM, cornea.astigmatism());
    checks::check(eye, out);
}

pub(crate) fn signs(_eye: &Eye) -> &'static [SignOffId] {
    &[sign_offs::PRINTOUT]
}
