//! Published figures on what burns: how far from sparks, how much, in which containers.
//!
//! All are rules for workplaces and say what may be at most or must be at least there. A cart is far under the amounts
//! and can never keep the distance: neither makes it safe, so they are told and never used as limits of a layout.

use crate::units::{Length, Time};

/// What can burn is kept so far from hot work, or guarded, or watched: 35 ft.
///
/// 29 CFR 1910.252(a)(2) and NFPA 51B; read in Washington's WAC 296-307-49503 and as quoted in answers of the agency.
pub const HOT_WORK: Length = Length::nm(35 * 304_800_000);

/// A fire watch goes on for at least so long after welding or cutting (WAC 296-307-49503(3)(b), read; same text as
/// 29 CFR 1910.252(a)(2)(iii)(B)).
pub const WATCH: Time = Time::s(30 * 60);

/// Litres in a US gallon: 231 cubic inches, exact.
pub const GALLON: f64 = 3.785_411_784;

/// Most flammable liquid in one room outside an approved cabinet, in US gallons (construction, 29 CFR 1926.152(b)(1),
/// read as quoted on three supplier pages).
pub const ROOM: f64 = 25.0;

/// Largest container of glass or plastic for any flammable liquid, in US gallons (29 CFR 1910.106 Table H-12, class IC
/// to III, read as reprinted in a safety manual; class IA 1/8, class IB 1/4).
pub const BOTTLE: f64 = 1.0;

/// Largest metal can or safety can for any flammable liquid, in US gallons (the same table; class IA 1 and 2).
pub const CAN: f64 = 5.0;

/// A flash point below this, in °C, makes category 1 or 2: the most easily lit (GHS and 29 CFR 1910.1200 App. B, read on
/// three pages).
pub const FLASH: f64 = 23.0;

/// Most of the liquids most easily lit (class I) in a house and its garage, in US gallons, and the largest container there
/// (34 Pa. Code § 14a.44(b)(1), read: one state's code, others differ).
pub const HOUSE: f64 = 5.0;

/// The narrowest way out: 28 in (29 CFR 1910.36(g)(2), read as quoted by a publisher).
pub const WAY_OUT: Length = Length::nm(28 * 25_400_000);

/// How far one may have to walk to an extinguisher for burning liquids: 50 ft (29 CFR 1910.157(d)(4), read as quoted on
/// three pages).
pub const TO_EXTINGUISHER: Length = Length::nm(50 * 304_800_000);
