//! Four thousand statistical eyes through every method: where the methods agree, and where they differ.
//!
//! The eyes are drawn from a published model of healthy eyes by the package that carries it: see `population/README.md`.
//! What is "measured here" below is our own print: a regression, and no evidence. No eye has an outcome, so nothing here
//! says which method is right.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it stands")]

use std::sync::LazyLock;

use ocellus_card::draft::Draft;
use ocellus_card::id::EntryId;
use ocellus_card::{cautions, entries};
use ocellus_core::lens::method::Method;
use ocellus_tests::methods::answers;

const TABLE: &str = include_str!("../population/eyes.csv");

/// The methods that need no chamber depth, whose constants follow from one A-constant.
const FOUR: [Method; 4] = [Method::Srkt, Method::T2, Method::Holladay1, Method::HofferQ];

/// One eye, and what the methods ask for it.
struct Eye {
    al: f64,
    k: f64,
    acd: f64,
    lens: f64,
    powers: [f64; 4],
    haigis: f64,
    departs: bool,
}

impl Eye {
    fn spread(&self) -> f64 {
        self.powers.iter().copied().fold(f64::MIN, f64::max) - self.powers.iter().copied().fold(f64::MAX, f64::min)
    }

    /// SRK/T above T2, D.
    fn departure(&self) -> f64 {
        self.powers[0] - self.powers[1]
    }

    /// Haigis above the mean of the four, D.
    fn haigis_above(&self) -> f64 {
        self.haigis - mean(&self.powers)
    }

    fn central(&self) -> bool {
        (22.0..=24.5).contains(&self.al) && (42.0..=45.0).contains(&self.k)
    }
}

static EYES: LazyLock<Vec<Eye>> = LazyLock::new(|| {
    let mut lines = TABLE.lines();
    let keys: Vec<&str> = lines.next().unwrap().split(',').collect();
    lines.map(|line| eye(&keys, line)).collect()
});

