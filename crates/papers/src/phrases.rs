//! The texts of papers for the stall, in the language that is spoken: that of the screen, or the
//! one that was asked for. What a customer reads stands in `wording`.

use phrases::phrases;

phrases! {
    /// Title of the sheet with the plan's stages to tick.
    pub work_sheet = "Work sheet", "Arbeitsblatt";
    /// Foot of the work sheet.
    pub work_sheet_foot = "Tick the box when it is so. This sheet is a copy: what is told to the record counts.",
        "Ankreuzen, wenn es so ist. Das Blatt ist eine Kopie: Es zählt, was im Auftrag steht.";
    /// Heading: what the customer told.
    pub complaint = "Complaint", "Beanstandung";
    /// Heading: what was found, and so what is to be done.
    pub cause_to_do = "Cause, to do", "Ursache, zu tun";
    /// Heading: what is different on this vehicle.
    pub of_this_vehicle = "Of this vehicle", "Zu diesem Fahrzeug";
    /// Heading of cautions.
    pub caution = "Caution", "Vorsicht";
    /// Heading of the table of stages.
    pub stages = "Stages", "Schritte";
    /// Head of a column, read downward.
    pub down_as_it_comes_off = "Down this side as it comes off", "Ausbau, von oben nach unten";
    /// Head of a column of boxes.
    pub off = "off", "ab";
    /// Head of a column of boxes.
    pub back = "back", "dran";
    /// Head of a column, read upward.
    pub up_as_it_goes_back = "Up this side as it goes back", "Einbau, von unten nach oben";
    /// A thing that is renewed as it goes back.
    pub new_one(name) = "new {name}", "neu: {name}";
    /// Between the passes of a torque.
    pub then = ", then ", ", dann ";
    /// Heading: who says the torques.
    pub torque_by = "Torque by", "Drehmomente laut";
    /// Heading: how much came out and went in.
    pub litres = "Litres", "Liter";
    /// Before a blank: how much of a fluid came out.
    pub fluid_out(fluid) = "{fluid}: out", "{fluid}: heraus";
    /// Before a blank: how much went in.
    pub fluid_in = "in", "hinein";
    /// Under litres, where no fluid is drained.
    pub nothing_drained = "Nothing is drained.", "Nichts wird abgelassen.";
    /// Heading of boxes: what is renewed.
    pub new_parts = "New parts", "Neuteile";
    /// Heading of boxes: work that is done before the vehicle leaves.
    pub before_it_leaves = "To do before it leaves", "Vor der Abholung";
    /// Heading of boxes: what was put in and must come out.
    pub inside_now = "Inside now?", "Noch drin?";
    /// Before a blank: what may be inside.
    pub clamps_plugs_rags_lamp = "Clamps, plugs, rags, lamp:", "Klemmen, Stopfen, Lappen, Lampe:";
    /// Heading of blank lines.
    pub snags_and_more = "Snags, and what was not on the list", "Probleme, und was nicht auf der Liste stand";
    /// Title of the sheet that tells how a job was done.
    pub how_it_was_done = "How it was done", "Wie es gemacht wurde";
    /// Its number.
    pub order_number(number) = "order {number}", "Auftrag {number}";
    /// Its foot.
    pub how_to_foot = "So it was done on this vehicle. What the maker publishes comes before what stands here.",
        "So wurde es an diesem Fahrzeug gemacht. Was der Hersteller veröffentlicht, geht vor.";
    /// Heading: what was found.
    pub cause = "Cause", "Ursache";
    /// Heading: what was done.
    pub correction = "Correction", "Abhilfe";
    /// Heading of stages.
    pub comes_off = "Comes off", "Ausbau";
    /// Heading of stages.
    pub goes_back = "Goes back", "Einbau";
    /// Heading of a list.
    pub work_done_after = "Work done after it", "Danach erledigt";
    /// Heading of a list.
    pub what_went_wrong = "What went wrong", "Was schiefging";
    /// Heading: pictures that were taken.
    pub photos = "Photos", "Fotos";
    /// How many, and where they are looked at.
    pub photos_with_the_order(n) = ["{n} with the order, on its page “How it was done”.", "{n} with the order, on its page “How it was done”."],
        ["{n} beim Auftrag, auf der Seite „Wie es gemacht wurde“.", "{n} beim Auftrag, auf der Seite „Wie es gemacht wurde“."];
    /// Head of a column: the things.
    pub what = "What", "Was";
    /// Head of a column: where one stood, and what one held.
    pub where_with_what = "Where, with what", "Wo, womit";
    /// Head of a column: minutes.
    pub min = "min", "Min.";
    /// After what was done to a thing: it was renewed.
    pub renewed = ", new", ", neu";
    /// Lengths of bolts by position.
    pub lengths(each) = " (lengths {each})", " (Längen {each})";
    /// Title of the sheet of labels for trays.
    pub tray_labels = "Tray labels", "Etiketten für Schalen";
    /// Above the labels, beside the line that shows whether the printer kept the size.
    pub check_line(number) = "Tray labels, order {number}. Print at 100 %: this line is 50 mm",
        "Etiketten für Schalen, Auftrag {number}. Mit 100 % drucken: Diese Linie ist 50 mm lang";
    /// What a screen reader reads of a label.
    pub tray(name) = "Tray {name}", "Schale {name}";
    /// On a label, where a tray has several.
    pub label_of(nth, total) = "label {nth} of {total}", "Etikett {nth} von {total}";
    /// The positions of bolts of one length.
    pub at_positions(positions) = " at {positions}", " an {positions}";
    /// At the foot of a page.
    pub page_of(nth, total) = "Page {nth} of {total}", "Seite {nth} von {total}";
    /// What a screen reader reads of a drawing.
    pub a_bolt = "a bolt", "eine Schraube";
    /// The same, longer.
    pub at_true_length = "Drawn at its true length.", "In wahrer Länge gezeichnet.";
    /// What a screen reader reads of a code.
    pub code_to_scan(link) = "A code to scan: {link}", "Ein Code zum Scannen: {link}";
    /// The same, shorter.
    pub a_code = "A code to scan", "Ein Code zum Scannen";
}
