//! Statics, motion times, body sizes and figures on fire: pure functions and values, each with its source beside it.
//!
//! Nothing here knows of carts, items or files. Masses and lengths in statics are plain numbers in kilograms and
//! millimetres; motions and bodies speak in whole units, so that prices made from them add up exactly.

pub mod boards;
pub mod body;
pub mod casters;
pub mod fasteners;
pub mod fire;
pub mod furniture;
pub mod leaning;
pub mod lifting;
pub mod motion;
pub mod people;
pub mod rolling;
pub mod source;
pub mod timber;
pub mod tipping;
