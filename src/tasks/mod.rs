//! What the program does, one file a command: values in, values out, no disk.

pub mod audit;
pub mod check;
pub mod compare;
pub mod draw;
pub mod fit_out;
pub mod offer;
pub mod outcome;
pub mod plan;
pub mod question;
pub mod replan;
pub mod room;
pub mod standing;
mod tell;
pub mod why;
