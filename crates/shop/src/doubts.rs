//! What somebody typed that cannot be, or hardly is: a page asks before it keeps it. A fact that
//! comes all the same is taken, for it is never refused: what stands here is asked only by a page,
//! at its field, while the person is still there to mend it.

use crate::phrases::doubts as words;
use crate::trouble::{Trouble, TroubleKind};
use fastener::designation::{Kind as Written, read as designation};
use measure::{Dimension, Measured, Unit, read};
use repair::{Fact, Item, OdometerAt, Order, Pattern, ProofIs};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// One figure that is odd, by the path of its field in the fact.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Odd {
    pub path: String,
    pub what: String,
    pub how: How,
}

/// Whether it can be at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum How {
    /// It can't be kept from a page; how to mend it.
    Impossible(&'static str),
    /// It is kept if the person says it again.
    Doubtful,
}

/// What a fact is held against.
pub(crate) struct Known<'a> {
    pub order: &'a Order,
    /// Every item of the order, as it is known now.
    pub items: Vec<&'a Item>,
    /// The odometer on the vehicle's visit before, as written.
    pub last_visit: Option<String>,
}

/// The last odometer reading of an order, by the clock of whoever told it.
pub(crate) fn odometer(order: &Order, wanted: OdometerAt) -> Option<String> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Odometer { reading, at } if *at == wanted => {
                Some(((filed.stamp.at, command), reading))
            }
            _ => None,
        })
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|(_, reading)| reading.as_str().to_owned())
}

/// What is odd about a fact.
pub(crate) fn doubts(fact: &Fact, known: &Known<'_>) -> Vec<Odd> {
    match fact {
        Fact::Odometer { reading, at } => {
            let before = match at {
                OdometerAt::In => known.last_visit.clone().map(|reading| (reading, *at)),
                OdometerAt::Out => {
                    odometer(known.order, OdometerAt::In).map(|reading| (reading, *at))
                }
            };
            distance(reading.as_str(), before).into_iter().collect()
        }
        Fact::Declared { item } => item.pattern.as_ref().map_or_else(Vec::new, |pattern| {
            passes(
                "declared.item.pattern",
                pattern,
                item.size.as_ref().map(repair::Token::as_str),
            )
        }),
        Fact::TorqueTold { item, pattern, .. } => {
            let item = known.items.iter().find(|known| known.id == *item);
            let size = item.and_then(|item| item.size.as_ref());
            passes(
                "torque-told.pattern",
                pattern,
                size.map(repair::Token::as_str),
            )
        }
        Fact::SizeTold { item, size, .. } => {
            let item = known.items.iter().find(|known| known.id == *item);
            let before = item.and_then(|item| item.size.as_ref());
            before
                .filter(|before| before.as_str() != size.as_str())
                .map(|before| Odd {
                    path: "size-told.size".to_owned(),
                    what: words::told_before(before.as_str(), size.as_str()),
                    how: How::Doubtful,
                })
                .into_iter()
                .collect()
        }
        Fact::Poured { amount, .. } => volume("poured.amount", amount.as_str()),
        Fact::Drained { amount, .. } => volume("drained.amount", amount.as_str()),
        Fact::PartNeeded {
            quantity,
            cost,
            price,
            core,
            ..
        } => {
            let mut out = Vec::new();
            if *quantity <= Decimal::ZERO {
                out.push(Odd {
                    path: "part-needed.quantity".to_owned(),
                    what: words::no_number_of_parts(quantity),
                    how: How::Impossible(words::write_how_many()),
                });
            }
            for (field, sum) in [("cost", cost), ("price", price), ("core", core)] {
                if let Some(sum) = sum.filter(|sum| *sum < Decimal::ZERO) {
                    out.push(Odd {
                        path: format!("part-needed.{field}"),
                        what: words::below_nought(sum),
                        how: How::Impossible(words::write_nought_or_more()),
                    });
                }
            }
            out
        }
        _ => Vec::new(),
    }
}

/// What is odd about a vehicle that leaves: it was driven here, and nobody read the odometer on
/// the way out. A job that needs no road test stays quick.
pub(crate) fn leaving(order: &Order) -> Option<Odd> {
    let driven = order.beside_moves().any(|(_, filed)| {
        matches!(
            filed.fact,
            Fact::Proved {
                proof: ProofIs::RoadTest,
                ..
            }
        )
    });
    let untold = odometer(order, OdometerAt::Out).is_none();
    (driven && untold).then(|| Odd {
        path: "hand-over.odometer".to_owned(),
        what: words::odometer_not_noted().to_owned(),
        how: How::Doubtful,
    })
}

