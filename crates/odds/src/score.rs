//! How good given quotes were, on what happened.

use crate::error::{OddsError, within};
use crate::fit::count;
use crate::phrases as say;
use libm::sqrt;

/// A quote as it was given, and what the job came to. It is never recomputed.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Chance and value, rising in both, such as those of [`crate::Spread::quantiles`].
    pub quantiles: Vec<(f64, f64)>,
    /// What it came to, in the same unit.
    pub happened: f64,
}

/// One band, and how often it held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// What it said it would hold: 0.5, 0.8, 0.9.
    pub said: f64,
    pub inside: usize,
    pub below: usize,
    pub above: usize,
    pub quotes: usize,
    /// The share that it truly holds lies in here, 19 times in 20.
    pub low: f64,
    pub high: f64,
}

impl Band {
    pub fn share(&self) -> f64 {
        count(self.inside) / count(self.quotes).max(1.0)
    }
}

/// One chance, and how often what happened stayed below its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reliability {
    pub said: f64,
    pub quotes: usize,
    pub under: usize,
    pub low: f64,
    pub high: f64,
}

/// What the score says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Too few quotes to judge.
    TooFew { quotes: usize, needed: usize },
    /// Eight in ten were eight in ten, as far as so many can tell.
    Holds,
    /// The band held less than it said.
    TooNarrow,
    /// The band held more than it said.
    TooWide,
}

/// A score.
#[derive(Clone, Debug, PartialEq)]
pub struct Score {
    pub quotes: usize,
    pub verdict: Verdict,
    pub bands: Vec<Band>,
    /// Mean pinball loss over the chances told: less is better, in the unit of the quotes.
    pub pinball: f64,
    pub reliability: Vec<Reliability>,
}

/// Fewer quotes than this are not judged.
pub const LEAST_QUOTES: usize = 20;

/// Scores quotes by what happened.
///
/// Formula: a band's share is how many lie within it, with Wilson's interval at 1.96 standard
/// deviations; the pinball loss of a value q at chance p is `p (y - q)` above and
/// `(1 - p) (q - y)` below, meaned over chances and quotes.
///
/// Inputs: the quotes as given, each with rising chances from 0 to 1 and rising values. Bands
/// whose two ends no quote told are left out.
///
/// Returns the verdict on the band of eight in ten ([`Verdict::TooFew`] below
/// [`LEAST_QUOTES`]), each band, the pinball loss, and for each chance how often it held.
///
/// # Errors
///
/// A number that is none, or chances or values that fall.
///
/// # Limits
///
/// Coverage says whether bands are honest, not whether they are narrow: the pinball loss
/// weighs both, and compares only quotes of the same jobs.
///
/// # Source
///
/// Wilson's score interval, held against statsmodels; the quantile loss of Koenker and Bassett.
///
/// ```
/// use odds::{Given, Verdict, score};
///
/// let quotes = vec![Given { quantiles: vec![(0.1, 3.0), (0.9, 5.0)], happened: 4.0 }];
/// let found = score(&quotes)?;
/// assert_eq!(found.verdict, Verdict::TooFew { quotes: 1, needed: 20 });
/// assert!((found.pinball - 0.1).abs() < 1e-12);
/// # Ok::<(), odds::OddsError>(())
/// ```
pub fn score(quotes: &[Given]) -> Result<Score, OddsError> {
    for quote in quotes {
        check(quote)?;
    }
    let bands: Vec<Band> = [(0.5, 0.25, 0.75), (0.8, 0.1, 0.9), (0.9, 0.05, 0.95)]
        .into_iter()
        .filter_map(|(said, from, to)| band(quotes, said, from, to))
        .collect();
    let mut losses = (0.0, 0_usize);
    for quote in quotes {
        for (p, q) in &quote.quantiles {
            losses.0 += pinball(*p, *q, quote.happened);
            losses.1 += 1;
        }
    }
    Ok(Score {
        quotes: quotes.len(),
        verdict: verdict(quotes.len(), &bands),
        bands,
        pinball: losses.0 / count(losses.1).max(1.0),
        reliability: reliability(quotes),
    })
}

