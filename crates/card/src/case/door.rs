//! The door: reports everything that is wrong with a draft, and lets nothing wrong through.

use crate::choice::{self, PreviousSurgery as Surgery};
use crate::draft::Draft;
use crate::error::{Code, Error};
use crate::eye::cornea::Cornea;
use crate::field::{Field, Field::*};
use crate::quantity::{Axis, CornealPower, CornealRadius, KeratometricIndex};

/// Without these there is no case.
const NEEDED: &[Field] = &[Side, AxialLength, KKind, AlMethod, EyeState, PreviousSurgery, Target];

/// The back of the cornea.
const BACK: [Field; 4] = [BackR1, BackR1Axis, BackR2, BackR2Axis];

/// Where one of the first was entered, each of the second must be.
const TOGETHER: &[(&[Field], &[Field])] = &[
    (&[K1], &[K2]),
    (&[K2], &[K1]),
    (&[R1], &[R2]),
    (&[R2], &[R1]),
    (&[K1Axis], &[K2Axis]),
    (&[K2Axis], &[K1Axis]),
    (&[Acd], &[AcdFrom]),
    (&[AcdFrom], &[Acd]),
    (&[OldCylinder], &[OldAxis]),
    (&[OldAxis], &[OldCylinder]),
    (&[OldCylinder, OldAxis], &[OldSphere]),
    (&[FellowK1], &[FellowK2]),
    (&[FellowK2], &[FellowK1]),
    // a0 with both slopes of its own, or a0 alone
    (&[HaigisA1], &[HaigisA2, HaigisA0]),
    (&[HaigisA2], &[HaigisA1]),
    (&[LensCylinder], &[LensAxis]),
    (&[LensAxis], &[LensCylinder]),
    // a toric label is ambiguous by half its cylinder: neither of these has a default
    (
        &[Cylinder1, Cylinder2, Cylinder3, Cylinder4, Cylinder5, Cylinder6, Cylinder7, Cylinder8, LensCylinder],
        &[LabelPower, CylinderPlane],
    ),
    (&[BackupModel, BackupAConstant, BackupStyle, BackupPower, BackupPlace], &[BackupAConstant, BackupPlace]),
    // a power after laser means nothing without its origin
    (&[KAfter], &[KAfterFrom]),
    (&[RefractionBefore, RefractionAfter], &[RefractionBefore, RefractionAfter]),
    (&[FellowPredicted], &[FellowRefraction]),
    (&[FrontRadius, BackRadius, LensCentre, LensIndex], &[FrontRadius, BackRadius, LensCentre, LensIndex]),
    // from which refraction, to where: neither has a default
    (
        &[SecondFor, RefractionNow, LensInEye, SecondPlace, SecondPosition, SecondStyle, SecondPower],
        &[SecondFor, RefractionNow, SecondPlace],
    ),
    (&[ClockHour], &[ClockSeen]),
    (&[ClockSeen], &[ClockHour]),
    (&[Centroid], &[CentroidAxis]),
    (&[CentroidAxis], &[Centroid]),
    (&[OtherSite], &[OtherFlattening]),
    (&[OtherFlattening], &[OtherSite]),
    (&BACK, &BACK),
    (&BACK, &[CornealThickness, K1Axis]),
    (&[AfterK1, AfterK1Axis, AfterK2, AfterK2Axis], &[AfterK1, AfterK1Axis, AfterK2, AfterK2Axis]),
    (&[AfterSphere, AfterCylinder, AfterAxis], &[AfterSphere, AfterCylinder, AfterAxis]),
    (&[OpenLevel], &[EyeLevel]),
    (&[SetPressure], &[AssumedLevel, EyeLevel]),
    (&[WantedPressure, PumpLevel], &[EyeLevel]),
    (
        &[ReadingFlow1, ReadingPressure1, ReadingFlow2, ReadingPressure2],
        &[ReadingFlow1, ReadingPressure1, ReadingFlow2, ReadingPressure2],
    ),
    (&[Bore2], &[TubeLength2, TubeLength]),
    (&[TubeLength2], &[Bore2]),
];

/// Of these only one can be: where both were entered, the second is refused.
const ONE_OF: &[(Field, Field)] =
    &[(OpenLevel, SetPressure), (SetPressure, GasPressure), (ReadingFlow1, InfusionResistance), (TubeFlow, Drive)];

