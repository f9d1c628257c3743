//! Growth room: the largest free box is the largest, what fits does fit, and nothing gets worse by it.

use super::ground::{demo, planned};
use crate::support::carts::{self, Size};
use toolberth::domain::{Bay, Depth, Entry, Face, Item, Layout, Pose, Workspace, typical};
use toolberth::finding::Span;
use toolberth::geometry::Box3;
use toolberth::report::{json, terminal};
use toolberth::score::Ledger;
use toolberth::site::{Board, SpaceKind};
use toolberth::tasks::room::{
    MOST_ALIKE, casters_left, largest, largest_free, room, surface_left, volume,
};
use toolberth::tasks::standing::standing;
use toolberth::units::{Length, Mass, Uses};

/// Every empty box whose sides are sides of something, by trying them all.
fn by_trying(free: &Box3, taken: &[Box3], rest: usize, greater: bool) -> i128 {
    let cuts = |axis: usize| {
        let mut all = vec![free.min[axis], free.max[axis]];
        all.extend(taken.iter().flat_map(|t| [t.min[axis], t.max[axis]]));
        all.retain(|c| free.min[axis] <= *c && *c <= free.max[axis]);
        all.sort_unstable();
        all.dedup();
        all
    };
    let [x, y, z] = [cuts(0), cuts(1), cuts(2)];
    let pairs = |c: &[Length]| {
        let mut all = Vec::new();
        for (k, &a) in c.iter().enumerate() {
            all.extend(c[k + 1..].iter().map(|&b| (a, b)));
        }
        all
    };
    let end = if greater { free.max[rest] } else { free.min[rest] };
    let mut best = 0;
    for &(x0, x1) in &pairs(&x) {
        for &(y0, y1) in &pairs(&y) {
            for &(z0, z1) in &pairs(&z) {
                let b = Box3::new([x0, y0, z0], [x1, y1, z1]);
                let touches = if greater { b.max[rest] == end } else { b.min[rest] == end };
                if touches && volume(&b) > best && !taken.iter().any(|t| t.overlaps(&b)) {
                    best = volume(&b);
                }
            }
        }
    }
    best
}

#[test]
fn the_largest_box_among_random_things_is_the_one_found_by_trying_all() {
    for seed in 0..300 {
        let mut dice = carts::Dice::new(seed);
        let mut mm = |low, high| Length::mm(dice.whole(low, high));
        let free = Box3::new([Length::ZERO; 3], [mm(5, 40), mm(5, 40), mm(5, 40)]);
        let count = seed as i64 % 6;
        let taken: Vec<Box3> = (0..count)
            .map(|_| {
                let min = [mm(-5, 35), mm(-5, 35), mm(-5, 35)];
                let size = [mm(1, 20), mm(1, 20), mm(1, 20)];
                Box3::new(min, [0, 1, 2].map(|a| min[a] + size[a]))
            })
            .collect();
        for rest in 0..3 {
            for greater in [false, true] {
                let found = largest(&free, &taken, rest, greater);
                let most = by_trying(&free, &taken, rest, greater);
                assert_eq!(found.map_or(0, |b| volume(&b)), most, "seed {seed}, axis {rest}");
                if let Some(b) = found {
                    assert!(free.contains(&b) && !taken.iter().any(|t| t.overlaps(&b)));
                }
            }
        }
    }
}

#[test]
fn the_largest_free_box_of_every_surface_is_free_and_none_is_larger() {
    let mut compared = 0;
    for seed in 0..60 {
        let workspace = carts::cart(seed, Size::Small);
        let stands = standing(&workspace, &planned(&workspace)).expect("the cart is sound");
        let board = Board::with(&stands.site, &stands.places);
        for s in 0..stands.site.surfaces.len() {
            let found = largest_free(&board, s);
            let surface = &stands.site.surfaces[s];
            let space = &stands.site.spaces[surface.space];
            let mut taken: Vec<Box3> = (0..stands.site.lots.len())
                .filter_map(|l| {
                    let mut b = board.place(l)?.space;
                    b.max[2] += board.over(l);
                    let its = board.space_of(l)?;
                    (its == surface.space || space.near.contains(&its)).then_some(b)
                })
                .collect();
            let boards: Vec<Box3> = space.boards.iter().map(|&b| *board.board(b)).collect();
            taken.extend(&boards);
            let most = by_trying(board.free(s), &taken, surface.rest.axis, surface.rest.greater);
            let volume = found.map_or(0, |b| volume(&b));
            // With boards across the way out it may have to be smaller.
            assert!(volume <= most, "seed {seed}, surface {s}");
            if boards.is_empty() || space.kind != SpaceKind::Bay {
                assert_eq!(volume, most, "seed {seed}, surface {s}");
                compared += 1;
            }
            if let Some(b) = found {
                let out = |&w: &toolberth::geometry::Way| {
                    !boards.iter().any(|board| b.swept_meets(w, board))
                };
                assert!(space.kind != SpaceKind::Bay || space.ways.iter().any(out));
                assert!(!taken.iter().any(|t| t.overlaps(&b)), "seed {seed}, surface {s}");
            }
        }
    }
    assert!(compared > 100, "{compared}");
}

