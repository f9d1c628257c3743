//! What several tests share: carts drawn at random, and a judge of plans that shares no code with the planner.

// Each test file is built with all of it and uses a part.
#![allow(dead_code)]

pub mod by_hand;
pub mod carts;
pub mod floor;
pub mod judge;
pub mod planner;
