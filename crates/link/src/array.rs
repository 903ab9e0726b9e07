//! Arrays on the wire, element by element in a loop: what `serde` derives would be unrolled, 3 kB of a device's flash.

use core::fmt;
use core::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, Error, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeTuple, Serializer};

pub(crate) fn serialize<S: Serializer, T: Serialize, const N: usize>(
    array: &[T; N],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    let mut tuple = serializer.serialize_tuple(N)?;
    array.iter().try_for_each(|element| tuple.serialize_element(element))?;
    tuple.end()
}

pub(crate) fn deserialize<'de, D: Deserializer<'de>, T: Deserialize<'de> + Default + Copy, const N: usize>(
    deserializer: D,
) -> Result<[T; N], D::Error> {
    deserializer.deserialize_tuple(N, Elements(PhantomData))
}

struct Elements<T, const N: usize>(PhantomData<T>);

impl<'de, T: Deserialize<'de> + Default + Copy, const N: usize> Visitor<'de> for Elements<T, N> {
    type Value = [T; N];

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an array")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut elements: A) -> Result<[T; N], A::Error> {
        let mut array = [T::default(); N];
        for (place, slot) in array.iter_mut().enumerate() {
            *slot = elements.next_element()?.ok_or_else(|| A::Error::invalid_length(place, &self))?;
        }
        Ok(array)
    }
}
