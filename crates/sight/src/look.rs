//! From a photo to pieces, and from pieces to a verdict.

use crate::alike::{self, ByKind};
use crate::bolt::{Head, SIZES};
use crate::camera::{self, Camera, Taken};
use crate::count::{Counted, Decided, Doubtful, Group, Measured, SOLD_MM, count};
use crate::edges;
use crate::find::{self, Field, Found};
use crate::fit;
use crate::flat::{CELLS_PER_MM, Flat, on_tag};
use crate::kinds::{self, Kind, Rest};
use crate::mat::{Paper, TAG_MM};
use crate::net;
use crate::photo::Photo;
use crate::tags::{self, Grey, Tag};

/// Something that stands in the way of a count, and what to do about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Trouble {
    /// Which.
    pub what: What,
    /// Where on the sheet, if it has a place.
    pub at_mm: Option<[f64; 2]>,
}

/// What can stand in the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// No tag, or one only.
    NoSheet,
    /// A tag is out of the picture (0 to 3).
    CutOff(usize),
    /// Something lies on a tag or hides it (0 to 3).
    TagHidden(usize),
    /// The tags do not stand to each other as on the sheet.
    Crooked,
    /// Blurred.
    Blur,
    /// A lamp is mirrored.
    Glare,
    /// Too dark.
    Dark,
    /// The sheet is too small in the picture.
    Small,
    /// A piece lies half off the sheet.
    OffSheet,
    /// Something reaches over the sheet's edge.
    Across,
    /// Pieces lie together, or it is not clear what it is.
    Unclear,
}

const CORNERS: [&str; 4] = ["top left", "top right", "bottom right", "bottom left"];

impl What {
    /// Whether no count can be trusted while it is so. The others may hide a piece, so that
    /// only a difference is in doubt: where all that is listed is seen, nothing was hidden.
    #[must_use]
    pub fn stops(self) -> bool {
        !matches!(self, Self::Across | Self::Glare | Self::Unclear)
    }

    /// In words, with what to do.
    #[must_use]
    pub fn say(self) -> String {
        match self {
            Self::NoSheet => "the printed sheet is not in the picture, or too little of it: \
                              lay the pieces on the sheet and take it whole, from above"
                .to_owned(),
            Self::CutOff(tag) => format!(
                "the sheet's {} corner is outside the picture: take the whole sheet",
                CORNERS[tag & 3]
            ),
            Self::TagHidden(tag) => format!(
                "the tag at the sheet's {} corner is covered: move what lies or reaches over it",
                CORNERS[tag & 3]
            ),
            Self::Crooked => "the four tags do not lie in one plane: lay the sheet flat, \
                              and take it as it was printed"
                .to_owned(),
            Self::Blur => "the picture is blurred: hold still, and let the camera focus".to_owned(),
            Self::Glare => {
                "glare: a light is mirrored on the sheet: move the lamp, or stand between"
                    .to_owned()
            }
            Self::Dark => "the picture is too dark: more light on the sheet".to_owned(),
            Self::Small => "the sheet is too small in the picture: go nearer".to_owned(),
            Self::OffSheet => {
                "a piece lies half off the sheet, the printed mat: move it onto it".to_owned()
            }
            Self::Across => "something reaches over the sheet's edge: take it away".to_owned(),
            Self::Unclear => "it is not clear what lies there: move what lies together apart, \
                              and take another picture"
                .to_owned(),
        }
    }
}

/// One piece as reported.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What it is.
    pub kind: Kind,
    /// Nearest common thread, where it has one.
    pub thread: Option<&'static str>,
    /// As measured, under the head, where it has a length.
    pub length_mm: Option<f64>,
    /// Head across (flats, or diameter), or the outside of a nut, washer or ring.
    pub head_mm: Option<f64>,
    /// Middle on the sheet.
    pub x_mm: f64,
    /// Middle on the sheet, downwards.
    pub y_mm: f64,
    /// From the head to the end, in degrees from x towards y.
    pub yaw_deg: Option<f64>,
    /// How much the length (or the outside) may be off: one standard deviation.
    pub error_mm: f64,
    /// Whether it is sure what it is.
    pub sure: bool,
    /// Corners of what is seen of it, on the sheet.
    pub outline_mm: Vec<Vec<[f64; 2]>>,
}

