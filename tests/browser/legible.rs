//! Every page at every width, by day and by night: nothing over anything, nothing cut, nothing faint, nothing asked for.

use crate::carts::{all, hall};
use crate::driver::Browser;
use crate::in_a_browser;
use serde_json::json;

const MEASURE: &str = include_str!("measure.js");

fn faults(browser: &Browser) -> Vec<String> {
    let told = browser.look(MEASURE);
    let all = told.as_array().expect("a list of faults");
    all.iter().map(|fault| fault.as_str().unwrap_or_default().to_owned()).collect()
}

#[test]
fn nothing_overlaps_is_cut_or_faint_and_nothing_is_asked_for() {
    in_a_browser(|browser| {
        let mut wrong: Vec<String> = Vec::new();
        for drawn in all() {
            for (wide, dark) in [(360, false), (820, true), (1280, false), (1280, true)] {
                browser.window(wide, 800, dark);
                browser.open(&drawn.page);
                let mut here = faults(browser);
                here.extend(browser.complaints());
                here.extend(browser.requests());
                wrong.extend(here.iter().map(|f| format!("{}, {wide} px: {f}", drawn.name)));
            }
        }
        wrong.dedup();
        assert!(wrong.is_empty(), "{} faults\n{}", wrong.len(), wrong.join("\n"));
    });
}

#[test]
fn the_measure_and_the_log_see_what_is_wrong() {
    in_a_browser(|browser| {
        browser.window(360, 800, false);
        let bad = "<p id=a style='white-space:nowrap;color:#999;background:#fff'>much too faint, and so long that it goes on and on beyond the edge</p>\
            <p id=a style='margin-top:-2.2em;color:#000'>over the other</p><button></button><a href='#nowhere'>x</a>\
            <img src='http://127.0.0.1:9/x.png'><script>nothing()</script>";
        browser.open(bad);
        let told = faults(browser).join("\n");
        for kind in ["faint", "beyond", "overlap", "nameless", "leads nowhere", "twice", "sideways"]
        {
            assert!(told.contains(kind), "{kind} is not seen: {told}");
        }
        assert!(browser.requests().iter().any(|url| url.contains("127.0.0.1:9")));
        assert!(browser.complaints().iter().any(|c| c.contains("nothing is not defined")));
    });
}

#[test]
fn what_is_inserted_does_not_run() {
    in_a_browser(|browser| {
        browser.window(1280, 800, false);
        let more = "<script>document.title = 'taken'</script><style>main { display: none }</style>";
        browser.open(&hall().page.replace("</main>", &format!("</main>{more}")));
        assert_ne!(browser.look("return document.title"), "taken");
        assert_eq!(
            browser.look("return getComputedStyle(document.querySelector('main')).display"),
            "block"
        );
        assert_eq!(browser.complaints().len(), 2, "both are refused");
    });
}

#[test]
fn without_its_script_the_page_still_tells_everything() {
    in_a_browser(|browser| {
        browser.window(1280, 800, false);
        let page = &hall().page;
        let (before, rest) = page.split_once("<script>").expect("it has a script");
        let (_, after) = rest.split_once("</script>").expect("it ends");
        browser.open(&format!("{before}{after}"));
        let visible = "return [...document.querySelectorAll('article')].filter(a => a.checkVisibility()).length";
        assert_eq!(browser.look(visible), json!(hall().plan.placements.len()));
        let search = "return document.querySelector('search').checkVisibility()";
        assert_eq!(browser.look(search), false, "a search that cannot find is not shown");
        assert_eq!(faults(browser), Vec::<String>::new());
    });
}

#[test]
fn what_can_be_used_is_named_as_a_screen_reader_hears_it() {
    in_a_browser(|browser| {
        browser.window(1280, 800, false);
        browser.open(&hall().page);
        let names = browser.names();
        assert!(names.len() > hall().plan.placements.len(), "{} named things", names.len());
        let nameless: Vec<_> = names.iter().filter(|(_, name)| name.trim().is_empty()).collect();
        assert!(nameless.is_empty(), "{nameless:?}");
        assert!(names.iter().any(|(role, name)| role == "searchbox" && name == "Find"));
        for sheet in &hall().sheets {
            assert!(
                names
                    .iter()
                    .any(|(role, name)| role == "region" && sheet.title.ends_with(name.as_str())),
                "{}",
                sheet.title
            );
        }
    });
}
