//! Where the work is.

use super::decode::{Field, fold};
use super::findings::Findings;
use super::keys;
use crate::domain::{Face, Station};
use crate::finding::Span;
use crate::units::Share;

/// What is taken where the file names none.
pub(super) fn station_at_front() -> Station {
    Station {
        name: "work".into(),
        share: Share::ALL,
        work: Face::Front,
        walls: Vec::new(),
        span: Span::none(),
    }
}

/// The stations, their shares adding up to one.
pub(super) fn stations(field: Field, out: &mut Findings) -> Vec<Station> {
    let fields = field.list(out);
    let mut all: Vec<Station> =
        fields.iter().enumerate().filter_map(|(k, one)| station(one, k + 1, out)).collect();
    let sum: i64 = all.iter().map(|s| s.share.as_ppm()).sum();
    if all.is_empty() {
        return vec![station_at_front()];
    }
    if sum == 0 {
        out.say(
            field
                .fault("the shares of the stations add up to nothing")
                .expected("shares that add up to 100%"),
        );
        return all;
    }
    if (sum - Share::ALL.as_ppm()).abs() > 20_000 {
        let percent = sum as f64 / 10_000.0;
        let warning = field.warning(format!("the shares of the stations add up to {percent} %"));
        out.say(warning.help("they are taken in this proportion"));
    }
    let parts = in_proportion(&all.iter().map(|s| s.share.as_ppm()).collect::<Vec<_>>());
    all.iter_mut().zip(parts).for_each(|(s, part)| s.share = Share::ppm(part));
    all
}

/// The parts scaled to add up to exactly a million: what rounding leaves goes to the largest remainders.
fn in_proportion(parts: &[i64]) -> Vec<i64> {
    let sum: i64 = parts.iter().sum();
    let all = Share::ALL.as_ppm();
    let mut scaled: Vec<i64> = parts.iter().map(|p| p * all / sum).collect();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|k| std::cmp::Reverse(parts[*k] * all % sum));
    let missing = (all - scaled.iter().sum::<i64>()) as usize;
    order.into_iter().take(missing).for_each(|k| scaled[k] += 1);
    scaled
}

fn station(field: &Field, number: usize, out: &mut Findings) -> Option<Station> {
    let table = field.table(&keys::STATION, out)?;
    let name = table.get("name", out).and_then(|f| f.text(out));
    let walls = table.get("walls", out);
    Some(Station {
        name: name.map_or_else(|| format!("station {number}"), |t| t.text),
        share: table.get("share", out).and_then(|f| f.share(out)).unwrap_or(Share::ALL),
        work: table.get("work", out).and_then(|f| f.choice(&sides(), out)).unwrap_or(Face::Front),
        walls: walls.map_or_else(Vec::new, |f| faces(f, out)),
        span: table.span.clone(),
    })
}

/// The faces that can turn to a wall or to the work.
fn sides() -> [(&'static str, Face); 4] {
    [Face::Front, Face::Back, Face::Left, Face::Right].map(|face| (face.name(), face))
}

fn faces(field: Field, out: &mut Findings) -> Vec<Face> {
    let mut all = Vec::new();
    for text in field.texts(out) {
        match sides().iter().find(|(name, _)| *name == fold(&text.text)) {
            Some((_, face)) => all.push(*face),
            None => out.say(field.unknown(
                "face to stand at a wall",
                &text,
                sides().iter().map(|(name, _)| *name),
            )),
        }
    }
    all
}
