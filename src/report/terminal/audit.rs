//! The layout as it stands: what it costs and could cost, then what was found, each with what would help.

use super::figure::{TIE, at_least, count, seconds};
use super::page::{Ink, Page};
use super::{Look, cart, stability};
use crate::tasks::audit::{Audit, AuditFinding, AuditKind};
use crate::units::Price;

/// Findings by cost that are shown; the JSON has all.
const MOST: usize = 15;

/// The whole text, ending with a line break.
pub fn audit(audit: &Audit, look: &Look) -> String {
    let mut page = Page::new(*look);
    let plan = &audit.plan;
    let broken = audit.findings.iter().filter(|f| f.kind == AuditKind::Rule).count();
    let entries = audit.findings.iter().filter(|f| f.kind == AuditKind::Entry).count();
    let (ink, told) = match (broken, entries) {
        (0, 0) if plan.left_out.is_empty() => {
            (Ink::Bold, "no rule is broken and everything is in its place".to_owned())
        }
        (0, n) => (
            Ink::Mind,
            format!(
                "no rule is broken; {} with the layout",
                count(n, "thing is wrong").replace("things is wrong", "things are wrong")
            ),
        ),
        (n, _) => (Ink::Alarm, format!("unsafe: {} broken", count(n, "rule"))),
    };
    page.heading(ink, &format!("{}: {told}", plan.name));
    page.paragraph(&top(audit));
    section(&mut page, audit, AuditKind::Rule, "Broken rules", Ink::Alarm);
    section(&mut page, audit, AuditKind::Entry, "Layout and inventory", Ink::Mind);
    section(&mut page, audit, AuditKind::Cost, "What costs most", Ink::Bold);
    walls(&mut page, audit);
    cart::casters(&mut page, plan);
    stability::tipping(&mut page, plan);
    cart::cautions(&mut page, &plan.cautions);
    cart::notes(&mut page, &plan.notes);
    page.finish()
}

/// What the layout costs, what the best possible costs, and how far the first remedies go.
fn top(audit: &Audit) -> String {
    let (now, best, after) = (audit.now, audit.best, audit.after);
    let elsewhere = |price: Price| match price {
        Price::ZERO => String::new(),
        price => format!(" ({}{TIE}s of it fetching from elsewhere)", seconds(price)),
    };
    let mut text = format!(
        "This layout costs {}{TIE}s a week{}. The best found for the same things costs {}{TIE}s{}.",
        seconds(now.total()),
        elsewhere(now.off_cart),
        seconds(best.total()),
        elsewhere(best.off_cart),
    );
    let (difference, recovered) = (now.total() - best.total(), now.total() - after.total());
    if audit.applied == 0 {
        text += " No single move or swap makes it cheaper.";
    } else if difference > Price::ZERO {
        let share = (recovered.as_s() / difference.as_s()).min(1.0);
        let which = match audit.applied {
            1 => "The first remedy recovers".to_owned(),
            n => format!("The first {n} remedies together recover"),
        };
        text += &format!(
            " {which} {}{TIE}s of the {}{TIE}s between them, {}.",
            seconds(recovered),
            seconds(difference),
            at_least(share)
        );
    }
    if best.broken < now.broken {
        let kept = if best.broken == 0 { "breaks no rule" } else { "breaks fewer rules" };
        text += &format!(" The best found {kept}.");
    }
    text
}

fn section(page: &mut Page, audit: &Audit, kind: AuditKind, head: &str, ink: Ink) {
    let all: Vec<&AuditFinding> = audit.findings.iter().filter(|f| f.kind == kind).collect();
    if all.is_empty() {
        return;
    }
    page.heading(ink, head);
    let most = if kind == AuditKind::Cost { MOST } else { all.len() };
    for found in all.iter().take(most) {
        finding(page, found, ink);
    }
    if all.len() > most {
        page.paragraph(&format!("And {} that cost less; --json has all.", all.len() - most));
    }
}

fn finding(page: &mut Page, found: &AuditFinding, ink: Ink) {
    let price = match found.price {
        Price::ZERO => String::new(),
        price => format!(" Costs {}{TIE}s a week.", seconds(price)),
    };
    let remedy = found.remedy.as_ref().map_or_else(String::new, |r| match r.gain {
        _ if r.changes.is_empty() => format!(" Remedy: {}.", r.text),
        gain if gain > Price::ZERO => {
            format!(" Remedy: {}; gains {}{TIE}s a week.", r.text, seconds(gain))
        }
        Price::ZERO => format!(" Remedy: {}.", r.text),
        gain => format!(" Remedy: {}; costs {}{TIE}s a week more.", r.text, seconds(-gain)),
    });
    let stop = if found.what.ends_with('?') { "" } else { "." };
    match found.what.split_once(": ") {
        Some((name, rest)) => page.named(ink, name, &format!("{rest}{stop}{price}{remedy}")),
        None => {
            let text = format!("{}{stop}{price}{remedy}", found.what);
            page.point(page.either("•", "*"), &text);
        }
    }
}

/// What is wanted daily and stands at a wall, station by station.
fn walls(page: &mut Page, audit: &Audit) {
    if audit.at_wall.is_empty() {
        return;
    }
    page.heading(Ink::Mind, "Wanted daily, but at a wall");
    for wall in &audit.at_wall {
        page.named(Ink::Mind, &wall.station, &format!("{}.", wall.items.join(", ")));
    }
}
