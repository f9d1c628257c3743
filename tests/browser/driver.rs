//! The browser of the system, driven from here.

use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use fantoccini::wd::{PrintConfigurationBuilder, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use http::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Map, Value, json};
use std::net::TcpListener;
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use tempfile::TempDir;
use tokio::runtime::{Builder, Runtime};
use url::{ParseError, Url};

/// Set where a browser must be there, and its absence is a failure.
const MUST: &str = "TOOLBERTH_BROWSER";
/// What suits a machine without a screen, and keeps the browser from going anywhere by itself.
const FLAGS: [&str; 10] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-scrollbars",
];
/// How often it is asked whether something has come about, and how long between.
const TRIES: u32 = 200;
/// How often printing is tried.
const PRINTS: u32 = 5;
const PAUSE: Duration = Duration::from_millis(50);

/// A browser with one window; it ends when this goes.
pub struct Browser {
    client: Option<Client>,
    runtime: Runtime,
    driver: Child,
    folder: TempDir,
}

/// A command of this browser that the standard does not have.
#[derive(Debug)]
struct Own {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Own {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }
    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}

impl Browser {
    /// The system's browser. Where there is none, that is said, and it is a failure only where one must be there.
    pub fn start() -> Option<Browser> {
        let port = free_port();
        let mut driver = Command::new("chromedriver");
        driver.arg(format!("--port={port}")).stdin(Stdio::null());
        let Ok(driver) = driver.stdout(Stdio::null()).stderr(Stdio::null()).spawn() else {
            let absent = "no chromedriver on this machine: the page is not looked at in a browser";
            assert!(std::env::var_os(MUST).is_none(), "{absent}");
            println!("skipped: {absent}");
            return None;
        };
        let folder = tempfile::tempdir().expect("a folder can be made");
        let runtime = Builder::new_current_thread().enable_all().build().expect("a runtime");
        let mut browser = Browser { client: None, runtime, driver, folder };
        browser.connect(port);
        Some(browser)
    }

    fn connect(&mut self, port: u16) {
        let profile = format!("--user-data-dir={}", self.folder.path().join("profile").display());
        let flags: Vec<String> = FLAGS.iter().map(|f| (*f).to_owned()).chain([profile]).collect();
        let wanted: Map<String, Value> = [
            ("goog:chromeOptions".to_owned(), json!({ "args": flags })),
            ("goog:loggingPrefs".to_owned(), json!({ "browser": "ALL", "performance": "ALL" })),
        ]
        .into_iter()
        .collect();
        let mut builder = ClientBuilder::new(HttpConnector::new());
        builder.capabilities(wanted);
        let at = format!("http://127.0.0.1:{port}");
        let mut last = String::new();
        for _ in 0..TRIES {
            match self.runtime.block_on(builder.connect(&at)) {
                Ok(client) => {
                    self.client = Some(client);
                    return;
                }
                Err(error) => last = error.to_string(),
            }
            std::thread::sleep(PAUSE);
        }
        panic!("the browser does not start: {last}");
    }

    fn client(&self) -> Client {
        self.client.clone().expect("it is connected as long as it lives")
    }

    fn own(&self, path: &'static str, body: Value) -> Value {
        let told = self.runtime.block_on(self.client().issue_cmd(Own { path, body }));
        told.unwrap_or_else(|e| panic!("{path}: {e}"))
    }

    fn devtools(&self, command: &str, traits: Value) -> Value {
        self.own("goog/cdp/execute", json!({ "cmd": command, "params": traits }))
    }

    /// Opens a page as one does from a stick: as a file.
    pub fn open(&self, text: &str) {
        let path = self.folder.path().join("page.html");
        std::fs::write(&path, text).expect("a file can be written");
        let at = Url::from_file_path(&path).expect("an absolute path");
        // From nowhere, so that the same address is read anew.
        self.runtime.block_on(self.client().goto("about:blank")).expect("nowhere can be opened");
        self.runtime.block_on(self.client().goto(at.as_str())).expect("a page can be opened");
        // A window that nobody sees has no focus, and keys would go nowhere.
        self.devtools("Emulation.setFocusEmulationEnabled", json!({ "enabled": true }));
        self.until("document.hasFocus()");
    }

    /// A window so wide and high, by day or by night.
    pub fn window(&self, wide: u32, high: u32, dark: bool) {
        let size =
            json!({ "width": wide, "height": high, "deviceScaleFactor": 1, "mobile": false });
        self.devtools("Emulation.setDeviceMetricsOverride", size);
        let scheme = if dark { "dark" } else { "light" };
        let feature = json!({ "name": "prefers-color-scheme", "value": scheme });
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": [feature] }));
    }

