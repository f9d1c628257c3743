//! Tipping and sliding, case by case, and what would help.

use super::cart::section;
use super::extremes::amount;
use super::figure::{length, mass};
use super::page::Page;
use super::table::Set;
use crate::tasks::outcome::{CasterTrial, Plan, Trial};

/// What one caster may come to carry in cases that no rule asks for.
pub fn casters(page: &mut Page, plan: &Plan) {
    let told = |trial: &CasterTrial| {
        let at = trial.at.map(|a| length(a, plan.units)).join(", ");
        let over = trial.rating.is_some_and(|rating| trial.load > rating);
        let over = if over { ", over its rating" } else { "" };
        format!("{}: {} at {at}{over}", trial.case, mass(trial.load, plan.units))
    };
    let all: Vec<String> = plan.stability.casters.iter().map(told).collect();
    if !all.is_empty() {
        page.paragraph(&format!("The most on one caster otherwise: {}.", all.join("; ")));
    }
}

/// How far the cart is from going over or sliding.
pub fn tipping(page: &mut Page, plan: &Plan) {
    let heads = [
        ("case", Set::Words),
        ("goes", Set::Short),
        ("at", Set::Figure),
        ("at least", Set::Figure),
        ("asked by", Set::Short),
    ];
    let cells = |page: &Page, trial: &Trial| {
        let side =
            trial.side.map_or_else(|| String::from("sliding"), |side| format!("over its {side}"));
        let [at, least] = [trial.value, trial.limit].map(|a| amount(page, a, plan.units));
        let by = if trial.rule { "rule" } else { "us" };
        vec![trial.case.clone(), side, at, least, by.to_owned()]
    };
    section(page, "Tipping and sliding", &heads, &plan.stability.trials, cells);
    if let Some(trial) = &plan.stability.loading {
        let [at, least] = [trial.value, trial.limit].map(|a| amount(page, a, plan.units));
        let side = trial.side.unwrap_or_default();
        page.paragraph(&format!("Least while it is loaded in the order below: {at} over its {side}, at least {least}, with {}.", trial.case));
    }
    raise(page, plan);
    if !plan.stability.assumed.is_empty() {
        page.paragraph(&format!(
            "Assumed where no file says it: {}.",
            plan.stability.assumed.join("; ")
        ));
    }
}

fn raise(page: &mut Page, plan: &Plan) {
    let stability = &plan.stability;
    if let Some(trial) = &stability.empty {
        let [at, least] = [trial.value, trial.limit].map(|a| amount(page, a, plan.units));
        page.paragraph(&format!("The empty cart is the trouble by itself: {}, it goes over at {at} of {least}. No placing mends that.", trial.case));
    }
    let Some(least) = stability.least() else { return };
    let case = &least.case;
    if stability.raise.is_empty() {
        page.paragraph(&format!("The least margin is {:.2} times what is asked for ({case}); nothing that was tried raises it.", least.margin));
        return;
    }
    page.paragraph(&format!("The least margin is {:.2} times what is asked for ({case}). What raises it, each tried alone:", least.margin));
    for raise in &stability.raise {
        page.point(page.either("•", "*"), &format!("{}: {:.2} times", raise.text, raise.margin[1]));
    }
}