/// All of them as one trouble: what can't be comes first, and alone.
pub(crate) fn trouble(odd: &[(usize, Odd)]) -> Option<Trouble> {
    let place = |nth: usize, odd: &Odd| format!("{nth}/{}", odd.path);
    let impossible = odd.iter().find_map(|(nth, odd)| match odd.how {
        How::Impossible(mend) => Some(Trouble::new(
            TroubleKind::Unreadable,
            place(*nth, odd),
            odd.what.clone(),
            mend,
        )),
        How::Doubtful => None,
    });
    impossible.or_else(|| {
        let (nth, first) = odd.first()?;
        let all: Vec<&str> = odd.iter().map(|(_, odd)| odd.what.as_str()).collect();
        Some(Trouble::new(
            TroubleKind::Doubtful,
            place(*nth, first),
            all.join(". "),
            words::look_again_press_again(),
        ))
    })
}

/// A vehicle's road is told in kilometres or miles. Here a comma before three digits is no
/// riddle: nobody reads an odometer to the metre.
fn distance(text: &str, before: Option<(String, OdometerAt)>) -> Option<Odd> {
    /// Few reach it.
    const MOST_KM: f64 = 1_500_000.0;
    let odd = |what: String, how: How| {
        Some(Odd {
            path: "odometer.reading".to_owned(),
            what,
            how,
        })
    };
    let mend = words::write_what_it_shows();
    let Some(now) = kilometres(text) else {
        return odd(
            words::no_odometer_reading(format!("{text:?}")),
            How::Impossible(mend),
        );
    };
    if now < 0.0 {
        return odd(words::odometer_below_nought(text), How::Impossible(mend));
    }
    if now > MOST_KM {
        return odd(words::more_than_vehicles_reach(text), How::Doubtful);
    }
    let (before, at) = before?;
    if kilometres(&before)? > now {
        let what = match at {
            OdometerAt::In => words::less_than_last_visit(before, text),
            OdometerAt::Out => words::less_than_on_the_way_in(before, text),
        };
        return odd(what, How::Doubtful);
    }
    None
}

/// What a reading says in kilometres; nothing where it is none.
fn kilometres(text: &str) -> Option<f64> {
    const KM_A_MILE: f64 = 1.609_344;
    let text = text.trim();
    let at = text.find(|c: char| c.is_alphabetic())?;
    let (number, unit) = text.split_at(at);
    let factor = match unit.trim().to_lowercase().trim_end_matches('.') {
        "km" | "kms" | "kilometres" | "kilometers" | "kilometer" => 1.0,
        "mi" | "mile" | "miles" => KM_A_MILE,
        _ => return None,
    };
    Some(whole(number)? * factor)
}

/// A number whose point or comma before three digits parts thousands.
fn whole(text: &str) -> Option<f64> {
    let blank = |c: char| c.is_whitespace() || c == '\u{a0}' || c == '\u{202f}' || c == '\'';
    let text: String = text.chars().filter(|c| !blank(*c)).collect();
    let mut groups = text.split([',', '.']);
    let mut out = groups.next()?.to_owned();
    let mut last = groups.peekable();
    while let Some(group) = last.next() {
        let fraction = group.len() != 3 && last.peek().is_none();
        if fraction {
            out.push('.');
        } else if group.len() != 3 {
            return None;
        }
        out.push_str(group);
    }
    out.parse().ok().filter(|number: &f64| number.is_finite())
}

fn in_unit(measured: &Measured, unit: Unit) -> Option<f64> {
    measured.convert(unit).ok()?.number().to_f64()
}

fn volume(path: &str, text: &str) -> Vec<Odd> {
    /// More than a light truck holds of any fluid but fuel.
    const MOST_L: f64 = 30.0;
    let odd = |what: String, how: How| {
        vec![Odd {
            path: path.to_owned(),
            what,
            how,
        }]
    };
    let mend = words::write_with_litres();
    let Some(litres) = read(text, Dimension::Volume)
        .ok()
        .and_then(|measured| in_unit(&measured, Unit::Litre))
    else {
        return odd(words::no_amount(format!("{text:?}")), How::Impossible(mend));
    };
    if litres < 0.0 {
        return odd(words::below_nought(text), How::Impossible(mend));
    }
    if litres > MOST_L {
        return odd(words::more_than_it_holds(text), How::Doubtful);
    }
    Vec::new()
}

