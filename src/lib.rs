//! toolberth decides where every tool lives on a rolling workshop cart.
//!
//! The modules are the floors of the house; imports go down only:
//! `cli` → `report` → `tasks` → `solve` → `score` → `site` | `files` → `physics` | `domain` → `finding`, `units`, `geometry`.

pub mod cli;
pub mod domain;
pub mod files;
pub mod finding;
pub mod geometry;
pub mod physics;
pub mod report;
pub mod score;
pub mod site;
pub mod solve;
pub mod tasks;
pub mod units;
