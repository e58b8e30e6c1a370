//! Pictures made in other ways: drawn here, empty, hostile.

#![allow(
    clippy::unwrap_used,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "tests"
)]

use sight::bolt::{Bolt, Head, outline};
use sight::count::Group;
use sight::look::{Verdict, What, judge, look};
use sight::mat::{TAG_MM, TAG_MODULES, is_white};
use sight::shape::rows_inside;
use sight::{Paper, Photo, PhotoError};

/// A drawing of the sheet as a scanner would give it, with a grey border around.
struct Drawing {
    paper: Paper,
    per_mm: f64,
    border: f64,
    width: usize,
    height: usize,
    grey: Vec<u8>,
}

impl Drawing {
    fn new(paper: Paper, per_mm: f64) -> Self {
        let [w, h] = paper.size_mm();
        let border = 20.0;
        let width = ((w + 2.0 * border) * per_mm) as usize;
        let height = ((h + 2.0 * border) * per_mm) as usize;
        let mut drawing = Self {
            paper,
            per_mm,
            border,
            width,
            height,
            grey: vec![120; width * height],
        };
        drawing.fill(&[[0.0, 0.0], [w, 0.0], [w, h], [0.0, h]], 235);
        for tag in 0..4 {
            let [x, y] = paper.tag_corner_mm(tag);
            let module = TAG_MM / TAG_MODULES as f64;
            for row in 0..TAG_MODULES {
                for column in 0..TAG_MODULES {
                    let (left, top) = (x + column as f64 * module, y + row as f64 * module);
                    let (right, bottom) = (left + module, top + module);
                    let shade = if is_white(tag, row, column) { 235 } else { 30 };
                    drawing.fill(
                        &[[left, top], [right, top], [right, bottom], [left, bottom]],
                        shade,
                    );
                }
            }
        }
        drawing
    }

    fn fill(&mut self, polygon: &[[f64; 2]], shade: u8) {
        let points: Vec<[f64; 2]> = polygon
            .iter()
            .map(|p| p.map(|v| (v + self.border) * self.per_mm - 0.5))
            .collect();
        for (row, left, right) in rows_inside(&points, self.width, self.height) {
            self.grey[row * self.width + left..=row * self.width + right].fill(shade);
        }
    }

    /// A bolt as a flat dark shape, seen from straight above and far away.
    fn bolt(&mut self, bolt: &Bolt) {
        let [w, h] = self.paper.size_mm();
        let shown = outline([w / 2.0, h / 2.0, 1e6], bolt.head, bolt.size, &bolt.axis());
        self.fill(&shown.shank, 60);
        for polygon in &shown.head {
            self.fill(polygon, 75);
        }
    }

    fn photo(&self) -> Photo {
        let rgb = self.grey.iter().flat_map(|&g| [g; 3]).collect();
        Photo::of_pixels(self.width, self.height, rgb).unwrap()
    }
}

#[test]
fn a_drawn_sheet_is_found_on_either_paper_any_way_round() {
    for paper in Paper::ALL {
        let drawing = Drawing::new(paper, 4.0);
        let seen = look(&drawing.photo());
        assert_eq!(seen.paper, Some(paper));
        let upside_down: Vec<u8> = drawing.grey.iter().rev().flat_map(|&g| [g; 3]).collect();
        let photo = Photo::of_pixels(drawing.width, drawing.height, upside_down).unwrap();
        assert_eq!(look(&photo).paper, Some(paper));
    }
}

#[test]
fn a_sheet_printed_smaller_shows_by_its_edges() {
    let drawing = Drawing::new(Paper::A4, 4.0);
    let photo = drawing.photo();
    let grey = sight::tags::Grey::of(photo.width, photo.height, &photo.rgb);
    let tags = sight::tags::find(&grey);
    for (taken_for, expected) in [(1.0, 1.0), (0.97, 1.0 / 0.97), (1.02, 1.0 / 1.02)] {
        let taken = sight::camera::Taken {
            width: photo.width,
            height: photo.height,
            focal_35_mm: None,
            printed: taken_for,
        };
        let camera = sight::camera::fit(&tags, &taken).unwrap();
        let flat = sight::flat::Flat::new(&photo, &camera);
        let found = sight::edges::printed(&flat).unwrap();
        assert!((found - expected).abs() < 0.005, "{found} for {expected}");
    }
}

#[test]
fn an_empty_sheet_holds_no_bolt_and_is_not_complete() {
    let seen = look(&Drawing::new(Paper::A4, 4.0).photo());
    assert!(seen.bolts.is_empty());
    let group = Group {
        name: "cover".to_owned(),
        thread: "M8".to_owned(),
        lengths: vec![30.0],
        area_mm: None,
    };
    assert_ne!(judge(&seen, &[group]).verdict, Verdict::Complete);
}

