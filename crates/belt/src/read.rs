//! A layout from its text, which is TOML.
//!
//! ```toml
//! profile = "PK"            # or "toothed", with pitch_mm; without it the line runs as given
//! [[pulley]]                # in the sequence in which the belt meets them
//! name = "crank"
//! x_mm = 0                  # seen from the front, y upwards
//! y_mm = 0
//! diameter_mm = 150
//! side = "ribs"             # or "back"
//! drives = true             # the crank, with the way it turns
//! turns = "cw"              # or "ccw"
//! [tensioner]
//! kind = "arm"              # or hydraulic, slot, screw, none
//! pulley = "tensioner"
//! pivot_x_mm = 60           # or from_x_mm, from_y_mm, to_x_mm, to_y_mm for a straight slot
//! pivot_y_mm = 180
//! min_deg = 20              # from the right, counter-clockwise
//! max_deg = 70
//! [belt]
//! friction = 0.3            # ribs, friction, back_friction, groove_deg, tension_n, rpm
//! [[lies]]                  # how it was found
//! pulley = "idler"
//! side = "ribs"
//! ```

use crate::layout::{
    Face, Facts, Layout, PK_BACK_MM, Profile, Pulley, Sense, Side, Tensioner, TensionerKind, Travel,
};
use crate::phrases as say;
use fields::{Book, Fields, Trouble};

/// A layout, and what in its text has no effect.
#[derive(Clone, Debug, PartialEq)]
pub struct Read {
    pub layout: Layout,
    pub warnings: Vec<Trouble>,
}

const ROOT: [&str; 12] = [
    "pulley",
    "tensioner",
    "belt",
    "lies",
    "profile",
    "pitch_mm",
    "back_mm",
    "name",
    "vehicle",
    "source",
    "note",
    "version",
];
const PULLEY: [&str; 16] = [
    "name",
    "x_mm",
    "y_mm",
    "diameter_mm",
    "side",
    "drives",
    "turns",
    "face",
    "grooves",
    "edge_mm",
    "power_kw",
    "least_wrap_deg",
    "flange_mm",
    "reachable",
    "teeth",
    "mark_deg",
];
const TENSIONER: [&str; 12] = [
    "kind",
    "pulley",
    "pivot_x_mm",
    "pivot_y_mm",
    "min_deg",
    "max_deg",
    "from_x_mm",
    "from_y_mm",
    "to_x_mm",
    "to_y_mm",
    "torque_nm",
    "force_n",
];
const BELT: [&str; 6] = [
    "ribs",
    "friction",
    "back_friction",
    "groove_deg",
    "tension_n",
    "rpm",
];

/// Reads a layout.
///
/// `file` is the name that troubles are told under.
///
/// # Errors
///
/// Everything that is wrong, in the sequence of the text: what is no TOML, missing keys,
/// words that are not known, numbers that are none. Unknown keys are warnings, unless they
/// look like a known one misspelt.
pub fn read(file: &str, text: &str) -> Result<Read, Vec<Trouble>> {
    let read = fields::read(file, text, say::the_layout(), layout)?;
    Ok(Read {
        layout: read.value,
        warnings: read.warnings,
    })
}

fn layout(root: &Fields, book: &mut Book) -> Layout {
    root.only(&ROOT, book);
    let pulleys = root.tables("pulley", book);
    if pulleys.is_empty() {
        book.wrong(
            root.at("pulley"),
            say::no_pulley_listed().to_owned(),
            say::mend_write_pulleys().to_owned(),
        );
    }
    let pulleys = pulleys.iter().map(|fields| pulley(fields, book)).collect();
    let lies: Vec<(String, Side)> = root
        .tables("lies", book)
        .iter()
        .map(|fields| {
            fields.only(&["pulley", "side"], book);
            if !fields.has("pulley") {
                book.wrong(
                    fields.place(),
                    say::lies_names_no_pulley().to_owned(),
                    say::mend_add_pulley().to_owned(),
                );
            }
            (
                fields.text("pulley", book).unwrap_or_default(),
                side(fields, book),
            )
        })
        .collect();
    Layout {
        pulleys,
        tensioner: root
            .table("tensioner", book)
            .map(|fields| tensioner(&fields, book)),
        profile: profile(root, book),
        facts: root
            .table("belt", book)
            .map(|fields| facts(&fields, book))
            .unwrap_or_default(),
        lies: (!lies.is_empty()).then_some(lies),
    }
}

