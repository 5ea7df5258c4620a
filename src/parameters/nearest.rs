//! The known word nearest to a misspelt one.

/// The known word that a misspelt one most likely means; `None` when nothing is near.
///
/// ```
/// use islandwright::parameters::nearest;
/// assert_eq!(nearest("lenght", ["length", "depth"]), Some("length"));
/// assert_eq!(nearest("colour", ["length", "depth"]), None);
/// ```
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let wanted: String = word.chars().take(64).collect::<String>().to_lowercase();
    let wanted = wanted.replace([' ', '-'], "_");
    known
        .into_iter()
        .map(|k| {
            let plain = k.to_lowercase().replace([' ', '-'], "_");
            (k, strsim::damerau_levenshtein(&wanted, &plain), plain.len())
        })
        .filter(|(_, distance, length)| *distance <= 1 + length / 4)
        .min_by_key(|(_, distance, _)| *distance)
        .map(|(k, _, _)| k)
}
