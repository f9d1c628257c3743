//! The same carts priced whole for every move, by a general library's simulated annealing.

use argmin::core::{CostFunction, Error, Executor};
use argmin::solver::simulatedannealing::{Anneal, SimulatedAnnealing};
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use std::sync::Mutex;
use toolberth::score::Ledger;
use toolberth::site::{Board, Place, Site, Touched};
use toolberth::solve::{Mover, Zoning, energy};
use toolberth::units::Price;

type Places = Vec<Option<Place>>;

/// A cart as the library sees it: a list of places, a cost of the whole, a random neighbour.
struct Cart<'s> {
    site: &'s Site,
    zoning: &'s Zoning,
    draws: Mutex<(Mover, Xoshiro256PlusPlus)>,
}

impl CostFunction for Cart<'_> {
    type Param = Places;
    type Output = f64;

    fn cost(&self, places: &Places) -> Result<f64, Error> {
        let score = Ledger::new(&Board::with(self.site, places)).score();
        Ok(Price::us(energy(score)).as_s())
    }
}

impl Anneal for Cart<'_> {
    type Param = Places;
    type Output = Places;
    type Float = f64;

    fn anneal(&self, places: &Places, _: f64) -> Result<Places, Error> {
        let mut draws = self.draws.lock().expect("one thread");
        let (mover, rng) = &mut *draws;
        let mut board = Board::with(self.site, places);
        let mut touched = Touched::default();
        while !mover.step(&mut board, self.zoning, rng, &mut touched) {}
        Ok(board.places().to_vec())
    }
}

/// Anneals for so many moves, from a layout.
pub fn anneal(site: &Site, zoning: &Zoning, from: &Board, moves: u64) {
    let draws = (Mover::new(from, zoning), Xoshiro256PlusPlus::seed_from_u64(1));
    let cart = Cart { site, zoning, draws: Mutex::new(draws) };
    let solver = SimulatedAnnealing::new(10.0).expect("a temperature over nought");
    let begin = from.places().to_vec();
    let run = Executor::new(cart, solver).configure(|state| state.param(begin).max_iters(moves));
    run.run().expect("the cost is always known");
}
