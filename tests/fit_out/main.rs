//! Fitting out: screws and the boards they go into, hooks and holders for everything, holes that keep clear.

#[path = "../support/mod.rs"]
#[allow(unused_imports)]
mod support;

#[path = "../support/shell.rs"]
#[allow(dead_code)]
mod shell;

mod command;
mod ground;
mod holders;
mod holes;
mod screws;
mod sheets;
mod templates;