/// What was seen in a photo.
#[derive(Debug, Clone)]
pub struct Seen {
    /// Which paper, if there is a sheet.
    pub paper: Option<Paper>,
    /// All pieces; bolts first, in the order of `bolts`.
    pub pieces: Vec<Piece>,
    /// The bolts as measured.
    pub bolts: Vec<Measured>,
    /// What was not taken for a bolt and might be one.
    pub doubtful: Vec<Doubtful>,
    /// What stands in the way.
    pub troubles: Vec<Trouble>,
    /// Where the camera was over the sheet, in millimetres.
    pub camera_mm: Option<[f64; 3]>,
    /// How the photo was taken, to find a place of the sheet on it.
    pub camera: Option<Camera>,
}

impl Seen {
    /// Where a place on the sheet, in millimetres, lies on the photo, in pixels of its width and
    /// height as they were read; nothing, if there is no sheet.
    #[must_use]
    pub fn on_photo(&self, [x_mm, y_mm]: [f64; 2]) -> Option<[f64; 2]> {
        let camera = self.camera.as_ref()?;
        Some(camera.pixel([x_mm, y_mm, 0.0]))
    }
}

/// The answer to "is everything there?".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Everything listed lies there, and nothing else.
    Complete,
    /// Something is missing, too many, or another one.
    NotComplete,
    /// The picture does not tell.
    CantTell,
}

impl Verdict {
    /// What it is called for a program.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Complete => "complete",
            Self::NotComplete => "not-complete",
            Self::CantTell => "cant-tell",
        }
    }
}

/// A count with its verdict.
#[derive(Debug, Clone)]
pub struct Judged {
    /// Group by group.
    pub groups: Vec<Counted>,
    /// What each bolt was taken for.
    pub decided: Vec<Decided>,
    /// The verdict.
    pub verdict: Verdict,
    /// Why, in words.
    pub because: Vec<String>,
}

/// Edges of tags that are wider than this on the sheet are blurred.
const BLUR_MM: f64 = 1.65;
/// Mirrored light on the sheet, in square millimetres, that is too much.
const GLARE_MM2: f64 = 250.0;
/// Mirrored light is so much brighter than the sheet is for the most part.
const GLARE_SHARE: f32 = 1.38;
/// Brightness of paper (0 to 255) below which it is too dark.
const DARK: f32 = 45.0;
/// Fewer pixels a millimetre than this show too little.
const LEAST_PX_PER_MM: f64 = 1.3;
/// What is left over at the tags' corners beyond this (share of the tag's side) is no flat sheet.
const CROOKED_SHARE: f64 = 0.06;

/// How much doubt there may be in all, and about one bolt, for an answer to be given: that it is
/// not complete, and "complete".
const MOST_DOUBT: f64 = 0.6;
const MOST_DOUBT_OF_ONE: f64 = 0.3;
const MOST_DOUBT_OF_ONE_COMPLETE: f64 = 0.18;

/// Looks at a photo with the weights that come with this crate.
#[must_use]
pub fn look(photo: &Photo) -> Seen {
    look_with(photo, &crate::weights::weights())
}

