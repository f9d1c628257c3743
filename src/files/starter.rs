//! The program's own inventories, to begin a workspace with or to include by name.

/// An inventory that comes with the program.
#[derive(Clone, Copy, Debug)]
pub struct Starter {
    /// The name to include it by.
    pub name: &'static str,
    /// What is in it, in a few words.
    pub title: &'static str,
    /// Its YAML.
    pub text: &'static str,
}

const STARTERS: [Starter; 4] = [
    Starter {
        name: "marking and measuring",
        title: "tapes, squares, gauges, rules",
        text: include_str!("../../inventories/marking-and-measuring.yaml"),
    },
    Starter {
        name: "corded and cordless",
        title: "machines with a cord or a battery, and what belongs to them",
        text: include_str!("../../inventories/corded-and-cordless.yaml"),
    },
    Starter {
        name: "glues and finishes",
        title: "glues, oils, paints and what they are put on with",
        text: include_str!("../../inventories/glues-and-finishes.yaml"),
    },
    Starter {
        name: "sewing and soldering",
        title: "a sewing box and a soldering place",
        text: include_str!("../../inventories/sewing-and-soldering.yaml"),
    },
];

/// All inventories that come with the program.
pub fn starters() -> &'static [Starter] {
    &STARTERS
}

/// The starter of that name, in any case, with blanks or hyphens.
pub(super) fn named(name: &str) -> Option<&'static Starter> {
    let name = super::decode::fold(&name.replace('-', " "));
    STARTERS.iter().find(|s| s.name == name.trim_end_matches(".yaml"))
}