/// Every pass is a torque or an angle above nought, and none that breaks any bolt of that size.
fn passes(path: &str, pattern: &Pattern, size: Option<&str>) -> Vec<Odd> {
    let mut out = Vec::new();
    for (nth, pass) in pattern.passes.iter().enumerate() {
        let path = format!("{path}.passes.{nth}");
        let text = pass.as_str();
        let odd = |what: String, how: How| Odd {
            path: path.clone(),
            what,
            how,
        };
        let mend = words::write_torque_with_unit();
        let torque = read(text, Dimension::Torque).ok();
        let angle = read(text, Dimension::Angle).ok();
        let newton_metres = torque
            .as_ref()
            .and_then(|torque| in_unit(torque, Unit::NewtonMetre));
        let degrees = angle
            .as_ref()
            .and_then(|angle| in_unit(angle, Unit::Degree));
        match (newton_metres, degrees) {
            (None, None) => out.push(odd(
                words::no_torque_no_angle(format!("{text:?}")),
                How::Impossible(mend),
            )),
            (Some(value), _) | (None, Some(value)) if value <= 0.0 => {
                out.push(odd(words::tightens_nothing(text), How::Impossible(mend)));
            }
            (Some(torque), _) => {
                if let Some(most) = size.and_then(breaks_at).filter(|most| torque > *most) {
                    let most = most.round();
                    out.push(odd(words::breaks_the_bolt(text, most), How::Doubtful));
                } else if torque > MOST_NM {
                    out.push(odd(words::more_than_bolts_take(text), How::Doubtful));
                }
            }
            (None, Some(angle)) => {
                if angle > MOST_DEGREES {
                    out.push(odd(words::more_than_two_turns(text), How::Doubtful));
                }
            }
        }
    }
    out
}

/// Above an axle nut.
const MOST_NM: f64 = 700.0;
const MOST_DEGREES: f64 = 720.0;

/// A torque that no bolt of that size bears, in N·m: class 12.9 at its breaking load, by the
/// short form with a nut factor of 0.2; nothing where the size is no thread.
///
/// Formula: T = 0.2 · d · A · 1220 MPa, with d in m and A the stress area in mm².
fn breaks_at(size: &str) -> Option<f64> {
    const NUT_FACTOR: f64 = 0.2;
    const STRONGEST_MPA: f64 = 1220.0;
    let Written::Screw { thread, .. } = designation(size).ok()?.kind else {
        return None;
    };
    let area_mm2 = thread.geometry().stress_area_mm2;
    Some(NUT_FACTOR * thread.diameter_mm() / 1000.0 * area_mm2 * STRONGEST_MPA)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn says(text: &str, before: Option<&str>) -> Option<How> {
        let before = before.map(|before| (before.to_owned(), OdometerAt::In));
        distance(text, before).map(|odd| odd.how)
    }

    #[test]
    fn an_odometer_reads_as_it_is_written_anywhere() {
        for good in ["148200 km", "88,200 mi", "88.200 km", "148 200 km", "0 km"] {
            assert_eq!(says(good, None), None, "{good}");
        }
        for bad in ["abc", "-5 km", "km", "", "12 L", "5 mm"] {
            assert!(matches!(says(bad, None), Some(How::Impossible(_))), "{bad}");
        }
        assert_eq!(says("100 km", Some("148200 km")), Some(How::Doubtful));
        assert_eq!(says("148200 km", Some("88,200 mi")), None);
        assert_eq!(says("9999999 km", None), Some(How::Doubtful));
    }

    fn torque(pass: &str, size: Option<&str>) -> Option<How> {
        let pattern = Pattern {
            passes: vec![repair::Written::new(pass).unwrap()],
            sequence: Vec::new(),
            source: None,
        };
        passes("p", &pattern, size).pop().map(|odd| odd.how)
    }

    #[test]
    fn a_torque_is_no_other_thing_and_breaks_no_bolt() {
        for (good, size) in [
            ("10 Nm", Some("M6x20 8.8")),
            ("120 Nm", Some("M12x1.25")),
            ("90 deg", None),
            ("85 lb-ft", Some("1/2-20")),
            ("300 Nm", None),
        ] {
            assert_eq!(torque(good, size), None, "{good} {size:?}");
        }
        for bad in ["0 Nm", "-10 Nm", "tight", "10", "5 L"] {
            assert!(
                matches!(torque(bad, None), Some(How::Impossible(_))),
                "{bad}"
            );
        }
        assert_eq!(torque("120 Nm", Some("M6")), Some(How::Doubtful));
        assert_eq!(torque("5000 Nm", None), Some(How::Doubtful));
    }

    #[test]
    fn an_amount_is_above_nought_and_fits_a_vehicle() {
        let how = |text: &str| volume("p", text).pop().map(|odd| odd.how);
        assert_eq!(how("5.5 L"), None);
        assert_eq!(how("6 qt"), None);
        assert!(matches!(how("-1 L"), Some(How::Impossible(_))));
        assert!(matches!(how("some"), Some(How::Impossible(_))));
        assert_eq!(how("55 L"), Some(How::Doubtful));
    }
}
