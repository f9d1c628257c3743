//! Face by face: the drawing, then slot by slot what lives there.

use super::canvas::{Letter, Run};
use super::elevation::{Drawing, Scale, draw};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::{Colour, NARROW, figure, sentence};
use crate::domain::Face;
use crate::report::shade::{STEPS, Shade};
use crate::tasks::outcome::{Elevation, Placement, Plan, SurfaceLoad};

/// The widest that a drawing is made, so that wide terminals do not tear it apart.
const WIDEST_DRAWING: usize = 110;

/// All faces that have anything to them.
pub fn all(page: &mut Page, plan: &Plan) {
    let scale = Scale::fitting(plan, page.look.width.min(WIDEST_DRAWING));
    if page.look.width >= NARROW && !plan.placements.is_empty() {
        legend(page, plan);
    }
    for face in Face::ALL {
        let drawn = plan.elevations.iter().find(|elevation| elevation.face == face);
        let living: Vec<&Placement> = plan.placements.iter().filter(|p| p.face == face).collect();
        let is_bare = drawn.is_none_or(|elevation| elevation.parts.is_empty());
        if is_bare && living.is_empty() {
            continue;
        }
        // A picture of an empty face would only take room.
        let drawn = drawn.filter(|_| !living.is_empty());
        let theme = drawn.map_or("", |elevation| elevation.theme.as_str());
        heading(page, face, theme);
        if let Some(elevation) = drawn.filter(|_| page.look.width >= NARROW) {
            drawing(page, plan, elevation, scale);
        }
        slots(page, plan, &living);
    }
}

fn heading(page: &mut Page, face: Face, theme: &str) {
    let dot = if theme.is_empty() { "" } else { page.dot() };
    page.heading(Ink::Bold, &format!("{}{dot}{theme}", figure::capital(face.name())));
}

fn drawing(page: &mut Page, plan: &Plan, elevation: &Elevation, scale: Scale) {
    let shade = Shade::of(plan);
    let Drawing { rows, behind, small } = draw(plan, elevation, scale, page.look.ascii);
    for row in rows {
        let line: String = row.iter().map(|run| inked(page, plan, shade, run)).collect();
        page.line(&line);
    }
    for (what, slots) in [("behind", behind), ("too small to number", small)] {
        if !slots.is_empty() {
            let numbers: Vec<String> = slots.iter().map(u32::to_string).collect();
            page.paragraph(&format!("{what}: {}", numbers.join(", ")));
        }
    }
    page.gap();
}

/// A run of a drawing in its ink, and in the shade of the placement whose it is.
fn inked(page: &Page, plan: &Plan, shade: Shade, run: &Run) -> String {
    let placed = run.owner.and_then(|owner| plan.placements.get(owner));
    if let Some(placed) = placed.filter(|_| page.look.colour == Colour::Full) {
        let is_number = run.letter == Some(Letter::Slot);
        return tinted(&run.text, shade.step(placed.per_week), is_number);
    }
    match (run.letter, placed) {
        (Some(Letter::Slot), Some(placed)) if shade.step(placed.per_week) == STEPS - 1 => {
            page.ink(Ink::Dearest, &run.text)
        }
        (Some(Letter::Slot), _) => page.ink(Ink::Number, &run.text),
        (Some(Letter::Part), _) => page.ink(Ink::Faint, &run.text),
        (Some(Letter::Item) | None, _) => run.text.clone(),
    }
}

/// Paper and ink of the steps, from the cheapest to the dearest: every pair can be read on light and dark screens.
const TINTS: [([u8; 3], [u8; 3]); STEPS as usize] = [
    ([238, 242, 236], [32, 40, 44]),
    ([206, 224, 216], [32, 40, 44]),
    ([150, 195, 184], [24, 32, 36]),
    ([66, 128, 128], [255, 255, 255]),
    ([22, 70, 82], [255, 255, 255]),
];

fn tinted(text: &str, step: u8, is_bold: bool) -> String {
    let ([r, g, b], [x, y, z]) = TINTS[usize::from(step.min(STEPS - 1))];
    let bold = if is_bold { "1;" } else { "" };
    format!("\x1b[{bold}38;2;{x};{y};{z};48;2;{r};{g};{b}m{text}\x1b[0m")
}

