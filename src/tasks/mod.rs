//! What the program does, one file a command: values in, values out, no disk.

pub mod check;
pub mod outcome;
pub mod plan;
pub mod replan;
pub mod standing;
mod tell;
