//! Outlines: hulls, areas, what lies inside.

/// The convex hull, clockwise as seen with y downwards.
pub fn hull(points: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut sorted = points.to_vec();
    sorted.sort_unstable_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let cross = |o: [f64; 2], a: [f64; 2], b: [f64; 2]| {
        (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
    };
    let mut out: Vec<[f64; 2]> = Vec::with_capacity(sorted.len());
    let mut half = |points: &mut dyn Iterator<Item = [f64; 2]>| {
        let base = out.len();
        for p in points {
            while out.len() >= base + 2 && cross(out[out.len() - 2], out[out.len() - 1], p) <= 0.0 {
                out.pop();
            }
            out.push(p);
        }
        out.pop();
    };
    half(&mut sorted.iter().copied());
    half(&mut sorted.iter().rev().copied());
    out
}

/// Area of a polygon.
pub fn area(polygon: &[[f64; 2]]) -> f64 {
    let n = polygon.len();
    (0..n)
        .map(|i| {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            a[0] * b[1] - a[1] * b[0]
        })
        .sum::<f64>()
        .abs()
        / 2.0
}

/// For each row that a convex polygon crosses: the row, and the first and last column inside.
/// Rows and columns are whole numbers; points on the line count.
pub fn rows_inside(
    polygon: &[[f64; 2]],
    width: usize,
    height: usize,
) -> Vec<(usize, usize, usize)> {
    let top = polygon.iter().map(|p| p[1]).fold(f64::MAX, f64::min);
    let bottom = polygon.iter().map(|p| p[1]).fold(f64::MIN, f64::max);
    let mut rows = Vec::new();
    if width == 0 || height == 0 || top > bottom {
        return rows;
    }
    let first = libm::ceil(top).max(0.0) as usize;
    let last = libm::floor(bottom).min(height as f64 - 1.0);
    if last < 0.0 {
        return rows;
    }
    let n = polygon.len();
    for row in first..=last as usize {
        let y = row as f64;
        let (mut left, mut right) = (f64::MAX, f64::MIN);
        for i in 0..n {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            let (low, high) = if a[1] <= b[1] { (a, b) } else { (b, a) };
            if low[1] <= y && y <= high[1] {
                let span = high[1] - low[1];
                if span < 1e-12 {
                    left = left.min(low[0]).min(high[0]);
                    right = right.max(low[0]).max(high[0]);
                } else {
                    let x = low[0] + (high[0] - low[0]) * (y - low[1]) / span;
                    left = left.min(x);
                    right = right.max(x);
                }
            }
        }
        let left = libm::ceil(left).max(0.0);
        let right = libm::floor(right).min(width as f64 - 1.0);
        if left <= right {
            rows.push((row, left as usize, right as usize));
        }
    }
    rows
}
