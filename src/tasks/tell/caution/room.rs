//! The room that the cart stands in, and who comes in.

use super::{About, Caution, OURS, caution};
use crate::domain::Hazard;

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    lived_in(about).into_iter().chain(children(about)).collect()
}

/// Where someone sleeps or lives beside the cart.
fn lived_in(about: &About) -> Option<Caution> {
    let kind = about.workspace.shop.room.kind.as_deref().unwrap_or("").to_lowercase();
    let lived_in = ["flat", "living room", "bedroom", "kitchen", "hall", "home"];
    let fuel = about.with(&[Hazard::Flammable, Hazard::Aerosol]);
    if fuel.is_empty() || !lived_in.contains(&kind.trim()) {
        return None;
    }
    let text = "People live or meet in this room: fuels and larger amounts of finishes belong off the cart, in a place that the local code allows.";
    Some(caution(fuel, text, "local fire code; common practice, no source"))
}

fn children(about: &About) -> Option<Caution> {
    let text = "Children come in: keep blades, chemicals and hot things locked away or out of their reach, and the casters locked.";
    about.workspace.shop.room.children.then(|| caution(Vec::new(), text, OURS))
}
