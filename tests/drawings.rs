//! Drawings against the plan: read back with general readers of XML and PDF.

#[allow(dead_code, unused_imports)]
#[path = "support/carts/mod.rs"]
mod carts;
#[path = "support/planner.rs"]
mod planner;

use roxmltree::{Document, Node};
use std::path::Path;
use std::sync::OnceLock;
use toolberth::domain::{Face, Workspace};
use toolberth::files;
use toolberth::geometry::Box3;
use toolberth::report::drawing::drawings;
use toolberth::report::sheet::{Size, Text, pdf, svg};
use toolberth::tasks::outcome::{Placement, Plan};
use toolberth::units::{Length, Unit};

/// How far a line may be from where it belongs, in mm on the paper.
const NEAR: f64 = 0.1;
/// Most letters that XML and PDF may round away, in mm.
const ROUNDED: f64 = 0.002;

fn demo(name: &str) -> Workspace {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data").join(name);
    files::load(&folder).workspace.expect("the demo can be read")
}

fn long_names(mut workspace: Workspace) -> Workspace {
    for (k, item) in workspace.items.iter_mut().enumerate() {
        item.name =
            format!("the {k}th very long name of a thing with Überlänge & <marks> in \"it\"");
    }
    workspace.carcass.name =
        "a cart with a name that no title block was ever made wide enough for, \
        neither on A4 nor on any other size of paper"
            .into();
    workspace
}

/// Carts of all kinds, each planned once.
fn plans() -> &'static Vec<(String, Plan)> {
    static ALL: OnceLock<Vec<(String, Plan)>> = OnceLock::new();
    ALL.get_or_init(|| {
        let mut all: Vec<(String, Workspace)> = Vec::new();
        for name in ["village-hall", "first-flat", "prop-shop"] {
            all.push((name.into(), demo(name)));
        }
        all.push(("five things".into(), carts::packed(3, 5, 0.5)));
        all.push(("150 things".into(), carts::packed(4, 150, 0.6)));
        all.push(("long names".into(), long_names(carts::packed(5, 30, 0.6))));
        let mut inches = carts::packed(6, 40, 0.6);
        inches.carcass.units = Unit::In;
        all.push(("inches".into(), inches));
        let mut feet = carts::packed(7, 24, 0.6);
        feet.carcass.units = Unit::Ft;
        all.push(("feet".into(), feet));
        all.extend((0..6).map(|s| (format!("odd cart {s}"), carts::cart(s, carts::Size::Middle))));
        all.into_iter().map(|(name, w)| (name, planner::plan(&w, 1, 1))).collect()
    })
}

/// A box as its face sees it, from the viewer's left and from the floor (on top: from the front), in mm.
fn seen(plan: &Plan, face: Face, space: &Box3) -> [f64; 4] {
    let end = plan.ground.cart.max;
    let (x, y, z) = ([0, 1].map(|k| ends(space, 0)[k]), ends(space, 1), ends(space, 2));
    let back = |end: Length, [from, to]: [f64; 2]| [end.as_mm() - to, end.as_mm() - from];
    let (u, v) = match face {
        Face::Front => (x, z),
        Face::Back => (back(end[0], x), z),
        Face::Left => (back(end[1], y), z),
        Face::Right => (y, z),
        Face::Top => (x, y),
    };
    [u[0], u[1], v[0], v[1]]
}

fn ends(space: &Box3, axis: usize) -> [f64; 2] {
    [space.min[axis].as_mm(), space.max[axis].as_mm()]
}

fn number(node: Node, name: &str) -> f64 {
    node.attribute(name).and_then(|v| v.parse().ok()).unwrap_or_else(|| panic!("no {name}"))
}

/// The rectangles of items in the views of an SVG: placement, left, top, right, bottom, with origin and scale.
fn items(text: &str) -> Vec<(usize, [f64; 4], [f64; 2], f64)> {
    let document = Document::parse(text).expect("it is XML");
    let mut all = Vec::new();
    for view in document.descendants().filter(|n| n.attribute("data-scale").is_some()) {
        let origin: Vec<f64> = view
            .attribute("data-origin")
            .map(|o| o.split(' ').map(|v| v.parse().expect("a number")).collect())
            .expect("a view has an origin");
        for group in view.descendants().filter(|n| n.attribute("class") == Some("item")) {
            let rect = group.children().find(|n| n.has_tag_name("rect")).expect("a rectangle");
            let [x, y, w, h] = ["x", "y", "width", "height"].map(|name| number(rect, name));
            let placement = number(group, "data-placement") as usize;
            let at = [x, y, x + w, y + h];
            all.push((placement, at, [origin[0], origin[1]], number(view, "data-scale")));
        }
    }
    all
}

