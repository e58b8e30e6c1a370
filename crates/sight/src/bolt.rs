//! What a bolt that lies on a sheet looks like from where the camera is.

use crate::shape::hull;

/// Kinds of head.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Head {
    /// Hexagon.
    Hex,
    /// Hexagon with a flange.
    Flange,
    /// Cylinder with a socket.
    Socket,
    /// Low rounded head.
    Pan,
}

impl Head {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Hex, Self::Flange, Self::Socket, Self::Pan];
}

/// One common thread size with the heads that go with it, in millimetres.
#[derive(Debug)]
pub struct Size {
    /// What it is called.
    pub name: &'static str,
    /// Diameter of the thread.
    pub thread: f64,
    /// Hexagon: across flats, height.
    hex: [f64; 2],
    /// Hexagon with flange: across flats, diameter of the flange, height.
    flange: [f64; 3],
    /// Cylinder: diameter, height.
    socket: [f64; 2],
    /// Rounded: diameter, height.
    pan: [f64; 2],
    /// Washer: outer diameter.
    pub washer: f64,
}

/// The common sizes, as the standards for bolts and screws have them (hexagon ISO 4017, flange
/// EN 1665, socket ISO 4762, pan ISO 14583, washers ISO 7089), from memory of the trade.
pub const SIZES: [Size; 5] = [
    Size {
        name: "M5",
        thread: 5.0,
        hex: [8.0, 3.5],
        flange: [8.0, 11.8, 5.4],
        socket: [8.5, 5.0],
        pan: [9.5, 3.7],
        washer: 10.0,
    },
    Size {
        name: "M6",
        thread: 6.0,
        hex: [10.0, 4.0],
        flange: [8.0, 14.2, 6.6],
        socket: [10.0, 6.0],
        pan: [12.0, 4.6],
        washer: 12.0,
    },
    Size {
        name: "M8",
        thread: 8.0,
        hex: [13.0, 5.3],
        flange: [10.0, 18.0, 8.1],
        socket: [13.0, 8.0],
        pan: [16.0, 6.0],
        washer: 16.0,
    },
    Size {
        name: "M10",
        thread: 10.0,
        hex: [16.0, 6.4],
        flange: [13.0, 22.3, 9.2],
        socket: [16.0, 10.0],
        pan: [20.0, 7.5],
        washer: 20.0,
    },
    Size {
        name: "M12",
        thread: 12.0,
        hex: [18.0, 7.5],
        flange: [15.0, 26.6, 11.5],
        socket: [18.0, 12.0],
        pan: [24.0, 9.0],
        washer: 24.0,
    },
];

impl Size {
    /// Height of a head.
    #[must_use]
    pub fn head_height(&self, head: Head) -> f64 {
        match head {
            Head::Hex => self.hex[1],
            Head::Flange => self.flange[2],
            Head::Socket => self.socket[1],
            Head::Pan => self.pan[1],
        }
    }

    /// Half of what a head measures across where it touches the sheet.
    #[must_use]
    pub fn head_rests_on(&self, head: Head) -> f64 {
        match head {
            Head::Hex => self.hex[0] / 2.0 - 0.1,
            Head::Flange => self.flange[1] / 2.0,
            Head::Socket => self.socket[0] / 2.0 - 0.05,
            Head::Pan => self.pan[0] / 2.0,
        }
    }

    /// Width of a head as seen: diameter, or across flats.
    #[must_use]
    pub fn head_width(&self, head: Head) -> f64 {
        match head {
            Head::Hex => self.hex[0],
            Head::Flange => self.flange[1],
            Head::Socket => self.socket[0],
            Head::Pan => self.pan[0],
        }
    }

    /// Across flats of a nut.
    #[must_use]
    pub fn nut_flats(&self) -> f64 {
        self.hex[0]
    }
}

/// A bolt on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bolt {
    /// Its head.
    pub head: Head,
    /// Which of [`SIZES`].
    pub size: usize,
    /// Where the axis crosses the underside of the head, seen from straight above.
    pub x: f64,
    /// The same, down the sheet.
    pub y: f64,
    /// From head to end, radians from x towards y.
    pub yaw: f64,
    /// Under the head.
    pub length: f64,
}

/// Three points on the axis: top of the head, underside of the head, end; x, y, height.
pub type Axis = [[f64; 3]; 3];

impl Bolt {
    /// Its axis as it rests on the head's edge and the end of its shank.
    #[must_use]
    pub fn axis(&self) -> Axis {
        let size = &SIZES[self.size];
        let rest = size.head_rests_on(self.head);
        let half = size.thread / 2.0;
        let sine = ((rest - half) / self.length.max(1.0)).clamp(-0.5, 0.5);
        let cosine = libm::sqrt(1.0 - sine * sine);
        let (dx, dy) = (libm::cos(self.yaw), libm::sin(self.yaw));
        let at = |along: f64| {
            [
                self.x + along * cosine * dx,
                self.y + along * cosine * dy,
                (rest * cosine - along * sine).max(0.0),
            ]
        };
        [at(-size.head_height(self.head)), at(0.0), at(self.length)]
    }

