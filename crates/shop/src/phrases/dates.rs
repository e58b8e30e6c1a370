//! Days and times, as they are said.

use phrases::phrases;

phrases! {
    /// A weekday in short, before a date or an hour.
    pub short_monday = "Mon", "Mo.";
    /// A weekday in short, before a date or an hour.
    pub short_tuesday = "Tue", "Di.";
    /// A weekday in short, before a date or an hour.
    pub short_wednesday = "Wed", "Mi.";
    /// A weekday in short, before a date or an hour.
    pub short_thursday = "Thu", "Do.";
    /// A weekday in short, before a date or an hour.
    pub short_friday = "Fri", "Fr.";
    /// A weekday in short, before a date or an hour.
    pub short_saturday = "Sat", "Sa.";
    /// A weekday in short, before a date or an hour.
    pub short_sunday = "Sun", "So.";
    /// A weekday, on the page of the day.
    pub monday = "Monday", "Montag";
    /// A weekday, on the page of the day.
    pub tuesday = "Tuesday", "Dienstag";
    /// A weekday, on the page of the day.
    pub wednesday = "Wednesday", "Mittwoch";
    /// A weekday, on the page of the day.
    pub thursday = "Thursday", "Donnerstag";
    /// A weekday, on the page of the day.
    pub friday = "Friday", "Freitag";
    /// A weekday, on the page of the day.
    pub saturday = "Saturday", "Samstag";
    /// A weekday, on the page of the day.
    pub sunday = "Sunday", "Sonntag";
    /// A month in short, in a date.
    pub short_january = "Jan", "Jan.";
    /// A month in short, in a date.
    pub short_february = "Feb", "Feb.";
    /// A month in short, in a date.
    pub short_march = "Mar", "März";
    /// A month in short, in a date.
    pub short_april = "Apr", "Apr.";
    /// A month in short, in a date.
    pub short_may = "May", "Mai";
    /// A month in short, in a date.
    pub short_june = "Jun", "Juni";
    /// A month in short, in a date.
    pub short_july = "Jul", "Juli";
    /// A month in short, in a date.
    pub short_august = "Aug", "Aug.";
    /// A month in short, in a date.
    pub short_september = "Sep", "Sept.";
    /// A month in short, in a date.
    pub short_october = "Oct", "Okt.";
    /// A month in short, in a date.
    pub short_november = "Nov", "Nov.";
    /// A month in short, in a date.
    pub short_december = "Dec", "Dez.";
    /// A month, on the page of the day.
    pub january = "January", "Januar";
    /// A month, on the page of the day.
    pub february = "February", "Februar";
    /// A month, on the page of the day.
    pub march = "March", "März";
    /// A month, on the page of the day.
    pub april = "April", "April";
    /// A month, on the page of the day.
    pub may = "May", "Mai";
    /// A month, on the page of the day.
    pub june = "June", "Juni";
    /// A month, on the page of the day.
    pub july = "July", "Juli";
    /// A month, on the page of the day.
    pub august = "August", "August";
    /// A month, on the page of the day.
    pub september = "September", "September";
    /// A month, on the page of the day.
    pub october = "October", "Oktober";
    /// A month, on the page of the day.
    pub november = "November", "November";
    /// A month, on the page of the day.
    pub december = "December", "Dezember";

    /// A day with its weekday and month, both short or both long.
    pub day_and_month(weekday, day, month) = "{weekday} {day} {month}", "{weekday} {day}. {month}";
    /// A day with its weekday and month, and the hour.
    pub day_and_hour(day, hour) = "{day}, {hour}", "{day}, {hour}";
    /// A day with its year, and the hour.
    pub day_year_and_hour(day, year, hour) = "{day} {year}, {hour}", "{day} {year}, {hour}";
}
