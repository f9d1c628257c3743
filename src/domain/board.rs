//! What boards are made of, how they are held, and how things are hung on them.

use crate::units::{Length, Mass};

/// What boards are made of.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Material {
    /// Plywood.
    Plywood,
    /// Medium density fibre board.
    Mdf,
    /// Particle board.
    ParticleBoard,
    /// Oriented strand board.
    StrandBoard,
    /// Hardboard.
    Hardboard,
    /// Spruce.
    Spruce,
    /// Pine of any kind.
    Pine,
    /// Southern pine.
    SouthernPine,
    /// Fir.
    Fir,
    /// Douglas fir.
    DouglasFir,
    /// Larch.
    Larch,
    /// Hemlock.
    Hemlock,
    /// Oak.
    Oak,
    /// Maple.
    Maple,
    /// Beech.
    Beech,
    /// Birch, as solid wood.
    Birch,
}

impl Material {
    /// All of them, in the order in which they are told.
    pub const ALL: [Material; 16] = [
        Material::Plywood,
        Material::Mdf,
        Material::ParticleBoard,
        Material::StrandBoard,
        Material::Hardboard,
        Material::Spruce,
        Material::Pine,
        Material::SouthernPine,
        Material::Fir,
        Material::DouglasFir,
        Material::Larch,
        Material::Hemlock,
        Material::Oak,
        Material::Maple,
        Material::Beech,
        Material::Birch,
    ];
    /// Its names in files, the one of reports first.
    pub const fn names(self) -> &'static [&'static str] {
        match self {
            Material::Plywood => &["plywood", "ply", "birch plywood"],
            Material::Mdf => &["MDF", "fibreboard", "fiberboard"],
            Material::ParticleBoard => &["particleboard", "particle board", "chipboard"],
            Material::StrandBoard => &["OSB", "strand board"],
            Material::Hardboard => &["hardboard"],
            Material::Spruce => &["spruce"],
            Material::Pine => &["pine"],
            Material::SouthernPine => &["southern pine"],
            Material::Fir => &["fir"],
            Material::DouglasFir => &["Douglas fir"],
            Material::Larch => &["larch"],
            Material::Hemlock => &["hemlock"],
            Material::Oak => &["oak"],
            Material::Maple => &["maple"],
            Material::Beech => &["beech"],
            Material::Birch => &["birch"],
        }
    }
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        self.names()[0]
    }
}

/// How the ends of a board are held.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Ends {
    /// Loose on pins or battens.
    #[default]
    Free,
    /// Glued and screwed, or housed.
    Fixed,
}

/// Which way a shelf spans, as seen before its bay.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Along {
    /// From side to side.
    #[default]
    Width,
    /// From front to rear.
    Depth,
}

/// How things are hung on a wall or a panel.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Fixing {
    /// What one hook or peg carries, as its maker or the user says.
    pub hook: Option<Mass>,
    /// The screw that holds a thing.
    pub screw: ScrewSize,
    /// Whether screws go into sawn ends of the wood, where nothing is counted on.
    pub end_grain: bool,
}

/// The screws that hold one thing on a wall.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct ScrewSize {
    /// Outside the thread.
    pub diameter: Length,
    /// How much thread is in the wood; `None` means as much as the board lets it.
    pub thread: Option<Length>,
    /// How many of them hold one thing.
    pub each: u32,
}

impl Default for ScrewSize {
    /// One of 4 mm: common practice, no source.
    fn default() -> ScrewSize {
        ScrewSize { diameter: Length::mm(4), thread: None, each: 1 }
    }
}
