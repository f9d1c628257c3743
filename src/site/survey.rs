//! Every way in which a carcass contradicts itself.

use super::build::{across, breadth, opening, shelf_reach, size, thickness};
use super::surface::world;
use crate::domain::{Bay, Carcass, Depth, Face, Panel, Shelf, Wall};
use crate::finding::{Finding, Span};
use crate::geometry::Box3;
use crate::units::{Length, show_length};

/// Most heights at which one shelf may stand: model's choice.
const MOST_ROWS: i64 = 500;
/// Least height of a panel over the floor: model's choice.
const OVER_FLOOR: Length = Length::mm(50);

/// All faults of a carcass, in the order of the file.
pub(super) fn faults(carcass: &Carcass) -> Vec<Finding> {
    let mut survey = Survey { carcass, found: Vec::new(), volumes: Vec::new() };
    survey.bays();
    survey.drawers();
    survey.panels();
    survey.collisions();
    survey.names();
    survey.bench();
    survey.casters();
    survey.found
}

struct Survey<'c> {
    carcass: &'c Carcass,
    found: Vec<Finding>,
    /// What takes room inside the box, or outside it: name, where it is said, box.
    volumes: Vec<(String, Span, Box3)>,
}

impl Survey<'_> {
    fn show(&self, length: Length) -> String {
        show_length(length, self.carcass.units)
    }

    fn fault(&mut self, text: String, span: &Span, help: &str) {
        self.found.push(Finding::fault(text).at(span).help(help));
    }

    fn bays(&mut self) {
        let carcass = self.carcass;
        for bay in &carcass.bays {
            let name = format!("{} / {}", bay.face.name(), bay.name);
            let Some(open) = opening(carcass, bay) else {
                self.no_front(bay, &name);
                continue;
            };
            if bay.face == Face::Top && (!bay.shelves.is_empty() || !bay.hang.is_empty()) {
                self.fault(
                    format!("{name} opens upwards and takes neither shelves nor hooks"),
                    &bay.span,
                    "give it a floor only, or open it to a side",
                );
                continue;
            }
            self.within(&name, &bay.span, bay.face, open.u, open.v);
            self.deep_enough(&name, &bay.span, bay.face, open.depth);
            self.shelves(bay, &name, open.depth, open.v[1] - open.v[0]);
            if bay.depth == Depth::Through && bay.hang.iter().any(|(w, _)| *w == Wall::Back) {
                self.fault(
                    format!("{name} goes through and has no back wall to hang things on"),
                    &bay.span,
                    "hang them on `left`, `right` or `ceiling`",
                );
            }
            let b = world(bay.face, size(carcass), open.u, open.v, [Length::ZERO, open.depth]);
            self.volumes.push((name, bay.span.clone(), b));
        }
    }

    fn no_front(&mut self, bay: &Bay, name: &str) {
        let Depth::Behind { name: front, .. } = &bay.depth else { return };
        let other = bay.face.opposite();
        let names = self.carcass.bays.iter().filter(|b| b.face == other);
        let near = Finding::fault(format!(
            "{name} is behind `{front}`, but the {} has no such bay with a depth of its own",
            other.name()
        ));
        let near = near.at(&bay.span).near(front, names.map(|b| b.name.as_str()));
        self.found.push(near.help("name a bay of the opposite face whose `depth` is a length"));
    }

    /// Whether an opening lies within its face.
    fn within(&mut self, name: &str, span: &Span, face: Face, u: [Length; 2], v: [Length; 2]) {
        let (wide, high) = (breadth(self.carcass, face), self.carcass.height);
        let (low, high) = match face {
            Face::Top => (Length::ZERO, self.carcass.depth),
            _ => (self.carcass.casters.height, high),
        };
        let (a, b) = (self.show(u[0]), self.show(u[1]));
        if u[0] < Length::ZERO || u[1] > wide {
            let wide = self.show(wide);
            let text = format!("{name} sticks out of the cart sideways: {a} to {b} of {wide}");
            self.fault(text, span, "move `at` or make `opening` narrower");
        }
        if v[0] < low || v[1] > high {
            let (a, b) = (self.show(v[0]), self.show(v[1]));
            let (low, high) = (self.show(low), self.show(high));
            let text =
                format!("{name} sticks out of the cart: {a} to {b}, the box is {low} to {high}");
            self.fault(text, span, "heights count from the floor, casters included");
        }
    }

    fn deep_enough(&mut self, name: &str, span: &Span, face: Face, depth: Length) {
        let most = across(self.carcass, face);
        if depth <= Length::ZERO || depth > most {
            let (depth, most) = (self.show(depth), self.show(most));
            let text = format!("{name} is {depth} deep, the cart is {most} deep there");
            self.fault(text, span, "make `depth` fit, or write `depth: through`");
        }
    }

    fn shelves(&mut self, bay: &Bay, name: &str, depth: Length, high: Length) {
        let mut shelves: Vec<&Shelf> = bay.shelves.iter().collect();
        shelves.sort_by_key(|s| s.height);
        let mut last: Option<&Shelf> = None;
        for (n, shelf) in shelves.iter().enumerate() {
            let name = format!("{name} / shelf {}", n + 1);
            let thick = thickness(self.carcass, shelf);
            let under = last.map_or(Length::ZERO, |s| s.height);
            if shelf.height - thick < under || shelf.height >= high {
                let (top, room) = (self.show(shelf.height), self.show(high));
                let text =
                    format!("{name} has its top at {top}: no room under or over it in {room}");
                self.fault(
                    text,
                    &shelf.span,
                    "shelves may not touch each other, the floor or the top",
                );
            }
            let reach = shelf_reach(bay, shelf, depth);
            if reach[0] < Length::ZERO || reach[1] > depth || reach[0] >= reach[1] {
                let (a, b, d) = (self.show(reach[0]), self.show(reach[1]), self.show(depth));
                let text = format!("{name} reaches from {a} to {b} of a bay {d} deep");
                self.fault(text, &shelf.span, "make the shelf's `depth` or `front` smaller");
            }
            if bay.depth == Depth::Through
                && shelf.front.is_none()
                && shelf.depth.is_some_and(|d| d < depth)
            {
                let text = format!("{name}: in a bay that goes through, `depth` needs `front`");
                self.fault(text, &shelf.span, "say with `front` how far in the shelf begins");
            }
            self.adjustable(shelf, &name);
            last = Some(shelf);
        }
    }

    fn adjustable(&mut self, shelf: &Shelf, name: &str) {
        let Some([low, high, step]) = shelf.adjust else { return };
        let row = shelf.height - low;
        let on_row = step > Length::ZERO && row.as_nm() % step.as_nm() == 0;
        if step <= Length::ZERO || shelf.height < low || shelf.height > high || !on_row {
            let text = format!("{name} stands on none of its own rows");
            self.fault(
                text,
                &shelf.span,
                "`adjust` is [lowest, highest, step]; `height` must be one of them",
            );
        } else if (high - low).as_nm() / step.as_nm() > MOST_ROWS {
            let text = format!("{name} has more than {MOST_ROWS} rows");
            self.fault(text, &shelf.span, "a step of 32 mm or 1 1/4 in is usual");
        }
    }

    fn drawers(&mut self) {
        let carcass = self.carcass;
        for drawer in &carcass.drawers {
            let name = format!("{} / {}", drawer.face.name(), drawer.name);
            if drawer.face == Face::Top {
                self.fault(
                    format!("{name}: a drawer cannot open upwards"),
                    &drawer.span,
                    "give it to a side",
                );
                continue;
            }
            let u = [drawer.at[0], drawer.at[0] + drawer.opening[0]];
            let v = [drawer.at[1], drawer.at[1] + drawer.opening[1]];
            self.within(&name, &drawer.span, drawer.face, u, v);
            self.deep_enough(&name, &drawer.span, drawer.face, drawer.depth);
            if drawer.extends.is_some_and(|e| e > drawer.depth) {
                let text = format!("{name} comes out farther than it is deep");
                self.fault(text, &drawer.span, "`extends` is at most `depth`");
            }
            let b = world(drawer.face, size(carcass), u, v, [Length::ZERO, drawer.depth]);
            self.volumes.push((name, drawer.span.clone(), b));
        }
    }

    fn panels(&mut self) {
        let carcass = self.carcass;
        for panel in &carcass.panels {
            let name = format!("{} / {}", panel.face.name(), panel.name);
            if panel.face == Face::Top {
                self.fault(
                    format!("{name}: a panel hangs on a side, not on top"),
                    &panel.span,
                    "give it to a side",
                );
                continue;
            }
            self.panel(panel, &name);
            let u = [panel.at[0], panel.at[0] + panel.size[0]];
            let v = [panel.at[1], panel.at[1] + panel.size[1]];
            let b = world(panel.face, size(carcass), u, v, [-panel.room, Length::ZERO]);
            self.volumes.push((name, panel.span.clone(), b));
        }
    }

    fn panel(&mut self, panel: &Panel, name: &str) {
        let (wide, high) = (breadth(self.carcass, panel.face), self.carcass.height);
        let (right, upper) = (panel.at[0] + panel.size[0], panel.at[1] + panel.size[1]);
        if panel.at[0] < Length::ZERO || right > wide || upper > high {
            let text = format!("{name} is larger than its face or beside it");
            self.fault(text, &panel.span, "things may hang past it with `overhang`");
        }
        let lowest = panel.at[1] - panel.overhang.down;
        if lowest < OVER_FLOOR {
            let (low, least) = (self.show(lowest), self.show(OVER_FLOOR));
            let text = format!("{name} hangs {low} over the floor, at least {least} is needed");
            self.fault(text, &panel.span, "raise it or make `overhang` smaller");
        }
        if panel.room <= Length::ZERO {
            let text = format!("{name} leaves no room for things to stand out");
            self.fault(text, &panel.span, "`room` says how far things on it may stand out");
        }
    }

    fn collisions(&mut self) {
        let volumes = std::mem::take(&mut self.volumes);
        for (n, (name, span, b)) in volumes.iter().enumerate() {
            for (other, there, c) in &volumes[..n] {
                if b.overlaps(c) {
                    let deep = (0..3)
                        .map(|a| b.max[a].min(c.max[a]) - b.min[a].max(c.min[a]))
                        .min()
                        .unwrap_or_default();
                    let text = format!("{other} and {name} collide by {}", self.show(deep));
                    let finding = Finding::fault(text).at(span).at(there);
                    self.found.push(finding.help("move one of them or make it shallower"));
                }
            }
        }
        self.volumes = volumes;
    }

    fn names(&mut self) {
        let all: Vec<(String, Span)> =
            self.volumes.iter().map(|(n, s, _)| (n.to_lowercase(), s.clone())).collect();
        for (n, (name, span)) in all.iter().enumerate() {
            if let Some((_, first)) = all[..n].iter().find(|(other, _)| other == name) {
                let finding = Finding::fault(format!("two places are called {name}"));
                self.found.push(finding.at(span).at(first).help("names are unique on a face"));
            }
        }
    }

    fn bench(&mut self) {
        let carcass = self.carcass;
        for zone in &carcass.bench.zones {
            let out = zone.at[0] < Length::ZERO
                || zone.at[1] < Length::ZERO
                || zone.at[0] + zone.size[0] > carcass.width
                || zone.at[1] + zone.size[1] > carcass.depth;
            if out {
                self.fault(
                    "a zone of the bench sticks out of the top".to_owned(),
                    &zone.span,
                    "u and v count from the front-left corner",
                );
            }
        }
    }

    fn casters(&mut self) {
        let casters = &self.carcass.casters;
        let span = casters.span.clone();
        let (most, n) = (crate::physics::casters::MOST, casters.at.len());
        if n < 3 {
            self.fault(
                format!("{n} casters cannot carry a cart"),
                &span,
                "give at least three, not in one line",
            );
        } else if n > most {
            self.fault(
                format!("{n} casters are more than this program can judge"),
                &span,
                "give at most twelve",
            );
        } else if crate::physics::casters::Supports::new(&casters.at).is_none() {
            self.fault(
                "the casters stand in one line".to_owned(),
                &span,
                "give at least three, not in one line",
            );
        }
        for at in &casters.at {
            let out = at[0] < Length::ZERO
                || at[1] < Length::ZERO
                || at[0] > self.carcass.width
                || at[1] > self.carcass.depth;
            if out {
                let (x, y) = (self.show(at[0]), self.show(at[1]));
                self.fault(
                    format!("a caster at {x}, {y} is not under the cart"),
                    &span,
                    "x and y count from the front-left corner",
                );
            }
        }
    }
}
