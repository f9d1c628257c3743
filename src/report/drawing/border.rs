//! The border of a sheet and its title block.

use super::area::Area;
use super::lettering::{NOTE, SMALL, TITLE, shortened};
use super::scale::Scale;
use crate::report::sheet::{Anchor, Fill, Mark, Paper, Pen, Sheet, Size, Text, Tie, Weight};
use crate::tasks::outcome::{Plan, Status};

/// Free paper round the border: printers reach no farther.
const MARGIN: f64 = 10.0;
/// Height of the title block.
const BLOCK: f64 = 13.0;

/// A drawing without its border.
#[derive(Clone, Debug)]
pub struct Draft {
    /// A short name for files and links.
    pub id: String,
    /// What it shows.
    pub title: String,
    /// A few more words on it.
    pub note: String,
    /// Its paper.
    pub paper: Paper,
    /// Its scale, where it has one.
    pub scale: Option<Scale>,
    /// What is drawn.
    pub marks: Vec<Mark>,
}

/// The paper that is left for a drawing.
pub fn room(paper: Paper) -> Area {
    let whole = Area::new(MARGIN, MARGIN, paper.width() - MARGIN, paper.height() - MARGIN);
    Area { y1: whole.y1 - BLOCK, ..whole }.inset(2.5)
}

/// Puts border and title block round drawings and numbers them.
pub fn bordered(plan: &Plan, drafts: Vec<Draft>) -> Vec<Sheet> {
    let of = drafts.len();
    drafts.into_iter().enumerate().map(|(k, draft)| sheet(plan, draft, k + 1, of)).collect()
}

fn sheet(plan: &Plan, draft: Draft, number: usize, of: usize) -> Sheet {
    let mut marks = draft.marks;
    let (paper, scale, note) = (draft.paper, draft.scale, draft.note);
    marks.push(block(plan, &draft.title, &note, paper, scale, &format!("{number} of {of}")));
    let title = format!("{}: {}", plan.name, draft.title);
    Sheet { id: draft.id, title, paper, marks }
}

fn block(
    plan: &Plan,
    title: &str,
    note: &str,
    paper: Paper,
    scale: Option<Scale>,
    number: &str,
) -> Mark {
    let whole = Area::new(MARGIN, MARGIN, paper.width() - MARGIN, paper.height() - MARGIN);
    let mut marks = vec![Mark::rect(whole.corner(), whole.size(), Pen::Thick, Fill::None)];
    let top = whole.y1 - BLOCK;
    marks.push(Mark::line([whole.x0, top], [whole.x1, top], Pen::Thick));
    // Widths of the cells, from the right; the title takes what is left.
    let size = match paper.size {
        Size::A4 => "A4",
        Size::Letter => "Letter",
    };
    let cells = [
        (16.0, "sheet", number.to_owned()),
        (13.0, "paper", size.to_owned()),
        (18.0, "lengths in", plan.units.name().to_owned()),
    ];
    let mut right = whole.x1;
    for (wide, head, text) in cells {
        right -= wide;
        cell(&mut marks, Area::new(right, top, right + wide, whole.y1), head, &text);
    }
    if let Some(scale) = scale {
        right -= 48.0;
        let told = scale.name(plan.units);
        cell(&mut marks, Area::new(right, top, right + 48.0, whole.y1), "", "");
        let head = format!("scale {told}");
        marks.push(Mark::text([right + 1.5, top + 3.4], SMALL, head));
        marks.extend(scale.bar(plan.units, [right + 5.0, whole.y1 - 2.6], 34.0));
    }
    titles(&mut marks, plan, [title, note], Area::new(whole.x0, top, right, whole.y1));
    Mark::group(Tie::class("title-block"), marks)
}

fn cell(marks: &mut Vec<Mark>, area: Area, head: &str, text: &str) {
    marks.push(Mark::line([area.x0, area.y0], [area.x0, area.y1], Pen::Thin));
    let most = area.wide() - 3.0;
    if !head.is_empty() {
        marks.push(Mark::text([area.x0 + 1.5, area.y0 + 3.4], SMALL, head));
        let text = shortened(text, NOTE, Weight::Regular, most);
        marks.push(Mark::text([area.x0 + 1.5, area.y1 - 3.0], NOTE, text));
    }
}

/// What is drawn, of which cart, and whether it may be used.
fn titles(marks: &mut Vec<Mark>, plan: &Plan, [title, note]: [&str; 2], area: Area) {
    let most = area.wide() - 4.0;
    let title = shortened(title, TITLE, Weight::Bold, most);
    marks.push(Text::new([area.x0 + 2.0, area.y0 + 5.4], TITLE, title).bold().into());
    let told = match note {
        "" => plan.name.clone(),
        note => format!("{}, {note}", plan.name),
    };
    let warning = match plan.status {
        Status::Unsafe => "NOT TO BE USED: A RULE IS BROKEN",
        Status::Partial => "not everything has a place",
        Status::Complete => "",
    };
    let wide = crate::report::sheet::font::width_in(warning, NOTE, Weight::Bold);
    let room = if warning.is_empty() { most } else { most - wide - 3.0 };
    let told = shortened(&told, NOTE, Weight::Regular, room.max(10.0));
    marks.push(Mark::text([area.x0 + 2.0, area.y1 - 3.0], NOTE, told));
    if !warning.is_empty() {
        let at = [area.x1 - 2.0, area.y1 - 3.0];
        marks.push(Text::new(at, NOTE, warning).bold().anchored(Anchor::End).into());
    }
}
