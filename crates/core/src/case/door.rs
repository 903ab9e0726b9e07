//! The door: reads a draft entry by entry, reports everything that is wrong with it, and lets nothing wrong through.

use super::*;
use crate::eye::misread;
use crate::field::Quantity;

/// Reads a draft field by field and reports what is wrong, going on to the next.
pub(super) struct Door<'a> {
    draft: &'a Draft,
    report: &'a mut dyn FnMut(Error),
    shut: bool,
}

impl<'a> Door<'a> {
    pub(super) fn before(draft: &'a Draft, report: &'a mut dyn FnMut(Error)) -> Self {
        Door { draft, report, shut: false }
    }

    /// Whether nothing was refused so far.
    pub(super) fn is_open(&self) -> bool {
        !self.shut
    }

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

    pub(super) fn need<Q: Quantity>(&mut self, field: Field) -> Option<Q> {
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

    pub(super) fn date(&mut self, field: Field) -> Option<Date> {
        let number = self.draft.number(field)?;
        match Date::from_number(number) {
            Ok(date) => Some(date),
            Err(code) => {
                self.refuse_as(code, field);
                None
            }
        }
    }

    pub(super) fn biometry(&mut self, surgery_date: Option<Date>) -> Option<Biometry> {
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
            (_, Some((r1, r2))) => Cornea::from_radii(r1, r2, axes),
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
        // powers that are accepted can still make no cornea at an unusual index
        if cornea.is_err() {
            self.refuse_as(Code::NoCornea, Field::Index);
        }
        cornea.ok()
    }

    pub(super) fn spectacles(&mut self) -> Option<Spectacles> {
        let sphere = self.get(Field::OldSphere);
        let cylinder = self.both(Field::OldCylinder, Field::OldAxis);
        if sphere.is_none() && (self.draft.has(Field::OldCylinder) || self.draft.has(Field::OldAxis)) {
            self.refuse_as(Code::Incomplete, Field::OldSphere);
        }
        Some(Spectacles { sphere: sphere?, cylinder })
    }

    pub(super) fn fellow(&mut self) -> Fellow {
        Fellow {
            axial_length: self.get(Field::FellowAxialLength),
            k: self.both(Field::FellowK1, Field::FellowK2),
            refraction: self.get(Field::FellowRefraction),
            state: self.get(Field::FellowState),
        }
    }

    pub(super) fn lens(&mut self) -> Option<Lens> {
        let (haigis_a0, haigis_slopes) = self.haigis();
        let constants = Constants {
            a: self.get(Field::AConstant),
            surgeon_factor: self.get(Field::SurgeonFactor),
            pacd: self.get(Field::Pacd),
            haigis_a0,
            haigis_slopes,
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

    /// a0 with both slopes of its own, or a0 alone; a mixture is refused.
    fn haigis(&mut self) -> (Option<HaigisA0>, Option<(HaigisSlope, HaigisSlope)>) {
        let slopes = self.both(Field::HaigisA1, Field::HaigisA2);
        if !self.draft.has(Field::HaigisA0) && self.draft.has(Field::HaigisA1) {
            self.refuse_as(Code::Incomplete, Field::HaigisA0);
        }
        (self.get(Field::HaigisA0), slopes)
    }

    pub(super) fn toric(&mut self) -> Option<Toric> {
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

    pub(super) fn backup(&mut self) -> Option<Backup> {
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

    pub(super) fn incision(&mut self) -> Incision {
        Incision {
            site: self.get(Field::IncisionSite),
            seat: self.get(Field::Seat),
            effect: self.flattened(),
            width: self.get(Field::WoundWidth),
            tunnel: self.get(Field::TunnelLength),
        }
    }

    /// The site and what the incision does there; a flattening without a site is refused, a site alone is not.
    fn flattened(&mut self) -> Option<(Site, Flattening)> {
        let flattening = self.get(Field::Flattening);
        if flattening.is_some() && !self.draft.has(Field::IncisionSite) {
            self.refuse_as(Code::Incomplete, Field::IncisionSite);
        }
        self.draft.get(Field::IncisionSite).ok().flatten().zip(flattening)
    }

    pub(super) fn capsule(&mut self) -> Capsule {
        Capsule {
            cut: self.get(Field::Cut),
            grasp: self.get(Field::Grasp),
            decentration: self.get(Field::Decentration),
            depth: self.get(Field::CapsuleDepth),
        }
    }

    pub(super) fn pressure(&mut self) -> Option<Pressure> {
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
    pub(super) fn words(&mut self) {
        let _: Option<TargetFor> = self.get(Field::TargetFor);
        let _: Option<LensStyle> = self.get(Field::LensStyle);
        for field in RISKS {
            let _: Option<YesNo> = self.get(*field);
        }
    }
}
