//! What can be explained: names, numbers, and the entries each starts from.

use crate::field::Field;
use crate::lens::Method;

/// What can be explained.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A lens-power method.
    Method(Method),
    /// The cylinder at the lens, for each method compared.
    Toric,
    /// The backup lens where it would go, for each method compared.
    Backup,
    /// Pressure of the column.
    Head,
    /// The ceiling on vacuum.
    Ceiling,
    /// Size of the rhexis.
    Rhexis,
    /// How sure the prediction of each method is.
    Certainty,
    /// A lens by the refraction today.
    Second,
    /// The lens itself.
    Thick,
    /// What the constants entered mean in each other's terms.
    Constants,
    /// Schematic eyes, from their surfaces: of no case.
    Schematic,
    /// A lens that was right, turned off its axis: of no case.
    OffAxis,
    /// The best turn of a lens that sits wrong.
    Turn,
    /// What an operation changed against what was wanted.
    After,
    /// The chamber under flow: an illustration.
    Chamber,
    /// After an occlusion breaks: an illustration.
    Surge,
    /// Tubes, needles, openings.
    Tube,
}

impl Subject {
    /// Those that are no method, in the order of their numbers.
    pub const OTHERS: &[Subject] = &[
        Subject::Backup,
        Subject::Toric,
        Subject::Head,
        Subject::Ceiling,
        Subject::Rhexis,
        Subject::Certainty,
        Subject::Second,
        Subject::Thick,
        Subject::Constants,
        Subject::Schematic,
        Subject::OffAxis,
        Subject::Turn,
        Subject::After,
        Subject::Chamber,
        Subject::Surge,
        Subject::Tube,
    ];

    /// Every subject, methods first.
    ///
    /// ```
    /// assert!(ocellus_core::explain::Subject::all().any(|subject| subject.key() == "srkt"));
    /// ```
    pub fn all() -> impl Iterator<Item = Subject> {
        Method::ALL.iter().copied().map(Subject::Method).chain(Self::OTHERS.iter().copied())
    }

    /// Its number on a line between two machines: a method's own, the others from 128.
    ///
    /// ```
    /// use ocellus_core::explain::Subject;
    /// assert!(Subject::all().all(|subject| Subject::from_number(subject.number()) == Some(subject)));
    /// ```
    pub fn number(self) -> u8 {
        match self {
            Subject::Method(method) => method as u8,
            other => 128 + Self::OTHERS.iter().position(|subject| *subject == other).unwrap_or(0) as u8,
        }
    }

    /// The subject with this number.
    pub fn from_number(number: u8) -> Option<Subject> {
        Subject::all().find(|subject| subject.number() == number)
    }

    /// Whether it needs the case of an eye; the others can be explained of a set-up alone.
    ///
    /// ```
    /// use ocellus_core::explain::Subject;
    /// assert!(Subject::Rhexis.of_an_eye() && !Subject::Surge.of_an_eye());
    /// ```
    pub const fn of_an_eye(self) -> bool {
        !matches!(self, Subject::Head | Subject::Ceiling | Subject::Chamber | Subject::Surge | Subject::Tube)
    }

