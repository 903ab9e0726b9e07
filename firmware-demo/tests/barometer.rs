//! The barometer on a bus that only pretends: what goes over it is written out here, byte by byte.

use std::cell::Cell;
use std::rc::Rc;

use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::{ErrorKind, NoAcknowledgeSource};
use embedded_hal_mock::eh1::i2c::{Mock, Transaction};
use ocellus_firmware::{Air, Barometer};

const LOW: u8 = 0x76;
const HIGH: u8 = 0x77;
const BME280: u8 = 0x60;
const BMP280: u8 = 0x58;

/// The worked example of the BMP280's data sheet (memory): its calibration, the raw values of temperature and pressure,
/// and what they come to, 25.08 degC and 100653.27 Pa.
const T: (f64, f64, f64) = (27504.0, 26435.0, -1000.0);
const P: [f64; 9] = [36477.0, -10685.0, 3024.0, 2855.0, 140.0, -7.0, 15500.0, -14600.0, 6000.0];
const EXAMPLE: (u32, u32) = (519_888, 415_148);

/// The registers from 0x88 on, low byte first; the last one is of humidity.
fn calibration() -> Vec<u8> {
    let numbers = [T.0, T.1, T.2].into_iter().chain(P);
    numbers.flat_map(|number| (number as i32 as u16).to_le_bytes()).chain([0, 75]).collect()
}

/// The data sheet's formula in f64 (memory): degC and hPa. The driver has it in f32.
fn air(raw_t: u32, raw_p: u32) -> (f64, f64) {
    let (raw_t, raw_p) = (f64::from(raw_t), f64::from(raw_p));
    let off = raw_t / 131_072.0 - T.0 / 8192.0;
    let fine = (raw_t / 16_384.0 - T.0 / 1024.0) * T.1 + off * off * T.2;
    let [p1, p2, p3, p4, p5, p6, p7, p8, p9] = P;
    let a = fine / 2.0 - 64_000.0;
    let b = (a * a * p6 / 32_768.0 + a * p5 * 2.0) / 4.0 + p4 * 65_536.0;
    let c = (1.0 + (p3 * a * a / 524_288.0 + p2 * a) / 524_288.0 / 32_768.0) * p1;
    let p = (1_048_576.0 - raw_p - b / 4096.0) * 6250.0 / c;
    (fine / 5120.0, (p + (p9 * p * p / 2_147_483_648.0 + p * p8 / 32_768.0 + p7) / 16.0) / 100.0)
}

fn asks(address: u8, register: u8, answer: &[u8]) -> Transaction {
    Transaction::write_read(address, vec![register], answer.to_vec())
}

fn is(address: u8, id: u8) -> Transaction {
    asks(address, 0xD0, &[id])
}

fn nobody_at(address: u8) -> Transaction {
    is(address, 0).with_error(ErrorKind::NoAcknowledge(NoAcknowledgeSource::Address))
}

fn nobody() -> Vec<Transaction> {
    vec![nobody_at(LOW), nobody_at(HIGH)]
}

/// All that goes over the bus when a sensor that says this id at this address is found, and then measures these raw
/// values of temperature and pressure.
fn measuring(id: u8, address: u8, (raw_t, raw_p): (u32, u32)) -> Vec<Transaction> {
    let sets = |register, value| Transaction::write(address, vec![register, value]);
    let asks = |register, answer: &[u8]| asks(address, register, answer);
    let three = |raw: u32| (raw << 4).to_be_bytes()[1..].to_vec();
    vec![
        // found; the driver asks again
        is(address, id),
        is(address, id),
        // reset
        sets(0xE0, 0xB6),
        asks(0x88, &calibration()),
        asks(0xE1, &[0; 7]),
        // asleep: humidity and temperature once, pressure eight times, no filter
        asks(0xF4, &[0]),
        sets(0xF2, 1),
        asks(0xF4, &[0]),
        sets(0xF4, 0x30),
        asks(0xF5, &[0]),
        sets(0xF5, 0),
        // still asleep: measure once
        asks(0xF4, &[0x30]),
        asks(0xF4, &[0x30]),
        sets(0xF4, 0x31),
        asks(0xF7, &[three(raw_p), three(raw_t), vec![0x80, 0]].concat()),
    ]
}

/// Adds up what it is asked to wait.
#[derive(Clone, Default)]
struct Waits(Rc<Cell<u64>>);

impl DelayNs for Waits {
    fn delay_ns(&mut self, ns: u32) {
        self.0.set(self.0.get() + u64::from(ns));
    }
}

/// Opens, reads so many times, and checks that all this and nothing else went over the bus. What was read, and the
/// milliseconds waited.
fn talk(on_the_bus: &[Vec<Transaction>], readings: usize) -> (Vec<Air>, u64) {
    let mut bus = Mock::new(&on_the_bus.concat());
    let waits = Waits::default();
    let mut barometer = Barometer::open(bus.clone(), waits.clone());
    let readings = (0..readings).map(|_| barometer.read()).collect();
    bus.done();
    (readings, waits.0.get() / 1_000_000)
}

/// What a reading of raw values must say, as near as f32 gets: a pascal is a hundredth of a hPa.
fn assert_air(reading: Air, raw: (u32, u32)) {
    let (t, p) = air(raw.0, raw.1);
    let agrees = |hpa: f64, celsius: f64| (hpa - p).abs() < 2e-3 && (celsius - t).abs() < 1e-4;
    let is_air = matches!(reading, Air::Measured { hpa, celsius } if agrees(hpa, celsius));
    assert!(is_air, "{reading:?} for {p} hPa, {t} degC");
}