/// Looks at a photo with other weights, for those who fit them.
#[must_use]
pub fn look_with(photo: &Photo, weights: &[f32]) -> Seen {
    let grey = Grey::of(photo.width, photo.height, &photo.rgb);
    let tags = tags::find(&grey);
    let taken = Taken {
        width: photo.width,
        height: photo.height,
        focal_35_mm: photo.focal_35_mm,
        printed: photo.printed,
    };
    let camera = camera::fit(&tags, &taken);
    let Some(camera) = camera else {
        return nothing(None, What::NoSheet);
    };
    let (tags, camera) = looked_again(&grey, tags, camera, &taken);
    let mut troubles = of_tags(&tags, &camera, photo);
    let scale = camera.px_per_mm(
        camera.paper.size_mm()[0] / 2.0,
        camera.paper.size_mm()[1] / 2.0,
    );
    if scale < LEAST_PX_PER_MM {
        return nothing(Some(camera.paper), What::Small);
    }
    if camera.left_over_px > CROOKED_SHARE * TAG_MM * scale {
        troubles.push(plain(What::Crooked));
        return Seen {
            troubles,
            ..nothing(Some(camera.paper), What::Crooked)
        };
    }
    let (camera, flat, scale_known) = at_true_size(photo, &tags, camera, &taken);
    let known = net::look(&flat.cells, flat.width, flat.height, weights);
    let field = Field {
        known: &known,
        seen: &flat.seen,
        width: flat.width,
        height: flat.height,
        eye: camera.place_mm(),
    };
    let mut bolts = find::bolts(&flat, &field);
    find::spilt(&field, &mut bolts);
    bolts.retain(|one| !one.is_no_bolt());
    let kinds = alike::settled(&bolts);
    let settled: Vec<_> = kinds.iter().map(alike::likeliest).collect();
    fit::settle(&field, &mut bolts, &settled);
    find::spilt(&field, &mut bolts);
    let (bolts, kinds): (Vec<Found>, Vec<ByKind>) = bolts
        .into_iter()
        .zip(kinds)
        .filter(|(one, _)| !one.is_no_bolt())
        .unzip();
    let rest = kinds::rest(&flat, &field, &bolts);
    troubles.extend(of_light(&flat, &known));
    troubles.extend(of_pieces(&flat, &bolts, &rest));
    let share = if scale_known { 0.0 } else { UNKNOWN_SCALE };
    reported(&camera, &field, (&bolts, &kinds), &rest, troubles, share)
}

/// Lays the sheet flat, and once more if its edges show that it was printed at another size;
/// and says whether its size is known: measured on its line, or seen by its edges.
fn at_true_size(
    photo: &Photo,
    tags: &[Option<Tag>; 4],
    camera: Camera,
    taken: &Taken,
) -> (Camera, Flat, bool) {
    let flat = Flat::new(photo, &camera);
    let measured = (taken.printed - 1.0).abs() > 1e-9;
    match edges::printed(&flat) {
        _ if measured => (camera, flat, true),
        None => (camera, flat, false),
        Some(printed) if (printed - 1.0).abs() < 1e-9 => (camera, flat, true),
        Some(printed) => {
            let taken = Taken { printed, ..*taken };
            match camera::fit(tags, &taken) {
                Some(camera) => {
                    let flat = Flat::new(photo, &camera);
                    (camera, flat, true)
                }
                None => (camera, flat, false),
            }
        }
    }
}

/// What lengths may be off by where it is not known how large the sheet was printed.
const UNKNOWN_SCALE: f64 = 0.03;

fn plain(what: What) -> Trouble {
    Trouble { what, at_mm: None }
}

fn nothing(paper: Option<Paper>, what: What) -> Seen {
    Seen {
        paper,
        pieces: Vec::new(),
        bolts: Vec::new(),
        doubtful: Vec::new(),
        troubles: vec![plain(what)],
        camera_mm: None,
        camera: None,
    }
}

/// Looks for tags that were not found where the others say they are.
fn looked_again(
    grey: &Grey,
    mut tags: [Option<Tag>; 4],
    camera: Camera,
    taken: &Taken,
) -> ([Option<Tag>; 4], Camera) {
    let mut more = false;
    for (id, place) in tags.iter_mut().enumerate() {
        if place.is_none() {
            let expected = camera::printed_corners(camera.paper, id, taken.printed)
                .map(|[x, y]| camera.pixel([x, y, 0.0]));
            *place = tags::find_at(grey, id, &expected);
            more |= place.is_some();
        }
    }
    let again = more.then(|| camera::fit(&tags, taken)).flatten();
    (tags, again.unwrap_or(camera))
}

