//! One line a person types for an item, such as `6 tray screws M6`, read into what it
//! most likely is. The person confirms it, so a wrong guess costs one tap.

use crate::trade_read::trade_of_said;
use repair::{Kind, PutIn, SureIs, System, Zone};
use trade::{Count, Said, Vocabulary, says};

/// What a line says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ItemLine {
    /// How many pieces.
    pub count: u16,
    /// What it is called.
    pub label: String,
    /// Its size, such as `M6x16`.
    pub size: Option<String>,
    /// An amount with its unit, for a fluid.
    pub amount: Option<String>,
    /// The passes of a torque that was typed with it, each with its unit.
    pub passes: Vec<String>,
    /// What sort of thing it most likely is.
    pub kind: Kind,
    /// Its system, as far as the words tell.
    pub system: System,
    /// Where it is worked on, as far as the words tell.
    pub zone: Zone,
    /// The sort of the trade's table that its name means.
    pub sort: Option<String>,
    /// What it is, if it is put in.
    pub put_in: Option<PutIn>,
    /// How sure the reading is.
    pub sure: SureIs,
    /// What could not be read, and how to mend it.
    pub mend: Option<String>,
}

/// The most pieces one line can stand for.
const MOST: u16 = 200;

/// Reads a line. Total: whatever is typed is at least a part with that name.
///
/// ```
/// use repair::{Kind, System};
///
/// let line = shop::item_line("6 tray screws M6x16");
/// assert_eq!((line.count, line.kind), (6, Kind::Fasteners));
/// assert_eq!(line.label, "tray screws");
/// assert_eq!(line.size.as_deref(), Some("M6x16"));
///
/// let coolant = shop::item_line("coolant 9.2 L");
/// assert_eq!((coolant.kind, coolant.system), (Kind::Fluid, System::Cooling));
/// assert_eq!(coolant.amount.as_deref(), Some("9.2 L"));
/// ```
#[must_use]
pub fn item_line(text: &str) -> ItemLine {
    let mut things = item_lines(text, Vocabulary::shipped());
    if things.is_empty() {
        return bare(text);
    }
    things.remove(0)
}

/// Reads a line that may name several things: `front left caliper and hose off` is two.
/// Nothing typed is dropped: what is not understood stands as a part of that name.
///
/// ```
/// let shipped = trade::Vocabulary::shipped();
/// let things = shop::item_lines("front left caliper and hose", shipped);
/// assert_eq!(things.len(), 2);
/// ```
#[must_use]
pub fn item_lines(text: &str, vocabulary: &Vocabulary) -> Vec<ItemLine> {
    let things = says(text, vocabulary);
    let lines = things.iter().map(|said| of_said(said, vocabulary));
    lines.collect()
}

/// What nobody read anything into.
fn bare(text: &str) -> ItemLine {
    ItemLine {
        count: 1,
        label: text.trim().to_owned(),
        size: None,
        amount: None,
        passes: Vec::new(),
        kind: Kind::Part,
        system: System::Unknown,
        zone: Zone::Unknown,
        sort: None,
        put_in: None,
        sure: SureIs::Unknown,
        mend: None,
    }
}

fn of_said(said: &Said, vocabulary: &Vocabulary) -> ItemLine {
    let trade = trade_of_said(said, vocabulary);
    let torque = said.torque_typed.as_deref().unwrap_or_default();
    let text = without(&said.text, torque);
    let mut words: Vec<&str> = text.split_whitespace().collect();
    let amount = take_amount(&mut words);
    let typed = take_count(&mut words);
    let size = take_size(&mut words);
    let label = words.join(" ");
    let kind = said.kind.unwrap_or(Kind::Part);
    let count = match said.count {
        Some(Count::Of(count)) => count.clamp(1, MOST),
        _ => typed,
    };
    ItemLine {
        count: if kind == Kind::Fluid { 1 } else { count },
        label: if label.is_empty() {
            said.text.trim().to_owned()
        } else {
            label
        },
        size,
        amount,
        passes: passes(torque),
        kind,
        system: trade.system,
        zone: said.zone,
        sort: said.sort.as_deref().map(str::to_owned),
        put_in: (kind == Kind::PutIn).then(|| put_in(&said.text.to_lowercase())),
        sure: trade.sure,
        mend: said.mend.clone(),
    }
}

/// The text without the words of its torque, and without an “at” left hanging before them.
fn without(text: &str, torque: &str) -> String {
    let Some(at) = text.find(torque).filter(|_| !torque.is_empty()) else {
        return text.to_owned();
    };
    let before = text[..at].trim_end();
    let hanging = ["@", "at", "to", "mit", "auf"];
    let before = hanging
        .iter()
        .find_map(|word| before.strip_suffix(&format!(" {word}")))
        .unwrap_or(before);
    format!("{before} {}", &text[at + torque.len()..])
}

