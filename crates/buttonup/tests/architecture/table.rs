//! The table of rooms in ARCHITECTURE.md.

use std::collections::{BTreeMap, BTreeSet};

/// One row: what a room may use of ours, and how high it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Room {
    pub may_use: MayUse,
    pub level: Level,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MayUse {
    These(BTreeSet<String>),
    AllBelow,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    Product(u8),
    /// Not part of what people get.
    Tools,
}

/// A room on one of these levels does no input or output.
pub const PURE: u8 = 3;

impl Room {
    pub fn is_pure(&self) -> bool {
        matches!(self.level, Level::Product(level) if level <= PURE)
    }
}

/// Reads the rows `| room | may use | level | holds |` between the markers.
pub fn rooms(document: &str) -> Result<BTreeMap<String, Room>, String> {
    let (_, rest) = document
        .split_once("<!-- rooms -->")
        .ok_or("there is no <!-- rooms -->")?;
    let (table, _) = rest
        .split_once("<!-- /rooms -->")
        .ok_or("there is no <!-- /rooms -->")?;
    let mut rooms = BTreeMap::new();
    // The first two lines are the heading and the rule under it.
    for row in table.trim().lines().skip(2) {
        let cells: Vec<&str> = row.trim_matches('|').split('|').map(str::trim).collect();
        let [name, may_use, level, _holds] = cells[..] else {
            return Err(format!("four cells are needed in the row: {row}"));
        };
        let room = Room {
            may_use: read_may_use(may_use),
            level: read_level(level).ok_or_else(|| format!("no such level: {row}"))?,
        };
        if rooms.insert(name.to_owned(), room).is_some() {
            return Err(format!("two rows for {name}"));
        }
    }
    Ok(rooms)
}

fn read_may_use(cell: &str) -> MayUse {
    match cell {
        "-" => MayUse::These(BTreeSet::new()),
        "all below" => MayUse::AllBelow,
        names => MayUse::These(
            names
                .split(',')
                .map(|name| name.trim().to_owned())
                .collect(),
        ),
    }
}

fn read_level(cell: &str) -> Option<Level> {
    match cell {
        "tools" => Some(Level::Tools),
        number => number.parse().ok().map(Level::Product),
    }
}

#[test]
fn the_table_is_read_as_written() {
    let document = "before\n<!-- rooms -->\n\
                    | room | may use | level | holds |\n\
                    | --- | --- | --- | --- |\n\
                    | measure | - | 1 | quantities |\n\
                    | repair | measure, states | 3 | the account |\n\
                    | shop | all below | 5 | use cases |\n\
                    | xtask | - | tools | chores |\n\
                    <!-- /rooms -->\n| after | - | 1 | |";
    let rooms = rooms(document).unwrap();
    assert_eq!(
        rooms.keys().collect::<Vec<_>>(),
        ["measure", "repair", "shop", "xtask"]
    );
    let two = ["measure".to_owned(), "states".to_owned()];
    assert_eq!(rooms["repair"].may_use, MayUse::These(two.into()));
    assert_eq!(rooms["shop"].may_use, MayUse::AllBelow);
    assert_eq!(rooms["xtask"].level, Level::Tools);
    assert!(rooms["repair"].is_pure() && !rooms["shop"].is_pure());
}

#[test]
fn a_row_that_cannot_be_read_is_named() {
    let with = |row: &str| format!("<!-- rooms -->\n|a|\n|-|\n{row}\n<!-- /rooms -->");
    for row in ["| vin | - | 2 |", "| vin | - | two | numbers |"] {
        assert!(rooms(&with(row)).unwrap_err().contains(row), "{row}");
    }
    let twice = with("| vin | - | 2 | a |\n| vin | - | 2 | b |");
    assert_eq!(rooms(&twice).unwrap_err(), "two rows for vin");
    assert!(rooms("no table").is_err());
}
