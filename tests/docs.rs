//! The pages of the repository keep up with the program: what they quote is printed anew and compared.
//!
//! `TOOLBERTH_WRITE=1 cargo test --test docs` writes the pages afresh where they are stale.

// The shell is built with all of it and a part is used.
#[allow(dead_code)]
#[path = "support/shell.rs"]
mod shell;

use shell::{Folder, program, run};
use std::collections::BTreeSet;
use std::fs;
use std::ops::Range;
use std::path::{Path, PathBuf};
use toolberth::score::{COSTS, RULES, Scope};

const README: &str = "README.md";
const GUIDE: &str = "DEVELOPERS.md";

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn text(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

// ------------------------------------------------------------------ blocks between markers

/// The first line of a block, and its last.
fn markers(block: &str) -> [String; 2] {
    [format!("<!-- {block}: printed by tests/docs.rs -->\n"), format!("<!-- end of {block} -->\n")]
}

/// The page with other contents in one of its blocks.
fn with_block(page: &str, block: &str, contents: &str) -> String {
    let [begin, end] = markers(block);
    let (before, rest) = page.split_once(&begin).unwrap_or_else(|| panic!("no block {block}"));
    let (_, after) = rest.split_once(&end).unwrap_or_else(|| panic!("{block} does not end"));
    format!("{before}{begin}\n{contents}\n{end}{after}")
}

/// Fails where a block of the page is not what is printed now; mends it instead where that is asked for.
fn keeps_up(page: &str, blocks: &[(&str, String)]) {
    let stale = text(page);
    let fresh = blocks.iter().fold(stale.clone(), |t, (block, new)| with_block(&t, block, new));
    if std::env::var_os("TOOLBERTH_WRITE").is_some_and(|v| v == "1") {
        fs::write(root().join(page), fresh).expect("the page can be written");
    } else if let Some((old, new)) = stale.lines().zip(fresh.lines()).find(|(old, new)| old != new)
    {
        panic!("{page} is stale: it says\n{old}\nbut printed is\n{new}\n(TOOLBERTH_WRITE=1 mends)");
    } else {
        assert_eq!(stale.len(), fresh.len(), "{page} is stale (TOOLBERTH_WRITE=1 mends)");
    }
}

#[test]
fn the_readme_quotes_what_the_program_prints() {
    let tables = [("costs", costs()), ("rules", rules())];
    keeps_up(README, &[quotes().as_slice(), &tables].concat());
}

/// The picture of the README, made as the README says.
#[test]
fn the_picture_in_the_readme_is_the_sheet_that_draw_makes() {
    let folder = demos();
    let hall = "demo-data/village-hall";
    for typed in
        [&["plan", hall, "--out", hall][..], &["draw", hall, "--out", "sheets", "--format", "svg"]]
    {
        let ran = program(typed).current_dir(folder.path()).output().expect("the program starts");
        assert_eq!(ran.status.code(), Some(0), "{typed:?}");
    }
    let fresh = fs::read_to_string(folder.path().join("sheets/front.svg")).expect("a sheet");
    let shown = root().join(hall).join("front.svg");
    if std::env::var_os("TOOLBERTH_WRITE").is_some_and(|v| v == "1") {
        fs::write(&shown, &fresh).expect("the picture can be written");
    }
    let stale = fs::read_to_string(&shown).unwrap_or_default();
    assert!(stale == fresh, "{} is stale (TOOLBERTH_WRITE=1 mends)", shown.display());
}

#[test]
fn the_guide_names_every_room_and_every_test() {
    keeps_up(GUIDE, &[("rooms", rooms()), ("tests", tests())]);
}

// ------------------------------------------------------------------ what the program prints

/// A block of the README that quotes the program.
struct Quote {
    block: &'static str,
    /// What is typed; what the last command prints is quoted.
    typed: &'static [&'static [&'static str]],
    /// What is quoted of it: each part goes from the first line that holds the one up to the next line that begins with
    /// the other, or that is empty.
    parts: &'static [(&'static str, &'static str)],
}

const PROPS: &str = "demo-data/prop-shop";

const BUILD: &str = "demo-data/new-build";
const FITTED: &[(&str, &str)] = &[
    ("Fitting out", ""),
    ("for   ", "thinner"),
    ("slide rails ", "long level"),
    ("Mounting list", "hole"),
    ("hole  ", "front / port"),
    ("left / rail board: ", "   3"),
];

/// In this order in one folder: `compare` reads what `replan` wrote.
const QUOTES: [Quote; 9] = [
    Quote {
        block: "result",
        typed: &[&["plan", "demo-data/village-hall"]],
        parts: &[
            ("hall mending cart", ""),
            ("Cost", "From memory"),
            ("Front ·", ""),
            (" #  ", " 6 "),
        ],
    },
    Quote {
        block: "growth",
        typed: &[&["plan", "demo-data/first-flat"]],
        parts: &[("kitchen cart", ""), ("Room kept free", ""), ("are to stay free", "•")],
    },
    Quote {
        block: "audit",
        typed: &[&["audit", PROPS]],
        parts: &[("prop cupboard", ""), ("• fits", "•"), ("• multimeter", "")],
    },
    Quote {
        block: "replan",
        typed: &[&["replan", PROPS, "--effort", "quick", "--out", "few"]],
        parts: &[
            ("steps, in this order", " 3."),
            ("moves  s a week", "    1 "),
            ("the knee, this one", "Placing"),
        ],
    },
    Quote {
        block: "room",
        typed: &[&["room", PROPS, "--wish", "demo-data/prop-shop/wishes.yaml"]],
        parts: &[("family  ", "wood"), ("• rivet tool case", "")],
    },
    Quote {
        block: "why",
        typed: &[&["why", PROPS, "wood glue"]],
        parts: &[("wood glue:", "• blocked"), ("where  ", "front"), ("nobody: it is", "front")],
    },
    Quote {
        block: "shelves",
        typed: &[&["plan", BUILD]],
        parts: &[("boathouse cart", ""), ("Shelves to set", "")],
    },
    Quote {
        block: "fit-out",
        typed: &[&["plan", BUILD, "--out", BUILD], &["fit-out", BUILD]],
        parts: FITTED,
    },
    Quote {
        block: "compare",
        typed: &[
            &["plan", PROPS, "--effort", "quick", "--out", "anew"],
            &["compare", PROPS, "few/layout.yaml", "anew/layout.yaml"],
        ],
        parts: &[("prop cupboard", ""), ("By term", "")],
    },
];

/// The blocks, from the demonstration carts in a folder of their own.
fn quotes() -> Vec<(&'static str, String)> {
    let folder = demos();
    QUOTES.iter().map(|quote| (quote.block, quoted(quote, folder.path()))).collect()
}

/// The demonstration carts in a folder of their own.
fn demos() -> Folder {
    let folder = Folder::empty();
    for path in files_below(&root().join("demo-data"), ".yaml") {
        let copy = folder.path().join(path.strip_prefix(root()).expect("it is below the root"));
        fs::create_dir_all(copy.parent().expect("it is in a folder")).expect("it can be made");
        fs::copy(&path, copy).expect("it can be copied");
    }
    folder
}

/// The commands of a quote, run one after the other, and the quoted parts of what the last one prints.
fn quoted(quote: &Quote, folder: &Path) -> String {
    let (mut shown, mut printed) = (String::new(), String::new());
    for typed in quote.typed {
        let ran = program(typed).current_dir(folder).output().expect("the program starts");
        printed = String::from_utf8(ran.stdout).expect("what it prints is UTF-8");
        assert!(ran.status.code().is_some_and(|code| code < 2), "{typed:?} did not end well");
        let words = typed.iter().map(|word| match word.contains(' ') {
            true => format!(" \"{word}\""),
            false => format!(" {word}"),
        });
        shown += &format!("$ toolberth{}\n", words.collect::<String>());
    }
    let lines: Vec<&str> = printed.lines().collect();
    let mut last = 0;
    for (from, until) in quote.parts {
        let part = part(&lines, from, until);
        let left_out = &lines[last.min(part.start)..part.start];
        let gap = if left_out.iter().all(|line| line.is_empty()) { "\n" } else { "…\n" };
        shown += if left_out.is_empty() { "" } else { gap };
        last = part.end;
        shown.extend(lines[part].iter().flat_map(|line| [line, "\n"]));
    }
    format!("```text\n{shown}…\n```\n")
}

/// The lines from the first that holds `from` to before the next that begins with `until` or is empty.
fn part(lines: &[&str], from: &str, until: &str) -> Range<usize> {
    let start = lines.iter().position(|line| line.contains(from));
    let start = start.unwrap_or_else(|| panic!("no printed line holds `{from}`"));
    let ends = |line: &&str| line.is_empty() || !until.is_empty() && line.starts_with(until);
    start..start + 1 + lines[start + 1..].iter().take_while(|line| !ends(line)).count()
}

// ------------------------------------------------------------------ tables

fn costs() -> String {
    let rows = carded("src/score/cost", COSTS.iter().map(|card| (card.name, card.scope)));
    let rows = rows.map(|(name, scope, doc)| format!("| *{name}* | {doc} | {} |\n", of(scope)));
    format!("| cost | what it counts | counted for |\n|---|---|---|\n{}", rows.collect::<String>())
}

fn rules() -> String {
    let rows = carded("src/score/rule", RULES.iter().map(|card| (card.name, card.source)));
    let rows = rows.map(|(name, source, doc)| format!("| *{name}* | {doc} | {source} |\n"));
    format!(
        "| rule | what it asks | source of its limit |\n|---|---|---|\n{}",
        rows.collect::<String>()
    )
}

/// The cards of a table with what they are about: what stands over the struct, or else at the head of its file.
fn carded<T>(
    folder: &str,
    cards: impl ExactSizeIterator<Item = (&'static str, T)>,
) -> impl Iterator<Item = (&'static str, T, String)> {
    let table = text(&format!("{folder}/mod.rs"));
    let listed = table.lines().filter_map(|line| line.trim().strip_prefix("card::<"));
    let docs: Vec<String> = listed
        .map(|line| {
            let (file, name) = line.split_once("::").expect("a card is told as file::Name");
            let file = format!("{folder}/{file}.rs");
            over_struct(&text(&file), name.trim_end_matches([',', '(', ')', '>']))
                .unwrap_or_else(|| about(&file))
        })
        .collect();
    assert_eq!(docs.len(), cards.len(), "each card of {folder} has a line of its own");
    cards.zip(docs).map(|((name, what), doc)| (name, what, doc))
}

/// The doc comment of one line over a struct.
fn over_struct(code: &str, name: &str) -> Option<String> {
    let (before, _) = code.split_once(&format!("\npub struct {name}"))?;
    Some(before.lines().next_back()?.strip_prefix("///")?.trim().to_owned())
}

/// The first paragraph of a module's own doc comment.
fn about(file: &str) -> String {
    let code = text(file);
    let lines = code.lines().map_while(|line| line.strip_prefix("//!"));
    let first: Vec<&str> = lines.map(str::trim).take_while(|line| !line.is_empty()).collect();
    first.join(" ")
}

fn of(scope: Scope) -> &'static str {
    match scope {
        Scope::Way | Scope::Lot | Scope::Place => "each thing",
        Scope::Growth => "each kind of room",
        Scope::Companions => "each two companions",
        Scope::Family => "each family",
        Scope::Job => "each job",
        Scope::Pair => "each two things",
        Scope::Surface => "each surface",
        Scope::Cart => "the whole cart",
    }
}

/// Every room of the house, as `src/lib.rs` lists them.
fn rooms() -> String {
    let house = text("src/lib.rs");
    let named = house.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    let rows =
        named.map(|room| format!("| `{room}` | {} |\n", about(&format!("src/{room}/mod.rs"))));
    format!("| room | holds |\n|---|---|\n{}", rows.collect::<String>())
}

/// Every test that is built by itself.
fn tests() -> String {
    let mut files: Vec<String> = fs::read_dir(root().join("tests"))
        .expect("the tests can be listed")
        .map(|entry| entry.expect("it can be listed").file_name().to_string_lossy().into_owned())
        .flat_map(|name| match name.ends_with(".rs") {
            true => vec![name],
            // A folder that is a package of its own has no main.rs: it would be taken for one of ours.
            false => vec![format!("{name}/main.rs"), format!("{name}/page.rs")],
        })
        .map(|name| format!("tests/{name}"))
        .filter(|name| root().join(name).exists())
        .collect();
    files.sort();
    let rows = files.iter().map(|file| format!("| `{file}` | {} |\n", about(file)));
    format!("| test | holds |\n|---|---|\n{}", rows.collect::<String>())
}

// ------------------------------------------------------------------ what a reader may try

/// The workspace that a page shows: its fenced blocks whose first line names a file.
fn shown_files(page: &str) -> Vec<(String, String)> {
    let page = text(page);
    let fenced = page
        .split("```yaml\n# ")
        .skip(1)
        .map(|rest| rest.split("```").next().expect("split gives at least one").split_once('\n'));
    fenced.flatten().map(|(name, text)| (name.to_owned(), text.to_owned())).collect()
}

#[test]
fn the_workspace_of_the_readme_works() {
    let files = shown_files(README);
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(
        names,
        ["carcass.yaml", "inventory.yaml", "shop.yaml", "layout.yaml", "wishes.yaml"]
    );
    let folder = Folder::empty();
    for (shop, (name, text)) in files.iter().enumerate() {
        folder.write(name, text);
        if shop > 0 {
            assert!(!folder.run("check", &[]).ends(0).out.contains("not priced"), "after {name}");
            assert_eq!(folder.plan(&["--json"]).ends(0).json()["status"], "complete");
        }
    }
    folder.run("audit", &[]).ends(0);
    let wishes = folder.file("wishes.yaml");
    folder.run("room", &["--wish", &wishes.to_string_lossy()]).ends(0);
}

/// Words of a text that begin so, and what follows up to the end of the word.
fn words_after<'t>(text: &'t str, start: &str) -> BTreeSet<&'t str> {
    let ends = |c: char| !(c.is_ascii_lowercase() || c == '-');
    text.match_indices(start)
        .map(|(at, _)| &text[at + start.len()..])
        .map(|rest| &rest[..rest.find(ends).unwrap_or(rest.len())])
        .filter(|word| !word.is_empty())
        .collect()
}

