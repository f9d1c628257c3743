//! Checks against values from outside: published tables, textbook mechanics, measured people.
//!
//! Each value carries its source and whether it was read there, computed from read data, or is from memory.

mod bodies;
mod chance;
mod motions;
mod solver;
mod statics;