    /// What a function's body gives in the page.
    pub fn look(&self, body: &str) -> Value {
        let told = self.runtime.block_on(self.client().execute(body, Vec::new()));
        told.unwrap_or_else(|e| panic!("{body}: {e}"))
    }

    /// Waits until an expression is true in the page.
    pub fn until(&self, so: &str) {
        for _ in 0..TRIES {
            if self.look(&format!("return Boolean({so})")) == json!(true) {
                return;
            }
            std::thread::sleep(PAUSE);
        }
        panic!("it does not come about: {so}");
    }

    /// Presses keys one after the other, whatever has the focus.
    pub fn press(&self, keys: impl IntoIterator<Item = char>) {
        let strokes = keys.into_iter().fold(KeyActions::new("keys".to_owned()), |all, value| {
            all.then(KeyAction::Down { value }).then(KeyAction::Up { value })
        });
        self.runtime.block_on(self.client().perform_actions(strokes)).expect("keys can be pressed");
    }

    /// Clicks at a point of the window, whatever is there.
    pub fn click(&self, [x, y]: [f64; 2]) {
        for kind in ["mouseMoved", "mousePressed", "mouseReleased"] {
            let mouse = json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
            self.devtools("Input.dispatchMouseEvent", mouse);
        }
    }

    /// Role and name of everything that can be used, and of pictures, as a screen reader is told.
    pub fn names(&self) -> Vec<(String, String)> {
        const ROLES: [&str; 7] =
            ["link", "button", "searchbox", "combobox", "checkbox", "img", "region"];
        let tree = self.devtools("Accessibility.getFullAXTree", json!({}));
        let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
        let word =
            |node: &Value, key: &str| node[key]["value"].as_str().unwrap_or_default().to_owned();
        let heard = nodes.iter().filter(|n| n["ignored"] == false);
        let named = heard.map(|n| (word(n, "role"), word(n, "name")));
        named.filter(|(role, _)| ROLES.contains(&role.as_str())).collect()
    }

    /// Lays the page out as on paper, or as on a dark screen again.
    pub fn on_paper(&self, so: bool) {
        let feature = json!({ "name": "prefers-color-scheme", "value": "dark" });
        let media = if so { "print" } else { "" };
        self.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "media": media, "features": [feature] }),
        );
    }

    /// The page on paper, in the sizes that it asks for. The driver waits ten seconds and no longer, which a busy
    /// machine may take: then it is asked again.
    pub fn print(&self) -> Vec<u8> {
        let how = || PrintConfigurationBuilder::default().shrink_to_fit(false).background(true);
        let mut last = String::new();
        for _ in 0..PRINTS {
            let how = how().build().expect("a printer can do so");
            match self.runtime.block_on(self.client().print(how)) {
                Ok(pdf) => return pdf,
                Err(error) => last = error.to_string(),
            }
        }
        panic!("it cannot be printed: {last}");
    }

    /// What the page complained of since the last time.
    pub fn complaints(&self) -> Vec<String> {
        let log = self.own("se/log", json!({ "type": "browser" }));
        let all = log.as_array().cloned().unwrap_or_default();
        all.iter().map(|entry| entry["message"].to_string()).collect()
    }

    /// The addresses that were asked for since the last time, the page's own file left out.
    pub fn requests(&self) -> Vec<String> {
        let log = self.own("se/log", json!({ "type": "performance" }));
        let all = log.as_array().cloned().unwrap_or_default();
        let event = |entry: &Value| -> Option<Value> {
            serde_json::from_str::<Value>(entry["message"].as_str()?)
                .ok()
                .map(|v| v["message"].clone())
        };
        let sent =
            all.iter().filter_map(event).filter(|e| e["method"] == "Network.requestWillBeSent");
        let at = sent.filter_map(|e| e["params"]["request"]["url"].as_str().map(str::to_owned));
        at.filter(|url| !url.starts_with("data:") && !is_own(url)).collect()
    }
}

/// Whether it is the page itself, or what the browser shows of itself before any page.
fn is_own(url: &str) -> bool {
    url == "about:blank"
        || url.starts_with("chrome")
        || (url.starts_with("file:") && url.ends_with("/page.html"))
}

impl Drop for Browser {
    fn drop(&mut self) {
        if let Some(client) = self.client.take() {
            // What it says at the end is of no concern.
            let _ = self.runtime.block_on(client.close());
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

fn free_port() -> u16 {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port is free");
    listener.local_addr().expect("it has an address").port()
}