/// The entry that an error about another one comes from: what says the same, or what needs it.
///
/// ```
/// use ocellus_core::{case::because, draft::Draft, error::Code, field::Field};
/// let mut draft = Draft::default();
/// draft.enter(Field::TubeFlow, "10")?;
/// draft.enter(Field::Drive, "60")?;
/// assert_eq!(because(&draft, Code::Twice, Field::Drive), Some(Field::TubeFlow));
/// assert_eq!(because(&draft, Code::Incomplete, Field::EyeLevel), None);
/// # Ok::<(), ocellus_core::error::Error>(())
/// ```
pub fn because(draft: &Draft, code: Code, field: Field) -> Option<Field> {
    match code {
        Code::Twice => match field {
            Density => Some(DensityFrom),
            Viscosity => Some(ViscosityFrom),
            _ => ONE_OF.iter().find(|(_, second)| *second == field).map(|(first, _)| *first),
        },
        Code::Incomplete if field == OpenLevel => Some(EyeLevel).filter(|eye| draft.has(*eye)),
        Code::Incomplete if field == Viscosity => Some(ViscosityFrom),
        Code::Incomplete => TOGETHER
            .iter()
            .filter(|(_, all)| all.contains(&field))
            .find_map(|(some, _)| some.iter().copied().find(|entered| *entered != field && draft.has(*entered))),
        _ => None,
    }
}

/// Reports every entry that is outside its range, lacks what it goes with, or says what another says; the answer is whether
/// there was none.
pub(crate) fn entries(draft: &Draft, report: &mut dyn FnMut(Error)) -> bool {
    let mut open = true;
    let mut refuse = |error| {
        open = false;
        report(error);
    };
    let with_value = |code, field| Error { value: draft.number(field), ..Error::of(code, field) };
    for &field in Field::ALL {
        if let Some(Err(error)) = draft.number(field).map(|value| field.check(value)) {
            refuse(error);
        }
    }
    for (some, all) in TOGETHER {
        if some.iter().any(|field| draft.has(*field)) {
            for &field in all.iter().filter(|field| !draft.has(**field)) {
                refuse(with_value(Code::Incomplete, field));
            }
        }
    }
    for &(first, second) in ONE_OF {
        if draft.has(first) && draft.has(second) {
            refuse(with_value(Code::Twice, second));
        }
    }
    fluids(draft, &mut |code, field| refuse(with_value(code, field)));
    open
}

/// Where a level stands for nothing, and where a fluid is not said or said twice.
fn fluids(draft: &Draft, refuse: &mut dyn FnMut(Code, Field)) {
    let none = |fields: &[Field]| !fields.iter().any(|field| draft.has(*field));
    if draft.has(EyeLevel) && none(&[OpenLevel, SetPressure, WantedPressure, PumpLevel]) {
        refuse(Code::Incomplete, OpenLevel);
    }
    if draft.number_or_default(DensityFrom) == Some(choice::FluidFrom::Water.code()) && draft.has(Density) {
        refuse(Code::Twice, Density);
    }
    match (draft.number_or_default(ViscosityFrom) == Some(choice::ViscosityFrom::Water.code()), draft.has(Viscosity)) {
        (true, true) => refuse(Code::Twice, Viscosity),
        (false, false) => refuse(Code::Incomplete, Viscosity),
        _ => {}
    }
}

