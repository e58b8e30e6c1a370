//! The metals that holes are tapped in.

use crate::phrases::reading as say;
use measure::{Grade, Source};

/// A parent metal and what it bears.
#[derive(Clone, Debug, PartialEq)]
pub struct Parent {
    pub name: &'static str,
    pub family: Family,
    pub tensile_mpa: f64,
    pub shear_mpa: f64,
    pub source: Source,
    /// What the name left open, such as the alloy.
    pub note: Option<&'static str>,
}

/// Metals that behave alike around a thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Family {
    Aluminium,
    Magnesium,
    GreyIron,
    DuctileIron,
    Steel,
    Plastic,
}

impl Parent {
    /// In words, as it is shown: [`Parent::name`] is what is read.
    #[must_use]
    pub fn said(&self) -> String {
        let cast = |after: &str| self.name.strip_suffix(after);
        let of = |before: &str| self.name.strip_prefix(before);
        match self.name {
            "aluminium" => say::aluminium().to_owned(),
            "die-cast aluminium" => say::die_cast_aluminium().to_owned(),
            "grey iron" => say::grey_iron().to_owned(),
            "ductile iron" => say::ductile_iron().to_owned(),
            "steel" => say::steel().to_owned(),
            "plastic" => say::plastic().to_owned(),
            other => None
                .or_else(|| cast(" die cast").map(say::die_cast))
                .or_else(|| cast(" sand cast").map(say::sand_cast))
                .or_else(|| cast(" permanent mould").map(say::permanent_mould))
                .or_else(|| of("magnesium ").map(say::magnesium))
                .or_else(|| of("grey iron class ").map(say::grey_iron_class))
                .or_else(|| of("grey iron ").map(say::grey_iron_of))
                .or_else(|| of("ductile iron ").map(say::ductile_iron_of))
                .unwrap_or_else(|| other.to_owned()),
        }
    }
}

impl Family {
    /// Light metals spread the load badly over a long thread.
    pub fn is_light(self) -> bool {
        matches!(self, Family::Aluminium | Family::Magnesium)
    }

    /// The longest engagement that is given credit, in diameters; nothing where there is
    /// no cap.
    ///
    /// The even load of the stripping formula is an assumption: the first turns carry
    /// most, and in a light metal nothing is gained beyond about two diameters.
    pub fn credited_diameters(self) -> Option<f64> {
        self.is_light().then_some(2.0)
    }
}

/// The parent metal of that name.
///
/// Names: alloy designations (`380`, `A380`, `A356-T6`, `319-T6`, `6061-T6`), grey iron by class or
/// grade (`grey iron class 30`, `EN-GJL-250`), ductile iron (`EN-GJS-500-7`, `65-45-12`), `steel`, `magnesium`, `plastic`, or `aluminium` alone, which stands for the weakest
/// alloy of the list.
///
/// ```
/// use fastener::parent::named;
/// assert_eq!(named("A380").unwrap().shear_mpa, 190.0);
/// assert!(named("aluminium").unwrap().note.is_some());
/// assert!(named("cheese").is_none());
/// ```
pub fn named(name: &str) -> Option<Parent> {
    let plain = plain(name);
    let (position, _) = KNOWN
        .iter()
        .enumerate()
        .find(|(_, row)| row.words.contains(&plain.as_str()))?;
    Some(KNOWN[position].parent())
}

/// The names that [`named`] knows, for a message.
pub fn names() -> Vec<&'static str> {
    KNOWN.iter().map(|row| row.name).collect()
}

fn plain(name: &str) -> String {
    name.to_lowercase()
        .replace("aluminum", "aluminium")
        .replace("gray", "grey")
        .chars()
        .filter(|c| c.is_alphanumeric())
        .collect()
}

struct Known {
    name: &'static str,
    words: &'static [&'static str],
    family: Family,
    tensile_mpa: f64,
    shear_mpa: f64,
    source: (&'static str, &'static str, Grade),
    note: Option<fn() -> &'static str>,
}

