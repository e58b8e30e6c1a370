//! The next stage of a plan, as a whole screen at the vehicle: one tap when it is as
//! shown, exceptions unticked, torque pass by pass.

use super::choices::place_of;
use super::joint::joint;
use super::off::cautions;
use super::stage_rows::{Row, rows, tightenings};
use super::stage_snag;
use crate::State;
use crate::pages::bench::of_order::{as_found, say_how_it_lies};
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::{teaching, vehicle as say};
use crate::tap::{Look, button, file, input, link, new, order_fact, text, thumbnails, voice_field};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::plan::Way;
use shop::planning::{
    Asked, OrderMap, Shown as Plan, StageShown, in_minutes, map_of_order, on_map_of, torque_source,
};
use shop::repair::{AimIs, Kind, State as Stand};
use shop::sums;
use shop::view::{ItemView, OrderView, PhotoView};
use std::collections::BTreeSet;

/// How the page is asked for.
#[derive(Debug, Default, Deserialize)]
pub struct Turn {
    /// Whether what could be tightened now is left for later.
    later: Option<String>,
    /// Whether something went wrong here, and it is asked with which group.
    snag: Option<String>,
}

pub async fn stage(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(turn): Query<Turn>,
) -> Response {
    show(state, headers, move |visit| {
        Ok(next(visit, &number, &turn)?.shown)
    })
    .await
}

/// The next stage of an order, and what its large press says.
pub struct Next {
    /// The page.
    pub shown: Shown,
    /// Which stage it is, told from others; nothing where there is none.
    pub name: String,
    /// The commands of "as shown", as templates; none where nothing more is done by it. What is
    /// not ticked by itself is null in its place.
    pub as_shown: Vec<Value>,
}

/// What a stage's page holds.
struct Body {
    markup: Markup,
    name: String,
    as_shown: Vec<Value>,
}

impl From<Markup> for Body {
    fn from(markup: Markup) -> Self {
        Self {
            markup,
            name: String::new(),
            as_shown: Vec::new(),
        }
    }
}

/// The next stage, as the order stands in what is looked at.
pub fn next(visit: &Visit<'_>, number: &str, turn: &Turn) -> Result<Next, shop::Trouble> {
    let order = order_of(visit, number)?;
    let body = match map_of_order(visit.snap, order.number)? {
        Some((map, version)) => {
            let on = on_map_of(visit.snap, order.number, &map, Some(version), None)?;
            next_of(visit, &order, &on, turn)?
        }
        None => no_plan(&order).into(),
    };
    Ok(Next {
        shown: Shown::of(&order, say::next_stage(), body.markup),
        name: body.name,
        as_shown: body.as_shown,
    })
}

/// The way to how such a job was done before.
fn done_before(order: &OrderView) -> Markup {
    html! { a class="row" href=(format!("/o/{}/before", order.number)) { span class="what" { (teaching::done_before()) } } }
}

fn no_plan(order: &OrderView) -> Markup {
    html! {
        h1 { (say::no_plan_yet()) }
        p class="gap" { (say::pick_what_to_get_at()) }
        (done_before(order))
        div class="presses two low" {
            (link(Look::Confirm, say::make_a_plan(), "", &format!("/o/{}/plan", order.number)))
            (link(Look::Plain, say::off(), "", &format!("/o/{}/off", order.number)))
        }
    }
}

fn next_of(
    visit: &Visit<'_>,
    order: &OrderView,
    on: &OrderMap,
    turn: &Turn,
) -> Result<Body, shop::Trouble> {
    if !on.asks() {
        return Ok(no_plan(order).into());
    }
    let found = match on.plan(visit.snap) {
        Ok(found) => found,
        Err(trouble) => {
            let no_way = html! {
                h1 { (say::no_way_by_this_plan()) }
                p class="alarm" { (shop::say::capital(&trouble.what)) }
                p { (shop::say::capital(&trouble.mend)) }
                div class="presses low" { (link(Look::Confirm, say::change_the_plan(), "", &format!("/o/{}/plan", order.number))) }
            };
            return Ok(no_way.into());
        }
    };
    let unforeseen = on.unforeseen(visit.snap);
    let loose = tightenings(order, on);
    // Work that comes to be owed is nothing to do: a stage of it alone could not be confirmed.
    let to_do = |stage: &&StageShown| stage.rows.iter().any(|row| row.kind != Kind::Work);
    let off: Vec<&StageShown> = found.off.iter().filter(to_do).collect();
    let nothing_else = found
        .back
        .first()
        .is_some_and(|stage| found.off.is_empty() && rows(order, on, stage).is_empty());
    let body = if !loose.is_empty() && (turn.later.is_none() || nothing_else) {
        match turn.snag {
            Some(_) => stage_snag::which(order, &stage_snag::of_loose(&loose)).into(),
            None => tighten(order, &loose),
        }
    } else if let Some(stage) = off.first() {
        shown(visit, order, on, stage, off.len(), Way::Out, turn)?
    } else if on.asked.aim == AimIs::Reach {
        there(order, on, &found)
    } else if let Some(stage) = found.back.first() {
        shown(visit, order, on, stage, found.back.len(), Way::Back, turn)?
    } else {
        home(order, on, &found).into()
    };
    let markup = html! {
        (body.markup)
        @if !unforeseen.is_empty() {
            details id="unforeseen" {
                summary class="row" { span class="what wait" { (say::things_not_as_planned(unforeseen.len())) } }
                @for line in &unforeseen { p class="gap" { (line) } }
                p class="soft gap" { (say::stages_follow_what_is_so()) }
            }
        }
        (done_before(order))
    };
    Ok(Body { markup, ..body })
}

