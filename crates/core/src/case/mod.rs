//! A valid case. The only way to one is [`Case::check`] on a draft, so a case that exists has been checked.

mod door;

use self::door::Door;
use crate::choice::*;
use crate::date::Date;
use crate::draft::Draft;
use crate::error::{Code, Error};
use crate::eye::cornea::Cornea;
use crate::field::Field;
use crate::quantity::*;

/// One operated eye, checked; it borrows what was entered.
#[derive(Clone, Debug, PartialEq)]
pub struct Case<'a> {
    pub(crate) draft: &'a Draft,
    pub(crate) side: Eye,
    pub(crate) surgery_date: Option<Date>,
    pub(crate) biometry: Biometry,
    pub(crate) spectacles: Option<Spectacles>,
    pub(crate) fellow: Fellow,
    pub(crate) target: Refraction,
    pub(crate) vertex: Vertex,
    pub(crate) lens: Lens,
    pub(crate) toric: Option<Toric>,
    pub(crate) backup: Option<Backup>,
    pub(crate) incision: Incision,
    pub(crate) capsule: Capsule,
    pub(crate) pressure: Pressure,
}

/// The measured eye.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Biometry {
    pub(crate) axial_length: AxialLength,
    pub(crate) cornea: Cornea,
    pub(crate) k_kind: KKind,
    pub(crate) acd: Option<(ChamberDepth, AcdFrom)>,
    pub(crate) white_to_white: Option<WhiteToWhite>,
    pub(crate) corneal_thickness: Option<CornealThickness>,
    pub(crate) al_method: AlMethod,
    pub(crate) eye_state: EyeState,
    pub(crate) previous_surgery: PreviousSurgery,
    pub(crate) date: Option<Date>,
    pub(crate) quality: Option<Quality>,
    pub(crate) contact_lens: Option<ContactLens>,
    pub(crate) al_scatter: Option<ScatterLength>,
    pub(crate) k_scatter: Option<ScatterPower>,
    pub(crate) acd_scatter: Option<ScatterLength>,
}

/// The spectacles worn before the cataract.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spectacles {
    pub(crate) sphere: Refraction,
    pub(crate) cylinder: Option<(Cylinder, Axis)>,
}

/// What is known of the other eye.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fellow {
    pub(crate) axial_length: Option<AxialLength>,
    pub(crate) k: Option<(CornealPower, CornealPower)>,
    pub(crate) refraction: Option<Refraction>,
    pub(crate) state: Option<EyeState>,
}

/// The constants of one lens model for one kind of biometry.
#[derive(Clone, Debug, PartialEq, Default)]
pub(crate) struct Constants {
    pub(crate) a: Option<AConstant>,
    pub(crate) surgeon_factor: Option<SurgeonFactor>,
    pub(crate) pacd: Option<Pacd>,
    pub(crate) haigis_a0: Option<HaigisA0>,
    pub(crate) haigis_slopes: Option<(HaigisSlope, HaigisSlope)>,
}

/// The lens and its constants.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lens {
    pub(crate) constants: Constants,
    pub(crate) power: Option<LensPower>,
    pub(crate) step: LabelStep,
    pub(crate) least: Option<LensPower>,
    pub(crate) most: Option<LensPower>,
    pub(crate) optic: Option<OpticDiameter>,
    pub(crate) length: Option<LensLength>,
    pub(crate) haptic_axis: Option<Axis>,
    pub(crate) show_srk2: bool,
}

/// How many cylinders one toric model may come in.
pub(crate) const LABEL_CYLINDERS: usize = 8;

/// Their entries.
pub(crate) const CYLINDERS: [Field; LABEL_CYLINDERS] = [
    Field::Cylinder1,
    Field::Cylinder2,
    Field::Cylinder3,
    Field::Cylinder4,
    Field::Cylinder5,
    Field::Cylinder6,
    Field::Cylinder7,
    Field::Cylinder8,
];

