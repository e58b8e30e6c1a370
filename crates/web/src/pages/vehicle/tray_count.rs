//! Count by photo: what came off lies on the printed sheet, one photo says what is there. An offer,
//! never a duty; the photo closes nothing, whoever looked confirms it.

use crate::State;
use crate::pages::{Shown, order_of, show, show_anybody};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, file, link, new, order_fact};
use axum::body::Bytes;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use drawing::{OnPhoto, on_photo, svg};
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::tray_count::{
    Paper, SizeOffer, TrayCount, TrayGroup, Verdict, expected, sheet, tray_count,
};
use shop::view::OrderView;

/// How wide the photo is drawn over.
const WIDE: f64 = 720.0;

/// What is known of the sheet.
#[derive(Debug, Deserialize)]
pub struct Line {
    /// What its 100 mm line measures.
    line: Option<String>,
    /// The groups that should lie there, by their items; all that are out, if none is named.
    of: Option<String>,
}

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(
            &order,
            say::count_by_photo(),
            html! {
                h1 { (say::count_by_photo()) }
                (form(&order, &[], ""))
                h2 { (say::the_sheet()) }
                p class="gap" { (say::how_the_sheet_is_used()) }
                div class="presses even" {
                    (link(Look::Plain, say::sheet_a4(), "PDF", "/tray-sheet/a4.pdf"))
                    (link(Look::Plain, say::sheet_letter(), "PDF", "/tray-sheet/letter.pdf"))
                }
            },
        ))
    })
    .await
}

/// A photo, as it was taken.
pub async fn sent(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(line): Query<Line>,
    photo: Bytes,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let typed = line.line.unwrap_or_default();
        let of: Vec<String> = line
            .of
            .iter()
            .flat_map(|of| of.split(' '))
            .filter(|item| !item.is_empty())
            .map(str::to_owned)
            .collect();
        let count = tray_count(&order, &of, &photo, millimetres(&typed)?)?;
        Ok(Shown::of(
            &order,
            say::count_by_photo(),
            answer(&order, &count, &of, &typed),
        ))
    })
    .await
}

/// The sheet to print.
pub async fn sheet_file(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(name): Path<String>,
) -> Response {
    let paper = match name.as_str() {
        "a4.pdf" => Paper::A4,
        "letter.pdf" => Paper::Letter,
        _ => {
            return show_anybody(state, headers, |_| {
                Err(Trouble::not_found(say::sheets_there_are()))
            })
            .await;
        }
    };
    let disposition = format!("inline; filename=\"tray-sheet-{name}\"");
    let heads = [
        (CONTENT_TYPE, "application/pdf".to_owned()),
        (CONTENT_DISPOSITION, disposition),
    ];
    (heads, sheet(paper)).into_response()
}

fn millimetres(typed: &str) -> Result<Option<f64>, Trouble> {
    let bare = typed.trim().trim_end_matches("mm").trim().replace(',', ".");
    if bare.is_empty() {
        return Ok(None);
    }
    bare.parse().map(Some).map_err(|_| {
        Trouble::unreadable(
            say::the_check_line(),
            say::is_no_length(format!("{typed:?}")),
            say::write_what_it_measures(),
        )
    })
}

/// The groups that are out, to be ticked: at first those of the tray that was filled last.
fn should_lie(order: &OrderView, of: &[String]) -> Markup {
    let (groups, unknown) = expected(order);
    let tray = |item: &str| {
        let found = order.items.iter().find(|one| one.item == item);
        found.and_then(|one| one.container.as_deref())
    };
    let last = groups.last().and_then(|(item, _)| tray(item));
    let ticked = |item: &str| {
        if of.is_empty() {
            last.is_none() || tray(item) == last
        } else {
            of.iter().any(|one| one == item)
        }
    };
    html! {
        @if groups.is_empty() && unknown.is_empty() { p class="soft gap" { (say::no_fasteners_are_out()) } }
        @else { p class="strong gap" { (say::what_should_lie_there()) } }
        @for (item, group) in &groups {
            label class="row" {
                input type="checkbox" name="of" value=(item) checked[ticked(item)];
                span class="what" {
                    span class="strong line" { (group.name) }
                    span class="soft line" { (group.thread) " · " (lengths(&group.lengths)) @if let Some(tray) = tray(item) { " · " (tray) } }
                }
                span class="strong number" { (group.lengths.len()) }
            }
        }
        @if !unknown.is_empty() {
            details id="unknown" {
                summary class="row" { span class="what soft" { (say::groups_not_counted(unknown.len())) } }
                @for one in &unknown { div class="row" { span class="what soft" { (one) } } }
            }
        }
    }
}