    /// The middle of its outline from straight above.
    #[must_use]
    pub fn middle(&self) -> [f64; 2] {
        let axis = self.axis();
        [
            (axis[0][0] + axis[2][0]) / 2.0,
            (axis[0][1] + axis[2][1]) / 2.0,
        ]
    }
}

/// Outlines on the sheet's plane, each convex, in millimetres.
#[derive(Debug, Clone)]
pub struct Outline {
    /// The head: one or two polygons.
    pub head: Vec<Vec<[f64; 2]>>,
    /// Shank with thread.
    pub shank: Vec<[f64; 2]>,
    /// The last two millimetres of the shank.
    pub end: Vec<[f64; 2]>,
}

/// How long the end is that is told from the rest of the shank.
pub const END_MM: f64 = 2.0;

/// Where a point over the sheet appears on it, seen from a place.
#[must_use]
pub fn onto_sheet(eye: [f64; 3], [x, y, height]: [f64; 3]) -> [f64; 2] {
    let by = eye[2] / (eye[2] - height).max(1.0);
    [eye[0] + (x - eye[0]) * by, eye[1] + (y - eye[1]) * by]
}

/// What a bolt with this axis looks like from `eye`.
#[must_use]
pub fn outline(eye: [f64; 3], head: Head, size: usize, axis: &Axis) -> Outline {
    let s = &SIZES[size];
    let length = |a: [f64; 3], b: [f64; 3]| {
        libm::sqrt((0..3).map(|i| (a[i] - b[i]) * (a[i] - b[i])).sum::<f64>())
    };
    let under_head = length(axis[1], axis[2]).max(0.1);
    let along: [f64; 3] = [0, 1, 2].map(|i| (axis[2][i] - axis[1][i]) / under_head);
    let flat = libm::hypot(along[0], along[1]).max(1e-6);
    // Across the axis, level; and across both, upwards.
    let side = [-along[1] / flat, along[0] / flat, 0.0];
    let up = [
        -along[0] / flat * along[2],
        -along[1] / flat * along[2],
        flat,
    ];
    // A ring round the axis at a distance from the underside of the head; `corners` 6 with a flat
    // below, else as good as round.
    let ring = |at: f64, radius: f64, corners: usize, out: &mut Vec<[f64; 2]>| {
        let turn = std::f64::consts::TAU / corners as f64;
        let (step_s, step_c) = libm::sincos(turn);
        let (s, c) = libm::sincos(turn / 2.0 + std::f64::consts::FRAC_PI_2);
        let (mut c, mut s) = (c * radius, s * radius);
        let middle = [0, 1, 2].map(|k| axis[1][k] + along[k] * at);
        for _ in 0..corners {
            let point = [0, 1, 2].map(|k| middle[k] + side[k] * c + up[k] * s);
            out.push(onto_sheet(eye, point));
            (c, s) = (c * step_c - s * step_s, s * step_c + c * step_s);
        }
    };
    let solid = |rings: &[(f64, f64, usize)]| {
        let mut points = Vec::new();
        for &(at, radius, corners) in rings {
            ring(at, radius, corners, &mut points);
        }
        hull(&points)
    };
    let corner = 2.0 / libm::sqrt(3.0) / 2.0;
    let k = s.head_height(head);
    let heads = match head {
        Head::Hex => vec![solid(&[
            (0.0, (s.hex[0] - 0.2) * corner, 6),
            (-k, (s.hex[0] - 0.2) * corner * 0.97, 6),
        ])],
        Head::Flange => vec![
            solid(&[
                (0.0, s.flange[1] / 2.0, 20),
                (-0.12 * k, s.flange[1] / 2.0, 20),
                (-0.3 * k, s.flange[1] * 0.4, 20),
            ]),
            solid(&[(0.0, s.flange[0] * 0.55, 12), (-k, s.flange[0] * 0.54, 12)]),
        ],
        Head::Socket => vec![solid(&[
            (0.0, s.socket[0] / 2.0 - 0.05, 16),
            (-k, s.socket[0] / 2.0 - 0.1, 16),
        ])],
        Head::Pan => vec![solid(&[
            (0.0, s.pan[0] / 2.0, 16),
            (-0.35 * k, s.pan[0] / 2.0, 16),
            (-0.75 * k, s.pan[0] * 0.42, 16),
            (-k, s.pan[0] * 0.27, 16),
        ])],
    };
    let radius = s.thread / 2.0 - 0.08;
    let chamfer = 0.08 * s.thread;
    Outline {
        head: heads,
        shank: solid(&[
            (0.0, radius, 12),
            (under_head - chamfer, radius, 12),
            (under_head, radius - chamfer, 12),
        ]),
        end: solid(&[
            ((under_head - END_MM).max(0.0), radius, 12),
            (under_head - chamfer, radius, 12),
            (under_head, radius - chamfer, 12),
        ]),
    }
}
