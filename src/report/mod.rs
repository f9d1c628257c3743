//! Sets out what the tasks have worked out, and computes no figure of its own: it only rounds and words.

pub mod drawing;
pub mod faults;
mod figure;
pub mod fitting;
pub mod json;
pub mod page;
#[cfg(test)]
mod sample;
mod sentence;
pub mod shade;
pub mod sheet;
pub mod terminal;
