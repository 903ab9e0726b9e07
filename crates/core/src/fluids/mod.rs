//! What the column, the air, the pump and the tubing do: exact where physics is exact, and illustrations where the eye
//! answers, see [`chamber`] and [`surge`].

pub mod air;
pub mod ceiling;
pub mod chamber;
pub mod column;
pub mod density;
pub mod hold;
pub mod live;
pub mod needle;
pub mod opening;
pub mod plunger;
pub mod readings;
pub mod surge;
pub mod tube;
pub mod unit;
pub mod vapour;
pub mod viscosity;
