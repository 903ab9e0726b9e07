//! A valid case. The only way to one is [`Case::check`] on a draft, so a case that exists has been checked.

pub(crate) mod door;

pub use door::because;

use crate::astigmatism::plane::Spectacles;
use crate::astigmatism::site;
use crate::astigmatism::sphero_cylinder::SpheroCylinder;
use crate::bench::Bench;
use crate::choice::*;
use crate::date::Date;
use crate::draft::Draft;
use crate::error::{Code, Error};
use crate::eye::cornea::Cornea;
use crate::field::{Field, Quantity};
use crate::quantity::*;

/// One operated eye, checked; it borrows what was entered.
///
/// What every case has is kept as it was checked. What a case may lack is read from the draft when it is asked for: the
/// door let it in, so it is of its kind or not there.
#[derive(Clone, Debug, PartialEq)]
pub struct Case<'a> {
    draft: &'a Draft,
    pub(crate) side: Eye,
    pub(crate) axial_length: Option<AxialLength>,
    pub(crate) cornea: Cornea,
    pub(crate) k_kind: KKind,
    pub(crate) eye_state: EyeState,
    pub(crate) previous_surgery: PreviousSurgery,
    pub(crate) target: Refraction,
    pub(crate) vertex: Vertex,
    pub(crate) lens_step: LabelStep,
    pub(crate) bench: Bench<'a>,
}

/// The constants of one lens model for one kind of biometry.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(crate) struct Constants {
    pub(crate) a: Option<AConstant>,
    pub(crate) surgeon_factor: Option<SurgeonFactor>,
    pub(crate) pacd: Option<Pacd>,
    pub(crate) haigis_a0: Option<HaigisA0>,
    pub(crate) haigis_slopes: Option<(HaigisSlope, HaigisSlope)>,
}

/// The cylinders one toric model may come in.
pub(crate) const CYLINDERS: [Field; 8] = [
    Field::Cylinder1,
    Field::Cylinder2,
    Field::Cylinder3,
    Field::Cylinder4,
    Field::Cylinder5,
    Field::Cylinder6,
    Field::Cylinder7,
    Field::Cylinder8,
];

/// The ways to say where the incision is.
pub(crate) const SITE: [Field; 4] = [Field::IncisionSite, Field::SiteWord, Field::ClockHour, Field::ClockSeen];

/// The toric label.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Toric {
    pub(crate) label_power: LabelPower,
    pub(crate) plane: CylinderPlane,
    pub(crate) chosen: Option<(LensCylinder, Axis)>,
}

/// The lens for a torn capsule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Backup {
    pub(crate) a: AConstant,
    pub(crate) style: Option<LensStyle>,
    pub(crate) place: BackupPlace,
    pub(crate) shift: SulcusShift,
}

