//! Living with the cart: judging it as it stands, buying, asking.

#[path = "../support/mod.rs"]
mod support;

mod replan;
mod standing;