/// The quantile loss of `q`, told for chance `p`, where `y` happened.
pub fn pinball(p: f64, q: f64, y: f64) -> f64 {
    if y >= q {
        p * (y - q)
    } else {
        (1.0 - p) * (q - y)
    }
}

/// Wilson's interval for a share.
///
/// Formula: `(x + z²/2 ± z sqrt(x (n - x) / n + z²/4)) / (n + z²)` with z = 1.96.
///
/// Inputs: how many of how many. Returns the two ends, 0 and 1 where there is none.
///
/// ```
/// let (low, high) = odds::wilson(6, 32);
/// assert!((low - 0.08890).abs() < 1e-5 && (high - 0.35309).abs() < 1e-5);
/// ```
pub fn wilson(found: usize, of: usize) -> (f64, f64) {
    const Z: f64 = 1.959_963_984_540_054;
    if of == 0 {
        return (0.0, 1.0);
    }
    let (x, n) = (count(found.min(of)), count(of));
    let middle = x + Z * Z / 2.0;
    let reach = Z * sqrt(x * (n - x) / n + Z * Z / 4.0);
    let all = n + Z * Z;
    (
        ((middle - reach) / all).max(0.0),
        ((middle + reach) / all).min(1.0),
    )
}

fn check(quote: &Given) -> Result<(), OddsError> {
    let bounds = (-1e12, 1e12);
    within(
        say::what_happened(),
        quote.happened,
        "",
        bounds,
        say::write_what_it_came_to(),
    )?;
    let mut last = (0.0, f64::NEG_INFINITY);
    for (p, q) in &quote.quantiles {
        within(
            say::a_chance(),
            *p,
            "",
            (last.0, 1.0),
            say::write_rising_chances(),
        )?;
        within(
            say::a_value(),
            *q,
            "",
            (f64::max(-1e12, last.1), 1e12),
            say::write_rising_values(),
        )?;
        last = (*p, *q);
    }
    Ok(())
}

fn told(quote: &Given, chance: f64) -> Option<f64> {
    let found = quote
        .quantiles
        .iter()
        .find(|(p, _)| (p - chance).abs() < 1e-9)?;
    Some(found.1)
}

fn band(quotes: &[Given], said: f64, from: f64, to: f64) -> Option<Band> {
    let (mut inside, mut below, mut above) = (0, 0, 0);
    for quote in quotes {
        let (Some(low), Some(high)) = (told(quote, from), told(quote, to)) else {
            continue;
        };
        if quote.happened < low {
            below += 1;
        } else if quote.happened > high {
            above += 1;
        } else {
            inside += 1;
        }
    }
    let quotes = inside + below + above;
    let (low, high) = wilson(inside, quotes);
    (quotes > 0).then_some(Band {
        said,
        inside,
        below,
        above,
        quotes,
        low,
        high,
    })
}

fn verdict(quotes: usize, bands: &[Band]) -> Verdict {
    let band = bands.iter().find(|band| (band.said - 0.8).abs() < 1e-9);
    match band {
        Some(band) if band.quotes >= LEAST_QUOTES => {
            if band.high < band.said {
                Verdict::TooNarrow
            } else if band.low > band.said {
                Verdict::TooWide
            } else {
                Verdict::Holds
            }
        }
        band => Verdict::TooFew {
            quotes: band.map_or(quotes, |band| band.quotes),
            needed: LEAST_QUOTES,
        },
    }
}

fn reliability(quotes: &[Given]) -> Vec<Reliability> {
    crate::CHANCES
        .iter()
        .filter_map(|said| {
            let told: Vec<bool> = quotes
                .iter()
                .filter_map(|quote| Some(quote.happened <= told(quote, *said)?))
                .collect();
            let under = told.iter().filter(|under| **under).count();
            let (low, high) = wilson(under, told.len());
            (!told.is_empty()).then_some(Reliability {
                said: *said,
                quotes: told.len(),
                under,
                low,
                high,
            })
        })
        .collect()
}
