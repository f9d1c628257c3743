//! Room to grow that is missing.

use crate::score::{Cost, Scope, View};
use crate::site::For;
use crate::units::{Price, Uses};

pub struct Reserve;

/// Volumes in cubic millimetres.
pub struct Room {
    wanted: i64,
    free: i64,
}

impl Cost for Reserve {
    const NAME: &'static str = "reserve";
    const SCOPE: Scope = Scope::Growth;
    type Fact = Room;

    fn measure(view: &View) -> Option<Room> {
        let wanted = view.wanted();
        let free = view.tally.free(view.site(), &wanted.what);
        Some(Room { wanted: wanted.volume, free })
    }
    // By what is left of the volume, wherever in it: it says that there is room, not that a thing fits.
    fn price(view: &View, room: &Room) -> Price {
        let missing = (room.wanted - room.free).max(0);
        // A litre is a million cubic millimetres; so is a unit of use a thousand billionths of one.
        Uses::nano(missing * 1000).cost(view.site().rates.reserve)
    }
    fn tell(view: &View, room: &Room) -> String {
        let litres = |volume: i64| volume as f64 / 1e6;
        let (wanted, free) = (litres(room.wanted), litres(room.free));
        let short = if room.free < room.wanted { ", which is too little" } else { "" };
        match &view.wanted().what {
            For::Anything(near) => format!(
                "in {} reach {wanted:.1} litres are to stay free for growth; {free:.1} are free{short}",
                near.name()
            ),
            For::Family(family, count) => format!(
                "for {count} further {} things of the usual size, {wanted:.1} litres are to stay free within easy and bend reach on their faces; {free:.1} are free{short}",
                view.site().ties.families[*family].name
            ),
        }
    }
}