fn of_tags(tags: &[Option<Tag>; 4], camera: &Camera, photo: &Photo) -> Vec<Trouble> {
    let mut out = Vec::new();
    let (w, h) = (photo.width as f64, photo.height as f64);
    for (id, tag) in tags.iter().enumerate() {
        if tag.is_none() {
            let outside = camera.paper.tag_corners_mm(id).iter().any(|&[x, y]| {
                let [u, v] = camera.pixel([x, y, 0.0]);
                u < 2.0 || v < 2.0 || u > w - 3.0 || v > h - 3.0
            });
            out.push(plain(if outside {
                What::CutOff(id)
            } else {
                What::TagHidden(id)
            }));
        }
    }
    let blurred = tags.iter().flatten().any(|tag| {
        let [x, y] = camera.paper.tag_corner_mm(tag.id);
        tag.edge_px / camera.px_per_mm(x + TAG_MM / 2.0, y + TAG_MM / 2.0) > BLUR_MM
    });
    if blurred {
        out.push(plain(What::Blur));
    }
    out
}

fn of_light(flat: &Flat, known: &[net::Known]) -> Vec<Trouble> {
    let mut out = Vec::new();
    let mut light: Vec<f32> = flat
        .paper
        .iter()
        .map(|p| (p[0] + p[1] + p[2]) / 3.0)
        .collect();
    light.sort_by(f32::total_cmp);
    let usual = light.get(light.len() / 2).copied().unwrap_or(0.0);
    let mut mirrored = 0;
    for (at, &bright) in flat.bright.iter().enumerate() {
        let blank = known[at].class[net::PAPER] > 0.5 && flat.seen[at];
        mirrored += usize::from(blank && bright > 250.0 && bright > usual * GLARE_SHARE);
    }
    if mirrored as f64 / (CELLS_PER_MM * CELLS_PER_MM) > GLARE_MM2 {
        out.push(plain(What::Glare));
    }
    if usual < DARK {
        out.push(plain(What::Dark));
    }
    out
}

fn of_pieces(flat: &Flat, bolts: &[Found], rest: &Rest) -> Vec<Trouble> {
    let mut out = Vec::new();
    let mut at = |what: What, at: [f64; 2]| {
        out.push(Trouble {
            what,
            at_mm: Some(at),
        });
    };
    for found in bolts {
        let axis = found.bolt.axis();
        let size = &SIZES[found.bolt.size];
        let outside = axis
            .iter()
            .any(|p| !flat.on_sheet(p[0], p[1], size.thread / 2.0 - 2.5));
        let covers = axis.iter().any(|p| on_tag(flat.sheet_mm, p[0], p[1], -1.0));
        if outside {
            at(What::OffSheet, found.bolt.middle());
        }
        if covers {
            let tag = usize::from(axis[0][0] > flat.sheet_mm[0] / 2.0);
            let below = axis[0][1] > flat.sheet_mm[1] / 2.0;
            let tag = if below { 3 - tag } else { tag };
            at(What::TagHidden(tag), found.bolt.middle());
        }
    }
    for &place in &rest.across {
        at(What::Across, place);
    }
    for &place in &rest.unclear {
        at(What::Unclear, place);
    }
    out
}

/// How much a length is off for the most part: so much, and a share of the length; and how often it is
/// far off. Where it was seen well, and else. From how far off lengths were in the pictures.
const ERROR_MM: (f64, f64, f64) = (0.3, 0.005, 0.03);
const ERROR_NOT_CLEAR_MM: (f64, f64, f64) = (0.4, 0.007, 0.08);
/// The same where the end, or the head, hardly looks like one: what comes to it, and how often.
const WEAK_MM: (f64, f64) = (0.5, 0.12);
/// And where it does not look like one at all, or could as well be elsewhere.
const NONE_MM: (f64, f64) = (2.1, 0.35);
/// A length that could be moved so far is of that kind.
const SOFT_MM: f64 = 0.7;

