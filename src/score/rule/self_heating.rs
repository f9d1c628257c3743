//! What can heat itself is kept in a closed metal can, or not at all.

use super::{Against, Rule};
use crate::domain::{CLOSED_METAL_CAN, Hazard};
use crate::score::{Scope, View};
use crate::site::Site;

pub struct SelfHeating;

impl Rule for SelfHeating {
    const NAME: &'static str = "hazards apart";
    const SCOPE: Scope = Scope::Way;
    const SOURCE: &'static str = "oily rags: listed disposal container (IFC 3304.2), covered metal containers (30 CFR 56.4104(b)), both read";

    fn measure(view: &View) -> Option<Against> {
        view.place()?;
        let bare = !view.item().is_canned();
        Some(Against::none(usize::from(bare)))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].hazards.has(Hazard::SelfHeating)
    }
    fn tell(view: &View, _: &Against) -> String {
        let found = match &view.item().inside {
            Some(inside) => format!(", not `{inside}`"),
            None => String::new(),
        };
        format!(
            "{} can self-heat and must be kept `inside: {CLOSED_METAL_CAN}`{found}",
            view.of().name(&view.site().items)
        )
    }
}