/// One stage: what it is about in one large fact, its rows, one tap.
fn shown(
    visit: &Visit<'_>,
    order: &OrderView,
    on: &OrderMap,
    stage: &StageShown,
    left: usize,
    way: Way,
    turn: &Turn,
) -> Result<Body, shop::Trouble> {
    let runs = visit.snap.caller().works_on(&order.assigned);
    let rows = rows(order, on, stage);
    let may_snag = stage_snag::of_rows(&rows);
    if turn.snag.is_some() {
        return Ok(stage_snag::which(order, &may_snag).into());
    }
    let closing = Row::closing(&rows);
    let known = closing.and_then(|last| on.map.items.get(&last.shown.item));
    let source = known.and_then(|known| torque_source(&on.map, known));
    let pieces: usize = rows.iter().map(Row::pieces).sum();
    let tools = tools(&rows);
    let (fact, beside) = match closing {
        Some(last) => torque_headline(stage, last),
        None => headline(stage, &tools, way, pieces),
    };
    let lines: Vec<_> = rows.iter().filter_map(|row| row.as_line(on)).collect();
    let confirm = match (closing.map(Row::after_a_pass), way) {
        (Some(Stand::Tight), _) => say::on_and_tight(),
        (Some(_), _) => say::on_pass_1_done(),
        (None, Way::Out) => say::out_as_shown(),
        (None, Way::Back) => say::on_as_shown(),
    };
    let small = match closing.filter(|_| has_other_torques(&rows)) {
        Some(first) => say::the_others_after_it(&first.shown.label),
        None => say::pieces(pieces),
    };
    let commands = Row::commands(&rows, order, closing);
    let name = name_of(order, &rows);
    let belts = belts(visit, order, &rows, way)?;
    // A look is its own tick; what stands alone is said by the press itself.
    let alone = rows.iter().filter(|row| !row.only_told()).count() == 1;
    let ticked = |row: &Row<'_>| alone || !row.is_look();
    let markup = html! {
        p class="soft spread" { span { (super::plan::aim_words(&on.asked)) } span class="number" { (say::stages_left(left)) } }
        @for caution in cautions(&lines) { p class="caution" { (caution) } }
        @if way == Way::Out { (super::immobile::parts_first(order, &lines)) }
        div class="headline" { h1 class="fact bare" { (fact) } span class="what beside" { (beside) } }
        @if tools.len() > 1 || closing.is_some() { p class="soft" { (tools.join(", ")) } }
        @if let Some(last) = closing { (differences(on.differs.get(on.id(&last.shown.item)).map_or(&[], Vec::as_slice))) }
        @if let Some(pattern) = known.and_then(|known| known.pattern.as_deref()) { p class="strong gap" { (shop::say::capital(pattern)) } }
        @if let Some(source) = source { p class="soft" { (say::torque_by()) (source) } }
        @if let Some((item, last)) = closing.and_then(|last| Some((order.items.iter().find(|item| item.item == last.id())?, last))) {
            (joint(item, known.and_then(|known| known.pattern.as_deref()), &last.shown.at))
        }
        // A clock runs on it while it is shown to who works on it: see the page's script.
        form data-name=(name) data-stage=[runs.then_some(&name)] data-stream=(format!("order:{}", order.order)) data-minutes=(stage.minutes) {
            div data-one-of=(say::tick_what_is_done()) {
                @for (nth, row) in rows.iter().enumerate().filter(|(_, row)| !row.only_told()) {
                    (one_row(nth, row, closing.is_some_and(|closing| closing.id() == row.id()), ticked(row)))
                }
            }
            @for row in rows.iter().filter(|row| row.only_told()) { p class="soft gap" { (say::still_to_do_afterwards()) (row.shown.label) } }
            (belts)
            @if way == Way::Out && rows.iter().any(Row::can_lie) { (input("container", say::stored_in(), "", say::tray_a())) }
            (some_of(&rows))
            a class="row" href=(format!("/o/{}/off", order.number)) { span class="what strong" { (say::something_else_came_off()) } }
            @if closing.is_some() { (stage_snag::row(order, &may_snag)) }
            div class="presses two low" {
                (button(Look::Confirm, confirm, &small, &commands, None))
                @if closing.is_some() { (button(Look::Plain, say::not_tight_yet(), "", &Row::commands(&rows, order, None), None)) }
                @else { (stage_snag::press(order, &may_snag)) }
            }
        }
        (photos(order, &rows))
        @if runs { (called_away(order, &name, stage)) }
    };
    let left_out: Vec<String> = rows
        .iter()
        .enumerate()
        .filter(|(_, row)| !ticked(row))
        .map(|(nth, _)| format!("row-{nth}"))
        .collect();
    let is_left_out = |command: &Value| left_out.iter().any(|row| command["$when"] == **row);
    let as_shown = commands
        .into_iter()
        .map(|command| match is_left_out(&command) {
            true => Value::Null,
            false => command,
        })
        .collect();
    Ok(Body {
        markup,
        name,
        as_shown,
    })
}

