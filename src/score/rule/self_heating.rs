//! What can heat itself is kept in a closed metal can, or not at all.

use super::{Against, Rule};
use crate::domain::Hazard;
use crate::score::{Scope, View};
use crate::site::Site;

pub struct SelfHeating;

impl Rule for SelfHeating {
    const NAME: &'static str = "hazards apart";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str = "oily rags: listed disposal container (IFC 3304.2), covered metal containers (30 CFR 56.4104(b)), both read";

    fn measure(view: &View) -> Option<Against> {
        view.place()?;
        let item = view.item();
        let bare = !item
            .inside
            .as_ref()
            .is_some_and(|c| c.trim().eq_ignore_ascii_case("closed metal can"));
        Some(Against::none(usize::from(bare)))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].hazards.has(Hazard::SelfHeating)
    }
    fn tell(view: &View, _: &Against) -> String {
        format!(
            "{} can self-heat and must be kept `inside: closed metal can`",
            view.of().name(&view.site().items)
        )
    }
}
