//! What each cell of a picture should be taken for, from the truth about its pieces.

use super::truth::Placed;
use anyhow::{Context, Result};
use serde_json::Value;
use sight::bolt::{Head, onto_sheet, outline};
use sight::camera::{self, Taken};
use sight::count::size_of;
use sight::flat::{BLIND_MM, CHANNELS, Flat, to_cell, to_mm};
use sight::net::{END, HEAD, OTHER, PAPER, SHANK};
use sight::shape::{hull, rows_inside};
use sight::{Photo, tags};
use std::f64::consts::TAU;
use std::fs;
use std::path::Path;

/// A picture laid flat, with what each cell should be taken for.
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub cells: Vec<[f32; CHANNELS]>,
    pub class: Vec<u8>,
    /// Cosine and sine of twice the direction, where it is a shank.
    pub twice: Vec<[f32; 2]>,
    /// How much a cell counts: 0 where the truth does not say what is seen.
    pub weight: Vec<f32>,
}

/// Where the cells of a picture belong, while its pieces are laid down one by one.
struct Ground<'a> {
    flat: &'a Flat,
    eye: [f64; 3],
    class: Vec<u8>,
    twice: Vec<[f32; 2]>,
    weight: Vec<f32>,
    /// Which piece a cell belongs to, from 1.
    owner: Vec<u16>,
}

/// Reads a picture; none if its sheet cannot be made out.
pub fn picture(folder: &Path, truth: &Value) -> Result<Option<Picture>> {
    let file = folder.join(truth["file"].as_str().context("no file")?);
    let bytes = fs::read(&file).with_context(|| format!("{}: cannot be read", file.display()))?;
    let photo = Photo::read(&bytes).with_context(|| file.display().to_string())?;
    let grey = tags::Grey::of(photo.width, photo.height, &photo.rgb);
    let taken = Taken {
        width: photo.width,
        height: photo.height,
        focal_35_mm: None,
        printed: 1.0,
    };
    let Some(camera) = camera::fit(&tags::find(&grey), &taken) else {
        return Ok(None);
    };
    // Where the corners fit worse, labels would lie beside the pieces.
    if camera.left_over_px > 3.0 {
        return Ok(None);
    }
    let flat = Flat::new(&photo, &camera);
    let n = flat.width * flat.height;
    let mut ground = Ground {
        flat: &flat,
        eye: eye(&truth["camera"])?,
        class: vec![PAPER as u8; n],
        twice: vec![[0.0; 2]; n],
        weight: flat.seen.iter().map(|&s| f32::from(u8::from(s))).collect(),
        owner: vec![0; n],
    };
    let mut pieces: Vec<&Value> = truth["pieces"]
        .as_array()
        .context("no pieces")?
        .iter()
        .collect();
    // What leans on another lies over it.
    pieces.sort_by_key(|p| p["crossing"].as_bool());
    for (i, piece) in pieces.into_iter().enumerate() {
        ground.lay(piece, u16::try_from(i + 1)?)?;
    }
    ground.seams();
    if truth["scene"]["intruder"].is_string() {
        ground.leave_out_what_reaches_in();
    }
    let Ground {
        class,
        twice,
        weight,
        ..
    } = ground;
    Ok(Some(Picture {
        width: flat.width,
        height: flat.height,
        cells: flat.cells,
        class,
        twice,
        weight,
    }))
}

/// Where the camera truly was.
fn eye(camera: &Value) -> Result<[f64; 3]> {
    let number = |v: &Value| v.as_f64().context("not a number");
    let mut out = [0.0; 3];
    for row in 0..3 {
        for (column, value) in out.iter_mut().enumerate() {
            *value -= number(&camera["R"][row][column])? * number(&camera["t_mm"][row])?;
        }
    }
    out[2] = -out[2];
    Ok(out)
}