impl Known {
    fn parent(&self) -> Parent {
        Parent {
            name: self.name,
            family: self.family,
            tensile_mpa: self.tensile_mpa,
            shear_mpa: self.shear_mpa,
            source: Source::new(self.source.0, self.source.1, self.source.2),
            note: self.note.map(|note| note()),
        }
    }
}

const DIE_CAST: (&str, &str, Grade) = (
    "NADCA product specification standards",
    "table A-3-2",
    Grade::Published,
);
const CAST: (&str, &str, Grade) = (
    "cast aluminium alloy table",
    "least tensile strength; shear taken as 0.6 of it",
    Grade::Memory,
);
const IRON: (&str, &str, Grade) = (
    "ASTM A48",
    "tensile strength by class; shear taken as equal to it, handbooks give 1.1 to 1.3",
    Grade::Memory,
);
const GJL: (&str, &str, Grade) = (
    "EN 1561, ISO 185",
    "least tensile strength of a separately cast bar; shear taken as equal to it",
    Grade::Memory,
);
const GJS: (&str, &str, Grade) = (
    "EN 1563, ISO 1083",
    "least tensile strength; shear taken as 0.75 of it, handbooks give 0.9",
    Grade::Memory,
);
const A536: (&str, &str, Grade) = (
    "ASTM A536",
    "least tensile strength by grade; shear taken as 0.75 of it, handbooks give 0.9",
    Grade::Memory,
);
const STEEL: (&str, &str, Grade) = (
    "common low-carbon steel",
    "shear taken as 0.6 of tensile",
    Grade::Memory,
);

const fn row(
    name: &'static str,
    words: &'static [&'static str],
    family: Family,
    tensile_mpa: f64,
    shear_mpa: f64,
    source: (&'static str, &'static str, Grade),
) -> Known {
    Known {
        name,
        words,
        family,
        tensile_mpa,
        shear_mpa,
        source,
        note: None,
    }
}

const fn noted(known: Known, note: fn() -> &'static str) -> Known {
    Known {
        note: Some(note),
        ..known
    }
}

