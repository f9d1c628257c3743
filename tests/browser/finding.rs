//! Searching, clicking and the keyboard.

use crate::carts::hall;
use crate::driver::Browser;
use crate::in_a_browser;
use fantoccini::key::Key;
use serde_json::json;

fn hall_opened(browser: &Browser) {
    browser.window(1280, 800, false);
    browser.open(&hall().page);
}

/// A thing of the hall that holds something, and what it holds.
fn holder() -> (usize, &'static str) {
    let placements = &hall().plan.placements;
    let at =
        placements.iter().position(|p| !p.holds.is_empty()).expect("something holds something");
    (at, &placements[at].holds[0])
}

fn asked_for(browser: &Browser, text: &str) {
    browser.look("document.querySelector('#query').focus()");
    browser.press(text.chars());
    browser.until("document.querySelector('#found').textContent");
}

#[test]
fn a_thing_is_found_by_name_and_by_what_is_in_it() {
    in_a_browser(|browser| {
        let (index, held) = holder();
        for word in [held, hall().plan.placements[index].item.as_str()] {
            hall_opened(browser);
            asked_for(browser, &word.to_uppercase());
            let to = format!("#item-{index}");
            browser.until(&format!("document.querySelector(\"#hits a[href='{to}']\")"));
            browser.until(&format!("document.querySelector(\".sheet a.hit[href='{to}']\")"));
            browser.until("/^[1-9][0-9]* things? found of/.test(document.querySelector('#found').textContent)");
            let dim = "return getComputedStyle(document.querySelector('.sheet a[data-placement]:not(.hit)')).opacity < 1";
            assert_eq!(browser.look(dim), true, "the others stand back");
        }
        asked_for(browser, "zzz");
        browser.until("document.querySelector('#found').textContent.startsWith('0 things')");
        assert_eq!(browser.look("return document.querySelector('#hits').checkVisibility()"), false);
    });
}

#[test]
fn a_family_is_filtered() {
    in_a_browser(|browser| {
        hall_opened(browser);
        let of = |name: &str| {
            hall().plan.placements.iter().filter(|p| p.family.as_deref() == Some(name)).count()
        };
        let family =
            hall().plan.placements.iter().find_map(|p| p.family.clone()).expect("a family");
        browser.look(&format!(
            "const f = document.querySelector('#family'); f.value = '{family}'; f.dispatchEvent(new Event('change', {{ bubbles: true }}))"
        ));
        assert_eq!(
            browser.look("return document.querySelectorAll('#hits li').length"),
            json!(of(&family))
        );
    });
}

/// A point of a drawing where a thing is seen, in the middle of the window, and the address of its story.
const SEEN: &str = "
    for (const link of document.querySelectorAll('.sheet a[data-placement]')) {
        link.scrollIntoView({ block: 'center' });
        const r = link.getBoundingClientRect();
        const [x, y] = [(r.left + r.right) / 2, (r.top + r.bottom) / 2];
        const top = document.elementFromPoint(x, y);
        const over = top && top.closest('[data-placement]');
        if (over && over.dataset.placement === link.dataset.placement) return [x, y, link.getAttribute('href')];
    }";

#[test]
fn a_click_opens_the_story_and_escape_closes_it() {
    in_a_browser(|browser| {
        hall_opened(browser);
        let shown = "return [...document.querySelectorAll('article')].filter(a => a.checkVisibility()).length";
        assert_eq!(browser.look(shown), json!(0));
        let seen = browser.look(SEEN);
        let to = seen[2].as_str().expect("a thing can be seen");
        browser.click([0, 1].map(|k| seen[k].as_f64().expect("a point")));
        browser.until(&format!("document.querySelector('{to}').contains(document.activeElement)"));
        assert_eq!(browser.look(shown), json!(1));
        let index: usize = to.trim_start_matches("#item-").parse().expect("a number");
        let text = browser.look(&format!("return document.querySelector('{to}').textContent"));
        let told = &hall().plan.placements[index].terms[0].told;
        assert!(
            text.as_str().is_some_and(|t| t.contains(told.as_str())),
            "{told} is not in {text}"
        );
        browser.press([char::from(Key::Escape)]);
        browser.until(&format!("!document.querySelector('{to}').checkVisibility()"));
        browser.until(&format!("document.activeElement.getAttribute('href') === '{to}'"));
    });
}

#[test]
fn the_keyboard_alone_leads_from_search_to_story_and_through_a_face() {
    in_a_browser(|browser| {
        hall_opened(browser);
        browser.press(['/']);
        browser.until("document.activeElement.id === 'query'");
        let name = &hall().plan.placements[0].item;
        browser.press(name.chars());
        browser.until("!document.querySelector('#hits').hidden");
        browser.press([char::from(Key::Down)]);
        browser.until("document.activeElement.closest('#hits')");
        let to = browser.look("return document.activeElement.getAttribute('href')");
        browser.press([char::from(Key::Enter)]);
        browser.until(&format!("location.hash === {to}"));
        browser.until("document.querySelector('article:target h3') === document.activeElement");
        browser.press([char::from(Key::Escape)]);
        browser.until("!document.querySelector('article:target')");

        // One stop of Tab in each drawing; the arrows lead on within it.
        let stops = "return [...document.querySelectorAll('.sheet')].map(s => s.querySelectorAll(\"a[data-placement][tabindex='0']\").length)";
        let stops = browser.look(stops);
        let stops = stops.as_array().expect("a list");
        assert!(!stops.is_empty() && stops.iter().all(|n| n.as_u64() <= Some(1)), "{stops:?}");
        browser.look("document.querySelector('.sheet a[data-placement]').focus()");
        let before = browser.look("return document.activeElement.getAttribute('href')");
        for key in [Key::End, Key::Home] {
            browser.press([char::from(key)]);
        }
        let mut visited = vec![before];
        for key in [Key::Right, Key::Down, Key::Left, Key::Up] {
            browser.press([char::from(key)]);
            let here = browser.look("return document.activeElement.getAttribute('href')");
            if !visited.contains(&here) {
                visited.push(here);
            }
        }
        assert!(visited.len() > 1, "the arrows lead nowhere");
        let ring =
            "return getComputedStyle(document.activeElement.querySelector('rect')).strokeWidth";
        let plain = "return getComputedStyle([...document.querySelectorAll('.sheet a[data-placement]')].find(a => a !== document.activeElement).querySelector('rect')).strokeWidth";
        assert_ne!(browser.look(ring), browser.look(plain), "the focus is seen");
    });
}

#[test]
fn a_box_too_narrow_for_a_sheet_moves_it_within_its_frame_by_keyboard() {
    in_a_browser(|browser| {
        browser.window(360, 740, false);
        browser.open(&hall().page);
        let pane = "document.querySelector('.pane')";
        assert_eq!(browser.look(&format!("return {pane}.scrollWidth > {pane}.clientWidth")), true);
        browser.look(&format!("{pane}.focus()"));
        browser.press([char::from(Key::Right), char::from(Key::Right)]);
        browser.until(&format!("{pane}.scrollLeft > 0"));
    });
}