fn eye(keys: &[&str], line: &str) -> Eye {
    let mut draft = Draft::default();
    // what `ocellus batch` takes where a table says nothing
    for (entry, word) in [
        (entries::K_KIND.id(), "keratometric"),
        (entries::ACD_FROM.id(), "epithelium"),
        (entries::AL_METHOD.id(), "optical"),
        (entries::EYE_STATE.id(), "phakic"),
        (entries::PREVIOUS_SURGERY.id(), "none"),
    ] {
        draft.enter(entry, word).unwrap();
    }
    let cells: Vec<&str> = line.split(',').collect();
    assert_eq!(cells.len(), keys.len(), "{line}");
    for (key, cell) in keys.iter().zip(cells) {
        match *key {
            "id" => {}
            "eye" => draft.enter(entries::SIDE, cell).unwrap(),
            key => draft.set(EntryId::of_key(key).unwrap(), cell.parse().unwrap()),
        }
    }
    let (answers, cautions) = answers(&draft);
    let departs = cautions.iter().any(|caution| caution.code == cautions::DEPARTS_FROM_T2);
    let power = |method| answers.iter().find(|answer| answer.method == method).unwrap().power;
    let number = |entry: EntryId| draft.number(entry).unwrap();
    Eye {
        al: number(entries::AXIAL_LENGTH.id()),
        k: f64::midpoint(number(entries::K1.id()), number(entries::K2.id())),
        acd: number(entries::ACD.id()),
        lens: number(entries::LENS_THICKNESS.id()),
        powers: FOUR.map(power),
        haigis: power(Method::Haigis),
        departs,
    }
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn of(eyes: impl Fn(&Eye) -> bool, value: impl Fn(&Eye) -> f64) -> Vec<f64> {
    EYES.iter().filter(|eye| eyes(eye)).map(value).collect()
}

fn covariance(a: &[f64], b: &[f64]) -> f64 {
    let (a_mean, b_mean) = (mean(a), mean(b));
    let sum: f64 = a.iter().zip(b).map(|(x, y)| (x - a_mean) * (y - b_mean)).sum();
    sum / (a.len() as f64 - 1.0)
}

/// Bounds in mm of groups by axial length, shortest first.
const LENGTHS: [(f64, f64); 4] = [(0.0, 22.0), (22.0, 24.505), (24.505, 26.005), (26.005, 40.0)];

fn by_length(value: impl Fn(&Eye) -> f64) -> [f64; 4] {
    LENGTHS.map(|(from, below)| mean(&of(|eye| (from..below).contains(&eye.al), &value)))
}

/// The model's own mean and SD, from its parameters without a draw (`oracles/population.py`; Rozema and others, Invest
/// Ophthalmol Vis Sci 2016;57:683, in visisipy 0.5.0; K to first order): within four standard errors of a sample. It shows
/// that the columns hold what they say (a chamber depth from the endothelium would be 0.55 mm less), not who the eyes are.
#[test]
fn they_are_the_model_s_eyes() {
    let count = EYES.len() as f64;
    assert!(count >= 2000.0, "{count}");
    for (what, values, expected, sd) in [
        ("axial length", of(|_| true, |eye| eye.al), 24.0450, 1.1053),
        ("mean K", of(|_| true, |eye| eye.k), 43.3034, 1.2728),
        ("chamber depth", of(|_| true, |eye| eye.acd), 3.4355, 0.3867),
        ("lens thickness", of(|_| true, |eye| eye.lens), 4.0613, 0.3815),
    ] {
        let off = mean(&values) - expected;
        assert!(off * off < 16.0 * sd * sd / count, "{what}: mean {}", mean(&values));
        // a normal variance has a relative variance of 2/n
        let off = covariance(&values, &values) / (sd * sd) - 1.0;
        assert!(off * off < 16.0 * 2.0 / count, "{what}: variance {}", covariance(&values, &values));
    }
}

/// Means of a series before cataract surgery, 23.43 mm, 7.69 mm, 3.11 mm: J Cataract Refract Surg 2010;36:1479 (memory).
/// The model's people are healthy: theirs lie within one SD of these, and are not the same.
#[test]
fn they_are_of_the_size_of_eyes_that_are_operated_on() {
    for (what, values, published) in [
        ("axial length", of(|_| true, |eye| eye.al), 23.43),
        ("corneal radius", of(|_| true, |eye| 337.5 / eye.k), 7.69),
        ("chamber depth", of(|_| true, |eye| eye.acd), 3.11),
    ] {
        let off = mean(&values) - published;
        assert!(off * off < covariance(&values, &values), "{what}: {}", mean(&values));
    }
}

/// Common knowledge, no source: longer eyes have flatter corneas and deeper chambers, thicker lenses shallower ones.
/// Numbers drawn one by one, each from its own distribution, would make eyes that nobody has.
#[test]
fn their_measurements_hang_together() {
    let [al, k, acd, lens] = [|eye: &Eye| eye.al, |eye: &Eye| eye.k, |eye: &Eye| eye.acd, |eye: &Eye| eye.lens]
        .map(|value| of(|_| true, value));
    // r^2 that chance passes once in some 16,000 times, four standard errors
    let least = 16.0 / EYES.len() as f64;
    for (what, a, b, sign) in [
        ("AL, K", &al, &k, -1.0),
        ("AL, ACD", &al, &acd, 1.0),
        ("ACD, LT", &acd, &lens, -1.0),
        ("AL, LT", &al, &lens, -1.0),
    ] {
        let shared = covariance(a, b);
        let r2 = shared * shared / (covariance(a, a) * covariance(b, b));
        assert!(shared * sign > 0.0 && r2 > least, "{what}: {shared}, r2 {r2}");
    }
}

/// Common practice, no source: on average eyes the methods say nearly the same. Measured here, on 2,077 eyes: at most
/// 0.86 D between the four, and 0.51 D in 95 of 100 eyes (1.0 is the bound of `mean_eye.rs`, 0.6 was chosen after
/// measuring). Part of that is our own doing: the surgeon factor and the pACD
/// are converted from the A-constant, by conversions that were made to agree on such eyes.
#[test]
fn four_methods_agree_on_average_eyes() {
    let mut spreads = of(Eye::central, Eye::spread);
    spreads.sort_by(f64::total_cmp);
    assert!(spreads.len() > 2000, "{}", spreads.len());
    assert!(spreads[spreads.len() - 1] < 1.0, "{:?}", spreads.last());
    assert!(spreads[spreads.len() * 95 / 100] < 0.6, "{}", spreads[spreads.len() * 95 / 100]);
    assert!(EYES.iter().filter(|eye| eye.central()).all(|eye| !eye.departs));
}

/// Common practice, no source: the methods differ on short and on long eyes; guidance (NICE NG77, memory) names other methods
/// there. Measured here: 0.471, 0.266, 0.393, 0.613 D on average.
#[test]
fn they_part_at_both_ends() {
    let [short, average, longer, long] = by_length(Eye::spread);
    assert!(short > 1.5 * average && long > longer && longer > average, "{short} {average} {longer} {long}");
    for (spread, measured) in [short, average, longer, long].into_iter().zip([0.471, 0.266, 0.393, 0.613]) {
        assert!((spread - measured).abs() < 0.005, "{spread}, was {measured}");
    }
}

/// In which direction they differ, measured here: on short eyes Hoffer Q asks for the most and SRK/T for the least, on long eyes
/// T2 for the most and Holladay 1 and Hoffer Q for the least.
#[test]
fn each_end_has_its_order() {
    let powers: Vec<[f64; 4]> = (0..FOUR.len()).map(|method| by_length(|eye| eye.powers[method])).collect();
    let [srkt, t2, holladay1, hofferq] = powers.as_slice() else { panic!("{powers:?}") };
    assert!(srkt[0] < t2[0] && t2[0] < holladay1[0] && holladay1[0] < hofferq[0], "{powers:?}");
    assert!(t2[3] > srkt[3] && srkt[3] > holladay1[3] && srkt[3] > hofferq[3], "{powers:?}");
}

/// SRK/T's corneal height does not follow steep corneas (Haigis, J Cataract Refract Surg 1993;19:442; Sheard and others
/// 2010;36:1829, both memory): its departure from T2 grows with K. Measured here: 0 of 3,056 eyes at 42 to 45 D, 3 of 297
/// at 45 to 46, 16 of 52 at 46 to 47, 7 of 10 above.
#[test]
fn srkt_departs_from_t2_as_corneas_get_steeper() {
    let counts: Vec<(usize, usize)> = [(42.0, 45.0), (45.0, 46.0), (46.0, 47.0), (47.0, 60.0)]
        .into_iter()
        .map(|(from, below)| {
            let group: Vec<&Eye> = EYES.iter().filter(|eye| (from..below).contains(&eye.k)).collect();
            (group.iter().filter(|eye| eye.departs).count(), group.len())
        })
        .collect();
    assert_eq!(counts[0].0, 0, "{counts:?}");
    for pair in counts.windows(2) {
        assert!(pair[1].0 * pair[0].1 > pair[0].0 * pair[1].1, "{counts:?}");
    }
    let means = [(0.0, 41.0), (41.0, 42.0), (42.0, 43.0), (43.0, 44.0), (44.0, 45.0), (45.0, 46.0), (46.0, 60.0)]
        .map(|(from, below)| mean(&of(|eye| (from..below).contains(&eye.k), Eye::departure)));
    assert!(means.is_sorted_by(|a, b| a < b), "{means:?}");
}

/// Measured here: it departs on flat corneas too, the other way. 18 of 120 eyes below 41 D, each with less power than T2;
/// 26 eyes above 45 D, each with more.
#[test]
fn srkt_departs_from_t2_at_both_ends_of_k() {
    let departed: Vec<&Eye> = EYES.iter().filter(|eye| eye.departs).collect();
    let flat = departed.iter().filter(|eye| eye.k < 41.0 && eye.departure() < 0.0).count();
    let steep = departed.iter().filter(|eye| eye.k > 45.0 && eye.departure() > 0.0).count();
    assert_eq!((flat, steep, departed.len()), (18, 26, 44));
}

/// Haigis, with constants that were converted: about 1 D above SRK/T on an average eye (memory), which is why it is not
/// compared. Measured here: 1.21 D above the four on average eyes (the 0.3 was chosen after measuring); 1.82 D on
/// short, 0.66 D on long ones.
#[test]
fn haigis_unoptimised_lies_above() {
    let central = mean(&of(Eye::central, Eye::haigis_above));
    assert!((central - 1.21).abs() < 0.3, "{central}");
    let [short, average, longer, long] = by_length(Eye::haigis_above);
    assert!(short > average && average > longer && longer > long && long > 0.0, "{short} {average} {longer} {long}");
}
