//! One snag, and how it is or was put right.

use super::noted::{PhotoView, VoiceView, photo, voice};
use super::story::time;
use crate::mending::{CALCULATOR, Fields, Told};
use crate::phrases::order as words;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use fastener::designation::{Kind as Written, read};
use fastener::holds::Holds;
use fastener::purpose::often_met_as;
use record::form::Form;
use record::v1::codes::{ResolvedForm, SitsForm, SnagIsForm};
use repair::{CommandId, Fact, File, Filed, Item, Order, Position, Rules, SnagId, System};

/// One snag from its find to its end.
#[derive(Debug, Clone, PartialEq)]
pub struct MendingView {
    /// Its name in the record.
    pub snag: String,
    /// In one line.
    pub text: String,
    /// What it is.
    pub what: SnagIsForm,
    /// How what is left sits.
    pub sits: Option<SitsForm>,
    /// What was said of it.
    pub words: Option<String>,
    /// The item.
    pub item: Option<String>,
    /// The positions.
    pub at: Vec<Position>,
    /// Who found it, and when.
    pub found: String,
    /// Photos of it.
    pub photos: Vec<PhotoView>,
    /// What was said of it.
    pub voice: Option<VoiceView>,
    /// What is known of the hole from the item, field by field.
    pub known: Fields,
    /// Where the torque that is known comes from.
    pub torque_from: Option<String>,
    /// The way that was taken last.
    pub choice: Option<ChoiceView>,
    /// How it ended, by whom and when.
    pub resolved: Option<(ResolvedForm, String)>,
}

/// A way that was taken.
#[derive(Debug, Clone, PartialEq)]
pub struct ChoiceView {
    /// Its name in the record.
    pub id: String,
    /// Who took it, and when.
    pub taken: String,
    /// What was kept; nothing where this program cannot read it.
    pub told: Option<Told>,
    /// The same as it stands in the event, for a program that cannot read it.
    pub outputs: String,
    /// Whether each of its steps is done.
    pub done: Vec<bool>,
    /// The commands that came with it and what they did, to take it back.
    pub commands: Vec<String>,
}

/// One snag of an order.
///
/// # Errors
/// [`Trouble`], if there is none of that name, or the record cannot be read.
pub fn mending(snap: &Snapshot<'_>, number: u64, snag: &str) -> Result<MendingView, Trouble> {
    let world = snap.world();
    let nowhere = || Trouble::not_found(words::no_snag());
    let id = world.order_numbered(number)?.ok_or_else(nowhere)?;
    let order = &*world.order(&id)?;
    let names = Names::of(snap, world, order);
    let rules = snap.rules();
    let snag = SnagId::new(snag);
    let found = order
        .beside_moves()
        .find_map(|(_, filed)| match &filed.fact {
            Fact::SnagFound {
                snag: id,
                item,
                at,
                what,
                sits,
                words,
                photos,
                ..
            } if *id == snag => Some((filed, item, at, *what, *sits, *words, photos)),
            _ => None,
        });
    let (filed, item, at, what, sits, words, photos) = found.ok_or_else(nowhere)?;
    let known_item = item
        .as_ref()
        .and_then(|item| names.account().items.get(names.account().moves.name(item)));
    let label = item.as_ref().map_or_else(
        || names.tongue().the_vehicle.to_owned(),
        |item| names.label(item),
    );
    let place = if at.is_empty() {
        String::new()
    } else {
        format!(" {}", say::positions(at))
    };
    let torque = known_item.and_then(torque_of);
    Ok(MendingView {
        text: format!("{label}{place}: {}", (names.tongue().snag)(what)),
        what: SnagIsForm::of(&what),
        sits: sits.as_ref().map(SitsForm::of),
        words: snap.texts().text_of(words),
        item: item.as_ref().map(|item| item.as_str().to_owned()),
        at: at.clone(),
        photos: photos_of(&names, order, &snag, photos),
        voice: voice(&names, &rules, filed),
        found: by(&names, &rules, filed),
        known: known(known_item, at, torque.as_deref()),
        torque_from: torque.and(known_item).and_then(|item| {
            snap.texts()
                .text_of(item.pattern.as_ref().and_then(|pattern| pattern.source))
        }),
        choice: choice(&names, order, &rules, &snag),
        resolved: resolved(&names, order, &rules, &snag),
        snag: snag.as_str().to_owned(),
    })
}

/// Photos taken with a snag, and those added to it.
fn photos_of(names: &Names<'_>, order: &Order, snag: &SnagId, first: &[File]) -> Vec<PhotoView> {
    let first = first.iter().map(|file| photo(file, ""));
    let added = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Attached {
                snag: Some(of),
                file,
                words,
                ..
            } if of == snag => {
                let text = words.map(|words| names.text(words)).unwrap_or_default();
                Some(photo(file, &text))
            }
            _ => None,
        });
    first.chain(added).collect()
}

fn by(names: &Names<'_>, rules: &Rules, filed: &Filed) -> String {
    format!(
        "{}, {}",
        names.person(&filed.stamp.who),
        time(rules, filed.stamp.at)
    )
}