/// The program's commands, from its own help.
fn commands() -> BTreeSet<String> {
    let help = run(&["--help"]).ends(0).out;
    let list = help.split("Commands:\n").nth(1).and_then(|rest| rest.split("\n\n").next());
    let lines = list.expect("the help lists commands").lines();
    lines.filter_map(|l| l.strip_prefix("  ")?.split(' ').next()).map(str::to_owned).collect()
}

#[test]
fn flags_in_the_readme_are_those_of_the_program() {
    let readme = text(README);
    let mut helped = BTreeSet::new();
    for command in commands() {
        if command != "help" {
            let help = run(&[&command, "--help"]).ends(0).out;
            helped.extend(words_after(&help, "--").into_iter().map(str::to_owned));
        }
    }
    helped.remove("help");
    let shown: BTreeSet<String> =
        words_after(&readme, "`--").into_iter().map(str::to_owned).collect();
    assert_eq!(shown, helped);
}

/// Every file below a folder whose name ends so.
fn files_below(folder: &Path, end: &str) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("the folder can be listed");
    let paths = entries.map(|entry| entry.expect("it can be listed").path());
    let below = paths.flat_map(|path| match path.is_dir() {
        true => files_below(&path, end),
        false => vec![path],
    });
    below.filter(|path| path.to_string_lossy().ends_with(end)).collect()
}

#[test]
fn no_page_and_no_message_names_a_command_that_does_not_exist() {
    let known = commands();
    let rooms = ["cli", "files", "tasks"].map(|room| root().join("src").join(room));
    let code = rooms.iter().flat_map(|room| files_below(room, ".rs"));
    for path in code.chain([README, GUIDE].map(|page| root().join(page))) {
        let text = fs::read_to_string(&path).expect("it can be read");
        let started = ["`toolberth ", "cargo run --release -- "];
        for command in started.iter().flat_map(|start| words_after(&text, start)) {
            assert!(known.contains(command), "{} names `{command}`", path.display());
        }
    }
}

#[test]
fn every_file_that_a_page_links_to_is_there() {
    for page in [README, GUIDE] {
        let text = text(page);
        for link in text.split("](").skip(1).filter_map(|rest| rest.split(')').next()) {
            let inside = !link.starts_with("http") && !link.starts_with('#');
            assert!(!inside || root().join(link).exists(), "{page} links to {link}");
        }
    }
}