impl Backup {
    /// Its constants: one, from which the others are converted.
    pub(crate) fn constants(&self) -> Constants {
        Constants { a: Some(self.a), ..Constants::default() }
    }
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
        let cornea = door::pass(draft, report)?;
        Some(Case {
            draft,
            side: get(draft, Field::Side)?,
            axial_length: get(draft, Field::AxialLength),
            cornea,
            k_kind: get(draft, Field::KKind)?,
            eye_state: get(draft, Field::EyeState)?,
            previous_surgery: get(draft, Field::PreviousSurgery)?,
            target: get(draft, Field::Target)?,
            vertex: get(draft, Field::Vertex)?,
            lens_step: get(draft, Field::LensStep)?,
            bench: Bench::of(draft)?,
        })
    }

    /// What was entered.
    pub fn draft(&self) -> &'a Draft {
        self.draft
    }

    fn get<Q: Quantity>(&self, field: Field) -> Option<Q> {
        get(self.draft, field)
    }

    /// Whether a yes-or-no entry is a yes.
    pub(crate) fn says_yes(&self, field: Field) -> bool {
        self.draft.number(field) == Some(YesNo::Yes.code())
    }

    pub(crate) fn date(&self, field: Field) -> Option<Date> {
        Date::from_number(self.draft.number(field)?).ok()
    }

    /// Chamber depth, and where it starts.
    pub(crate) fn acd(&self) -> Option<(ChamberDepth, AcdFrom)> {
        self.get(Field::Acd).zip(self.get(Field::AcdFrom))
    }

    /// Cylinder of the old spectacles, and its axis.
    pub(crate) fn old_cylinder(&self) -> Option<(Cylinder, Axis)> {
        self.get(Field::OldCylinder).zip(self.get(Field::OldAxis))
    }

    /// Both corneal powers of the other eye.
    pub(crate) fn fellow_k(&self) -> Option<(CornealPower, CornealPower)> {
        self.get(Field::FellowK1).zip(self.get(Field::FellowK2))
    }

    /// What was entered of the lens's constants.
    pub(crate) fn constants(&self) -> Constants {
        Constants {
            a: self.get(Field::AConstant),
            surgeon_factor: self.get(Field::SurgeonFactor),
            pacd: self.get(Field::Pacd),
            haigis_a0: self.get(Field::HaigisA0),
            haigis_slopes: self.get(Field::HaigisA1).zip(self.get(Field::HaigisA2)),
        }
    }

    /// The label cylinders of the toric model.
    pub(crate) fn cylinders(&self) -> impl Iterator<Item = LensCylinder> + Clone {
        let draft = self.draft;
        CYLINDERS.iter().filter_map(move |field| get(draft, *field))
    }

    /// The toric label, where there is one.
    pub(crate) fn toric(&self) -> Option<Toric> {
        let chosen = self.get(Field::LensCylinder).zip(self.get(Field::LensAxis));
        if chosen.is_none() && self.cylinders().next().is_none() {
            return None;
        }
        Some(Toric { label_power: self.get(Field::LabelPower)?, plane: self.get(Field::CylinderPlane)?, chosen })
    }

    /// Radii, thickness and index of the lens, where all were entered.
    pub(crate) fn surfaces(&self) -> Option<(LensRadius, LensRadius, LensCentre, LensIndex)> {
        Some((
            self.get(Field::FrontRadius)?,
            self.get(Field::BackRadius)?,
            self.get(Field::LensCentre)?,
            self.get(Field::LensIndex)?,
        ))
    }

    /// The backup lens, where there is one.
    pub(crate) fn backup(&self) -> Option<Backup> {
        Some(Backup {
            a: self.get(Field::BackupAConstant)?,
            style: self.get(Field::BackupStyle),
            place: self.get(Field::BackupPlace)?,
            shift: self.get(Field::SulcusShift)?,
        })
    }

    /// Where the incision is, however it was said.
    pub(crate) fn incision_site(&self) -> Option<Site> {
        let of_clock = || site::of_clock(self.get(Field::ClockHour)?, self.get(Field::ClockSeen)?, self.side);
        let of_word = || site::of_word(self.get(Field::SiteWord)?, self.side);
        self.get(Field::IncisionSite).or_else(of_word).or_else(of_clock)
    }

    /// The surgeon's own centroid: its size and the meridian it steepens.
    pub(crate) fn centroid(&self) -> Option<(Flattening, Axis)> {
        self.get(Field::Centroid).zip(self.get(Field::CentroidAxis))
    }

    /// Every cut that flattens: the incision, its pair across the eye, another.
    pub(crate) fn cuts(&self) -> impl Iterator<Item = (Site, Flattening)> {
        let site = self.incision_site();
        let incision = site.zip(self.get(Field::Flattening));
        let pair = site.map(site::opposite).zip(self.get(Field::PairedFlattening));
        let other = self.get(Field::OtherSite).zip(self.get(Field::OtherFlattening));
        [incision, pair, other].into_iter().flatten()
    }

    /// The back of the cornea, and how thick the cornea is, where they were measured.
    pub(crate) fn back(&self) -> Option<(Cornea, CornealThickness)> {
        let axes = self.get(Field::BackR1Axis).zip(self.get(Field::BackR2Axis));
        let radius = |field| CornealRadius::from_mm(self.draft.number(field)?).ok();
        let back = Cornea::from_radii(radius(Field::BackR1)?, radius(Field::BackR2)?, axes).ok()?;
        Some((back, self.get(Field::CornealThickness)?))
    }

    /// The cornea after the operation, measured with the same instrument.
    pub(crate) fn cornea_after(&self) -> Option<Cornea> {
        let axes = self.get(Field::AfterK1Axis).zip(self.get(Field::AfterK2Axis));
        let index = self.get(Field::Index)?;
        Cornea::from_powers(self.get(Field::AfterK1)?, self.get(Field::AfterK2)?, index, axes).ok()
    }

    /// The refraction after the operation.
    pub(crate) fn refraction_found(&self) -> Option<SpheroCylinder<Spectacles>> {
        let sphere: Refraction = self.get(Field::AfterSphere)?;
        let cylinder: Cylinder = self.get(Field::AfterCylinder)?;
        Some(SpheroCylinder::at(Spectacles, sphere.d(), cylinder.d(), self.get(Field::AfterAxis)))
    }
}