/// What the item says of the hole. A size that is no thread is left as it was written.
fn known(item: Option<&Item>, at: &[Position], torque: Option<&str>) -> Fields {
    let mut out = Fields::new();
    let Some(item) = item else {
        return out;
    };
    let mut put = |name: &str, value: String| {
        out.insert(name.to_owned(), value);
    };
    if let Some(size) = &item.size {
        match read(size.as_str()) {
            Ok(written) => {
                match written.kind {
                    Written::Screw { thread, .. } => put("thread", thread.name().to_owned()),
                    Written::Pipe(pipe) => put("thread", pipe.name()),
                }
                if let Some(class) = written.class {
                    put("class", class.name().to_owned());
                }
                if let Some(length) = written.length_mm {
                    put("bolt-length", format!("{length} mm"));
                }
            }
            Err(_) => put("thread", size.as_str().to_owned()),
        }
    }
    let length = at.first().and_then(|first| {
        let piece = item.pieces.iter().find(|piece| piece.position == *first)?;
        piece.length.clone()
    });
    if let Some(length) = length {
        put("bolt-length", length.as_str().to_owned());
    }
    if let Some(torque) = torque {
        put("torque", torque.to_owned());
    }
    if let Some(holds) = holds(item) {
        put("joint", holds.code().to_owned());
    }
    out
}

/// What a joint holds, where its system says so. A system that hurts nobody says nothing of
/// plugs and sensors, so a size that those have stays a question.
fn holds(item: &Item) -> Option<Holds> {
    let holds = match item.system {
        System::Brakes => Holds::Brake,
        System::Steering => Holds::Steering,
        System::Wheels => Holds::Wheel,
        System::Suspension => Holds::Suspension,
        System::Fuel => Holds::Fuel,
        System::Restraints => Holds::Belt,
        System::HighVoltage => Holds::HighVoltage,
        System::Exhaust => Holds::Exhaust,
        // Shafts, seats and tow bars may be among these.
        System::Transmission | System::Body | System::Unknown => return None,
        _ => {
            let size = item.size.as_ref()?;
            let Written::Screw { thread, .. } = read(size.as_str()).ok()?.kind else {
                return None;
            };
            return often_met_as(&thread).is_empty().then_some(Holds::Other);
        }
    };
    Some(holds)
}

/// The torque of a group's last pass; nothing where that is an angle, for then the torque
/// before it says little of the clamp.
#[must_use]
pub(crate) fn torque_of(item: &Item) -> Option<String> {
    let last = item.pattern.as_ref()?.passes.last()?;
    measure::read(last.as_str(), measure::Dimension::Torque).ok()?;
    Some(last.as_str().to_owned())
}

fn choice(names: &Names<'_>, order: &Order, rules: &Rules, wanted: &SnagId) -> Option<ChoiceView> {
    let (filed, id, version, outputs) = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Calculated {
                id,
                snag: Some(snag),
                calculator,
                version,
                outputs,
                ..
            } if snag == wanted && calculator.as_str() == CALCULATOR.0 => {
                Some(((filed.stamp.at, command), (filed, id, *version, outputs)))
            }
            _ => None,
        })
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|(_, choice)| choice)?;
    let told: Option<Told> = (version == CALCULATOR.1)
        .then(|| serde_json::from_str(outputs).ok())
        .flatten();
    let own = |nth: usize| format!("{id}-{nth}");
    let done = |nth: usize| {
        order.beside_moves().any(|(_, filed)| match &filed.fact {
            Fact::WorkDone { work, .. } => work
                .own
                .as_ref()
                .is_some_and(|own_id| own_id.as_str() == own(nth)),
            _ => false,
        })
    };
    let steps = told.as_ref().map_or(0, |told| told.way.steps.len());
    Some(ChoiceView {
        taken: by(names, rules, filed),
        done: (0..steps).map(done).collect(),
        commands: commands(order, id.as_str()),
        outputs: outputs.clone(),
        told: told.map(Told::in_spoken_words),
        id: id.as_str().to_owned(),
    })
}

/// Every command whose fact names this choice, or something made with it.
fn commands(order: &Order, choice: &str) -> Vec<String> {
    let made_with = |name: &str| {
        name.strip_prefix(choice)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with('-'))
    };
    let names_it = |fact: &Fact| match fact {
        Fact::Calculated { id, .. } => made_with(id.as_str()),
        Fact::WorkDue { id, .. } => made_with(id.as_str()),
        Fact::WorkDone { work, .. } => work.own.as_ref().is_some_and(|own| made_with(own.as_str())),
        Fact::Declared { item } => made_with(item.id.as_str()),
        Fact::Moved { moves, .. } => {
            !moves.is_empty() && moves.iter().all(|one| made_with(one.item.as_str()))
        }
        Fact::PartNeeded { part, .. } | Fact::PartStepped { part, .. } => made_with(part.as_str()),
        _ => false,
    };
    let mut out: Vec<String> = order
        .facts()
        .filter(|(_, filed)| names_it(&filed.fact))
        .map(|(command, _)| CommandId::as_str(command).to_owned())
        .collect();
    out.dedup();
    out
}

fn resolved(
    names: &Names<'_>,
    order: &Order,
    rules: &Rules,
    wanted: &SnagId,
) -> Option<(ResolvedForm, String)> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::SnagResolved { snag, how, .. } if snag == wanted => {
                Some(((filed.stamp.at, command), (*how, filed)))
            }
            _ => None,
        })
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|(_, (how, filed))| (ResolvedForm::of(&how), by(names, rules, filed)))
}