    /// Its name in commands.
    ///
    /// ```
    /// assert_eq!(ocellus_core::explain::Subject::Head.key(), "head");
    /// ```
    pub const fn key(self) -> &'static str {
        match self {
            Subject::Method(method) => method.key(),
            Subject::Backup => "backup",
            Subject::Toric => "toric",
            Subject::Head => "head",
            Subject::Ceiling => "ceiling",
            Subject::Rhexis => "rhexis",
            Subject::Certainty => "certainty",
            Subject::Second => "second",
            Subject::Thick => "thick",
            Subject::Constants => "constants",
            Subject::Schematic => "schematic",
            Subject::OffAxis => "off_axis",
            Subject::Turn => "turn",
            Subject::After => "after",
            Subject::Chamber => "chamber",
            Subject::Surge => "surge",
            Subject::Tube => "tube",
        }
    }

    /// Its heading.
    ///
    /// ```
    /// assert_eq!(ocellus_core::explain::Subject::Head.name(), "Pressure of the column");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Subject::Method(method) => method.name(),
            Subject::Backup => "Backup lens where it would go",
            Subject::Toric => "Toric lens",
            Subject::Head => "Pressure of the column",
            Subject::Ceiling => "Ceiling on vacuum",
            Subject::Rhexis => "Size of the rhexis",
            Subject::Certainty => "How sure",
            Subject::Second => "Lens by the refraction today",
            Subject::Thick => "The lens itself",
            Subject::Constants => "Lens constants into each other",
            Subject::Schematic => "Schematic eyes from their surfaces",
            Subject::OffAxis => "A lens off its axis",
            Subject::Turn => "Turning a lens that sits wrong",
            Subject::After => "Change wanted and change made",
            Subject::Chamber => "Chamber under flow: an illustration",
            Subject::Surge => "Surge: an illustration",
            Subject::Tube => "Tubes, needles, openings",
        }
    }

    /// The entries it starts from.
    ///
    /// ```
    /// use ocellus_core::{explain::Subject, field::Field};
    /// assert!(Subject::Head.inputs().contains(&Field::OpenLevel));
    /// ```
    pub const fn inputs(self) -> &'static [Field] {
        use Field::*;
        match self {
            Subject::Method(Method::Srk2 | Method::Srkt | Method::T2) => {
                &[AxialLength, K1, K2, R1, R2, Index, AConstant, LongEye, Target, Vertex, LensPower]
            }
            Subject::Method(Method::Holladay1) => {
                &[AxialLength, K1, K2, R1, R2, Index, AConstant, SurgeonFactor, LongEye, Target, Vertex, LensPower]
            }
            Subject::Method(Method::HofferQ) => &[
                AxialLength,
                K1,
                K2,
                R1,
                R2,
                Index,
                AConstant,
                SurgeonFactor,
                Pacd,
                LongEye,
                Target,
                Vertex,
                LensPower,
            ],
            Subject::Method(Method::ShammasPl) => {
                &[AxialLength, K1, K2, R1, R2, Index, PreviousSurgery, AConstant, Target, Vertex, LensPower]
            }
            Subject::Method(Method::DoubleSrkt | Method::DoubleHolladay1 | Method::DoubleHofferQ) => &[
                AxialLength,
                PreviousSurgery,
                KBefore,
                RefractionBefore,
                RefractionAfter,
                KAfter,
                KAfterFrom,
                AConstant,
                SurgeonFactor,
                Pacd,
                Target,
                Vertex,
                LensPower,
            ],
            Subject::Certainty => &[
                AxialLength,
                K1,
                K2,
                R1,
                R2,
                Index,
                Acd,
                AlScatter,
                KScatter,
                AcdScatter,
                PositionSd,
                RefractionSd,
                ConstantsFrom,
                Target,
                Vertex,
                LensPower,
            ],
            Subject::Second => &[
                K1,
                K2,
                R1,
                R2,
                Index,
                SecondFor,
                RefractionNow,
                LensInEye,
                SecondPlace,
                SecondPosition,
                SulcusShift,
                SecondPower,
                Target,
                Vertex,
            ],
            Subject::Thick => &[FrontRadius, BackRadius, LensCentre, LensIndex, LensPower],
            Subject::Schematic | Subject::OffAxis => &[],
            Subject::Turn => &[
                AxialLength,
                K1,
                K2,
                R1,
                R2,
                Index,
                Target,
                Vertex,
                LensPower,
                LabelPower,
                CylinderPlane,
                LensCylinder,
                AfterSphere,
                AfterCylinder,
                AfterAxis,
                MarkFound,
            ],
            Subject::After => &[
                K1,
                K1Axis,
                K2,
                K2Axis,
                R1,
                R2,
                Index,
                Vertex,
                AfterK1,
                AfterK1Axis,
                AfterK2,
                AfterK2Axis,
                AfterSphere,
                AfterCylinder,
                AfterAxis,
            ],
            Subject::Constants => &[AConstant, SurgeonFactor, Pacd, HaigisA0, HaigisA1, HaigisA2, ConstantsFrom],
            Subject::Method(Method::Haigis | Method::HaigisL) => &[
                AxialLength,
                K1,
                K2,
                R1,
                R2,
                Index,
                Acd,
                AcdFrom,
                CornealThickness,
                AConstant,
                HaigisA0,
                HaigisA1,
                HaigisA2,
                LongEye,
                Target,
                Vertex,
                LensPower,
            ],
            Subject::Backup => {
                &[AxialLength, K1, K2, R1, R2, Index, BackupAConstant, BackupPlace, SulcusShift, Target, Vertex]
            }
            Subject::Toric => &[
                AxialLength,
                K1,
                K1Axis,
                K2,
                K2Axis,
                R1,
                R2,
                Index,
                CornealThickness,
                BackFrom,
                BackR1,
                BackR1Axis,
                BackR2,
                BackR2Axis,
                IncisionSite,
                SiteWord,
                ClockHour,
                ClockSeen,
                Flattening,
                Centroid,
                CentroidAxis,
                PairedFlattening,
                OtherSite,
                OtherFlattening,
                Target,
                Vertex,
                LensPower,
                LabelPower,
                CylinderPlane,
                LensCylinder,
                LensAxis,
                Marked,
                AstigmatismSd,
                IncisionSd,
                AlignmentSd,
            ],
            Subject::Head => {
                &[OpenLevel, EyeLevel, GasPressure, SetPressure, AssumedLevel, DensityFrom, Density, Temperature]
            }
            Subject::Ceiling => &[Altitude, StationPressure, Temperature],
            Subject::Chamber | Subject::Surge => &[
                OpenLevel,
                EyeLevel,
                GasPressure,
                SetPressure,
                AssumedLevel,
                DensityFrom,
                Density,
                Temperature,
                PumpKind,
                Aspiration,
                VacuumNucleus,
                InfusionResistance,
                ReadingFlow1,
                ReadingPressure1,
                ReadingFlow2,
                ReadingPressure2,
                AspirationResistance,
                Leak,
                EyeCompliance,
                TubingCompliance,
                SurgeStep,
            ],
            Subject::Tube => &[
                Gauge,
                Bore,
                TubeLength,
                SideBySide,
                Bore2,
                TubeLength2,
                TubeFlow,
                Drive,
                ViscosityFrom,
                Viscosity,
                DensityFrom,
                Density,
                Temperature,
                SyringeBore,
                Friction,
                Opening,
                Discharge,
            ],
            Subject::Rhexis => &[Cut],
        }
    }
}
