//! Everything that hangs has a hook, and everything that cannot stand flat is held.

use crate::ground::{DEMOS, Fitted, all};
use toolberth::domain::{Face, Item, Pose};
use toolberth::tasks::fit_out::{Holder, Kind};
use toolberth::tasks::outcome::Placement;

fn item<'a>(cart: &'a Fitted, p: &Placement) -> &'a Item {
    cart.workspace.items.iter().find(|i| i.name == p.item).expect("it is in the inventory")
}

fn holder_of(cart: &Fitted, placement: usize) -> Option<&Holder> {
    cart.fit.holders.iter().find(|h| h.placement == Some(placement))
}

/// Whether a thing stands flat where it is: told here by its own sizes.
fn stands_flat(item: &Item, p: &Placement) -> bool {
    let Some(foot) = item.pose(Pose::Stand) else { return false };
    p.pose == Pose::Lie || p.space.extent(2).as_nm() <= 3 * foot.w.as_nm().min(foot.d.as_nm())
}

#[test]
fn everything_is_held_on_the_demonstration_carts() {
    for cart in DEMOS.iter() {
        assert!(cart.fit.wants.is_empty(), "{}: {:?}", cart.name, cart.fit.wants);
        assert!(cart.fit.findings.is_empty(), "{}: {:?}", cart.name, cart.fit.findings);
    }
}

#[test]
fn what_hangs_has_a_hook_or_is_told_of() {
    let mut hung = 0;
    for cart in all() {
        for (k, p) in cart.fit.plan.placements.iter().enumerate() {
            if p.pose != Pose::Hang {
                continue;
            }
            hung += 1;
            let told = cart.fit.wants.iter().any(|w| w.contains(&p.item));
            let held = holder_of(cart, k)
                .is_some_and(|h| matches!(h.kind, Kind::Hook | Kind::Rail | Kind::Bracket));
            assert!(held != told, "{}: {} held {held}, told {told}", cart.name, p.item);
        }
    }
    assert!(hung > 60, "only {hung} things hang");
}

#[test]
fn what_cannot_stand_flat_is_held_or_told_of() {
    let mut shaky = 0;
    for cart in all() {
        for (k, p) in cart.fit.plan.placements.iter().enumerate() {
            let item = item(cart, p);
            if p.pose == Pose::Hang || p.face == Face::Top && !item.fetched || stands_flat(item, p)
            {
                continue;
            }
            shaky += 1;
            let told = cart.fit.wants.iter().any(|w| w.contains(&p.item));
            assert!(told || holder_of(cart, k).is_some(), "{}: {}", cart.name, p.item);
        }
    }
    assert!(shaky > 10, "only {shaky} things cannot stand flat");
}

#[test]
fn what_is_screwed_holds_with_something_to_spare() {
    let mut held = 0;
    for cart in all() {
        for holder in &cart.fit.holders {
            let Some(holding) = &holder.holding else { continue };
            held += 1;
            assert!(holding.share > 0.0 && holding.share <= 1.0, "{}: {holder:?}", cart.name);
            if let Some(p) = holder.placement.map(|p| &cart.fit.plan.placements[p]) {
                assert!(holding.load >= p.weight, "{}: {holder:?}", cart.name);
            }
        }
    }
    assert!(held > 60);
}
