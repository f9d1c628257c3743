//! What a sheet is printed on.

/// A size of paper.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Size {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8 1/2 × 11 in (ANSI/ASME Y14.1, size A).
    Letter,
}

/// A page of that size, upright or on its side.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Paper {
    /// Its size.
    pub size: Size,
    /// Whether it lies on its side.
    pub landscape: bool,
}

impl Paper {
    /// An upright page.
    pub const fn upright(size: Size) -> Paper {
        Paper { size, landscape: false }
    }
    /// A page on its side.
    pub const fn landscape(size: Size) -> Paper {
        Paper { size, landscape: true }
    }
    /// Width in mm.
    pub fn width(self) -> f64 {
        self.sides()[usize::from(self.landscape)]
    }
    /// Height in mm.
    pub fn height(self) -> f64 {
        self.sides()[usize::from(!self.landscape)]
    }
    /// The shorter side, then the longer one.
    fn sides(self) -> [f64; 2] {
        match self.size {
            Size::A4 => [210.0, 297.0],
            Size::Letter => [215.9, 279.4],
        }
    }
}
