//! The truth about a picture, as its makers wrote it down.

use anyhow::{Context, Result, bail};
use serde_json::Value;
use sight::bolt::SIZES;
use sight::count::{Counted, Group, Listed, size_of};
use std::fs;
use std::path::Path;

/// How hard a picture is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Level {
    Easy,
    Hard,
    Bad,
}

/// One bolt.
#[derive(Debug)]
#[expect(dead_code, reason = "printed beside what was read")]
pub struct TrueBolt {
    pub size: &'static str,
    pub head: String,
    pub length_mm: f64,
    pub middle_mm: [f64; 2],
    pub touching: bool,
    pub finish: String,
    /// The lengths listed for its group.
    pub listed: Vec<f64>,
}

/// One picture.
#[derive(Debug)]
pub struct Truth {
    pub file: String,
    pub level: Level,
    pub bad_reasons: Vec<String>,
    pub groups: Vec<Group>,
    pub say: Vec<Counted>,
    pub pieces: usize,
    pub bolts: Vec<TrueBolt>,
    /// What is no bolt, and where.
    pub others: Vec<(String, [f64; 2])>,
}

/// Reads a file with one JSON object a line.
pub fn values(file: &Path) -> Result<Vec<Value>> {
    let text =
        fs::read_to_string(file).with_context(|| format!("{}: cannot be read", file.display()))?;
    text.lines()
        .filter(|line| !line.trim().is_empty())
        .map(|line| Ok(serde_json::from_str(line)?))
        .collect()
}

/// Reads the truth about all pictures of a file.
pub fn read(file: &Path) -> Result<Vec<Truth>> {
    values(file)?
        .iter()
        .enumerate()
        .map(|(i, value)| one(value).with_context(|| format!("{}, line {}", file.display(), i + 1)))
        .collect()
}

fn one(value: &Value) -> Result<Truth> {
    let text = |v: &Value, key: &str| -> Result<String> {
        let found = v[key].as_str();
        Ok(found.with_context(|| format!("no {key}"))?.to_owned())
    };
    let list = |v: &Value| v.as_array().cloned().unwrap_or_default();
    let number = |v: &Value| v.as_f64().unwrap_or(f64::NAN);
    let groups: Vec<Group> = list(&value["expected"])
        .iter()
        .map(|g| {
            let name = text(g, "name")?;
            let area = list(&value["group_area_mm"][&name]);
            Ok(Group {
                thread: text(g, "thread")?,
                lengths: list(&g["lengths"]).iter().map(number).collect(),
                area_mm: <[f64; 4]>::try_from(area.iter().map(number).collect::<Vec<_>>()).ok(),
                name,
            })
        })
        .collect::<Result<_>>()?;
    let bolts = list(&value["pieces"])
        .iter()
        .filter(|p| p["kind"] == "bolt")
        .map(|p| {
            let size = size_of(&text(p, "thread")?).context("a thread that is not known")?;
            let group = groups.iter().find(|g| p["group"] == *g.name);
            Ok(TrueBolt {
                size: SIZES[size].name,
                head: text(p, "head")?,
                length_mm: number(&p["length_mm"]),
                middle_mm: [number(&p["x_mm"]), number(&p["y_mm"])],
                touching: p["touching"] == true,
                finish: text(p, "finish")?,
                listed: group.map_or_else(Vec::new, |g| g.lengths.clone()),
            })
        })
        .collect::<Result<_>>()?;
    let others = list(&value["pieces"])
        .iter()
        .filter(|p| p["kind"] != "bolt")
        .map(|p| {
            let middle = [number(&p["x_mm"]), number(&p["y_mm"])];
            Ok((text(p, "kind")?, middle))
        })
        .collect::<Result<_>>()?;
    let listed = |l: &Value| {
        Ok(Listed {
            thread: text(l, "thread")?,
            length_mm: number(&l["length_mm"]),
        })
    };
    let say = list(&value["say"])
        .iter()
        .map(|s| {
            let all = |key: &str| list(&s[key]).iter().map(listed).collect::<Result<Vec<_>>>();
            let wrong = list(&s["wrong"])
                .iter()
                .map(|w| Ok((listed(&w["expected"])?, listed(&w["found"])?)))
                .collect::<Result<_>>()?;
            Ok(Counted {
                name: text(s, "group")?,
                expected: 0,
                found: 0,
                missing: all("missing")?,
                extra: all("extra")?,
                wrong,
                unsure: Vec::new(),
                doubt: 0.0,
            })
        })
        .collect::<Result<_>>()?;
    let level = match value["level"].as_str() {
        Some("easy") => Level::Easy,
        Some("hard") => Level::Hard,
        Some("bad") => Level::Bad,
        _ => bail!("no level"),
    };
    Ok(Truth {
        file: text(value, "file")?,
        level,
        bad_reasons: list(&value["bad_reasons"])
            .iter()
            .filter_map(|r| r.as_str().map(str::to_owned))
            .collect(),
        groups,
        say,
        pieces: list(&value["pieces"]).len(),
        bolts,
        others,
    })
}

/// Where a piece lies, and how large it is.
pub struct Placed {
    pub kind: String,
    pub middle: [f64; 2],
    /// Radians from x towards y.
    pub yaw: f64,
    pub footprint: [f64; 2],
    pub height: f64,
}

impl Placed {
    /// Reads a piece.
    pub fn of(piece: &Value) -> Result<Self> {
        let number = |v: &Value| v.as_f64().context("not a number");
        Ok(Self {
            kind: piece["kind"].as_str().context("no kind")?.to_owned(),
            middle: [number(&piece["x_mm"])?, number(&piece["y_mm"])?],
            yaw: piece["yaw_deg"].as_f64().unwrap_or(0.0).to_radians(),
            footprint: [
                number(&piece["footprint_mm"][0])?,
                number(&piece["footprint_mm"][1])?,
            ],
            height: number(&piece["height_mm"])?,
        })
    }
}
