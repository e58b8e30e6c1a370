//! Where the camera stood, from the corners of the tags.

use crate::mat::Paper;
use crate::solve::{Homography, Pair, homography, linear, times};
use crate::tags::Tag;

/// Focal length over the picture's long side for common phones (26 to 28 mm as for 35 mm film),
/// and how far it may be off (as a share). From four tags in one plane, seen nearly from above,
/// it cannot be told from the height, so this much has to be brought along.
const USUAL_FOCAL: (f64, f64) = (0.79, 0.06);
/// How far the written focal length may be off.
const WRITTEN_FOCAL_SHARE: f64 = 0.03;
/// How strongly lenses bend: the radial coefficient is about zero, within this.
const USUAL_BEND: f64 = 0.03;
/// How well a corner is found, as a share of the long side.
const CORNER_SHARE: f64 = 0.0005;

/// A camera over the sheet.
#[derive(Debug, Clone)]
pub struct Camera {
    /// Which paper lies there.
    pub paper: Paper,
    /// Focal length in pixels.
    pub focal: f64,
    /// The picture's middle.
    pub middle: [f64; 2],
    /// Radial bend: a point at radius r (in focal lengths) appears at r (1 + bend r^2).
    pub bend: f64,
    turn: [[f64; 3]; 3],
    shift: [f64; 3],
    /// Root mean square of what is left at the tags' corners, in pixels.
    pub left_over_px: f64,
}

/// What is known of a picture before its tags are looked at.
#[derive(Debug, Clone, Copy)]
pub struct Taken {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// Focal length as for 35 mm film, if the camera wrote it down.
    pub focal_35_mm: Option<f64>,
    /// How large the sheet was printed, as a share.
    pub printed: f64,
}

/// Fits a camera to the tags found (two or more), for the paper that they fit better.
pub fn fit(tags: &[Option<Tag>; 4], taken: &Taken) -> Option<Camera> {
    Paper::ALL
        .into_iter()
        .filter_map(|paper| fit_to(paper, tags, taken))
        .min_by(|a, b| a.left_over_px.total_cmp(&b.left_over_px))
}

/// A tag's corners in millimetres, as it was printed: larger or smaller about the sheet's middle.
pub fn printed_corners(paper: Paper, tag: usize, printed: f64) -> [[f64; 2]; 4] {
    let [w, h] = paper.size_mm();
    paper.tag_corners_mm(tag).map(|[x, y]| {
        [
            w / 2.0 + (x - w / 2.0) * printed,
            h / 2.0 + (y - h / 2.0) * printed,
        ]
    })
}

fn fit_to(paper: Paper, tags: &[Option<Tag>; 4], taken: &Taken) -> Option<Camera> {
    let (w, h) = (taken.width as f64, taken.height as f64);
    let long = w.max(h);
    let pairs: Vec<Pair> = tags
        .iter()
        .flatten()
        .flat_map(|tag| {
            let mm = printed_corners(paper, tag.id, taken.printed);
            (0..4).map(move |i| (mm[i], tag.corners[i]))
        })
        .collect();
    if pairs.len() < 8 {
        return None;
    }
    // A 35 mm film's picture is 43.27 mm from corner to corner.
    let (focal, share) = taken
        .focal_35_mm
        .map_or((USUAL_FOCAL.0 * long, USUAL_FOCAL.1), |mm| {
            (mm * libm::hypot(w, h) / 43.27, WRITTEN_FOCAL_SHARE)
        });
    let plane = homography(&pairs)?;
    let mut camera = started(paper, &plane, focal, [(w - 1.0) / 2.0, (h - 1.0) / 2.0])?;
    let mut corner = CORNER_SHARE * long;
    // Where corners turn out to be worse than usual (blur), what is usual of cameras weighs more.
    for _ in 0..3 {
        camera = improved(camera, &pairs, corner, focal, share)?;
        corner = corner.max(camera.left_over_px);
    }
    camera.left_over_px.is_finite().then_some(camera)
}

/// Steps towards the least squares of what is left at the corners and of how unusual it is.
fn improved(
    mut camera: Camera,
    pairs: &[Pair],
    corner: f64,
    focal: f64,
    share: f64,
) -> Option<Camera> {
    let rest = |camera: &Camera| -> Vec<f64> {
        let mut out = Vec::with_capacity(pairs.len() * 2 + 2);
        for (mm, px) in pairs {
            let seen = camera.pixel([mm[0], mm[1], 0.0]);
            out.push((seen[0] - px[0]) / corner);
            out.push((seen[1] - px[1]) / corner);
        }
        out.push(libm::log(camera.focal / focal) / share);
        out.push(camera.bend / USUAL_BEND);
        out
    };
    for _ in 0..6 {
        let now = rest(&camera);
        let slopes: Vec<Vec<f64>> = (0..8)
            .map(|i| {
                let mut step = [0.0; 8];
                step[i] = STEPS[i];
                let there = rest(&camera.moved(&step));
                let d = |(a, b): (&f64, &f64)| (a - b) / STEPS[i];
                there.iter().zip(&now).map(d).collect()
            })
            .collect();
        let mut normal = [[0.0; 9]; 8];
        for (i, row) in normal.iter_mut().enumerate() {
            for j in 0..8 {
                row[j] = slopes[i].iter().zip(&slopes[j]).map(|(a, b)| a * b).sum();
            }
            row[8] = -slopes[i].iter().zip(&now).map(|(a, b)| a * b).sum::<f64>();
            row[i] *= 1.0 + 1e-9;
        }
        let mut step = linear(normal)?;
        if step.iter().any(|s| !s.is_finite()) {
            return None;
        }
        step[6] = step[6].clamp(-0.2, 0.2);
        camera = camera.moved(&step);
    }
    let squares: f64 = pairs
        .iter()
        .map(|(mm, px)| {
            let seen = camera.pixel([mm[0], mm[1], 0.0]);
            (seen[0] - px[0]) * (seen[0] - px[0]) + (seen[1] - px[1]) * (seen[1] - px[1])
        })
        .sum();
    camera.left_over_px = libm::sqrt(squares / pairs.len() as f64);
    Some(camera)
}