/// `30 Nm + 90°` is two passes.
fn passes(torque: &str) -> Vec<String> {
    torque
        .split('+')
        .flat_map(|part| part.split(" then "))
        .map(|part| part.trim().to_owned())
        .filter(|part| !part.is_empty())
        .collect()
}

fn take_amount(words: &mut Vec<&str>) -> Option<String> {
    let at = (0..words.len().saturating_sub(1)).find(|at| {
        let number = words[*at].replace(',', ".").parse::<f64>().is_ok();
        let unit = matches!(
            words[at + 1].to_lowercase().as_str(),
            "l" | "litre" | "litres" | "liter" | "liters" | "ml" | "qt" | "pt" | "gal"
        );
        number && unit
    })?;
    let unit = words.remove(at + 1);
    let number = words.remove(at);
    Some(format!("{number} {unit}"))
}

fn take_count(words: &mut Vec<&str>) -> u16 {
    let number = |word: &str| {
        word.trim_end_matches(['x', '×'])
            .parse::<u16>()
            .ok()
            .filter(|count| (1..=MOST).contains(count))
    };
    let Some(count) = words.first().and_then(|word| number(word)) else {
        return 1;
    };
    words.remove(0);
    if words.first().is_some_and(|word| matches!(*word, "x" | "×")) {
        words.remove(0);
    }
    count
}

fn take_size(words: &mut Vec<&str>) -> Option<String> {
    let is_size = |word: &str| {
        let digits = |text: &str| text.starts_with(|c: char| c.is_ascii_digit());
        let metric = word.strip_prefix(['M', 'm']).is_some_and(digits);
        let inch = digits(word) && word.contains(['/', '-']) || word.starts_with('#');
        metric || inch
    };
    let at = words.iter().position(|word| is_size(word))?;
    let mut size = words.remove(at).to_owned();
    // A property class after the size belongs to it: `M6x16 8.8`.
    let class = words.get(at).copied().filter(|word| {
        matches!(
            *word,
            "4.6" | "4.8" | "5.6" | "5.8" | "6.8" | "8.8" | "9.8" | "10.9" | "12.9"
        )
    });
    if let Some(class) = class {
        words.remove(at);
        size = format!("{size} {class}");
    }
    Some(size)
}

fn has(text: &str, any: &[&str]) -> bool {
    any.iter().any(|word| text.contains(word))
}

fn put_in(text: &str) -> PutIn {
    let table: &[(&[&str], PutIn)] = &[
        (&["clamp"], PutIn::Clamp),
        (&["rag"], PutIn::Rag),
        (&["lamp"], PutIn::Lamp),
        (&["pin"], PutIn::Pin),
        (&["cord", "strap"], PutIn::Cord),
        (&["blanking", "stopper", "plug"], PutIn::Plug),
    ];
    table
        .iter()
        .find(|(words, _)| has(text, words))
        .map_or(PutIn::Other, |(_, what)| *what)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_as_people_type_them() {
        let read = |text: &str| {
            let line = item_line(text);
            (line.count, line.kind, line.system, line.label, line.size)
        };
        assert_eq!(
            read("5 x wheel nuts M12x1.5"),
            (
                5,
                Kind::Fasteners,
                System::Wheels,
                "wheel nuts".into(),
                Some("M12x1.5".into())
            )
        );
        assert_eq!(
            read("coolant sensor plug"),
            (
                1,
                Kind::Connector,
                System::Cooling,
                "coolant sensor plug".into(),
                None
            )
        );
        assert_eq!(read("8 tray clips").1, Kind::Clips);
        assert_eq!(read("drain plug M14x1.5").1, Kind::Fasteners);
        assert_eq!(read("3 bolts 5/16-18").4.as_deref(), Some("5/16-18"));
        assert_eq!(
            read("4 shroud screws M6x16 8.8").4.as_deref(),
            Some("M6x16 8.8")
        );
        assert_eq!(read("belt tensioner").1, Kind::Part);
    }

    #[test]
    fn a_torque_that_is_typed_is_kept_and_leaves_the_name() {
        let read = |text: &str| {
            let line = item_line(text);
            (line.count, line.label, line.size, line.passes)
        };
        let bolts = || "caliper bolts".to_owned();
        assert_eq!(
            read("2 caliper bolts M12 120 Nm"),
            (2, bolts(), Some("M12".into()), vec!["120 Nm".into()])
        );
        assert_eq!(
            read("2 caliper bolts M12 30 Nm + 90°"),
            (
                2,
                bolts(),
                Some("M12".into()),
                vec!["30 Nm".into(), "90°".into()]
            )
        );
        assert_eq!(read("2 caliper bolts at 85 lb-ft").3, ["85 lb-ft"]);
        assert_eq!(read("2 caliper bolts at 85 lb-ft").1, "caliper bolts");
    }

    #[test]
    fn anything_typed_is_at_least_a_part() {
        for text in ["", "   ", "M8", "999999 things", "×", "12 L", "Ünïcode ❄"] {
            let line = item_line(text);
            assert!(line.count >= 1 && line.count <= MOST, "{text:?}");
        }
    }
}
