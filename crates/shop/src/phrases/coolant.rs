//! The coolant of an order: its figures, and what follows from them.

use phrases::phrases;

phrases! {
    /// A figure of the cooling system.
    pub system_holds = "The system holds", "Das System fasst";
    /// How that figure is written.
    pub by_the_manual = "by the manual, such as 9.2 L or 10 qt", "nach Handbuch, etwa 9,2 L oder 10 qt";
    /// A figure of the cooling system: its cap.
    pub cap = "Cap", "Deckel";
    /// How that figure is written.
    pub stamped_on_it = "stamped on it, such as 1.1 bar or 16 psi", "steht darauf, etwa 1,1 bar oder 16 psi";
    /// A figure of the cooling system.
    pub concentrate_wanted = "Concentrate wanted", "Gewünschtes Konzentrat";
    /// How that figure is written.
    pub by_the_maker = "by the maker, such as 50 %", "nach Hersteller, etwa 50 %";
    /// A figure of the cooling system.
    pub glycol = "Glycol", "Glykol";
    /// How that figure is written.
    pub by_the_label = "ethylene or propylene, by the label", "Ethylen oder Propylen, nach dem Etikett";
    /// A figure of the cooling system: the specification.
    pub maker_asks_for = "The maker asks for", "Der Hersteller verlangt";
    /// How that figure is written.
    pub as_printed = "as printed; colour tells nothing", "wie aufgedruckt; die Farbe sagt nichts";
    /// A figure of the cooling system.
    pub least_allowed = "Least concentrate allowed", "Mindestens Konzentrat";
    /// How that figure is written.
    pub forty_if_empty = "40 % if empty", "leer: 40 %";
    /// A figure of the cooling system.
    pub most_allowed = "Most concentrate allowed", "Höchstens Konzentrat";
    /// How that figure is written.
    pub sixty_if_empty = "60 % if empty", "leer: 60 %";
    /// A figure of the cooling system: strengths and freezing points of the label.
    pub points_of_label = "Points of the label", "Punkte vom Etikett";
    /// How that figure is written.
    pub such_as_points = "such as 40% -24C, 50% -37C", "etwa 40% -24C, 50% -37C";
    /// A figure of the cooling system.
    pub bottle_area = "The bottle's area at the marks", "Fläche des Behälters an den Markierungen";
    /// How that figure is written.
    pub such_as_area = "such as 150 cm²", "etwa 150 cm²";
    /// A figure of the cooling system: the pressure that a test may lose.
    pub test_may_lose = "A test may lose", "Verlust bei der Dichtprüfung höchstens";
    /// How that figure is written.
    pub such_as_bar = "such as 0.05 bar, by the maker or your habit", "etwa 0,05 bar, nach Hersteller oder Gewohnheit";
    /// A figure of the cooling system: in what time a test may lose it.
    pub in_what_time = "In", "In";
    /// How that figure is written.
    pub such_as_minutes = "such as 15 min", "etwa 15 min";
    /// A figure of the cooling system: air above the coolant.
    pub air_above = "Air above the coolant, tester and hose", "Luft über dem Kühlmittel, Abdrückgerät und Schlauch";
    /// How that figure is written.
    pub such_as_litre = "such as 1 L; may stay empty", "etwa 1 L; kann leer bleiben";
    /// Where drained coolant went.
    pub kept = "kept", "aufgehoben";
    /// Where drained coolant went.
    pub recycled = "recycled", "verwertet";
    /// Where drained coolant went.
    pub disposed_of = "disposed of", "entsorgt";
    /// Where drained coolant went.
    pub spilled = "spilled", "verschüttet";
    /// How much coolant a drain leaves in.
    pub stays_in(litres) = "About {litres} stays in, in the block and the heater.", "Etwa {litres} bleiben drin, im Block und im Wärmetauscher.";
    /// How far the level goes down in the bottle.
    pub in_the_bottle(mm) = ", {mm}\u{202f}mm in the bottle", ", {mm}\u{202f}mm im Behälter";
    /// How far the level goes down from hot to cold.
    pub goes_down(litres, height) = "From hot to cold the level goes down by about {litres}{height}: to its cold mark, not below.", "Von heiß bis kalt sinkt der Füllstand um etwa {litres}{height}: bis zur Kaltmarkierung, nicht darunter.";
    /// What a test lacks.
    pub say_first_what_it_may_lose = "Say first how much a test may lose, and in what time.", "Erst sagen, wie viel Druck bei der Prüfung verloren gehen darf und in welcher Zeit.";
}
