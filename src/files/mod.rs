//! (under way)
