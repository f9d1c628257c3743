//! The nearest right name to a wrong one.

/// The nearest of the names by edit distance, where one is near enough to be meant.
///
/// A name is near where at most two letters (and at most a third of the word) are wrong, left out, doubled or swapped.
/// Ties go to the name that comes first.
pub fn nearest<'a>(word: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let low = word.to_lowercase();
    let most = 2.min(low.chars().count().max(3) / 3).max(1);
    names
        .into_iter()
        .map(|name| (strsim::osa_distance(&low, &name.to_lowercase()), name))
        .filter(|(distance, _)| *distance <= most)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| name)
}

#[cfg(test)]
mod tests {
    use super::nearest;

    #[test]
    fn a_slip_of_the_hand_is_found_and_a_stranger_is_not() {
        let keys = ["width", "with", "weight", "size"];
        assert_eq!(nearest("wieght", keys), Some("weight"));
        assert_eq!(nearest("colour", keys), None);
    }
}