/// Steps for slopes: radians, millimetres, share of the focal length, bend.
const STEPS: [f64; 8] = [1e-5, 1e-5, 1e-5, 1e-2, 1e-2, 1e-2, 1e-5, 1e-4];

fn started(paper: Paper, plane: &Homography, focal: f64, middle: [f64; 2]) -> Option<Camera> {
    let inverse = [
        [1.0 / focal, 0.0, -middle[0] / focal],
        [0.0, 1.0 / focal, -middle[1] / focal],
        [0.0, 0.0, 1.0],
    ];
    let m = times(&inverse, plane);
    let column = |j: usize| [m[0][j], m[1][j], m[2][j]];
    let (a, b, c) = (column(0), column(1), column(2));
    let size = 0.5 * (length(a) + length(b));
    if size < 1e-12 {
        return None;
    }
    let by = if c[2] < 0.0 { -1.0 / size } else { 1.0 / size };
    let x = unit(a.map(|v| v * by))?;
    let b = b.map(|v| v * by);
    let along = dot(x, b);
    let y = unit([
        b[0] - along * x[0],
        b[1] - along * x[1],
        b[2] - along * x[2],
    ])?;
    let z = cross(x, y);
    Some(Camera {
        paper,
        focal,
        middle,
        bend: 0.0,
        turn: [[x[0], y[0], z[0]], [x[1], y[1], z[1]], [x[2], y[2], z[2]]],
        shift: c.map(|v| v * by),
        left_over_px: 0.0,
    })
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn length(a: [f64; 3]) -> f64 {
    libm::sqrt(dot(a, a))
}

fn unit(a: [f64; 3]) -> Option<[f64; 3]> {
    let n = length(a);
    (n > 1e-12).then(|| a.map(|v| v / n))
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

impl Camera {
    /// Turned by a small turn, shifted, with another focal length and bend.
    fn moved(&self, step: &[f64; 8]) -> Self {
        let angle = length([step[0], step[1], step[2]]);
        let mut turn = self.turn;
        if angle > 1e-15 {
            let k = [step[0] / angle, step[1] / angle, step[2] / angle];
            let (s, c) = (libm::sin(angle), 1.0 - libm::cos(angle));
            let skew = [[0.0, -k[2], k[1]], [k[2], 0.0, -k[0]], [-k[1], k[0], 0.0]];
            let twice = times(&skew, &skew);
            let mut by = [[0.0; 3]; 3];
            for i in 0..3 {
                for j in 0..3 {
                    by[i][j] = f64::from(u8::from(i == j)) + s * skew[i][j] + c * twice[i][j];
                }
            }
            turn = times(&by, &self.turn);
        }
        Self {
            turn,
            shift: [
                self.shift[0] + step[3],
                self.shift[1] + step[4],
                self.shift[2] + step[5],
            ],
            focal: self.focal * libm::exp(step[6]),
            bend: self.bend + step[7],
            ..self.clone()
        }
    }

    /// The pixel of a point over the sheet: x, y and its height, in millimetres.
    #[must_use]
    pub fn pixel(&self, [x, y, height]: [f64; 3]) -> [f64; 2] {
        let row = |i: usize| dot(self.turn[i], [x, y, -height]) + self.shift[i];
        let z = row(2).max(1e-6);
        let (a, b) = (row(0) / z, row(1) / z);
        let bent = 1.0 + self.bend * (a * a + b * b);
        [
            self.middle[0] + self.focal * a * bent,
            self.middle[1] + self.focal * b * bent,
        ]
    }

    /// Where the camera is: x, y and height over the sheet, in millimetres.
    #[must_use]
    pub fn place_mm(&self) -> [f64; 3] {
        let along =
            |j: usize| -> f64 { -(0..3).map(|i| self.turn[i][j] * self.shift[i]).sum::<f64>() };
        [along(0), along(1), -along(2)]
    }

    /// How far the camera looks aside from straight down, in degrees.
    #[must_use]
    pub fn tilt_deg(&self) -> f64 {
        libm::acos(self.turn[2][2].clamp(-1.0, 1.0)).to_degrees()
    }

    /// Pixels a millimetre at a place of the sheet (the smaller of both directions).
    #[must_use]
    pub fn px_per_mm(&self, x: f64, y: f64) -> f64 {
        let at = self.pixel([x, y, 0.0]);
        let step = |p: [f64; 2]| libm::hypot(p[0] - at[0], p[1] - at[1]);
        step(self.pixel([x + 1.0, y, 0.0])).min(step(self.pixel([x, y + 1.0, 0.0])))
    }
}
