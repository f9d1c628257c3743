//! An axis-parallel box, and the ways out of a cart.

use crate::units::Length;

/// A point of the cart's frame.
pub type Point3 = [Length; 3];

/// An axis of the cart's frame: 0 is x, 1 is y, 2 is z.
pub type Axis = usize;

/// A direction in which things are taken out of the cart; also the face they leave by.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Way {
    /// Towards −y.
    Front,
    /// Towards +y.
    Back,
    /// Towards −x.
    Left,
    /// Towards +x.
    Right,
    /// Towards +z.
    Top,
}

impl Way {
    /// All ways, in the order in which faces are told.
    pub const ALL: [Way; 5] = [Way::Front, Way::Back, Way::Left, Way::Right, Way::Top];

    /// The axis along which it leads.
    pub const fn axis(self) -> Axis {
        match self {
            Way::Left | Way::Right => 0,
            Way::Front | Way::Back => 1,
            Way::Top => 2,
        }
    }
    /// Whether it leads towards greater coordinates.
    pub const fn rising(self) -> bool {
        matches!(self, Way::Back | Way::Right | Way::Top)
    }
    /// The way on the other side of the cart; the top has none and gives itself.
    pub const fn opposite(self) -> Way {
        match self {
            Way::Front => Way::Back,
            Way::Back => Way::Front,
            Way::Left => Way::Right,
            Way::Right => Way::Left,
            Way::Top => Way::Top,
        }
    }
    /// Its place in [`Way::ALL`].
    pub const fn index(self) -> usize {
        self as usize
    }
    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Way::Front => "front",
            Way::Back => "back",
            Way::Left => "left",
            Way::Right => "right",
            Way::Top => "top",
        }
    }
    /// The way of that name.
    pub fn named(name: &str) -> Option<Way> {
        Way::ALL.into_iter().find(|w| w.name().eq_ignore_ascii_case(name.trim()))
    }
}

/// An axis-parallel box, from its least to its greatest corner.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub struct Box3 {
    /// The corner with the least coordinates.
    pub min: Point3,
    /// The corner with the greatest coordinates.
    pub max: Point3,
}

impl Box3 {
    /// A box between two corners.
    pub const fn new(min: Point3, max: Point3) -> Box3 {
        Box3 { min, max }
    }
    /// How far it reaches along an axis.
    pub fn extent(&self, axis: Axis) -> Length {
        self.max[axis] - self.min[axis]
    }
    /// The middle, towards the least corner where it falls between two nanometres.
    pub fn middle(&self, axis: Axis) -> Length {
        Length::nm((self.min[axis].as_nm() + self.max[axis].as_nm()).div_euclid(2))
    }
    /// Whether the ranges along an axis share more than a touch.
    #[inline]
    pub fn meets_along(&self, other: &Box3, axis: Axis) -> bool {
        self.min[axis] < other.max[axis] && other.min[axis] < self.max[axis]
    }
    /// Whether two boxes share volume; touching is not sharing.
    #[inline]
    pub fn overlaps(&self, other: &Box3) -> bool {
        (0..3).all(|axis| self.meets_along(other, axis))
    }
    /// Whether the other box lies within this one, edges included.
    pub fn contains(&self, other: &Box3) -> bool {
        (0..3).all(|a| self.min[a] <= other.min[a] && other.max[a] <= self.max[a])
    }
    /// Whether the sweep of this box on its way out, without an end, meets the other box.
    ///
    /// What overlaps this box is not in its way but in its place.
    #[inline]
    pub fn swept_meets(&self, way: Way, other: &Box3) -> bool {
        let axis = way.axis();
        let ahead = if way.rising() {
            other.min[axis] >= self.max[axis]
        } else {
            other.max[axis] <= self.min[axis]
        };
        ahead && (0..3).all(|a| a == axis || self.meets_along(other, a))
    }
    /// Volume in litres.
    pub fn litres(&self) -> f64 {
        (0..3).map(|a| self.extent(a).as_mm() / 100.0).product()
    }
    /// Whether it has a volume at all.
    pub fn is_solid(&self) -> bool {
        (0..3).all(|a| self.min[a] < self.max[a])
    }
}
