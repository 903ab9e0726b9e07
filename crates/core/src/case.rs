//! A valid case. The only way to one is [`Case::check`] on a draft, so a case that exists has been checked.

use crate::choice::*;
use crate::constant::lens::{HAIGIS_A1, HAIGIS_A2};
use crate::date::Date;
use crate::draft::Draft;
use crate::error::{Code, Error};
use crate::eye::cornea::Cornea;
use crate::eye::misread;
use crate::field::{Field, Quantity};
use crate::quantity::*;

/// One operated eye, checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    pub(crate) draft: Draft,
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
    pub(crate) haigis: Option<(HaigisA0, HaigisSlope, HaigisSlope)>,
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

const CYLINDERS: [Field; LABEL_CYLINDERS] = [
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

impl TryFrom<&Draft> for Case {
    type Error = Error;

    /// The case, or the first thing wrong with it; [`Case::check`] tells all of them.
    fn try_from(draft: &Draft) -> Result<Case, Error> {
        let mut first = None;
        let case = Case::check(draft, &mut |error| {
            first.get_or_insert(error);
        });
        case.ok_or(first.unwrap_or(Error::of(Code::Missing, Field::AxialLength)))
    }
}

impl Case {
    /// Checks a draft: reports everything that is wrong with it, and gives the case when nothing is.
    ///
    /// ```
    /// use ocellus_core::{case::Case, draft::Draft, field::Field};
    /// let mut wrong = Vec::new();
    /// assert!(Case::check(&Draft::default(), &mut |error| wrong.push(error)).is_none());
    /// assert!(wrong.iter().any(|error| error.field == Some(Field::AxialLength)));
    /// ```
    pub fn check(draft: &Draft, report: &mut dyn FnMut(Error)) -> Option<Case> {
        let mut door = Door { draft, report, shut: false };
        // Each is read before any is missed, so that every error is reported.
        let side = door.need::<Eye>(Field::Side);
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
        let open = !door.shut;
        side?;
        let case = Case {
            draft: draft.clone(),
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
    pub fn draft(&self) -> &Draft {
        &self.draft
    }

    /// Whether a yes-or-no entry is a yes.
    pub(crate) fn says_yes(&self, field: Field) -> bool {
        self.draft.number(field) == Some(YesNo::Yes.code())
    }
}

/// Reads a draft field by field and reports what is wrong, going on to the next.
struct Door<'a> {
    draft: &'a Draft,
    report: &'a mut dyn FnMut(Error),
    shut: bool,
}

impl Door<'_> {
    fn refuse(&mut self, error: Error) {
        self.shut = true;
        (self.report)(error);
    }

    fn refuse_as(&mut self, code: Code, field: Field) {
        self.refuse(Error { value: self.draft.number(field), ..Error::of(code, field) });
    }

    fn get<Q: Quantity>(&mut self, field: Field) -> Option<Q> {
        match self.draft.get(field) {
            Ok(value) => value,
            Err(error) => {
                self.refuse(misread::named(error));
                None
            }
        }
    }

    fn need<Q: Quantity>(&mut self, field: Field) -> Option<Q> {
        if self.draft.number(field).or(field.default()).is_none() {
            self.refuse_as(Code::Missing, field);
        }
        self.get(field)
    }

    /// The first, when both are given or neither is; one alone is refused.
    fn both<A: Quantity, B: Quantity>(&mut self, first: Field, second: Field) -> Option<(A, B)> {
        let pair = (self.get(first), self.get(second));
        for (here, other) in [(first, second), (second, first)] {
            if self.draft.has(here) && !self.draft.has(other) {
                self.refuse_as(Code::Incomplete, other);
            }
        }
        pair.0.zip(pair.1)
    }

    fn date(&mut self, field: Field) -> Option<Date> {
        let number = self.draft.number(field)?;
        match Date::from_number(number) {
            Ok(date) => Some(date),
            Err(code) => {
                self.refuse_as(code, field);
                None
            }
        }
    }

    fn biometry(&mut self, surgery_date: Option<Date>) -> Option<Biometry> {
        let axial_length = self.need(Field::AxialLength);
        let cornea = self.cornea();
        let k_kind = self.need(Field::KKind);
        let acd = self.both(Field::Acd, Field::AcdFrom);
        let _: Option<LensThickness> = self.get(Field::LensThickness);
        let white_to_white = self.get(Field::WhiteToWhite);
        let corneal_thickness = self.get(Field::CornealThickness);
        let al_method = self.need(Field::AlMethod);
        let eye_state = self.need(Field::EyeState);
        let previous_surgery = self.need(Field::PreviousSurgery);
        let date = self.date(Field::BiometryDate);
        if let (Some(measured), Some(operated)) = (date, surgery_date)
            && measured > operated
        {
            self.refuse_as(Code::Disagree, Field::BiometryDate);
        }
        let quality = self.get(Field::Quality);
        let contact_lens = self.get(Field::ContactLens);
        let al_scatter = self.get(Field::AlScatter);
        let k_scatter = self.get(Field::KScatter);
        let acd_scatter = self.get(Field::AcdScatter);
        Some(Biometry {
            axial_length: axial_length?,
            cornea: cornea?,
            k_kind: k_kind?,
            acd,
            white_to_white,
            corneal_thickness,
            al_method: al_method?,
            eye_state: eye_state?,
            previous_surgery: previous_surgery?,
            date,
            quality,
            contact_lens,
            al_scatter,
            k_scatter,
            acd_scatter,
        })
    }

    /// Powers, radii, or both when they agree at the index: a cheap proof that the index is the printout's.
    fn cornea(&mut self) -> Option<Cornea> {
        let index = self.need(Field::Index);
        let powers = self.both::<CornealPower, CornealPower>(Field::K1, Field::K2);
        let radii = self.both::<CornealRadius, CornealRadius>(Field::R1, Field::R2);
        let axes = self.both(Field::K1Axis, Field::K2Axis);
        if ![Field::K1, Field::K2, Field::R1, Field::R2].iter().any(|f| self.draft.has(*f)) {
            self.refuse_as(Code::Missing, Field::K1);
            self.refuse_as(Code::Missing, Field::K2);
        }
        let cornea = match (powers, radii) {
            (_, Some((r1, r2))) => Cornea::from_radii(r1, r2, index?, axes),
            (Some((k1, k2)), None) => Cornea::from_powers(k1, k2, index?, axes),
            (None, None) => return None,
        };
        if let (Some((k1, k2)), Some((r1, r2))) = (powers, radii) {
            for (k, r, field) in [(k1, r1, Field::R1), (k2, r2, Field::R2)] {
                if !Cornea::same(k, r, index?) {
                    self.refuse_as(Code::Disagree, field);
                }
            }
        }
        match cornea {
            Ok(cornea) => Some(cornea),
            Err(error) => {
                self.refuse(error.at(if radii.is_some() { Field::R1 } else { Field::K1 }));
                None
            }
        }
    }

    fn spectacles(&mut self) -> Option<Spectacles> {
        let sphere = self.get(Field::OldSphere);
        let cylinder = self.both(Field::OldCylinder, Field::OldAxis);
        if sphere.is_none() && (self.draft.has(Field::OldCylinder) || self.draft.has(Field::OldAxis)) {
            self.refuse_as(Code::Incomplete, Field::OldSphere);
        }
        Some(Spectacles { sphere: sphere?, cylinder })
    }

    fn fellow(&mut self) -> Fellow {
        Fellow {
            axial_length: self.get(Field::FellowAxialLength),
            k: self.both(Field::FellowK1, Field::FellowK2),
            refraction: self.get(Field::FellowRefraction),
            state: self.get(Field::FellowState),
        }
    }

    fn lens(&mut self) -> Option<Lens> {
        let constants = Constants {
            a: self.get(Field::AConstant),
            surgeon_factor: self.get(Field::SurgeonFactor),
            pacd: self.get(Field::Pacd),
            haigis: self.haigis(),
        };
        let power = self.get(Field::LensPower);
        let step = self.need(Field::LensStep);
        let (least, most) = (self.get::<LensPower>(Field::LensLeast), self.get::<LensPower>(Field::LensMost));
        if least.zip(most).is_some_and(|(least, most)| least > most) {
            self.refuse_as(Code::Disagree, Field::LensMost);
        }
        let optic = self.get::<OpticDiameter>(Field::Optic);
        let length = self.get::<LensLength>(Field::LensLength);
        if optic.zip(length).is_some_and(|(optic, length)| optic.mm() > length.mm()) {
            self.refuse_as(Code::Disagree, Field::LensLength);
        }
        let haptic_axis = self.get(Field::HapticAxis);
        let show_srk2 = self.get(Field::ShowSrk2) == Some(YesNo::Yes);
        let step = step?;
        Some(Lens { constants, power, step, least, most, optic, length, haptic_axis, show_srk2 })
    }

    /// a0 of its own with the usual a1 and a2, or all three; a1 or a2 without a0 is refused.
    fn haigis(&mut self) -> Option<(HaigisA0, HaigisSlope, HaigisSlope)> {
        let (a0, a1, a2) = (self.get(Field::HaigisA0), self.get(Field::HaigisA1), self.get(Field::HaigisA2));
        if !self.draft.has(Field::HaigisA0) && (self.draft.has(Field::HaigisA1) || self.draft.has(Field::HaigisA2)) {
            self.refuse_as(Code::Incomplete, Field::HaigisA0);
        }
        let usual = |constant: f64| HaigisSlope::new(constant).ok();
        Some((a0?, a1.or(usual(HAIGIS_A1.get()))?, a2.or(usual(HAIGIS_A2.get()))?))
    }

    fn toric(&mut self) -> Option<Toric> {
        let label_power = self.get(Field::LabelPower);
        let plane = self.get(Field::CylinderPlane);
        let cylinders = CYLINDERS.map(|field| self.get(field));
        let chosen = self.both(Field::LensCylinder, Field::LensAxis);
        if cylinders.iter().all(Option::is_none) && chosen.is_none() {
            return None;
        }
        // A toric label is ambiguous by half its cylinder: neither of these has a default.
        for field in [Field::LabelPower, Field::CylinderPlane] {
            if !self.draft.has(field) {
                self.refuse_as(Code::Incomplete, field);
            }
        }
        Some(Toric { label_power: label_power?, plane: plane?, cylinders, chosen })
    }

    fn backup(&mut self) -> Option<Backup> {
        let a = self.get(Field::BackupAConstant);
        let style = self.get(Field::BackupStyle);
        let place = self.get(Field::BackupPlace);
        let shift = self.get(Field::SulcusShift);
        let _: Option<LensPower> = self.get(Field::BackupPower);
        if [Field::BackupModel, Field::BackupAConstant, Field::BackupStyle, Field::BackupPower, Field::BackupPlace]
            .iter()
            .any(|f| self.draft.has(*f))
        {
            for field in [Field::BackupAConstant, Field::BackupPlace] {
                if !self.draft.has(field) {
                    self.refuse_as(Code::Incomplete, field);
                }
            }
        }
        Some(Backup { a: a?, style, place: place?, shift: shift? })
    }

    fn incision(&mut self) -> Incision {
        Incision {
            effect: self.both(Field::IncisionSite, Field::Flattening),
            width: self.get(Field::WoundWidth),
            tunnel: self.get(Field::TunnelLength),
        }
    }

    fn capsule(&mut self) -> Capsule {
        Capsule {
            cut: self.get(Field::Cut),
            grasp: self.get(Field::Grasp),
            decentration: self.get(Field::Decentration),
            depth: self.get(Field::CapsuleDepth),
        }
    }

    fn pressure(&mut self) -> Option<Pressure> {
        let levels = self.both(Field::OpenLevel, Field::EyeLevel);
        let gas = self.need(Field::GasPressure);
        let density = self.need(Field::Density);
        let altitude = self.get(Field::Altitude);
        let station = self.get(Field::StationPressure);
        let temperature = self.need(Field::Temperature);
        let _: [Option<Vacuum>; 2] = [Field::VacuumNucleus, Field::VacuumCortex].map(|field| self.get(field));
        let viscoelastic = self.get(Field::VacuumViscoelastic);
        Some(Pressure {
            levels,
            gas: gas?,
            density: density?,
            altitude,
            station,
            temperature: temperature?,
            viscoelastic,
        })
    }

    /// Entries that no section reads as a value of its own: words that only have to be words.
    fn words(&mut self) {
        let _: Option<TargetFor> = self.get(Field::TargetFor);
        let _: Option<LensStyle> = self.get(Field::LensStyle);
        let _: Option<Seat> = self.get(Field::Seat);
        for field in RISKS {
            let _: Option<YesNo> = self.get(*field);
        }
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