/// How much a length may be off, and how often it is off by far more.
fn error_mm(found: &Found, scale_share: f64) -> (f64, f64) {
    let clear = found.clear();
    let (least, share, far) = if clear { ERROR_MM } else { ERROR_NOT_CLEAR_MM };
    let base = least + (share + scale_share) * found.bolt.length;
    let [head, _, end] = found.looks;
    let end = if end < 0.08 || (!clear && found.length_error_mm > SOFT_MM) {
        NONE_MM
    } else if end < 0.2 {
        WEAK_MM
    } else {
        (0.0, 0.0)
    };
    let head = if head < 0.2 {
        NONE_MM
    } else if head < 0.35 {
        WEAK_MM
    } else {
        (0.0, 0.0)
    };
    let error = libm::hypot(base, libm::hypot(end.0, head.0));
    (error, far.max(end.1).max(head.1))
}

/// What is read is shorter than it is by this much, in the mean of what the rules were fitted to.
const READ_SHORT_MM: f64 = 0.25;

fn measured(found: &Found, kinds: &ByKind, scale_share: f64) -> Measured {
    let alone = alike::alone(found);
    let mut readings = [[(f64::MAX, 0.0); Head::ALL.len()]; SIZES.len()];
    let of_size = readings.iter_mut().zip(kinds.iter().zip(&alone));
    for ((readings, (kinds, alone)), bolts) in of_size.zip(&found.by_kind) {
        let of_head = readings.iter_mut().zip(kinds.iter().zip(alone));
        for ((reading, (kind, alone)), (_, bolt)) in of_head.zip(bolts) {
            // Half by itself, half by what lies around it.
            *reading = (-0.5 * (kind + alone), bolt.length + READ_SHORT_MM);
        }
    }
    let least = readings
        .iter()
        .flatten()
        .map(|r| r.0)
        .fold(f64::MAX, f64::min);
    for reading in readings.iter_mut().flatten() {
        reading.0 -= least;
    }
    let (error_mm, far_off) = error_mm(found, scale_share);
    Measured {
        middle_mm: found.bolt.middle(),
        readings,
        error_mm,
        far_off,
        clear: found.clear(),
        bolt_chance: found.bolt_chance(),
    }
}

fn reported(
    camera: &Camera,
    field: &Field,
    (bolts, kinds): (&[Found], &[ByKind]),
    rest: &Rest,
    troubles: Vec<Trouble>,
    scale_share: f64,
) -> Seen {
    let measured: Vec<Measured> = bolts
        .iter()
        .zip(kinds)
        .map(|(bolt, kinds)| measured(bolt, kinds, scale_share))
        .collect();
    let (_, decided) = count(&[], &measured, &[]);
    let mut pieces: Vec<Piece> = bolts
        .iter()
        .zip(measured.iter().zip(&decided))
        .map(|(found, (m, d))| {
            let bolt = &found.bolt;
            let [x_mm, y_mm] = bolt.middle();
            let shown = found.outline(field.eye);
            Piece {
                kind: Kind::Bolt,
                thread: Some(SIZES[bolt.size].name),
                length_mm: Some(bolt.length + READ_SHORT_MM),
                head_mm: Some(SIZES[bolt.size].head_width(bolt.head)),
                x_mm,
                y_mm,
                yaw_deg: Some(bolt.yaw.to_degrees()),
                error_mm: m.error_mm,
                sure: d.sure,
                outline_mm: shown.head.into_iter().chain([shown.shank]).collect(),
            }
        })
        .collect();
    pieces.extend(rest.things.iter().map(|thing| Piece {
        kind: thing.kind,
        thread: thing.size.map(|i| SIZES[i].name),
        length_mm: None,
        head_mm: Some(thing.sides_mm[0]),
        x_mm: thing.middle_mm[0],
        y_mm: thing.middle_mm[1],
        yaw_deg: matches!(thing.kind, Kind::SpringClip | Kind::Other).then_some(thing.yaw_deg),
        error_mm: 1.0,
        sure: thing.sure,
        outline_mm: vec![thing.outline_mm.clone()],
    }));
    Seen {
        paper: Some(camera.paper),
        pieces,
        bolts: measured,
        doubtful: rest.doubtful.clone(),
        troubles,
        camera_mm: Some(camera.place_mm()),
        camera: Some(camera.clone()),
    }
}

