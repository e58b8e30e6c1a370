//! Bytes to pixels, with limits before anything is decoded.

use std::io::Cursor;
use thiserror::Error;
use zune_core::bytestream::ZCursor;
use zune_core::colorspace::ColorSpace;
use zune_core::options::DecoderOptions;
use zune_jpeg::JpegDecoder;

/// Longest side that is read, in pixels.
pub const LONGEST_SIDE: usize = 12_000;
/// Most pixels that are read.
pub const MOST_PIXELS: usize = 52_000_000;
/// Shortest side in which a sheet could still be read.
pub const SHORTEST_SIDE: usize = 240;
/// Longest file that is looked at, in bytes.
pub const LONGEST_FILE: usize = 60_000_000;
/// Long side of the picture that is worked on, in pixels: more tells nothing new, and costs time.
const WORKING_SIDE: usize = 2_048;

/// Why bytes are no photo that can be looked at.
#[derive(Debug, Error, PartialEq, Eq)]
pub enum PhotoError {
    /// Neither JPEG nor PNG.
    #[error("this is not a picture that can be read: take a JPEG or PNG")]
    NotAPicture,
    /// Too many bytes.
    #[error("the file has {bytes} bytes: up to {LONGEST_FILE} are read; send a smaller picture")]
    TooLong {
        /// Bytes in the file.
        bytes: usize,
    },
    /// Too large.
    #[error(
        "the picture is {width} x {height} pixels: up to {LONGEST_SIDE} a side and {MOST_PIXELS} in all are read; send a smaller one"
    )]
    TooLarge {
        /// Pixels across.
        width: usize,
        /// Pixels down.
        height: usize,
    },
    /// Too small to find a sheet in.
    #[error(
        "the picture is {width} x {height} pixels: each side needs at least {SHORTEST_SIDE}; send the photo as it was taken"
    )]
    TooSmall {
        /// Pixels across.
        width: usize,
        /// Pixels down.
        height: usize,
    },
    /// Begins like a picture and breaks off or does not hold together.
    #[error("the picture is damaged ({why}): send it again")]
    Damaged {
        /// What the decoder says.
        why: String,
    },
}

/// A photo, turned upright as its camera meant it.
#[derive(Debug, Clone)]
pub struct Photo {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// Red, green, blue, row by row.
    pub rgb: Vec<u8>,
    /// Focal length as for 35 mm film, in millimetres, if the camera wrote it down.
    pub focal_35_mm: Option<f64>,
    /// How large the sheet was printed, as a share: 1, unless somebody measured otherwise.
    pub printed: f64,
}

impl Photo {
    /// Reads a JPEG or PNG file, not larger than it needs to be for the work here: a picture
    /// with a side over 2,048 pixels is made smaller by a whole number.
    ///
    /// # Errors
    /// [`PhotoError`], before decoding for what is too large or too small.
    pub fn read(bytes: &[u8]) -> Result<Self, PhotoError> {
        if bytes.len() > LONGEST_FILE {
            return Err(PhotoError::TooLong { bytes: bytes.len() });
        }
        if bytes.starts_with(&[0xff, 0xd8]) {
            jpeg(bytes)
        } else if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
            png(bytes)
        } else {
            Err(PhotoError::NotAPicture)
        }
    }

    /// Makes a photo of pixels that are at hand; `rgb` holds three bytes a pixel.
    ///
    /// # Errors
    /// [`PhotoError::TooSmall`], [`PhotoError::TooLarge`], or [`PhotoError::Damaged`] if the
    /// length of `rgb` does not fit.
    pub fn of_pixels(width: usize, height: usize, rgb: Vec<u8>) -> Result<Self, PhotoError> {
        size_is_right(width, height)?;
        if rgb.len() != width * height * 3 {
            return Err(damaged("its length does not fit its size"));
        }
        Ok(smaller(width, height, rgb))
    }
}

fn damaged(why: impl std::fmt::Display) -> PhotoError {
    PhotoError::Damaged {
        why: why.to_string(),
    }
}

fn size_is_right(width: usize, height: usize) -> Result<(), PhotoError> {
    if width.max(height) > LONGEST_SIDE || width.saturating_mul(height) > MOST_PIXELS {
        return Err(PhotoError::TooLarge { width, height });
    }
    if width.min(height) < SHORTEST_SIDE {
        return Err(PhotoError::TooSmall { width, height });
    }
    Ok(())
}

fn jpeg(bytes: &[u8]) -> Result<Photo, PhotoError> {
    let options = DecoderOptions::default()
        .set_max_width(70_000)
        .set_max_height(70_000)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    decoder.decode_headers().map_err(damaged)?;
    let (width, height) = decoder
        .dimensions()
        .ok_or_else(|| damaged("it has no size"))?;
    size_is_right(width, height)?;
    let (turn, focal_35_mm) = decoder.exif().map_or((1, None), |block| exif(block));
    let rgb = decoder.decode().map_err(damaged)?;
    if rgb.len() != width * height * 3 {
        return Err(damaged("it breaks off"));
    }
    let mut photo = turned(smaller(width, height, rgb), turn);
    photo.focal_35_mm = focal_35_mm;
    Ok(photo)
}

