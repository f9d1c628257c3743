//! The borrower's card on one page.

use crate::report::drawing::area::Area;
use crate::report::drawing::border::{Draft, room};
use crate::report::drawing::lettering::{LEADING, NOTE, SMALL, TITLE, broken};
use crate::report::figure::capital;
use crate::report::sheet::{Mark, Paper, Pen, Size, Text, Weight};
use crate::tasks::fit_out::{Card, CardFace, CardLine, FitOut};

/// Between two columns.
const GUTTER: f64 = 5.0;
/// Letters that the card is tried in, the largest first, each with how many columns.
const SETS: [(f64, usize); 4] = [(3.2, 2), (2.8, 2), (NOTE, 3), (SMALL, 3)];

/// How a line of the card is set.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Kind {
    /// A face.
    Face,
    /// A bay.
    Bay,
    /// Something to mind.
    Mind,
    /// A thing, hanging beside its slot.
    Thing,
}

/// A piece of the card before it is broken into lines.
struct Piece {
    kind: Kind,
    text: String,
    /// What stands at the left of it.
    slot: String,
}

/// The card of a cart.
pub fn draft(fit: &FitOut, size: Size) -> Draft {
    let paper = Paper::upright(size);
    let area = room(paper);
    let all = pieces(&fit.card, true);
    let set = SETS.iter().find_map(|&(size, columns)| set(&all, &area, size, columns));
    // Where nothing else helps, what is inside things is left to the lists; then the last things.
    let marks = set.unwrap_or_else(|| bare(&fit.card, &area));
    Draft {
        id: "fit-out-card".to_owned(),
        title: "Borrower's card".to_owned(),
        note: "bring it back clean, to the slot on its label".to_owned(),
        paper,
        scale: None,
        marks,
    }
}

fn bare(card: &Card, area: &Area) -> Vec<Mark> {
    let mut all = pieces(card, false);
    let (size, columns) = SETS[SETS.len() - 1];
    let mut left = 0;
    loop {
        if let Some(marks) = set(&all, area, size, columns) {
            return marks;
        }
        // The note of what is left out takes the place of the last piece.
        all.truncate(all.len().saturating_sub(if left == 0 { 1 } else { 2 }));
        left += 1;
        let text = format!("{left} more in the list of the plan; what is inside things too");
        all.push(Piece { kind: Kind::Mind, text, slot: String::new() });
        if all.len() <= 1 {
            return Vec::new();
        }
    }
}

fn pieces(card: &Card, inside: bool) -> Vec<Piece> {
    let mut all = Vec::new();
    let mut push = |kind: Kind, slot: &str, text: String| {
        all.push(Piece { kind, text, slot: slot.to_owned() });
    };
    for urgent in &card.urgent {
        push(Kind::Mind, "", format!("In need: {urgent}."));
    }
    for never in &card.never {
        push(Kind::Mind, "", never.clone());
    }
    for care in &card.care {
        push(Kind::Mind, "", care.clone());
    }
    for face in &card.faces {
        push(Kind::Face, "", face_name(face));
        let mut bay = "";
        for line in &face.lines {
            if line.bay != bay {
                push(Kind::Bay, "", capital(&line.bay));
                bay = &line.bay;
            }
            push(Kind::Thing, &line.slot, thing(line, inside));
        }
    }
    all
}

fn face_name(face: &CardFace) -> String {
    match face.theme.as_str() {
        "" => capital(face.face.name()),
        theme => format!("{}: {theme}", capital(face.face.name())),
    }
}

fn thing(line: &CardLine, inside: bool) -> String {
    let mut text = line.name.clone();
    if inside && !line.holds.is_empty() {
        text += &format!(" ({})", line.holds.join(", "));
    }
    if !line.first.is_empty() {
        text += &format!(" – first move {}", line.first.join(", "));
    }
    text
}

/// All pieces in columns of letters of that size; nothing where they do not all find room.
fn set(pieces: &[Piece], area: &Area, size: f64, columns: usize) -> Option<Vec<Mark>> {
    let wide = (area.wide() - GUTTER * (columns as f64 - 1.0)) / columns as f64;
    let (mut column, mut y) = (0, area.y0);
    let mut marks = Vec::new();
    for (k, piece) in pieces.iter().enumerate() {
        let indent = if piece.kind == Kind::Thing { size * 3.0 } else { 0.0 };
        let (letters, weight) = look(piece.kind, size);
        let text = broken(&piece.text, letters, weight, wide - indent);
        let above = if piece.kind == Kind::Face && y > area.y0 { size } else { 0.0 };
        let high = text.len() as f64 * letters * LEADING + after(piece.kind, size);
        // A face or bay stays with what follows it.
        let with = match (piece.kind, pieces.get(k + 1)) {
            (Kind::Face | Kind::Bay, Some(_)) => 3.0 * size * LEADING,
            _ => 0.0,
        };
        if y + above + high + with > area.y1 {
            column += 1;
            y = area.y0;
        } else {
            y += above;
        }
        if column >= columns || y + high > area.y1 {
            return None;
        }
        let x = area.x0 + column as f64 * (wide + GUTTER);
        if !piece.slot.is_empty() {
            let at = [x, y + letters * LEADING];
            marks.push(Text::new(at, letters, piece.slot.clone()).bold().into());
        }
        for line in text {
            y += letters * LEADING;
            marks.push(Mark::from(Text { weight, ..Text::new([x + indent, y], letters, line) }));
        }
        if piece.kind == Kind::Face {
            marks.push(Mark::line([x, y + 0.9], [x + wide, y + 0.9], Pen::Thin));
        }
        y += after(piece.kind, size);
    }
    Some(marks)
}

fn look(kind: Kind, size: f64) -> (f64, Weight) {
    match kind {
        Kind::Face => (size.max(NOTE) * 1.2, Weight::Bold),
        Kind::Bay | Kind::Mind => (size, Weight::Bold),
        Kind::Thing => (size.min(TITLE), Weight::Regular),
    }
}

/// What is left free under a piece.
fn after(kind: Kind, size: f64) -> f64 {
    match kind {
        Kind::Face => 0.6 * size,
        Kind::Mind => 0.3 * size,
        Kind::Bay | Kind::Thing => 0.15 * size,
    }
}
