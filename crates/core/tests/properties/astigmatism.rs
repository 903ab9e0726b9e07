//! Power vectors and their other shapes, incisions, the toric lens, what becomes of it, groups.

use ocellus_core::astigmatism::change::change;
use ocellus_core::astigmatism::expected::{self, Scatter};
use ocellus_core::astigmatism::group::Group;
use ocellus_core::astigmatism::incision::induced;
use ocellus_core::astigmatism::matrix::PowerMatrix;
use ocellus_core::astigmatism::plane::{Cornea, Spectacles};
use ocellus_core::astigmatism::polar::Polar;
use ocellus_core::astigmatism::posterior::{BackFrom, corrected};
use ocellus_core::astigmatism::power_vector::PowerVector;
use ocellus_core::astigmatism::site::{ClockSeen, Seat, Side, SiteWord, of_clock, of_word, opposite, tilt, word};
use ocellus_core::astigmatism::sphero_cylinder::SpheroCylinder;
use ocellus_core::astigmatism::toric::{ToricLens, residual, working};
use ocellus_core::astigmatism::{off_axis, turning, two_surfaces};
use ocellus_core::optics::cornea;
use ocellus_core::optics::thin_eye::ThinEye;
use ocellus_core::quantity::{Axis, ClockHour, CornealRadius, CornealThickness, Flattening, Refraction, Site, Vertex};
use proptest::prelude::*;

use crate::close;

fn axis(degrees: f64) -> Axis {
    Axis::from_deg(degrees.rem_euclid(180.0)).unwrap()
}

/// The sine of an angle in degrees from the standard library: a way that is not the core's.
#[allow(clippy::disallowed_methods, reason = "an outside oracle, not a number that is shown")]
fn sine(degrees: f64) -> f64 {
    degrees.to_radians().sin()
}

/// The mean size of what is left, summed over angles of the lens and directions and sizes of the cornea's scatter: a way
/// without the distribution that the core takes for it.
#[allow(clippy::disallowed_methods, reason = "an outside oracle, not a number that is shown")]
fn mean_by_sums(lens: f64, cornea: f64, s: f64, g: f64) -> f64 {
    let (mut sum, mut weight) = (0.0, 0.0);
    for step in -60..=60 {
        let t = f64::from(step) / 10.0;
        let twice = (2.0 * s * t).to_radians();
        let (x, y) = (lens * twice.cos() - cornea, lens * twice.sin());
        for ring in 0..60 {
            let r = (f64::from(ring) + 0.5) / 10.0;
            let w = (-t * t / 2.0).exp() * r * (-r * r / 2.0).exp();
            for turn in 0..24 {
                let phi = (15.0 * f64::from(turn)).to_radians();
                sum += w * (x + g * r * phi.cos()).hypot(y + g * r * phi.sin()) / 24.0;
            }
            weight += w;
        }
    }
    sum / weight
}

/// As near to the integral as it is said to be, up to the scatter that is accepted: 10 deg, and lying down.
#[test]
fn what_is_expected_is_near_the_integral() {
    let size = |n| PowerVector::strongest_along(Cornea, 0.0, n, axis(90.0));
    for (s, within) in [(0.0, 0.033), (5.33, 0.033), (7.0, 0.033), (10.0, 0.04), (10.66, 0.04)] {
        for cornea in [0.5, 1.5, 4.0] {
            for off in [-0.5, 0.0, 0.5_f64] {
                for g in [0.15, 0.28, 0.5] {
                    let lens = (cornea + off).max(0.0);
                    let ours = expected::mean(size(lens), size(cornea), Scatter::new(g, s));
                    let sums = mean_by_sums(lens, cornea, s, g);
                    assert!((ours - sums).abs() < within, "{s} {cornea} {lens} {g}: {ours} {sums}");
                }
            }
        }
    }
}

fn same<P: Copy>(a: PowerVector<P>, b: PowerVector<P>) -> bool {
    close(a.m, b.m) && close(a.j0, b.j0) && close(a.j45, b.j45)
}

prop_compose! {
    fn refractions()(sphere in -20.0..20.0, cylinder in -10.0..10.0, degrees in 0.0..180.0) -> SpheroCylinder<Spectacles> {
        SpheroCylinder::at(Spectacles, sphere, cylinder, Some(axis(degrees)))
    }
}