impl Ground<'_> {
    fn cells_of(&self, polygon: &[[f64; 2]]) -> Vec<usize> {
        let points: Vec<[f64; 2]> = polygon
            .iter()
            .map(|p| [to_cell(p[0]), to_cell(p[1])])
            .collect();
        rows_inside(&points, self.flat.width, self.flat.height)
            .into_iter()
            .flat_map(|(row, from, to)| (from..=to).map(move |c| row * self.flat.width + c))
            .collect()
    }

    fn paint(&mut self, polygon: &[[f64; 2]], class: usize, owner: u16, twice: [f32; 2]) {
        for at in self.cells_of(polygon) {
            self.class[at] = class as u8;
            self.owner[at] = owner;
            self.twice[at] = twice;
        }
    }

    /// How far a cell is from blank paper.
    fn stands_out(&self, at: usize) -> f32 {
        let [grey, red, blue, uneven] = self.flat.cells[at];
        grey.abs()
            .max(red.abs() * 0.8)
            .max(blue.abs() * 0.8)
            .max(uneven * 0.6)
    }

    fn lay(&mut self, piece: &Value, owner: u16) -> Result<()> {
        let place = Placed::of(piece)?;
        match place.kind.as_str() {
            "bolt" => self.lay_bolt(piece, &place, owner)?,
            "nut" if piece["on_side"] == true => {
                let polygon = place.standing(self.eye, &place.rectangle(0.0), 0.0);
                self.paint(&polygon, OTHER, owner, [0.0; 2]);
            }
            "nut" => {
                let radius = place.footprint[0] / 3.0_f64.sqrt();
                let corners: Vec<[f64; 2]> = (0..6)
                    .map(|i| place.around(radius, place.yaw + (f64::from(i) + 0.5) * TAU / 6.0))
                    .collect();
                let polygon = place.standing(self.eye, &corners, 0.0);
                self.paint(&polygon, OTHER, owner, [0.0; 2]);
            }
            "washer" | "o_ring" => self.lay_ring(&place, owner),
            _ => {
                // Of these only the box is known: what stands out in it is the piece.
                let polygon = place.standing(self.eye, &place.rectangle(0.5), 0.0);
                for at in self.cells_of(&polygon) {
                    self.owner[at] = owner;
                    if self.class[at] as usize != PAPER {
                        continue;
                    }
                    if self.stands_out(at) > 0.28 {
                        self.class[at] = OTHER as u8;
                    } else if self.stands_out(at) > 0.12 || place.kind == "other" {
                        self.weight[at] = 0.0;
                    }
                }
            }
        }
        Ok(())
    }

    fn lay_bolt(&mut self, piece: &Value, place: &Placed, owner: u16) -> Result<()> {
        let size = size_of(piece["thread"].as_str().unwrap_or_default()).context("thread")?;
        let head = match piece["head"].as_str() {
            Some("hex") => Head::Hex,
            Some("flange") => Head::Flange,
            Some("socket") => Head::Socket,
            _ => Head::Pan,
        };
        let mut axis = [[0.0; 3]; 3];
        for (i, point) in axis.iter_mut().enumerate() {
            for (k, value) in point.iter_mut().enumerate() {
                *value = piece["axis_mm"][i][k].as_f64().context("axis")?;
            }
        }
        let shown = outline(self.eye, head, size, &axis);
        let twice = [
            (2.0 * place.yaw).cos() as f32,
            (2.0 * place.yaw).sin() as f32,
        ];
        self.paint(&shown.shank, SHANK, owner, twice);
        self.paint(&shown.end, END, owner, twice);
        for polygon in &shown.head {
            self.paint(polygon, HEAD, owner, [0.0; 2]);
        }
        Ok(())
    }

    fn lay_ring(&mut self, place: &Placed, owner: u16) {
        let outer = place.footprint[0] / 2.0;
        let washer = place.kind == "washer";
        let inner = if washer {
            outer * 0.53
        } else {
            outer - place.height
        };
        let circle = |radius: f64| -> Vec<[f64; 2]> {
            (0..32)
                .map(|i| place.around(radius, f64::from(i) * TAU / 32.0))
                .collect()
        };
        let middle: Vec<[f64; 2]> = circle(inner)
            .into_iter()
            .map(|[x, y]| onto_sheet(self.eye, [x, y, place.height / 2.0]))
            .collect();
        let hole: Vec<(usize, u8)> = self
            .cells_of(&middle)
            .into_iter()
            .map(|at| (at, self.class[at]))
            .collect();
        let outline = if washer {
            place.standing(self.eye, &circle(outer), 0.0)
        } else {
            place.standing(self.eye, &circle(outer), place.height / 2.0)
        };
        self.paint(&outline, OTHER, owner, [0.0; 2]);
        for (at, class) in hole {
            self.class[at] = class;
            if self.stands_out(at) > 0.25 && class as usize == PAPER {
                self.weight[at] = 0.0;
            }
        }
    }

    /// Where two shanks lie along each other, the seam between counts as paper, so that they
    /// can be told apart.
    fn seams(&mut self) {
        let w = self.flat.width;
        let shank = |class: u8| class as usize == SHANK || class as usize == END;
        let seams: Vec<usize> = (w + 1..self.class.len() - w - 1)
            .filter(|&at| shank(self.class[at]))
            .filter(|&at| {
                let near = [at - 1, at + 1, at - w, at + w].into_iter().chain([
                    at - w - 1,
                    at - w + 1,
                    at + w - 1,
                    at + w + 1,
                ]);
                near.into_iter().any(|next| {
                    let [a, b] = [self.twice[at], self.twice[next]];
                    shank(self.class[next])
                        && self.owner[next] != self.owner[at]
                        && a[0] * b[0] + a[1] * b[1] > 0.8
                })
            })
            .collect();
        for at in seams {
            self.class[at] = PAPER as u8;
        }
    }

    /// A thumb or a tool over the edge is not in the truth: what hangs together with the edge,
    /// stands out, and is no piece, does not count.
    fn leave_out_what_reaches_in(&mut self) {
        let w = self.flat.width;
        let on_sheet = |at: usize, inside: f64| {
            let (x, y) = (to_mm((at % w) as f64), to_mm((at / w) as f64));
            self.flat.on_sheet(x, y, inside)
        };
        let mut marked = vec![false; self.class.len()];
        let mut queue: Vec<usize> = (0..marked.len())
            .filter(|&at| on_sheet(at, BLIND_MM) && !on_sheet(at, BLIND_MM + 1.2))
            .filter(|&at| self.stands_out(at) > 0.22 && self.owner[at] == 0)
            .collect();
        for &at in &queue {
            marked[at] = true;
        }
        while let Some(at) = queue.pop() {
            for next in [at - 1, at + 1, at - w, at + w] {
                let goes_on = !marked[next]
                    && on_sheet(next, BLIND_MM)
                    && self.stands_out(next) > 0.18
                    && self.owner[next] == 0;
                if goes_on {
                    marked[next] = true;
                    queue.push(next);
                }
            }
        }
        for (weight, marked) in self.weight.iter_mut().zip(marked) {
            if marked {
                *weight = 0.0;
            }
        }
    }
}

impl Placed {
    /// A point at a distance from the middle.
    fn around(&self, radius: f64, turn: f64) -> [f64; 2] {
        [
            self.middle[0] + radius * turn.cos(),
            self.middle[1] + radius * turn.sin(),
        ]
    }

    /// The box round it, larger by `more` on each side.
    fn rectangle(&self, more: f64) -> Vec<[f64; 2]> {
        let (c, s) = (self.yaw.cos(), self.yaw.sin());
        [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .into_iter()
            .map(|(a, b)| {
                let a = a * (self.footprint[0] / 2.0 + more);
                let b = b * (self.footprint[1] / 2.0 + more);
                [
                    self.middle[0] + a * c - b * s,
                    self.middle[1] + a * s + b * c,
                ]
            })
            .collect()
    }

    /// What a body with this ground plan looks like, from its height up to its top.
    fn standing(&self, eye: [f64; 3], plan: &[[f64; 2]], from: f64) -> Vec<[f64; 2]> {
        let to = if from > 0.0 { from } else { self.height };
        let points: Vec<[f64; 2]> = plan
            .iter()
            .flat_map(|&[x, y]| [onto_sheet(eye, [x, y, from]), onto_sheet(eye, [x, y, to])])
            .collect();
        hull(&points)
    }
}
