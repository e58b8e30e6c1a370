//! A signature that was drawn on the screen, as it stands on paper.

use drawing::{Area, Drawing, Ink, Mark, Style};
use png::{ColorType, Transformations};
use std::io::Cursor;

/// The widest and highest picture that is looked at.
const MOST_PX: u32 = 4000;

/// The strokes of a PNG as a drawing; nothing, if it is no picture or has none.
///
/// The page draws in its own ink, light or dark, on whatever lies beneath: what fewer points
/// have is taken for the strokes.
pub fn strokes(bytes: &[u8], who: &str) -> Option<Drawing> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(Transformations::EXPAND | Transformations::STRIP_16);
    let mut reader = decoder.read_info().ok()?;
    let (width, height) = (reader.info().width, reader.info().height);
    if width == 0 || height == 0 || width > MOST_PX || height > MOST_PX {
        return None;
    }
    let mut pixels = vec![0; reader.output_buffer_size()?];
    let frame = reader.next_frame(&mut pixels).ok()?;
    let each = frame.color_type.samples();
    let inked: Vec<bool> = pixels
        .get(..frame.buffer_size())?
        .chunks_exact(each)
        .map(|pixel| is_inked(pixel, frame.color_type))
        .collect();
    let few = inked.iter().filter(|ink| **ink).count();
    let inverted = few > inked.len() / 2;
    let row = usize::try_from(width).ok()?;
    let marks: Vec<Mark> = inked
        .chunks_exact(row)
        .enumerate()
        .flat_map(|(y, row)| runs(row, inverted, y))
        .collect();
    if marks.is_empty() {
        return None;
    }
    Some(Drawing {
        width: f64::from(width),
        height: f64::from(height),
        title: format!("The signature of {who}"),
        description: "Drawn on the screen.".to_owned(),
        marks,
    })
}

fn is_inked(pixel: &[u8], colour: ColorType) -> bool {
    let (shades, alpha) = match (colour, pixel) {
        (ColorType::GrayscaleAlpha, [shade, alpha]) => (std::slice::from_ref(shade), *alpha),
        (ColorType::Rgba, [rgb @ .., alpha]) => (rgb, *alpha),
        _ => (pixel, u8::MAX),
    };
    // On nothing, any ink is ink; on a ground, the dark is.
    match colour {
        ColorType::GrayscaleAlpha | ColorType::Rgba if alpha < u8::MAX / 2 => false,
        _ => shades.iter().map(|shade| u32::from(*shade)).sum::<u32>() < 128 * count(shades),
    }
}

fn count(shades: &[u8]) -> u32 {
    u32::try_from(shades.len()).unwrap_or(1)
}

/// The strokes of a row, each as long as it runs.
fn runs(row: &[bool], inverted: bool, y: usize) -> Vec<Mark> {
    let mut out = Vec::new();
    let mut start = None;
    for x in 0..=row.len() {
        let inked = row.get(x).is_some_and(|ink| *ink != inverted);
        match (inked, start) {
            (true, None) => start = Some(x),
            (false, Some(from)) => {
                out.push(Mark::Rect {
                    area: Area {
                        x: crate::engine::column::count(from),
                        y: crate::engine::column::count(y),
                        width: crate::engine::column::count(x - from),
                        height: 1.1,
                    },
                    corner_radius: 0.0,
                    style: Style::fill(Ink::Ink),
                });
                start = None;
            }
            _ => {}
        }
    }
    out
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use super::*;

    fn picture(colour: ColorType, pixels: &[u8]) -> Vec<u8> {
        let mut out = Vec::new();
        let mut encoder = png::Encoder::new(&mut out, 4, 2);
        encoder.set_color(colour);
        let mut writer = encoder.write_header().unwrap();
        writer.write_image_data(pixels).unwrap();
        writer.finish().unwrap();
        out
    }

    fn areas(drawing: &Drawing) -> Vec<(f64, f64, f64)> {
        let area = |mark: &Mark| match mark {
            Mark::Rect { area, .. } => (area.x, area.y, area.width),
            _ => panic!("{mark:?}"),
        };
        drawing.marks.iter().map(area).collect()
    }

    #[test]
    fn dark_strokes_on_white_and_light_ones_on_dark_are_found() {
        for (ground, ink) in [(255, 0), (0, 255)] {
            let mut pixels = [ground; 8];
            (pixels[1], pixels[2], pixels[7]) = (ink, ink, ink);
            let found = strokes(&picture(ColorType::Grayscale, &pixels), "Ada").unwrap();
            assert_eq!(areas(&found), [(1.0, 0.0, 2.0), (3.0, 1.0, 1.0)]);
            assert_eq!(found.title, "The signature of Ada");
        }
    }

    #[test]
    fn what_is_no_picture_or_shows_nothing_is_no_signature() {
        assert_eq!(strokes(b"not really a picture", "Ada"), None);
        assert_eq!(
            strokes(&picture(ColorType::Grayscale, &[255; 8]), "Ada"),
            None
        );
        assert_eq!(strokes(&picture(ColorType::Rgba, &[0; 32]), "Ada"), None);
    }
}