prop_compose! {
    fn vectors()(m in -20.0..60.0, j0 in -5.0..5.0, j45 in -5.0..5.0) -> PowerVector<Cornea> {
        PowerVector::at(Cornea, m, j0, j45)
    }
}

prop_compose! {
    fn thin_eyes()(al in 20.0..30.0, kc in 38.0..48.0, elp in 3.5..7.0) -> ThinEye {
        ThinEye::new(al, kc, elp)
    }
}

proptest! {
    /// To a sphero-cylinder and back.
    #[test]
    fn vectors_go_round(vector in vectors()) {
        let rx = vector.minus_cylinder();
        prop_assert!(same(PowerVector::of(rx), vector));
        prop_assert!(rx.cylinder <= 0.0 && rx.axis.is_none_or(|a| (0.0..180.0).contains(&a.deg())));
    }

    /// Both ways of writing a refraction are one power, and writing it twice over gives it back.
    #[test]
    fn transposition_changes_nothing(rx in refractions()) {
        prop_assert!(same(PowerVector::of(rx), PowerVector::of(rx.transposed())));
        let back = rx.transposed().transposed();
        prop_assert!(close(back.sphere, rx.sphere) && back.cylinder == rx.cylinder);
    }

    /// A turned lens has a turned axis, and the power in a meridian turns with it.
    #[test]
    fn turning_turns_the_axis(rx in refractions(), by in 0.0..180.0f64, meridian in 0.0..180.0) {
        let turned = SpheroCylinder { axis: rx.axis.map(|a| axis(a.deg() + by)), ..rx };
        let (a, b) = (PowerVector::of(rx), PowerVector::of(turned));
        prop_assert!(close(a.m, b.m) && (a.cylinder() - b.cylinder()).abs() < 1e-12);
        prop_assert!((a.in_meridian(axis(meridian)) - b.in_meridian(axis(meridian + by))).abs() < 1e-11);
        if let (true, Some(from), Some(to)) = (rx.cylinder.abs() > 1e-3, a.strongest(), b.strongest()) {
            let apart = (from.deg() + by - to.deg()).rem_euclid(180.0);
            prop_assert!(apart.min(180.0 - apart) < 1e-9, "{apart}");
        }
    }

    /// The order in which powers are added does not matter, and taking away undoes adding.
    #[test]
    fn sums_commute(a in vectors(), b in vectors()) {
        prop_assert_eq!(a.plus(b), b.plus(a));
        prop_assert!(same(a.plus(b).minus(b), a));
    }

    /// Two equal and opposite cylinders turned by p against each other leave 2 sin p of either.
    #[test]
    fn crossed_cylinders_leave_twice_the_sine(n in 0.25..8.0, at in 0.0..180.0, p in -90.0..90.0f64) {
        let left = PowerVector::strongest_along(Cornea, 0.0, n, axis(at))
            .minus(PowerVector::strongest_along(Cornea, 0.0, n, axis(at + p)));
        prop_assert!((left.cylinder() - 2.0 * n * sine(p).abs()).abs() < 1e-11);
    }

    /// No power has an axis that is not a number, however small its cylinder.
    #[test]
    fn an_axis_is_always_a_number(
        m in any::<f64>(), j0 in prop_oneof![any::<f64>(), Just(0.0), -1e-9..1e-9],
        j45 in prop_oneof![any::<f64>(), Just(0.0), -1e-9..1e-9],
    ) {
        let vector = PowerVector::at(Cornea, m, j0, j45);
        for axis in [vector.strongest(), vector.minus_cylinder().axis, vector.minus_cylinder().transposed().axis] {
            prop_assert!(axis.is_none_or(|a| (0.0..180.0).contains(&a.deg())));
        }
    }

    /// An incision across and one on the same side of a diameter: opposite sites do the same, crossed ones undo it.
    #[test]
    fn incisions(site in 0.0..180.0, flattening in 0.0..3.0) {
        let at = |degrees: f64| {
            induced(Site::from_deg(degrees.rem_euclid(360.0)).unwrap(), Flattening::from_d(flattening).unwrap())
        };
        prop_assert!(same(at(site), at(site + 180.0)));
        prop_assert!(same(at(site).plus(at(site + 90.0)), PowerVector::default()));
        prop_assert!(close(at(site).in_meridian(axis(site)), -flattening / 2.0));
    }

    /// The lens a cornea needs, along its steep meridian, leaves nothing.
    #[test]
    fn a_perfect_match_leaves_nothing(eye in thin_eyes(), n in 0.0..6.0, steep in 0.0..180.0) {
        let (target, vertex) = (Refraction::from_d(0.0).unwrap(), Vertex::from_mm(12.0).unwrap());
        let w = working(&eye, n, target, vertex).unwrap();
        let mean = eye.behind_lens().unwrap() - (w.v_steep + w.v_flat) / 2.0;
        let lens = ToricLens { mean, cylinder: w.needed, mark: axis(steep) };
        let left = residual(&eye, PowerVector::strongest_along(Cornea, 0.0, n, axis(steep)), lens).unwrap();
        prop_assert!(left.blur() < 1e-9, "{left:?}");
    }

    /// It does not matter for the size of what is left which way a lens has turned, and the more it turns the more is left.
    #[test]
    fn turning_either_way_leaves_as_much(
        eye in thin_eyes(), n in 0.5..6.0, steep in 0.0..180.0, off in 0.1..44.0, more in 0.1..45.0,
    ) {
        let (target, vertex) = (Refraction::from_d(0.0).unwrap(), Vertex::from_mm(12.0).unwrap());
        let w = working(&eye, n, target, vertex).unwrap();
        let mean = eye.behind_lens().unwrap() - (w.v_steep + w.v_flat) / 2.0;
        let lens = ToricLens { mean, cylinder: w.needed, mark: axis(steep) };
        let left = |turn: f64| {
            let cornea = PowerVector::strongest_along(Cornea, 0.0, n, axis(steep));
            residual(&eye, cornea, lens.turned(turn)).unwrap().cylinder()
        };
        prop_assert!((left(off) - left(-off)).abs() < 1e-9);
        prop_assert!(left(off + more) > left(off));
    }

    /// Every other way of writing a power leads back to the same one.
    #[test]
    fn no_way_of_writing_loses_anything(v in vectors(), about in 0.0..180.0, d in 0.0..15.0) {
        prop_assert!(same(PowerMatrix::of(v).at(Cornea), v));
        prop_assert!(same(Polar::about(axis(about), v).power(axis(about), Cornea, v.m), v));
        prop_assert!(same(PowerVector::of(v.plus_cylinder()), v));
        let [f0, f45, f90] = [0.0, 45.0, 90.0].map(|deg| v.in_meridian(axis(deg)));
        prop_assert!(same(PowerVector::in_meridians(Cornea, f0, f45, f90), v));
        if let Some(steep) = v.strongest() {
            prop_assert!(same(PowerVector::strongest_along(Cornea, v.m, v.cylinder(), steep), v));
        }
        let vertex = Vertex::from_mm(d).unwrap();
        if let Ok(rx) = v.minus_cylinder().to_spectacles(vertex) {
            prop_assert!(same(PowerVector::of(rx.to_cornea(vertex).unwrap()), v));
        }
    }

    /// Turning a vector turns the power in every meridian, and turning it back undoes it.
    #[test]
    fn a_turned_vector_is_the_same_power_elsewhere(v in vectors(), by in -180.0..180.0f64, meridian in 0.0..180.0) {
        let turned = v.turned(by);
        prop_assert!(close(turned.in_meridian(axis(meridian + by)), v.in_meridian(axis(meridian))));
        prop_assert!(same(turned.turned(-by), v));
    }

    /// Turn cornea and lens, and what is left turns with them: the answer knows no meridian by its number.
    #[test]
    fn what_a_toric_lens_leaves_turns_with_the_eye(
        eye in thin_eyes(), n in 0.0..6.0, steep in 0.0..180.0, c in 0.0..8.0, mark in 0.0..180.0, by in 0.0..180.0,
    ) {
        let left = |turn: f64| {
            let cornea = PowerVector::strongest_along(Cornea, 0.0, n, axis(steep + turn));
            residual(&eye, cornea, ToricLens { mean: 20.0, cylinder: c, mark: axis(mark + turn) }).unwrap()
        };
        let (turned, plain) = (left(by), left(0.0).turned(by));
        prop_assert!(turned.minus(plain).blur() < 1e-11, "{turned:?} {plain:?}");
    }

    /// Front and back of a cornea turned together are the same cornea turned.
    #[test]
    fn two_surfaces_turn_together(
        front in (6.5..8.5f64, 6.5..8.5f64, 0.0..180.0), back in (5.5..7.5f64, 5.5..7.5f64, 0.0..180.0),
        um in 400.0..700.0, by in 0.0..180.0,
    ) {
        let radius = |mm| CornealRadius::from_mm(mm).unwrap();
        let surface = |(flat, steep, deg): (f64, f64, f64), turn: f64| {
            let axes = Some((axis(deg + turn + 90.0), axis(deg + turn)));
            cornea::Cornea::from_radii(radius(flat), radius(steep), axes).unwrap()
        };
        let of = |turn| {
            let w = two_surfaces::working(
                &surface(front, turn), &surface(back, turn), CornealThickness::from_um(um).unwrap(),
            ).unwrap();
            PowerVector::at(Cornea, w.total_m, w.total_0, w.total_45)
        };
        prop_assert!(of(by).minus(of(0.0).turned(by)).blur() < 1e-11);
    }

    /// An incision at a word lies where that word is said, and the same hour from two seats is not the same place.
    #[test]
    fn sites_are_where_they_are_said_to_be(hour in 0.0..12.0, eighth in 0usize..8, right in any::<bool>()) {
        let eye = if right { Side::Right } else { Side::Left };
        use SiteWord::*;
        let words = [Temporal, Superotemporal, Superior, Superonasal, Nasal, Inferonasal, Inferior, Inferotemporal];
        prop_assert_eq!(word(of_word(words[eighth], eye).unwrap(), eye), words[eighth].word());
        let at = |seen| of_clock(ClockHour::new(hour).unwrap(), seen, eye).unwrap();
        let (facing, head, temple) = (at(ClockSeen::Facing), at(ClockSeen::Superior), at(ClockSeen::Temporal));
        prop_assert!(close(opposite(facing).deg(), head.deg()) || (opposite(facing).deg() - head.deg()).abs() > 359.9);
        prop_assert!(facing != head && facing != temple && head != temple);
    }

    /// No other turn leaves less than the best, the turn is the short way, and both ways round end at the same meridian.
    #[test]
    fn no_turn_is_better_than_the_best(
        needed in vectors(), lens in 0.1..6.0, mark in 0.0..180.0, other in -180.0..180.0f64,
    ) {
        let w = turning::working(needed, lens, axis(mark)).unwrap();
        prop_assert!(w.after(other, 0.0).cylinder() >= w.left - 1e-9);
        prop_assert!((w.after(w.turn, 0.0).cylinder() - w.left).abs() < 1e-9);
        prop_assert!((w.after(0.0, 0.0).cylinder() - w.now).abs() < 1e-9);
        prop_assert!(w.turn > -90.0 && w.turn <= 90.0);
        let (counter, clock) = (w.counter_clockwise(), w.clockwise());
        prop_assert!((0.0..180.0).contains(&counter) && (0.0..180.0).contains(&clock));
        prop_assert!(close(counter + clock, 180.0) || (counter == 0.0 && clock == 0.0));
        for end in [w.m + counter, w.m - clock] {
            let apart = (end - w.best).rem_euclid(180.0);
            prop_assert!(apart.min(180.0 - apart) < 1e-9);
        }
    }

    /// The sense of a turn is the same for both eyes and from every seat, and in a picture upside down; a mirror reverses it.
    #[test]
    fn the_sense_of_a_turn_knows_no_seat(needed in vectors(), lens in 0.1..6.0, mark in 0.0..180.0) {
        let w = turning::working(needed, lens, axis(mark)).unwrap();
        // at the jump between +90 and -90 rounding decides
        prop_assume!(w.turn.abs() < 89.999);
        for eye in [Side::Right, Side::Left] {
            for seat in [None, Some(Seat::Superior), Some(Seat::Temporal)] {
                // the whole eye, as it is seen from there
                let seen = -tilt(seat, eye);
                let there = turning::working(needed.turned(seen), lens, axis(mark + seen)).unwrap();
                prop_assert!((there.turn - w.turn).abs() < 1e-9);
            }
        }
        let mirrored = PowerVector::at(Cornea, needed.m, needed.j0, -needed.j45);
        let there = turning::working(mirrored, lens, axis(180.0 - mark)).unwrap();
        prop_assert!((there.turn + w.turn).abs() < 1e-9);
    }

    /// A lens that was right and has turned is turned back by as much, whichever way it went.
    #[test]
    fn a_lens_that_turned_is_turned_back(c in 0.25..6.0, wanted in 0.0..180.0, off in -89.0..89.0f64) {
        let found = PowerVector::of(off_axis::needed(c, axis(wanted), off));
        let w = turning::working(found, c, axis(wanted + off)).unwrap();
        prop_assert!((w.turn + off).abs() < 1e-6 && w.left < 1e-9);
        let other = PowerVector::of(off_axis::needed(c, axis(wanted), -off));
        prop_assert!((found.cylinder() - other.cylinder()).abs() < 1e-9);
    }

    /// What was meant is what was made and what is missing together; the indices fit each other.
    #[test]
    fn three_vectors_make_a_triangle(before in vectors(), after in vectors(), target in vectors()) {
        let of = change(before, after, target);
        prop_assert!(same(of.surgical.plus(of.difference), of.target));
        let Some(i) = of.indices() else { return Ok(()) };
        let along = i.flattening * i.flattening + i.torque * i.torque;
        prop_assert!((along - i.surgical * i.surgical).abs() < 1e-9 * along.max(1.0));
        prop_assert!(close(i.correction * i.target, i.surgical) && close(i.success * i.target, i.difference));
        prop_assert!(i.angle_error > -90.0 - 1e-9 && i.angle_error <= 90.0);
        let perfect = change(before, target, target).indices().unwrap();
        prop_assert!((perfect.correction - 1.0).abs() < 1e-9 && perfect.success < 1e-9);
    }

    /// Without scatter what is expected is what is planned; more scatter never makes it less.
    #[test]
    fn scatter_only_adds(lens in vectors(), cornea in vectors(), g in 0.0..1.0, more in 0.0..0.5) {
        let mean = |g, s| expected::working(lens, cornea, Scatter::new(g, s)).mean;
        prop_assert!((mean(0.0, 0.0) - lens.minus(cornea).cylinder()).abs() < 1e-7);
        prop_assert!(mean(g + more, 0.0) >= mean(g, 0.0) - 1e-9);
    }

    /// No correction for the back of the cornea moves the front by more than they were published for, and none by nothing.
    #[test]
    fn backs_are_small(n in 0.1..4.0, steep in 0.0..180.0) {
        let front = PowerVector::strongest_along(Cornea, 0.0, n, axis(steep));
        for from in [BackFrom::Regression2016, BackFrom::Eom2015, BackFrom::Goggin2015] {
            let moved = corrected(front, from).unwrap().minus(front).cylinder();
            prop_assert!(moved <= 0.51 + 0.42 * n, "{from:?} {moved}");
        }
        prop_assert!(same(corrected(front, BackFrom::None).unwrap(), front));
    }

    /// A group does not know the order of its eyes, and turning every one of them turns its mean and nothing else.
    #[test]
    fn a_group_turns_with_its_eyes(eyes in proptest::collection::vec(vectors(), 4..30), by in 0.0..180.0) {
        let gather = |eyes: &mut dyn Iterator<Item = PowerVector<Cornea>>| {
            let mut group = Group::default();
            eyes.for_each(|eye| group.add(eye));
            group
        };
        let plain = gather(&mut eyes.iter().copied());
        let (reversed, turned) = (gather(&mut eyes.iter().rev().copied()), gather(&mut eyes.iter().map(|v| v.turned(by))));
        let (a, b, c) = (plain.summary().unwrap(), reversed.summary().unwrap(), turned.summary().unwrap());
        prop_assert!(close(a.x, b.x) && close(a.sd_x, b.sd_x) && close(a.cov, b.cov));
        prop_assert!((a.major - c.major).abs() < 1e-9 && (a.minor - c.minor).abs() < 1e-9);
        let centre = plain.centroid().unwrap().turned(by);
        prop_assert!(turned.centroid().unwrap().minus(centre).blur() < 1e-9);
        if let (Some(a), Some(c)) = (plain.against_zero(), turned.against_zero()) {
            prop_assert!((a.p - c.p).abs() < 1e-9);
        }
    }
}
