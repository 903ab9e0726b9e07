//! Several things at a time, where each keeps one core busy.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// As many as there are cores on the smallest machine that this is meant for.
const LANES: usize = 2;

/// Does something with each, and gives what came of it in their order; does it in the lane of this number. After a failure no lane
/// begins anything.
pub(crate) fn each<T: Sync, U: Send>(
    all: &[T],
    does: impl Fn(usize, &T) -> Result<U, String> + Sync,
) -> Result<Vec<U>, String> {
    let next = AtomicUsize::new(0);
    let lane = |number: usize| {
        let mut done = Vec::new();
        loop {
            let place = next.fetch_add(1, Ordering::Relaxed);
            let Some(one) = all.get(place) else { return Ok(done) };
            done.push((place, does(number, one).inspect_err(|_| next.store(all.len(), Ordering::Relaxed))?));
        }
    };
    let lane = &lane;
    let lanes: Result<Vec<Vec<(usize, U)>>, String> = thread::scope(|scope| {
        let lanes: Vec<_> = (0..LANES).map(|number| scope.spawn(move || lane(number))).collect();
        lanes.into_iter().map(|lane| lane.join().unwrap_or_else(|_| Err("a lane stopped".into()))).collect()
    });
    let mut done: Vec<_> = lanes?.into_iter().flatten().collect();
    done.sort_by_key(|(place, _)| *place);
    Ok(done.into_iter().map(|(_, one)| one).collect())
}

#[cfg(test)]
mod tests {
    use std::sync::Mutex;

    use super::*;

    #[test]
    fn each_is_done_once_and_answered_in_its_place() {
        let numbers: Vec<usize> = (0..100).collect();
        let lanes = Mutex::new(Vec::new());
        let doubled = each(&numbers, |lane, number| {
            lanes.lock().unwrap().push(lane);
            Ok(2 * number)
        });
        assert_eq!(doubled.unwrap(), (0..100).map(|number| 2 * number).collect::<Vec<_>>());
        assert!(lanes.lock().unwrap().iter().all(|lane| *lane < LANES));
        assert_eq!(each(&[], |_, number: &usize| Ok(*number)), Ok(Vec::new()));
    }

    #[test]
    fn after_a_failure_nothing_begins() {
        let begun = Mutex::new(0);
        let done = each(&(0..1000).collect::<Vec<usize>>(), |_, number| {
            *begun.lock().unwrap() += 1;
            if *number == 3 { Err("three".to_owned()) } else { Ok(()) }
        });
        assert_eq!(done.unwrap_err(), "three");
        assert!(*begun.lock().unwrap() < 1000);
    }
}