#[rustfmt::skip]
const KNOWN: [Known; 36] = [
    noted(
        row("aluminium", &["aluminium", "castaluminium", "alu", "alloy"], Family::Aluminium, 234.0, 140.0, CAST),
        say::taken_as_a356,
    ),
    noted(
        row("die-cast aluminium", &["diecastaluminium", "diecast", "diecastalu"], Family::Aluminium, 290.0, 170.0, DIE_CAST),
        say::taken_as_a413,
    ),
    row("380 die cast", &["380", "3800"], Family::Aluminium, 317.0, 190.0, DIE_CAST),
    row("A380 die cast", &["a380", "a3800", "adc10"], Family::Aluminium, 324.0, 190.0, DIE_CAST),
    noted(
        row("383 die cast", &["383", "3830", "adc12"], Family::Aluminium, 310.0, 186.0, DIE_CAST),
        say::shear_not_printed,
    ),
    row("A360 die cast", &["a360", "a3600"], Family::Aluminium, 317.0, 180.0, DIE_CAST),
    row("A413 die cast", &["a413", "a4130"], Family::Aluminium, 290.0, 170.0, DIE_CAST),
    row("A356-T6 sand cast", &["a356", "a356t6", "a3560t6"], Family::Aluminium, 234.0, 140.0, CAST),
    row("A356-T6 permanent mould", &["a356t6permanentmould", "a356t6pm"], Family::Aluminium, 262.0, 157.0, CAST),
    row("319-T6 sand cast", &["319", "319t6"], Family::Aluminium, 250.0, 150.0, CAST),
    row("6061-T6", &["6061", "6061t6"], Family::Aluminium, 310.0, 207.0, ("wrought alloy table", "typical values", Grade::Memory)),
    row("magnesium AZ91D", &["magnesium", "az91d", "az91"], Family::Magnesium, 230.0, 140.0, ("die-cast magnesium table", "typical values", Grade::Memory)),
    noted(
        row("grey iron", &["greyiron", "iron", "castiron", "greycastiron"], Family::GreyIron, 172.0, 172.0, IRON),
        say::taken_as_class_25,
    ),
    row("grey iron class 25", &["greyironclass25", "greyiron25", "a48class25"], Family::GreyIron, 172.0, 172.0, IRON),
    row("grey iron class 30", &["greyironclass30", "greyiron30", "a48class30"], Family::GreyIron, 207.0, 207.0, IRON),
    row("grey iron class 35", &["greyironclass35", "greyiron35", "a48class35"], Family::GreyIron, 241.0, 241.0, IRON),
    row("grey iron class 40", &["greyironclass40", "greyiron40", "a48class40"], Family::GreyIron, 276.0, 276.0, IRON),
    row("grey iron class 50", &["greyironclass50", "greyiron50", "a48class50"], Family::GreyIron, 345.0, 345.0, IRON),
    row("grey iron class 20", &["greyironclass20", "greyiron20", "a48class20"], Family::GreyIron, 138.0, 138.0, IRON),
    row("grey iron class 45", &["greyironclass45", "greyiron45", "a48class45"], Family::GreyIron, 310.0, 310.0, IRON),
    row("grey iron EN-GJL-150", &["engjl150", "gjl150", "gg15"], Family::GreyIron, 150.0, 150.0, GJL),
    row("grey iron EN-GJL-200", &["engjl200", "gjl200", "gg20"], Family::GreyIron, 200.0, 200.0, GJL),
    row("grey iron EN-GJL-250", &["engjl250", "gjl250", "gg25"], Family::GreyIron, 250.0, 250.0, GJL),
    row("grey iron EN-GJL-300", &["engjl300", "gjl300", "gg30"], Family::GreyIron, 300.0, 300.0, GJL),
    noted(
        row("ductile iron", &["ductileiron", "nodulariron", "spheroidaliron", "ductile", "ductilecastiron", "sgiron"], Family::DuctileIron, 400.0, 300.0, GJS),
        say::taken_as_gjs_400,
    ),
    row("ductile iron EN-GJS-400", &["engjs400", "engjs40015", "engjs40018", "gjs400", "ggg40"], Family::DuctileIron, 400.0, 300.0, GJS),
    row("ductile iron EN-GJS-500-7", &["engjs500", "engjs5007", "gjs500", "ggg50"], Family::DuctileIron, 500.0, 375.0, GJS),
    row("ductile iron EN-GJS-600-3", &["engjs600", "engjs6003", "gjs600", "ggg60"], Family::DuctileIron, 600.0, 450.0, GJS),
    row("ductile iron EN-GJS-700-2", &["engjs700", "engjs7002", "gjs700", "ggg70"], Family::DuctileIron, 700.0, 525.0, GJS),
    row("ductile iron 60-40-18", &["604018", "ductileiron604018", "a536604018"], Family::DuctileIron, 414.0, 310.0, A536),
    row("ductile iron 65-45-12", &["654512", "ductileiron654512", "a536654512"], Family::DuctileIron, 448.0, 336.0, A536),
    row("ductile iron 80-55-06", &["805506", "ductileiron805506", "a536805506"], Family::DuctileIron, 552.0, 414.0, A536),
    row("ductile iron 100-70-03", &["1007003", "ductileiron1007003", "a5361007003"], Family::DuctileIron, 689.0, 517.0, A536),
    row("ductile iron 120-90-02", &["1209002", "ductileiron1209002", "a5361209002"], Family::DuctileIron, 827.0, 620.0, A536),
    row("steel", &["steel", "lowcarbonsteel", "mildsteel", "s235"], Family::Steel, 360.0, 216.0, STEEL),
    noted(
        row("plastic", &["plastic", "polyamide", "nylon"], Family::Plastic, 0.0, 0.0, ("plastic", "no figure is given", Grade::Memory)),
        say::plastic_is_given_no_clamp,
    ),
];
