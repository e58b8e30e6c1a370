//! Small systems of linear equations, and what is fitted with them.

/// Solves a system by elimination with the largest pivot; the last column is the right-hand side.
/// None if it has no single answer.
pub fn linear<const N: usize, const M: usize>(mut rows: [[f64; M]; N]) -> Option<[f64; N]> {
    debug_assert_eq!(N + 1, M);
    for column in 0..N {
        let best =
            (column..N).max_by(|&a, &b| rows[a][column].abs().total_cmp(&rows[b][column].abs()))?;
        if rows[best][column].abs() < 1e-12 || !rows[best][column].is_finite() {
            return None;
        }
        rows.swap(column, best);
        for row in 0..N {
            if row != column {
                let by = rows[row][column] / rows[column][column];
                let above = rows[column];
                for (value, above) in rows[row].iter_mut().zip(above).skip(column) {
                    *value -= by * above;
                }
            }
        }
    }
    let mut found = [0.0; N];
    for (row, value) in found.iter_mut().enumerate() {
        *value = rows[row][N] / rows[row][row];
    }
    Some(found)
}

/// A homography: a plane seen from somewhere.
pub type Homography = [[f64; 3]; 3];

/// A point, and where it goes.
pub type Pair = ([f64; 2], [f64; 2]);

/// The homography that takes `from` to `to` with the least squares of its equations.
pub fn homography(pairs: &[Pair]) -> Option<Homography> {
    // Scaled to about one, so that the equations weigh alike.
    let scale = |points: &dyn Fn(&Pair) -> [f64; 2]| {
        let n = pairs.len() as f64;
        let (sx, sy) = pairs
            .iter()
            .map(points)
            .fold((0.0, 0.0), |s, p| (s.0 + p[0] / n, s.1 + p[1] / n));
        let spread = pairs
            .iter()
            .map(points)
            .map(|p| libm::hypot(p[0] - sx, p[1] - sy) / n)
            .sum::<f64>();
        (sx, sy, spread.max(1e-9))
    };
    if pairs.len() < 4 {
        return None;
    }
    let (fx, fy, fs) = scale(&|p| p.0);
    let (tx, ty, ts) = scale(&|p| p.1);
    let mut normal = [[0.0; 9]; 8];
    for (from, to) in pairs {
        let (x, y) = ((from[0] - fx) / fs, (from[1] - fy) / fs);
        let (u, v) = ((to[0] - tx) / ts, (to[1] - ty) / ts);
        for row in [
            [x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y, u],
            [0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y, v],
        ] {
            for i in 0..8 {
                for j in 0..9 {
                    normal[i][j] += row[i] * row[j];
                }
            }
        }
    }
    let h = linear(normal)?;
    let scaled = [[h[0], h[1], h[2]], [h[3], h[4], h[5]], [h[6], h[7], 1.0]];
    let before = [
        [1.0 / fs, 0.0, -fx / fs],
        [0.0, 1.0 / fs, -fy / fs],
        [0.0, 0.0, 1.0],
    ];
    let after = [[ts, 0.0, tx], [0.0, ts, ty], [0.0, 0.0, 1.0]];
    Some(times(&after, &times(&scaled, &before)))
}

/// Product of two matrices.
pub fn times(a: &[[f64; 3]; 3], b: &[[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let mut out = [[0.0; 3]; 3];
    for (i, row) in out.iter_mut().enumerate() {
        for (j, value) in row.iter_mut().enumerate() {
            *value = (0..3).map(|k| a[i][k] * b[k][j]).sum();
        }
    }
    out
}

/// Where a homography takes a point.
pub fn mapped(h: &Homography, [x, y]: [f64; 2]) -> [f64; 2] {
    let w = h[2][0] * x + h[2][1] * y + h[2][2];
    let w = if w.abs() < 1e-12 { 1e-12 } else { w };
    [
        (h[0][0] * x + h[0][1] * y + h[0][2]) / w,
        (h[1][0] * x + h[1][1] * y + h[1][2]) / w,
    ]
}