#[test]
fn what_casters_still_take_is_kept_by_the_rules_and_a_little_more_is_not() {
    let mut bound = 0;
    for name in ["prop-shop", "village-hall", "first-flat"] {
        let (mut workspace, _) = demo(name);
        // Casters near their limit, so that they and not the question bound the answer.
        let layout = planned(&workspace);
        // With a rating that nothing keeps, what each thing taken away does is worked out too.
        workspace.carcass.casters.rating = Some(Mass::kg(1));
        let stands = standing(&workspace, &layout).expect("the cart is sound");
        let worst = Board::with(&stands.site, &stands.places).stand().worst;
        workspace.carcass.casters.rating = Some(Mass::from_kg(worst + 2.0));
        let stands = standing(&workspace, &layout).expect("the cart is sound");
        let board = Board::with(&stands.site, &stands.places);
        for s in 0..stands.site.surfaces.len() {
            let Some(at) = largest_free(&board, s) else { continue };
            let left = casters_left(&board, s, &at);
            let broken = |kg: f64| broken_with(&workspace, &layout, s, &at, kg);
            assert!(!broken(left.as_kg()), "{name}, surface {s}");
            if left < Mass::kg(100) {
                assert!(broken(left.as_kg() + 0.05), "{name}, surface {s}, {left:?}");
                bound += 1;
            }
        }
    }
    assert!(bound > 10, "{bound}");
}

/// Whether casters or tipping break with a point of so many kilograms in the middle of a box.
fn broken_with(workspace: &Workspace, layout: &Layout, s: usize, at: &Box3, kg: f64) -> bool {
    let mut item = typical(&workspace.items, &family(workspace)).expect("a family");
    item.name = "a weight".to_owned();
    item.weight = Mass::from_kg(kg);
    let mut wider = workspace.clone();
    wider.items.push(item);
    let mut stands = standing(&wider, layout).expect("the cart is sound");
    let lot = stands.site.lots.len() - 1;
    // A thing as large as nothing, in the middle.
    let middle = [0, 1, 2].map(|a| at.middle(a));
    let mut home = stands.site.lots[0].homes[0];
    home.surface = s as u32;
    stands.places[lot] = Some(toolberth::site::Place { home, space: Box3::new(middle, middle) });
    let stand = Board::with(&stands.site, &stands.places).stand();
    let rating = workspace.carcass.casters.rating.map_or(f64::INFINITY, Mass::as_kg);
    stand.worst > rating * (1.0 + 1e-9) || stand.tip[0] < stand.tip[1]
}

fn family(workspace: &Workspace) -> String {
    workspace.items.iter().find_map(|i| i.family.clone()).expect("a family")
}

#[test]
fn on_the_first_flat_each_wished_family_has_room_for_one_more_with_no_move() {
    let (workspace, _) = demo("first-flat");
    let told = room(&workspace, &planned(&workspace), &[]).expect("the cart is sound");
    assert!(!workspace.shop.reserve.families.is_empty());
    for (family, _, _) in &workspace.shop.reserve.families {
        let room = told.families.iter().find(|f| f.family == *family).expect(family);
        assert!(room.fit >= 1, "{family}");
        assert!(room.wanted.is_some());
    }
}