/// An entry or its default, where it is there and of its kind.
fn get<Q: Quantity>(draft: &Draft, field: Field) -> Option<Q> {
    draft.number_or_default(field).and_then(Q::admitted)
}

macro_rules! entries {
    ($($name:ident: $type:ident of $field:ident;)*) => {
        /// Entries that a case may lack.
        impl Case<'_> {
            $(pub(crate) fn $name(&self) -> Option<$type> { self.get(Field::$field) })*
        }

        #[cfg(test)]
        mod tests {
            use super::*;

            /// An entry asked for as another quantity than its own would be lost where the two ranges differ.
            #[test]
            fn each_entry_is_asked_for_as_what_it_is() {
                $(assert!(<$type>::is(Field::$field.kind()), stringify!($field));)*
            }
        }
    };
}

entries! {
    corneal_thickness: CornealThickness of CornealThickness;
    old_sphere: Refraction of OldSphere;
    fellow_axial_length: AxialLength of FellowAxialLength;
    fellow_refraction: Refraction of FellowRefraction;
    fellow_predicted: Refraction of FellowPredicted;
    k_before: CornealPower of KBefore;
    refraction_before: Refraction of RefractionBefore;
    refraction_after: Refraction of RefractionAfter;
    k_after: CornealPower of KAfter;
    k_after_from: KAfterFrom of KAfterFrom;
    constants_from: ConstantsFrom of ConstantsFrom;
    long_eye: LongEye of LongEye;
    label_rule: LabelRule of LabelRule;
    second_for: SecondFor of SecondFor;
    refraction_now: Refraction of RefractionNow;
    lens_in_eye: LensPower of LensInEye;
    second_place: SecondPlace of SecondPlace;
    second_position: LensPosition of SecondPosition;
    sulcus_shift: SulcusShift of SulcusShift;
    second_style: LensStyle of SecondStyle;
    second_power: LensPower of SecondPower;
    al_method: AlMethod of AlMethod;
    al_scatter: ScatterLength of AlScatter;
    k_scatter: ScatterPower of KScatter;
    acd_scatter: ScatterLength of AcdScatter;
    position_sd: ScatterLength of PositionSd;
    refraction_sd: ScatterPower of RefractionSd;
    fellow_state: EyeState of FellowState;
    lens_power: LensPower of LensPower;
    lens_least: LensPower of LensLeast;
    lens_most: LensPower of LensMost;
    optic: OpticDiameter of Optic;
    haptic_axis: Axis of HapticAxis;
    entered_site: Site of IncisionSite;
    back_from: BackFrom of BackFrom;
    marked: Marked of Marked;
    astigmatism_sd: ScatterPower of AstigmatismSd;
    incision_sd: ScatterPower of IncisionSd;
    alignment_sd: AlignmentScatter of AlignmentSd;
    mark_found: Axis of MarkFound;
    seat: Seat of Seat;
    wound_width: WoundLength of WoundWidth;
    tunnel_length: WoundLength of TunnelLength;
    cut: Cut of Cut;
    grasp: Grasp of Grasp;
    decentration: Decentration of Decentration;
    capsule_depth: CapsuleDepth of CapsuleDepth;
    vacuum_viscoelastic: Vacuum of VacuumViscoelastic;
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