/// Photos of what moves here: how it lay, before it came off.
fn photos(order: &OrderView, rows: &[Row<'_>]) -> Markup {
    let moves = |item: &&ItemView| rows.iter().any(|row| row.id() == item.item);
    let photos: Vec<PhotoView> = order
        .items
        .iter()
        .filter(moves)
        .flat_map(|item| item.photos.iter().cloned())
        .collect();
    html! {
        @if !photos.is_empty() {
            details id="photos" {
                summary class="row" { span class="what strong" { (say::photos_of_these(photos.len())) } }
                (thumbnails(&photos))
            }
        }
    }
}

/// Somebody has to leave the stage and says why: it stands on the order for whoever goes on. The
/// clock of the stage stops with it.
fn called_away(order: &OrderView, name: &str, stage: &StageShown) -> Markup {
    let paused = order_fact(
        &order.order,
        json!({ "timed": {
            "stage": new("stage"), "clock": "paused", "book_minutes": stage.minutes.to_string(),
            "words": text("why"), "voice": file("voice"),
        } }),
    );
    html! {
        details id="away" {
            summary class="row" { span class="what strong" { (say::called_away_from_it()) } }
            form class="narrow" data-stage=(name) {
                (input("why", say::what_the_next_should_know(), say::such_as_waits_for_the_drill(), ""))
                (voice_field("voice"))
                div class="presses" { (button(Look::Plain, say::stop_here(), "", &[paused], Some(&format!("/o/{}", order.number)))) }
            }
        }
    }
}

/// Before a belt comes off, the way to say how it lies; when it goes back, how it lay.
fn belts(
    visit: &Visit<'_>,
    order: &OrderView,
    rows: &[Row<'_>],
    way: Way,
) -> Result<Markup, shop::Trouble> {
    let moved: Vec<&Row<'_>> = rows
        .iter()
        .filter(|row| row.shown.kind == Kind::Belt && !row.only_told())
        .collect();
    if moved.is_empty() {
        return Ok(html! {});
    }
    let found = sums::belts_as_found(visit.snap, order.number)?;
    let kept = |row: &Row<'_>| found.iter().find(|one| one.item == row.id());
    Ok(html! {
        @for row in moved {
            @match (way, kept(row)) {
                (Way::Back, Some(kept)) => { (as_found(kept)) },
                (Way::Out, None) => { (say_how_it_lies(order, row.id(), true, false)) },
                _ => {},
            }
        }
    })
}

/// What tells one stage of an order from another: what moves in it, and where to.
fn name_of(order: &OrderView, rows: &[Row<'_>]) -> String {
    let row = |row: &Row<'_>| format!("{} {} {:?}", row.id(), row.shown.done, row.shown.at);
    let rows: Vec<String> = rows.iter().map(row).collect();
    format!("{}: {}", order.number, rows.join("; "))
}

/// What one holds for what moves here, each tool once.
fn tools<'a>(rows: &[Row<'a>]) -> Vec<&'a str> {
    let moved = rows.iter().filter(|row| !row.only_told());
    let mut tools: Vec<&str> = Vec::new();
    for tool in moved.flat_map(|row| &row.shown.tools) {
        if !tools.contains(&tool.as_str()) {
            tools.push(tool);
        }
    }
    tools
}

