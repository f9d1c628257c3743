//! Nobody has to move an uncovered edge to reach something else.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::Site;

pub struct Sharp;

impl Rule for Sharp {
    const NAME: &'static str = "hazards apart";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str = "our own rule: an uncovered edge is not handled in passing";

    fn measure(view: &View) -> Option<Against> {
        view.place()?;
        if view.closure.lots.is_empty() {
            return None;
        }
        let lots = &view.site().lots;
        let bare = view.closure.lots.iter().filter(|&&l| lots[l as usize].bare_edge);
        Some(Against::none(bare.count()))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].is_fetched(&site.items)
    }
    fn tell(view: &View, _: &Against) -> String {
        let site = view.site();
        let bare = view.closure.lots.iter().filter(|&&l| site.lots[l as usize].bare_edge).min();
        let edge = bare.map_or_else(String::new, |&l| site.lots[l as usize].name(&site.items));
        format!(
            "{edge} has an uncovered edge and must be moved for {}",
            view.of().name(&site.items)
        )
    }
    fn lots(view: &View) -> Vec<u32> {
        let lots = &view.site().lots;
        let mut all = vec![view.lot as u32];
        all.extend(view.closure.lots.iter().filter(|&&l| lots[l as usize].bare_edge));
        all
    }
}
