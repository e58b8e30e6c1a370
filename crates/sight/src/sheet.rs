//! The sheet as a PDF, at true size, with a line to measure on a second page.

use crate::mat::{Paper, TAG_MM, TAG_MODULES, is_white};
use std::fmt::Write;

/// Millimetres to points.
const POINTS: f64 = 72.0 / 25.4;
/// Length of the line on the second page.
pub const CHECK_LINE_MM: f64 = 100.0;

/// The sheet, two pages; the same bytes each time.
///
/// ```
/// let pdf = sight::sheet::pdf(sight::Paper::A4);
/// assert!(pdf.starts_with(b"%PDF-1.4"));
/// ```
#[must_use]
pub fn pdf(paper: Paper) -> Vec<u8> {
    let [w, h] = paper.size_mm();
    let pages = [front(paper), check(paper)];
    let mut objects = vec![
        "<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>".to_owned(),
        "<< /Type /Pages /Kids [4 0 R 6 0 R] /Count 2 >>".to_owned(),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>"
            .to_owned(),
    ];
    for (i, page) in pages.iter().enumerate() {
        objects.push(format!(
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 {:.3} {:.3}] \
             /Resources << /Font << /F 3 0 R >> >> /Contents {} 0 R >>",
            w * POINTS,
            h * POINTS,
            5 + 2 * i
        ));
        objects.push(format!(
            "<< /Length {} >>\nstream\n{page}endstream",
            page.len()
        ));
    }
    let mut out = "%PDF-1.4\n".to_owned();
    let mut places = Vec::new();
    for (i, object) in objects.iter().enumerate() {
        places.push(out.len());
        add(
            &mut out,
            format_args!("{} 0 obj\n{object}\nendobj\n", i + 1),
        );
    }
    let table = out.len();
    add(
        &mut out,
        format_args!("xref\n0 {}\n0000000000 65535 f \n", objects.len() + 1),
    );
    for place in places {
        add(&mut out, format_args!("{place:010} 00000 n \n"));
    }
    add(
        &mut out,
        format_args!(
            "trailer\n<< /Size {} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n",
            objects.len() + 1
        ),
    );
    out.into_bytes()
}

fn add(out: &mut String, text: std::fmt::Arguments) {
    out.write_fmt(text)
        .expect("writing to a string does not fail");
}

/// A filled rectangle in millimetres from the top left.
fn bar(out: &mut String, height: f64, [x0, y0, x1, y1]: [f64; 4]) {
    add(
        out,
        format_args!(
            "{:.4} {:.4} {:.4} {:.4} re f\n",
            x0 * POINTS,
            (height - y1) * POINTS,
            (x1 - x0) * POINTS,
            (y1 - y0) * POINTS
        ),
    );
}

fn front(paper: Paper) -> String {
    let [_, h] = paper.size_mm();
    let module = TAG_MM / TAG_MODULES as f64;
    let mut out = String::new();
    for tag in 0..4 {
        let [x, y] = paper.tag_corner_mm(tag);
        add(&mut out, format_args!("0 g\n"));
        bar(&mut out, h, [x, y, x + TAG_MM, y + TAG_MM]);
        add(&mut out, format_args!("1 g\n"));
        for row in 1..TAG_MODULES - 1 {
            for column in 1..TAG_MODULES - 1 {
                if !is_white(tag, row, column) {
                    continue;
                }
                // A hair over into the next white one, so that no dark line shows between.
                let over = |white: bool| if white { 0.02 } else { 0.0 };
                let left = x + column as f64 * module;
                let top = y + row as f64 * module;
                let right = left + module + over(is_white(tag, row, column + 1));
                let bottom = top + module + over(is_white(tag, row + 1, column));
                bar(&mut out, h, [left, top, right, bottom]);
            }
        }
    }
    add(&mut out, format_args!("0.502 g\n"));
    for tick in paper.ticks_mm() {
        bar(&mut out, h, tick);
    }
    out
}

fn check(paper: Paper) -> String {
    let [w, h] = paper.size_mm();
    let (from, to) = ((w - CHECK_LINE_MM) / 2.0, f64::midpoint(w, CHECK_LINE_MM));
    let y = h / 2.0;
    let mut out = "0 g\n".to_owned();
    bar(&mut out, h, [from, y - 0.15, to, y + 0.15]);
    // The line is as long as from the outer edge of one end stroke to that of the other.
    bar(&mut out, h, [from, y - 5.0, from + 0.3, y + 5.0]);
    bar(&mut out, h, [to - 0.3, y - 5.0, to, y + 5.0]);
    let lines = [
        "Measure this line, from outer edge to outer edge: it must be 100 mm long.",
        "If it is not, print again at 100 % (\"actual size\"), or tell the count what it measures.",
        "Lay this page aside. Pieces go on the first page, each by itself, none on a corner tag.",
    ];
    for (i, line) in lines.iter().enumerate() {
        let escaped = line.replace('(', "\\(").replace(')', "\\)");
        add(
            &mut out,
            format_args!(
                "BT /F 12 Tf {:.3} {:.3} Td ({escaped}) Tj ET\n",
                30.0 * POINTS,
                (h - y - 20.0 - 8.0 * i as f64) * POINTS
            ),
        );
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_object_stands_where_the_table_says() {
        for paper in Paper::ALL {
            let pdf = String::from_utf8(pdf(paper)).unwrap();
            let table = &pdf[pdf.find("xref\n").unwrap()..];
            let places: Vec<usize> = table
                .lines()
                .skip(3)
                .take(7)
                .map(|line| line[..10].parse().unwrap())
                .collect();
            for (i, place) in places.into_iter().enumerate() {
                assert!(pdf[place..].starts_with(&format!("{} 0 obj", i + 1)));
            }
        }
    }

    #[test]
    fn pages_have_the_papers_size() {
        let text = |paper| String::from_utf8(pdf(paper)).unwrap();
        // ISO 216 A4 and US Letter, across, in points.
        assert!(text(Paper::A4).contains("[0 0 841.890 595.276]"));
        assert!(text(Paper::Letter).contains("[0 0 792.000 612.000]"));
    }
}