/// The one large fact of a stage: the size of its only tool, else where one stands.
fn headline(stage: &StageShown, tools: &[&str], way: Way, pieces: usize) -> (String, String) {
    let moved = match way {
        Way::Out => say::pieces_out(pieces),
        Way::Back => say::pieces_back(pieces),
    };
    let minutes = format!("{} min", in_minutes(stage.minutes));
    let place = place_of(stage);
    if let [tool] = tools
        && tool.starts_with(|c: char| c.is_ascii_digit())
    {
        let mut words = tool.splitn(3, ' ');
        let size: Vec<&str> = words.by_ref().take(2).collect();
        let rest = words.next().unwrap_or_default();
        return (
            size.join("\u{202f}"),
            format!("{rest} · {place} · {moved} · {minutes}"),
        );
    }
    (place.to_owned(), format!("{moved} · {minutes}"))
}

/// Whether more than one group has a torque here.
fn has_other_torques(rows: &[Row<'_>]) -> bool {
    rows.iter()
        .filter(|row| !row.shown.torque.is_empty())
        .count()
        > 1
}

/// A stage that ends with a torque is about that torque.
fn torque_headline(stage: &StageShown, last: &Row<'_>) -> (String, String) {
    let passes = &last.shown.torque;
    let torque = passes
        .first()
        .map_or_else(String::new, |pass| pass.replace(' ', "\u{202f}"));
    let nth = match passes.len() {
        0 | 1 => String::new(),
        total => say::pass_of(1, total),
    };
    let place = place_of(stage);
    let all = match last.pieces() {
        1 => last.shown.label.clone(),
        pieces => say::group_all(&last.shown.label, pieces),
    };
    (
        torque,
        format!("{nth}{all} · {place} · {} min", in_minutes(stage.minutes)),
    )
}

fn one_row(nth: usize, row: &Row<'_>, closing: bool, ticked: bool) -> Markup {
    let name = format!("row-{nth}");
    let words = if closing {
        row.words_after_a_pass()
    } else {
        row.words()
    };
    html! {
        label class="row" {
            input type="checkbox" name=(name) value="yes" checked[ticked];
            span class="what" {
                span class="line" { span class="strong" { (row.shown.label) @if let Some(size) = &row.shown.size { " " (size) } } " " (words) }
                @if let Some(piece) = row.new_piece() { span class="line" { (say::new_piece()) (piece) } }
                @if !row.shown.tools.is_empty() { span class="soft line" { (row.shown.tools.join(", ")) } }
            }
            span class="beside number" { @if row.pieces() > 1 { (row.pieces()) } }
        }
        @if row.shown.kind == Kind::Fluid {
            @let hint = row.fluid_hint();
            @match row.shown.way {
                Way::Out => (input(&format!("amount-{nth}"), &say::came_out_of(&row.shown.label), &hint, "")),
                Way::Back => (input(&format!("amount-{nth}"), &say::poured_in_of(&row.shown.label), &hint, "")),
            }
        }
    }
}

/// Positions of groups, for when not all of a group moved.
fn some_of(rows: &[Row<'_>]) -> Markup {
    let groups: Vec<(usize, &Row<'_>)> = rows
        .iter()
        .enumerate()
        .filter(|(_, row)| row.shown.at.len() > 1 && !row.only_told())
        .collect();
    html! {
        @if !groups.is_empty() {
            details id="some" {
                summary class="row" { span class="what strong" { (say::only_some_of_a_group()) } }
                @for (nth, row) in groups {
                    fieldset {
                        legend { (row.shown.label) (say::which_of_group()) }
                        div class="chips" {
                            @for at in &row.shown.at {
                                label { input type="checkbox" name=(format!("at-{nth}-{at}")) value="yes" checked; (at) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// What differs on this vehicle by now.
fn differences(lines: &[String]) -> Markup {
    html! {
        @for line in lines { p class="alarm" { (say::vehicle_differs(line)) } }
    }
}

/// What is on and not tight, and may be tightened now: a group at a time, pass by pass.
fn tighten(order: &OrderView, loose: &[super::stage_rows::Tightening<'_>]) -> Body {
    let name = |one: &super::stage_rows::Tightening<'_>| {
        format!(
            "{}: {} pass {} {:?}",
            order.number, one.item.item, one.pass, one.at
        )
    };
    let markup = html! {
        @for (nth, one) in loose.iter().enumerate() {
            form data-name=(name(one)) {
                @if nth == 0 { p class="soft gap" { (say::tighten_this()) (one.item.label) @if let Some(size) = &one.item.size { " " (size) } } }
                @else { h2 { (one.item.label) @if let Some(size) = &one.item.size { " " (size) } } }
                div class="headline" {
                    @if nth == 0 { h1 class="fact bare" { (one.torque) } } @else { span class="fact" { (one.torque) } }
                    span class="what beside" {
                        @if one.total > 1 { (say::pass_of(one.pass, one.total)) }
                        (one.pieces())
                    }
                }
                @if let Some(pattern) = one.pattern { p class="strong gap" { (shop::say::capital(pattern)) } }
                (differences(one.differs))
                @if let Some(source) = &one.source { p class="soft" { (say::by()) (source) } }
                (joint(one.item, one.pattern, &one.at))
                div class="presses" {
                    @let look = if nth == 0 { Look::Confirm } else { Look::Plain };
                    @let label = if one.total > 1 { say::pass_done(one.pass) } else { say::tight().to_owned() };
                    (button(look, &label, &one.pieces(), &[one.command(order)], None))
                }
            }
            (super::tighten::part_way(order, one.item))
        }
        div class="presses two" {
            (link(Look::Plain, say::later_go_on(), "", &format!("/o/{}/stage?later=yes", order.number)))
            (stage_snag::press(order, &stage_snag::of_loose(loose)))
        }
    };
    let first = loose.first();
    Body {
        markup,
        name: first.map(name).unwrap_or_default(),
        as_shown: first.map(|one| one.command(order)).into_iter().collect(),
    }
}

/// What was wanted is free: the repair itself is done now, then the way back is chosen.
fn there(order: &OrderView, on: &OrderMap, found: &Plan) -> Body {
    let back = Asked {
        aim: AimIs::Home,
        targets: BTreeSet::new(),
        without: BTreeSet::new(),
        also: BTreeSet::new(),
        ..on.asked.clone()
    };
    let targets: Vec<String> = on.asked.targets.iter().map(ToString::to_string).collect();
    let command = order_fact(&order.order, back.fact(&on.map, on.before.as_ref()));
    let name = format!("{}: the way back", order.number);
    let as_shown = vec![command];
    let markup = html! {
        h1 { (say::you_are_there()) }
        p class="beside gap" { (targets.join(", ")) }
        @for snag in &order.snags {
            a class="row" href=(format!("/o/{}/snag/{}", order.number, snag.snag)) {
                span class="mark half" {}
                span class="what strong" { (shop::say::capital(&snag.text)) }
                span class="strong" { (say::close()) }
            }
        }
        @if found.back.is_empty() && !order.snags.is_empty() {
            p class="gap" { (say::put_this_right_first()) }
        } @else {
            p class="gap" { (say::do_the_repair(found.back.len(), found.minutes_back)) }
        }
        @if !found.renewed.is_empty() { p class="gap" { (say::new_ones_go_on()) (found.renewed.join(", ")) } }
        form class="bare" data-name=(name) {
            div class="presses two low" {
                (button(Look::Confirm, say::now_the_way_back(), "", &as_shown, None))
                (link(Look::Plain, say::get_at_more(), "", &format!("/o/{}/plan", order.number)))
            }
        }
    };
    Body {
        markup,
        name,
        as_shown,
    }
}

fn home(order: &OrderView, on: &OrderMap, found: &Plan) -> Markup {
    let (title, label, to) = match on.asked.aim {
        AimIs::Roll => (
            say::nothing_in_the_way_of_rolling(),
            say::cleared_to_roll(),
            "may/roll",
        ),
        AimIs::Reach | AimIs::Home => (
            say::everything_by_the_map_is_home(),
            say::cleared_to(),
            "may",
        ),
    };
    html! {
        h1 { (title) }
        @for line in &found.stays { p class="alarm" { (line) (say::its_snag_is_not_resolved()) } }
        div class="presses two low" {
            (link(Look::Confirm, label, "", &format!("/o/{}/{to}", order.number)))
            (link(Look::Plain, say::owed(), &order.debts.len().to_string(), &format!("/o/{}/due", order.number)))
        }
    }
}