fn pulley(fields: &Fields, book: &mut Book) -> Pulley {
    fields.only(&PULLEY, book);
    if !fields.has("name") {
        book.wrong(
            fields.place(),
            say::has_no_name(&fields.name),
            say::mend_add_name().to_owned(),
        );
    }
    let name = fields
        .text("name", book)
        .unwrap_or_else(|| fields.name.clone());
    let teeth = fields.count("teeth", book);
    let (x_mm, y_mm) = (fields.needed("x_mm", book), fields.needed("y_mm", book));
    let diameter_mm = match (teeth, fields.has("diameter_mm")) {
        // Worked out from the pitch.
        (Some(_), false) => 1.0,
        _ => fields.needed("diameter_mm", book),
    };
    Pulley {
        side: side(fields, book),
        drives: fields.yes("drives", false, book),
        turns: fields
            .word("turns", &["cw", "ccw"], book)
            .map(|word| match word {
                "cw" => Sense::Clockwise,
                _ => Sense::CounterClockwise,
            }),
        face: fields
            .word("face", &["ribbed", "smooth"], book)
            .map(|word| match word {
                "ribbed" => Face::Ribbed,
                _ => Face::Smooth,
            }),
        grooves: fields.count("grooves", book),
        edge_mm: fields.number("edge_mm", book),
        power_kw: fields.number("power_kw", book),
        least_wrap_deg: fields.number("least_wrap_deg", book),
        flange_mm: fields.number("flange_mm", book).unwrap_or(0.0),
        reachable: fields.yes("reachable", true, book),
        teeth,
        mark_deg: fields.number("mark_deg", book),
        ..Pulley::new(name, x_mm, y_mm, diameter_mm)
    }
}

fn side(fields: &Fields, book: &mut Book) -> Side {
    match fields.word("side", &["ribs", "back", "teeth"], book) {
        Some("back") => Side::Back,
        _ => Side::Ribs,
    }
}

fn profile(root: &Fields, book: &mut Book) -> Profile {
    let back_mm = root.number("back_mm", book);
    match root.word("profile", &["PK", "toothed"], book) {
        Some("PK") => Profile::Pk {
            back_mm: back_mm.unwrap_or(PK_BACK_MM),
        },
        Some(_) => Profile::Toothed {
            pitch_mm: root.needed("pitch_mm", book),
            back_mm: back_mm.unwrap_or(0.0),
        },
        None => Profile::AsGiven,
    }
}

fn facts(fields: &Fields, book: &mut Book) -> Facts {
    fields.only(&BELT, book);
    Facts {
        ribs: fields.count("ribs", book),
        friction: fields.number("friction", book),
        back_friction: fields.number("back_friction", book),
        groove_deg: fields.number("groove_deg", book),
        tension_n: fields.number("tension_n", book),
        rpm: fields.number("rpm", book),
    }
}

fn tensioner(fields: &Fields, book: &mut Book) -> Tensioner {
    fields.only(&TENSIONER, book);
    let names = TensionerKind::ALL.map(TensionerKind::name);
    let word = fields.word("kind", &names, book);
    let kind = TensionerKind::ALL
        .into_iter()
        .find(|kind| word == Some(kind.name()))
        .unwrap_or(TensionerKind::SpringArm);
    let moves = (kind != TensionerKind::StretchBelt).then(|| {
        if !fields.has("pulley") {
            book.wrong(
                fields.place(),
                say::tensioner_names_no_pulley().to_owned(),
                say::mend_add_moving_pulley().to_owned(),
            );
        }
        let name = fields.text("pulley", book).unwrap_or_default();
        (name, travel(fields, book))
    });
    Tensioner {
        kind,
        moves,
        torque_nm: fields.number("torque_nm", book),
        force_n: fields.number("force_n", book),
    }
}

fn travel(fields: &Fields, book: &mut Book) -> Travel {
    if fields.has("from_x_mm") || fields.has("to_x_mm") {
        return Travel::Line {
            from_x_mm: fields.needed("from_x_mm", book),
            from_y_mm: fields.needed("from_y_mm", book),
            to_x_mm: fields.needed("to_x_mm", book),
            to_y_mm: fields.needed("to_y_mm", book),
        };
    }
    Travel::Arc {
        pivot_x_mm: fields.needed("pivot_x_mm", book),
        pivot_y_mm: fields.needed("pivot_y_mm", book),
        min_deg: fields.needed("min_deg", book),
        max_deg: fields.needed("max_deg", book),
    }
}
