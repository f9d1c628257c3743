//! Sets out what the tasks have worked out, and computes no figure of its own: it only rounds and words.

pub mod faults;
pub mod json;
#[cfg(test)]
mod sample;
pub mod terminal;
