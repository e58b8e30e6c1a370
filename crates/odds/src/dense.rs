//! Small symmetric matrices, packed row by row, so that one more row leaves the others alone.

/// The lower half of a symmetric matrix.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Symmetric {
    size: usize,
    lower: Vec<f64>,
}

fn place(row: usize, column: usize) -> usize {
    row * (row + 1) / 2 + column
}

impl Symmetric {
    /// Adds rows of zeros until there are `size`.
    pub(crate) fn grow(&mut self, size: usize) {
        if size > self.size {
            self.size = size;
            self.lower.resize(size * (size + 1) / 2, 0.0);
        }
    }

    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        let (row, column) = (row.max(column), row.min(column));
        self.lower[place(row, column)] += value;
    }

    #[cfg(test)]
    pub(crate) fn at(&self, row: usize, column: usize) -> f64 {
        self.lower[place(row.max(column), row.min(column))]
    }

    /// Adds `factor · x xᵀ` for a sparse `x` whose places rise.
    pub(crate) fn add_square(&mut self, x: &[(usize, f64)], factor: f64) {
        for (row, (at, one)) in x.iter().enumerate() {
            for (other, two) in &x[..=row] {
                self.lower[place(*at, *other)] += factor * one * two;
            }
        }
    }

    /// The triangle `L` with `L Lᵀ` = this; nothing where it is not positive definite.
    pub(crate) fn cholesky(&self) -> Option<Triangle> {
        let mut low = self.lower.clone();
        for row in 0..self.size {
            let start = place(row, 0);
            for column in 0..=row {
                let other = place(column, 0);
                let mut sum = low[start + column];
                for at in 0..column {
                    sum -= low[start + at] * low[other + at];
                }
                if row == column {
                    if sum.is_nan() || sum <= 0.0 {
                        return None;
                    }
                    low[start + column] = libm::sqrt(sum);
                } else {
                    low[start + column] = sum / low[other + column];
                }
            }
        }
        Some(Triangle {
            size: self.size,
            lower: low,
        })
    }
}

/// A lower triangle with a positive diagonal.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Triangle {
    size: usize,
    lower: Vec<f64>,
}

impl Triangle {
    pub(crate) fn row(&self, row: usize) -> &[f64] {
        &self.lower[place(row, 0)..=place(row, row)]
    }

    /// Solves `L x = b` in place.
    fn forward(&self, b: &mut [f64]) {
        for row in 0..self.size {
            let line = self.row(row);
            let known: f64 = line[..row].iter().zip(&b[..row]).map(|(l, x)| l * x).sum();
            b[row] = (b[row] - known) / line[row];
        }
    }

    /// Solves `L Lᵀ x = b`.
    pub(crate) fn solve(&self, b: &[f64]) -> Vec<f64> {
        let mut x = b.to_vec();
        self.forward(&mut x);
        for row in (0..self.size).rev() {
            let line = self.row(row);
            x[row] /= line[row];
            let known = x[row];
            for (value, l) in x[..row].iter_mut().zip(line) {
                *value -= l * known;
            }
        }
        x
    }

    /// The logarithm of the determinant of `L Lᵀ`.
    pub(crate) fn log_determinant(&self) -> f64 {
        (0..self.size)
            .map(|row| 2.0 * libm::log(self.lower[place(row, row)]))
            .sum()
    }
}

#[cfg(test)]
mod tests {
    use super::Symmetric;

    #[test]
    fn a_system_worked_by_hand() {
        // [4 2; 2 3] x = [8; 7] has x = [1.25; 1.5] and determinant 8.
        let mut matrix = Symmetric::default();
        matrix.grow(2);
        matrix.add(0, 0, 4.0);
        matrix.add(0, 1, 2.0);
        matrix.add(1, 1, 3.0);
        let triangle = matrix.cholesky().unwrap();
        let x = triangle.solve(&[8.0, 7.0]);
        assert!((x[0] - 1.25).abs() < 1e-15 && (x[1] - 1.5).abs() < 1e-15);
        assert!((triangle.log_determinant() - libm::log(8.0)).abs() < 1e-15);
        matrix.add(0, 0, -4.0);
        assert!(matrix.cholesky().is_none());
    }

    #[test]
    fn a_square_is_added_where_it_belongs() {
        let mut matrix = Symmetric::default();
        matrix.grow(3);
        matrix.add_square(&[(0, 1.0), (2, 3.0)], 2.0);
        assert_eq!(matrix.at(0, 2).to_bits(), 6.0_f64.to_bits());
        assert_eq!(matrix.at(2, 2).to_bits(), 18.0_f64.to_bits());
        assert_eq!(matrix.at(1, 1).to_bits(), 0.0_f64.to_bits());
    }
}