#[test]
fn the_formula_here_gives_the_data_sheet_s_example() {
    let (celsius, hpa) = air(EXAMPLE.0, EXAMPLE.1);
    assert!((celsius - 25.08).abs() < 5e-3, "{celsius}");
    assert!((hpa - 1006.5327).abs() < 5e-5, "{hpa}");
}

#[test]
fn a_reading_is_what_the_data_sheet_says_of_either_sensor_at_either_address() {
    for id in [BME280, BMP280] {
        let (readings, waited) = talk(&[vec![is(LOW, id)], measuring(id, LOW, EXAMPLE)], 1);
        assert_air(readings[0], EXAMPLE);
        // 2 after the reset, 40 for the measurement, which takes 26 at most with these settings
        assert_eq!(waited, 42);

        let first = vec![nobody_at(LOW)];
        let high = [first.clone(), vec![is(HIGH, id)], first, measuring(id, HIGH, EXAMPLE)];
        assert_air(talk(&high, 1).0[0], EXAMPLE);
    }
}

#[test]
fn readings_follow_the_raw_values() {
    let raws = [
        EXAMPLE,
        (519_888, 370_000),
        (450_000, 415_148),
        (560_000, 400_000),
        (519_888, 700_000),
        (400_000, 500_000),
        // near the ends of the range: 1099.3 hPa, 300.9 hPa, 84.9 degC, -39.3 degC
        (519_888, 361_500),
        (519_888, 829_000),
        (712_000, 450_000),
        (316_000, 415_148),
    ];
    for raw in raws {
        assert_air(talk(&[vec![is(LOW, BME280)], measuring(BME280, LOW, raw)], 1).0[0], raw);
    }
}

#[test]
fn nobody_there_is_absent_each_time_it_is_asked() {
    assert_eq!(talk(&[nobody(), nobody(), nobody()], 2), (vec![Air::Absent; 2], 0));
}

/// 0x5A is what the emulated micro:bit says whatever it is asked; 0 and 0xFF are lines that are held or float.
#[test]
fn another_id_is_no_sensor_and_is_left_alone() {
    for id in [0x5A, 0, 0xFF, 0x61] {
        let both = vec![is(LOW, id), is(HIGH, id)];
        assert_eq!(talk(&[both.clone(), both], 1), (vec![Air::Absent], 0), "{id:#x}");
    }
}

#[test]
fn one_that_comes_late_is_found() {
    let (readings, _) = talk(&[nobody(), nobody(), measuring(BME280, LOW, EXAMPLE)], 2);
    assert_eq!(readings[0], Air::Absent);
    assert_air(readings[1], EXAMPLE);
}

#[test]
fn one_that_is_taken_away_is_silent_until_it_is_back() {
    let another = vec![is(LOW, 0x5A), nobody_at(HIGH)];
    let back = vec![nobody_at(LOW)];
    let high = measuring(BMP280, HIGH, EXAMPLE);
    let (readings, _) =
        talk(&[vec![is(LOW, BME280)], measuring(BME280, LOW, EXAMPLE), nobody(), another, back, high], 4);
    assert_air(readings[0], EXAMPLE);
    assert_eq!(readings[1..3], [Air::Silent; 2]);
    assert_air(readings[3], EXAMPLE);
}

/// Seen only by the reading that then failed, it was there all the same.
#[test]
fn an_error_anywhere_in_a_reading_is_silence_and_the_next_reading_begins_anew() {
    let whole = measuring(BME280, LOW, EXAMPLE);
    for broken in 1..whole.len() {
        let mut first = whole[..=broken].to_vec();
        first[broken] = first[broken].clone().with_error(ErrorKind::Bus);
        let (readings, _) = talk(&[nobody(), first, whole.clone()], 2);
        assert_eq!(readings[0], Air::Silent, "{broken}");
        assert_air(readings[1], EXAMPLE);
    }
}

#[test]
fn what_cannot_be_is_silence() {
    // 1100.2 hPa, 299.2 hPa, 87 degC, -41 degC
    for raw in [(519_888, 361_000), (519_888, 830_000), (720_000, 450_000), (310_000, 415_148)] {
        let (celsius, hpa) = air(raw.0, raw.1);
        let outside = [!(300.0..=1100.0).contains(&hpa), !(-40.0..=85.0).contains(&celsius)];
        assert!(outside[0] != outside[1], "{hpa} hPa, {celsius} degC");
        let (readings, _) = talk(&[vec![is(LOW, BME280)], measuring(BME280, LOW, raw)], 1);
        assert_eq!(readings, [Air::Silent], "{raw:?}");
    }
}

/// What its registers hold after a reset would pass for air.
#[test]
fn one_that_has_measured_nothing_is_silent() {
    let nothing = 0x80000;
    let (celsius, hpa) = air(nothing, nothing);
    assert!((300.0..=1100.0).contains(&hpa) && (-40.0..=85.0).contains(&celsius), "{hpa} hPa, {celsius} degC");
    for raw in [(nothing, nothing), (EXAMPLE.0, nothing), (nothing, EXAMPLE.1)] {
        let (readings, _) = talk(&[vec![is(LOW, BME280)], measuring(BME280, LOW, raw)], 1);
        assert_eq!(readings, [Air::Silent], "{raw:?}");
    }
}

#[test]
fn calibration_without_pressure_is_silence() {
    let mut blank = measuring(BME280, LOW, EXAMPLE);
    blank[3] = asks(LOW, 0x88, &[0; 26]);
    assert_eq!(talk(&[vec![is(LOW, BME280)], blank], 1).0, [Air::Silent]);
}