#[test]
fn every_thing_is_drawn_where_the_plan_has_it() {
    for (name, plan) in plans() {
        let mut drawn = vec![0; plan.placements.len()];
        for sheet in drawings(plan, Size::A4) {
            let Some(face) = Face::named(&sheet.id) else { continue };
            for (k, [x0, y0, x1, y1], origin, scale) in items(&svg(&sheet)) {
                let placed = &plan.placements[k];
                assert_eq!(placed.face, face, "{name}");
                let [u0, u1, v0, v1] = seen(plan, face, &placed.space);
                let right = [
                    origin[0] + u0 * scale,
                    origin[1] - v1 * scale,
                    origin[0] + u1 * scale,
                    origin[1] - v0 * scale,
                ];
                for (found, right) in [x0, y0, x1, y1].into_iter().zip(right) {
                    let item = &placed.item;
                    assert!((found - right).abs() < NEAR, "{name}: {item} at {found}, not {right}");
                }
                drawn[k] += 1;
            }
        }
        assert!(drawn.iter().all(|n| *n == 1), "{name}: {drawn:?}");
    }
}

#[test]
fn scales_are_of_the_series_and_the_paper_is_true() {
    for (name, plan) in plans() {
        for size in [Size::A4, Size::Letter] {
            for sheet in drawings(plan, size) {
                let text = svg(&sheet);
                let document = Document::parse(&text).expect("it is XML");
                let root = document.root_element();
                let (wide, high) = (sheet.paper.width(), sheet.paper.height());
                assert_eq!(root.attribute("width"), Some(format!("{wide}mm").as_str()));
                assert_eq!(root.attribute("height"), Some(format!("{high}mm").as_str()));
                for view in document.descendants().filter(|n| n.has_attribute("data-scale")) {
                    let over = 1.0 / number(view, "data-scale");
                    let series: &[f64] = match plan.units.imperial() {
                        true => &[1.0, 2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 48.0, 96.0, 192.0],
                        false => &[1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0],
                    };
                    let known = series.iter().any(|s| (s - over).abs() < 1e-6);
                    assert!(known, "{name}, {}: 1:{over}", sheet.id);
                    let told = format!("1:{over:.0}");
                    let said = sheet.texts().iter().any(|t| t.text.contains(&told));
                    assert!(said, "{name}, {}: the title block does not say {told}", sheet.id);
                }
            }
        }
    }
}

/// Left, top, right, bottom of what the letters may touch, a hair smaller.
fn extent(text: &Text) -> [f64; 4] {
    let [[x0, y0], [x1, y1]] = text.extent();
    [x0 + 0.02, y0 + 0.02, x1 - 0.02, y1 - 0.02]
}

