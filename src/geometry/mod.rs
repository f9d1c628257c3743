//! Boxes in the cart's frame, and what one sweeps on its way out.
//!
//! Right-handed frame: origin on the floor under the front-left corner of the carcass as seen from the front,
//! x to the right, y from front to back, z up.

mod cuboid;

pub use cuboid::{Axis, Box3, Point3, Way};
