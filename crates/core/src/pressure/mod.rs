//! What the column, the air and the pump do, where physics is exact.

pub mod air;
pub mod ceiling;
pub mod head;
pub mod unit;
pub mod vapour;
