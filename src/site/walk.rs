//! placeholder until delivered
use crate::units::Length;
#[derive(Clone, Copy)]
pub struct Rect2; impl Rect2 { pub fn new(_: [Length;2], _: [Length;2]) -> Rect2 { Rect2 } }
pub struct Floor; impl Floor { pub fn new(_: &[Rect2], _: Option<Rect2>, _: Length) -> Floor { Floor }
 pub fn walk(&self, a: [Length;2], b: [Length;2]) -> Option<Length> { let d = |x: Length, y: Length| if x>y {x-y} else {y-x}; Some(d(a[0],b[0])+d(a[1],b[1])) } }
