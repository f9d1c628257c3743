//! On paper: every sheet true to size on a page of its own, and no page more.

use crate::carts::{Drawn, all};
use crate::driver::Browser;
use crate::in_a_browser;

/// Points to a millimetre.
const POINTS: f64 = 72.0 / 25.4;

/// Width and height of every page of a PDF, in mm and in order.
fn pages(pdf: &[u8]) -> Vec<[f64; 2]> {
    let text = String::from_utf8_lossy(pdf);
    let page = |part: &str| -> Option<[f64; 2]> {
        let ends = part.strip_prefix('s').is_none();
        let (_, rest) = part.split_once("/MediaBox [").filter(|_| ends)?;
        let (numbers, _) = rest.split_once(']')?;
        let sides: Vec<f64> = numbers.split_whitespace().filter_map(|n| n.parse().ok()).collect();
        Some([sides.get(2)? / POINTS, sides.get(3)? / POINTS])
    };
    text.split("/Type /Page").skip(1).filter_map(page).collect()
}

fn printed(browser: &Browser, drawings: bool, lists: bool) -> Vec<[f64; 2]> {
    for (id, on) in [("print-drawings", drawings), ("print-lists", lists), ("print-stories", false)]
    {
        browser.look(&format!("document.getElementById('{id}').checked = {on}"));
    }
    pages(&browser.print())
}

fn is_sheet(drawn: &Drawn, [wide, high]: [f64; 2], index: usize) -> bool {
    let paper = drawn.sheets[index].paper;
    (wide - paper.width()).abs() < 0.5 && (high - paper.height()).abs() < 0.5
}

#[test]
fn every_sheet_of_every_cart_is_true_to_size_on_one_page() {
    in_a_browser(|browser| {
        browser.window(1280, 800, true);
        // The driver gives a print ten seconds, which the largest cart may need more of on a slow machine.
        for drawn in all().iter().filter(|drawn| drawn.name != "150 things") {
            browser.open(&drawn.page);
            let whole = printed(browser, true, true);
            let first = whole.iter().position(|[wide, high]| wide > high).expect("a sheet");
            assert!(first > 0, "{}: the title and the verdict come first", drawn.name);
            let (before, rest) = whole.split_at(first);
            let (sheets, after) = rest.split_at(drawn.sheets.len());
            assert!(sheets.iter().enumerate().all(|(k, p)| is_sheet(drawn, *p, k)), "{sheets:?}");
            let text = [before, after].concat();
            assert!(!after.is_empty() && text.iter().all(|[wide, high]| wide < high), "{text:?}");
        }
    });
}

#[test]
fn drawings_and_lists_are_printed_as_one_ticks_them() {
    in_a_browser(|browser| {
        let drawn = &all()[0];
        browser.window(1280, 800, false);
        browser.open(&drawn.page);
        let drawings = printed(browser, true, false);
        assert_eq!(drawings.len(), drawn.sheets.len(), "{drawings:?}");
        assert!(drawings.iter().enumerate().all(|(k, p)| is_sheet(drawn, *p, k)), "{drawings:?}");
        let lists = printed(browser, false, true);
        assert!(!lists.is_empty() && lists.iter().all(|[wide, high]| wide < high), "{lists:?}");
        // The title and the verdict have pages of their own before the drawings.
        let whole = printed(browser, true, true);
        let text = whole.len() - drawings.len();
        assert!((lists.len()..=lists.len() + 1).contains(&text), "{text} pages of text");
    });
}

#[test]
fn a_drawing_is_drawn_at_its_size_and_by_day_on_paper() {
    in_a_browser(|browser| {
        let drawn = &all()[0];
        browser.window(1280, 800, true);
        browser.open(&drawn.page);
        for (k, sheet) in drawn.sheets.iter().enumerate() {
            let wide = format!(
                "return document.querySelectorAll('.sheet')[{k}].getBoundingClientRect().width"
            );
            let wide = browser.look(&wide).as_f64().expect("a width") * 25.4 / 96.0;
            assert!((wide - sheet.paper.width()).abs() < 0.1, "{wide} mm");
        }
        browser.on_paper(true);
        let ground = "return getComputedStyle(document.documentElement).backgroundColor";
        assert_eq!(browser.look(ground), "rgb(255, 255, 255)");
        browser.on_paper(false);
        assert_ne!(browser.look(ground), "rgb(255, 255, 255)");
    });
}
