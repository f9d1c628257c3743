//! What belongs together: jobs with their tours, companions that are apart, families with their faces.

use super::figure::{capital, count, seconds};
use super::page::{Ink, Page};
use crate::tasks::outcome::{Family, Job, Missing, Plan};

/// Every job: whether the cart has all that it asks for, and the tour.
pub fn jobs(page: &mut Page, plan: &Plan) {
    if !plan.jobs.is_empty() {
        page.heading(Ink::Bold, "Jobs");
    }
    for job in &plan.jobs {
        let whole = match job.missing.as_slice() {
            [] => String::from("can be done wholly from the cart"),
            some => {
                let named: Vec<String> = some.iter().map(missing).collect();
                format!("cannot be done wholly from the cart: {} off it", named.join(", "))
            }
        };
        let text = format!("{whole}; {}; {} s a week", tour(job), seconds(job.price));
        page.named(Ink::Bold, &job.name, &text);
    }
}

fn missing(missing: &Missing) -> String {
    match missing {
        Missing { of: 1, item, .. } => item.clone(),
        Missing { item, copies, of } => format!("{item} ({copies} of {of})"),
    }
}

/// `front, then left: 4.1 s of walking from bench work`.
fn tour(job: &Job) -> String {
    let faces: Vec<&str> = job.tour.iter().map(|f| f.name()).collect();
    if faces.is_empty() {
        return String::from("nothing of it is there");
    }
    let walk = job.walk.as_s();
    format!("{}: {walk:.1} s of walking from {} and back", faces.join(", then "), job.station)
}

/// How many companions share a face, and which are apart.
pub fn companions(page: &mut Page, plan: &Plan) {
    let pairs: Vec<_> = plan.companions.iter().filter(|c| c.on_cart()).collect();
    if pairs.is_empty() {
        return;
    }
    page.heading(Ink::Bold, "Companions");
    let near = pairs.iter().filter(|c| c.share_a_face()).count();
    let all = count(pairs.len(), "pair");
    page.paragraph(&format!("{near} of {all} that are used together share a face."));
    for pair in pairs.iter().filter(|c| !c.share_a_face()) {
        let text = format!("{}; {} s a week", pair.told, seconds(pair.price));
        page.point(page.either("•", "*"), &capital(&text));
    }
}

/// Every family with its faces.
pub fn families(page: &mut Page, plan: &Plan) {
    if !plan.families.is_empty() {
        page.heading(Ink::Bold, "Families");
    }
    for family in &plan.families {
        page.named(Ink::Bold, &family.name, &faces(family));
    }
}

fn faces(family: &Family) -> String {
    let named = |(face, places): &(crate::domain::Face, usize)| {
        format!("{} {}", face.name(), count(*places, "place"))
    };
    let all: Vec<String> = family.faces.iter().map(named).collect();
    match family.faces.len() {
        1 => all.concat(),
        n => format!("{}; {n} faces, {} s a week", all.join(", "), seconds(family.price)),
    }
}
