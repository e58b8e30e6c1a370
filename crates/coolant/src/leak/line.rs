//! A least-squares line with Student's band, in pieces where the gauge jumped.

use crate::student::quantile;

/// A line x = start + rate · hours; each piece between two jumps has a start of its own.
#[derive(Clone, Debug)]
pub(super) struct Fitted {
    pub(super) rate_per_h: f64,
    /// Standard error of the rate.
    pub(super) rate_error: f64,
    /// Scatter of one reading: what is seen, or what the gauge allows if that is more.
    pub(super) scatter: f64,
    pub(super) degrees: u32,
    /// Sum of the squares that the line leaves.
    pub(super) squares: f64,
    pieces: Vec<Piece>,
    spread: f64,
}

#[derive(Clone, Copy, Debug)]
struct Piece {
    from_h: f64,
    mean_h: f64,
    mean_x: f64,
    count: f64,
}

/// The line through (hours, x), at least three points at different times.
pub(super) fn fitted(points: &[(f64, f64)], least_scatter: f64) -> Fitted {
    fitted_apart(points, &[], least_scatter)
}

/// The line through (hours, x), begun anew at each index of `cuts`, with one rate for all.
pub(super) fn fitted_apart(points: &[(f64, f64)], cuts: &[usize], least_scatter: f64) -> Fitted {
    let parts = parted(points, cuts);
    let pieces: Vec<Piece> = parts.iter().filter_map(|part| piece(part)).collect();
    let (mut spread, mut product) = (0.0, 0.0);
    for (part, piece) in parts.iter().zip(&pieces) {
        for (h, x) in *part {
            spread += (h - piece.mean_h) * (h - piece.mean_h);
            product += (h - piece.mean_h) * (x - piece.mean_x);
        }
    }
    let rate_per_h = product / spread;
    let squares: f64 = parts
        .iter()
        .zip(&pieces)
        .flat_map(|(part, piece)| part.iter().map(move |point| (piece, point)))
        .map(|(piece, (h, x))| x - piece.mean_x - rate_per_h * (h - piece.mean_h))
        .map(|off| off * off)
        .sum();
    let degrees = points.len().saturating_sub(1 + pieces.len()).max(1);
    let degrees = u32::try_from(degrees).unwrap_or(u32::MAX);
    let scatter = libm::sqrt(squares / f64::from(degrees)).max(least_scatter);
    Fitted {
        rate_per_h,
        rate_error: scatter / libm::sqrt(spread),
        scatter,
        degrees,
        squares,
        pieces,
        spread,
    }
}

/// The pieces between cuts, none of them empty.
pub(super) fn parted<'a>(points: &'a [(f64, f64)], cuts: &[usize]) -> Vec<&'a [(f64, f64)]> {
    let mut rest = points;
    let mut from = 0;
    let mut parts = Vec::new();
    for cut in cuts {
        let Some((part, after)) = rest.split_at_checked(cut.saturating_sub(from)) else {
            break;
        };
        parts.push(part);
        rest = after;
        from = *cut;
    }
    parts.push(rest);
    parts.retain(|part| !part.is_empty());
    parts
}

fn piece(part: &[(f64, f64)]) -> Option<Piece> {
    let count = count(part.len());
    Some(Piece {
        from_h: part.first()?.0,
        mean_h: part.iter().map(|(h, _)| h).sum::<f64>() / count,
        mean_x: part.iter().map(|(_, x)| x).sum::<f64>() / count,
        count,
    })
}

impl Fitted {
    /// x at a time, and its standard error.
    pub(super) fn at(&self, hours: f64) -> (f64, f64) {
        let piece = self
            .pieces
            .iter()
            .rev()
            .find(|piece| piece.from_h <= hours)
            .or(self.pieces.first());
        let Some(piece) = piece else {
            return (0.0, 0.0);
        };
        let away = hours - piece.mean_h;
        let error = self.scatter * libm::sqrt(1.0 / piece.count + away * away / self.spread);
        (piece.mean_x + self.rate_per_h * away, error)
    }

    /// The t of a two-sided 95 % band.
    pub(super) fn student(&self) -> f64 {
        quantile(0.975, self.degrees)
    }
}

/// A count as a number; readings are few.
pub(super) fn count(length: usize) -> f64 {
    f64::from(u32::try_from(length).unwrap_or(u32::MAX))
}
