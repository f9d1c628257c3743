//! The whole report of one small cart, kept as a snapshot: a change of any word or line of it is seen.
//!
//! After a wanted change, look at the difference and run `INSTA_UPDATE=always cargo test --test report`.

use std::fs;
use toolberth::files::load;
use toolberth::report::terminal::{self, Colour, Look};
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::plan::plan;

const CARCASS: &str = "
name: stool cart
size: {width: 500, depth: 400, height: 800}
mass: 14 kg
casters: {height: 100, rating: 25 kg, trail: 20, locks: 4, at: [[40, 40], [460, 40], [40, 360], [460, 360]]}
faces:
  front:
    bays:
      - {name: upper, at: [15, 450], opening: [470, 335], depth: 200, limit: 12 kg, shelves: [{height: 160, depth: 120, limit: 4 kg}]}
    drawers:
      - {name: small things, at: [15, 330], opening: [470, 90], depth: 350, limit: 8 kg, mass: 2 kg}
  back:
    bays:
      - {name: low, at: [15, 115], opening: [470, 200], depth: 380, limit: 20 kg}
";

const INVENTORY: &str = "
items:
  - {name: claw hammer, size: [130, 35, 320], weight: 0.7 kg, use: daily}
  - {name: bit tin, size: [120, 80, 40], weight: 0.5 kg, use: 4 per week}
  - {name: wood glue, size: [70, 70, 180], weight: 0.6 kg, use: weekly, hazards: [liquid]}
  - {name: drill, size: [240, 80, 220], weight: 1.8 kg, use: twice a week, hazards: [battery]}
  - {name: paint tin, size: [110, 110, 120], weight: 1.2 kg, use: monthly, count: 2, stack: 2, hazards: [flammable, liquid]}
  - {name: plank, size: [1200, 60, 20], weight: 1 kg, use: monthly}
";

#[test]
fn the_report_of_a_small_cart_reads_as_it_did() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("carcass.yaml"), CARCASS).expect("a file");
    fs::write(folder.path().join("inventory.yaml"), INVENTORY).expect("a file");
    let workspace = load(folder.path()).workspace.expect("it reads well");
    let settings = Settings { effort: Effort::Quick, ..Settings::default() };
    let plan = plan(&workspace, &settings, &Watch::default()).expect("it is sound");
    let look = Look { width: 80, colour: Colour::Plain, ascii: false };
    insta::assert_snapshot!(terminal::plan(&plan, &look));
}
