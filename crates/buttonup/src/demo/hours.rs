//! When the invented shop is open. Its orders are told as of a working day that goes on as it is
//! made, so it keeps usual hours where those fit, and else works around the hour at which it is
//! made.

use jiff::ToSpan;
use jiff::civil::{DateTime, Weekday};

/// On which days it is open, and from which hour to which.
fn day(local: DateTime) -> (&'static str, i8, i8) {
    let usual = (9..=13).contains(&local.hour()) && local.weekday() != Weekday::Sunday;
    if usual {
        return ("mon-sat", 7, 17);
    }
    let hour = local.hour();
    ("mon-sun", (hour - 5).max(0), (hour + 5).min(24))
}

/// A time some hours on at which it is open: today, or else four hours into tomorrow, or the day
/// after where tomorrow it is closed.
pub fn open_in(local: DateTime, hours: i8) -> DateTime {
    let (days, opens, closes) = day(local);
    if local.hour() + hours < closes {
        return local.saturating_add(i64::from(hours).hours());
    }
    let closed = |at: DateTime| days == "mon-sat" && at.weekday() == Weekday::Sunday;
    let tomorrow = local.saturating_add(1.day());
    let next = match closed(tomorrow) {
        true => local.saturating_add(2.days()),
        false => tomorrow,
    };
    next.date().at((opens + 4).min(23), 30, 0, 0)
}

/// The hours of the shop, and of those who do not work all of them; by name in the record.
pub fn hours(local: DateTime) -> [(Option<&'static str>, String); 2] {
    let (days, opens, closes) = day(local);
    // A break of half an hour in the middle, and an hour earlier home.
    let noon = opens.midpoint(closes);
    let week =
        |closes: i8| format!("{days} {opens:02}:00-{noon:02}:00, {noon:02}:30-{closes:02}:00");
    [(None, week(closes)), (Some("pavel"), week(closes - 1))]
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use shop::repair::Week;

    #[test]
    fn it_is_a_working_day_at_whatever_hour_it_is_made() {
        let monday = date(2026, 11, 30).at(0, 0, 0, 0);
        for half_hours in 0..7 * 48 {
            let local = monday.checked_add((half_hours * 30).minutes()).unwrap();
            for (_, week) in hours(local) {
                assert!(Week::read(&week).is_ok(), "{local}: {week}");
            }
            let [(_, week), _] = hours(local);
            let week = Week::read(&week).unwrap();
            let minute = u16::try_from(local.hour()).unwrap() * 60;
            let ahead = week
                .spans()
                .iter()
                .filter(|span| span.weekday() == local.weekday() && span.to > minute);
            assert!(ahead.count() > 0, "{local}");
            for ahead in [2, 6, 22] {
                let promised = open_in(local, ahead);
                assert!(promised > local, "{local}");
                let minute = u16::try_from(promised.hour()).unwrap() * 60;
                let open = week.spans().iter().any(|span| {
                    span.weekday() == promised.weekday()
                        && span.from <= minute + 60
                        && minute < span.to
                });
                assert!(open, "{promised} is promised at {local}");
            }
        }
    }
}