/// Reports everything that is wrong with a draft; gives its cornea when nothing is.
pub(super) fn pass(draft: &Draft, report: &mut dyn FnMut(Error)) -> Option<Cornea> {
    let mut open = entries(draft, report);
    let mut refuse = |error| {
        open = false;
        report(error);
    };
    let with_value = |code, field| Error { value: draft.number(field), ..Error::of(code, field) };
    // a lens by refraction needs no length
    let needless = draft.has(SecondFor) && !draft.has(AxialLength);
    for &field in NEEDED {
        if !(draft.has(field) || needless && matches!(field, AxialLength | AlMethod)) {
            refuse(with_value(Code::Missing, field));
        }
    }
    if ![K1, K2, R1, R2].iter().any(|field| draft.has(*field)) {
        refuse(with_value(Code::Missing, K1));
        refuse(with_value(Code::Missing, K2));
    }
    let surgery = draft.number(PreviousSurgery);
    let laser = [Surgery::MyopicLaser, Surgery::HyperopicLaser].iter().any(|laser| surgery == Some(laser.code()));
    for &field in [KBefore, RefractionBefore, RefractionAfter, KAfter, KAfterFrom].iter().filter(|f| draft.has(**f)) {
        if surgery.is_some() && !laser {
            refuse(with_value(Code::NoLaser, field));
        }
    }
    incisions(draft, &mut |code, field| refuse(with_value(code, field)));
    back(draft, &mut |code, field| refuse(with_value(code, field)));
    for field in [BiometryDate, LensMost, LensLength].into_iter().filter(|field| disagrees(draft, *field)) {
        refuse(with_value(Code::Disagree, field));
    }
    let cornea = cornea(draft, &mut |code, field| refuse(with_value(code, field)));
    cornea.filter(|_| open)
}

/// One site, said once; and one way to say what the surgeon's incisions do.
fn incisions(draft: &Draft, refuse: &mut dyn FnMut(Code, Field)) {
    let sites = || [IncisionSite, SiteWord, ClockHour].into_iter().filter(|field| draft.has(*field));
    let flattened = draft.has(Flattening) || draft.has(PairedFlattening);
    if flattened && sites().next().is_none() {
        refuse(Code::Incomplete, IncisionSite);
    }
    sites().skip(1).for_each(|field| refuse(Code::Twice, field));
    if flattened && draft.has(Centroid) {
        refuse(Code::Twice, Centroid);
    }
}

/// One source for the back of the cornea: a total power has it already.
fn back(draft: &Draft, refuse: &mut dyn FnMut(Code, Field)) {
    let from = draft.number_or_default(BackFrom);
    // where some of them were entered, the others are asked for already
    if from == Some(choice::BackFrom::Measured.code()) && !BACK.iter().any(|field| draft.has(*field)) {
        for field in BACK.into_iter().chain([CornealThickness, K1Axis]).filter(|field| !draft.has(*field)) {
            refuse(Code::Incomplete, field);
        }
    }
    if from != Some(choice::BackFrom::None.code()) && draft.number(KKind) == Some(choice::KKind::Total.code()) {
        refuse(Code::Twice, BackFrom);
    }
}

/// Whether an entry does not agree with the other that it must not exceed, or not fall below.
fn disagrees(draft: &Draft, field: Field) -> bool {
    let number = |field| draft.number(field).filter(|value| field.check(*value).is_ok());
    let pair = match field {
        BiometryDate => number(SurgeryDate).zip(number(BiometryDate)),
        LensMost => number(LensMost).zip(number(LensLeast)),
        LensLength => number(LensLength).zip(number(Optic)),
        _ => None,
    };
    pair.is_some_and(|(least, most)| most > least)
}

/// Powers, radii, or both when they agree at the index: a cheap proof that the index is the printout's.
fn cornea(draft: &Draft, refuse: &mut dyn FnMut(Code, Field)) -> Option<Cornea> {
    let number = |field| draft.number_or_default(field);
    let power = |field| CornealPower::from_d(number(field)?).ok();
    let radius = |field| CornealRadius::from_mm(number(field)?).ok();
    let axis = |field| Axis::from_deg(number(field)?).ok();
    let index = KeratometricIndex::new(number(Index)?).ok()?;
    let powers = power(K1).zip(power(K2));
    let radii = radius(R1).zip(radius(R2));
    let axes = axis(K1Axis).zip(axis(K2Axis));
    let cornea = match (powers, radii) {
        (_, Some((r1, r2))) => Cornea::from_radii(r1, r2, axes),
        (Some((k1, k2)), None) => Cornea::from_powers(k1, k2, index, axes),
        (None, None) => return None,
    };
    if let (Some((k1, k2)), Some((r1, r2))) = (powers, radii) {
        for (k, r, field) in [(k1, r1, R1), (k2, r2, R2)] {
            if !Cornea::same(k, r, index) {
                refuse(Code::Disagree, field);
            }
        }
    }
    // powers that are accepted can still make no cornea at an unusual index
    if cornea.is_err() {
        refuse(Code::NoCornea, Index);
    }
    cornea.ok()
}
