//! Five steps of seconds a week, by which pictures shade what is dear: each step is half of the one above it.

use crate::tasks::outcome::Plan;
use crate::units::Price;

/// How many steps there are.
pub const STEPS: u8 = 5;

/// The steps of one plan, set by the dearest thing on the cart.
#[derive(Clone, Copy, Debug)]
pub struct Shade {
    dearest: Price,
}

impl Shade {
    /// For the placements of a plan.
    pub fn of(plan: &Plan) -> Shade {
        let dearest = plan.placements.iter().map(|p| p.per_week).max();
        Shade { dearest: dearest.unwrap_or(Price::ZERO) }
    }
    /// The step of a price, from 0 (at most a sixteenth of the dearest) to 4 (more than half of it).
    pub fn step(&self, price: Price) -> u8 {
        let above = |step: &u8| price.as_us() << *step > self.dearest.as_us();
        (1..STEPS).filter(above).count() as u8
    }
    /// The most that a thing of a step costs.
    pub fn most(&self, step: u8) -> Price {
        Price::us(self.dearest.as_us() >> (STEPS - 1 - step.min(STEPS - 1)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_step_is_half_of_the_one_above() {
        let shade = Shade { dearest: Price::from_s(16.0) };
        let steps = [0.0, 1.0, 1.1, 2.0, 2.1, 4.0, 4.1, 8.0, 8.1, 16.0];
        let found: Vec<u8> = steps.iter().map(|s| shade.step(Price::from_s(*s))).collect();
        assert_eq!(found, [0, 0, 1, 1, 2, 2, 3, 3, 4, 4]);
        assert_eq!(shade.most(4), Price::from_s(16.0));
        assert_eq!(shade.most(0), Price::from_s(1.0));
        assert!((0..STEPS).all(|s| shade.step(shade.most(s)) == s));
    }

    #[test]
    fn where_nothing_costs_anything_nothing_is_dear() {
        assert_eq!(Shade { dearest: Price::ZERO }.step(Price::ZERO), 0);
    }
}