#[test]
fn a_mirrored_sheet_is_no_sheet() {
    let drawing = Drawing::new(Paper::A4, 4.0);
    let mirrored: Vec<u8> = drawing
        .grey
        .chunks_exact(drawing.width)
        .flat_map(|row| row.iter().rev().flat_map(|&g| [g; 3]))
        .collect();
    let photo = Photo::of_pixels(drawing.width, drawing.height, mirrored).unwrap();
    assert_eq!(look(&photo).paper, None);
}

#[test]
fn drawn_bolts_do_not_upset_it() {
    let mut drawing = Drawing::new(Paper::A4, 4.0);
    for (i, length) in [30.0, 50.0, 75.0].into_iter().enumerate() {
        drawing.bolt(&Bolt {
            head: Head::Hex,
            size: 2,
            x: 80.0,
            y: 60.0 + 40.0 * i as f64,
            yaw: 0.1,
            length,
        });
    }
    // Flat shapes without light and shade are not what the weights were fitted to: whatever
    // is read from them, the wrong list must not be called complete.
    let seen = look(&drawing.photo());
    let group = Group {
        name: "cover".to_owned(),
        thread: "M8".to_owned(),
        lengths: vec![30.0, 50.0, 50.0, 75.0],
        area_mm: None,
    };
    assert_ne!(judge(&seen, &[group]).verdict, Verdict::Complete);
}

#[test]
fn a_picture_without_a_sheet_says_so() {
    let black = Photo::of_pixels(1600, 1200, vec![0; 1600 * 1200 * 3]).unwrap();
    // Something like a face: an oval with two dark spots and a line.
    let face: Vec<u8> = (0..1200 * 900)
        .flat_map(|i| {
            let (x, y) = (f64::from(i % 1200), f64::from(i / 1200));
            let oval = ((x - 600.0) / 300.0).powi(2) + ((y - 450.0) / 380.0).powi(2) < 1.0;
            let eye = |at: f64| (x - at).hypot(y - 350.0) < 40.0;
            let mouth = (y - 600.0).abs() < 12.0 && (x - 600.0).abs() < 120.0;
            match (oval, eye(480.0) || eye(720.0) || mouth) {
                (_, true) => [40, 30, 30],
                (true, _) => [220, 180, 160],
                _ => [90, 100, 120],
            }
        })
        .collect();
    let face = Photo::of_pixels(1200, 900, face).unwrap();
    for photo in [black, face] {
        let seen = look(&photo);
        assert!(seen.troubles.iter().any(|t| t.what == What::NoSheet));
        assert!(seen.pieces.is_empty());
    }
}

#[test]
fn hostile_bytes_are_answered_in_words() {
    let read = |bytes: &[u8]| Photo::read(bytes).unwrap_err();
    assert_eq!(read(b""), PhotoError::NotAPicture);
    assert_eq!(read(b"%PDF-1.4"), PhotoError::NotAPicture);
    assert!(matches!(read(&[0xff, 0xd8]), PhotoError::Damaged { .. }));
    assert!(matches!(
        read(b"\x89PNG\r\n\x1a\nxxxx"),
        PhotoError::Damaged { .. }
    ));
    // A JPEG header of 60,000 x 1, and one of 65,500 each way.
    for (width, height) in [(60_000_u16, 1_u16), (65_500, 65_500)] {
        let mut bytes = vec![0xff, 0xd8, 0xff, 0xc0, 0, 17, 8];
        bytes.extend(height.to_be_bytes());
        bytes.extend(width.to_be_bytes());
        bytes.extend([3, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0, 0xff, 0xda, 0, 12, 3]);
        bytes.extend([1, 0, 2, 0, 3, 0, 0, 63, 0, 0, 0]);
        assert!(matches!(read(&bytes), PhotoError::TooLarge { .. }));
    }
    assert!(matches!(
        Photo::of_pixels(300, 100, vec![0; 90_000]),
        Err(PhotoError::TooSmall { .. })
    ));
    assert!(Photo::of_pixels(300, 300, vec![0; 7]).is_err());
}

#[test]
fn a_broken_photo_does_not_bring_it_down() {
    let file = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../checks/data/tray/open/open_004.jpg"
    );
    let whole = std::fs::read(file).unwrap();
    for part in [200, 20_000, whole.len() / 2] {
        if let Ok(photo) = Photo::read(&whole[..part]) {
            let seen = look(&photo);
            assert_eq!(judge(&seen, &[]).verdict, Verdict::CantTell);
        }
    }
    for (i, by) in (100..whole.len()).step_by(whole.len() / 5).zip(1..) {
        let mut bent = whole.clone();
        bent[i] ^= by;
        if let Ok(photo) = Photo::read(&bent) {
            let seen = look(&photo);
            assert_eq!(judge(&seen, &[]).verdict, Verdict::CantTell);
        }
    }
}
