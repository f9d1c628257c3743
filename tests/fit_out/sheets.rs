//! Labels never overflow, the card is one page, and nothing on any sheet runs off its paper.

use crate::ground::{DEMOS, Fitted, all};
use toolberth::report::fitting::{Stock, label_sheets, sheets};
use toolberth::report::sheet::{Mark, Sheet, Size, Text};

/// The texts of each group of a class, with the group's name.
fn groups<'s>(marks: &'s [Mark], class: &str, found: &mut Vec<(&'s str, Vec<&'s Text>)>) {
    for mark in marks {
        let Mark::Group { tie, marks } = mark else { continue };
        if tie.class == class {
            let mut texts = Vec::new();
            collect(marks, &mut texts);
            found.push((tie.name.as_deref().unwrap_or(""), texts));
        } else {
            groups(marks, class, found);
        }
    }
}

fn collect<'s>(marks: &'s [Mark], texts: &mut Vec<&'s Text>) {
    for mark in marks {
        match mark {
            Mark::Text(text) => texts.push(text),
            Mark::Group { marks, .. } => collect(marks, texts),
            _ => {}
        }
    }
}

fn stocks() -> Vec<Stock> {
    let plain = [[48.0, 25.0], [60.0, 36.0], [95.0, 55.0], [30.0, 12.0], [20.0, 60.0]];
    let mut all: Vec<Stock> = plain.into_iter().map(|s| Stock::plain(Size::A4, s)).collect();
    all.push(Stock { grid: [3, 8], size: [63.5, 33.9], margin: [7.2, 12.9], pitch: [66.0, 33.9] });
    all
}

#[test]
fn no_text_runs_out_of_its_label_nor_into_another() {
    for cart in all() {
        for stock in stocks() {
            assert_eq!(stock.misfit(Size::A4), None);
            let (mut k, per) = (0, stock.grid[0] * stock.grid[1]);
            for sheet in label_sheets(&cart.fit, Size::A4, &stock) {
                let mut labels = Vec::new();
                groups(&sheet.marks, "label", &mut labels);
                for (name, texts) in labels {
                    let place = k % per;
                    let x = stock.margin[0] + stock.pitch[0] * (place % stock.grid[0]) as f64;
                    let y = stock.margin[1] + stock.pitch[1] * (place / stock.grid[0]) as f64;
                    for text in &texts {
                        let [[x0, y0], [x1, y1]] = text.extent();
                        let inside = x0 >= x - 0.01
                            && x1 <= x + stock.size[0] + 0.01
                            && y0 >= y - 0.01
                            && y1 <= y + stock.size[1] + 0.01;
                        assert!(inside, "{name}: `{}` on {:?}", text.text, stock.size);
                    }
                    apart(name, &texts);
                    k += 1;
                }
            }
            assert_eq!(k, cart.fit.labels.len(), "a label for each place");
        }
    }
}

fn apart(name: &str, texts: &[&Text]) {
    for (k, a) in texts.iter().enumerate() {
        for b in &texts[..k] {
            let ([a0, a1], [b0, b1]) = (letters(a), letters(b));
            let over = (0..2).all(|k| a0[k] < b1[k] - 0.05 && b0[k] < a1[k] - 0.05);
            assert!(!over, "{name}: `{}` over `{}`", a.text, b.text);
        }
    }
}

/// What the letters of a text take without accents and tails: those of two lines may come near.
fn letters(text: &Text) -> [[f64; 2]; 2] {
    let [[x0, y0], [x1, y1]] = text.extent();
    [[x0, y0 + 0.2 * text.size], [x1, y1 - 0.2 * text.size]]
}

fn drawn(cart: &Fitted, size: Size) -> Vec<Sheet> {
    sheets(&cart.fit, size, &Stock::plain(size, [60.0, 36.0]))
}

#[test]
fn the_card_is_one_page_that_names_everything() {
    for cart in DEMOS.iter() {
        for size in [Size::A4, Size::Letter] {
            let all = drawn(cart, size);
            let cards: Vec<&Sheet> = all.iter().filter(|s| s.id.contains("card")).collect();
            assert_eq!(cards.len(), 1);
            let said: Vec<&str> = cards[0].texts().iter().map(|t| t.text.as_str()).collect();
            let said = said.join(" ");
            for p in &cart.fit.plan.placements {
                assert!(said.contains(&p.item), "{}: {}", cart.name, p.item);
                for held in &p.holds {
                    assert!(said.contains(held.as_str()), "{}: {held}", cart.name);
                }
            }
            assert!(!said.contains("more in the list"));
        }
    }
}

#[test]
fn a_card_that_is_too_full_says_what_it_leaves_out() {
    let cart = DEMOS.iter().find(|c| c.name == "prop-shop").expect("it is there");
    let mut fit = cart.fit.clone();
    let lines = fit.card.faces[0].lines.clone();
    for _ in 0..9 {
        fit.card.faces[0].lines.extend(lines.clone());
    }
    let all = sheets(&fit, Size::A4, &Stock::plain(Size::A4, [60.0, 36.0]));
    let card = all.iter().find(|s| s.id.contains("card")).expect("there is a card");
    assert!(card.texts().iter().any(|t| t.text.contains("more in the list")));
    on_paper(card);
}

fn on_paper(sheet: &Sheet) {
    for text in sheet.texts() {
        let [[x0, y0], [x1, y1]] = text.extent();
        let inside = x0 >= 0.0
            && y0 >= 0.0
            && x1 <= sheet.paper.width() + 0.01
            && y1 <= sheet.paper.height() + 0.01;
        assert!(inside, "{}: `{}` runs off the paper", sheet.id, text.text);
    }
}

#[test]
fn nothing_runs_off_the_paper() {
    for cart in all() {
        for size in [Size::A4, Size::Letter] {
            drawn(cart, size).iter().for_each(on_paper);
        }
    }
}

#[test]
fn a_stock_that_does_not_fit_is_told() {
    let stock = Stock { grid: [4, 8], ..stocks()[5] };
    assert!(stock.misfit(Size::A4).is_some_and(|m| m.contains("4 labels across")));
    let stock = Stock { pitch: [60.0, 33.9], ..stocks()[5] };
    assert!(stock.misfit(Size::A4).is_some_and(|m| m.contains("overlap")));
}

#[test]
fn each_bay_stands_once_on_the_card() {
    for cart in all() {
        for face in &cart.fit.card.faces {
            let mut bays: Vec<&str> = face.lines.iter().map(|l| l.bay.as_str()).collect();
            bays.dedup();
            let many = bays.len();
            bays.sort_unstable();
            bays.dedup();
            assert_eq!(bays.len(), many, "{}: {}", cart.name, face.face.name());
        }
    }
}

#[test]
fn where_a_template_page_begins_is_never_cut_short() {
    for cart in DEMOS.iter() {
        for size in [Size::A4, Size::Letter] {
            for sheet in drawn(cart, size).iter().filter(|s| s.id.contains("template")) {
                let begins = |t: &&Text| t.text.starts_with("Begins") || t.text.starts_with("Has");
                let texts = sheet.texts();
                let told: Vec<&&Text> = texts.iter().filter(|t| begins(t)).collect();
                assert!(told.len() == 1 && told[0].text.ends_with('.'), "{}: {told:?}", sheet.id);
            }
        }
    }
}
