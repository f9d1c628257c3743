//! Holes: measured from two edges as a tape shows it, clear of edges and of one another, and never out behind.

use crate::ground::{Fitted, all};
use toolberth::tasks::fit_out::{APART, FROM_EDGE, Hole, Kind, Mount, MountKind};
use toolberth::units::Length;

fn apart(a: &Hole, b: &Hole) -> f64 {
    let [x, y] = [0, 1].map(|k| a.at[k].as_mm() - b.at[k].as_mm());
    (x * x + y * y).sqrt()
}

/// The distances from the two nearer edges, from the position alone.
fn distances(mount: &Mount, hole: &Hole) -> [Length; 2] {
    [0, 1].map(|k| hole.at[k].min(mount.size[k] - hole.at[k]))
}

#[test]
fn distances_are_those_from_the_nearer_edges_and_a_tape_shows_them() {
    let mut seen = 0;
    for cart in all() {
        let step = if cart.fit.units.imperial() { 1_587_500 } else { 1_000_000 };
        for mount in &cart.fit.mounts {
            for hole in &mount.holes {
                seen += 1;
                for (k, far) in distances(mount, hole).into_iter().enumerate() {
                    assert_eq!(hole.from[k].1, far, "{}: {}", cart.name, mount.name());
                    let lower = mount.edges[2 * k] == hole.from[k].0;
                    let near = if lower { hole.at[k] } else { mount.size[k] - hole.at[k] };
                    assert_eq!(
                        near,
                        far,
                        "{}: {} from the {}",
                        cart.name,
                        mount.name(),
                        hole.from[k].0
                    );
                    let whole = far.as_nm() % step == 0;
                    assert!(whole || mount.kind == MountKind::Edge && k == 1, "{far:?}");
                }
            }
        }
    }
    assert!(seen > 300, "only {seen} holes");
}

#[test]
fn holes_keep_clear_of_edges_and_of_one_another() {
    for cart in all() {
        for mount in &cart.fit.mounts {
            for (k, hole) in mount.holes.iter().enumerate() {
                assert_eq!(hole.number as usize, k + 1);
                let [x, y] = distances(mount, hole);
                match mount.kind {
                    MountKind::Edge => assert_eq!(y * 2, mount.size[1], "at half the thickness"),
                    _ => assert!(y >= FROM_EDGE, "{}: {} {hole:?}", cart.name, mount.name()),
                }
                assert!(x >= FROM_EDGE, "{}: {} {hole:?}", cart.name, mount.name());
                for other in &mount.holes[..k] {
                    let far = apart(hole, other);
                    assert!(far >= APART.as_mm() - 1e-9, "{}: {} {far}", cart.name, mount.name());
                }
            }
        }
    }
}

#[test]
fn what_hangs_hides_its_own_holes_or_has_them_close_by() {
    for cart in all() {
        for mount in &cart.fit.mounts {
            for hole in &mount.holes {
                let holder = &cart.fit.holders[hole.holder];
                let hooked = matches!(holder.kind, Kind::Hook | Kind::Rail | Kind::Bracket);
                let Some(p) = holder.placement.filter(|_| hooked) else { continue };
                let [l, r, low, high] =
                    mount.outlines.iter().find(|o| o.0 == p).expect("its outline is there").1;
                let near = Length::mm(60);
                let [x, y] = hole.at;
                assert!(x >= l - near && x <= r + near, "{}: {}", cart.name, holder.of);
                assert!(y >= low - near && y <= high + near, "{}: {}", cart.name, holder.of);
            }
        }
    }
}

#[test]
fn no_screw_of_a_hook_is_longer_than_the_boards_behind_it() {
    for cart in all() {
        // Where nothing is told, boards are 15 mm; a panel may have one more behind it.
        let board = cart.workspace.carcass.board.as_ref().map_or(15.0, |b| b.thickness.as_mm());
        for mount in &cart.fit.mounts {
            for hole in mount.holes.iter().filter(|h| !h.through) {
                let most = match mount.kind {
                    MountKind::Panel => board + panel(cart, mount),
                    MountKind::Edge => continue,
                    _ => board,
                };
                assert!(hole.deep.as_mm() < most, "{}: {} {hole:?}", cart.name, mount.name());
            }
        }
    }
}

/// How thick a panel is: its own thickness, else that of the carcass.
fn panel(cart: &Fitted, mount: &Mount) -> f64 {
    let carcass = &cart.workspace.carcass;
    let panel = carcass.panels.iter().find(|p| p.face == mount.face && p.name == mount.bay);
    let own = panel.and_then(|p| p.thickness).or(carcass.board.as_ref().map(|b| b.thickness));
    own.map_or(15.0, |t| t.as_mm())
}