/// The length that bolts are sold in nearest to one that was measured.
#[must_use]
pub fn sold_mm(length_mm: f64) -> f64 {
    let away = |l: &f64| (l - length_mm).abs();
    SOLD_MM
        .into_iter()
        .min_by(|a, b| away(a).total_cmp(&away(b)))
        .unwrap_or(length_mm)
}

/// Judges what was seen against what is expected. Only what is sure is called complete.
#[must_use]
pub fn judge(seen: &Seen, groups: &[Group]) -> Judged {
    let (counted, decided) = count(groups, &seen.bolts, &seen.doubtful);
    let mut because: Vec<String> = Vec::new();
    let mut say = |text: String| {
        if !because.contains(&text) {
            because.push(text);
        }
    };
    let stopped = seen.troubles.iter().any(|t| t.what.stops());
    let agrees = counted.iter().all(Counted::agrees);
    let unsure: usize = counted.iter().map(|c| c.unsure.len()).sum();
    let doubt: f64 = counted.iter().map(|c| c.doubt).sum();
    let most_of_one = if agrees {
        MOST_DOUBT_OF_ONE_COMPLETE
    } else {
        MOST_DOUBT_OF_ONE
    };
    let one = decided.iter().map(|d| d.doubt).fold(0.0, f64::max);
    // What lies there and is not listed is seen all the same; what is missing may be hidden.
    let lacks = counted.iter().any(|c| !c.missing.is_empty());
    let hides: Vec<What> = seen
        .troubles
        .iter()
        .map(|t| t.what)
        .filter(|what| !what.stops())
        .collect();
    for trouble in seen.troubles.iter().filter(|t| t.what.stops()) {
        say(trouble.what.say());
    }
    let verdict = if stopped {
        Verdict::CantTell
    } else if groups.is_empty() {
        say("nothing was listed to count against: what lies there is measured".to_owned());
        Verdict::CantTell
    } else if doubt > MOST_DOUBT || one > most_of_one {
        hides
            .iter()
            .filter(|&&what| what != What::Unclear)
            .for_each(|what| say(what.say()));
        if unsure > 0 {
            say(unsure_bolts(unsure));
        } else {
            say(What::Unclear.say());
        }
        Verdict::CantTell
    } else if agrees {
        Verdict::Complete
    } else if lacks && hides.iter().any(|&what| what != What::Unclear) {
        hides.iter().for_each(|what| say(what.say()));
        Verdict::CantTell
    } else {
        Verdict::NotComplete
    };
    for line in counted.iter().flat_map(differences) {
        say(line);
    }
    if verdict == Verdict::Complete {
        say("every bolt on the list lies there, in its length, and no other".to_owned());
    }
    Judged {
        groups: counted,
        decided,
        verdict,
        because,
    }
}

fn unsure_bolts(n: usize) -> String {
    if n == 1 {
        "one bolt could be of another size: look at it".to_owned()
    } else {
        format!("{n} bolts could be of another size: look at them")
    }
}

/// What a group lacks and what it has too much, in words.
fn differences(group: &Counted) -> Vec<String> {
    let size = |l: &crate::count::Listed| format!("{}x{}", l.thread, l.length_mm);
    let name = &group.name;
    let missing = group
        .missing
        .iter()
        .map(|l| format!("{name}: one {} is missing", size(l)));
    let extra = group
        .extra
        .iter()
        .map(|l| format!("{name}: one {} too many", size(l)));
    let wrong = group.wrong.iter().map(|(listed, found)| {
        format!(
            "{name}: a {} lies there for a {}",
            size(found),
            size(listed)
        )
    });
    missing.chain(extra).chain(wrong).collect()
}
