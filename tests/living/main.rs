//! Living with the cart: judging it as it stands, buying, asking.

#[path = "../support/mod.rs"]
#[allow(unused_imports)]
mod support;

mod audit;
mod compare;
mod ground;
mod prop_shop;
mod replan;
mod reserve;
mod room;
mod shelves;
mod standing;
mod why;