/// What the shades mean, on a page that has them.
fn legend(page: &mut Page, plan: &Plan) {
    let shade = Shade::of(plan);
    let most = |step| figure::seconds(shade.most(step));
    page.gap();
    match page.look.colour {
        Colour::Plain => {}
        Colour::Sixteen => {
            let text = format!("Numbers in reverse: over {} s a week.", most(STEPS - 2));
            page.paragraph(&text);
        }
        Colour::Full => {
            let steps = (0..STEPS).map(|step| tinted(&format!(" {} ", most(step)), step, false));
            page.line(&format!("Shaded by s a week, up to: {}", steps.collect::<String>()));
        }
    }
}

fn slots(page: &mut Page, plan: &Plan, living: &[&Placement]) {
    if living.is_empty() {
        page.paragraph("Nothing lives here.");
    } else if page.look.width < NARROW {
        list(page, plan, living);
    } else {
        page.table(&table(page, plan, living));
    }
}

fn table(page: &Page, plan: &Plan, living: &[&Placement]) -> Table {
    let mut table = Table::new(&[
        ("#", Set::Figure),
        ("item", Set::Words),
        ("pose", Set::Words),
        ("grip", Set::Figure),
        ("reach", Set::Short),
        ("moved first", Set::Words),
        ("s a week", Set::Figure),
    ]);
    for (number, placed) in living.iter().enumerate() {
        if number == 0 || !shares_surface(living[number - 1], placed) {
            table.group(surface(page, plan, placed));
        }
        table.row(vec![
            placed.slot.to_string(),
            item(placed),
            pose(placed),
            figure::length(placed.grip_height, plan.units),
            placed.zone.name().to_owned(),
            moved(plan, placed),
            figure::seconds(placed.per_week),
        ]);
    }
    table
}

/// The same for a page that is too narrow for columns.
fn list(page: &mut Page, plan: &Plan, living: &[&Placement]) {
    for (number, placed) in living.iter().enumerate() {
        if number == 0 || !shares_surface(living[number - 1], placed) {
            let text = surface(page, plan, placed);
            page.title(Ink::Bold, &text);
        }
        let first = match moved(plan, placed) {
            none if none.is_empty() => none,
            some => format!(", move first: {some}"),
        };
        let text = format!(
            "{}, {}, grip {}, {}{first}, {} s a week",
            item(placed),
            pose(placed),
            figure::length(placed.grip_height, plan.units),
            placed.zone.name(),
            figure::seconds(placed.per_week),
        );
        page.point(&format!("{:>3}", placed.slot), &text);
    }
}

fn shares_surface(one: &Placement, other: &Placement) -> bool {
    (one.face, &one.bay, &one.surface) == (other.face, &other.bay, &other.surface)
}

/// A surface with what it carries.
fn surface(page: &Page, plan: &Plan, placed: &Placement) -> String {
    let is_it = |s: &&SurfaceLoad| {
        (s.face, &s.bay, &s.surface) == (placed.face, &placed.bay, &placed.surface)
    };
    let place = place(page, &placed.bay, &placed.surface);
    let mass = |mass| figure::mass(mass, plan.units);
    match plan.surfaces.iter().find(is_it) {
        Some(SurfaceLoad { load, limit: Some(limit), .. }) => {
            format!("{place}, carries {} of {}", mass(*load), mass(*limit))
        }
        Some(SurfaceLoad { load, .. }) => format!("{place}, carries {}", mass(*load)),
        None => place,
    }
}

/// A bay and its surface with the dot that the page has.
pub fn place(page: &Page, bay: &str, surface: &str) -> String {
    sentence::place(bay, surface, page.dot())
}

/// An item with its copies, and the way it is taken where that is not its face's.
fn item(placed: &Placement) -> String {
    let name = sentence::name(placed);
    if placed.way == placed.face {
        name
    } else {
        format!("{name} (taken at the {})", placed.way.name())
    }
}

fn pose(placed: &Placement) -> String {
    let turned = if placed.turned { ", turned" } else { "" };
    format!("{}{turned}", placed.pose.name())
}

fn moved(plan: &Plan, placed: &Placement) -> String {
    let names: Vec<String> =
        placed.moved_first.iter().map(|copy| sentence::called(plan, copy)).collect();
    names.join(", ")
}