#[test]
fn no_text_lies_on_another_or_leaves_its_border() {
    let mut wrong = Vec::new();
    for (name, plan) in plans() {
        for size in [Size::A4, Size::Letter] {
            for sheet in drawings(plan, size) {
                let texts = sheet.texts();
                let areas: Vec<[f64; 4]> = texts.iter().map(|t| extent(t)).collect();
                let (wide, high) = (sheet.paper.width(), sheet.paper.height());
                for (k, a) in areas.iter().enumerate() {
                    let said = &texts[k].text;
                    if a[0] < 10.0 || a[1] < 10.0 || a[2] > wide - 10.0 || a[3] > high - 10.0 {
                        wrong.push(format!("{name}, {}: {said:?} leaves the border", sheet.id));
                    }
                    for (other, b) in areas.iter().enumerate().skip(k + 1) {
                        if a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3] {
                            let over = &texts[other].text;
                            wrong.push(format!("{name}, {}: {said:?} on {over:?}", sheet.id));
                        }
                    }
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} faults\n{}",
        wrong.len(),
        wrong[..wrong.len().min(40)].join("\n")
    );
}

fn words(placed: &Placement) -> Vec<&str> {
    placed.item.split_ascii_whitespace().collect()
}

#[test]
fn every_thing_is_named_on_its_face() {
    for (name, plan) in plans() {
        let sheets = drawings(plan, Size::A4);
        for placed in &plan.placements {
            let sheet =
                sheets.iter().find(|s| s.id == placed.face.name()).expect("its face is drawn");
            let said: String =
                sheet.texts().iter().map(|t| t.text.as_str()).collect::<Vec<&str>>().join(" ");
            // Very long words are broken; their letters follow each other all the same.
            let said = said.replace(' ', "");
            for word in words(placed) {
                assert!(said.contains(word), "{name}: {} is not named on its face", placed.item);
            }
        }
    }
}

/// Every rectangle of a page, in mm from its upper left corner, and its size in mm.
fn rectangles(document: &lopdf::Document, page: lopdf::ObjectId) -> (Vec<[f64; 4]>, [f64; 2]) {
    let bytes = document.get_page_content(page);
    let content = lopdf::content::Content::decode(&bytes).expect("the contents can be read");
    let value = |o: &lopdf::Object| f64::from(o.as_float().expect("a number"));
    let mut unit = 1.0;
    let mut all = Vec::new();
    for step in &content.operations {
        match step.operator.as_str() {
            "cm" => unit = value(&step.operands[0]) * 25.4 / 72.0,
            "re" => {
                let four: Vec<f64> = step.operands.iter().map(|o| value(o) * unit).collect();
                all.push([four[0], four[1], four[2], four[3]]);
            }
            _ => {}
        }
    }
    let page = document.get_dictionary(page).expect("a page");
    let media = page.get(b"MediaBox").and_then(lopdf::Object::as_array).expect("a size");
    let side = |k: usize| value(&media[k]) * 25.4 / 72.0;
    (all, [side(2), side(3)])
}

#[test]
fn the_pdf_is_drawn_like_the_svg() {
    for (name, plan) in plans().iter().take(4) {
        let sheets = drawings(plan, Size::Letter);
        let bytes = pdf(&sheets, &plan.name);
        let document = lopdf::Document::load_mem(&bytes).expect("it is a PDF");
        let pages = document.get_pages();
        assert_eq!(pages.len(), sheets.len());
        for (sheet, (count, page)) in sheets.iter().zip(pages) {
            let (found, size) = rectangles(&document, page);
            let (wide, high) = (sheet.paper.width(), sheet.paper.height());
            assert!(
                (size[0] - wide).abs() < ROUNDED * 10.0 && (size[1] - high).abs() < ROUNDED * 10.0
            );
            let text = svg(sheet);
            let drawn = Document::parse(&text).expect("it is XML");
            // The first rectangle of an SVG is its white paper.
            let right = drawn.descendants().filter(|n| n.has_tag_name("rect")).skip(1);
            let right: Vec<[f64; 4]> =
                right.map(|n| ["x", "y", "width", "height"].map(|side| number(n, side))).collect();
            assert_eq!(found.len(), right.len(), "{name}, page {count}");
            for (a, b) in found.iter().zip(&right) {
                let same = a.iter().zip(b).all(|(a, b)| (a - b).abs() < ROUNDED);
                assert!(same, "{name}, {}: {a:?} is not {b:?}", sheet.id);
            }
            let said = document.extract_text(&[count]).expect("its text can be read");
            let title = sheet.title.rsplit(": ").next().unwrap_or_default();
            let first = title.split(' ').next().unwrap_or_default();
            assert!(said.contains(first), "{name}, {}: no {first} in {said}", sheet.id);
        }
    }
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let (_, plan) = &plans()[0];
    let draw = || {
        let sheets = drawings(plan, Size::A4);
        let pictures: Vec<String> = sheets.iter().map(svg).collect();
        (pictures, pdf(&sheets, &plan.name))
    };
    assert_eq!(draw(), draw());
}

#[test]
fn ways_on_foot_are_as_long_as_they_say() {
    let mut walked = 0;
    for (name, plan) in plans() {
        for way in plan.ground.stations.iter().flat_map(|s| &s.ways) {
            let points: Vec<[f64; 2]> = way.route.iter().map(|p| p.map(Length::as_mm)).collect();
            let far = |w: &[[f64; 2]]| (w[1][0] - w[0][0]).hypot(w[1][1] - w[0][1]);
            let long: f64 = points.windows(2).map(far).sum();
            let told = way.length.as_mm();
            // Chords of 15 degrees are a thousandth or two shorter than their arcs.
            assert!(long <= told + 0.01 && long >= told * 0.996, "{name}: {long} for {told}");
            walked += usize::from(told > 0.0);
        }
    }
    assert!(walked > 20, "{walked} ways");
}

#[cfg(feature = "print")]
#[test]
fn a_png_has_the_size_of_its_paper() {
    use toolberth::report::sheet::{PRINT, png};
    let (_, plan) = &plans()[1];
    let sheets = drawings(plan, Size::Letter);
    let bytes = png(&sheets[0], PRINT).expect("it is drawn");
    assert_eq!(bytes[..8], *b"\x89PNG\r\n\x1a\n");
    let word = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().expect("four bytes"));
    assert_eq!([word(16), word(20)], [3300, 2550]);
    assert_eq!(png(&sheets[0], PRINT), Some(bytes), "the same bytes twice");
}