/// The toric label.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Toric {
    pub(crate) label_power: LabelPower,
    pub(crate) plane: CylinderPlane,
    pub(crate) cylinders: [Option<LensCylinder>; LABEL_CYLINDERS],
    pub(crate) chosen: Option<(LensCylinder, Axis)>,
}

/// The lens for a torn capsule.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Backup {
    pub(crate) a: AConstant,
    pub(crate) style: Option<LensStyle>,
    pub(crate) place: BackupPlace,
    pub(crate) shift: SulcusShift,
}

/// The wound.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Incision {
    pub(crate) site: Option<Site>,
    pub(crate) seat: Option<Seat>,
    pub(crate) effect: Option<(Site, Flattening)>,
    pub(crate) width: Option<WoundLength>,
    pub(crate) tunnel: Option<WoundLength>,
}

/// The rhexis.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Capsule {
    pub(crate) cut: Option<Cut>,
    pub(crate) grasp: Option<Grasp>,
    pub(crate) decentration: Option<Decentration>,
    pub(crate) depth: Option<CapsuleDepth>,
}

/// The column, the air and the pump.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pressure {
    pub(crate) levels: Option<(Level, Level)>,
    pub(crate) gas: GasPressure,
    pub(crate) density: Density,
    pub(crate) altitude: Option<Altitude>,
    pub(crate) station: Option<StationPressure>,
    pub(crate) temperature: Temperature,
    pub(crate) viscoelastic: Option<Vacuum>,
}

impl<'a> TryFrom<&'a Draft> for Case<'a> {
    type Error = Error;

    /// The case, or the first thing wrong with it; [`Case::check`] tells all of them.
    fn try_from(draft: &'a Draft) -> Result<Case<'a>, Error> {
        let mut first = None;
        let case = Case::check(draft, &mut |error| {
            first.get_or_insert(error);
        });
        case.ok_or(first.unwrap_or(Error::of(Code::Missing, Field::AxialLength)))
    }
}

impl<'a> Case<'a> {
    /// Checks a draft: reports everything that is wrong with it, and gives the case when nothing is.
    ///
    /// ```
    /// use ocellus_core::{case::Case, draft::Draft, field::Field};
    /// let mut wrong = Vec::new();
    /// assert!(Case::check(&Draft::default(), &mut |error| wrong.push(error)).is_none());
    /// assert!(wrong.iter().any(|error| error.field == Some(Field::AxialLength)));
    /// ```
    pub fn check(draft: &'a Draft, report: &mut dyn FnMut(Error)) -> Option<Case<'a>> {
        let mut door = Door::before(draft, report);
        // Each is read before any is missed, so that every error is reported.
        let side = door.need(Field::Side);
        let surgery_date = door.date(Field::SurgeryDate);
        let biometry = door.biometry(surgery_date);
        let spectacles = door.spectacles();
        let fellow = door.fellow();
        let target = door.need(Field::Target);
        let vertex = door.need(Field::Vertex);
        let lens = door.lens();
        let toric = door.toric();
        let backup = door.backup();
        let incision = door.incision();
        let capsule = door.capsule();
        let pressure = door.pressure();
        door.words();
        let open = door.is_open();
        let case = Case {
            draft,
            side: side?,
            surgery_date,
            biometry: biometry?,
            spectacles,
            fellow,
            target: target?,
            vertex: vertex?,
            lens: lens?,
            toric,
            backup,
            incision,
            capsule,
            pressure: pressure?,
        };
        open.then_some(case)
    }

    /// What was entered.
    pub fn draft(&self) -> &'a Draft {
        self.draft
    }

    /// Whether a yes-or-no entry is a yes.
    pub(crate) fn says_yes(&self, field: Field) -> bool {
        self.draft.number(field) == Some(YesNo::Yes.code())
    }
}

/// The risks that change the day, in the order of the card.
pub(crate) const RISKS: &[Field] = &[
    Field::FloppyIris,
    Field::Pseudoexfoliation,
    Field::WeakZonule,
    Field::PosteriorPolar,
    Field::Vitrectomised,
    Field::Guttata,
    Field::SmallPupil,
    Field::IodineAllergy,
    Field::AntibioticAllergy,
];
