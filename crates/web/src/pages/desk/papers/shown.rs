//! What a paper says, on the screen.

use drawing::svg;
use maud::{Markup, PreEscaped, html};
use papers::engine::read::{CellTold, Line, Told};

/// One part of a paper.
pub fn part(told: &Told) -> Markup {
    match told {
        Told::Heading(1, pieces) => html! {
            h1 class="spread" {
                @for (nth, piece) in pieces.iter().enumerate() {
                    span class=(if nth + 1 == pieces.len() { "number" } else { "" }) { (text(piece)) }
                }
            }
        },
        Told::Heading(_, pieces) => html! { h2 { @for piece in pieces { (text(piece)) } } },
        Told::Paragraph(lines) => html! { p class="gap" { (broken(lines)) } },
        Told::Choices(lines) => html! {
            p class="gap boxes" { @for line in lines { span { "\u{2610} " (text(line)) } } }
        },
        Told::Blanks(lines) => html! {
            p class="gap" { @for line in lines { (text(line)) " " span class="blank" {} " " } }
        },
        Told::Signed(lines) => html! {
            div class="signature" { @for line in lines { span { (text(line)) } } }
        },
        Told::Table(rows) => table(rows),
        Told::Drawing(alt, drawing) => html! {
            div class="gap drawn" role="img" aria-label=(alt) { (PreEscaped(svg(drawing))) }
        },
        Told::Photo(alt, photo) => html! {
            p class="gap" { img class="printed" src=(format!("/file/{}", photo.file)) alt=(alt); }
        },
        Told::Part(parts) => html! { section { @for one in parts { (part(one)) } } },
    }
}

fn table(rows: &[Vec<CellTold>]) -> Markup {
    // Rows that name what stands beside them are facts or sums; others are lists with heads.
    let by_rows = rows.iter().flatten().any(|cell| cell.is_row_head);
    let sums = rows.iter().flatten().any(|cell| cell.is_number);
    let class = match (by_rows, sums) {
        (true, true) => "sums",
        (true, false) => "facts",
        _ => "listed",
    };
    let is_head = |row: &&Vec<CellTold>| row.iter().any(|cell| cell.is_column_head);
    let body = || rows.iter().filter(|row| !is_head(row));
    let numbers: Vec<bool> = body()
        .next()
        .map(|row| row.iter().map(|cell| cell.is_number).collect())
        .unwrap_or_default();
    html! {
        table class=(class) {
            @for head in rows.iter().filter(is_head) {
                thead { tr {
                    @for (nth, cell) in head.iter().enumerate() {
                        th scope="col" class=[numbers.get(nth).copied().unwrap_or(false).then_some("number")] { (broken(&cell.lines)) }
                    }
                } }
            }
            tbody { @for row in body() { (table_row(row)) } }
        }
    }
}

fn table_row(row: &[CellTold]) -> Markup {
    let words = || row.iter().flat_map(|cell| &cell.lines).flatten();
    let all = row.iter().any(|cell| cell.is_row_head) && words().all(|words| words.bold);
    html! {
        tr class=[all.then_some("strong all")] {
            @for cell in row {
                @if cell.is_row_head { th scope="row" { (broken(&cell.lines)) } }
                @else if cell.is_tick { td { "\u{2610}" } }
                @else { td class=[cell.is_number.then_some("number")] { (broken(&cell.lines)) } }
            }
        }
    }
}

/// Lines, each on its own.
fn broken(lines: &[Line]) -> Markup {
    html! {
        @for (nth, line) in lines.iter().enumerate() {
            @if nth > 0 { br; }
            (text(line))
        }
    }
}

fn text(line: &Line) -> Markup {
    html! {
        @for words in line {
            @match (words.bold, words.soft) {
                (true, _) => strong { (words.text) },
                (false, true) => span class="soft" { (words.text) },
                (false, false) => (words.text),
            }
        }
    }
}