fn png(bytes: &[u8]) -> Result<Photo, PhotoError> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    let mut reader = decoder.read_info().map_err(damaged)?;
    let (width, height) = (reader.info().width as usize, reader.info().height as usize);
    size_is_right(width, height)?;
    let length = reader
        .output_buffer_size()
        .ok_or(PhotoError::TooLarge { width, height })?;
    let mut raw = vec![0; length];
    let frame = reader.next_frame(&mut raw).map_err(damaged)?;
    let channels = frame.color_type.samples();
    let mut rgb = Vec::with_capacity(width * height * 3);
    for pixel in raw[..frame.buffer_size()].chunks_exact(channels) {
        // Whatever is see-through lies on white.
        let over = |value: u8, alpha: u8| {
            let (value, alpha) = (u32::from(value), u32::from(alpha));
            u8::try_from((value * alpha + 255 * (255 - alpha)) / 255).unwrap_or(255)
        };
        match *pixel {
            [grey] => rgb.extend([grey; 3]),
            [grey, alpha] => rgb.extend([over(grey, alpha); 3]),
            [r, g, b] => rgb.extend([r, g, b]),
            [r, g, b, a] => rgb.extend([over(r, a), over(g, a), over(b, a)]),
            _ => return Err(damaged("it has an unknown kind of pixel")),
        }
    }
    if rgb.len() != width * height * 3 {
        return Err(damaged("it breaks off"));
    }
    Ok(smaller(width, height, rgb))
}

/// Means over squares of pixels, so that the long side is at most the working side.
fn smaller(width: usize, height: usize, rgb: Vec<u8>) -> Photo {
    let by = width.max(height).div_ceil(WORKING_SIDE);
    if by == 1 {
        return Photo {
            width,
            height,
            rgb,
            focal_35_mm: None,
            printed: 1.0,
        };
    }
    let (w, h) = (width / by, height / by);
    let mut out = Vec::with_capacity(w * h * 3);
    let area = u32::try_from(by * by).expect("at most six by six, as sides are limited");
    let mut sums = vec![0_u32; w * 3];
    for y in 0..h {
        sums.fill(0);
        for row in y * by..(y + 1) * by {
            let line = &rgb[row * width * 3..][..w * by * 3];
            for (sum, square) in sums.chunks_exact_mut(3).zip(line.chunks_exact(by * 3)) {
                for pixel in square.chunks_exact(3) {
                    sum[0] += u32::from(pixel[0]);
                    sum[1] += u32::from(pixel[1]);
                    sum[2] += u32::from(pixel[2]);
                }
            }
        }
        out.extend(
            sums.iter().map(|sum| {
                u8::try_from((sum + area / 2) / area).expect("a mean of bytes is a byte")
            }),
        );
    }
    Photo {
        width: w,
        height: h,
        rgb: out,
        focal_35_mm: None,
        printed: 1.0,
    }
}

/// Turns as the EXIF value (1 to 8) says.
fn turned(photo: Photo, turn: u16) -> Photo {
    if !(2..=8).contains(&turn) {
        return photo;
    }
    let (w, h) = (photo.width, photo.height);
    let (width, height) = if turn >= 5 { (h, w) } else { (w, h) };
    let mut rgb = Vec::with_capacity(photo.rgb.len());
    for y in 0..height {
        for x in 0..width {
            let (from_x, from_y) = match turn {
                2 => (w - 1 - x, y),
                3 => (w - 1 - x, h - 1 - y),
                4 => (x, h - 1 - y),
                5 => (y, x),
                6 => (y, h - 1 - x),
                7 => (w - 1 - y, h - 1 - x),
                _ => (w - 1 - y, x),
            };
            let at = (from_y * w + from_x) * 3;
            rgb.extend_from_slice(&photo.rgb[at..at + 3]);
        }
    }
    Photo {
        width,
        height,
        rgb,
        focal_35_mm: photo.focal_35_mm,
        printed: 1.0,
    }
}

/// Which way up, and the focal length as for 35 mm film, from an EXIF block (a TIFF file).
fn exif(block: &[u8]) -> (u16, Option<f64>) {
    let block = block.strip_prefix(b"Exif\0\0").unwrap_or(block);
    let little = block.starts_with(b"II");
    let two = |at: usize| -> Option<u16> {
        let bytes: [u8; 2] = block.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if little {
            u16::from_le_bytes(bytes)
        } else {
            u16::from_be_bytes(bytes)
        })
    };
    let four = |at: usize| -> Option<usize> {
        let bytes: [u8; 4] = block.get(at..at.checked_add(4)?)?.try_into().ok()?;
        usize::try_from(if little {
            u32::from_le_bytes(bytes)
        } else {
            u32::from_be_bytes(bytes)
        })
        .ok()
    };
    // Where the value of a tag stands in the directory at `start`.
    let find = |start: usize, tag: u16| -> Option<usize> {
        let count = usize::from(two(start)?);
        (0..count)
            .filter_map(|i| start.checked_add(2 + 12 * i))
            .find(|&at| two(at) == Some(tag))
            .map(|at| at + 8)
    };
    let Some(first) = four(4) else {
        return (1, None);
    };
    let turn = find(first, 0x0112).and_then(two).unwrap_or(1);
    let focal = find(first, 0x8769)
        .and_then(four)
        .and_then(|below| find(below, 0xa405))
        .and_then(two)
        .filter(|mm| (10..=200).contains(mm))
        .map(f64::from);
    (turn, focal)
}