/// Lengths with how many there are of each: `6 × 25, 1 × 75`.
fn lengths(all: &[f64]) -> String {
    let mut each: Vec<(f64, usize)> = Vec::new();
    for length in all {
        match each.iter_mut().find(|(one, _)| (one - length).abs() < 0.01) {
            Some((_, count)) => *count += 1,
            None => each.push((*length, 1)),
        }
    }
    let words: Vec<String> = each
        .iter()
        .map(|(length, count)| format!("{count} × {length} mm"))
        .collect();
    words.join(", ")
}

/// The photo, and what its line measures.
fn form(order: &OrderView, of: &[String], line: &str) -> Markup {
    html! {
        form class="narrow" method="post" action=(format!("/o/{}/tray/count", order.number)) data-photo {
            label class="field" { span { (say::photo_of_the_sheet()) } input type="file" name="photo" accept="image/*" capture="environment" required; }
            (should_lie(order, of))
            details id="line" open[!line.is_empty()] {
                summary class="row" { span class="soft" { (say::line_on_the_second_page()) } }
                label class="field" { span { (say::it_measures_mm()) } span class="soft" { (say::empty_if_whole_sheet()) } input type="text" name="line" value=(line) inputmode="decimal" autocomplete="off"; }
            }
            div class="presses" { button class="press confirm" type="submit" { (say::count()) } }
        }
    }
}

fn answer(order: &OrderView, count: &TrayCount, of: &[String], line: &str) -> Markup {
    let class = match count.verdict {
        Verdict::Complete => "yes",
        Verdict::NotComplete => "no",
        Verdict::CantTell => "wait",
    };
    let pieces: Vec<OnPhoto> = count
        .pieces
        .iter()
        .map(|piece| OnPhoto {
            label: piece.label.clone(),
            sure: piece.sure,
            outlines: piece.outline_px.clone(),
        })
        .collect();
    html! {
        h1 class=(class) { (count.headline) }
        div class="columns" {
            div class="photo gap" { img alt=(say::photo_that_was_counted()) data-photo-shown; (PreEscaped(svg(&on_photo(count.size_px, &pieces, WIDE)))) }
            div {
                @for why in &count.because { p class="gap" { (shop::say::capital(why)) } }
                @for group in &count.groups { (group_row(order, group)) }
                @for offer in &count.offers { (size_offer(order, offer)) }
                (keep(order, count))
            }

        }
        h2 { (say::another_photo()) }
        (form(order, of, line))
    }
}

fn group_row(order: &OrderView, group: &TrayGroup) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}/item/{}", order.number, group.item)) {
            span class={ "mark" @if group.differs.is_empty() { " home" } } {}
            span class="what" {
                span class="strong line" { (group.name) }
                @for one in &group.differs { span class="line no" { (one) } }
            }
            span class="strong number" { (say::n_of(group.right, group.expected)) }
        }
    }
}

/// What was measured of fasteners whose size nobody told.
fn size_offer(order: &OrderView, offer: &SizeOffer) -> Markup {
    let told = order_fact(
        &order.order,
        json!({ "size-told": { "item": offer.item, "size": offer.size, "after": offer.told_by } }),
    );
    html! {
        form { div class="presses" {
            (button(Look::Plain, &say::are_of_size(shop::say::capital(&offer.name), &offer.size), &say::of_them_measured(offer.count), &[told], None))
        } }
    }
}

/// The count with its photo, kept with the order.
fn keep(order: &OrderView, count: &TrayCount) -> Markup {
    let mut fact: Value = count.fact.clone();
    fact["id"] = new("note");
    fact["item"] = Value::Null;
    fact["snag"] = Value::Null;
    let photo = json!({ "attached": { "file": file("photo"), "item": null, "snag": null,
        "words": { "$words": say::counted_by_photo(&count.headline) } } });
    let commands = [
        order_fact(&order.order, json!({ "calculated": fact })),
        order_fact(&order.order, photo),
    ];
    let (label, small) = match count.verdict {
        Verdict::Complete => (say::i_looked_it_is_so(), say::kept_with_its_photo()),
        _ => (say::keep_what_was_seen(), say::with_its_photo()),
    };
    html! {
        form data-still {
            input type="file" name="photo" accept="image/*" hidden data-photo-kept aria-hidden="true" tabindex="-1";
            div class="presses" { (button(if count.verdict == Verdict::Complete { Look::Confirm } else { Look::Plain }, label, small, &commands, Some(&format!("/o/{}/tray", order.number)))) }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_counted() {
        assert_eq!(lengths(&[25.0, 25.0, 75.0]), "2 × 25 mm, 1 × 75 mm");
        assert_eq!(lengths(&[]), "");
    }

    #[test]
    fn the_line_is_read_with_point_or_comma_and_refused_in_words() {
        assert_eq!(millimetres(" 99,5 mm").unwrap(), Some(99.5));
        assert_eq!(millimetres("").unwrap(), None);
        assert!(
            millimetres("about a hand")
                .unwrap_err()
                .what
                .contains("no length")
        );
    }
}