/// Things of a family as wishes.
fn wishes(workspace: &Workspace, count: usize) -> Vec<Item> {
    let one = typical(&workspace.items, &family(workspace)).expect("a family");
    let wish =
        |k: usize| Item { name: format!("wish {k}"), uses: one.uses * (k as i64), ..one.clone() };
    (1..=count).map(wish).collect()
}

#[test]
fn further_things_and_wishes_keep_every_rule_that_is_kept() {
    for (name, layout) in [("prop-shop", true), ("prop-shop", false), ("village-hall", false)] {
        let (workspace, written) = demo(name);
        let layout = if layout { written } else { planned(&workspace) };
        let wishes = wishes(&workspace, 4);
        let told = room(&workspace, &layout, &wishes).expect("the cart is sound");
        assert!(told.families.iter().all(|f| f.fit <= MOST_ALIKE));
        assert!(told.families.iter().any(|f| f.fit > 0), "{name}");
        assert_eq!(told.wishes.len(), 4);
        // In order of value, and what fits stands in nobody's place.
        assert!(told.wishes.windows(2).all(|w| w[0].value >= w[1].value));
        let spots: Vec<Box3> =
            told.wishes.iter().filter_map(|w| Some(w.to.as_ref()?.space)).collect();
        for (k, a) in spots.iter().enumerate() {
            assert!(!spots[k + 1..].iter().any(|b| a.overlaps(b)), "{name}");
        }
        assert!(told.wishes.iter().all(|w| w.to.is_some() != w.miss.is_some()));
        assert!(told.wishes.iter().all(|w| w.moved.len() <= 2));
        let look = terminal::Look { width: 80, colour: terminal::Colour::Plain, ascii: true };
        assert!(terminal::room(&told, &look).is_ascii());
        assert!(serde_json::from_str::<serde_json::Value>(&json::room(&told)).is_ok());
    }
}

#[test]
fn further_things_replayed_on_the_cart_break_nothing() {
    let (workspace, _) = demo("village-hall");
    let layout = planned(&workspace);
    let told = room(&workspace, &layout, &[]).expect("the cart is sound");
    for family in &told.families {
        let one = typical(&workspace.items, &family.family).expect("a family");
        let mut wider = workspace.clone();
        let mut fuller = layout.clone();
        for (k, (spot, _)) in family.spots.iter().enumerate() {
            let name = format!("another {k}");
            wider.items.push(Item { name: name.clone(), ..one.clone() });
            fuller.entries.push(Entry {
                item: name,
                copy: 1,
                copies: 1,
                face: Some(spot.face),
                bay: spot.bay.clone(),
                surface: Some(spot.surface.clone()),
                pose: Some(spot.pose),
                turned: Some(spot.turned),
                at: Some(spot.at),
                span: Span::none(),
            });
        }
        let stands = standing(&wider, &fuller).expect("the cart is sound");
        let ledger = Ledger::new(&Board::with(&stands.site, &stands.places));
        assert_eq!(ledger.score().broken, 0, "{}", family.family);
        assert_eq!(ledger.score().off_cart, 0, "{}", family.family);
    }
}

#[test]
fn a_wish_that_is_too_large_says_by_how_much_and_one_that_is_there_is_a_fault() {
    let (workspace, _) = demo("village-hall");
    let layout = planned(&workspace);
    let mut large = wishes(&workspace, 1);
    large[0].size.w = Length::mm(2000);
    large[0].poses = [Some(large[0].size), None, None];
    let told = room(&workspace, &layout, &large).expect("the cart is sound");
    let why = told.wishes[0].miss.as_deref().expect("it is too large");
    assert!(why.contains("needs 2000 mm"), "{why}");
    large[0].name = workspace.items[0].name.clone();
    assert_eq!(room(&workspace, &layout, &large).expect_err("it is there").len(), 1);
}

/// A cart with two bays side by side, 300 mm and 120 mm wide.
fn two_bays() -> Workspace {
    let mut carcass = carts::empty(500, 400, 900, 100);
    for (name, at, wide) in [("wide", 20, 300), ("narrow", 340, 120)] {
        carcass.bays.push(Bay {
            face: Face::Front,
            name: name.to_owned(),
            at: [Length::mm(at), Length::mm(600)],
            opening: [Length::mm(wide), Length::mm(200)],
            depth: Depth::Deep(Length::mm(300)),
            limit: None,
            shelves: Vec::new(),
            hang: Vec::new(),
            fixing: Default::default(),
            ends: Default::default(),
            span: Span::none(),
        });
    }
    Workspace { carcass, items: Vec::new(), shop: carts::plain_shop(), layout: None }
}

fn thing(name: &str, [w, d, h]: [i64; 3]) -> Item {
    let size = [w, d, h].map(Length::mm);
    let mut item = carts::plain(name, size, Mass::kg(1), Uses::per_week(3));
    item.turn = false;
    item.poses = [item.poses[0], None, None];
    item
}

fn at(item: &str, bay: &str, u: i64) -> Entry {
    Entry {
        item: item.to_owned(),
        copy: 1,
        copies: 1,
        face: Some(Face::Front),
        bay: bay.to_owned(),
        surface: Some("floor".to_owned()),
        pose: Some(Pose::Stand),
        turned: Some(false),
        at: Some([Length::mm(u), Length::ZERO]),
        span: Span::none(),
    }
}

#[test]
fn a_wish_asks_no_more_moves_than_it_needs() {
    let mut workspace = two_bays();
    workspace.items = vec![thing("post", [100, 300, 150]), thing("pole", [100, 300, 150])];
    let cases = [
        // Free beside the post; the post in the middle must step aside; two stand where one must go.
        (vec![at("post", "wide", 0)], 200, Some(0)),
        (vec![at("post", "wide", 100)], 200, Some(1)),
        (vec![at("post", "wide", 0), at("pole", "wide", 200)], 200, Some(1)),
        (vec![at("post", "wide", 50), at("pole", "narrow", 10)], 250, None),
    ];
    for (entries, wide, moves) in cases {
        let wish = thing("crate", [wide, 300, 150]);
        let told = room(&workspace, &Layout { entries, ..Layout::default() }, &[wish])
            .expect("the cart is sound");
        let wish = &told.wishes[0];
        assert_eq!(wish.to.as_ref().map(|_| wish.moved.len()), moves, "{wish:?}");
        assert_eq!(wish.miss.is_some(), moves.is_none());
    }
}

#[test]
fn the_free_box_beside_a_thing_is_measured_to_the_millimetre() {
    let mut workspace = two_bays();
    workspace.items = vec![thing("post", [100, 250, 150])];
    let layout = Layout { entries: vec![at("post", "wide", 0)], ..Layout::default() };
    let told = room(&workspace, &layout, &[]).expect("the cart is sound");
    let wide = told.bays.iter().find(|b| b.bay == "wide").expect("it has room");
    let [from, to] = [[120, 0, 600], [320, 300, 800]].map(|p| p.map(Length::mm));
    assert_eq!(wide.space, Box3::new(from, to));
}

#[test]
fn room_holds_on_carts_of_every_kind() {
    for seed in 0..15 {
        let workspace = carts::cart(seed, Size::Middle);
        for layout in [Layout::default(), planned(&workspace)] {
            let told = room(&workspace, &layout, &[]).expect("the cart is sound");
            assert!(told.bays.iter().all(|b| b.space.is_solid()));
            assert!(told.bays.iter().all(|b| b.mass() >= Mass::ZERO));
        }
    }
    let stands = demo("prop-shop");
    let s = standing(&stands.0, &stands.1).expect("the cart is sound");
    let board = Board::with(&s.site, &s.places);
    for k in 0..s.site.surfaces.len() {
        assert!(surface_left(&board, k).is_none_or(|m| m >= Mass::ZERO));
    }
}

#[test]
fn the_wish_list_of_the_prop_makers_is_read_and_answered() {
    let (workspace, layout) = demo("prop-shop");
    let list = std::path::Path::new("demo-data/prop-shop/wishes.yaml");
    let read = toolberth::files::load_wishes(list, &workspace);
    assert!(read.findings.iter().all(|f| !f.is_fault()), "{:?}", read.findings);
    let told = room(&workspace, &layout, &read.value.expect("a list")).expect("the cart is sound");
    let fits = |name: &str| told.wishes.iter().any(|w| w.named.item == name && w.to.is_some());
    assert!(fits("heat gun") && fits("silicone kit"));
    // No wall is high enough for the one, no bay large enough for the other.
    assert!(!fits("long clamp") && !fits("vacuum former"));
}
